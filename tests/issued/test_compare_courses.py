"""Cladding returned in courses from one issue to the next: its pieces are many, and the siding crew's, without labels.

The base window on its sheathing, clapboards of 5 showing 4: 13 pieces of 2 7/8 pass each side (W1-10, W1-11).
"""

from __future__ import annotations

import copy
from functools import cache
from typing import Any

import pytest
from cases import changed, job_of
from clad import DEEP, clad
from issued_records import record_of

from jambs.app.basis import basis_of
from jambs.app.chain import kits_as_cut
from jambs.issued.basis import LABELS, PARTS
from jambs.issued.compare import compare_openings, verdict
from jambs.issued.old_labels import _rows
from jambs.issued.opening_figures import other_why
from jambs.issued.reasons import CoursesChanged, OtherBoards, ShopChanged
from jambs.issued.verdict_reasons import CutPartVerdict, Recut, RecutWhy, StillGood, ThrowAway, Trim
from jambs.sheets.record import job_record

TOLERANCE = 1 / 32
Opening = dict[str, Any]
LEGS = ("W1-10", "W1-11")
ONE_WIDER = {"kind": "clapboards", "widths": ["7"], "least_lap": "1", "greatest_lap": "1"}


def on_wall(laid: str, **cladding: Any) -> dict[str, Any]:
    said = {"kind": "clapboards", "widths": ["5"], "least_lap": "1", "greatest_lap": "1", **cladding}
    south = {"start_line": "0", "eave": "120", "width": "120", "faces": "south", "cladding": said}
    return {
        **DEEP,
        "exterior_trim__outside": clad(laid=laid),
        "openings__0__faces": "south",
        "openings__0__from_left": "24",
        "elevations": {"south": south},
    }


@cache
def _opening(laid: str, widths: tuple[str, ...]) -> Opening:
    return record_of(**on_wall(laid, widths=list(widths)))["openings"][0]  # type: ignore[no-any-return]


def opening(laid: str = "in courses", widths: tuple[str, ...] = ("5",)) -> Opening:
    return copy.deepcopy(_opening(laid, widths))


def leg(**more: Any) -> dict[str, Any]:
    """The left leg with ``courses`` as wide as given, and ``deeper`` by so much."""
    found = copy.deepcopy(next(one for one in opening()["parts"] if one["mark"] == "W1-10"))
    if "courses" in more:
        found["courses"] = [{"value": one, "text": f'{one}"'} for one in more["courses"]]
    found["width"]["value"] += more.get("deeper", 0.0)
    found["length"]["value"] += more.get("higher", 0.0)
    return found  # type: ignore[no-any-return]


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        ([5.0] * 13, [5.0] * 13, StillGood()),
        ([5.0] * 13, [5.0] * 12, StillGood()),
        ([5.0] * 13, [5.0] * 14, Recut(why=RecutWhy.PIECES)),
        ([5.0] * 13, [7.0] * 9, Recut(why=RecutWhy.PIECES)),
        ([5.0, 7.0, 7.0], [7.0, 5.0, 7.0], StillGood()),
        ([5.0, 7.0, 7.0], [7.0, 7.0, 7.0], Recut(why=RecutWhy.PIECES)),
        ([7.0] * 9, [5.0] * 9, StillGood(trims=(Trim.RIP,))),
    ],
)
def test_pieces_are_good_where_as_many_of_their_width_are_there(
    was: list[float], now: list[float], told: CutPartVerdict
) -> None:
    assert verdict(leg(courses=was), leg(courses=now), tolerance=TOLERANCE) == told


def test_pieces_are_as_long_as_the_side_is_deep_however_high_it_is() -> None:
    found = [
        verdict(leg(), leg(**by), tolerance=TOLERANCE)
        for by in ({"deeper": 1 / 32}, {"deeper": 3 / 64}, {"deeper": -3 / 64}, {"higher": 1 / 2})
    ]
    good = StillGood()
    assert found == [good, Recut(why=RecutWhy.SHORT), StillGood(trims=(Trim.CROSSCUT,)), good]


def test_wider_boards_of_the_wall_are_told_and_their_pieces_recut() -> None:
    """*Still good* stood beside pieces of 5 that courses of 7 take."""
    found = compare_openings(opening(), opening(widths=("7",)), tolerance=TOLERANCE)
    assert found.why == (CoursesChanged(),)
    assert {one.mark for one in found.changes} == {*LEGS}
    assert {one.verdict for one in found.changes} == {Recut(why=RecutWhy.PIECES)}


def test_courses_are_the_reason_only_where_all_else_is_as_it_was() -> None:
    old, new = opening(), opening(widths=("7",))
    assert other_why(old, new) == CoursesChanged()
    boards = opening()
    boards["parts"][0]["board"] = "1x8 poplar"
    assert other_why(old, boards) == OtherBoards()
    new["parts"][0]["width"]["text"] = '2"'
    assert other_why(old, new) == ShopChanged()
    deeper = opening(widths=("7",))
    next(one for one in deeper["parts"] if one["mark"] == LEGS[0])["width"]["text"] = '3"'
    assert other_why(old, deeper) == ShopChanged()
    wider = opening()
    wider["parts"][0]["width"]["text"] = '2"'
    assert other_why(old, wider) == ShopChanged()


def test_a_return_that_the_siding_crew_lays_now_is_another_thing() -> None:
    """Its board of the whole side is no piece of a course, and its label goes; so do the pieces the other way."""
    along, courses = opening("along the side"), opening()
    found = compare_openings(along, courses, tolerance=TOLERANCE)
    assert {one.verdict for one in found.changes if one.mark in LEGS} == {Recut(why=RecutWhy.SHAPE)}
    labels = {mark: told for mark, *_, told in _rows(along, courses, TOLERANCE)}
    assert {mark for mark, told in labels.items() if told == ThrowAway()} == {*LEGS}
    back = {mark for mark, *_ in _rows(courses, along, TOLERANCE)}
    assert back and not back & {*LEGS}


def test_no_old_label_is_told_of_that_never_was() -> None:
    told = {mark for mark, *_ in _rows(opening(), opening(widths=("7",)), TOLERANCE)}
    assert told and not told & {*LEGS}


def test_labels_do_not_depend_on_what_has_none_and_a_plan_does() -> None:
    """Other courses make the plan stale, and no label; a thicker board makes both."""

    def basis(**changes: Any) -> dict[str, dict[str, str]]:
        job = job_of(changed(**{**on_wall("in courses"), **changes}))
        kits = kits_as_cut(job)
        return {name: dict(one) for name, one in basis_of(kits, job, job_record(kits, job)).items()}

    was, now = basis(), basis(**on_wall("in courses", widths=["7"]))
    assert was[LABELS] == now[LABELS] and not {*LEGS} & was[LABELS].keys()
    assert {mark for mark in was[PARTS] if was[PARTS][mark] != now[PARTS][mark]} == {*LEGS}
    thicker = basis(exterior_trim__outside__casing__thickness="1 1/8")
    assert thicker[LABELS] != was[LABELS]
