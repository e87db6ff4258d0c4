"""How soon the page answers a hand that pushes a window, and how soon it shows a house of forty openings.

Run by hand: ``python tests/bench/bench_page.py``; it needs Chromium. Pointer to figures: from a movement of the pointer
until section and figures on the screen are those of the new place, in frames of 60 Hz that this browser draws, beside a
frame in which nothing happens. First view: the answer to the first request, beside ``jambs check`` of the same house;
both in processor time, the house as in ``bench_check.py``.
"""

from __future__ import annotations

import json
import shutil
import statistics
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.request import HTTPCookieProcessor, Request, build_opener

ROOT = Path(__file__).parents[2]
sys.path += [str(ROOT / "tests" / "page"), str(ROOT / "tests" / "bench")]

from bench_check import COMMAND, FLOOR, house_of_forty, once  # noqa: E402
from browser import CalmDesk, Served, chromium, page_at, served  # noqa: E402

from jambs.face.screen import in_hand, moved_record  # noqa: E402
from jambs.page.answers import as_json  # noqa: E402
from jambs.page.keys import KeyRole  # noqa: E402

MOVES = 60
FRAME = 1000 / 60
"""A frame of 60 Hz [ms]."""
MEASURE = """async (moves) => {
  const grip = document.querySelector(".grip"), circle = grip.querySelector("circle");
  const box = circle.getBoundingClientRect(), x = box.x + box.width / 2, y = box.y + box.height / 2;
  const send = (kind, at) => (kind === "pointerdown" ? grip : window).dispatchEvent(
    new PointerEvent(kind, { bubbles: true, clientX: at, clientY: y, button: 0, pointerId: 1, cancelable: true }));
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const shown = () => grip.getAttribute("transform") + document.querySelector(".figures").textContent
    + (document.querySelector(".curves .now")?.getAttribute("d") || "");
  const idle = [];
  for (let n = 0; n < 30; n += 1) { const t = performance.now(); await frame(); idle.push(performance.now() - t); }
  send("pointerdown", x);
  const took = [];
  for (let n = 1; n <= moves; n += 1) {
    const before = shown(), start = performance.now();
    send("pointermove", x + (n % 2 ? 31 : -29) + n);
    while (shown() === before && performance.now() - start < 2000) await frame();
    took.push(performance.now() - start);
    await frame();
  }
  send("pointercancel", x);
  return { took, idle };
}"""
FIRST_VIEW = (
    "from pathlib import Path; from starlette.testclient import TestClient; "
    "from jambs.page.application import make_application; from jambs.screen.desk import Desk; "
    "from jambs.page.keys import KeyRole; "
    "app = make_application(Desk(file=Path('house/job.yaml'), target=Path('output/house')), "
    "hosts={'127.0.0.1:80'}, cookie='c', report=str); "
    "client = TestClient(app, base_url='http://127.0.0.1:80'); "
    "client.get('/enter/' + app.keys.token(KeyRole.DESK), headers={'host': '127.0.0.1:80'}, follow_redirects=False); "
)
ASKED = "assert client.get('/', headers={'host': '127.0.0.1:80'}).status_code == 200"


def desk_on(folder: Path, example: str) -> CalmDesk:
    """Open a copy of an example, without the study aside."""
    shutil.copytree(ROOT / "examples" / example, folder / "house", ignore=shutil.ignore_patterns("output"))
    return CalmDesk(file=folder / "house" / "job.yaml", target=folder / "output")


def answers() -> None:
    """Print what the program's answer to one movement costs in processor time, and how large it is."""
    with tempfile.TemporaryDirectory() as folder:
        desk = desk_on(Path(folder), "harbour-house")
        found = in_hand(desk, "W01", alone=False)
        assert found is not None
        asked = [{"n": n, "plane": 9.5 - n % 24 / 32, "reach": 0, "cut": "jamb"} for n in range(4 * MOVES)]
        took, letters = [], 0
        for one in asked:
            start = time.process_time()
            letters = len(as_json(moved_record(found, one)))
            took.append(1000 * (time.process_time() - start))
    took.sort()
    print(
        f"answer to a movement: median {statistics.median(took):.1f} ms, 95 % {took[int(len(took) * 0.95)]:.1f} ms of "
        f"processor time, {letters} letters"
    )


def hand(*, heat: bool = False, telephones: int = 0) -> None:
    """Print how long a movement takes until it is seen; ``heat``: its mark on the curves too; others measure."""
    with (
        tempfile.TemporaryDirectory() as folder,
        served(Path(folder), "harbour-house", with_heat=heat, aside=True) as place,
        chromium() as browser,
    ):
        page = page_at(browser, place, "/openings/W01")
        if heat:
            page.locator(".curve-dot").first.wait_for(timeout=120_000)
        page.wait_for_timeout(500)
        with measuring(place, telephones) as written:
            start = time.process_time()
            found = page.evaluate(MEASURE, MOVES)
            spent = 1000 * (time.process_time() - start) / MOVES
    took, idle = sorted(found["took"]), statistics.median(found["idle"])
    middle, late = statistics.median(took), took[int(len(took) * 0.95)]
    with_whom = f", {telephones} telephones wrote {len(written)} readings meanwhile" if telephones else ""
    print(
        f"pointer to figures{' and heat mark' if heat else ''}: median {middle:.0f} ms = {middle / FRAME:.1f} frames "
        f"of 60 Hz, 95 % {late:.0f} ms = {late / FRAME:.1f} frames; a frame of nothing {idle:.1f} ms, ratios "
        f"{middle / idle:.1f} and {late / idle:.1f}; {spent:.1f} ms of this process for each movement{with_whom}"
    )


@contextmanager
def measuring(place: Served, count: int) -> Iterator[list[int]]:
    """Let telephones send a reading every half second, each at an opening of its own, until the block ends.

    It begins when all of them have their opening before them.
    """
    stop, written, ready = threading.Event(), list[int](), threading.Barrier(count + 1)

    def measure(mark: str) -> None:
        opener = build_opener(HTTPCookieProcessor())
        opener.open(place.link(KeyRole.TELEPHONE)).read()
        opener.open(f"{place.base}/telephone/opening/{mark}").read()
        ready.wait()
        for place_number in range(1, 9):
            reading = {"id": f"{mark} {place_number}", "mark": mark, "place": place_number, "text": "4", "was": "",
                       "sure": True, "day": "2026-06-01", "by": ""}  # fmt: skip
            sent = Request(
                f"{place.base}/telephone/reading", data=json.dumps(reading).encode(), headers={"origin": place.base}
            )
            written.append(opener.open(sent).status)
            if stop.wait(0.5):
                return

    threads = [threading.Thread(target=measure, args=(mark,)) for mark in ("W05", "W06", "W12", "W13", "W14")[:count]]
    for one in threads:
        one.start()
    ready.wait()
    try:
        yield written
    finally:
        stop.set()
        for one in threads:
            one.join()


def first_view() -> None:
    """Print how long the first view of forty openings takes beside a check."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        house_of_forty(ROOT, place)
        took = {}
        for name, code, words in (
            ("check", COMMAND, ("check", "house")),
            ("floor", FLOOR, ()),
            ("open", FIRST_VIEW, ()),
            ("view", FIRST_VIEW + ASKED, ()),
        ):
            took[name] = min(once(code, *words, version=ROOT, folder=place) for _ in range(3))
    print(
        f"first view of 40 openings {took['view']:.2f} s of which {took['open']:.2f} s to load; "
        f"check {took['check']:.2f} s, floor {took['floor']:.2f} s; ratio to check {took['view'] / took['check']:.2f}"
    )


if __name__ == "__main__":
    started = time.monotonic()
    answers()
    hand()
    hand(heat=True)
    hand(telephones=5)
    first_view()
    print(f"{time.monotonic() - started:.0f} s in all")
