"""Old → new, why, and what to do with a part that is cut already; each case by hand."""

from __future__ import annotations

import copy
import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import job_of, kit_of, strips
from issued_records import measured, opening_of

from jambs.app.chain import make_kits
from jambs.issued.compare import Change, compare_openings, paired, verdict
from jambs.issued.reasons import why_text
from jambs.issued.verdict_reasons import Recut, RecutWhy
from jambs.length import Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import PartIdentity
from jambs.sheets.record import job_record

EXAMPLES = Path(__file__).parents[2] / "examples"
TOLERANCE = 1 / 32 + 1e-9


def compared(old: dict[str, Any], new: dict[str, Any]) -> tuple[str, list[Change]]:
    found = compare_openings(old, new, tolerance=TOLERANCE)
    return why_text(found.why, Units.INCH), list(found.changes)


def to_do(change: Change) -> str:
    return change.verdict.sentence(Units.INCH) if change.verdict else ""


def test_nothing_changed() -> None:
    assert compared(opening_of(), opening_of())[1] == []


def test_another_board_alone_is_no_change_of_a_part() -> None:
    """Of a part that is ripped wider the board is told too; the parts beside it, cut from other boards, are not."""
    was, now = opening_of(), opening_of()
    for part in now["parts"]:
        part["board"] = "1x12 poplar"
    assert compared(was, now) == ("cut from other boards", [])
    now["parts"][0]["width"] = {"value": was["parts"][0]["width"]["value"] + 1, "text": '5 23/32"'}
    told = compared(was, now)[1]
    assert {change.mark for change in told} == {"W1-1"}
    assert [change.what.rpartition(", ")[2] for change in told] == ["board", "width"]


def test_measured_a_sixteenth_deeper_is_recut() -> None:
    # Planned 4-11/16 + 1/32 = 4-23/32; measured 4-3/4 all round: 4-25/32, a sixteenth more than was cut.
    why, changes = compared(opening_of(), opening_of(**measured(*["4 3/4"] * 4)))
    assert why == "measured 2026-06-01"
    assert changes[0] == Change(
        mark="W1-1",
        what="extension jamb, head, width",
        old='4 23/32"',
        new='4 25/32"',
        verdict=Recut(why=RecutWhy.NARROW),
    )
    assert {change.mark for change in changes} == {"W1-1", "W1-2", "W1-3", "W1-4"}


NAMES = ("head_left", "head_right", "sill_left", "sill_right")
INSIDE = {"interior_depth": dict.fromkeys(NAMES, "4 11/16")}
OUTSIDE = {"exterior_depth": dict.fromkeys(NAMES, "1 1/2")}


def read(day: str, *sides: Any) -> dict[str, Any]:
    return opening_of(openings__0__measured={"date": day, **{key: one for side in sides for key, one in side.items()}})


def test_what_is_read_in_two_steps_is_not_measured_again() -> None:
    """Inside first and outside later, and the other way round; a whole new reading is another one."""
    inside, outside, both = (read("2026-06-01", *sides) for sides in ((INSIDE,), (OUTSIDE,), (INSIDE, OUTSIDE)))
    assert compared(opening_of(), outside)[0] == "measured 2026-06-01"
    assert compared(inside, both)[0] == "measured outside too 2026-06-01"
    assert compared(outside, both)[0] == "measured inside too 2026-06-01"
    deeper = {"interior_depth": dict.fromkeys(NAMES, "4 3/4")}
    assert compared(both, read("2026-06-09", deeper, OUTSIDE))[0] == "measured again 2026-06-09"
    assert compared(inside, read("2026-06-09", deeper, OUTSIDE))[0] == "measured again 2026-06-09"


def test_measured_less_deep_is_ripped_down() -> None:
    changes = compared(opening_of(), opening_of(**measured(*["4 5/8"] * 4)))[1]
    assert {to_do(change) for change in changes} == {"still good: rip to the new size"}


def test_a_thirty_second_is_within_the_tolerance() -> None:
    changes = compared(opening_of(), opening_of(**measured(*["4 23/32"] * 4)))[1]
    assert {to_do(change) for change in changes} == {"still good"}


def test_other_stock_is_recut() -> None:
    jamb = {"thickness": "3/4", "stock": "oak", "joint": "rabbet", "rabbet_depth": "3/8"}
    why, changes = compared(opening_of(), opening_of(interior_trim__inside__jamb=jamb))
    assert why == "trim changed"
    assert {to_do(c) for c in changes if c.mark == "W1-1"} == {"recut: other stock"}


def test_a_rabbeted_head_cannot_be_shortened_but_a_square_leg_can() -> None:
    # A frame 1 in less wide and high: the head carries its rabbets at both ends, the legs are cut square.
    smaller = opening_of(openings__0__frame="34 1/2 x 46 1/2", openings__0__rough_opening="35 x 47")
    why, changes = compared(opening_of(), smaller)
    told = {(c.what, to_do(c)) for c in changes}
    assert "window or its frame changed" in why
    assert ("extension jamb, head, length", "recut: its ends are cut for another length") in told
    assert ("extension jamb, left leg, length", "still good: crosscut to the new size") in told
    assert ("frame", "") in told


def test_mitered_casing_is_cut_shorter_but_never_longer() -> None:
    larger = opening_of(openings__0__frame="36 1/2 x 48 1/2", openings__0__rough_opening="37 x 49")
    assert {to_do(c) for c in compared(opening_of(), larger)[1] if c.what == "interior casing, head, length"} == {
        "recut: too short"
    }
    assert {to_do(c) for c in compared(larger, opening_of())[1] if c.what == "interior casing, head, length"} == {
        "still good: crosscut to the new size"
    }


def test_parts_that_come_and_go() -> None:
    bare = opening_of(openings__0__exterior_trim="none")
    gone, come = compared(opening_of(), bare)[1], compared(bare, opening_of())[1]
    assert ("W1-12", "exterior sill", "no longer needed") in {(c.mark, c.what, to_do(c)) for c in gone}
    assert ("exterior sill", "cut it") in {(c.what, to_do(c)) for c in come}


def test_a_window_that_was_moved() -> None:
    why, changes = compared(opening_of(), opening_of(position={"share": "1/4"}))
    assert 'window moved in the wall, flange from 9 1/4" to 7 7/8"' in why
    assert Change(mark="", what="inside face to flange", old='9 1/4"', new='7 7/8"') in changes


@pytest.mark.parametrize(
    ("width", "length", "said"),
    [
        (0.0, 0.0, "still good"),
        (1 / 32, 1 / 32, "still good"),
        (1 / 16, 0.0, "recut: too narrow"),
        (0.0, 1 / 16, "recut: too short"),
        (-1 / 8, 0.0, "still good: rip to the new size"),
        (0.0, -1 / 8, "still good: crosscut to the new size"),
        (-1 / 8, -1 / 8, "still good: rip and crosscut to the new size"),
    ],
)
def test_a_plain_board(width: float, length: float, said: str) -> None:
    old = next(part for part in opening_of()["parts"] if part["name"] == "casing" and part["where"] == "exterior")
    new = copy.deepcopy(old)
    new["width"]["value"] += width
    new["length"]["value"] += length
    assert verdict(old, new, tolerance=TOLERANCE).sentence(Units.INCH) == said


FLARED = {
    "style": "picture framed",
    "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
    "frame_reveal": "1/8",
    "casing_reveal": "3/16",
    "casing": {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "miter"},
    "flare": {"sides": "15 deg", "head": "10 deg"},
}


def flared(*corners: str, sides: str = "15 deg", **paths: Any) -> dict[str, Any]:
    trim = {**FLARED, "flare": {**FLARED["flare"], "sides": sides}}  # type: ignore[dict-item]
    return opening_of(interior_trim__inside=trim, **(measured(*corners) if corners else {}), **paths)


def jambs(old: dict[str, Any], new: dict[str, Any]) -> dict[str, set[str]]:
    """What is told of each extension jamb inside that is cut already: head, legs, bottom."""
    told: dict[str, set[str]] = {f"W1-{number}": set() for number in (1, 2, 3, 4)}
    for change in compared(old, new)[1]:
        if change.mark in told:
            told[change.mark].add(to_do(change))
    return told


def test_flared_jambs_whose_wall_was_measured_are_told_like_any_others() -> None:
    """As planned they are 4 23/32 deep and parallel. A plane cut, or a bevel, of the same angle is the same shape
    however wide the board is; a leg that tapers has only less of it.
    """
    every = {f"W1-{number}" for number in (1, 2, 3, 4)}
    deeper, less = flared(*["4 13/16"] * 4), flared(*["4 9/16"] * 4)
    assert jambs(flared(), deeper) == {mark: {"recut: too narrow"} for mark in every}
    assert all(
        one <= {"still good: rip to the new size", "still good: rip and crosscut to the new size"}
        for one in jambs(flared(), less).values()
    )
    tapered = jambs(flared(), flared("4 11/16", "4 11/16", "4 5/8", "4 9/16"))
    assert tapered["W1-3"] == {"still good: rip to the new size"}  # its far edge is a bevel, and was one before
    back = jambs(flared("4 11/16", "4 11/16", "4 5/8", "4 9/16"), flared())
    assert back["W1-3"] == {"recut: too narrow"}  # 1/8 less at the sill than is wanted


def test_another_flare_is_another_shape() -> None:
    told = jambs(flared(), flared(sides="12 deg"))
    assert "recut: cut otherwise" in told["W1-2"] and "recut: cut otherwise" in told["W1-3"]
    assert jambs(flared(), flared()) == {f"W1-{number}": set() for number in (1, 2, 3, 4)}


@pytest.mark.parametrize(("house", "other"), [("gable-house", "frame_reveal: 1/4"), ("quarry-loft", "frame_reveal: 8")])
def test_every_cut_that_an_example_makes_can_be_compared(house: str, other: str) -> None:
    """Flared, raked, octagonal, ganged, returned: with another frame reveal every opening has other parts."""
    text = (EXAMPLES / house / "job.yaml").read_text(encoding="utf-8")
    jobs = [job_of(yaml.safe_load(one)) for one in (text, re.sub(r"frame_reveal: [\d/]+", other, text))]
    records = [job_record(strips(make_kits(job)), job)["openings"] for job in jobs]
    for old, new in zip(*records, strict=True):
        assert compared(old, old)[1] == []
        assert compared(old, new)[1]


# ---- one part, or another one on the same side


def one_part(number: int, position: str, name: str = "casing", **more: Any) -> dict[str, Any]:
    sizes = {key: {"value": 1.0, "text": '1"'} for key in ("thickness", "width", "length")}
    told = {"mark": f"W1-{number}", "where": "interior", "name": name, "position": position, "stock": "pine"}
    return {**told, **sizes, **more}


def marks_of(pairs: list[tuple[Any, Any]]) -> list[tuple[str | None, str | None]]:
    return [(was and was["mark"], now and now["mark"]) for was, now in pairs]


def test_a_mull_that_gets_a_neighbor_is_the_mull_it_was() -> None:
    old = {"parts": [one_part(9, "between units", "mull casing")]}
    new = {"parts": [one_part(at, f"between units, mull {at - 8}", "mull casing") for at in (9, 10)]}
    assert marks_of(paired(old, new)) == [("W1-9", "W1-9"), (None, "W1-10")]
    assert marks_of(paired(new, old)) == [("W1-9", "W1-9"), ("W1-10", None)]


def test_a_part_with_another_number_or_in_another_place_is_not_the_one_that_is_gone() -> None:
    old = {"parts": [one_part(5, "head"), one_part(6, "left leg")]}
    assert marks_of(paired(old, {"parts": [one_part(7, "head, left")]})) == [
        (None, "W1-7"),
        ("W1-5", None),
        ("W1-6", None),
    ]
    assert marks_of(paired(old, {"parts": [one_part(6, "right leg")]}))[0] == (None, "W1-6")
    assert marks_of(paired(old, {"parts": [one_part(7, "head")]})) == [("W1-5", "W1-7"), ("W1-6", None)]


def identities(**paths: Any) -> set[PartIdentity]:
    return {part.identity for part in kit_of(**paths).parts}


def test_stacked_frames_are_no_jamb_that_is_as_deep_as_all_of_them() -> None:
    plain, stacked = identities(), identities(interior_trim__inside__stack=2)
    jambs = {one for one in stacked if one.kind is PartKind.EXTENSION_JAMB and one.where is Where.INTERIOR}
    assert len(jambs) == 8 and jambs == stacked - plain
    assert {one for one in plain if one.is_one_of_several} == set()
    assert identities(interior_trim__inside__stack=3) > jambs
