"""Two people at one job, one with an editor and the command line, one on the page: nothing of either is lost, and no
paper of one contradicts the other's unsaid.
"""

from __future__ import annotations

import threading
from pathlib import Path
from typing import Any

import pytest
from pages import OpenPage, asked_now, open_page
from starlette.testclient import TestClient

from jambs.face import build, labels
from jambs.issued.record import Record
from jambs.job import read_job

ONE = "  - {mark: W1, room: Studio, frame: 24 x 36, sill_height: 30}\n"
TWO = "  - {mark: W2, room: Bath, frame: 30 x 40, sill_height: 34}\n"


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    found = open_page(tmp_path)
    edit(found, ONE, ONE + TWO)
    return found


def edit(opened: OpenPage, old: str, new: str) -> None:
    """Change the job file with an editor."""
    text = opened.file.read_text(encoding="utf-8")
    assert old in text
    opened.file.write_text(text.replace(old, new), encoding="utf-8")


def papers(opened: OpenPage) -> Path:
    return opened.file.parents[1] / "output" / "garden-studio"


def issue(opened: OpenPage) -> None:
    build(read_job(opened.file), papers(opened), with_solids=False)


def set_sill(client: TestClient, value: str, at: int = 0) -> Any:
    asked = {"act": "set", "path": ["openings", at, "sill_height"], "value": value}
    return client.post("/job/change", json=asked_now(client, asked))


def stale(client: TestClient) -> dict[str, str]:
    """Return what the page says is stale, by the verb that makes it anew."""
    return {one["verb"]: one["why"] for one in client.get("/papers/list").json()["stale"]}


def test_what_one_saves_on_the_page_makes_the_others_papers_stale_and_the_other_way(opened: OpenPage) -> None:
    client = opened.client()
    issue(opened)
    labels(read_job(opened.file), papers(opened))
    assert stale(client) == {}

    # On the page: not saved, it is in no paper, and no paper is stale for the one with the editor.
    assert set_sill(client, "32").status_code == 200
    issue(opened)
    assert len(Record.open(papers(opened)).issues) == 1
    assert client.post("/papers/work", json={"verb": "build"}).status_code == 409  # made of what is saved

    # The editor adds an opening meanwhile and builds; saving is refused until the change is done on that file.
    edit(opened, TWO, TWO + "  - {mark: W3, room: Shed, frame: 20 x 20, sill_height: 50}\n")
    issue(opened)
    assert client.post("/draft/save", json={}).status_code == 409
    assert client.post("/draft/onto", json={}).status_code == 200
    assert client.post("/draft/save", json={}).status_code == 200
    text = opened.file.read_text(encoding="utf-8")
    assert "sill_height: 32" in text and "mark: W3" in text

    # Now the sheets of that build are stale by what the page saved, the labels by what the editor added.
    found = stale(client)
    assert found["build"].startswith("W1") and "W3" not in found["build"] and "gone" not in found["build"]
    assert "of W3 new since" in found["labels"] and "W1" not in found["labels"]
    issue(opened)
    record = Record.open(papers(opened))
    assert record.latest and record.latest.changed == ("W1",) and "build" not in stale(client)

    # The editor takes away what was added; on the page the labels are still without it, and so not stale for it.
    edit(opened, "  - {mark: W3, room: Shed, frame: 20 x 20, sill_height: 50}\n", "")
    found = stale(client)
    assert "W3 gone since" in found["build"] and "labels" not in found
    assert set_sill(client, "30").status_code == 200  # written onto their file
    client.post("/draft/save", json={})
    assert ONE in opened.file.read_text(encoding="utf-8")
    issue(opened)
    assert stale(client) == {}


def test_both_change_one_line_and_neither_is_overwritten(opened: OpenPage) -> None:
    client = opened.client()
    set_sill(client, "32")
    edit(opened, "frame: 24 x 36, sill_height: 30", "frame: 24 x 36, sill_height: 33")
    issue(opened)
    assert client.post("/draft/save", json={}).status_code == 409
    assert "sill_height: 33" in opened.file.read_text(encoding="utf-8")
    assert stale(client) == {"build": "W1 changed since"}  # by what the page has not saved
    fresh = open_page(opened.file.parents[1]).client()
    assert stale(fresh) == {}  # and by the file nothing is


def test_one_builds_while_the_other_prints_labels(opened: OpenPage) -> None:
    """Both are let in one after the other, and the later of them sees what the first one wrote."""
    issue(opened)
    edit(opened, "frame: 24 x 36", "frame: 24 x 37")
    faults: list[BaseException] = []

    def told(work: Any) -> None:
        try:
            work()
        except BaseException as error:
            faults.append(error)

    job = read_job(opened.file)
    at_once = [lambda: issue(opened), lambda: labels(job, papers(opened))]
    threads = [threading.Thread(target=told, args=(work,)) for work in at_once]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert faults == []
    record = Record.open(papers(opened))
    assert record.latest_issue and record.latest_issue.changed == ("W1",)
    assert {"site/labels.pdf", "cut sheets/W1.pdf"} <= record.papers.keys()
    client = opened.client()
    assert stale(client) == {}
    labels(read_job(opened.file), papers(opened), overwrite=True)
    assert stale(client) == {}
