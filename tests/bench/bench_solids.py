"""How long solids, fit report and STEP take, beside the floor of the same run: as many plain boxes written to STEP.

Also forty openings in one run with the memory they take, pictures and GLB, and 300 random kits. Run by hand, one core:
``python tests/bench/bench_solids.py``.
"""

import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from itertools import cycle, islice
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / "tests" / "solids"), str(ROOT / "tests"), str(ROOT)]

from harbour import harbour_job, harbour_kits  # noqa: E402
from hypothesis import HealthCheck, given, settings  # noqa: E402
from random_kits import RandomKit, kits  # noqa: E402

from jambs.job import Job  # noqa: E402
from jambs.parts.kit.kit import Kit  # noqa: E402
from jambs.solids import fit_report, kernel, model_kit, picture, write_glb, write_step  # noqa: E402
from jambs.solids.model import STANDING, KitSolids, Solid  # noqa: E402
from jambs.solids.views import EXPLODED, FROM_ROOM  # noqa: E402

FOLDER = Path(tempfile.mkdtemp())


def seconds(run: Callable[[], object]) -> float:
    """Time of the processor: others may be using the machine. [s]"""
    start = time.process_time()
    run()
    return time.process_time() - start


def memory() -> float:
    """Memory the process holds now. [MB]"""
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * resource.getpagesize() / 1e6


def plain_boxes(like: KitSolids) -> KitSolids:
    """As many boxes as the kit has solids, of the same outer sizes, with names and colors."""
    return replace(like, parts=tuple(box(one) for one in like.parts), frame=tuple(box(one) for one in like.frame))


def box(like: Solid) -> Solid:
    """One plain box: made, nothing read from it."""
    (x0, y0, d0), (x1, y1, d1) = like.low, like.high
    shape = kernel.prism([(x0, y0, d0), (x1, y0, d0), (x1, y1, d0), (x0, y1, d0)], (0.0, 0.0, d1 - d0))
    return replace(like, part=None, bench=shape, seat=STANDING, facets=())


def boxes(like: KitSolids) -> None:
    """The floor: plain boxes, made and written."""
    write_step(plain_boxes(like), FOLDER / "boxes.step")


def whole(kit: Kit, job: Job) -> None:
    """What a build does for one opening."""
    solids = model_kit(kit, job)
    assert fit_report(solids).fits
    write_step(solids, FOLDER / f"{kit.mark}.step")


def against_boxes() -> None:
    """Each harbour house opening against its boxes, fastest of five."""
    job = harbour_job()
    print("opening   solids  boxes ms  model+fit+STEP ms  ratio")
    ratios = []
    for mark, kit in harbour_kits().items():
        solids = model_kit(kit, job)
        floor = min(seconds(partial(boxes, solids)) for _ in range(5))
        ours = min(seconds(partial(whole, kit, job)) for _ in range(5))
        ratios.append(ours / floor)
        print(f"{mark:8} {len(solids.solids):7} {floor * 1e3:9.1f} {ours * 1e3:18.1f} {ratios[-1]:6.2f}")
    print(f"greatest ratio {max(ratios):.2f} (allowed 3), mean {sum(ratios) / len(ratios):.2f}\n")


def forty() -> None:
    """Forty openings after import, and the memory after ten, twenty, thirty, forty."""
    job = harbour_job()
    held, spent = [], 0.0
    for number, kit in enumerate(islice(cycle(harbour_kits().values()), 40), start=1):
        spent += seconds(partial(whole, kit, job))
        if number % 10 == 0:
            held.append(f"{memory():.0f}")
    print(f"forty openings {spent:.2f} s (allowed 20); memory after 10, 20, 30, 40: {', '.join(held)} MB\n")


def pictures() -> None:
    """Pictures and GLB of one opening."""
    solids = model_kit(harbour_kits()["W01"], harbour_job())
    for view in (FROM_ROOM, EXPLODED):
        spent = min(seconds(partial(picture, solids, view)) for _ in range(3))
        print(f"{view.name}: {spent * 1e3:.0f} ms")
    print(f"GLB: {min(seconds(lambda: write_glb(solids, FOLDER / 'one.glb')) for _ in range(3)) * 1e3:.0f} ms\n")


def random_kits() -> None:
    """300 random kits from the generator of the tests."""
    count = [0, 0]

    @settings(max_examples=300, deadline=None, database=None, suppress_health_check=list(HealthCheck))
    @given(kits())
    def one(random: RandomKit) -> None:
        report = fit_report(model_kit(random.kit, random.job))
        assert report.fits, report.faults
        count[0] += 1
        count[1] += random.kit.is_measured

    spent = seconds(one)
    print(f"{count[0]} random kits fit, {count[1]} of them measured: {spent:.1f} s")


if __name__ == "__main__":
    started = "import time; a = time.process_time(); import OCP.BRepAlgoAPI; print(f'{time.process_time() - a:.2f}')"
    done = subprocess.run([sys.executable, "-c", started], capture_output=True, text=True, check=True)
    print(f"import of the kernel {done.stdout.strip()} s, {memory():.0f} MB held with everything imported\n")
    against_boxes()
    forty()
    pictures()
    random_kits()
