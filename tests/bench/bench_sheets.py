"""How long the papers take, beside the floor of the same run: typst setting the same pictures on as many bare pages.

Run by hand: ``python tests/bench/bench_sheets.py``. Each figure is the first run of its kind: typst remembers what it
has set, so a second run of the same sheet would measure the memory.

Wanted: at most ten times, which is out of reach while parts stand in a table that typst sets: with the heights of all
rows given for nothing, and no look sought, it would still be twelve times, nine the press and three the records.
"""

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "sheets"), str(TESTS), str(TESTS.parent)]

import hand_kits as hand  # noqa: E402
import typst  # noqa: E402

from jambs.letter_widths import width_in_capitals  # noqa: E402
from jambs.sheets.cut_sheet import cut_sheets_pdf  # noqa: E402
from jambs.sheets.pictures import Picture, SheetPictures  # noqa: E402
from jambs.sheets.press import fonts  # noqa: E402

BARE = """
#set page(paper: "us-letter")
#for svg in json(bytes(sys.inputs.data)) { image(bytes(svg), format: "svg"); pagebreak() }
"""


def taken(run: Callable[[], object]) -> float:
    """Return the processor time of a run [s]: the machine may be shared."""
    start = time.process_time()
    run()
    return time.process_time() - start


def drawing(number: int, lines: int = 900) -> str:
    """Return a drawing of as many strokes as a section of the harbour house, each drawing another one."""
    strokes = "".join(f"M{at % 30 / 10} {at / 300}l0.{number + 10} 0.{at % 89 + 10}" for at in range(lines))
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="3in" height="3in" viewBox="0 0 3 3">'
        f'<path d="{strokes}" fill="none" stroke="black" stroke-width="0.01"/></svg>'
    )


def sheets(count: int, first: int) -> tuple[float, float]:
    """Return the time of some cut sheets and of their floor [s]."""
    marks = [f"W{first + number:03}" for number in range(count)]
    drawn = {mark: (drawing(first + at), drawing(first + at + 1000)) for at, mark in enumerate(marks)}
    pictures = {
        mark: SheetPictures(
            elevation=Picture(title="Interior elevation", svg=one, scale=""),
            section=Picture(title="Section at jamb", svg=two, scale=""),
        )
        for mark, (one, two) in drawn.items()
    }
    kits = [hand.make_kit(mark) for mark in marks]
    job = hand.make_job()
    whole = taken(lambda: cut_sheets_pdf(kits, job, pictures))
    inputs = {"data": json.dumps([svg + " " for pair in drawn.values() for svg in pair])}
    bare = typst.Compiler(BARE.encode(), font_paths=fonts(), ignore_system_fonts=True, sys_inputs=inputs)
    return whole, taken(lambda: bare.compile(format="pdf", timestamp=0))


def main() -> None:
    """Print the times of one sheet and of forty; widths of letters are known, as the drawings come first."""
    fonts()
    for is_bold in (False, True):
        width_in_capitals("0", is_bold)
    for count, first in ((1, 1), (1, 100), (40, 200)):
        whole, floor = sheets(count, first)
        words = "sheet " if count == 1 else "sheets"
        print(f"{count:3} cut {words} {whole * 1000:7.0f} ms, floor {floor * 1000:6.0f} ms, {whole / floor:.1f} x")


if __name__ == "__main__":
    main()
