"""What of a flared opening still waits for the tape: its jambs, and all that ends where their room edge comes out."""

from __future__ import annotations

from typing import Any

from cases import STOOL, changed, job_of

from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import is_planned
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sides import Side


def casing_that_waits(flare: dict[str, str], **paths: Any) -> set[Side]:
    job = job_of(changed(**{"interior_trim__inside__flare": flare}, **paths))
    kit = make_kit(place_windows(job)[0], job)
    return {one.side for one in inside(kit) if one.kind is PartKind.CASING and is_planned(one, kit.placement.opening)}


def inside(kit: Kit) -> list[Part]:
    return [part for part in kit.parts if part.where is Where.INTERIOR]


def test_casing_waits_where_it_ends_at_a_jamb_that_leans_by_an_angle() -> None:
    assert casing_that_waits({"head": "10 deg"}) == {Side.LEFT, Side.RIGHT}
    assert casing_that_waits({"left": "10 deg"}) == {Side.HEAD, Side.SILL}


def test_casing_does_not_wait_at_a_flare_by_length_nor_where_the_wall_was_read() -> None:
    assert casing_that_waits({"sides": "1 in"}) == set()
    assert casing_that_waits({"sides": "0 deg"}) == set()
    around = {side: ["4 11/16", "4 13/16", "4 11/16"] for side in ("head", "sill", "left", "right")}
    read = {"date": "2026-06-01", "by": "Ann", "interior_depth": around}
    assert casing_that_waits({"head": "10 deg"}, openings__0__measured=read) == set()


def test_the_apron_under_flared_legs_waits_too() -> None:
    job = job_of(changed(interior_trim__inside={**STOOL, "flare": {"sides": "10 deg"}}))
    kit = make_kit(place_windows(job)[0], job)
    waiting = [one.kind for one in kit.parts if is_planned(one, kit.placement.opening)]
    assert PartKind.APRON in waiting
    assert [
        one.side for one in inside(kit) if one.kind is PartKind.CASING and is_planned(one, kit.placement.opening)
    ] == [Side.HEAD]
