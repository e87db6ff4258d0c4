"""The papers of the page: written aside, listed from the record, served by key, stopped, and called stale."""

from __future__ import annotations

import time
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from pages import OpenPage, asked_now, open_page
from starlette.testclient import TestClient

from jambs.commands.command_line import main
from jambs.commands.stopped import STOPPED
from jambs.face import build, buy, labels, read_job
from jambs.job.starter import new_job_text
from jambs.length import Units
from jambs.page.paper_work import PaperWork
from jambs.screen.papers_data import key_of

PATIENCE = 120.0


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


def finished(client: TestClient) -> dict[str, Any]:
    """Wait until a verb has ended, and return how."""
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        state: dict[str, Any] = client.get("/papers/work").json()
        if not state["is_running"]:
            return state
        time.sleep(0.05)
    raise AssertionError("it never ended")


def listed(client: TestClient) -> dict[str, dict[str, Any]]:
    """Return all papers by name."""
    found = client.get("/papers/list").json()
    return {
        paper["name"]: paper for group in found["groups"] for folder in group["folders"] for paper in folder["papers"]
    }


def test_papers_are_built_looked_at_and_called_stale(opened: OpenPage) -> None:
    client = opened.client()
    assert listed(client) == {}
    assert client.post("/papers/work", json={"verb": "measure"}).status_code == 200
    assert client.post("/papers/work", json={"verb": "measure"}).status_code == 409
    state = finished(client)
    assert (state["code"], state["verb"]) == (0, "measure")
    paper = listed(client)["measure sheets.pdf"]
    assert paper["why"] == ""
    answer = client.get(f"/paper/{paper['key']}")
    assert answer.content.startswith(b"%PDF")
    assert answer.headers["content-disposition"] == 'inline; filename="measure sheets.pdf"'
    text = opened.file.read_text(encoding="utf-8")
    opened.file.write_text(text.replace("frame: 24 x 36", "frame: 24 x 40"), encoding="utf-8")
    assert listed(client)["measure sheets.pdf"]["why"] == "W1 changed since"
    assert client.get("/papers/list").json()["stale"] == [{"verb": "measure", "count": 2, "why": "W1 changed since"}]
    house = client.get("/").text
    assert '<span class="state stale">stale sheets</span>' in house and 'class="tagword">stale</text>' in house


def test_each_paper_says_what_changed_of_its_own(opened: OpenPage) -> None:
    text = opened.file.read_text(encoding="utf-8")
    one = next(line for line in text.splitlines() if "mark: W1" in line)
    opened.file.write_text(text.replace(one, f"{one}\n{one.replace('W1', 'W2')}"), encoding="utf-8")
    build(read_job(opened.file), opened.file.parents[1] / "output" / "garden-studio", with_solids=False)
    client = opened.client()
    assert listed(client)["W1.pdf"]["why"] == ""
    wider = opened.file.read_text(encoding="utf-8").replace("frame: 24 x 36", "frame: 24 x 40")
    opened.file.write_text(wider, encoding="utf-8")
    papers = listed(client)
    assert (papers["W1.pdf"]["why"], papers["W2.pdf"]["why"]) == ("W1 changed since", "W2 changed since")
    assert papers["parts.csv"]["why"] == "W1, W2 changed since"
    opened.file.write_text(wider.replace("frame: 24 x 40", "frame: 24 x 36", 1), encoding="utf-8")
    papers = listed(client)
    assert (papers["W1.pdf"]["why"], papers["W2.pdf"]["why"]) == ("", "W2 changed since")


def test_a_cutting_plan_tells_which_papers_it_made_stale(opened: OpenPage) -> None:
    """The job file is the same before and after: the page asks the record, as `jambs check` does."""
    papers = opened.file.parents[1] / "output" / "garden-studio"
    opened.file.write_text(new_job_text(Units.INCH), encoding="utf-8")
    build(read_job(opened.file), papers, with_solids=False)
    client = opened.client()
    assert client.get("/papers/list").json()["stale"] == []
    buy(read_job(opened.file), papers)
    labels(read_job(opened.file), papers)
    why = "the boards of W01, D01 changed since"
    assert [(one["verb"], one["why"]) for one in client.get("/papers/list").json()["stale"]] == [("build", why)]
    said = CliRunner().invoke(main, ["check", str(opened.file), "--out", str(papers)]).stdout
    assert f"{why}; run `jambs build" in said and "jambs labels" not in said


@pytest.mark.parametrize(
    "key", ["../../job.yaml", "..%2F..%2Fjob.yaml", "job.yaml", key_of("job.yaml"), key_of("../job.yaml"), "0" * 24]
)
def test_a_paper_is_no_path(key: str, opened: OpenPage) -> None:
    answer = opened.client().get(f"/paper/{key}")
    assert answer.status_code == 404
    assert "Garden studio" not in answer.text


def test_papers_are_made_of_what_is_saved(opened: OpenPage) -> None:
    client = opened.client()
    moved = client.post("/openings/W1/position", json={"plane": 4.6, "reach": 0, "alone": False})
    assert moved.status_code == 200
    answer = client.post("/papers/work", json={"verb": "build"})
    assert answer.status_code == 409
    assert answer.json()["said"] == "Save first: papers are made from the job file."


def test_a_verb_that_is_none_does_nothing(opened: OpenPage) -> None:
    assert opened.client().post("/papers/work", json={"verb": "revisions"}).status_code == 409


@pytest.mark.parametrize("after", [0.0, 1.0])
def test_work_is_stopped_with_a_sentence_and_nothing_is_half_written(after: float, opened: OpenPage) -> None:
    """While libraries load too: a library that is stopped then reports itself as broken."""
    work = PaperWork(file=opened.file, target=opened.file.parent / "papers")
    assert work.start("build", overwrite=False)
    time.sleep(after)
    work.stop()
    until = time.monotonic() + PATIENCE
    while work.state["is_running"] and time.monotonic() < until:
        time.sleep(0.02)
    assert work.state["code"] == 130
    assert work.state["lines"] == [STOPPED]
    assert not list((opened.file.parent / "papers").glob("*.pdf"))


@pytest.mark.parametrize("after", [0.0, 1.0])
def test_closing_the_page_stops_what_is_being_written_and_waits_for_it(after: float, opened: OpenPage) -> None:
    assert opened.application.close() is False
    client = opened.client()
    assert client.post("/papers/work", json={"verb": "build"}).status_code == 200
    time.sleep(after)
    assert opened.application.close() is True
    assert finished(client)["code"] == 130
    assert listed(client) == {} and opened.application.close() is False


def test_a_table_of_measures_that_the_job_does_not_read_is_told(opened: OpenPage) -> None:
    client = opened.client()
    assert client.get("/papers/list").json()["unread_table"] == ""
    client.post("/papers/work", json={"verb": "measure"})
    assert finished(client)["code"] == 0
    assert client.get("/papers/list").json()["unread_table"] == "measures.csv"
    before, own = opened.file.read_text(encoding="utf-8"), opened.file.with_name("mine.csv")
    own.write_bytes(opened.file.with_name("measures.csv").read_bytes())
    opened.file.write_text(before.replace("units: inch\n", "units: inch\nmeasures: mine.csv\n"), encoding="utf-8")
    assert client.get("/papers/list").json()["unread_table"] == ""  # it reads another one
    opened.file.write_text(before, encoding="utf-8")
    asked = {"act": "add", "path": [], "under": ["measures"], "value": "measures.csv"}
    assert client.post("/job/change", json=asked_now(client, asked)).status_code == 200
    assert client.get("/papers/list").json()["unread_table"] == ""
    assert client.post("/draft/save", json={}).status_code == 200
    assert "\nmeasures: measures.csv\n" in opened.file.read_text(encoding="utf-8")
    assert client.get("/papers/list").json()["unread_table"] == ""
