"""What must hold for every kit: sums, mirror, measured = planned, cuts make the outline, boards are never mirrored."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import STOOL, examples, kit_of, part_of
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from jambs.length import GRIDS, length_text, read_length
from jambs.parts.board.cuts import Crosscut, Edge, End, Miter, Notch, Taper
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit

JOINTS: list[dict[str, str]] = [
    {"joint": "butt, head over legs"},
    {"joint": "butt, legs through"},
    {"joint": "rabbet", "rabbet_depth": "3/8"},
    {"joint": "miter"},
]
SIXTEENTHS = st.integers(0, 8)


def trim(joint: dict[str, str], style: str) -> dict[str, Any]:
    data: dict[str, Any] = {**STOOL, "jamb": {"thickness": "3/4", "stock": "poplar", **joint}, "style": style}
    if style != "stool and apron":
        data.pop("stool")
        data.pop("apron")
    return data


def cut_by(part: Part) -> BaseGeometry:
    """Lay the cuts on a plain rectangle, independently of the outline: clip and subtract with shapely."""
    shape: BaseGeometry = box(0.0, 0.0, part.length, part.width)
    for cut in part.cuts:
        if isinstance(cut, Crosscut):
            shape = shape.intersection(box(0.0, -1.0, cut.length, 99.0))
        if isinstance(cut, Taper):
            wedge = Polygon([(0, cut.start_width), (part.length, cut.finish_width), (part.length, 99), (0, 99)])
            shape = shape.difference(wedge)
        if isinstance(cut, Notch):
            u = 0.0 if cut.end is End.START else part.length - cut.along
            v = 0.0 if cut.edge is Edge.NEAR else part.width - cut.across
            shape = shape.difference(box(u, v, u + cut.along, v + cut.across))
        if isinstance(cut, Miter):
            shape = shape.difference(miter_wedge(part, cut))
    return shape


def miter_wedge(part: Part, cut: Miter) -> Polygon:
    back = part.width * math.tan(math.radians(cut.angle_deg))
    long_v, short_v = (part.width, 0.0) if cut.long_edge is Edge.FAR else (0.0, part.width)
    if cut.end is End.START:
        return Polygon([(0.0, long_v), (back, short_v), (0.0, short_v)])
    return Polygon([(part.length, long_v), (part.length - back, short_v), (part.length, short_v)])


@examples(25)
@given(
    st.sampled_from(JOINTS),
    st.sampled_from(["picture framed", "stool and apron"]),
    st.sampled_from(["miter", "butt"]),
    st.tuples(SIXTEENTHS, SIXTEENTHS, SIXTEENTHS, SIXTEENTHS),
    st.sampled_from(["0 deg", "7 deg", "14 deg"]),
)
def test_cuts_make_the_outline(
    joint: dict[str, str], style: str, corner: str, corners: tuple[int, int, int, int], slope: str
) -> None:
    data = trim(joint, style)
    data["casing"] = {**data["casing"], "corner": corner, "overhang": "0" if corner == "miter" else "1/2"}
    names = ("head_left", "head_right", "sill_left", "sill_right")
    depths = {name: f"{4.5 + count / 16}" for name, count in zip(names, corners, strict=True)}
    kit = kit_of(
        interior_trim__inside=data,
        exterior_trim__outside__sill__slope=slope,
        openings__0__measured={"date": "2026-05-18", "interior_depth": depths},
    )
    for part in kit.parts:
        outline = Polygon(part.outline)
        assert outline.is_valid, part
        assert outline.symmetric_difference(cut_by(part)).area < 1e-6, part


@examples(20)
@given(st.sampled_from(JOINTS), st.sampled_from(["picture framed", "stool and apron"]), st.integers(0, 40))
def test_no_board_is_mirrored_and_none_leaves_its_blank(joint: dict[str, str], style: str, extra: int) -> None:
    kit = kit_of(interior_trim__inside=trim(joint, style), openings__0__frame=f"{30 + extra} x {40 + extra}",
                 openings__0__rough_opening=None)  # fmt: skip
    for part in kit.parts:
        seat = part.seat
        (a, b, c), (d, e, f), (g, h, i) = seat.along, seat.across, seat.through
        determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
        assert determinant == pytest.approx(1.0, abs=1e-12), part
        assert all(-1e-9 <= v <= part.width + 1e-9 for v, _ in part.profile), part
        assert all(-1e-9 <= u <= part.length + 1e-9 for u, _ in part.outline), part


def sizes(kit: Kit, *, swap: bool) -> dict[tuple[str, str, str], tuple[float, float, float]]:
    names = {"left leg": "right leg", "right leg": "left leg"} if swap else {}
    return {
        (p.where.value, p.name, names.get(p.position, p.position)): (p.thickness, p.width, p.length) for p in kit.parts
    }


@examples(20)
@given(SIXTEENTHS, SIXTEENTHS, SIXTEENTHS, SIXTEENTHS, st.integers(0, 8), st.integers(0, 8))
def test_a_mirrored_opening_gives_mirrored_parts(hl: int, hr: int, sl: int, sr: int, left: int, right: int) -> None:
    def build(hl: int, hr: int, sl: int, sr: int, left: int, right: int) -> Kit:
        corners = {"head_left": hl, "head_right": hr, "sill_left": sl, "sill_right": sr}
        return kit_of(
            interior_trim__inside=STOOL,
            windows__fixed__frame_face={
                "left": f"{2 + left / 16}",
                "right": f"{2 + right / 16}",
                "head": "2",
                "sill": "2",
            },
            openings__0__measured={
                "date": "2026-05-18",
                "interior_depth": {name: f"{4.5 + count / 16}" for name, count in corners.items()},
            },
        )

    one, other = build(hl, hr, sl, sr, left, right), build(hr, hl, sr, sl, right, left)
    assert sizes(one, swap=False) == sizes(other, swap=True)
    # A twin of a tapered leg is narrow at the same height, not at the same end of the board.
    left_leg = part_of(one, "extension jamb", "left leg")
    right_leg = part_of(other, "extension jamb", "right leg")
    assert {left_leg.seat.at(u, v, 0.0)[1:] for u, v in left_leg.outline} == {
        right_leg.seat.at(u, v, 0.0)[1:] for u, v in right_leg.outline
    }


@examples(15)
@given(st.integers(64 * 1, 64 * 5), st.sampled_from([STOOL, trim(JOINTS[2], "picture framed")]))
def test_a_measured_opening_with_equal_depths_is_the_planned_one(count: int, inside: dict[str, Any]) -> None:
    depth = length_text(GRIDS["1/32"].round(count / 64), units=GRIDS["1/32"].units)
    planned = kit_of(
        position={"interior_depth": depth},
        interior_trim__inside=inside,
        windows__fixed__jamb_depth="6",
        limits={"overhang": "9", "least_interior_depth": "0"},
    )
    corners = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), depth)
    measured = kit_of(
        position={"interior_depth": depth},
        interior_trim__inside=inside,
        windows__fixed__jamb_depth="6",
        limits={"overhang": "9", "least_interior_depth": "0"},
        openings__0__measured={"date": "2026-05-18", "interior_depth": corners},
    )
    assert measured.parts == planned.parts


@examples(30)
@given(
    st.sampled_from(sorted(GRIDS)),
    st.integers(60 * 64, 200 * 64),
    st.integers(64, 4 * 64),
    st.integers(0, 32),
    st.integers(0, 24),
)
def test_figures_on_one_sheet_add_up_as_printed(grid: str, frame: int, face: int, reveal: int, casing: int) -> None:
    """Printed head casing = printed clear width + 2 reveals + 2 casings, printed head = clear width + 2 jambs."""
    units = GRIDS[grid].units
    kit = kit_of(
        shop__grid=grid,
        openings__0__frame=f"{frame / 64} x 48",
        openings__0__rough_opening=None,
        windows__fixed__frame_face=f"{face / 64}",
        interior_trim__inside__frame_reveal=f"{reveal / 64}",
        interior_trim__inside__casing__width=f"{3 + casing / 64}",
    )

    def printed(length: float) -> float:
        return read_length(length_text(length, units=units), units=units)

    jamb, casing_width = printed(0.75), printed(part_of(kit, "casing", "head").width)
    clear = printed(kit.clear_width)
    head = printed(part_of(kit, "extension jamb", "head").length)
    long_point = printed(part_of(kit, "casing", "head").length)
    finest = 0.1 / 25.4 if units.value == "mm" else 0.0
    assert head == pytest.approx(clear + 2 * jamb, abs=2 * finest + 1e-9)
    assert long_point == pytest.approx(clear + 2 * printed(3 / 16) + 2 * casing_width, abs=3 * finest + 1e-9)


def test_every_mark_is_its_own() -> None:
    kit = kit_of()
    marks = [part.mark for part in kit.parts]
    assert marks == [f"W1-{number}" for number in range(1, len(marks) + 1)]
    assert {part.where for part in kit.parts} == set(Where)
