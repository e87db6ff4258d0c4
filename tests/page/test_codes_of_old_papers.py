"""A square code on a paper of before: it opens the opening that it was printed of, whatever its mark is today."""

from __future__ import annotations

from pathlib import Path

import pytest
from pages import open_page
from starlette.testclient import TestClient
from test_telephone import picture

from jambs.face import build
from jambs.job import read_job
from jambs.page.keys import KeyRole
from jambs.sheets.label_codes import code_text

ONE = "  - {mark: W1, room: Studio, frame: 24 x 36, sill_height: 30}\n"
FIRST = (
    f"{ONE}  - {{mark: W2, room: Bath, frame: 30 x 40, sill_height: 34}}\n"
    "  - {mark: W3, room: Shed, frame: 36 x 20, sill_height: 50}\n"
)
THEN = (
    "  - {mark: W2, room: Studio, frame: 24 x 36, sill_height: 30}\n"
    "  - {mark: W1, room: Bath, frame: 30 x 40, sill_height: 34}\n"
)
"""Two have exchanged their marks since, and the third is gone."""


@pytest.fixture(scope="module")
def telephone(tmp_path_factory: pytest.TempPathFactory) -> TestClient:
    """Come in by telephone to a job that was issued twice."""
    opened = open_page(tmp_path_factory.mktemp("papers"))
    papers = opened.file.parents[1] / "output" / "garden-studio"
    before = opened.file.read_text().partition(ONE)
    for openings in (FIRST, THEN):
        opened.file.write_text(before[0] + openings + before[2])
        build(read_job(opened.file), papers, with_solids=False, overwrite=True)
    return opened.client(KeyRole.TELEPHONE)


@pytest.mark.parametrize(
    ("printed", "issue", "path", "said"),
    [
        ("W1", "issue 1 · 2026-05-18 · 7F3A", "W2", "This paper calls the opening W1; its mark is W2 now."),
        ("W2-4", "issue 1 · 7F3A", "W1", "This paper calls the opening W2; its mark is W1 now."),
        ("W1", "changed since issue 1 · 2026-05-18 · 7F3A", "W2", "calls the opening W1; its mark is W2 now"),
        ("W1", "issue 2 · 2026-05-19 · 11AA", "W1", None),
        ("w2-1", "issue 2 · 11AA", "W2", None),
        ("W1", "not issued · 2026-05-18 · 7F3A", "W1", None),
        ("W1", "issue 9 · 7F3A", "W1", None),  # of no issue that is known: as the marks are today
    ],
)
def test_a_code_opens_the_opening_it_was_printed_of(
    printed: str, issue: str, path: str, said: str | None, telephone: TestClient
) -> None:
    answer = telephone.post("/telephone/code", content=picture(code_text(printed, issue, "Garden studio")))
    assert answer.status_code == 200
    assert answer.json()["path"] == f"/telephone/opening/{path}"
    assert (said is None) is ("said" not in answer.json())
    assert said is None or said in answer.json()["said"]


def test_a_code_of_an_opening_that_is_gone_says_so(telephone: TestClient) -> None:
    for issue in ("issue 1 · 7F3A", "issue 2 · 11AA"):
        answer = telephone.post("/telephone/code", content=picture(code_text("W3-2", issue, "Garden studio")))
        assert answer.status_code == 422 and "W3" in answer.json()["said"]
        assert ("W3 in Shed, is no longer in the job" in answer.json()["said"]) is (issue == "issue 1 · 7F3A")


def test_a_code_follows_an_opening_that_was_renamed_again_and_again(tmp_path: Path) -> None:
    """With an issue between, and since the last one, when nothing was printed with the new mark yet."""
    opened = open_page(tmp_path)
    papers, first = tmp_path / "output" / "garden-studio", opened.file.read_text()
    telephone = opened.client(KeyRole.TELEPHONE)
    for mark in ("W1", "K1", "K2"):
        opened.file.write_text(first.replace("mark: W1", f"mark: {mark}"))
        build(read_job(opened.file), papers, with_solids=False, overwrite=True)
    for mark in ("K3", "K4"):
        opened.file.write_text(first.replace("mark: W1", f"mark: {mark}"))
        for printed, issue in (("W1", "issue 1 · 7F3A"), ("K1-2", "issue 2 · 7F3A"), ("K2", "issue 3 · 7F3A")):
            answer = telephone.post("/telephone/code", content=picture(code_text(printed, issue, "Garden studio")))
            assert answer.json()["path"] == f"/telephone/opening/{mark}"
            assert f"its mark is {mark} now" in answer.json()["said"]
    never = telephone.post("/telephone/code", content=picture(code_text("W1", "not issued", "Garden studio")))
    assert never.status_code == 422 and "Nothing on record says which opening was W1" in never.json()["said"]
