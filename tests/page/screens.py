"""Every view at every width in both schemes and as it prints, as pictures to look at; to be run by hand.

    python tests/page/screens.py FOLDER [--only WORDS] [--width 390 ...] [--scheme light dark print]

One PNG for each view, width and scheme, whole pages, and contact sheets of them in ``FOLDER/sheets``. Beside that it
says what sticks out of the window, which texts of drawings nobody can read, and what rules of accessibility are broken.
"""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from typing import Any

sys.path.insert(0, os.path.dirname(__file__))

from browser import Served, broken_rules, chromium, hard_to_read, page_at, served
from PIL import Image, ImageDraw
from playwright.sync_api import Browser, Page

from jambs.page.keys import KeyRole

WIDTHS = (390, 816, 1280, 3840)
"""A telephone, a letter sheet, a notebook, 4K [CSS pixels]."""
SCHEMES = ("light", "dark", "print")
HIGH = {390: 844, 816: 1056, 1280: 800, 3840: 2160}
CELL = 640
"""Of a contact sheet: so wide is each view of a screen [pixels]; a telephone's a third of it less."""
TALLEST = 2.6
"""Of a picture on a contact sheet to its width; the rest of a longer view goes on beside it."""
DRAWN = "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


def _nothing(_: Page) -> None:
    return None


@dataclass(frozen=True, kw_only=True)
class Scene:
    """A view in one state: of which job, broken how before, where, and what is done there before it is looked at.

    ``meanwhile``: what an editor does to the job file after that.
    """

    name: str
    path: str
    example: str | None = "harbour-house"
    broken: Callable[[Path], None] | None = None
    act: Callable[[Page], None] = _nothing
    role: KeyRole | None = KeyRole.DESK
    meanwhile: Callable[[Path], None] | None = None


def replaced(old: str, new: str) -> Callable[[Path], None]:
    """Return what changes one place of a job file."""

    def change(file: Path) -> None:
        text = file.read_text(encoding="utf-8")
        assert old in text, old
        file.write_text(text.replace(old, new, 1), encoding="utf-8")

    return change


def changed(page: Page) -> None:
    """Change a room, so that the file has a line to save; show the lines."""
    _put_room(page, "Pantry")
    page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
    page.locator("#changes:not([disabled])").click()


def _put_room(page: Page, room: str) -> None:
    page.evaluate(
        "(room) => fetch('/job/form').then((form) => form.json()).then(({ number }) => fetch('/job/change', {"
        " method: 'POST', headers: {'content-type': 'application/json'},"
        " body: JSON.stringify({number, act: 'set', path: ['openings', 0, 'room'], value: room})}))",
        room,
    )


def shifted(page: Page) -> None:
    """Type in a layer that another window has shifted meanwhile."""
    page.route("**/job/form", lambda route: route.abort())
    field = page.locator(".layer").nth(3).locator("input").first
    other = page.context.new_page()
    other.goto(page.url)
    other.locator(".layer").first.get_by_role("button", name="Remove").click()
    other.wait_for_timeout(500)
    other.close()
    field.fill("plywood 3/4")
    field.press("Enter")
    page.locator("#said", has_text="has moved").wait_for()
    page.unroute("**/job/form")


def in_work(page: Page) -> None:
    """Build, and look while papers are written."""
    if page.locator("#workwords", has_text=" of ").count():
        return
    page.locator("[data-verb=build]").click()
    page.locator("#workwords", has_text=" of ").wait_for(timeout=120_000)


def opened_all(page: Page) -> None:
    """Open every group of fields, and stand in the first."""
    page.evaluate("document.querySelectorAll('#fields details').forEach((one) => { one.open = true; })")
    page.locator("#fields input").first.focus()


def written(page: Page) -> None:
    """Write papers, and look at one."""
    if not page.locator("[data-key]").count():
        page.locator("[data-verb=labels]").click()
        page.locator("#workwords", has_text="done").wait_for(timeout=120_000)
    page.locator("[data-key]", has_text=".pdf").first.click()
    page.wait_for_timeout(700)


def pressed(*keys: str) -> Callable[[Page], None]:
    """Return what enters a reading by its keys, and writes it down."""

    def act(page: Page) -> None:
        for key in keys:
            page.locator(f"[data-digit='{key}']").first.click()
        page.locator("#write").click()
        page.locator("#answer > *").first.wait_for()

    return act


TELEPHONE = KeyRole.TELEPHONE
W02_FALLS = replaced("  - mark: W02\n", '  - mark: W02\n    position: {interior_depth: 30"}\n')
NO_COURSES = replaced("least_exposure: 5", "least_exposure: 9")
NO_UNITS = replaced("units: inch", "units: ells")
SCENES = (
    *(Scene(name=f"house {one}", path="/", example=one)
      for one in ("harbour-house", "hillside-house", "garden-studio", "gable-house", "quarry-loft")),
    Scene(name="opening casement", path="/openings/W01"),
    Scene(name="opening door", path="/openings/D01"),
    Scene(name="opening metric", path="/openings/F1", example="hillside-house"),
    Scene(name="opening octagon", path="/openings/G6", example="gable-house"),
    Scene(name="opening measured", path="/openings/G3", example="gable-house"),
    Scene(name="opening ganged", path="/openings/L6", example="quarry-loft"),
    *(Scene(name=f"fields {one}", path=f"/job#{one}", act=opened_all)
      for one in ("job", "walls", "windows", "openings", "interior_trim", "exterior_trim", "shop", "elevations")),
    Scene(name="fields metric walls", path="/job#walls", example="hillside-house", act=opened_all),
    Scene(name="fields metric trim", path="/job#exterior_trim", example="hillside-house", act=opened_all),
    Scene(name="fields shapes", path="/job#openings", example="gable-house", act=opened_all),
    Scene(name="papers none", path="/papers", example="gable-house"),
    Scene(name="papers viewer", path="/papers", example="garden-studio", act=written),
    Scene(name="telephones", path="/telephones"),
    Scene(name="changes", path="/", example="hillside-house", act=changed),
    Scene(name="changes conflict", path="/", example="hillside-house", act=changed,
          meanwhile=replaced("room: Kitchen, wall: thick, window: fixed", "room: Larder, wall: thick, window: fixed")),
    Scene(name="changes shifted", path="/job#walls", example="hillside-house", act=shifted),
    Scene(name="papers in work", path="/papers", act=in_work),
    Scene(name="new job", path="/", example=None),
    Scene(name="new job fields", path="/job", example=None, act=opened_all),
    Scene(name="unbuildable house", path="/", broken=W02_FALLS),
    Scene(name="unbuildable opening", path="/openings/W02", broken=W02_FALLS),
    Scene(name="unbuildable fields", path="/job#openings", broken=W02_FALLS),
    Scene(name="unplanned house", path="/", broken=NO_COURSES),
    Scene(name="unplanned opening", path="/openings/W01", broken=NO_COURSES),
    Scene(name="unreadable house", path="/", broken=NO_UNITS),
    Scene(name="unreadable fields", path="/job", broken=NO_UNITS),
    Scene(name="no such opening", path="/openings/W99"),
    Scene(name="no such page", path="/none"),
    Scene(name="not come in", path="/", role=None),
    Scene(name="telephone list", path="/telephone", role=TELEPHONE),
    Scene(name="telephone opening", path="/telephone/opening/W01", role=TELEPHONE, act=pressed("4")),
    Scene(name="telephone metric", path="/telephone/opening/F1", example="hillside-house", role=TELEPHONE,
          act=pressed("9", "5")),
    Scene(name="telephone flared", path="/telephone/opening/G1", example="gable-house", role=TELEPHONE),
    Scene(name="telephone octagon", path="/telephone/opening/G6", example="gable-house", role=TELEPHONE),
    Scene(name="telephone ganged", path="/telephone/opening/L6", example="quarry-loft", role=TELEPHONE),
    Scene(name="telephone to settle", path="/telephone/opening/W02", role=TELEPHONE,
          broken=W02_FALLS),
    Scene(name="telephone waits", path="/telephone", role=TELEPHONE, broken=NO_UNITS),
)  # fmt: skip


def places(scenes: list[Scene], folder: Path) -> Iterator[tuple[Scene, Served]]:
    """Serve what scenes need; jobs in the same state are served once."""
    with ExitStack() as stack:
        known: dict[tuple[str | None, object], Served] = {}
        for scene in scenes:
            own = (
                scene.act in (changed, written, shifted, in_work)
                or isinstance(scene.role, type(None))
                or scene.role is TELEPHONE
            )
            key = (scene.example, scene.name if own or scene.broken else None)
            if key not in known:
                own_folder = folder / str(len(known))
                known[key] = stack.enter_context(served(own_folder, scene.example))
                if scene.broken:
                    scene.broken(known[key].file)
            yield scene, known[key]


def shown(browser: Browser, scene: Scene, place: Served, **options: Any) -> Page:
    """Open the view of a scene."""
    if scene.role is KeyRole.DESK:
        page = page_at(browser, place, scene.path, **options)
    else:
        page = browser.new_context(**options).new_page()
        if scene.role is not None:
            page.goto(place.link(scene.role))
            page.wait_for_url(f"{place.base}/telephone")
        page.goto(f"{place.base}{scene.path}")
    page.wait_for_load_state("networkidle")
    scene.act(page)
    if scene.meanwhile:
        scene.meanwhile(place.file)
        page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
        page.locator("#lines", has_text="somebody else").wait_for()
    return page


def told(page: Page, scene: Scene, width: int, scheme: str) -> None:
    """Say what can be told without looking."""
    found = [] if page.evaluate("document.documentElement.scrollWidth <= innerWidth") else ["sticks out"]
    found += hard_to_read(page)
    if width in (390, 1280) and scheme != "print":
        found += broken_rules(page)
    for one in found:
        print(f"{scene.name}, {width} {scheme}: {one}", flush=True)


def take(browser: Browser, scene: Scene, place: Served, asked: argparse.Namespace) -> None:
    """Take the pictures of a scene."""
    page = shown(browser, scene, place, reduced_motion="reduce")
    for width in asked.width:
        page.emulate_media(media="screen")  # what scrolls is told when a window changes, which no printer does
        page.set_viewport_size({"width": width, "height": HIGH.get(width, 900)})
        for scheme in asked.scheme:
            page.emulate_media(
                media="print" if scheme == "print" else "screen", color_scheme="dark" if scheme == "dark" else "light"
            )
            page.evaluate(
                "(dark) => { document.documentElement.dataset.scheme = dark ? 'dark' : 'light'; }", scheme == "dark"
            )
            page.evaluate(DRAWN)
            told(page, scene, width, scheme)
            page.screenshot(path=asked.folder / f"{width}-{scheme}-{scene.name.replace(' ', '_')}.png", full_page=True)
    page.context.close()


def contact_sheets(folder: Path, each: int = 8) -> None:
    """Put the pictures of each width and scheme together, several on a sheet, each with its name."""
    (folder / "sheets").mkdir(exist_ok=True)
    groups: dict[str, list[Path]] = {}
    for one in sorted(folder.glob("*.png")):
        groups.setdefault("-".join(one.name.split("-")[:2]), []).append(one)
    for name, files in groups.items():
        cells = [cell for file in files for cell in _cells(file)]
        for at in range(0, len(cells), each):
            _sheet(cells[at : at + each], folder / "sheets" / f"{name}-{at // each + 1:02}.png")


def _cells(file: Path) -> list[tuple[str, Image.Image]]:
    with Image.open(file) as opened:
        picture = opened.convert("RGB")
    wide = CELL if picture.width > 400 else 390
    picture = picture.resize((wide, round(picture.height * wide / picture.width)), Image.Resampling.LANCZOS)
    step = round(wide * TALLEST)
    tops = range(0, min(picture.height, 4 * step), step)
    return [
        (f"{file.stem}{f' ({n + 1})' if n else ''}", picture.crop((0, top, wide, min(top + step, picture.height))))
        for n, top in enumerate(tops)
    ]


def _sheet(cells: list[tuple[str, Image.Image]], path: Path) -> None:
    across = min(4, len(cells))
    rows = [cells[at : at + across] for at in range(0, len(cells), across)]
    high = [max(picture.height for _, picture in row) + 24 for row in rows]
    wide = max(sum(picture.width + 10 for _, picture in row) for row in rows)
    sheet = Image.new("RGB", (wide, sum(high)), "#b0b0b0")
    draw, y = ImageDraw.Draw(sheet), 0
    for row, tall in zip(rows, high, strict=True):
        x = 0
        for name, picture in row:
            draw.text((x + 4, y + 4), name, fill="black")
            sheet.paste(picture, (x, y + 20))
            x += picture.width + 10
        y += tall
    sheet.save(path)


def main() -> None:
    """Take the pictures that are asked for, and put them together."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--only", default="", help="scenes whose name has these words")
    parser.add_argument("--width", type=int, nargs="+", default=list(WIDTHS))
    parser.add_argument("--scheme", nargs="+", default=list(SCHEMES), choices=SCHEMES)
    asked = parser.parse_args()
    asked.folder.mkdir(parents=True, exist_ok=True)
    scenes = [one for one in SCENES if asked.only in one.name]
    with tempfile.TemporaryDirectory() as folder, chromium() as browser:
        for scene, place in places(scenes, Path(folder)):
            take(browser, scene, place, asked)
            for error in place.reported:
                if "://" in str(error) and "chrome" in str(error):
                    continue  # the browser's own viewer of PDF
                print(f"{scene.name}: {error!r}", flush=True)
            place.reported.clear()
    contact_sheets(asked.folder)


if __name__ == "__main__":
    main()
