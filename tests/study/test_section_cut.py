"""The drawn section as the cut that is computed: against the parametric builder and an independent library.

The parametric builder shares no geometry with the sections; where both describe one build, they must agree.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from cases import changed, job_of, kit_of
from peer import peer_solution
from retired_cut import Detail, WallBuild, build_cut, reference_of

from jambs.job import read_job
from jambs.length import METERS_PER_INCH
from jambs.parts.board.kinds import Where
from jambs.parts.make import make_kit
from jambs.place.reasons import SharedPosition
from jambs.place.solve import place_at, place_windows
from jambs.section.cut import cut_sections
from jambs.section.region import Region, Section, Stuff
from jambs.section.region import SectionCut as Side
from jambs.study.at_position import (
    DRAWN,
    FACTORS_WITHIN,
    LIMITS_WITHIN,
    MEAN_WITHIN,
    WindowInWall,
    drawn_sides,
    kit_at,
    study_at,
    subject_of,
)
from jambs.study.heat.cut import linear_transmittance, surface_factors
from jambs.study.heat.films import HEAT_FILMS, SURFACE_FILMS
from jambs.study.heat.frame import FrameBlock
from jambs.study.heat.section_cut import WALL_LENGTH, _corner, section_cut, section_reference
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion, Block, BlockKind
from jambs.study.wall.wall_heat import heat_wall
from jambs.wall.planes import stack_wall

FINE = Fineness(first=0.002, growth=1.4, largest=0.03)
DETAIL = Detail(side="jamb", framing=3 * METERS_PER_INCH, buck=0.75 * METERS_PER_INCH, gap=0.25 * METERS_PER_INCH)


def subject(**paths: object) -> WindowInWall:
    job = job_of(changed(**{"windows__fixed__u_frame": "1.6", **paths}))
    (opening,) = job.openings
    return subject_of(opening, stack_wall(opening.wall, grid=job.shop.grid), job)


def box(s: tuple[float, float], d: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    return ((s[0], d[0]), (s[1], d[0]), (s[1], d[1]), (s[0], d[1]))


def build_of(case: WindowInWall) -> WallBuild:
    """The same wall for the parametric builder."""
    planes, wall = case.planes, case.wall
    return WallBuild(
        stack=wall.stack,
        framed=next(layer.name for layer in wall.stack.layers if "stud" in layer.name),
        sheathing=wall.sheathing,
        cladding=(planes.cladding_face - wall.outside_face) * METERS_PER_INCH,
        length=WALL_LENGTH * METERS_PER_INCH,
    )


def parametric_as_section(case: WindowInWall, interior: float, exterior: float) -> Section:
    """The build that the parametric builder makes, drawn by hand as a section at the jamb. [in]"""
    planes, jamb = case.planes, DETAIL.interior_jamb / METERS_PER_INCH
    end, trim = WALL_LENGTH, planes.trim_plane
    regions = [
        Region(name=one.layer.name, stuff=stuff, outline=box((0, end), (one.inner, one.outer)))
        for one, stuff in zip(
            planes.layers,
            (Stuff.GYPSUM, Stuff.AIR, Stuff.SHEATHING, Stuff.RIGID, Stuff.RIGID, Stuff.COVER, Stuff.CLADDING),
            strict=True,
        )
    ]
    studs = next(one for one in planes.layers if one.layer.role == "framing")
    regions += [
        Region(
            name="stud 2x6", stuff=Stuff.FRAMING, outline=box((1, 4), (studs.inner, studs.outer)), conductivity=0.12
        ),
        Region(name="liner buck", stuff=Stuff.BUCK, outline=box((0.25, 1), (0, trim)), conductivity=0.12),
        Region(name="shim space", stuff=Stuff.SHIM, outline=box((0, 0.25), (0, trim))),
        Region(name="extension jamb", stuff=Stuff.JAMB, outline=box((-jamb, 0), (0, interior)), conductivity=0.12),
        Region(
            name="exterior extension jamb",
            stuff=Stuff.JAMB,
            where=Where.EXTERIOR,
            outline=box((-jamb, 0), (trim - exterior, planes.cladding_face)),
            conductivity=0.12,
        ),
        Region(name="casing", stuff=Stuff.CASING, outline=box((-1, 4), (-0.75, 0)), conductivity=0.12),
    ]
    return Section(cut=Side.JAMB, mark="W1", regions=tuple(regions), depths={"flange plane": 0.0})


@pytest.mark.parametrize("flange", [7.5, 9.25, 10.5])
def test_a_section_of_the_parametric_build_agrees_with_the_parametric_builder(flange: float) -> None:
    case = subject()
    placement = place_at(case.opening, case.planes, flange, case.job)
    frame = case.window.blocks[Side.JAMB]
    section = parametric_as_section(case, placement.interior_depth, placement.exterior_depth)
    wall = build_of(case)
    place = placement.exterior_depth * METERS_PER_INCH
    drawn = linear_transmittance(
        cut := section_cut(section, placement, case.wall, frame),
        section_reference(cut, case.wall, frame),
        fineness=FINE,
    )
    built = linear_transmittance(build_cut(wall, frame, DETAIL, place), reference_of(wall, frame), fineness=FINE)
    assert drawn.value == pytest.approx(built.value, abs=2e-5)
    assert drawn.reference.flow == pytest.approx(built.reference.flow, abs=1e-12)
    cold = surface_factors(section_cut(section, placement, case.wall, frame, films=SURFACE_FILMS), fineness=FINE)
    other = surface_factors(build_cut(wall, frame, DETAIL, place, films=SURFACE_FILMS), fineness=FINE)
    assert cold.corner == pytest.approx(other.corner, abs=2e-4)
    assert cold.coldest.temperature == pytest.approx(other.coldest.temperature, abs=5e-4)


def test_the_peer_lies_between_the_limits_of_a_drawn_jamb() -> None:
    """The kit's own jamb section by scikit-fem, quadratic elements on a fine grid."""
    case = subject()
    (jamb,) = (one for one in drawn_sides(case, kit_at(case, 9.25)) if one.side is Side.JAMB)
    peer = peer_solution(jamb.cut, fineness=Fineness(first=0.0015, growth=1.5, largest=0.03)).coupling
    found = jamb.transmittance.coupling
    assert found.lower < peer < found.upper
    assert found.mean == pytest.approx(peer, abs=2e-4)
    assert found.half_width < 0.0015


def test_a_wall_without_an_opening_is_its_clear_wall() -> None:
    """Far from the window one meter of the cut loses what ISO 6946 says of the clear wall: the sum of resistances."""
    case = subject()
    kit = kit_at(case, 9.25)
    (section,) = (one for one in cut_sections(kit, wall_length=WALL_LENGTH) if one.cut is Side.JAMB)
    frame = case.window.blocks[Side.JAMB]
    flows = []
    for length in (WALL_LENGTH, WALL_LENGTH + 10):
        longer = next(one for one in cut_sections(kit, wall_length=length) if one.cut is section.cut)
        cut = section_cut(longer, kit.placement, case.wall, frame)
        flows.append(linear_transmittance(cut, section_reference(cut, case.wall, frame)).coupling.mean)
    by_hand = 1 / (0.13 + 0.13 + 0.5 * 0.0254 / 0.1603 + 0.18 + 1.0 * 0.0254 / 0.1163 + 5 * 0.0254 / 0.0361)
    assert flows[1] - flows[0] == pytest.approx(10 * 0.0254 * by_hand, rel=1e-3)
    assert case.wall.stack.clear_transmittance == pytest.approx(by_hand, rel=1e-9)


def test_room_air_stays_inside_of_the_frame_and_outdoor_air_outside_of_the_wall() -> None:
    """With jambs all round room air ends at the frame's inside face, outdoor air at its outside face."""
    case = subject()
    for plane in (6.5, 8.0, 9.25, 12.0):
        for side in study_at(case, plane).sides:
            frame = next(block for block in side.cut.blocks if block.name == "frame")
            for air in side.cut.airs:
                if air.name == "inside":
                    assert air.x0 >= frame.x0 if air.y0 > 0 else air.x0 >= frame.x1 - 1e-9
                elif air.y1 <= 0:
                    assert air.x1 <= max(frame.x0, 0.0) + 1e-9, (plane, side.side)


def test_every_place_in_the_wall_is_a_material_or_one_air() -> None:
    """Points at random over the cut: in one block at least, or in exactly one air."""
    case = subject()
    places = np.random.default_rng(7)
    for side in study_at(case, 8.0).sides:
        rectangles: tuple[Block | AirRegion, ...] = (*side.cut.blocks, *side.cut.airs)
        x = places.uniform(min(r.x0 for r in rectangles), max(r.x1 for r in rectangles), 400)
        y = places.uniform(min(r.y0 for r in rectangles), max(r.y1 for r in rectangles), 400)
        for px, py in zip(x, y, strict=True):
            solid = [r for r in side.cut.blocks if r.x0 <= px <= r.x1 and r.y0 <= py <= r.y1]
            air = [r for r in side.cut.airs if r.x0 < px < r.x1 and r.y0 < py < r.y1]
            assert solid or len(air) == 1, (side.side, px, py)


def test_what_is_left_out_and_what_is_kept() -> None:
    kit = kit_of()
    case = subject()
    names = {block.name for side in drawn_sides(case, kit) for block in side.cut.blocks}
    assert {"interior jamb", "exterior jamb", "exterior sill", "buck", "shim space", "sealant"} <= names
    assert not {name for name in names if "casing" in name or "flashing" in name or "shingle" in name}


def test_the_tread_of_the_stairs_hardly_matters(monkeypatch: pytest.MonkeyPatch) -> None:
    """The sill's slope as stairs of 12 mm and of 3 mm: within a tenth of the error of the mean that is allowed."""
    case = subject()
    values = []
    for tread in (0.012, 0.003):
        monkeypatch.setattr("jambs.study.heat.section_cut.TREAD", tread)
        values.append(next(one for one in study_at(case, 9.25).sides if one.side is Side.SILL).transmittance.value)
    assert values[0] == pytest.approx(values[1], abs=4e-5)


def test_the_grid_of_drawn_sections_is_within_the_goal() -> None:
    """What the pages claim: the limits, their mean, and the factor, against a grid that is four times finer."""
    case = subject()
    coarse = study_at(case, 8.0, fineness=DRAWN)
    fine = study_at(case, 8.0, fineness=Fineness(first=0.001, growth=1.3, largest=0.02))
    for found, exact in zip(coarse.sides, fine.sides, strict=True):
        assert found.transmittance.half_width <= LIMITS_WITHIN
        assert found.transmittance.value == pytest.approx(exact.transmittance.value, abs=MEAN_WITHIN)
        assert found.factors.coldest.temperature == pytest.approx(exact.factors.coldest.temperature, abs=FACTORS_WITHIN)


def test_the_limits_claimed_are_those_of_the_worst_section_and_no_wider() -> None:
    """Of all sections of the examples the head of L1 in the loft, wood furred behind a return, has the widest limits.

    scikit-fem, quadratic elements on the same rectangles, lies between them and at their mean.
    """
    job = read_job(Path(__file__).parents[2] / "examples" / "quarry-loft")
    placement = next(one for one in place_windows(job) if one.opening.mark == "L1")
    case = subject_of(placement.opening, stack_wall(placement.opening.wall, grid=job.shop.grid), job)
    kit = kit_at(case, placement.flange_plane)
    section = next(one for one in cut_sections(kit, wall_length=WALL_LENGTH) if one.cut is Side.HEAD)
    cut = section_cut(section, kit.placement, case.wall, case.window.blocks[Side.HEAD])
    found = linear_transmittance(
        cut, section_reference(cut, case.wall, case.window.blocks[Side.HEAD]), fineness=DRAWN
    ).coupling
    peer = peer_solution(cut, fineness=Fineness(first=0.002, growth=1.5, largest=0.03)).coupling
    assert found.lower < peer < found.upper
    assert found.mean == pytest.approx(peer, abs=MEAN_WITHIN)
    assert LIMITS_WITHIN - 0.0001 < found.half_width <= LIMITS_WITHIN


def test_a_door_has_no_sill() -> None:
    case = subject(
        openings__0__floor_below_frame="3/4",
        openings__0__sill_height=None,
        openings__0__exterior_trim="none",
        interior_trim__inside__style="three-sided",
    )
    assert {side.side for side in study_at(case, 9.25).sides} == {Side.JAMB, Side.HEAD}


def test_layers_of_one_name_are_told_apart() -> None:
    case = subject()
    assert [layer.name for layer in case.wall.stack.layers] == [
        "gypsum board 1/2",
        "stud 2x6",
        "plywood 1/2 (sheathing)",
        "EPS (1 of 2)",
        "EPS (2 of 2)",
        "plywood 1/2 (outer sheathing)",
    ]


def test_strapping_and_what_stands_outside_is_left_out() -> None:
    job = job_of(changed(walls__main__layers__5={"material": "strapping 1x4", "spacing": "16"}))
    planes = stack_wall(job.openings[0].wall, grid=job.shop.grid)
    wall = heat_wall(planes, units=job.units)
    assert wall.outside_face == pytest.approx(planes.trim_plane - 0.75, abs=1e-9)
    assert HEAT_FILMS.inside == 0.13


def test_kits_are_made_at_the_plane_asked_for() -> None:
    case = subject()
    kit = make_kit(place_at(case.opening, case.planes, 8.0, case.job), case.job)
    assert kit.placement.flange_plane == 8.0
    assert isinstance(kit.placement.reasons[0], SharedPosition)


@pytest.mark.parametrize(
    ("low", "high", "start", "corner"),
    [
        (-0.01, 0.03, 0.1, 0.03),  # a jamb that laps 30 mm over the frame
        (-0.01, 0.08, 0.1, 0.06),  # past the frame's whole face of 60 mm
        (-0.02, 0.0, 0.1, 0.0),  # it ends at the frame's outer edge
        (-0.01, 0.03, 0.11, 0.0),  # it begins 10 mm inside of the frame's face
    ],
)
def test_the_corner_lies_where_the_inside_face_of_the_frame_meets_trim(
    low: float, high: float, start: float, corner: float
) -> None:
    """The frame's inside face is at 100 mm; where no trim meets it, the corner is the frame's outer edge."""
    frame = FrameBlock(depth=0.07, face=0.06, transmittance=1.2, panel_thickness=0.024)
    jamb = Block(name="j", conductivity=0.13, x0=start, x1=0.2, y0=low, y1=high, kind=BlockKind.INTERIOR_TRIM)
    assert _corner([jamb], 0.1, frame) == (0.1, corner)
    layer = Block(name="l", conductivity=0.13, x0=start, x1=0.2, y0=low, y1=high)
    assert _corner([layer], 0.1, frame) == _corner([], 0.1, frame) == (0.1, 0.0)
