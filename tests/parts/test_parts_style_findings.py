"""A kit held whole against its style: every finding on both sides of its limit, with its sentence.

The base window, by hand: frame 35 1/2 x 47 1/2, faces of 2 1/2, rough opening 1/4 round it. Outside it stands 1 1/2
behind the trim plane; clear opening 2 1/2 - 1/4 in from the frame's edge, casing 1/4 + 4 1/2 past that.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import finding_rows
import pytest
from arches import arch_changes
from cases import BASE, STOOL, changed, job_of, kit_of
from finding_rows import Case, Row, codes_in, each

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.kinds import PartKind
from jambs.parts.findings import style_findings
from jambs.parts.make import make_kit
from jambs.parts.outside_checks import hold_to_some_width
from jambs.parts.trim.sides import planned_sides
from jambs.place.solve import place_windows
from jambs.sides import Side

W1 = Subject.opening("W1")
CHECK, STOP = Severity.CHECK, Severity.STOP
THREE_SIDED = {**{key: value for key, value in STOOL.items() if key not in ("stool", "apron")}, "style": "three-sided"}
DOOR: dict[str, Any] = {"openings__0__sill_height": None, "openings__0__floor_below_frame": "3/4"}
NO_SILL: dict[str, Any] = {"exterior_trim__outside__sill": None}
PROUD: dict[str, Any] = {"position": {"flange_on": "trim plane"}}
BARE_FOAM: dict[str, Any] = {"walls__main__layers": [BASE["walls"]["main"]["layers"][at] for at in (0, 1, 2, 3, 6)]}
SCREWS = {"casing": {"fastener": "long wood screw", "penetration": "1 1/2", "spacing": "16"}}
NEAR: dict[str, Any] = {"limits": {"least_interior_depth": "0"}, "position": {"flange_on": "sheathing"}}
LEVEL: dict[str, Any] = {"exterior_trim__outside__sill__slope": "0 deg"}


def case(side: Side | None = None, **paths: Any) -> Case:
    """All that is said of a changed base window; where a side is named, of the sides only that one."""

    def said() -> list[Statement]:
        try:
            job = job_of(changed(**paths))
            found: tuple[Statement, ...] = make_kit(place_windows(job)[0], job).findings
        except FindingsError as error:
            found = error.findings
        return [one for one in found if side is None or getattr(one, "side", side) is side]

    return said


def joint(width: str) -> Case:
    return case(exterior_trim__outside__sealant_joint=width)


def nosing(width: str) -> Case:
    return case(exterior_trim__outside__sill__nosing=width, **LEVEL)


def casing(side: Side, width: str, **paths: Any) -> Case:
    return case(side, exterior_trim__outside__casing__width=width, **paths)


HALF_ROUND = arch_changes("half round", 36, 60)
WIDE_HOLE: dict[str, Any] = {**PROUD, "openings__0__rough_opening": "38 x 50"}

ROWS = [
    Row(
        code="nothing-under-frame", about=W1, severity=STOP,
        appears=case(**NO_SILL), quiet=case(),
        inch=(
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on "
            "nothing; give the exterior trim a sill."
        ),
        mm=(
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on "
            "nothing; give the exterior trim a sill."
        ),
    ),
    Row(  # a door has its threshold
        code="nothing-under-frame", about=W1, severity=STOP,
        appears=case(**NO_SILL), quiet=case(interior_trim__inside=THREE_SIDED, **NO_SILL, **DOOR),
        inch=(
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on "
            "nothing; give the exterior trim a sill."
        ),
        mm=(
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on "
            "nothing; give the exterior trim a sill."
        ),
    ),
    Row(  # a frame that stands proud has casing all round
        code="nothing-under-frame", about=W1, severity=STOP,
        appears=case(**NO_SILL), quiet=case(**NO_SILL, **PROUD),
        inch=(
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on "
            "nothing; give the exterior trim a sill."
        ),
        mm=(
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on "
            "nothing; give the exterior trim a sill."
        ),
    ),
    Row(
        code="legs-end-in-air", about=W1, severity=STOP,
        appears=case(interior_trim__inside=THREE_SIDED), quiet=case(interior_trim__inside=THREE_SIDED, **DOOR),
        inch=(
            "Three-sided trim is for a door: on a window its legs end in the air and nothing covers the sill; "
            "write style: picture framed, or stool and apron."
        ),
        mm=(
            "Three-sided trim is for a door: on a window its legs end in the air and nothing covers the sill; "
            "write style: picture framed, or stool and apron."
        ),
    ),
    Row(  # sheathing at 6 1/2: a jamb depth of 6 1/2 ends flush
        code="stool-has-no-depth", about=W1, severity=STOP,
        appears=case(interior_trim__inside=STOOL, windows__fixed__jamb_depth="6 1/2", **NEAR),
        quiet=case(interior_trim__inside=STOOL, windows__fixed__jamb_depth="6 15/32", **NEAR),
        inch=(
            "The frame is flush with the finished wall: there is no depth for a stool, so stool and apron are "
            "left out and the casing ends over a gap; write style: picture framed, or set the window farther out."
        ),
        mm=(
            "The frame is flush with the finished wall: there is no depth for a stool, so stool and apron are "
            "left out and the casing ends over a gap; write style: picture framed, or set the window farther out."
        ),
    ),
    Row(
        code="exterior-jamb-has-no-width", about=W1, severity=STOP,
        appears=joint("1 1/2"), quiet=joint("1 31/64"),
        inch=(
            'W1: the exterior jambs would have no width: the frame stands 1 1/2" behind the trim plane and the '
            'sealant joint takes 1 1/2"; write a smaller sealant_joint, or a greater least_exterior_depth, so '
            "that only casing goes around the frame."
        ),
        mm=(
            "W1: the exterior jambs would have no width: the frame stands 38.1 mm behind the trim plane and the "
            "sealant joint takes 38.1 mm; write a smaller sealant_joint, or a greater least_exterior_depth, so "
            "that only casing goes around the frame."
        ),
    ),
    Row(  # 1 1/2 - 49/64 = 47/64, under the usual 3/4
        code="narrower-than-safe", about=W1, severity=CHECK,
        appears=joint("49/64"), quiet=joint("3/4"),
        inch=(
            'W1-9, W1-10, W1-11: 47/64" wide, narrower than the 3/4" that the shop\'s saw holds safely; plane it '
            "out of a wider strip, or set the window deeper."
        ),
        mm=(
            "W1-9, W1-10, W1-11: 18.7 mm wide, narrower than the 19.1 mm that the shop's saw holds safely; plane "
            "it out of a wider strip, or set the window deeper."
        ),
    ),
    Row(  # the exterior jambs are 1 1/2 - 1/4 wide
        code="narrower-than-safe", about=W1, severity=CHECK,
        appears=case(shop__least_strip="1 17/64"), quiet=case(shop__least_strip="1 1/4"),
        inch=(
            'W1-9, W1-10, W1-11: 1 1/4" wide, narrower than the 1 17/64" that the shop\'s saw holds safely; plane '
            "it out of a wider strip, or set the window deeper."
        ),
        mm=(
            "W1-9, W1-10, W1-11: 31.8 mm wide, narrower than the 32.1 mm that the shop's saw holds safely; plane "
            "it out of a wider strip, or set the window deeper."
        ),
    ),
    Row(  # set back 1/2, 1/4 wide
        code="kerf-behind-cladding", about=W1, severity=CHECK,
        appears=nosing("47/64"), quiet=nosing("3/4"),
        inch=(
            'The drip kerf of the sill reaches 1/64" behind the face of the cladding, so water drops onto the '
            "cladding; write a longer nosing, or a smaller set_back of drip_kerf."
        ),
        mm=(
            "The drip kerf of the sill reaches 0.4 mm behind the face of the cladding, so water drops onto the "
            "cladding; write a longer nosing, or a smaller set_back of drip_kerf."
        ),
    ),
    Row(
        code="nothing-holds-trim", about=W1, severity=CHECK,
        appears=case(**BARE_FOAM), quiet=case(),
        inch=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
        mm=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
    ),
    Row(
        code="nothing-holds-trim", about=W1, severity=CHECK,
        appears=case(**BARE_FOAM), quiet=case(fasteners=SCREWS, **BARE_FOAM),
        inch=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
        mm=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
    ),
    Row(  # the buck reaches the trim plane
        code="nothing-holds-trim", about=W1, severity=CHECK,
        appears=case(**BARE_FOAM), quiet=case(**BARE_FOAM, **PROUD),
        inch=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
        mm=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
    ),
    Row(
        code="nothing-holds-trim", about=W1, severity=CHECK,
        appears=case(**BARE_FOAM), quiet=case(exterior_trim=None, **BARE_FOAM),
        inch=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
        mm=(
            "The exterior casing lies on bare EPS, which holds no fastener; add strapping or an outer sheathing, or "
            "give the fasteners that reach the framing: fasteners: casing."
        ),
    ),
    Row(  # 2 1/4 - 1/4 - w in from the frame's edge, the hole 1/4 out: w - 2 1/4
        code="outer-casing-laps-short", about=W1, severity=CHECK,
        appears=casing(Side.LEFT, "2 47/64"), quiet=casing(Side.LEFT, "2 3/4"),
        inch=(
            'The exterior casing at the left covers the wall by 31/64"; 1/2" is the least: wider casing, or fill '
            "the gap before it goes on."
        ),
        mm=(
            "The exterior casing at the left covers the wall by 12.3 mm; 12.7 mm is the least: wider casing, or "
            "fill the gap before it goes on."
        ),
    ),
    Row(
        code="outer-casing-laps-short", about=W1, severity=CHECK,
        appears=casing(Side.RIGHT, "2 7/32"), quiet=casing(Side.RIGHT, "2 3/4"),
        inch=(
            'The exterior casing at the right misses the wall by 1/32"; 1/2" is the least: wider casing, or fill '
            "the gap before it goes on."
        ),
        mm=(
            "The exterior casing at the right misses the wall by 0.8 mm; 12.7 mm is the least: wider casing, or "
            "fill the gap before it goes on."
        ),
    ),
    Row(
        code="outer-casing-laps-short", about=W1, severity=CHECK,
        appears=casing(Side.HEAD, "2 47/64"), quiet=casing(Side.HEAD, "2 3/4"),
        inch=(
            'The exterior casing at the head covers the wall by 31/64"; 1/2" is the least: wider casing, or fill '
            "the gap before it goes on."
        ),
        mm=(
            "The exterior casing at the head covers the wall by 12.3 mm; 12.7 mm is the least: wider casing, or "
            "fill the gap before it goes on."
        ),
    ),
    Row(  # round a proud frame, the hole 1 1/4 out: w + 1/4 - 1 1/4
        code="outer-casing-laps-short", about=W1, severity=CHECK,
        appears=casing(Side.SILL, "1 31/64", **WIDE_HOLE), quiet=casing(Side.SILL, "1 1/2", **WIDE_HOLE),
        inch=(
            'The exterior casing at the sill covers the wall by 31/64"; 1/2" is the least: wider casing, or fill '
            "the gap before it goes on."
        ),
        mm=(
            "The exterior casing at the sill covers the wall by 12.3 mm; 12.7 mm is the least: wider casing, or "
            "fill the gap before it goes on."
        ),
    ),
    Row(  # an arch in segments of one width: as far round the curve, said once
        code="outer-casing-laps-short", about=W1, severity=CHECK,
        appears=casing(Side.HEAD, "2 47/64", **HALF_ROUND), quiet=casing(Side.HEAD, "2 3/4", **HALF_ROUND),
        inch=(
            'The exterior casing at the head covers the wall by 31/64"; 1/2" is the least: wider casing, or fill '
            "the gap before it goes on."
        ),
        mm=(
            "The exterior casing at the head covers the wall by 12.3 mm; 12.7 mm is the least: wider casing, or "
            "fill the gap before it goes on."
        ),
    ),
]  # fmt: skip


@each(ROWS)
def test_a_finding_appears_and_just_does_not(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(style_findings) == {row.code for row in ROWS}


def test_a_sound_window_says_none_of_it() -> None:
    assert not {one.code for one in kit_of().findings} & codes_in(style_findings)


def test_the_bottom_casing_reaches_over_its_gap_too() -> None:
    """3/16 + w - 2 3/8 - 1/4 is 1/2 with w = 2 15/16."""

    def short(width: str) -> list[str]:
        found = case(Side.SILL, interior_trim__inside__casing__width=width)()
        return [one.code for one in found if one.code == "casing-laps-short"]

    assert short("2 59/64") == ["casing-laps-short"]
    assert short("2 15/16") == []


def test_without_a_stool_there_is_no_apron_under_it() -> None:
    kit = kit_of(interior_trim__inside=STOOL, windows__fixed__jamb_depth="6 1/2", **NEAR)
    assert not {part.kind for part in kit.parts} & {PartKind.STOOL, PartKind.APRON}


def test_exterior_jambs_without_width_are_told_once() -> None:
    assert [one.code for one in joint("1 1/2")()] == ["exterior-jamb-has-no-width"]


@pytest.mark.parametrize("side", [Side.HEAD, Side.LEFT, Side.RIGHT])
def test_the_shallowest_end_of_the_shallowest_side_decides(side: Side) -> None:
    """A joint of 1/4: 1/4 at one end of one board leaves it nothing there, 17/64 leaves 1/64; the sill is no jamb."""
    sides = planned_sides(1.5)
    for low, is_fault in ((0.25, True), (17 / 64, False)):
        tapered = {**sides, side: replace(sides[side], finish_depth=low)}
        try:
            hold_to_some_width(tapered, 0.25)
        except CannotBeCut:
            assert is_fault
        else:
            assert not is_fault
    hold_to_some_width({**sides, Side.SILL: replace(sides[Side.SILL], finish_depth=0.0)}, 0.25)


def narrow(*boards: str) -> set[str]:
    """What is told to be narrower than the 2 that a saw holds, with casing of 1 1/2 inside and these boards at hand."""
    kit = kit_of(
        shop__least_strip="2",
        shop__boards=[{"stock": "poplar", "thickness": "3/4", "width": width} for width in (*boards, "7 1/4")],
        interior_trim__inside__casing__width="1 1/2",
    )
    (found,) = (one for one in kit.findings if isinstance(one, style_findings.NarrowerThanSafe))
    # The exterior jambs are the narrowest: 1 1/2 - 1/4.
    assert found.width == 1.25
    return {f"{part.where.value} {part.kind.value}" for part in kit.parts if part.mark in found.marks}


def test_a_board_as_wide_as_it_is_bought_is_not_ripped_and_never_too_narrow() -> None:
    assert narrow() == {"interior casing", "exterior exterior extension jamb"}
    assert narrow("1 1/2") == {"exterior exterior extension jamb"}


def test_a_kerf_that_is_not_cut_drips_nowhere() -> None:
    kerf = {"width": "1/4", "depth": "0", "set_back": "1/2"}
    assert [one.code for one in nosing("1/4")() if one.code == "kerf-behind-cladding"] == ["kerf-behind-cladding"]
    found = case(exterior_trim__outside__sill__nosing="1/4", exterior_trim__outside__sill__drip_kerf=kerf, **LEVEL)()
    assert [one.code for one in found if one.code == "kerf-behind-cladding"] == []
