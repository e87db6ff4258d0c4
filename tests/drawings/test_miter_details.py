"""Details of mitered corners: half of each turn, reveals as the job states them; none where casing is butted."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from arches import arched
from cases import changed, job_of
from rounds import rounded
from samples import drawn, made

import jambs
from jambs.drawings.elements.view import View
from jambs.drawings.views.miter_details import miter_details
from jambs.parts.board.cuts import Miter
from jambs.parts.board.part import Part
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sides import Side

EXAMPLES = Path(__file__).parents[2] / "examples"
TINY = 1e-6


def miters(view: View) -> list[str]:
    return [line for one in view.call_outs for line in one.lines if line.startswith("miter ")]


def test_a_rectangle_has_one_detail_for_its_four_corners() -> None:
    """Half of a right angle; reveals by name, as stated, at half size."""
    kit, _, job = made("picture framed")
    view, trim = drawn("picture framed").view("miter interior 1"), kit.placement.opening.interior
    (asked,) = miter_details(kit)
    assert miters(asked) == ["miter 45°"]
    assert asked.remarks == ("seen from the room", "4 corners alike")
    wanted = sorted((trim.casing_reveal, trim.frame_reveal))
    assert sorted(one.value for one in view.dimensions) == pytest.approx(wanted, abs=job.shop.grid.step / 2 + TINY)
    assert {"casing reveal", "frame reveal"} <= {line for text in view.texts for line in text.lines}
    assert view.scale.factor == 2


def test_angles_of_a_shape_are_those_its_boards_are_sawn_at() -> None:
    """Half of each turn of the outline, and each angle once."""
    kit = _kit("gable-house", "G5")
    found = [words for view in miter_details(kit) for words in miters(view)]
    sawn = {f"miter {cut.angle_deg:.1f}°".replace(".0°", "°") for part in _casing(kit.parts) for cut in _miters(part)}
    assert len(found) == len(set(found)) == len(sawn) > 1
    assert set(found) == sawn


def test_joints_of_a_ring_are_those_of_a_hexagon_from_both_sides() -> None:
    """180°/6 at each; seen from outside the boards lie mirrored, and the joints too."""
    views = miter_details(rounded("full round").kit)
    assert [miters(view) for view in views] == [["miter 30°"], ["miter 30°"]]
    assert [view.remarks for view in views] == [
        ("seen from the room", "6 corners alike"),
        ("seen from outside", "6 corners alike"),
    ]


def _kit(example: str, mark: str) -> jambs.Kit:
    job = jambs.read_job(EXAMPLES / example)
    return next(kit for kit in jambs.make_kits(job) if kit.mark == mark)


def _casing(parts: tuple[Part, ...]) -> list[Part]:
    return [part for part in parts if part.kind.words == "casing"]


def _miters(part: Part) -> list[Miter]:
    return [cut for cut in part.cuts if isinstance(cut, Miter)]


def test_where_a_segment_meets_a_square_leg_is_no_corner_like_those_between_segments() -> None:
    """Three segments of a half round: 60° each, two joints between them, and one at each end of the spring line."""
    inside = [view for view in miter_details(arched().kit) if "seen from the room" in view.remarks]
    assert [(miters(view), view.remarks[1]) for view in inside] == [
        (["miter 30°"], "2 corners alike"),
        (["miter 30° to a square end"], "2 corners alike"),
        (["miter 45°"], "2 corners alike"),
    ]


def test_butted_casing_has_no_such_detail() -> None:
    butted = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt", "overhang": "1/2"}
    assert _views(interior_trim__inside__casing=butted) == []


def test_a_back_bevel_is_told_and_casing_outside_is_seen_from_outside() -> None:
    mitered = {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "miter", "back_bevel_deg": 2}
    outside = [
        view for view in _views(exterior_trim__outside__casing=mitered) if view.name.startswith("miter exterior")
    ]
    assert [view.title for view in outside] == ["Mitered corner, outside"]
    assert outside[0].remarks[0] == "seen from outside"
    assert outside[0].remarks[-1] == "back bevel the miters 2°"


def test_casing_outside_over_jambs_that_flare_has_its_reveal_too() -> None:
    """Jambs lean by 15 degrees; the reveal at their outer edge is the 1/4 of the job, seen from outside."""
    made = {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "miter"}
    trim = {"exterior_trim__outside__casing": made, "exterior_trim__outside__casing_reveal": "1/4"}
    views = _views(**trim, exterior_trim__outside__flare={"sides": "15 deg", "head": "10 deg"})
    outside = [view for view in views if view.name.startswith("miter exterior")]
    steps = [
        (chain.after, abs(one.finish[0] - one.start[0]))
        for view in outside
        for chain in view.chains
        for one in chain.intervals
    ]
    ((name, step),) = steps
    assert name == "casing reveal"
    assert step == pytest.approx(0.25, abs=TINY)


def _views(**changes: object) -> list[View]:
    job = job_of(changed(**changes))
    return miter_details(make_kit(place_windows(job)[0], job))


def test_a_flared_opening_has_its_casing_reveal_at_the_room_edge_of_its_jambs() -> None:
    """As stated in the job; the frame reveal lies a wall's depth behind the corner and is not told there."""
    kit = _kit("gable-house", "G1")
    trim = kit.placement.opening.interior
    (view,) = miter_details(kit)
    steps = {chain.after: abs(one.finish[0] - one.start[0]) for chain in view.chains for one in chain.intervals}
    assert steps == pytest.approx({"casing reveal": trim.casing_reveal}, abs=TINY)


def test_names_of_both_boards_end_apart_from_the_joint_and_its_angle_between_them() -> None:
    """In a right angle both boards had their dots at the middle of the corner, the leader of the angle through one."""
    kit, _, _ = made("picture framed")
    (view,) = miter_details(kit)
    upper, joint, lower = sorted((one.target for one in view.call_outs), key=lambda point: -point[1])
    angle = next(one for one in view.call_outs if one.lines[0].startswith("miter "))
    assert joint == angle.target
    assert min(math.dist(one, joint) for one in (upper, lower)) > 1.0
    heads = [one for one in view.call_outs if "casing" in one.lines[0]]
    marks = {part.mark: part.side for part in _casing(kit.parts)}
    assert {one.target: marks[one.lines[0].split()[0]] for one in heads} == {upper: Side.HEAD, lower: Side.LEFT}
