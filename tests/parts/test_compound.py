"""Ends and edges cut by any plane: settings of the saw, long and short point, words for the cut sheet, by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from jambs.geometry import Plane
from jambs.length import FINE, Units
from jambs.parts.board.arrises import Arris, arris_lengths
from jambs.parts.board.cuts import (
    BoardSizes,
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    End,
    EndBevel,
    Miter,
    PlaneCut,
    Rip,
    compound_miter,
    saw_angles,
)
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.sawing import board_sizes
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.sides import Side

LENGTH, WIDTH, THICKNESS = 30.0, 5.0, 0.75
FLAT = Seat(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0))
SQUARE: tuple[Cut, ...] = (Rip(width=WIDTH), Crosscut(length=LENGTH))
SIZES = board_sizes(SQUARE, thickness=THICKNESS)
CROWN = (31.62, 33.86)
"""Miter and blade tilt for 52/38 crown molding in a square corner: as printed on saws, from memory."""


def board(*cuts: Cut, seat: Seat = FLAT) -> Part:
    return Part(
        kind=PartKind.EXTENSION_JAMB,
        side=Side.HEAD,
        where=Where.INTERIOR,
        blank=PartBlank(stock="poplar", thickness=THICKNESS),
        cuts=(*SQUARE, *cuts),
        seat=seat,
    )


def crown(end: End, *, face_short: bool = False) -> PlaneCut:
    return compound_miter(SIZES, end, miter_deg=CROWN[0], bevel_deg=CROWN[1], long_edge=Edge.FAR, face_short=face_short)


@pytest.mark.parametrize("end", End)
@pytest.mark.parametrize("face_short", [False, True])
@pytest.mark.parametrize("settings", [CROWN, (35.26, 30.0), (22.5, 10.0), (45.0, 45.0)])
def test_the_settings_come_back_from_the_plane(end: End, face_short: bool, settings: tuple[float, float]) -> None:
    miter, bevel = settings
    for edge in Edge:
        cut = compound_miter(SIZES, end, miter_deg=miter, bevel_deg=bevel, long_edge=edge, face_short=face_short)
        plane = cut.plane(SIZES)
        assert saw_angles(plane) == pytest.approx(settings, abs=1e-9)
        middle = (LENGTH / 2, WIDTH / 2, THICKNESS / 2)
        assert plane.past(middle) < 0
        waste = 0.0 if end is End.START else LENGTH
        assert plane.past((waste, WIDTH / 2, THICKNESS / 2)) > 0


def test_long_point_and_short_point_of_both_ends_by_hand() -> None:
    """At the settings of crown: 5 tan 31.62 = 3.0785 over the face, 0.75 tan 33.86 / cos 31.62 = 0.5910 through it."""
    over, through = (
        5 * math.tan(math.radians(31.62)),
        0.75 * math.tan(math.radians(33.86)) / math.cos(math.radians(31.62)),
    )
    assert (over, through) == pytest.approx((3.0785, 0.5910), abs=1e-4)
    lengths = arris_lengths(SIZES, (*SQUARE, crown(End.START), crown(End.FINISH)))
    assert lengths == pytest.approx(
        {
            Arris(edge=Edge.FAR, on_back=False): 30.0,
            Arris(edge=Edge.FAR, on_back=True): 30.0 - 2 * through,
            Arris(edge=Edge.NEAR, on_back=False): 30.0 - 2 * over,
            Arris(edge=Edge.NEAR, on_back=True): 30.0 - 2 * over - 2 * through,
        }
    )


def test_the_outlines_show_what_is_seen_past_the_plane() -> None:
    """On the face: a miter from the long point. On the edge: the far edge, the longest. From the end: all of it."""
    found = board(crown(End.FINISH)).silhouettes
    over = 5 * math.tan(math.radians(31.62))
    assert set(found.face) == {(0.0, 0.0), (0.0, 5.0), (30.0, 5.0), (30.0 - over, 0.0)}
    assert max(u for u, w in found.edge if w == 0.0) == 30.0
    assert max(u for u, w in found.edge if w == THICKNESS) == pytest.approx(30.0 - 0.5910, abs=1e-4)
    assert set(found.end) == {(0.0, 0.0), (5.0, 0.0), (5.0, 0.75), (0.0, 0.75)}
    assert len(found.planes) == 1


def test_a_plane_straight_through_is_the_plain_cut() -> None:
    """A compound cut without tilt is a miter, and one without miter an end bevel."""
    for end in End:
        for plain in (Miter(end=end, angle_deg=30, long_edge=Edge.FAR), EndBevel(end=end, angle_deg=30)):
            same = PlaneCut(at=end, flat=plain.plane(SIZES))
            assert board(same).silhouettes == board(plain).silhouettes
    for face_short in (False, True):
        upright = compound_miter(
            SIZES, End.FINISH, miter_deg=30, bevel_deg=0, long_edge=Edge.FAR, face_short=face_short
        )
        assert board(upright).silhouettes == board(Miter(end=End.FINISH, angle_deg=30, long_edge=Edge.FAR)).silhouettes


def test_words_for_the_cut_sheet() -> None:
    part = board(crown(End.START), crown(End.FINISH))
    assert ends_words(part, grid=FINE[Units.INCH]) == (
        "both ends miter 31.6° (58.4°), blade tilted 33.9° (56.1°), long point at the upper edge on the face; "
        'long point 30" (upper edge on the face), short point 22 21/32" (lower edge on the back), '
        'lower edge on the face 23 27/32"'
    )
    turned = board(crown(End.START, face_short=True))
    assert ends_words(turned, grid=FINE[Units.MM]) == (
        "left miter 31.6° (58.4°), blade tilted 33.9° (56.1°), long point at the upper edge on the back; right square; "
        "long point 762 mm (upper edge on the back), short point 668.8 mm (lower edge on the face), upper edge on the "
        "face 747 mm"
    )


def test_an_edge_off_the_grain_and_tilted() -> None:
    """A taper of 1 in 30 with a bevel of 15°: 1.91° off the grain."""
    slope = math.atan2(1.0, 30.0)
    way = (0.0, -math.tan(math.radians(15)) / math.cos(slope), 1.0)
    cut = PlaneCut(
        at=Edge.FAR,
        flat=Plane(start=(0.0, 5.0, 0.0), finish=(30.0, 4.0, 0.0), way=way, keep=(15.0, 0.0, 0.0)),
    )
    (words,) = work_words(board(cut), grid=FINE[Units.INCH])
    assert words == "rip the upper edge 1.9° off the grain, blade tilted 15° (75°)"
    assert ends_words(board(cut), grid=FINE[Units.INCH]) == "square both ends"


@pytest.mark.parametrize(("spring_deg", "settings"), [(38.0, CROWN), (45.0, (35.26, 30.0))])
def test_a_joint_of_the_wall_is_brought_onto_a_board_that_leans(
    spring_deg: float, settings: tuple[float, float]
) -> None:
    """Two boards that lean alike meet in the upright plane at 45° between them: crown, and any flared jamb.

    Settings as printed on saws, from memory; atan(sin s · tan 45°) and asin(cos s · sin 45°) give the same.
    """
    spring = math.radians(spring_deg)
    seat = Seat(
        origin=(3.0, 2.0, 1.0),
        along=(1.0, 0.0, 0.0),
        across=(0.0, math.cos(spring), math.sin(spring)),
        through=(0.0, -math.sin(spring), math.cos(spring)),
    )
    corner = seat.at(LENGTH, WIDTH, 0.0)
    # Upright is y, out of the wall is d: the plane holds both the upright and the way half between the two walls.
    joint = Plane(
        start=corner,
        finish=(corner[0] - 1.0, corner[1], corner[2] - 1.0),
        way=(0.0, 1.0, 0.0),
        keep=seat.at(LENGTH / 2, WIDTH / 2, 0.0),
    )
    cut = PlaneCut(at=End.FINISH, flat=seat.plane_on_board(joint))
    assert saw_angles(cut.flat) == pytest.approx(settings, abs=0.01)
    assert saw_angles(cut.flat) == pytest.approx(
        (
            math.degrees(math.atan(math.sin(spring))),
            math.degrees(math.asin(math.cos(spring) * math.sqrt(0.5))),
        )
    )
    assert all(
        joint.past(seat.at(*point)) == pytest.approx(cut.flat.past(point))
        for point in ((0.0, 0.0, 0.0), (9.0, 2.0, 0.5))
    )
    assert seat.board_point(seat.at(7.0, 2.0, 0.5)) == pytest.approx((7.0, 2.0, 0.5))


def test_sizes_of_a_tapered_board_hold_at_each_end() -> None:
    sizes = BoardSizes(length=30.0, width=5.0, thickness=0.75, start_width=4.0, finish_width=5.0)
    for end, over in ((End.START, 4.0), (End.FINISH, 5.0)):
        cut = compound_miter(sizes, end, miter_deg=45, bevel_deg=0, long_edge=Edge.FAR)
        lengths = arris_lengths(sizes, (cut,))
        assert lengths[Arris(edge=Edge.NEAR, on_back=False)] == pytest.approx(30.0 - over)


def test_members_of_one_kind_and_side_are_different_parts() -> None:
    """Two boards of one jamb: the same kind, side and opening, and neither takes the other's mark."""
    one = replace(board(), opening="W1")
    two = replace(one, member=2)
    assert one.identity != two.identity and len({one.identity, two.identity, replace(one, mark="W1-9").identity}) == 2


def test_a_jamb_is_compound_where_an_end_or_an_edge_of_it_is_cut_by_no_plain_setting() -> None:
    """One such cut beside the rip and the crosscut is enough; casing lies flat and is drawn on its face."""
    beveled = board(EdgeBevel(edge=Edge.NEAR, angle_deg=10.0, face_short=True))
    assert board(crown(End.START)).is_compound and beveled.is_compound
    assert not board().is_compound and not board(Miter(end=End.START, angle_deg=45.0, long_edge=Edge.FAR)).is_compound
    assert not replace(beveled, kind=PartKind.CASING).is_compound
