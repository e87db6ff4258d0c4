"""Checks of a position just at their limits, where no window comes to stand by itself; base wall: position_cases."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arches import arch_changes
from cases import METRIC, changed, job_of, placed
from gangs import ganged, unit
from position_cases import CASEMENT, CHOOSE, DOOR

from jambs.job.models.path import corners_of, outset, shaped_path
from jambs.job.models.straight_round import greatest_off
from jambs.place.checks import impossible, sash_findings
from jambs.place.frame_path import rough_path
from jambs.place.limit_kinds import LimitKind
from jambs.place.reasons import BindingLimit, BoundByLimit
from jambs.place.support import lined_by
from jambs.place.units import unit_openings
from jambs.sides import Side

MULL = "interior_trim__inside__mull_casing"


@pytest.mark.parametrize(("plane", "is_out"), [(0.0, False), (-1 / 64, True)])
def test_clips_may_stand_anywhere_in_the_wall(plane: float, is_out: bool) -> None:
    """From its finished face, 0, on; the frame is then proud inside, which is told by itself."""
    job = job_of(changed(windows__fixed__nailing_flange="no", windows__fixed__flange_width=None))
    (opening,), planes = job.openings, placed().planes
    found = [one.code for one in impossible(opening, planes, plane, 0.5)]
    assert found == ["flange-out-of-range"] * is_out + ["frame-proud-inside"]


@pytest.mark.parametrize(
    ("degrees", "codes"),
    [(4.99, ["sash-cannot-open"]), (5.0, ["sash-stops-short"]), (89.99, ["sash-stops-short"]), (90.0, [])],
)
def test_a_sash_that_opens_by_five_degrees_opens_and_one_by_what_is_asked_is_enough(
    degrees: float, codes: list[str]
) -> None:
    paths: dict[str, Any] = {"windows__fixed": CASEMENT, "openings__0__hinge": "left"}
    job, swing = job_of(changed(**paths, limits={"sash_opening_deg": "90"})), placed(**paths).swing
    assert swing is not None
    assert [
        one.code for one in sash_findings(job.openings[0], replace(swing, greatest_deg=degrees), job.limits)
    ] == codes


@pytest.mark.parametrize(
    ("limits", "limit", "plane"),
    [
        # 2 outside: 12 - 1 1/4 - 2.
        ({"least_exterior_depth": "2"}, LimitKind.LEAST_EXTERIOR_DEPTH, 8.75),
        # 6 inside put the flange at 10 9/16, where 3/16 would be left outside: so proud, the frame flush at 12 - 1 1/4.
        ({"overhang": "6", "least_interior_depth": "6"}, LimitKind.FRAME_PROUD, 10.75),
    ],
)
def test_what_the_outside_asks_for_is_told_by_the_opening_that_is_bound(
    limits: dict[str, str], limit: LimitKind, plane: float
) -> None:
    found = placed(position=CHOOSE, limits=limits)
    why, *_ = found.reasons
    assert found.flange_plane == plane
    assert isinstance(why, BoundByLimit) and why.bound == BindingLimit(limit=limit, plane=plane)


@pytest.mark.parametrize(("second", "is_assumed"), [({"weight": "60 lb"}, False), ({}, True)])
def test_the_weight_of_units_is_an_estimate_where_that_of_one_is(second: dict[str, str], is_assumed: bool) -> None:
    units = [unit("30 x 48", weight="60 lb"), unit("30 x 48", **second)]
    alone = {"openings__0__transom": None, "openings__0__transom_bar": None}
    assert placed(**ganged(openings__0__units=units, **alone)).weight_is_assumed is is_assumed


@pytest.mark.parametrize(("width", "is_off"), [("920", False), ("920.5", True)])
def test_of_a_hole_whose_sill_nobody_states_width_and_height_are_on_the_tape(width: str, is_off: bool) -> None:
    paths = {"openings__0__rough_opening": f"{width} x 1220", "openings__0__sill_height": None}
    found = placed(**{**METRIC, **paths}).findings
    assert [one.code for one in found if one.code == "off-the-tape"] == ["off-the-tape"] * is_off


@pytest.mark.parametrize(("thickness", "liner"), [("3/4", 0.75), ("1 1/2", 1.5)])
def test_round_an_ellipse_the_corners_of_a_liner_stand_off_its_tightest_arc(thickness: str, liner: float) -> None:
    """At a rise of 10 over 48 the ends turn by a radius of 6 1/2, at the rough opening 6 3/4.

    A corner that stands off an arc by d stands off one that is t farther out by d (r + t) / r.
    """
    shape = arch_changes({"kind": "ellipse arch", "rise": "10"}, 48, 40)
    buck = {"kind": "liner", "thickness": thickness, "stock": "plywood"}
    paths = {**shape, "walls__main__buck": buck, "position": {"share": "1/2"}, "exterior_trim": None}
    found = placed(**paths)
    frame = shaped_path(found.opening.frame, found.opening.shape)
    assert min(edge.circle.radius for edge in frame if edge.circle) == pytest.approx(6.5)
    off = greatest_off(outset(frame, dict.fromkeys(Side, 0.25)))
    assert lined_by(found.opening, found.buck) == pytest.approx(liner + off * (6.75 + liner) / 6.75)


@pytest.mark.parametrize("near_door", [None, "no", "yes"])
def test_a_unit_beside_a_door_is_near_one_whatever_the_job_says_of_the_opening(near_door: str | None) -> None:
    """A door and a fixed light in one frame: glass within 24 in of a door (R308.4.2); the door is none to itself."""
    units = [{"window": "door", "frame": "30 x 80", "hinge": "left"}, unit("30 x 80")]
    paths = ganged(
        windows__door={**CASEMENT, "sash": "door in", "frame_face": "2 1/2"},
        openings__0__units=units,
        openings__0__transom=None,
        openings__0__transom_bar=None,
        openings__0__sill_height=None,
        openings__0__floor_below_frame="1/4",
        exterior_trim=None,
    )
    paths["openings__0"] |= {"near_door": near_door} if near_door else {}
    inside: Any = DOOR["interior_trim__inside"]
    paths["interior_trim__inside"] = {**inside, "mull_casing": paths.pop(MULL)}
    (opening,) = job_of(changed(**paths)).openings
    door, light = unit_openings(opening)
    said = {None: None, "no": False, "yes": True}[near_door]
    assert (door.near_door, light.near_door) == (said, True)
    # The door's frame stands 1/4 over the floor, the light's bottom at the same height; only the door reaches down.
    assert (door.floor_below_frame, light.floor_below_frame) == (0.25, None)
    assert (door.sill_height, light.sill_height) == (0.25, 0.25)


@pytest.mark.parametrize(("more", "out"), [(None, 0.25), (0.75, 1.0)])
def test_the_rough_opening_goes_round_the_frame_and_as_much_more_as_is_asked(more: float | None, out: float) -> None:
    """35 1/2 x 47 1/2 in 36 x 48: a shim space of 1/4 all round."""
    found = rough_path(placed()) if more is None else rough_path(placed(), more)
    assert set(corners_of(found)) == {(x, y) for x in (-out, 35.5 + out) for y in (-out, 47.5 + out)}
