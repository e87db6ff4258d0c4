"""How long the shop drawing of an opening takes, beside the floor of the same run: as many plain LINEs with ezdxf.

Run by hand: ``python tests/bench/bench_drawings.py``. The goal is a ratio of at most 2. Both write to new files.
Pictures are the three of a cut sheet.

Plain lines leave out what comes before any entity is written: making the views, putting every text where it touches
nothing, and the search for fewer sheets, two thirds of the whole. So the writing alone stands beside the lines too
(``written``: about as long as the lines take), and the time before it (``drawn``). Half of that is the search for fewer
sheets, which looks at smaller sections, corners and elevations one after the other and tries 500 changes of each; 250
had flared openings take a sheet more. A third arranges the views at their scales.
"""

import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "drawings"), str(TESTS), str(TESTS.parent)]

from ezdxf.filemanagement import new, readfile  # noqa: E402
from samples import ISSUE, SAMPLES, made  # noqa: E402

from jambs.app.pictures import sheet_pictures  # noqa: E402
from jambs.drawings import draw_opening, write_dxf, write_flat_dxf  # noqa: E402

ROUNDS = 15


def median_time(run: Callable[[int], object]) -> float:
    """Return the median processor time of a run [s]: the machine may be shared."""
    times = []
    for number in range(ROUNDS):
        start = time.process_time()
        run(number)
        times.append(time.process_time() - start)
    return statistics.median(times)


def plain_lines(count: int, path: Path) -> None:
    """Write so many lines."""
    document = new("R2010")
    space = document.modelspace()
    for number in range(count):
        space.add_line((number, 0), (number, 1))
    document.saveas(path)


def main() -> None:
    """Print the figures."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        print("opening            entities  lines ms  dxf ms  ratio  drawn ms  written ms  ratio  flat ms  pictures ms")
        for sample in ("picture framed", "stool", "measured", "metric"):
            assert sample in SAMPLES
            kit, sections, job = made(sample)
            drawing = draw_opening(kit, sections, job, issue=ISSUE)
            write_dxf(drawing, folder / "once.dxf")
            document = readfile(folder / "once.dxf")
            spaces = [*document.blocks]
            count = sum(len(space) for space in spaces)
            floor = median_time(lambda n, count=count: plain_lines(count, folder / f"lines{n}.dxf"))  # type: ignore[misc]

            def whole(number: int) -> None:
                drawn = draw_opening(kit, sections, job, issue=ISSUE)  # noqa: B023
                write_dxf(drawn, folder / f"{number}.dxf")

            def written(number: int) -> None:
                write_dxf(drawing, folder / f"{number}-written.dxf")  # noqa: B023

            def flat(number: int) -> None:
                write_flat_dxf(drawing, folder / f"{number}-flat.dxf")  # noqa: B023

            def pictures(number: int) -> None:
                sheet_pictures(drawing, paper=job.shop.paper)  # noqa: B023

            drawn, alone, flattened, pictured = (median_time(run) for run in (whole, written, flat, pictures))
            print(
                f"{sample:18} {count:8} {floor * 1e3:9.1f} {drawn * 1e3:7.1f} {drawn / floor:6.2f} "
                f"{(drawn - alone) * 1e3:9.1f} {alone * 1e3:11.1f} {alone / floor:6.2f} "
                f"{flattened * 1e3:8.1f} {pictured * 1e3:12.1f}"
            )


if __name__ == "__main__":
    main()
