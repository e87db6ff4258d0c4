"""A page open on a job of the tests, without a server: requests go straight to the application."""

from __future__ import annotations

import shutil
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from starlette.testclient import TestClient

from jambs.page.application import Application, make_application
from jambs.page.keys import KeyRole
from jambs.screen.desk import Desk

EXAMPLES = Path(__file__).parents[2] / "examples"
HOST = "127.0.0.1:8123"
ORIGIN = f"http://{HOST}"
COOKIE = "jambs-8123"
READING: dict[str, Any] = {
    "id": "a" * 32,
    "mark": "W1",
    "place": 1,
    "text": "3 3/8",
    "was": "",
    "sure": False,
    "day": "2026-06-01",
    "by": "Ann",
}
"""What a telephone sends when it has read one place."""


@dataclass(frozen=True, kw_only=True)
class OpenPage:
    """A page, its job file, and what it reported of faults of its own."""

    application: Application
    file: Path
    reported: list[Exception] = field(default_factory=list)
    hosts: set[str] = field(default_factory=set)

    def client(self, role: KeyRole | None = KeyRole.DESK) -> TestClient:
        """Return a browser that has come in by the link of a role; with none, one that has not."""
        client = TestClient(
            self.application, base_url=ORIGIN, headers={"origin": ORIGIN}, raise_server_exceptions=False
        )
        if role is not None:
            answer = client.get(f"/enter/{self.application.keys.token(role)}", follow_redirects=False)
            assert answer.status_code == (200 if role is KeyRole.TELEPHONE else 303)
        return client


def open_page(folder: Path, example: str = "garden-studio") -> OpenPage:
    """Open the page on a copy of an example."""
    house = folder / example
    if not house.exists():
        shutil.copytree(EXAMPLES / example, house, ignore=shutil.ignore_patterns("output"))
    file, reported = house / "job.yaml", list[Exception]()

    def report(error: Exception) -> str:
        reported.append(error)
        return "report.txt"

    desk = Desk(file=file, target=folder / "output" / example)
    hosts = {HOST}
    application = make_application(desk, hosts=hosts, cookie=COOKIE, report=report)
    return OpenPage(application=application, file=file, reported=reported, hosts=hosts)


def asked_now(client: TestClient, asked: dict[str, Any]) -> dict[str, Any]:
    """Return a change of the job as a window sends it that shows the job as it is now."""
    return {"number": client.get("/job/form").json()["number"], **asked}
