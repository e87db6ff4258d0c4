"""One register of findings: the screen, the summary, parts.json and every paper have the same ones, and as many.

The numbers of checks are taken from the text of the printed pages, as a reader would count them.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from functools import cache
from pathlib import Path

import pytest
from example_papers import example_papers
from outside_houses import EXAMPLES, HOUSES, planned
from pypdf import PdfReader

from jambs.app.chain import make_kits
from jambs.app.table import summary_text
from jambs.findings import Severity, SubjectKind
from jambs.job import Job, read_job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.outside.register import Paper, Registered, counts
from jambs.sheets.install_sheet import install_data
from jambs.sheets.record import job_record

PAPERS = {
    Paper.COURSES: "outside/courses and story poles.pdf",
    Paper.FLASHING: "outside/flashing.pdf",
    Paper.FASTENERS: "outside/fasteners.pdf",
    Paper.MOVEMENT: "outside/wood movement.pdf",
}


@pytest.fixture(scope="module")
def papers(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """The papers of the harbour house, and what the screen said."""
    harbour = example_papers("harbour-house", tmp_path_factory)
    return harbour.folder, harbour.said


def text(path: Path) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


def squeezed(words: str) -> str:
    return re.sub(r"\s", "", words)


def test_the_screen_counts_what_is_in_the_register(papers: tuple[Path, str]) -> None:
    register = planned("harbour-house")[1].register
    found, rest = counts(register.entries), counts(register.of_the_rest)
    said = f"{found[Severity.CHECK]} to check, {rest[Severity.CHECK]} of them of walls, elevations and the house"
    assert said in papers[1]
    assert f"{found[Severity.NOTE]} notes on the sheets" in papers[1]
    for one in register.entries:
        assert (one.sentence in papers[1]) is (one.severity is not Severity.NOTE), one.sentence


def test_rows_and_rest_add_up(papers: tuple[Path, str]) -> None:
    """Each finding counts once: in the row of its opening, or among those of walls, elevations and the house."""
    _, house = planned("harbour-house")
    rows = Counter[Severity]()
    for kit in house.kits:
        rows.update(counts(house.register.of_opening(kit.mark)))
    assert rows + Counter(counts(house.register.of_the_rest)) == Counter(counts(house.register.entries))


def test_the_summary_prints_each_finding_and_counts_as_the_register_does(papers: tuple[Path, str]) -> None:
    _, house = planned("harbour-house")
    printed, register = text(papers[0] / "summary.pdf"), house.register
    found = counts(register.entries)
    assert f"Findings: {found[Severity.CHECK]} CHECKS, {found[Severity.NOTE]} NOTES, of these" in printed
    assert [one.sentence for one in register.entries if squeezed(one.sentence) not in squeezed(printed)] == []


@pytest.mark.parametrize("paper", PAPERS)
def test_a_paper_of_the_outside_has_as_many_checks_as_the_register(paper: Paper, papers: tuple[Path, str]) -> None:
    register = planned("harbour-house")[1].register
    told = {one.sentence for one in register.on(paper) if one.severity is Severity.CHECK}
    path = papers[0] / PAPERS[paper]
    assert len(re.findall(r"\bCHECK\b", text(path))) == len(told)
    assert [one for one in told if squeezed(one) not in squeezed(text(path))] == []


def test_an_install_sheet_has_as_many_checks_as_the_register(papers: tuple[Path, str]) -> None:
    _, house = planned("harbour-house")
    for kit in house.kits:
        told = [one for one in house.register.on(Paper.INSTALL_SHEET, mark=kit.mark)]
        weighty = [one for one in told if one.severity is Severity.CHECK]
        printed = text(papers[0] / "install sheets" / f"{kit.mark}.pdf")
        assert len(re.findall(r"\bCHECK\b", printed)) == len(weighty), kit.mark


def test_a_cut_sheet_has_as_many_checks_as_its_row(papers: tuple[Path, str]) -> None:
    _, house = planned("harbour-house")
    for kit in house.kits:
        told = counts(house.register.of_opening(kit.mark)).get(Severity.CHECK, 0)
        printed = text(papers[0] / "cut sheets" / f"{kit.mark}.pdf")
        assert len(re.findall(r"\bCHECK\b", printed)) == told, kit.mark


def test_parts_json_has_the_register(papers: tuple[Path, str]) -> None:
    register = planned("harbour-house")[1].register
    record = json.loads((papers[0] / "parts.json").read_text(encoding="utf-8"))
    for opening in record["openings"]:
        told = {(one.severity.value, one.sentence) for one in register.of_opening(opening["mark"])}
        assert {(one["weight"], one["text"]) for one in opening["findings"]} == told
    told = {(one.severity.value, one.sentence) for one in register.of_the_rest}
    assert {(one["weight"], one["text"]) for one in record["findings"]} == told


def test_install_and_flashing_papers_say_the_same_of_the_membrane(papers: tuple[Path, str]) -> None:
    """Planes by hand: the housewrap lies on the sheathing, 5 1/2 in behind the sea side's trim plane (2 + 3 + 1/2)."""
    flashing = text(papers[0] / "outside" / "flashing.pdf")
    install = text(papers[0] / "install sheets" / "W01.pdf")
    lap = 'strip of membrane: from the membrane, 5 1/2" behind the trim plane, out over the upstand of 3"; taped'
    assert 'The membrane lies 5 1/2" behind the trim plane' in flashing
    for printed in (flashing, install):
        assert lap in printed
        assert 'membrane: over the upstand of 3"' not in printed


@pytest.mark.parametrize("name", HOUSES)
def test_every_lap_is_the_same_on_both_papers(name: str) -> None:
    _, house = planned(name)
    by_mark = {one.mark: one.laps for one in house.outside.flashings}
    for mark, installing in house.installing.items():
        assert mark not in by_mark or installing.fitting.flashings.laps == by_mark[mark]


def test_a_finding_of_a_wall_is_one_with_all_its_openings() -> None:
    register = planned("harbour-house")[1].register
    (sea,) = (one for one in register.entries if one.finding.code == "membrane-behind" and "W01" in one.marks)
    assert sea.subject.name == "sea side" and {"W01", "W02", "W11", "W14"} <= set(sea.marks)
    assert "D01" not in sea.marks
    assert sea.papers == {Paper.INSTALL_SHEET, Paper.FLASHING}


def test_some_openings_alone_are_told_of_themselves_and_their_walls() -> None:
    register = planned("harbour-house")[1].register.only(["W01"])
    assert {one.subject.name for one in register.entries} == {"W01", "sea side"}


@cache
def small(name: str) -> tuple[Job, PlannedHouse]:
    job = read_job(EXAMPLES / name)
    return job, plan_house(make_kits(job), job)


@pytest.mark.parametrize("name", ["garden-studio", "quarry-loft", "gable-house"])
def test_screen_rows_sheets_and_record_count_alike(name: str) -> None:
    """From what is printed, before it is set: ganged units, shapes and returns too."""
    job, house = small(name)
    found, record = counts(house.register.entries), job_record(house.kits, job)
    checks, screen = found.get(Severity.CHECK, 0), summary_text(house.kits, house.register, job)
    assert (f"; {checks} to check" in screen) is ("to check" in screen) is bool(checks)
    assert f"; {count_words(found[Severity.NOTE], 'note')} on the sheets" in screen
    rows = {line.split()[0]: line for line in screen.splitlines() if "planned" in line or "measured" in line}
    counted = 0
    for kit, opening in zip(house.kits, record["openings"], strict=True):
        own = sum(one["weight"] == "check" for one in opening["findings"])  # these stand on its cut sheet
        assert not own or f"{count_words(own, 'check')}" in rows[kit.mark], rows[kit.mark]
        assert own or "check" not in rows[kit.mark]
        counted += own
        installing = install_data(kit, house.installing[kit.mark], job)["findings"]
        told = house.register.on(Paper.INSTALL_SHEET, mark=kit.mark)
        assert {one["text"] for one in installing} == {one.sentence for one in told if not of_house(one)}
    assert counted + counts(house.register.of_the_rest).get(Severity.CHECK, 0) == checks


def of_house(one: Registered) -> bool:
    return one.subject.kind is SubjectKind.HOUSE


def count_words(count: int, what: str) -> str:
    return f"{count} {what}" + "s" * (count > 1)
