"""What a fastener goes through, what the table is asked, how many a field takes: sums by hand on small walls."""

from __future__ import annotations

import copy
from dataclasses import replace
from typing import Any

import pytest
from cases import changed, job_of, kit_of
from fasten_house import elevation, entries, entry
from gangs import ganged_kit
from trimmed_as_one import run_kits

from jambs.fasten.fastener_words import assumed_lengths
from jambs.fasten.furring import FurringCase, furring_verdict
from jambs.fasten.furring_words import verdict_words
from jambs.fasten.plan import (
    FastenerLine,
    board_count,
    field_count,
    field_fasteners,
    house_fasteners,
    known_spacing,
    opening_fasteners,
)
from jambs.fasten.reach import Sold, framing_face, layers_to_framing, next_length, through_opening
from jambs.job.models.openings import Assumed
from jambs.job.models.outside import Fixed
from jambs.length import Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import Kit
from jambs.wall.planes import WallPlanes, stack_wall

GYPSUM, PLY = "gypsum board 1/2", "plywood 1/2"
STUD = {"material": "stud 2x6", "spacing": "16"}
COVER = {"material": "plywood 1/2", "role": "outer sheathing"}
SHINGLES = {"material": "wood shingles", "thickness": "3/4"}


def foam(thickness: str) -> dict[str, str]:
    return {"material": "EPS", "thickness": thickness}


def strapping(**keys: str) -> dict[str, str]:
    return {"material": "strapping 1x4", **keys}


def planes(*layers: Any) -> WallPlanes:
    """Stack a wall on a grid of 1/32."""
    job = job_of(changed(walls__main__layers=[copy.deepcopy(one) for one in layers]))
    return stack_wall(job.openings[0].wall, grid=job.shop.grid)


def verdict(fixed: Fixed, wall: WallPlanes, **keys: object) -> str | None:
    """What the table says of the field's fasteners, its first words."""
    made = field_fasteners("north", elevation(), None, [], wall, entries(fixed, **keys), job_of(changed()).units)
    assert len(made) == 1
    return verdict_words(made[0].furring, Units.INCH) if made[0].furring else None


def test_lengths_are_assumed_where_nobody_read_them_and_told_once() -> None:
    """A kind whose lengths were read, one whose were not, and a fastener whose length the job gives itself."""
    read = Sold(fastener="screw", diameter=0.25, lengths=(3.0, 4.0), source="a list", is_read=True)
    said = replace(read, fastener="nail", source="common practice, no source", is_read=False)
    (line, *_) = field_fasteners(
        "north",
        elevation(),
        None,
        [],
        planes(GYPSUM, STUD, PLY, foam("2"), strapping(spacing="16"), SHINGLES),
        entries(Fixed.STRAPPING),
        Units.INCH,
    )
    lines = [replace(line, sold=one) for one in (None, read, said, said)]
    assert assumed_lengths(lines, Units.INCH) == (
        Assumed(what="lengths of nail", value='3", 4"', why="common practice, no source"),
    )


def test_the_framing_is_reached_at_its_outermost_face() -> None:
    """Two rows of studs with foam between: 1/2 + 3 1/2 + 2 + 3 1/2 = 9 1/2; inside of it nothing is counted."""
    small = {"material": "stud 2x4", "spacing": "16"}
    double = planes(GYPSUM, small, foam("2"), small, PLY, foam("2"), COVER, SHINGLES)
    assert framing_face(double) == 9.5
    assert [one.thickness for one in layers_to_framing(double, double.trim_plane)] == [0.5, 2.0, 0.5]
    assert [one.thickness for one in layers_to_framing(double, 11.0)] == [1.0, 0.5]


def test_what_holds_nothing_has_no_way_in() -> None:
    """No casing without exterior trim, no buck where the sheathing carries the flange; a liner is on the studs."""
    bare = kit_of(exterior_trim=None, position={"share": "0"})
    assert through_opening(Fixed.CASING, bare) is None and through_opening(Fixed.BUCK, bare) is None
    lined = kit_of(walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"})
    (through,) = through_opening(Fixed.BUCK, lined) or ()
    assert (through.name, through.thickness) == ("liner buck", 0.75)
    assert through_opening(Fixed.STRAPPING, lined) is None


def test_without_framing_the_sheathing_is_reached() -> None:
    """A wall of boards alone: 1/2 of gypsum, 3/4 of boards, so 1 1/4."""
    solid = planes(GYPSUM, "board sheathing 3/4", foam("2"), COVER, SHINGLES)
    assert framing_face(solid) == 1.25
    assert [one.thickness for one in layers_to_framing(solid, solid.trim_plane)] == [0.5, 2.0]


@pytest.mark.parametrize(("needed", "found"), [(2.0, 2.0), (2 + 1 / 256, 2.0), (2 + 1 / 64, 3.0), (3.1, None)])
def test_a_length_reaches_within_half_a_sixty_fourth(needed: float, found: float | None) -> None:
    assert next_length(needed, [3.0, 2.0]) == found


def test_foam_inside_the_sheathing_is_not_under_the_strapping() -> None:
    """The table is asked of the foam outboard of the sheathing; without any it is not asked at all."""
    keys: dict[str, object] = {
        "fastener": "1/4 lag screw",
        "spacing": "12",
        "penetration": "1 1/2",
        "cladding_weight": "3 psf",
    }
    inside = planes(GYPSUM, foam("3"), STUD, PLY, strapping(), SHINGLES)
    assert verdict(Fixed.STRAPPING, inside, **keys) is None
    both = planes(GYPSUM, foam("3"), STUD, PLY, foam("4"), strapping(), SHINGLES)
    assert (verdict(Fixed.STRAPPING, both, **keys) or "").startswith("in the table: up to 4 in of foam")
    two = planes(GYPSUM, STUD, PLY, foam("2"), foam("2 1/2"), strapping(), SHINGLES)
    assert (verdict(Fixed.STRAPPING, two, **keys) or "").startswith('needs design: 4 1/2" of foam')


def test_the_table_is_not_for_an_outer_sheathing_and_asks_for_a_spacing() -> None:
    cover = planes(GYPSUM, STUD, PLY, foam("2"), COVER, SHINGLES)
    assert (verdict(Fixed.COVER, cover) or "").startswith("needs design: the published table is for furring over foam")
    assert verdict(Fixed.COVER, planes(GYPSUM, STUD, PLY, COVER, SHINGLES)) is None
    bare = planes(GYPSUM, "board sheathing 3/4", foam("2"), strapping(), SHINGLES)
    keys: dict[str, object] = {"fastener": "1/4 lag screw", "spacing": "12", "cladding_weight": "3 psf"}
    said = "needs design: neither the strapping nor the framing has a spacing in the job; the local code decides."
    assert verdict(Fixed.STRAPPING, bare, **keys) == said
    told = planes(GYPSUM, "board sheathing 3/4", foam("2"), strapping(spacing="16"), SHINGLES)
    assert (verdict(Fixed.STRAPPING, told, **keys) or "").startswith("in the table")


def test_strapping_has_its_own_spacing_and_else_that_of_the_studs() -> None:
    own = planes(GYPSUM, STUD, PLY, foam("2"), strapping(spacing="24"), SHINGLES)
    assert known_spacing(own.layers[4].layer, own) == 24.0
    studs = planes(GYPSUM, STUD, PLY, foam("2"), strapping(), SHINGLES)
    assert known_spacing(studs.layers[4].layer, studs) == 16.0
    cover = planes(GYPSUM, STUD, PLY, foam("2"), COVER, SHINGLES)
    assert known_spacing(cover.layers[4].layer, cover) == 16.0
    # Battens inside of the studs carry nothing out there.
    battens = {"material": "service battens", "role": "service cavity", "thickness": "1 1/2", "spacing": "24"}
    inner = planes(GYPSUM, battens, STUD, PLY, foam("2"), COVER, SHINGLES)
    assert known_spacing(inner.layers[5].layer, inner) == 16.0


@pytest.mark.parametrize(
    ("spacing", "members"),
    [("16", 8), ("24", 6), (None, 8)],
)
def test_members_across_a_wall_stand_as_the_job_says_or_as_is_usual(spacing: str | None, members: int) -> None:
    """10 ft at 16 are 7 spaces and a half, at 24 five; 96 high have 7 screws each."""
    stud = {"material": "stud 2x6"} | ({"spacing": spacing} if spacing else {})
    wall = planes(GYPSUM, stud, PLY, foam("2"), COVER, SHINGLES)
    (line,) = field_fasteners("north", elevation(), 120.0, [], wall, entries(Fixed.COVER), Units.INCH)
    assert line.count == members * 7


def opening(width: str, height: str) -> Kit:
    size = f"{width} x {height}"
    return kit_of(openings__0__frame=size, openings__0__rough_opening=size, shop__shim_space="0")


@pytest.mark.parametrize(
    ("width", "height", "out"),
    [("32", "48", 2 * 3), ("31", "48", 1 * 3), ("32", "47", 2 * 2), ("33", "49", 2 * 3)],
)
def test_an_opening_takes_out_whole_members_and_whole_spaces(width: str, height: str, out: int) -> None:
    """Members 16 apart, screws 16 apart: 10 ft have 120 / 16 = 7 spaces, 8 members; 96 high have 7 screws each."""
    holes = [opening(width, height)]
    assert field_count(elevation(), 120.0, [], 16.0, entry()) == 8 * 7
    assert field_count(elevation(), 120.0, holes, 16.0, entry()) == 8 * 7 - out
    assert field_count(elevation(), 120.0, holes, 16.0, entry(rows="2")) == 2 * (8 * 7 - out)
    assert field_count(elevation(), 16.0, holes * 9, 16.0, entry()) == 0


@pytest.mark.parametrize(("width", "members"), [(112.0, 8), (111.9, 7), (127.9, 8), (128.0, 9)])
def test_members_stand_at_both_ends(width: float, members: int) -> None:
    assert field_count(elevation(), width, [], 16.0, entry()) == members * 7


def of_opening(fixed: Fixed, **paths: Any) -> FastenerLine:
    made = opening_fasteners(kit_of(**paths), entries(fixed), Units.INCH)
    assert len(made) == 1
    return made[0]


def test_casing_over_insulation_wants_design_and_a_buck_is_not_asked() -> None:
    casing, buck = of_opening(Fixed.CASING), of_opening(Fixed.BUCK)
    assert casing.furring is not None and verdict_words(casing.furring, Units.INCH).startswith(
        "needs design: the published table is for furring over foam, not for casing over insulation"
    )
    assert buck.furring is None
    plain = [GYPSUM, STUD, PLY, SHINGLES]
    assert of_opening(Fixed.CASING, walls__main__layers=plain, position={"share": "0"}).furring is None


def test_a_buck_is_fastened_board_by_board() -> None:
    """Outboard buck of 1 1/2 round 36 x 48: heads 39, legs 48; 16 apart, 2 from each end: 4, 4, 4 and 4."""
    line = of_opening(Fixed.BUCK)
    assert line.count == 4 + 4 + 4 + 4
    assert not line.is_about
    assert (line.needed, line.where) == (2.75 + 0.5 + 1.5, "W1")


@pytest.mark.parametrize(("length", "count"), [(3.0, 1), (4.0, 1), (4.5, 2), (20.0, 2), (20.5, 3), (36.0, 3)])
def test_one_near_each_end_and_spaces_of_at_most_the_spacing(length: float, count: int) -> None:
    """2 from each end: 4 leaves nothing between, 20 leaves 16, one space; 20 1/2 wants two."""
    assert board_count(length, entry()) == count


def test_a_field_reaches_from_its_start_line_to_its_eave() -> None:
    """From 8 under the floor to 7'-4 over it are 96, as from 0 to 8': 7 on each of 8 members."""
    assert field_count(elevation(start_line="-8", eave="7'-4"), 112.0, [], 16.0, entry()) == 8 * 7
    assert field_count(elevation(start_line="16", eave="7'-4"), 112.0, [], 16.0, entry()) == 8 * 6


def test_the_house_counts_lines_that_have_a_length_and_a_count() -> None:
    """16 and 16 of 5 in; a line whose length nobody sells and one whose count nobody knows are not bought by a sum."""
    line = replace(of_opening(Fixed.BUCK), length=5.0)
    (row,) = house_fasteners([line, replace(line, length=None), replace(line, count=None), line])
    assert (row.length, row.count) == (5.0, 32)


def test_casing_on_a_wall_between_openings_is_fixed_as_casing_and_that_on_joined_frames_is_not() -> None:
    """Under a mull casing lies a wall where openings are trimmed as one, and in ganged units the frames themselves."""
    joined = {PartKind.CASING, PartKind.MULL_CASING}
    for kit, kinds in ((run_kits(2)[0], joined), (ganged_kit(), {PartKind.CASING})):
        outside = [part for part in kit.parts if part.where is Where.EXTERIOR]
        assert joined < {part.kind for part in outside}
        (line,) = opening_fasteners(kit, entries(Fixed.CASING), Units.INCH)
        assert line.count == sum(board_count(part.length, entry()) for part in outside if part.kind in kinds)


def test_the_weight_of_cladding_is_told_to_a_tenth_of_a_pound() -> None:
    """Past the table's last row of 25 lb per sq ft."""
    case = FurringCase(
        fastener="No. 10 wood screw", penetration=1, fastener_spacing=16, furring_spacing=24, cladding_psf=25.26, foam=1
    )
    said = verdict_words(furring_verdict(case), Units.INCH)
    assert 'fasteners 16" along furring 24" apart, 25.3 lb per sq ft.' in said
