"""Bent metal round arcs, as straight strips along their chords: legs 3/4, 1 1/2 and a hem of 1/2, corner lap 1.

A half round of 36 x 60: between faces of 2 1/2 less reveals of 1/4 the clear radius is 15 3/4. A chord of the angle a
lies r (1 - cos(a / 2)) inside its arc; 11 strips over 180° stand 15 3/4 (1 - cos(90° / 11)) = 0.1603 in, 13 strips
0.1148, so that 13 is the least odd number within 1/8. Face legs are mitered as at any corner of sheet metal, at half
of what it turns; that a brake bends along straight lines only is common practice, no source.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arch_changes
from cases import changed, job_of, kit_of, texts
from metal import lined
from rounds import round_changes

from jambs.drawings.views.alike import grouped
from jambs.job import JobFaults
from jambs.length import Grid, Units
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.board.touches import MetalCorner, ReturnBend
from jambs.parts.findings.flare_findings import FlatSegmentsTooCoarse
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError
from jambs.sides import Side

COUNT, TURN = 13, 180 / 13
ARC = {"exterior_trim__outside": lined(curved="flat segments")}


def in_metal(shape: Any, width: float, height: float, **more: Any) -> dict[str, Any]:
    """Return what changes for a shape lined outside with bent metal; inside its jamb is sawn."""
    changes = round_changes(shape, width, height, **{**ARC, **more})
    return {key: one for key, one in changes.items() if not key.startswith("exterior_trim__outside__")}


def half_round(**more: Any) -> Kit:
    return kit_of(**in_metal("half round", 36, 60, **more))


def strips(kit: Kit) -> list[Part]:
    return [part for part in kit.parts if part.kind is PartKind.METAL_RETURN and part.side is Side.HEAD]


def corners(part: Part) -> tuple[MetalCorner | None, MetalCorner | None]:
    (bend,) = (one for one in part.touches if isinstance(one, ReturnBend))
    assert bend.corners
    return bend.corners


def test_a_half_round_is_lined_with_straight_strips() -> None:
    found = strips(half_round())
    assert len(found) == COUNT
    chord = 2 * 15.75 * math.sin(math.radians(TURN / 2))
    for part in found[1:-1]:
        seen = max(u for u, _ in part.outline) - min(u for u, _ in part.outline)
        # Its back lies as much farther out as the sheet is thick.
        assert seen == pytest.approx(chord + 2 * 0.032 * math.tan(math.radians(TURN / 2)))


def test_face_legs_are_mitered_at_half_of_what_they_turn() -> None:
    for part in strips(half_round())[1:-1]:
        for one in corners(part):
            assert one is not None
            assert one.turn_deg == pytest.approx(TURN)
            assert one.past == pytest.approx(1.5 * math.tan(math.radians(TURN / 2)))


def test_the_upper_strip_laps_the_lower_and_the_crown_both() -> None:
    found = strips(half_round())
    crown = found[COUNT // 2]
    assert [one.lap if one else None for one in corners(crown)] == [1.0, 1.0]
    assert sum(isinstance(cut, Notch) for cut in crown.cuts) == 2
    for part in (*found[1 : COUNT // 2], *found[COUNT // 2 + 1 : -1]):
        assert sorted(one.lap for one in corners(part) if one) == [0.0, 1.0]


def test_the_sheet_says_how_round_it_is_and_what_a_metal_shop_would_make() -> None:
    said = texts(half_round())
    assert "the metal is 13 flat strips, turning 13.8° from one to the next" in said
    assert '1/8" of the frame reveal of 1/4"' in said
    assert "Dress soft metal over the face legs of the metal returns" in said
    assert "compound miters" not in said
    plain = texts(kit_of(**arch_changes({"kind": "half round"}, 36, 60)))
    assert "flat strips" not in plain and "Dress soft metal over the casing" in plain


def test_below_a_full_round_water_stands_on_it() -> None:
    ring = in_metal("full round", 36, 36, exterior_trim__outside=lined(curved="flat segments", sill=None))
    made = kit_of(**ring)
    assert "Water stands on the metal returns below the frame" in texts(made)
    assert {part.side for part in made.parts if part.kind is PartKind.METAL_RETURN} == {Side.HEAD, Side.SILL}


def test_strips_that_stand_in_by_more_than_the_reveal_are_refused() -> None:
    """Of a reveal of 1/16 nothing is left where strips stand 1/8 in."""
    trim = {**lined(curved="flat segments"), "frame_reveal": "1/16"}
    with pytest.raises(PartsError) as error:
        half_round(exterior_trim__outside=trim)
    found = next(one for one in error.value.findings if isinstance(one, FlatSegmentsTooCoarse))
    assert found.is_outside
    said = found.sentence(Units.INCH)
    assert said.startswith("W1: outside, the bent metal round a radius of")
    assert '1/8" in off the curve' in said and "larger frame_reveal" in said and "planed" not in said


def test_metal_round_an_arc_is_not_made_unasked() -> None:
    with pytest.raises(JobFaults, match=r"write returns: \{…, curved: flat segments\}, straight strips") as error:
        job_of(changed(**in_metal("half round", 36, 60, exterior_trim__outside=lined())))
    assert '"W1"' in str(error.value)


def test_metal_is_not_bent_to_plies() -> None:
    with pytest.raises(JobFaults, match="curved"):
        job_of(changed(**in_metal("half round", 36, 60, exterior_trim__outside=lined(curved="sawn segments"))))


def test_a_strip_that_laps_both_neighbors_shares_no_detail_with_one_that_is_lapped() -> None:
    """Seen in place all are alike; the crown alone laps at both ends."""
    found = strips(half_round())[1:-1]
    groups = grouped(found, Grid(units=Units.INCH, numerator=1, denominator=16))
    crown = found[len(found) // 2]
    assert next(one for one in groups if crown in one.same).same == (crown,)
    assert any(len(one.same) > 1 for one in groups)
