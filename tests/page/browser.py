"""The page in a real browser: a server of its own on a copy of an example, and Chromium where there is one."""

from __future__ import annotations

import shutil
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
import uvicorn
from axe_playwright_python.sync_playwright import Axe
from pages import EXAMPLES
from playwright.sync_api import Browser, Page, expect, sync_playwright

from jambs.job import Job
from jambs.job.models.openings import Opening
from jambs.job.starter import new_job_text
from jambs.length import Units
from jambs.page.application import Application, make_application
from jambs.page.keys import KeyRole
from jambs.page.listening import config_of, hosts_at, listening_on
from jambs.screen.desk import Desk
from jambs.screen.heat import HeatShelf
from jambs.screen.measuring_aside import MeasuringAside
from jambs.values import Record

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"]
NO_BROWSER = "no Chromium here: install the distribution's package `chromium` to try the page in a browser"
expect.set_options(timeout=20_000)
"""A busy machine is no fault of the page: what is waited for may take so long [ms]."""


@dataclass(frozen=True, kw_only=True)
class Served:
    """A page that is served: where, for which job, and what it reported of faults of its own."""

    base: str
    file: Path
    application: Application
    desk: Desk
    reported: list[Exception]

    def link(self, role: KeyRole = KeyRole.DESK) -> str:
        """Return the link that lets a role in."""
        return f"{self.base}/enter/{self.application.keys.token(role)}"


class CalmShelf(HeatShelf):
    """A shelf on which no study is ever done."""

    def curves(self, file: Path, draft: str, opening: Opening, job: Job) -> Record:
        """Say that it is worked out."""
        return {"said": "", "curves": [], "least": None}


class CalmDesk(Desk):
    """A desk without the study aside."""

    def __init__(self, *, file: Path, target: Path, begin: str | None = None) -> None:
        super().__init__(file=file, target=target, begin=begin)
        self.heat = CalmShelf()


@contextmanager
def served(folder: Path, example: str | None, *, with_heat: bool = False, aside: bool = False) -> Iterator[Served]:
    """Serve a copy of an example on this computer, or a job from nothing.

    ``with_heat``: the study runs aside, which takes seconds; ``aside``: readings are taken down in a process aside.
    """
    house = folder / (example or "new house")
    if example:
        shutil.copytree(EXAMPLES / example, house, ignore=shutil.ignore_patterns("output"))
    begin = None if example else new_job_text(Units.INCH)
    desk = (Desk if with_heat else CalmDesk)(file=house / "job.yaml", target=folder / "output", begin=begin)
    measuring = MeasuringAside(file=desk.file, target=desk.target) if aside else None
    reported: list[Exception] = []

    def report(error: Exception) -> str:
        reported.append(error)
        return ""

    with listening_on(0, everywhere=False) as listening:
        port = listening.getsockname()[1]
        application = make_application(
            desk,
            hosts=hosts_at(port, telephone=False),
            cookie=f"jambs-{port}",
            report=report,
            measuring=measuring,
        )
        server = uvicorn.Server(config_of(application))
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
        thread.start()
        while not server.started:
            time.sleep(0.01)
        try:
            yield Served(
                base=f"http://127.0.0.1:{port}", file=desk.file, application=application, desk=desk, reported=reported
            )
        finally:
            server.should_exit = True
            thread.join(5)
            if measuring:
                measuring.close()
            desk.close()


@contextmanager
def chromium() -> Iterator[Browser]:
    """Start Chromium, or skip with a sentence."""
    if CHROMIUM is None:
        pytest.skip(NO_BROWSER)
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=CHROMIUM, args=ARGUMENTS)
        try:
            yield browser
        finally:
            browser.close()


def page_at(browser: Browser, place: Served, path: str, **options: Any) -> Page:
    """Open a view in a window of its own; whatever goes to another host, or wrong in a module, fails the test."""
    context = browser.new_context(**{"viewport": {"width": 1440, "height": 900}, **options})
    page = context.new_page()
    page.on("pageerror", lambda error: place.reported.append(AssertionError(str(error))))
    page.on("request", lambda request: _at_home(request.url, place))
    page.goto(place.link())
    page.goto(f"{place.base}{path}")
    return page


def _at_home(url: str, place: Served) -> None:
    own = (place.base, place.base.replace("http", "ws", 1), "data:", "blob:")
    if not url.startswith(own):
        place.reported.append(AssertionError(f"asked another host: {url}"))


LEAST_LETTERS = 9.5
"""Height of the box round the letters of a drawing, below which nobody reads them [CSS pixels]."""
HARD_TO_READ = """(least) => {
  const found = [], isSketch = (one) => one.closest(".keypicture") && !one.matches(".meant");
  const drawn = [...document.querySelectorAll("svg text")].filter((one) => !isSketch(one)).map((one) =>
    ({ words: one.textContent, box: one.getBoundingClientRect(), sheet: one.closest("svg").getBoundingClientRect() }));
  const shared = (one, other, low, high) => Math.min(one[high], other[high]) - Math.max(one[low], other[low]);
  const isWithin = ({ box, sheet }) => box.left > sheet.left - 1 && box.right < sheet.right + 1
    && box.top > sheet.top - 2 && box.bottom < sheet.bottom + 2;
  const shown = drawn.filter((one) => one.box.width > 0);
  shown.forEach((one, at) => {
    if (one.box.height < least) found.push(`small: ${one.words}, ${one.box.height.toFixed(1)} high`);
    if (!isWithin(one)) found.push(`cut off: ${one.words}`);
    for (const other of shown.slice(at + 1)) {
      const down = shared(one.box, other.box, "top", "bottom") / Math.min(one.box.height, other.box.height);
      if (shared(one.box, other.box, "left", "right") > 2 && down > 0.4)
        found.push(`over each other: ${one.words}, ${other.words}`);
    }
  });
  return found;
}"""


def hard_to_read(page: Page) -> list[str]:
    """Return the texts of drawings that are too small, cut off at the edge, or lie over each other."""
    found: list[str] = page.evaluate(HARD_TO_READ, LEAST_LETTERS)
    return found


def broken_rules(page: Page) -> list[str]:
    """Return the rules of accessibility that a view breaks, each with where."""
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {node['target']} {node['failureSummary']}" for one in found for node in one["nodes"]]
