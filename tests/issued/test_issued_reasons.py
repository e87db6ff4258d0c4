"""Why sheets changed, came or went: each reason where it holds, not just beside it, and how it reads."""

from __future__ import annotations

import copy
import tempfile
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path
from typing import Any

import finding_rows
import pytest
from finding_rows import Case, Row, codes_in, each
from folders import JOB
from issued_records import record_of

from jambs.findings import Statement
from jambs.issued import reasons
from jambs.issued.compare import compare_openings
from jambs.issued.entry import BUILD
from jambs.issued.other_units import OTHER_UNITS
from jambs.issued.paths import FOLDER
from jambs.issued.plan import lay_out, new_issue, plan_issue, why_withdrawn, withdrawn
from jambs.issued.record import Record
from jambs.issued.remarked import REMARKED, remarked_in
from jambs.issued.writing import Commit, begin

DAY = "2026-06-02"
Opening = dict[str, Any]
Change = Callable[[Opening], object]


@cache
def _plain() -> Opening:
    return record_of()


def house(*changes: tuple[str, Change], marks: Iterable[str] = ("W1", "W2")) -> Opening:
    """Openings with these marks, W2 with another room; then changed."""
    openings = []
    for mark in marks:
        one = copy.deepcopy(_plain()["openings"][0]) | {"mark": mark, "room": f"room of {mark}"}
        for which, change in changes:
            if which == mark:
                change(one)
        openings.append(one)
    return {**_plain(), "openings": openings}


def room(text: str) -> Change:
    return lambda one: one.update(room=text)


def in_courses(pieces: int) -> Change:
    return lambda one: one["parts"][0].update(courses=[{"value": 5.0, "text": '5"'}] * pieces)


def why(change: Change, **before: Change) -> Case:
    """Compare an opening with itself as changed."""
    old, new = (copy.deepcopy(_plain()["openings"][0]) for _ in range(2))
    for one in before.values():
        one(old)
    change(new)
    found = compare_openings(old, new, tolerance=1 / 32).why
    return lambda: found


def issued(*states: Opening, mark: str = "W1", damaged: bool = False) -> Case:
    """What the last of some states says of an opening, each of those before having been issued."""

    def case() -> tuple[Statement, ...]:
        with tempfile.TemporaryDirectory() as folder:
            place = Path(folder) / "papers"
            for printed in states[:-1]:
                _issue(place, printed)
            if damaged:
                for file in (place / FOLDER / "files").glob("*"):
                    file.write_bytes(b"")
            plan = plan_issue(Record.open(place), states[-1], day=DAY, tolerance=1 / 32)
            return plan.why.get(mark, ())

    return case


def _issue(folder: Path, printed: Opening, *, without: str = "") -> None:
    with begin(folder, JOB, verb=BUILD) as writing, writing.fresh_folder() as fresh:
        plan = plan_issue(writing.record, printed, day=DAY, tolerance=1 / 32)
        (fresh / "list.txt").write_text(str(plan.number), encoding="utf-8")
        issue = new_issue(writing.record, plan, fresh)
        documents = {name: content for name, content in plan.documents().items() if name != without}
        writing.commit(Commit(staged=fresh, day=DAY, facts={}, documents=documents, issue=issue))


def _back_to(folder: Path, number: int) -> None:
    with begin(folder, JOB, verb=BUILD) as writing, writing.fresh_folder() as fresh:
        record = writing.record
        earlier = record.issue(number)
        lay_out(record, earlier, fresh)
        documents = {name: record.document(earlier, name) for name in earlier.documents}
        writing.commit(Commit(staged=fresh, day=DAY, documents=documents, issue=withdrawn(record, earlier)))


def back_to(number: int, *states: Opening) -> Case:
    """Why each opening gets another sheet where an earlier issue of some holds again; those of the last hold now."""

    def case() -> tuple[Statement, ...]:
        with tempfile.TemporaryDirectory() as folder:
            for printed in states:
                _issue(Path(folder) / "papers", printed)
            record = Record.open(Path(folder) / "papers")
            return tuple(why_withdrawn(record, record.issue(number)).values())

    return case


def dated(day: str | None, *, measured: bool) -> Change:
    def change(one: Opening) -> None:
        one["state"]["date"] = day
        one["depths"]["measured"] = {"interior": day or "some"} if measured else None

    return change


def window(**values: object) -> Change:
    return lambda one: one["window"].update(values)


def flange(text: str) -> Change:
    return lambda one: one["planes"]["flange_plane"].update(text=text)


def beside(*frames: str, wall: str = '5 1/2"', left: str = "W0", own: str = '36 × 48"') -> Change:
    """Trimmed as one with openings of these frames at its right and one at its left."""
    members = [(left, '30 × 48"'), ("W1", own), *((f"R{i}", frame) for i, frame in enumerate(frames))]
    openings = [{"mark": mark, "frame": {"text": frame}} for mark, frame in members]
    walls = [{"wall": {"text": wall}} for _ in members[1:]]
    return lambda one: one.update(mark="W1", trimmed_as_one={"openings": openings, "walls": walls})


def renamed_neighbor(mark: str, change: Change | None = None, *, own: Change | None = None) -> Case:
    """Compare an opening with itself, its sheet naming the one beside it, which was K1, by its mark of now."""
    (old, new), (was, now) = ([copy.deepcopy(_plain()["openings"][0]) for _ in range(2)] for _ in range(2))
    for one, name in ((old, "K1"), (new, mark)):
        one["findings"] = [f"trimmed as one with {name}"]
    was["mark"], now["mark"] = "K1", mark
    for record, changed in ((now, change), (new, own)):
        if changed:
            changed(record)
    found = compare_openings(old, new, tolerance=1 / 32, neighbors=[(was, now)]).why
    return lambda: found


HALVES, STEP = {"value": 1 / 32, "text": '1/32"'}, {"value": 1 / 64, "text": '1/64"'}


def on_grids(then: Opening, now: Opening, change: Change) -> Case:
    """Compare an opening with itself as changed, the shop rounding to one grid and then to another."""
    old, new = (copy.deepcopy(_plain()["openings"][0]) for _ in range(2))
    change(new)
    found = compare_openings(old, new, tolerance=1 / 32, grids=(then, now)).why
    return lambda: tuple(one for one in found if one.code == "grid-changed")


def nothing(one: Opening) -> None:
    """Leave it as it is."""


def wider(one: Opening) -> None:
    one["parts"][0]["width"]["text"] = '5"'


def wider_in_another_room(one: Opening) -> None:
    wider(one)
    one["room"] = "den"


def wider_with_a_caution(one: Opening) -> None:
    wider(one)
    one["cautions"] = ["x"]


def other_board(one: Opening) -> None:
    one["parts"][0]["board"] = "1x12 pine"


def other_board_and_wider(one: Opening) -> None:
    other_board(one)
    wider(one)


SAME = why(nothing)
W1, BOTH = house(marks=["W1"]), house()
SWAPPED = house(("W1", room("room of W2")), ("W2", room("room of W1")))
RENAMED = house(("W9", room("room of W1")), marks=["W9", "W2"])
OTHER = house(("W1", room("den")))
EXCHANGED = (
    "marks exchanged: it is what W2 was; boards labeled W2-… were cut for it, give them new labels before you recut any"
)
ROWS = [
    Row(code="added", appears=issued(W1, BOTH, mark="W2"), quiet=issued(BOTH, BOTH, mark="W2"), inch="added"),
    Row(code="removed", appears=issued(BOTH, W1, mark="W2"), quiet=issued(BOTH, RENAMED), inch="removed"),
    Row(code="renamed-to", appears=issued(BOTH, RENAMED), quiet=issued(BOTH, W1, mark="W2"), inch="renamed, now W9"),
    Row(
        code="renamed-from",
        appears=issued(BOTH, RENAMED, mark="W9"),
        quiet=issued(BOTH, house(marks=["W1", "W2", "W9"]), mark="W9"),
        inch="renamed, was W1",
    ),
    Row(code="marks-exchanged", appears=issued(BOTH, SWAPPED), quiet=issued(BOTH, OTHER), inch=EXCHANGED),
    Row(
        code="back-again",
        appears=issued(BOTH, W1, BOTH, mark="W2"),
        quiet=issued(BOTH, RENAMED, house(marks=["W9", "W2", "W1"])),  # its mark went to another name and is free
        inch="back again, last in issue 1; its parts have their old marks",
    ),
    Row(
        code="before-not-on-record",
        appears=issued(BOTH, OTHER, damaged=True),
        quiet=issued(BOTH, OTHER),
        inch="what it was before is not on record",
    ),
    Row(
        code="now-measured",
        appears=why(dated("2026-06-01", measured=True)),
        quiet=SAME,
        inch="measured 2026-06-01",
    ),
    Row(
        code="now-measured",
        appears=why(dated("2026-06-02", measured=True), first=dated("2026-06-01", measured=True)),
        quiet=why(dated("2026-06-01", measured=True), first=dated("2026-06-01", measured=True)),
        inch="measured again 2026-06-02",
    ),
    Row(
        code="now-half-measured",
        appears=why(dated(None, measured=True)),
        quiet=why(dated("2026-06-01", measured=True)),
        inch="half measured",
    ),
    Row(
        code="measures-withdrawn",
        appears=why(dated(None, measured=False), first=dated("2026-06-01", measured=True)),
        quiet=why(dated(None, measured=True), first=dated("2026-06-01", measured=True)),
        inch="measured depths no longer hold, planned again",
    ),
    Row(code="stated-changed", appears=why(room("den")), quiet=SAME, inch="room changed"),
    Row(
        code="window-detail-changed",
        appears=why(window(weight=99)),
        quiet=why(window(weight=99, sash="another")),
        inch="weight changed",
    ),
    Row(
        code="window-changed",
        appears=why(window(sash="another")),
        quiet=why(window(weight=99)),
        inch="window or its frame changed",
    ),
    Row(
        code="neighbors-changed",
        appears=why(beside('48 × 48"'), before=beside('45 × 48"')),
        quiet=why(beside('48 × 48"', left="L0"), before=beside('48 × 48"')),
        inch="what it is trimmed as one with changed",
    ),
    Row(
        code="neighbors-changed",
        appears=why(beside(), before=beside('45 × 48"')),
        quiet=why(beside(own='39 × 48"'), before=beside()),
        inch="what it is trimmed as one with changed",
    ),
    Row(
        code="neighbors-changed",
        appears=why(beside(wall='7"'), before=beside()),
        quiet=why(beside(), before=beside()),
        inch="what it is trimmed as one with changed",
    ),
    Row(
        code="trimmed-together",
        appears=why(beside()),
        quiet=why(beside(), before=beside()),
        inch="trimmed as one with W0 now",
    ),
    Row(
        code="trimmed-alone",
        appears=why(nothing, before=beside()),
        quiet=why(beside(wall='7"'), before=beside()),
        inch="no longer trimmed as one with W0",
    ),
    Row(
        code="grid-changed",
        appears=on_grids(HALVES, STEP, flange('3 1/4"')),
        quiet=on_grids(STEP, STEP, flange('3 1/4"')),
        inch='grid of the shop changed from 1/32" to 1/64"',
    ),
    Row(
        code="grid-changed",
        appears=on_grids(HALVES, STEP, flange('3 1/4"')),
        quiet=on_grids({}, STEP, flange('3 1/4"')),
        inch='grid of the shop changed from 1/32" to 1/64"',
    ),
    Row(
        code="grid-changed",
        appears=issued(BOTH, {**BOTH, "grid": STEP}),
        quiet=issued(BOTH, OTHER),
        inch='grid of the shop changed from 1/32" to 1/64"',
    ),
    Row(
        code="neighbors-renamed",
        appears=renamed_neighbor("K2"),
        quiet=renamed_neighbor("K1"),
        inch="what it is trimmed as one with has another mark, K2 (was K1)",
    ),
    Row(
        code="neighbors-renamed",
        appears=renamed_neighbor("K2"),
        quiet=renamed_neighbor("K2", room("den")),
        inch="what it is trimmed as one with has another mark, K2 (was K1)",
    ),
    Row(
        code="shop-changed",
        appears=renamed_neighbor("K2", own=wider),
        quiet=renamed_neighbor("K2"),
        inch="settings of the shop or the cutting plan changed",
    ),
    Row(
        code="units-changed",
        appears=why(nothing, before=lambda one: one.update({OTHER_UNITS: "mm"})),
        quiet=SAME,
        inch="units of the job changed from millimeters to inches",
    ),
    Row(
        code="window-changed",
        appears=why(nothing, before=window(shape={"kind": "raked"})),  # what a window has no more is a change too
        quiet=SAME,
        inch="window or its frame changed",
    ),
    Row(
        code="moved-in-wall",
        appears=why(flange('7 7/8"')),
        quiet=SAME,
        inch='window moved in the wall, flange from 9 1/4" to 7 7/8"',
    ),
    Row(
        code="other-boards",
        appears=why(other_board),
        quiet=why(other_board_and_wider),  # the part itself is another
        inch="cut from other boards",
    ),
    Row(
        code="shop-changed",
        appears=why(wider),
        quiet=why(wider_in_another_room),  # something was stated: that is why
        inch="settings of the shop or the cutting plan changed",
    ),
    Row(
        code="courses-changed",
        appears=why(in_courses(12), before=in_courses(11)),
        quiet=why(in_courses(12), before=in_courses(12)),
        inch="courses of the cladding changed",
    ),
    Row(
        code="sheets-say-otherwise",
        appears=why(lambda one: one.update(cautions=["x"], some_thing=1)),
        quiet=why(wider_with_a_caution),
        inch="changed on the sheets: cautions, some thing",
    ),
    Row(
        code="head-of-job-changed",
        appears=issued(BOTH, {**BOTH, "job": {**BOTH["job"], "name": "Another house"}}),
        quiet=issued(BOTH, OTHER),
        inch="name or address of the job changed",
    ),
    Row(
        code="withdrawn-to",
        appears=back_to(1, BOTH, OTHER),
        quiet=back_to(2, BOTH, OTHER),
        inch="withdrawn to issue 1",
    ),
    Row(
        code="withdrawn-to",
        appears=back_to(1, BOTH, OTHER, BOTH, OTHER),
        quiet=back_to(3, BOTH, OTHER, BOTH),
        inch="withdrawn to issue 1",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_an_issue_that_goes_back_keeps_what_it_says(tmp_path: Path) -> None:
    for printed in (BOTH, OTHER):
        _issue(tmp_path, printed)
    record = Record.open(tmp_path)
    assert withdrawn(record, record.issue(1)).why == {"W1": "withdrawn to issue 1"}


@pytest.mark.parametrize("without", ["", REMARKED])
def test_an_issue_keeps_which_openings_got_another_mark(without: str, tmp_path: Path) -> None:
    """As data; of a record that has only sentences, from these."""
    for printed in (BOTH, SWAPPED, house(("W9", room("room of W2")), marks=["W9", "W2"])):
        _issue(tmp_path, printed, without=without)
    found = [remarked_in(Record.open(tmp_path), issue) for issue in Record.open(tmp_path).issues.values()]
    assert [(one.renamed, one.exchanged) for one in found] == [
        ({}, {}),
        ({}, {"W1": "W2", "W2": "W1"}),
        ({"W9": "W1"}, {}),
    ]


def test_going_back_to_an_issue_gives_no_mark_anew(tmp_path: Path) -> None:
    """Issue 2 renamed W1, so issue 3 could give W1 to a new opening; back in issue 2 that one is only gone."""
    new = house(("W9", room("room of W1")), ("W1", room("den")), marks=["W9", "W2", "W1"])
    for printed in (BOTH, RENAMED, new):
        _issue(tmp_path, printed)
    _back_to(tmp_path, 2)
    plan = plan_issue(Record.open(tmp_path), new, day=DAY, tolerance=1 / 32)
    assert plan.back == {"W1": 3}


def test_every_code_has_its_row() -> None:
    assert codes_in(reasons) == {row.code for row in ROWS}
