"""Bent metal round the opening of the base job, worked by hand.

Outside edge of the frame 10 1/2, trim plane 12, cladding face 12 3/4, flange plane 9 1/4. The frame is 35 1/2 x 47 1/2
and shows 2 1/2, less 1/4 of reveal: clear 31 wide, its head at 45 1/4. A joint of 1/4 leaves 1 1/4 to the trim plane.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest
from cases import changed, figure, job_of, kit_of, part_of, texts
from metal import TRIM, lined

from jambs.job import JobFaults
from jambs.length import Units
from jambs.parts.board.bent_metal import bend_deduction
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError, make_kit
from jambs.parts.words.bend_words import return_bends
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut

DEEPER = {
    "date": "2026-05-02",
    "exterior_depth": {"head": ["1 5/8", "1 1/2"], "left": ["1 1/2", "1 5/8"], "right": ["1 1/2", "1 1/2"]},
}
"""At the upper left corner the trim plane is 1/8 farther out."""
RIGHT_ANGLE, FOLD = bend_deduction(90, 0.03, 0.032), bend_deduction(180, 0.03, 0.032)


def kit(**returns: Any) -> Kit:
    return kit_of(exterior_trim__outside=lined(**returns))


def part(made: Kit, position: str) -> Part:
    return part_of(made, PartKind.METAL_RETURN.words, position, Where.EXTERIOR)


def test_no_wooden_jamb_and_no_casing_are_left_outside() -> None:
    kinds = {one.kind for one in kit().parts if one.where is Where.EXTERIOR}
    assert kinds == {PartKind.METAL_RETURN, PartKind.HEAD_FLASHING}
    assert figure(kit(), "exterior clear width") == 31


def test_the_head_ends_at_the_trim_plane() -> None:
    """Legs 3/4, 1 1/4, 1 1/2, hem 1/2; 31 wide and 1 turned onto each side."""
    head = part(kit(), "head")
    assert head.width == pytest.approx(4 - 2 * RIGHT_ANGLE - FOLD)
    assert head.length == 33
    assert sorted(head.seat.at(0, v, 0)[2] for v in (0, head.silhouettes.sizes.width)) == [10.75, 12]
    assert head.seat.origin[1] == 45.25
    notches = [cut for cut in head.cuts if isinstance(cut, Notch)]
    assert [cut.along for cut in notches] == [1, 1]
    assert [cut.across for cut in notches] == pytest.approx([0.75 - RIGHT_ANGLE / 2] * 2)


@pytest.mark.parametrize(("cladding", "out"), [("behind the leg", 12.75), ("over the leg", 12.0)])
def test_the_sides_end_on_the_cladding_or_behind_it(cladding: str, out: float) -> None:
    left = part(kit(cladding=cladding), "left leg")
    wide = out - 10.75
    assert left.silhouettes.sizes.width == pytest.approx(wide)
    assert left.seat.at(0, wide, 0)[2] == pytest.approx(out)
    assert left.width == pytest.approx(0.75 + wide + 1.5 + 0.5 - 2 * RIGHT_ANGLE - FOLD)


@pytest.mark.parametrize("projection", ["0", "1/2", "1 1/4"])
def test_the_sill_begins_at_the_flange_however_far_the_frame_projects(projection: str) -> None:
    """The flange plane of the base job, 9 1/4, and the sheet of 0.032."""
    made = kit_of(windows__fixed__frame_projection=projection, exterior_trim__outside=lined())
    assert part(made, "bottom").seat.origin[2] == pytest.approx(9.25 + 0.032)


def test_a_blank_without_hem_is_a_bend_narrower() -> None:
    assert part(kit(hem=None), "head").width == pytest.approx(3.5 - 2 * RIGHT_ANGLE)


def test_the_sill_falls_from_the_flange_to_past_the_cladding() -> None:
    """From 9 1/4 and the sheet out to 12 3/4 + 1, at 10 degrees; its back leg of 3/4 ends a joint under the frame."""
    sill = part(kit(), "bottom")
    run = 13.75 - 9.25 - 0.032
    wide = run / math.cos(math.radians(10))
    assert sill.seat.origin[1:] == (-1.0, 9.282)
    assert sill.silhouettes.sizes.width == pytest.approx(wide)
    assert sill.seat.at(0, wide, 0)[2] == pytest.approx(13.75)
    eighty = bend_deduction(80, 0.03, 0.032)
    assert sill.width == pytest.approx(0.75 + wide + 1.5 + 0.5 - 2 * eighty - FOLD)
    assert sill.length == pytest.approx(33 + 2 * 0.032, abs=1 / 64)
    assert figure(kit(), "sill run") == pytest.approx(3.25)


def test_the_sides_stand_on_the_sill() -> None:
    """The sill is at -1 where it begins, 1.218 before the frame's outside edge, and falls with 10 degrees to it.

    A side begins 1/4 out from there and is longest at its outer edge, 2.25 from the frame.
    """
    made = kit()
    left, sill = part(made, "left leg"), part(made, "bottom")
    for v in (0.0, 2.0):
        u = left.silhouettes.sizes.length - (2.0 - v) * math.tan(math.radians(10))
        _, y, depth = left.seat.at(u, v, 0)
        on_sill = -1 - (depth - sill.seat.origin[2]) * math.tan(math.radians(10))
        assert y == pytest.approx(on_sill)


def test_the_head_flashing_ends_level_with_the_head_and_reaches_out_under_the_cladding() -> None:
    """A drip of 1 below its top at 46 1/4; 31, face legs of 1 1/2 and 1/2 past them; 3 up, 3/4 of cladding, 1 down."""
    flashing = part_of(kit(), PartKind.HEAD_FLASHING.words, "head", Where.EXTERIOR)
    assert flashing.seat.origin[1] == 46.25
    assert flashing.length == 31 + 2 * 1.5 + 2 * 0.5
    assert flashing.width == 3 + 0.75 + 1


def test_a_measured_side_is_as_deep_at_its_ends_as_the_wall() -> None:
    """1/8 deeper at the top of the left leg: the blank tapers by as much, bend lines are told from both edges."""
    made = kit_of(exterior_trim__outside=lined(), openings__0__measured=DEEPER)
    left = part(made, "left leg")
    assert left.taper
    wide = {left.taper.start_width, left.taper.finish_width}
    assert max(wide) - min(wide) == pytest.approx(1 / 8)


def test_nothing_under_the_frame_is_told_without_a_sill() -> None:
    assert "Outside nothing lies under the frame" in texts(kit(sill=None))
    assert "Outside nothing lies under the frame" not in texts(kit())


@pytest.mark.parametrize(("nosing", "slope", "told"), [("1", "10 deg", False), ("1/16", "10 deg", True)])
def test_a_sill_of_metal_is_held_to_its_drip(nosing: str, slope: str, told: bool) -> None:
    sill = {"slope": slope, "nosing": nosing, "front": "1 1/2", "back_leg": "3/4"}
    assert ("nosing-too-short" in {one.code for one in kit(sill=sill).findings}) is told


def test_a_frame_at_the_trim_plane_has_nothing_to_line() -> None:
    job = job_of(changed(exterior_trim__outside=lined(), position={"exterior_depth": "0"}))
    with pytest.raises(PartsError, match="bent metal has nothing to line"):
        make_kit(place_windows(job)[0], job)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"frame_leg": "1/16"}, "frame_leg no longer than a bend takes"),
        ({"hem": "1 1/2"}, "hem does not lie on the leg"),
    ],
)
def test_legs_that_cannot_be_bent_are_refused(change: dict[str, str], said: str) -> None:
    with pytest.raises(JobFaults, match=said):
        job_of(changed(exterior_trim__outside=lined(**change)))


def test_wood_and_metal_are_not_mixed() -> None:
    casing = {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "butt"}
    with pytest.raises(JobFaults, match="keep one of both"):
        job_of(changed(exterior_trim__outside={**TRIM, "casing": casing}))


def test_a_wide_joint_leaves_bent_metal_nothing_to_line() -> None:
    """1 1/2 to the trim plane, all of it sealant."""
    with pytest.raises(PartsError) as raised:
        kit_of(exterior_trim__outside={**lined(), "sealant_joint": "1 1/2"})
    (found,) = raised.value.findings
    assert found.sentence(Units.INCH) == (
        'W1: bent metal has nothing to line: the frame stands 1 1/2" behind the trim plane and the sealant joint takes '
        '1 1/2"; set the window farther in, or give exterior trim with casing.'
    )


def test_work_on_the_sheet_names_legs_bends_and_ends() -> None:
    """Bend lines of the head: 3/4 less half a deduction of 0.056 is 23/32; 2 less three halves 1 29/32; 3 3/8."""
    grid = job_of(changed()).shop.grid
    assert list(return_bends(part(kit(), "head"), grid)) == [
        'legs 3/4" + 1 1/4" + 1 1/2" + 1/2", outside to outside',
        'bend from the edge at the frame 23/32" (90°), 1 29/32" (90°), 3 3/8" (fold)',
        '1" of each end slit from the leg outside and turned down over the sides, that leg straight on',
    ]
    assert list(return_bends(part(kit(), "left leg"), grid))[-1] == (
        "snip the foot to the sill, 10° off square, longer outside"
    )


def test_the_section_shows_the_sheet_as_a_thin_line() -> None:
    """As much metal as the legs are long, in the head 3/4 + 1 1/4 + 1 1/2, less two corners that are in both legs."""
    sections = {one.cut: one for one in cut_sections(kit())}
    (region,) = [one for one in sections[SectionCut.HEAD].regions if one.name == "metal return head"]
    points = region.outline
    area = abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise((*points, points[0])))) / 2
    assert area == pytest.approx(0.032 * (3.5 - 2 * 0.032))
    assert min(y for y, _ in points) == 45.25
    assert (min(d for _, d in points), max(d for _, d in points)) == pytest.approx((10.75, 12))
