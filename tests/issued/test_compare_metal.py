"""Bent metal from one issue to the next: its bends lie where they were made, so nothing is snipped to another size."""

from __future__ import annotations

from typing import Any

from issued_records import opening_of
from metal import lined

from jambs.issued.compare import Change, compare_openings
from jambs.issued.verdict_reasons import Recut, RecutWhy

TOLERANCE = 1 / 32 + 1e-9
SILL = {"slope": "10 deg", "nosing": "1", "front": "1 1/2", "back_leg": "3/4"}


def changes(old: dict[str, Any], new: dict[str, Any]) -> list[Change]:
    found = compare_openings(opening_of(**old), opening_of(**new), tolerance=TOLERANCE)
    return [one for one in found.changes if one.mark]


def metal(**returns: Any) -> dict[str, Any]:
    return {"exterior_trim__outside": lined(**returns)}


def test_the_same_metal_is_no_change() -> None:
    assert changes(metal(), metal()) == []


def test_a_blank_of_one_girth_with_its_bends_elsewhere_is_bent_anew() -> None:
    """Front 1/4 longer, back leg 1/4 shorter: as wide and as long, and bent 1/4 nearer to the frame."""
    found = changes(metal(), metal(sill={**SILL, "front": "1 3/4", "back_leg": "1/2"}))
    bottom = [one for one in found if one.what.startswith("metal return, bottom")]
    assert [(one.what.rpartition(", ")[2], one.verdict) for one in bottom] == [("work", Recut(why=RecutWhy.SHAPE))]


def test_a_head_flashing_that_is_too_large_is_not_ripped() -> None:
    """A face leg 1/2 narrower makes all of it shorter at both ends: it has its end dams already."""
    found = changes(metal(), metal(face_leg="1"))
    flashing = [one for one in found if one.what.startswith("head flashing")]
    assert flashing and {one.verdict for one in flashing} == {Recut(why=RecutWhy.SHAPE)}
