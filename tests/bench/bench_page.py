"""How soon the page answers a hand that pushes a window, and how soon it shows a house of forty openings.

Run by hand: ``python tests/bench/bench_page.py``; it needs Chromium. Pointer to figures: from a movement of the pointer
until section and figures on the screen are those of the new place, in frames of 60 Hz that this browser draws, beside a
frame in which nothing happens. First view: the answer to the first request, beside ``jambs check`` of the same house;
both in processor time, the house as in ``bench_check.py``.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path += [str(ROOT / "tests" / "page"), str(ROOT / "tests" / "bench")]

from bench_check import COMMAND, FLOOR, house_of_forty, once  # noqa: E402
from browser import chromium, page_at, served  # noqa: E402

MOVES = 60
FRAME = 1000 / 60
"""A frame of 60 Hz [ms]."""
MEASURE = """async (moves) => {
  const grip = document.querySelector(".grip"), circle = grip.querySelector("circle");
  const box = circle.getBoundingClientRect(), x = box.x + box.width / 2, y = box.y + box.height / 2;
  const send = (kind, at) => (kind === "pointerdown" ? grip : window).dispatchEvent(
    new PointerEvent(kind, { bubbles: true, clientX: at, clientY: y, button: 0, pointerId: 1, cancelable: true }));
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const shown = () => grip.getAttribute("transform") + document.querySelector(".figures").textContent;
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
    "client.get('/enter/' + app.keys.token(KeyRole.DESK), headers={'host': '127.0.0.1:80'}); "
)
ASKED = "assert client.get('/', headers={'host': '127.0.0.1:80'}).status_code == 200"


def hand() -> None:
    """Print how long a movement of the pointer takes until it is seen."""
    with tempfile.TemporaryDirectory() as folder, served(Path(folder), "harbour-house") as place, chromium() as browser:
        page = page_at(browser, place, "/openings/W01")
        page.wait_for_timeout(500)
        found = page.evaluate(MEASURE, MOVES)
    took, idle = sorted(found["took"]), statistics.median(found["idle"])
    middle, late = statistics.median(took), took[int(len(took) * 0.95)]
    print(
        f"pointer to figures: median {middle:.0f} ms = {middle / FRAME:.1f} frames of 60 Hz, 95 % {late:.0f} ms = "
        f"{late / FRAME:.1f} frames; a frame of nothing takes {idle:.1f} ms here, ratios {middle / idle:.1f} and "
        f"{late / idle:.1f}"
    )


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
    hand()
    first_view()
    print(f"{time.monotonic() - started:.0f} s in all")
