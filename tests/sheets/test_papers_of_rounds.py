"""What papers say of a full round, of a half and a quarter round without two legs, and of a triangle."""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arched
from cases import STOOL
from random_kits import RandomKit
from rounds import rounded, rounded_inside

from jambs.job.models.path import outset
from jambs.job.models.trim import Corner
from jambs.length import FINE, Units
from jambs.outside.fastener_line import Fastened
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.place.frame_path import frame_path
from jambs.section.cut import cut_sections
from jambs.section.region import Section, SectionCut, Stuff
from jambs.sheets.arch_steps import at_blocks
from jambs.sheets.full_scale import templates_of
from jambs.sheets.install_steps import inside_steps
from jambs.sheets.record import opening_record
from jambs.sheets.trim_lines import interior_lines
from jambs.sides import Side

QUARTER = {"kind": "quarter round", "high_side": "left"}


def cut(made: RandomKit) -> CutKit:
    return as_cut(made.kit, PlannedForKit())


def steps(shape: Any, width: float, height: float, **more: Any) -> str:
    made = rounded_inside(shape, width, height, **more)
    return " ".join(inside_steps(cut(made), made.job.shop))


def test_a_ring_is_made_as_a_circle_and_taped_four_ways() -> None:
    """Frame 36, faces 2 1/2 and reveals 1/8 leave 31 1/4."""
    bent = steps("full round", 36, 36, curved="bent laminations")
    assert 'Make the ring (W1-1, W1-2) on the bench over its clear circle drawn full size, 31 1/4" across' in bent
    assert "bend both halves over the one form" in bent and 'tape 31 1/4" level, upright and on both slants' in bent
    assert "Check the depth again at top and bottom and at both sides" in bent
    assert "leg" not in bent and "spring line" not in bent
    sawn = steps("full round", 36, 36)
    assert "glue each half up from its segments with splines or dowels" in sawn
    assert 'mark the casing reveal of 3/16" all around; the lower half first.' in sawn


def test_a_triangle_is_right_where_its_edges_are() -> None:
    """Frame 48 x 30 is 38.42 along each slope; in by 2 3/8 all round, each edge is shorter in one share.

    Its inner circle has a radius of twice the area over all edges, 48 x 30 / 124.84 = 11.535.
    """
    made = rounded_inside("triangle", 48, 30)
    said = " ".join(inside_steps(cut(made), made.job.shop))
    slope = math.hypot(24, 30)
    share = 1 - 2.375 / (48 * 30 / (48 + 2 * slope))
    low, side = (made.job.shop.grid.text(length * share) for length in (48, slope))
    assert f"inside edges W1-1 {side}, W1-2 {side}, W1-3 {low}, clockwise seen from the room; all three right" in said
    assert "both slopes first, the bottom last" in said
    assert "leg" not in said and "Check the depth again at every corner" in said


def test_what_has_no_two_legs_stands_on_its_straight_boards() -> None:
    half = steps("half round", 36, 18)
    assert "The head stands on them with both its ends" in half and "spreader" not in half
    assert "the straight boards first, then the head standing on them" in half
    # A radius of 32 less 2 3/8, leg and bottom as far in: √(29 5/8² - 2 3/8²) - 2 3/8 = 27.15.
    quarter = steps(QUARTER, 32, 32)
    assert 'inside 27 5/32" at the left leg, 27 5/32" at the bottom, 27 5/32" high' in quarter
    assert "the straight boards first, then the head standing on them" in quarter


def test_a_curve_in_square_framing_is_shimmed_where_it_touches() -> None:
    """Head of a ring of 36: header in the middle, blocks 45° off it; along the arc quarters of half its circle."""
    head = frame_path(rounded_inside("full round").kit.placement.opening)[0]
    half = math.pi * 18
    assert at_blocks(head, (4.0, 20.0, half - 4.0)) == pytest.approx(
        (4.0, half / 4, half / 2, half * 3 / 4, half - 4.0)
    )


def test_a_bent_head_on_a_board_tells_how_far_its_ends_are_off_square() -> None:
    """Face of radius 15 5/8, its sill 2 3/8 over the center; back of 16 3/8: the end runs level between them."""
    kit = rounded_inside("half round", 36, 18, curved="bent laminations").kit
    (head,) = (part for part in kit.parts if part.is_laminated)
    off = math.degrees(math.asin(2.375 / 15.625))
    assert ends_words(head, grid=FINE[Units.INCH]) == f"saw both ends after bending {off:.1f}° off square to the curve"
    (upper, _) = (
        part for part in rounded_inside("full round", curved="bent laminations").kit.parts if part.is_laminated
    )
    assert ends_words(upper, grid=FINE[Units.INCH]) == "saw both ends on the level diameter after bending"
    assert "from end to end" in work_words(upper, grid=FINE[Units.INCH])[0]


def test_only_an_arch_over_legs_has_spring_lines() -> None:
    """A ring ends on its diameter, what stands on a sill or a stool, or meets a next arc, where its own arc ends."""
    shapes = (("full round", 36, 36), ("half round", 36, 18), ({"kind": "segment arch", "rise": "10"}, 36, 10))
    for shape, wide, high in shapes:
        made = rounded_inside(shape, wide, high, curved="bent laminations")
        words = [
            line for part in made.kit.parts if part.is_laminated for line in work_words(part, grid=FINE[Units.INCH])
        ]
        forms = [one for one in templates_of(cut(made), grid=made.job.shop.grid) if "the form" in one.title]
        labels = [text for form in forms for _, text in form.labels]
        said = [*words, *labels, *(form.note for form in forms)]
        said += [one.sentence(Units.INCH) for one in made.kit.findings]
        assert words and labels and not [one for one in said if "spring line" in one]
        assert ("level diameter" if shape == "full round" else "end of its arc") in labels


def test_metal_over_an_arch_without_legs_is_lapped_from_its_foot() -> None:
    def told(made: RandomKit) -> str:
        return next(one.sentence(Units.INCH) for one in made.kit.findings if one.code == "arch-outside-not-laid-out")

    assert "lapped upward from the foot of the curve" in told(rounded("half round", 36, 18))
    assert "lapped upward from the level diameter" in told(rounded("full round"))
    assert "lapped upward from the spring line" in told(arched())


def test_both_halves_of_a_ring_have_one_form() -> None:
    made = rounded_inside("full round", curved="bent laminations")
    forms = [one.title for one in templates_of(cut(made), grid=made.job.shop.grid) if "the form" in one.title]
    assert forms == ["W1-1, W1-2 extension jamb: the form all are bent over"]


def jamb_in(section: Section) -> set[tuple[float, float]]:
    (found,) = (one for one in section.regions if one.stuff is Stuff.JAMB)
    return {(round(across, 6), round(depth, 6)) for across, depth in found.outline}


def test_a_ring_is_cut_alike_at_its_sides_its_head_and_its_sill() -> None:
    sections = {one.cut: one for one in cut_sections(rounded_inside("full round").kit)}
    height = 36.0
    at_side = jamb_in(sections[SectionCut.JAMB])
    assert at_side == {(round(across - height, 6), depth) for across, depth in jamb_in(sections[SectionCut.HEAD])}
    assert at_side == {(round(-across, 6) + 0.0, depth) for across, depth in jamb_in(sections[SectionCut.SILL])}


def test_the_sides_of_a_triangle_are_cut_through_its_slopes() -> None:
    kit = rounded_inside("triangle", 48, 30).kit
    slopes = {
        part.member: part.mark for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.side is Side.HEAD
    }
    sections = {one.cut: one for one in cut_sections(kit)}
    at_right = [one.mark for one in sections[SectionCut.JAMB].regions if one.stuff is Stuff.JAMB]
    at_head = [one.mark for one in sections[SectionCut.HEAD].regions if one.stuff is Stuff.JAMB]
    assert (at_head, at_right) == ([slopes[1]], [slopes[2]])


def test_the_shim_space_of_a_triangle_is_the_shops_along_every_edge() -> None:
    """Its rough opening is wider than the frame by more than two of them, at its sharp corners."""
    placement = rounded_inside("triangle", 48, 30).kit.placement
    assert placement.shims.left == pytest.approx(0.25) and placement.shims.sill == pytest.approx(0.25)
    sharp = math.atan2(30, 24)
    wider = 2 * 0.25 / math.tan(sharp / 2)
    assert placement.opening.rough_opening.width == pytest.approx(48 + wider)
    assert outset(frame_path(placement.opening), dict.fromkeys(Side, 0.25))[2].length == pytest.approx(48 + wider)


def test_the_clear_opening_of_a_triangle_is_printed_on_the_shops_grid_and_kept_exactly() -> None:
    """Its slopes make it no multiple of 1/32; a tape and the install sheet know nothing finer."""
    made = rounded_inside("triangle", 48, 30)
    grid = made.job.shop.grid
    clear = opening_record(cut(made), grid=grid)["clear_opening"]
    width, height = made.kit.clear_width, made.kit.clear_height
    assert not grid.holds(width) and clear["width"]["value"] == pytest.approx(width, abs=1e-4)
    assert clear["text"] == " × ".join(grid.units.text(grid.round(side)) for side in (width, height))


def test_the_casing_of_a_triangle_on_a_stool_is_mitered_whatever_the_job_says() -> None:
    """A plumb cut at the peak, level ones on the stool: nothing runs past anything, and no leg is held to the stool."""
    made = rounded_inside("triangle", 48, 30, interior_trim__inside=STOOL)
    assert made.kit.placement.opening.interior.casing.corner is Corner.BUTT
    trim = opening_record(cut(made), grid=made.job.shop.grid)["trim"]["interior"]
    lines = {one["name"]: one["value"] for one in interior_lines(trim)}
    assert lines["casing corners"] == "miter" and "head casing overhang" not in lines
    assert lines["jamb corners"] == "mitered"
    (stool,) = (one for one in trim_fasteners(made.kit, made.job) if one.kind is Fastened.STOOL)
    assert "each jamb with two brads" in stool.note and "leg" not in stool.note
