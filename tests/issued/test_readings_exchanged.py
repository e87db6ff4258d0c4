"""Two windows of one room exchange their marks while what was read stays with the marks, as it does in a table.

What tells them apart tells that the reading is of the other one; where nothing does, it is asked.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from cases import changed, job_of, strips
from test_plan import DAY, facts_of

from jambs.app.first_reads import first_reads
from jambs.app.marking import marked_kits, with_marks
from jambs.app.measure import openings_to_measure
from jambs.app.writing import identity
from jambs.issued.entry import BUILD
from jambs.issued.plan import new_issue, plan_issue
from jambs.issued.writing import Commit, begin
from jambs.job import Job
from jambs.length import Units
from jambs.parts.kit.kit import Kit
from jambs.sheets.record import job_record

Told = dict[str, Any]
DEPTHS = {"head_left": "4 11/16", "head_right": "4 3/4", "sill_left": "4 5/8", "sill_right": "4 23/32"}
READ = {"date": "2026-06-01", "interior_depth": DEPTHS}
OF_THE_OTHER = "since then B is the opening that they were read at, and they may belong to it."
ASKED = "The job says the same of B and A, and lists them in another order than when this one was read on 2026-06-01."


def house(**openings: Told) -> Job:
    """Read the base job with two windows of its kind in one room, and what is said of each, by mark."""
    data = changed()
    (base,) = data["openings"]
    data["elevations"] = {side: {"start_line": 0, "eave": 120} for side in ("south", "north")}
    data["openings"] = [{**base, "mark": mark, **told} for mark, told in openings.items()]
    return job_of(data)


def issue(job: Job, folder: Path) -> dict[str, Kit]:
    """Issue a house as a build does, without papers that say anything; return its kits."""
    marked = marked_kits(job, folder)
    printed = job_record(strips(marked.kits), job)
    with begin(folder, identity(job, folder), verb=BUILD) as writing, writing.fresh_folder() as fresh:
        plan = plan_issue(writing.record, printed, day=DAY, tolerance=1 / 32)
        (fresh / "parts.json").write_text(str(printed), encoding="utf-8")
        issued = new_issue(writing.record, plan, fresh)
        work = Commit(staged=fresh, day=DAY, facts=facts_of(plan), documents=plan.documents(), issue=issued)
        writing.commit(with_marks(work, marked, writing.record, has_renamed=True))
    return {kit.mark: kit for kit in marked.kits}


def told(kit: Kit) -> str:
    return " ".join(one.sentence(Units.INCH) for one in kit.placement.findings)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ({"sill_height": 30}, {"sill_height": 40}),
        ({"weight": "70 lb"}, {"weight": "80 lb"}),
        ({"from_left": 40}, {"from_left": 160}),
        ({"from_left": 40, "elevation": "south"}, {"from_left": 40, "elevation": "north"}),
    ],
    ids=["height", "weight", "from left", "elevation"],
)
def test_a_reading_that_is_left_behind_is_set_aside(one: Told, other: Told, tmp_path: Path) -> None:
    """Before the issue that exchanges the marks and after it; it comes back with the marks."""
    assert issue(house(A={**one, "measured": READ}, B=other), tmp_path)["A"].is_measured
    exchanged = house(A={**other, "measured": READ}, B=one)
    to_measure = next(iter(openings_to_measure(exchanged, tmp_path)))
    assert to_measure.opening.readings is None
    for _ in range(2):
        kit = issue(exchanged, tmp_path)["A"]
        assert not kit.is_measured and OF_THE_OTHER in told(kit)
    kit = issue(house(A={**one, "measured": READ}, B=other), tmp_path)["A"]
    assert kit.is_measured and "set aside" not in told(kit)


@pytest.mark.parametrize(("one", "other"), [({"from_left": 40}, {"from_left": 160}), ({}, {})])
def test_a_reading_that_goes_along_stays(one: Told, other: Told, tmp_path: Path) -> None:
    issue(house(A={**one, "measured": READ}, B=other), tmp_path)
    for _ in range(2):
        kits = issue(house(B={**one, "measured": READ}, A=other), tmp_path)
        assert kits["B"].is_measured and not kits["A"].is_measured
        assert not any("set aside" in told(kit) or "another order" in told(kit) for kit in kits.values())


@pytest.mark.parametrize(("left", "holds"), [("75 15/32", True), ("75 1/2", False)])
def test_an_opening_that_is_another_hole_in_the_wall_loses_its_reading(left: str, holds: bool, tmp_path: Path) -> None:
    """35 1/2 to the right the frame stands wholly beside where it stood; nearer, the plan was put right."""
    issue(house(A={"from_left": 40, "measured": READ}), tmp_path)
    kit = issue(house(A={"from_left": left, "measured": READ}), tmp_path)["A"]
    assert kit.is_measured == holds
    assert ('the opening moved 35 1/2" to the right, as its wall is seen from outside' in told(kit)) != holds


def test_an_opening_on_another_elevation_loses_its_reading(tmp_path: Path) -> None:
    issue(house(A={"elevation": "south", "measured": READ}), tmp_path)
    kit = issue(house(A={"elevation": "north", "measured": READ}), tmp_path)["A"]
    assert not kit.is_measured and "the opening moved from south to north" in told(kit)


def test_a_place_that_is_said_only_now_leaves_the_reading(tmp_path: Path) -> None:
    issue(house(A={"measured": READ}, B={}), tmp_path)
    kits = issue(house(B={"from_left": 40}, A={"from_left": 160, "measured": READ}), tmp_path)
    assert kits["A"].is_measured and "set aside" not in told(kits["A"])


def test_of_two_that_nothing_tells_apart_it_is_asked(tmp_path: Path) -> None:
    """Their rows stand in another order: sorted, or their marks exchanged. A new reading ends it."""
    assert ASKED not in told(issue(house(A={"measured": READ}, B={}), tmp_path)["A"])
    for _ in range(2):
        kits = issue(house(B={}, A={"measured": READ}), tmp_path)
        assert kits["A"].is_measured and ASKED in told(kits["A"]) and ASKED not in told(kits["B"])
    again = {**READ, "date": "2026-06-09"}
    assert "another order" not in told(issue(house(B={}, A={"measured": again}), tmp_path)["A"])
    assert "another order" not in told(issue(house(A={"measured": READ}, B={}), tmp_path)["A"])


def test_a_third_window_that_is_alike_asks_nothing(tmp_path: Path) -> None:
    issue(house(A={"measured": READ}, B={}), tmp_path)
    kit = issue(house(C={}, A={"measured": READ}, B={}), tmp_path)["A"]
    assert kit.is_measured and "another order" not in told(kit)


def test_while_an_exchange_is_not_issued_no_verb_notes_a_reading(tmp_path: Path) -> None:
    """Another verb prints by the marks of the job; what is read there first is of these marks once they are issued."""
    one, other = {"sill_height": 30}, {"sill_height": 40}
    issue(house(A=one, B=other), tmp_path)
    exchanged = house(A={**other, "measured": READ}, B=one)
    marked = marked_kits(exchanged, tmp_path)
    with begin(tmp_path, identity(exchanged, tmp_path), verb="labels") as writing, writing.fresh_folder() as fresh:
        (fresh / "labels.pdf").write_text("labels", encoding="utf-8")
        writing.commit(with_marks(Commit(staged=fresh, day=DAY), marked, writing.record))
    assert first_reads(exchanged, tmp_path).known == {}
    kit = issue(exchanged, tmp_path)["A"]
    assert kit.is_measured and "set aside" not in told(kit)
