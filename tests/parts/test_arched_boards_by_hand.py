"""Where the boards of an arch lie in the wall, by hand, and the form that a bent jamb is glued on.

The window is a half round of 36 by 60: its circles have their center at (18, 42). Faces of 2 1/2 and a reveal of 1/8
leave a clear radius of 15 5/8 inside; the interior casing begins 3/16 farther out.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from arches import BOARDS, HALF_ROUND, arch_changes, arched
from cases import changed, job_of

from jambs.geometry import cross
from jambs.length import FINE, Units
from jambs.parts.board.bending_form import PAST_SPRING, bending_form
from jambs.parts.board.cuts import ArcCut, Crosscut, CurvedSide, PlaneCut
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.make import PartsError, make_kit
from jambs.parts.words.cut_words import work_words
from jambs.place.frame_path import frame_path
from jambs.place.solve import place_windows
from jambs.sides import Side

CENTER = (18.0, 42.0)


def heads(kind: PartKind, where: Where) -> list[Part]:
    return [one for one in arched().kit.parts if (one.kind, one.where, one.side) == (kind, where, Side.HEAD)]


def arcs(part: Part) -> list[ArcCut]:
    return [cut for cut in part.cuts if isinstance(cut, ArcCut)]


@pytest.mark.parametrize(
    ("where", "radii", "face", "back"),
    [
        # The casing is 3 1/2 wide and 3/4 thick, its back on jambs that stand 1/32 proud of the wall.
        (Where.INTERIOR, (15.8125, 19.3125), -0.78125, -0.03125),
        # Faces of 2 1/2 and reveals of 1/4 twice: 15; 4 1/2 wide and 1 thick, on the trim plane at 12.
        (Where.EXTERIOR, (16.0, 20.5), 13.0, 12.0),
    ],
)
def test_segments_of_a_casing_lie_on_the_wall_about_one_center(
    where: Where, radii: tuple[float, float], face: float, back: float
) -> None:
    parts = heads(PartKind.CASING, where)
    assert len(parts) >= 3
    for part in parts:
        assert {cut.side: cut.radius for cut in arcs(part)} == dict(
            zip((CurvedSide.NEAR, CurvedSide.FAR), radii, strict=True)
        )
        for cut in arcs(part):
            assert part.seat.at(*cut.center, 0.0) == pytest.approx((*CENTER, face))
            assert part.seat.at(*cut.center, part.thickness) == pytest.approx((*CENTER, back))


@pytest.mark.parametrize(
    ("where", "kind", "toward"),
    [(Where.INTERIOR, PartKind.EXTENSION_JAMB, -1.0), (Where.EXTERIOR, PartKind.EXTERIOR_JAMB, 1.0)],
)
def test_segments_of_a_jamb_run_from_the_frame_to_their_wall(where: Where, kind: PartKind, toward: float) -> None:
    """Boards on edge: their arcs are on face and back, their width goes from the frame into the room, or out."""
    parts = heads(kind, where)
    assert len(parts) >= 3
    for part in parts:
        assert part.seat.across == (0.0, 0.0, toward)
        for cut in arcs(part):
            u, w = cut.center
            assert part.seat.at(u, 0.0, w)[:2] == pytest.approx(CENTER)


@pytest.mark.parametrize("curved", ["sawn segments", "bent laminations"])
def test_no_board_of_an_arch_is_a_mirror_and_no_direction_a_negative_nothing(curved: str) -> None:
    """A zero with a sign would be printed as one in the file of parts."""
    for part in arched(curved=curved).kit.parts:
        seat = part.seat
        assert cross(seat.along, seat.across) == pytest.approx(seat.through)
        assert [one for way in (seat.along, seat.across, seat.through) for one in way if str(one) == "-0.0"] == []


@pytest.mark.parametrize("where", [Where.INTERIOR, Where.EXTERIOR])
def test_segments_are_counted_from_the_left(where: Where) -> None:
    """Of half a turn each takes as much: the middle of the first looks half of that up from the left."""
    parts = heads(PartKind.CASING, where)
    looks = [math.degrees(math.atan2(part.seat.across[0], part.seat.across[1])) for part in parts]
    step = 180 / len(parts)
    assert looks == pytest.approx([-90 + step / 2 + step * i for i in range(len(parts))])
    assert [(part.member, part.runs) for part in parts] == [(i + 1, len(parts)) for i in range(len(parts))]


def leg_top(shape: Any) -> dict[float, float]:
    """How high the inner and the outer edge of the left leg of the interior casing reach, by their places across."""
    (leg,) = (
        one
        for one in arched(shape).kit.parts
        if (one.kind, one.where, one.side) == (PartKind.CASING, Where.INTERIOR, Side.LEFT)
    )
    points = [leg.seat.at(u, v, 0.0) for u, v in leg.outline]
    return {x: max(y for other, y, _ in points if abs(other - x) < 1e-9) for x, _, _ in points}


def test_legs_of_a_half_round_end_square_on_its_diameter() -> None:
    """2 1/2 of frame less 1/8 and 3/16: the leg stands from 2 3/16 out to -1 5/16, and both edges end at 42."""
    tops = leg_top(HALF_ROUND)
    assert sorted(tops) == pytest.approx([-1.3125, 2.1875])
    assert list(tops.values()) == pytest.approx([42.0, 42.0])


def test_legs_of_a_segment_arch_end_on_its_arcs() -> None:
    """18 across and 8 up: a radius of (18² + 8²) / 16 = 24 1/4 about (18, 35 3/4); 2 3/16 less, and 3 1/2 more."""
    tops = leg_top({"kind": "segment arch", "rise": "8"})
    for x, radius in ((2.1875, 24.25 - 2.1875), (-1.3125, 24.25 + 1.3125)):
        assert tops[x] == pytest.approx(35.75 + math.sqrt(radius**2 - (18 - x) ** 2))


# ---- bent, and the form


def bent(**more: Any) -> Part:
    parts = arched(curved="bent laminations", **more).kit.parts
    return next(one for one in parts if one.kind is PartKind.EXTENSION_JAMB and one.side is Side.HEAD)


def test_a_bent_head_reaches_from_spring_line_to_spring_line_and_up_to_the_crown() -> None:
    """15 5/8 and 3/4 of plies: its back is 16 3/8 about (18, 42), its width goes into the room."""
    part = bent()
    assert part.seat.at(0.0, 0.0, 0.0)[:2] == pytest.approx((18 - 16.375, 42.0))
    assert part.seat.at(16.375, 0.0, 16.375)[:2] == pytest.approx((18.0, 58.375))
    assert part.seat.across == (0.0, 0.0, -1.0)
    assert part.in_place_rise == pytest.approx(16.375)


def test_the_ends_of_a_bent_head_are_sawn_alike() -> None:
    """Under a segment arch they lie on the lines from the inner to the outer corner, as far in from both ends."""
    parts = arched({"kind": "segment arch", "rise": "8"}, curved="bent laminations").kit.parts
    part = next(one for one in parts if one.kind is PartKind.EXTENSION_JAMB and one.side is Side.HEAD)
    whole = next(cut.length for cut in part.in_place if isinstance(cut, Crosscut))
    first, last = (one.flat for one in part.in_place if isinstance(one, PlaneCut))
    assert first.start[0] + last.start[0] == pytest.approx(whole)
    assert (first.finish[0], last.finish[0]) == pytest.approx((0.0, whole))
    assert first.finish[2] == last.finish[2] > 0


def one_kind(thickness: str) -> list[dict[str, Any]]:
    """The boards of the tests, those for the jamb inside all of one thickness."""
    others = [board for board in BOARDS if board["stock"] != "poplar" or board["nominal"] == "1x8"]
    thin = {"nominal": "thin", "stock": "poplar", "thickness": thickness, "width": "7 1/4", "lengths": ["8'"]}
    return [*(board for board in others if board["stock"] != "poplar"), thin]


def test_a_board_that_gives_one_ply_is_a_board_to_resaw_and_a_thinner_one_is_none() -> None:
    """A ply of 1/8 and 1/32 to plane take 5/32: that much wood gives one, 1/64 less gives none. Six plies of six."""
    plies = bent(shop__boards=one_kind("5/32")).blank
    assert plies.plies is not None
    assert (plies.plies.per_strip, len(plies.strips)) == (1, 6)
    thinner = arch_changes(HALF_ROUND, 36, 60, curved="bent laminations", shop__boards=one_kind("9/64"))
    job = job_of(changed(**thinner))
    with pytest.raises(PartsError, match="no poplar board listed gives them"):
        make_kit(place_windows(job)[0], job)


def test_the_form_is_a_disk_cut_off_a_little_past_the_spring_lines() -> None:
    """Radius 15.625 x 35/36 = 15.191, 15 3/16 on the grid; its arc is the jamb's face and 2 more at each end.

    (15.625 pi + 4) / 15.1875 = 3.4955: by half of 0.3539 it goes on past each end of its diameter, and the chord lies
    15.1875 sin 0.17695 below the center. Spring lines: (15.625 / 15.1875 - 1) pi / 2 = 0.04525 past its diameter.
    """
    radius = 15.1875
    past, springs = ((15.625 * math.pi + 2 * PAST_SPRING) / radius - math.pi) / 2, (15.625 / radius - 1) * math.pi / 2
    form = bending_form(bent())
    across, up = [x for x, _ in form.outline], [y for _, y in form.outline]
    assert (min(across), min(up)) == (0.0, 0.0)
    assert form.radius == radius
    assert form.size == pytest.approx((2 * radius, radius * (1 + math.sin(past))), rel=1e-3)
    assert form.crown == pytest.approx((radius, radius * (1 + math.sin(past))), rel=1e-3)
    (left, right), (x, y) = form.outline[:2], form.center
    assert right[0] - left[0] == pytest.approx(2 * radius * math.cos(past))
    assert (left[1], right[1]) == pytest.approx((0.0, 0.0)) and left[0] < right[0]
    assert (x, y) == pytest.approx(((left[0] + right[0]) / 2, radius * math.sin(past)))
    assert [math.dist(point, form.center) for point in form.outline] == pytest.approx([radius] * len(form.outline))
    out, down = radius * math.cos(springs), radius * math.sin(springs)
    spring_left, spring_right = form.springs
    assert spring_left == pytest.approx((x - out, y - down)) and spring_right == pytest.approx((x + out, y - down))
    assert form.spring_lines == tuple((point, form.center) for point in form.springs)


def test_spring_lines_of_a_flat_arch_end_at_the_base_of_its_form() -> None:
    """36 across and 8 up: the center lies under the form, and each line from there goes up through its base."""
    form = bending_form(bent(shape={"kind": "segment arch", "rise": "8"}))
    x, y = form.center
    assert y < 0 and x == pytest.approx(form.size[0] / 2)
    for point, foot in form.spring_lines:
        assert foot[1] == 0.0
        assert (foot[0] - x) / (0 - y) == pytest.approx((point[0] - x) / (point[1] - y))


def test_a_form_is_a_disk_at_most() -> None:
    """A jamb that would spring back nearly all its bend: a radian of the disk is left to lay it down on."""
    part = bent()
    plies = part.blank.plies
    assert plies is not None
    tight = replace(part, blank=replace(part.blank, plies=replace(plies, form_radius=8.0)))
    left, right = bending_form(tight).outline[:2]
    assert right[0] - left[0] == pytest.approx(2 * 8 * math.sin(0.5))


def test_only_what_is_bent_has_a_form() -> None:
    with pytest.raises(ValueError, match="not bent from plies"):
        bending_form(heads(PartKind.CASING, Where.INTERIOR)[0])


def test_a_segment_of_a_jamb_is_sawn_on_its_edge_and_one_of_a_casing_on_its_back() -> None:
    for kind, lies in ((PartKind.EXTENSION_JAMB, "the board on its edge"), (PartKind.CASING, "the board face up")):
        for part in heads(kind, Where.INTERIOR):
            told = [words for words in work_words(part, grid=FINE[Units.INCH]) if "template" in words]
            assert len(told) == 2 and all(lies in words for words in told)


def test_every_board_of_an_ellipse_arch_knows_its_arc() -> None:
    """Three centers for 48 by 12: of the chord √(24² + 12²) less 24 - 12 half is 7.4164, over cos 26.57° 8.2918."""
    kit = arched({"kind": "ellipse arch", "rise": "12"}, 48, 60).kit
    path = frame_path(kit.placement.opening)
    centers = {1: (8.2918, 48.0), 2: (24.0, 16.5836), 3: (48 - 8.2918, 48.0)}
    for kind in (PartKind.EXTENSION_JAMB, PartKind.CASING):
        boards = [one for one in kit.parts if one.kind is kind and one.where is Where.INTERIOR and one.arcs]
        found = [edge_of(one, path).run for one in boards]
        assert found == sorted(found) and set(found) == {1, 2, 3}
        for run, board in zip(found, boards, strict=True):
            u, out = board.arcs[0].center
            place = board.seat.at(u, 0.0, out) if board.is_sawn_on_edge else board.seat.at(u, out, 0.0)
            assert place[:2] == pytest.approx(centers[run], abs=1e-4)
