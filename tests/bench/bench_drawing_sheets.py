"""How long the drawings of forty openings take as PDF, beside their cut sheets in the same run.

Run by hand: ``python tests/bench/bench_drawing_sheets.py``. Processor time, so that other work on the machine does not
count. Wanted: at most three times the cut sheets.
"""

import sys
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

import jambs  # noqa: E402
from jambs.app.pictures import sheet_pictures  # noqa: E402
from jambs.drawings.elements.paper import PAGES  # noqa: E402
from jambs.drawings.svg.sheets import drawing_title, sheet_pages  # noqa: E402
from jambs.sheets.cut_sheet import cut_sheets_pdf, write_cut_sheet  # noqa: E402
from jambs.sheets.drawing_sheets import join_drawing_sheets, write_drawing_sheets  # noqa: E402

OPENINGS = 40


def taken(run: Callable[[], object]) -> float:
    """Return how long a run takes [s of processor time]."""
    start = time.process_time()
    run()
    return time.process_time() - start


def main() -> None:
    """Print the times of forty openings, those of the harbour house again and again."""
    job = jambs.read_job(ROOT / "examples" / "harbour-house")
    kits = jambs.make_kits(job)
    drawings = [jambs.draw(kit, job) for kit in kits]
    pictures = {kit.mark: sheet_pictures(one, paper=job.shop.paper) for kit, one in zip(kits, drawings, strict=True)}
    rounds = [number % len(kits) for number in range(OPENINGS)]
    with TemporaryDirectory() as name:
        folder = Path(name)

        def cut_sheets() -> None:
            for number, at in enumerate(rounds):
                write_cut_sheet(kits[at], job, pictures[kits[at].mark], folder / f"cut {number}.pdf")
            (folder / "all cut.pdf").write_bytes(cut_sheets_pdf(kits, job, pictures))

        def sheets() -> None:
            files = []
            for number, at in enumerate(rounds):
                pages = sheet_pages(drawings[at], PAGES[job.units][0])
                write_drawing_sheets(pages, drawing_title(drawings[at]), folder / f"{number}.pdf")
                files.append((f"{number}", folder / f"{number}.pdf"))
            join_drawing_sheets(files, "all drawings", folder / "all.pdf")

        cut, drawn = taken(cut_sheets), taken(sheets)
    print(f"{OPENINGS} openings: cut sheets {cut:.1f} s, drawings as PDF {drawn:.1f} s, {drawn / cut:.1f} x")


if __name__ == "__main__":
    main()
