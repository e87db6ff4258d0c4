"""What of each piece waits for the tape: width, length, foot, or how openings stand apart; what is left on furring."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from cases import changed, job_of
from clad import DEEP, clad
from trimmed_as_one import side_by_side

from jambs.app.chain import make_kits
from jambs.job import Job
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.left_on import left_on
from jambs.parts.kit.planned import Waits
from jambs.stock.house.house_pieces import CutPiece, house_pieces
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lot_words import lot_notes
from jambs.stock.house.lots import house_lots

CORNERS = ("head_left", "head_right", "sill_left", "sill_right")
FURRING = PartKind.RETURN_FURRING
WOODS = (
    *(("poplar", thick) for thick in ("3/4", "1")),
    *(("cedar", thick) for thick in ("3/4", "1", "1 1/2")),
    ("siding", "3/4"),
    ("spruce", "1 1/2"),
)
RACK = [
    {"stock": stock, "thickness": thick, "width": "11 1/4", "lengths": ["192"], "price": "40"} for stock, thick in WOODS
]
STRIP = {"stock": "spruce", "thickness": "1/2", "width": "2", "nominal": "1/2x2", "lengths": ["96"], "price": "4"}


def clad_job(**changes: Any) -> Job:
    rack = {"shop__boards": [*RACK, STRIP], "shop__planned_allowance": "1/8"}
    return job_of(changed(**{**DEEP, "exterior_trim__outside": clad(), **rack, **changes}))


def pieces(job: Job, kind: PartKind) -> list[CutPiece]:
    return [one for one in house_pieces(make_kits(job), job) if one.part.kind is kind]


def notes(job: Job) -> list[str]:
    lots = house_lots(make_kits(job), job)
    return [note for one in plan_house(lots, Effort(stages=0)) for note in lot_notes(one, job.shop.grid)]


def marks(found: list[CutPiece], what: Waits) -> list[str]:
    return [one.part.mark for one in found if what in one.waits]


def left(*, width: str, sealant: str = "1/4") -> set[tuple[float, float]]:
    """Return the widths of the strips at the frame with what is left on them; 4 1/4 are left outside."""
    furring = {"thickness": "1/2", "width": width, "stock": "spruce"}
    trim = {**clad(furring=furring), "sealant_joint": sealant}
    job = clad_job(exterior_trim__outside=trim, shop__boards=[*RACK, {**STRIP, "width": "5"}])
    (kit,) = make_kits(job)
    strips = [one for one in kit.parts if one.kind is FURRING and one.member == 1]
    return {(one.width, left_on(one, kit.placement, job.shop, job.boards).width) for one in strips}


def test_a_strip_at_the_frame_gets_no_wider_than_it_is_stated() -> None:
    """4 1/4 less the joint of 1/4 is 4: two strips of 2 fill it, and a deeper wall leaves a gap between them.

    Of strips of 2 1/16 the one at the frame is 4 - 2 1/16 = 1 15/16, and 1/8 on; a joint of 5/16 leaves 2 - 1/16.
    """
    assert left(width="2") == {(2.0, 0.0)}
    assert left(width="2", sealant="5/16") == {(1.9375, 0.0625)}
    assert left(width="2 1/16") == {(1.9375, 0.125)}


def test_strips_as_wide_as_their_board_are_crosscut_from_it() -> None:
    """They were asked 1/8 wider than any board listed, and nothing could be bought."""
    job = clad_job()
    found = pieces(job, FURRING)
    (lot,) = [lot for lot in house_lots(make_kits(job), job) if any(one.part.kind is FURRING for one in lot.pieces)]
    assert {one.width for one in found} == {2.0} and not lot.problem.is_ripped


def test_the_strip_at_the_corner_waits_for_its_foot_alone() -> None:
    """Its head return waits for nothing; the strip at the frame waits in its width, and may get narrower."""
    found = pieces(clad_job(), FURRING)
    at_frame, at_corner = (
        [one.waits for one in found if one.part.member == member and one.part.side.is_leg is is_leg]
        for member, is_leg in ((1, False), (2, True))
    )
    assert all(waits == {Waits.WIDTH} for waits in at_frame)
    assert all(waits == {Waits.FOOT} for waits in at_corner)
    heads = [one for one in found if one.part.member == 2 and not one.part.side.is_leg]
    assert heads and not any(one.is_planned for one in heads)


def test_feet_of_corner_boards_and_furring_are_told_beside_those_of_casings() -> None:
    job = clad_job()
    feet = [note for note in notes(job) if note.startswith("The foot goes by the depth outside")]
    told = {mark for note in feet for mark in note.split(": ")[1].split(".")[0].split(", ")}
    legs = (PartKind.CORNER_BOARD, FURRING, PartKind.CASING)
    each = house_pieces(make_kits(job), job)
    assert told == {one.part.mark for one in each if one.part.kind in legs and Waits.FOOT in one.waits}
    kinds = {one.part.kind for one in each if one.part.mark in told}
    assert kinds == set(legs)
    read = {"date": "2026-01-05", "exterior_depth": dict.fromkeys(CORNERS, "4 1/4")}
    assert not [note for note in notes(clad_job(openings__0__measured=read)) if note.startswith("The foot goes")]


def test_a_head_over_two_openings_has_no_foot_and_waits_for_the_tape_between_them() -> None:
    job = job_of(side_by_side(shop__boards=RACK))
    found = pieces(job, PartKind.CASING)
    heads = [one for one in found if not one.part.side.is_leg]
    assert heads and all(one.waits == {Waits.APART} for one in heads)
    said = [note for note in notes(job) if "how openings or units stand apart" in note]
    told = " ".join(said)
    assert all(one.part.mark in told for one in heads)
    assert not any(one.part.mark in note for one in heads for note in notes(job) if note.startswith("The foot goes"))


def test_a_stool_over_measured_openings_has_its_width() -> None:
    read = {"date": "2026-01-05", "interior_depth": dict.fromkeys(CORNERS, "4 11/16")}
    data = side_by_side(shop__boards=RACK)
    stools = pieces(job_of(data), PartKind.STOOL)
    assert {one.waits for one in stools} == {frozenset({Waits.WIDTH, Waits.APART})}
    for opening in data["openings"]:
        opening["measured"] = copy.deepcopy(read)
    job = job_of(data)
    assert {one.waits for one in pieces(job, PartKind.STOOL)} == {frozenset({Waits.APART})}
    (stool,) = {one.part.mark for one in pieces(job, PartKind.STOOL)}
    assert any("stand apart" in note and stool in note for note in notes(job))


def test_what_goes_past_others_waits_for_all_of_them() -> None:
    """Read at the first window and not at the second, stool and sill keep what is left on, and their labels say so."""
    inside = {"interior_depth": dict.fromkeys(CORNERS, "4 11/16")}
    read = {"date": "2026-01-05", **inside, "exterior_depth": dict.fromkeys(CORNERS, "1 1/2")}
    past = (PartKind.STOOL, PartKind.EXTERIOR_SILL)
    found = {}
    for some in ((), (0,), (1,), (0, 1)):
        data = side_by_side(shop__boards=RACK, shop__planned_allowance="1/8")
        for at in some:
            data["openings"][at]["measured"] = copy.deepcopy(read)
        job = job_of(data)
        each = [one for kind in past for one in pieces(job, kind)]
        assert len(each) == 2
        found[some] = {(one.allowance, Waits.WIDTH in one.waits) for one in each}
        legs = pieces(job, PartKind.EXTENSION_JAMB)
        assert {one.allowance for one in legs if one.part.opening == "W1"} == {0.0 if 0 in some else 0.125}
    waiting = {(0.125, True)}
    assert found == {(): waiting, (0,): waiting, (1,): waiting, (0, 1): {(0.0, False)}}


@pytest.mark.parametrize("is_read", [False, True])
def test_heads_of_flared_exteriors_wait_in_their_length(is_read: bool) -> None:
    flare = {"sides": "10 deg", "head": "10 deg"}
    read = {"date": "2026-01-05", "exterior_depth": dict.fromkeys(CORNERS, "1 1/2")}
    more = {"openings__0__measured": read} if is_read else {}
    job = job_of(changed(exterior_trim__outside__flare=flare, shop__boards=RACK, **more))
    found = pieces(job, PartKind.CASING)
    out = [note for note in notes(job) if note.startswith("The length goes by the depth, where jambs flare")]
    assert bool(out) is bool(marks(found, Waits.LENGTH)) is not is_read
    assert all(mark in " ".join(out) for mark in marks(found, Waits.LENGTH))


def test_nothing_is_said_of_lengths_where_nothing_flares_and_nothing_stands_apart() -> None:
    said = " ".join(notes(clad_job()))
    assert "where jambs flare" not in said and "stand apart" not in said
