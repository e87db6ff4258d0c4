"""What was found on the site in place of the plan: depths, frame, finish; half measured; in either unit."""

from __future__ import annotations

from typing import Any

import pytest
from cases import kit_of, part_of, placed, texts

from jambs.job.measured.measuring_points import Kind, measure_places
from jambs.job.models.openings import Origin
from jambs.length import MM_PER_INCH, Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.readings.as_built import as_built, planned_value, questions, without_odd_readings
from jambs.sheets.record import framing_head_height, rough_sill_height
from jambs.sides import Side

PLANNED = 4.6875
DATE = {"date": "2026-06-01"}


def measured(**readings: Any) -> dict[str, Any]:
    return {"openings__0__measured": {**DATE, **readings}}


def around(depth: str, count: int = 3) -> dict[str, list[str]]:
    return {side: [depth] * count for side in ("head", "sill", "left", "right")}


def sawn(part: Part) -> tuple[Any, ...]:
    return part.mark, part.thickness, part.outline, part.cuts, part.touches


@pytest.mark.parametrize("count", [2, 3, 7])
def test_equal_depths_give_the_planned_kit(count: int) -> None:
    planned = kit_of()
    kit = kit_of(**measured(interior_depth=around("4 11/16", count)))
    assert [part.silhouettes for part in kit.parts] == [part.silhouettes for part in planned.parts]
    assert kit.is_measured and not planned.is_measured


def test_measured_in_millimeters_gives_the_same_kit_within_the_grid() -> None:
    """Each depth in sixteenths, and the same in tenths of a millimeter: every part within one step of the grid."""
    sixteenths = {"head": (75, 76, 77), "right": (78, 77, 77), "sill": (74, 76, 78), "left": (74, 75, 75)}
    inches = {side: [f"{n // 16} {n % 16}/16" for n in points] for side, points in sixteenths.items()}
    metric = {side: [f"{n / 16 * MM_PER_INCH:.1f} mm" for n in points] for side, points in sixteenths.items()}
    one, other = (kit_of(**measured(interior_depth=depths)) for depths in (inches, metric))
    for part, twin in zip(one.parts, other.parts, strict=True):
        assert (part.mark, part.name) == (twin.mark, twin.name)
        assert part.width == pytest.approx(twin.width, abs=1 / 32 + 1e-9)
        assert part.length == pytest.approx(twin.length, abs=1e-9)


def test_what_is_missing_stays_planned() -> None:
    # Head 4-3/4 left, 4-7/8 right; nothing below: the legs run from 4-11/16 as planned to what was measured above.
    kit = kit_of(**measured(interior_depth={"head": ["4 3/4", "-", "4 7/8"]}))
    assert not kit.is_measured
    assert kit.sides[Side.HEAD].start_depth == 4.75 and kit.sides[Side.HEAD].finish_depth == 4.875
    assert kit.sides[Side.LEFT].start_depth == PLANNED and kit.sides[Side.LEFT].finish_depth == 4.75
    assert kit.sides[Side.SILL].start_depth == kit.sides[Side.SILL].finish_depth == PLANNED
    lacking = "Half measured: the depth at 5 (sill right), 7 (sill left) is as planned, measure before cutting."
    assert lacking in texts(kit)


def test_a_corner_is_lacking_above_as_below() -> None:
    """Clockwise from the upper left: 1 and 3 above; what was read is not asked for again."""
    kit = kit_of(**measured(interior_depth={"sill": ["4 3/4", "-", "4 7/8"]}))
    lacking = "Half measured: the depth at 1 (head left), 3 (head right) is as planned, measure before cutting."
    assert lacking in texts(kit)


def test_what_lies_between_two_readings_is_on_their_line() -> None:
    """Five places along the head, 5 at its left and 6 at its right: a quarter, a half and three quarters of an inch."""
    head = ["5", "-", "-", "-", "6"]
    built, _ = as_built(placed(**measured(interior_depth={"head": head})))
    assert built.opening.measured is not None and built.opening.measured.interior_depth is not None
    found = built.opening.measured.interior_depth
    assert found.head == (5.0, 5.25, 5.5, 5.75, 6.0)
    assert found.origins[Side.HEAD] == (Origin.READ, *[Origin.BETWEEN] * 3, Origin.READ)
    # Where nothing was read from an end on, the line begins as planned: 4 11/16, then thirds of the way to 6.
    built, _ = as_built(placed(**measured(interior_depth={"head": ["-", "-", "-", "6"]})))
    assert built.opening.measured is not None and built.opening.measured.interior_depth is not None
    assert built.opening.measured.interior_depth.head == pytest.approx((4.6875, 5.125, 5.5625, 6.0))


def test_what_lies_between_is_on_the_line_of_its_own_two_neighbors() -> None:
    """4, 5, then halfway to 6: the line from 5 to 6, from where it begins."""
    built, _ = as_built(placed(**measured(interior_depth={"head": ["4", "5", "-", "6", "4"]})))
    assert built.opening.measured is not None and built.opening.measured.interior_depth is not None
    assert built.opening.measured.interior_depth.head == (4.0, 5.0, 5.5, 6.0, 4.0)


def test_what_the_plan_says_of_every_place() -> None:
    """35 1/2 x 47 1/2: the diagonal 59.3 by Pythagoras; a planned frame leans nowhere; a finish is there or not."""
    placement = placed()
    planned = {place.kind: planned_value(place, placement) for place in measure_places(placement.opening)}
    assert planned.pop(Kind.DIAGONAL) == pytest.approx(59.3001, abs=1e-4)
    assert planned == {
        Kind.INTERIOR_DEPTH: 4.6875,
        Kind.EXTERIOR_DEPTH: 1.5,
        Kind.FRAME_WIDTH: 35.5,
        Kind.FRAME_HEIGHT: 47.5,
        Kind.OUT_OF_PLUMB: 0.0,
        Kind.OUT_OF_LEVEL: 0.0,
        Kind.FRAME_FACE: 2.5,
        Kind.WALL_FINISH: None,
    }


def test_a_reading_in_millimeters_is_rounded_once() -> None:
    """105 mm is 4 1/8 on a grid of 1/32 (4.1339 in; 4 1/8 is 0.0089 off). By way of sixty-fourths it was 4 5/32.

    Proud 1/32, so the jamb is ripped 4 5/32 wide and not 4 3/16.
    """
    kit = kit_of(shop__grid="1/32", shop__proud="1/32", **measured(interior_depth=around("105 mm")))
    legs = [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB]
    assert {leg.width for leg in legs} == {4 + 5 / 32}


def test_nothing_inside_measured_yet() -> None:
    kit = kit_of(**measured(frame_width=["35 1/2", "35 1/2"]))
    assert not kit.is_measured
    assert "No interior depth is measured yet: all of them are as planned" in texts(kit)
    assert [part.outline for part in kit.parts] == [part.outline for part in kit_of().parts]


def test_without_the_wall_finish() -> None:
    # Gypsum board 1/2: measured to the bare studs 4-3/16, so 4-11/16 to the finished wall.
    assert placed().planes.stud_face == 0.5
    kit = kit_of(**measured(interior_depth=around("4 3/16"), wall_finish="no"))
    assert {side.start_depth for side in kit.sides.values()} == {PLANNED}
    assert questions(placed(**measured(interior_depth=around("4 3/16"), wall_finish="no")), units=Units.INCH) == ()


def test_a_frame_that_is_larger_than_ordered() -> None:
    # 35-5/8 instead of 35-1/2: clear opening 1/8 wider, each shim space 1/16 less.
    plan, kit = kit_of(), kit_of(**measured(frame_width=["35 5/8", "35 5/8"]))
    assert kit.clear_width == plan.clear_width + 1 / 8
    assert kit.placement.shims.left == plan.placement.shims.left - 1 / 16
    assert part_of(kit, "extension jamb", "head").length == part_of(plan, "extension jamb", "head").length + 1 / 8


def test_a_frame_that_is_higher_than_ordered_stands_on_its_sill_shims() -> None:
    """47 5/8 for 47 1/2: the rough opening stays where it was framed, so the head has 1/8 less and the sill as much."""
    plan, kit = kit_of(), kit_of(**measured(frame_height=["47 5/8", "47 5/8"]))
    before, now = plan.placement, kit.placement
    assert (now.shims.head, now.shims.sill) == (before.shims.head - 1 / 8, before.shims.sill)
    assert rough_sill_height(now) == rough_sill_height(before) == 35.75
    assert framing_head_height(now) == framing_head_height(before)


def test_a_side_within_the_tolerance_is_as_wide_as_its_deepest_reading() -> None:
    """Left leg 4 5/8, 4 11/16, 4 11/16 from the bottom, tolerance 1/16: ripped to 4 11/16 and 1/32 proud, no wider."""
    left = {**around("4 11/16"), "left": ["4 5/8", "4 11/16", "4 11/16"], "sill": ["4 5/8", "4 11/16", "4 11/16"]}
    kit = kit_of(shop__taper_tolerance="1/16", **measured(interior_depth=left))
    leg = part_of(kit, "extension jamb", "left leg")
    assert (leg.width, leg.taper) == (4.71875, None)


def test_a_frame_face_that_is_narrower() -> None:
    kit = kit_of(**measured(frame_face={"left": "2 7/16"}))
    assert kit.clear_width == kit_of().clear_width + 1 / 16


def test_a_racked_frame_is_told() -> None:
    kit = kit_of(**measured(diagonals=["59 1/4", "59 3/8"]))
    assert 'The diagonals differ by 1/8": the frame is racked; square it, or set the jamb box to it.' in texts(kit)
    assert "racked" not in texts(kit_of(**measured(diagonals=["59 1/4", "59 5/16"])))


def test_a_reading_in_question_sets_the_opening_back_to_its_plan() -> None:
    odd = placed(**measured(interior_depth={**around("4 11/16"), "head": ["4 11/16", "5 11/16", "4 11/16"]}))
    held = without_odd_readings(odd, units=Units.INCH)
    assert held.opening.measured is None and held.opening.readings is None
    assert held.findings[0].sentence(Units.INCH) == (
        'Measured: place 2 (interior depth, head middle) reads 5 11/16", expected from the plan and its neighbors '
        'about 4 11/16": '
        'an inch too much? Was 4 11/16" meant? Correct it where it was written, or mark it sure; until then the '
        "planned sizes hold."
    )
    sure = placed(
        **measured(interior_depth={**around("4 11/16"), "head": ["4 11/16", "5 11/16", "4 11/16"]}, sure=["2"])
    )
    assert without_odd_readings(sure, units=Units.INCH) == sure


def test_exterior_depths_half_measured() -> None:
    kit = kit_of(**measured(interior_depth=around("4 11/16"), exterior_depth={"head": ["1 5/8", "1 5/8"]}))
    found = kit.placement.opening.measured
    assert found is not None and found.exterior_depth is not None
    assert found.exterior_depth.head == (1.625, 1.625)
    assert found.exterior_depth.left == (1.5, 1.625)


def test_places_of_a_door_have_no_sill() -> None:
    door = {"style": "three-sided", "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "butt, head over legs"}}
    trim = {**door, "frame_reveal": "1/8", "casing_reveal": "3/16"}
    trim["casing"] = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
    placement = placed(interior_trim__inside=trim, **measured(interior_depth={"head": ["4 11/16", "4 11/16"]}))
    built, _ = as_built(placement)
    assert built.opening.measured is not None and built.opening.measured.interior_depth is not None
    assert built.opening.measured.interior_depth.sill is None
