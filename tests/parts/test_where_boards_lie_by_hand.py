"""Where boards and blocks lie in the wall, their ends and their edges, by hand.

The base window: frame 35 1/2 by 47 1/2, faces 2 1/2, frame reveal 1/8: the clear opening is 2 3/8 to 33 1/8 across and
2 3/8 to 45 1/8 up. Casing reveal 3/16: the casing stands round 2 3/16 to 33 5/16 and up to 45 5/16.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import STOOL, kit_of, part_of
from test_built_up_by_hand import ON_STOOL, ROSETTES, built

from jambs.geometry import Plane, Vector
from jambs.length import FINE, Units
from jambs.parts.board.arrises import edge_section
from jambs.parts.board.cuts import (
    ALONG,
    BoardSizes,
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    EdgeRabbet,
    End,
    EndBevel,
    EndRabbet,
    Groove,
    Miter,
    PlaneCut,
    Rip,
    SlantedNotch,
    Tenon,
)
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.sawing import pockets_of, saw
from jambs.parts.board.worked_faces import BoardFace, turned_over, worked_face
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import work_words
from jambs.sides import BoardEnd, Side


def box(kit: Kit, kind: PartKind, side: Side, member: int = 1) -> tuple[tuple[float, float], tuple[float, float]]:
    """From where to where a block reaches across and up [in]."""
    (part,) = (one for one in kit.parts if (one.kind, one.side, one.member) == (kind, side, member))
    first, last = part.seat.at(0.0, 0.0, 0.0), part.seat.at(part.length, part.width, 0.0)
    (left, right), (low, high) = (sorted((first[axis], last[axis])) for axis in (0, 1))
    return (left, right), (low, high)


FOUR = {key: value for key, value in ON_STOOL.items() if key not in ("stool", "apron")} | {"style": "picture framed"}


def test_rosettes_are_centered_on_the_casing() -> None:
    """Casing 3 1/2, blocks 3 3/4: they stand 1/8 past it on every side. Left casing -1 5/16 to 2 3/16."""
    kit = built({"rosettes": ROSETTES}, trim=FOUR)
    assert box(kit, PartKind.ROSETTE, Side.LEFT) == ((-1.4375, 2.3125), (45.1875, 48.9375))
    assert box(kit, PartKind.ROSETTE, Side.RIGHT) == ((33.1875, 36.9375), (45.1875, 48.9375))
    assert box(kit, PartKind.ROSETTE, Side.LEFT, 2) == ((-1.4375, 2.3125), (-1.4375, 2.3125))


def test_the_upper_rosette_is_the_first() -> None:
    kit = built({"rosettes": ROSETTES}, trim=FOUR)
    left = {one.member: one.position for one in kit.parts if one.kind is PartKind.ROSETTE and one.side is Side.LEFT}
    assert left == {1: "left above", 2: "left below"}


@pytest.mark.parametrize("members", ["head", "backband", "rosettes"])
def test_every_seat_turns_and_leaves_lengths_as_they_are(members: str) -> None:
    fillet = {"kind": "fillet", "height": "1/2", "projection": "1 1/4", "overhang": "1/2", "stock": "poplar"}
    frieze = {"kind": "frieze", "height": "5 1/2", "projection": "3/4", "overhang": "0", "stock": "poplar"}
    cap = {"kind": "cap", "height": "3/4", "projection": "4", "overhang": "3 1/4", "stock": "poplar"}
    crown = {"width": "3 1/2", "thickness": "5/8", "spring_deg": "38", "stock": "poplar"}
    band = {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}
    built_up: dict[str, dict[str, Any]] = {
        "head": {"head": [fillet, frieze, cap], "crown": crown},
        "backband": {"backband": band},
        "rosettes": {"rosettes": ROSETTES},
    }
    for part in built(built_up[members]).parts:
        for way in (part.seat.along, part.seat.across, part.seat.through):
            assert sum(one * one for one in way) == pytest.approx(1.0)


def test_a_frame_that_stands_proud_is_cased_a_joint_off_it() -> None:
    """Share 1: the frame is 1 1/4 proud of the trim plane. Sealant joint 1/4, casing 4 1/2, butted, overhang 1/2."""
    kit = kit_of(position={"share": "1"})
    left, right = (part_of(kit, "casing", f"{side} leg", Where.EXTERIOR) for side in ("left", "right"))
    assert (left.seat.origin[0], right.seat.origin[0]) == (-0.25, 35.75)
    assert (left.length, part_of(kit, "casing", "head", Where.EXTERIOR).length) == (48.0, 46.0)


def test_an_apron_lies_in_the_middle_under_the_stool() -> None:
    """38 1/8 long about 17 3/4: from -1 5/16 to 36 13/16, the outer edges of the casing."""
    apron = part_of(kit_of(interior_trim__inside=STOOL), "apron", "sill")
    assert (apron.seat.origin[0], apron.seat.at(apron.length, 0.0, 0.0)[0]) == (36.8125, -1.3125)


@pytest.mark.parametrize(("ends", "is_returned"), [("returned", True), ("square", False)])
def test_an_apron_is_returned_where_that_is_asked_for(ends: str, is_returned: bool) -> None:
    kit = kit_of(interior_trim__inside={**STOOL, "apron": {**STOOL["apron"], "ends": ends}})
    assert part_of(kit, "apron", "sill").is_returned is is_returned
    assert not any(part.is_returned for part in kit.parts if part.kind is not PartKind.APRON)


@pytest.mark.parametrize(
    ("along", "ends"),
    [
        ((1.0, 0.0, 0.0), (BoardEnd.LEFT, BoardEnd.RIGHT)),
        ((0.0, -1.0, 0.0), (BoardEnd.TOP, BoardEnd.BOTTOM)),
        ((0.6, 0.8, 0.0), (BoardEnd.BOTTOM, BoardEnd.TOP)),
        ((0.5, 0.5, 0.0), (BoardEnd.LEFT, BoardEnd.RIGHT)),  # as steep as level: a head's board, not a leg's
    ],
)
def test_names_of_ends(along: tuple[float, float, float], ends: tuple[BoardEnd, BoardEnd]) -> None:
    seat = Seat(origin=(0.0, 0.0, 0.0), along=along, across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0))
    assert seat.ends == ends


@pytest.mark.parametrize(
    ("through", "outward"),
    [
        ((0.0, 1.0, 0.0), (0.0, 1.0, 0.0)),
        ((0.3, -0.9, 0.3), (0.0, -1.0, 0.0)),
        ((-0.9, 0.3, 0.3), (-1.0, 0.0, 0.0)),
        ((0.7, 0.7, 0.0), (1.0, 0.0, 0.0)),  # as far up as aside: a leg's board
    ],
)
def test_the_side_that_a_back_looks_to(through: Vector, outward: Vector) -> None:
    seat = Seat(origin=(0.0, 0.0, 0.0), along=(0.0, 0.0, 1.0), across=(0.0, 0.0, 1.0), through=through)
    assert seat.outward == outward


PLAIN = BoardSizes(length=10.0, width=4.0, start_width=4.0, finish_width=4.0, thickness=0.75)


def test_the_section_of_a_plain_board_and_of_a_beveled_one() -> None:
    """Half of 3/4 is gone at the near edge of the face: 45° over 3/4 takes 3/4."""
    assert edge_section(PLAIN, (), 5.0) == ((0.0, 0.0), (4.0, 0.0), (4.0, 0.75), (0.0, 0.75))
    bevel = EdgeBevel(edge=Edge.NEAR, angle_deg=45.0, face_short=True)
    found = edge_section(PLAIN, (bevel,), 5.0)
    assert [corner for one in found for corner in one] == pytest.approx([0.75, 0.0, 4.0, 0.0, 4.0, 0.75, 0.0, 0.75])


def test_the_plane_of_an_edge_bevel() -> None:
    """It starts where the side stays long: face short, at the back; through the thickness by 3/4 tan 45°."""
    plane = EdgeBevel(edge=Edge.NEAR, angle_deg=45.0, face_short=True).plane(PLAIN)
    assert (plane.start, plane.way) == ((0.0, 0.0, 0.75), ALONG)
    assert plane.finish == pytest.approx((0.0, 0.75, 0.0))
    assert plane.keep == (0.0, 2.0, 0.75)
    far = EdgeBevel(edge=Edge.FAR, angle_deg=45.0, face_short=False).plane(PLAIN)
    assert far.start == (0.0, 4.0, 0.0)
    assert far.finish == pytest.approx((0.0, 3.25, 0.75))
    assert ALONG == (1.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("cut", "start", "finish", "keep"),
    [
        (Miter(end=End.START, angle_deg=45.0, long_edge=Edge.NEAR), (0, 0, 0), (4, 4, 0), (5, 0, 0)),
        (Miter(end=End.FINISH, angle_deg=45.0, long_edge=Edge.FAR), (10, 4, 0), (6, 0, 0), (5, 4, 0)),
        (EndBevel(end=End.START, angle_deg=45.0), (0, 0, 0), (0.75, 0, 0.75), (5, 0, 0)),
        (EndBevel(end=End.FINISH, angle_deg=45.0, face_short=True), (10, 0, 0.75), (9.25, 0, 0), (5, 0, 0.75)),
    ],
)
def test_the_plane_of_an_end_leaves_its_long_point_and_goes_back_by_its_angle(
    cut: Miter | EndBevel, start: Vector, finish: Vector, keep: Vector
) -> None:
    """At 45° as far back as the board is wide, 4, or thick, 3/4; both points are corners that the cut leaves."""
    plane = cut.plane(PLAIN)
    assert plane.start == start
    assert plane.finish == pytest.approx(finish)
    assert plane.keep == keep


def test_a_sill_says_how_wide_its_face_is_between_the_bevels() -> None:
    """Blank 3.8185, 1 1/2 thick, 10°: the face is 1.5 tan 10° = 0.2645 less: 3.554, to the nearest 64th 3 35/64."""
    words = work_words(part_of(kit_of(), "exterior sill", "sill", Where.EXTERIOR), grid=FINE[Units.INCH])
    assert any('face 3 35/64" wide, 3 13/16" is the blank before the bevels' in one for one in words)


@pytest.mark.parametrize(("edge", "corner"), [(Edge.NEAR, 0.0), (Edge.FAR, 4.0)])
def test_a_slanted_notch_is_longer_at_the_edge(edge: Edge, corner: float) -> None:
    """3 long at the edge of the board, 2 long 1 in from it."""
    notch = SlantedNotch(end=End.START, edge=edge, along=3.0, across=1.0, along_inside=2.0)
    inner = 1.0 if edge is Edge.NEAR else 3.0
    face = saw((Rip(width=4.0), Crosscut(length=10.0), notch), thickness=0.75).face
    assert (3.0, corner) in face and (2.0, inner) in face and (2.0, corner) not in face


def test_a_face_turned_over_about_its_length() -> None:
    """What is 1 from the near edge is 3 from it on a board of 4, seen from the back."""
    assert set(turned_over(((0.0, 1.0), (2.0, 1.0), (2.0, 0.0)), 4.0)) == {(0.0, 3.0), (2.0, 3.0), (2.0, 4.0)}


def worked(*cuts: Cut) -> dict[BoardFace, list[tuple[float, ...]]]:
    """What is worked into each face of a board 10 x 4 and 3/4 thick: its corners, then its depth or its angle."""
    board = Part(
        kind=PartKind.CASING,
        side=Side.HEAD,
        where=Where.INTERIOR,
        blank=PartBlank(stock="poplar", thickness=0.75),
        cuts=(Rip(width=4.0), Crosscut(length=10.0), *cuts),
        seat=Seat(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0)),
    )
    found = {}
    for face in BoardFace:
        seen = worked_face(board, face)
        shapes = [(one.outline, one.depth) for one in seen.pockets]
        shapes += [(one.outline, one.angle_deg) for one in seen.bevels]
        found[face] = [(*(round(x, 6) for point in sorted(outline) for x in point), more) for outline, more in shapes]
    return found


def strip(low: float, high: float, more: float) -> tuple[float, ...]:
    return (0.0, low, 0.0, high, 10.0, low, 10.0, high, more)


@pytest.mark.parametrize(
    ("cut", "on_face", "on_back"),
    [
        (EdgeRabbet(edge=Edge.NEAR, across=0.5, depth=0.25), [strip(0, 0.5, 0.25)], []),
        (EdgeRabbet(edge=Edge.FAR, across=0.5, depth=0.25), [strip(3.5, 4, 0.25)], []),
        (EdgeRabbet(edge=Edge.NEAR, across=0.5, depth=0.25, from_back=True), [], [strip(3.5, 4, 0.25)]),
        (EdgeRabbet(edge=Edge.FAR, across=0.5, depth=0.25, from_back=True), [], [strip(0, 0.5, 0.25)]),
        (Groove(edge=Edge.NEAR, from_edge=1.0, width=0.25, depth=0.5), [], [strip(2.75, 3, 0.5)]),
        (Groove(edge=Edge.FAR, from_edge=1.0, width=0.25, depth=0.5), [], [strip(1, 1.25, 0.5)]),
        (
            Tenon(end=End.START, along=1.0, face=0.25, back=0.125),
            [(0, 0, 0, 4, 1, 0, 1, 4, 0.25)],
            [(0, 0, 0, 4, 1, 0, 1, 4, 0.125)],
        ),
        (Tenon(end=End.FINISH, along=1.0, face=0.0, back=0.25), [], [(9, 0, 9, 4, 10, 0, 10, 4, 0.25)]),
        (EdgeBevel(edge=Edge.NEAR, angle_deg=45.0, face_short=True), [strip(0, 0.75, 45)], []),
        (EdgeBevel(edge=Edge.NEAR, angle_deg=45.0, face_short=False), [], [strip(3.25, 4, 45)]),
        (EndBevel(end=End.START, angle_deg=45.0), [], [(0, 0, 0, 4, 0.75, 0, 0.75, 4, 45)]),
        (EndBevel(end=End.FINISH, angle_deg=45.0, face_short=True), [(9.25, 0, 9.25, 4, 10, 0, 10, 4, 45)], []),
    ],
)
def test_what_is_worked_from_each_side_of_a_board(
    cut: Cut, on_face: list[tuple[float, ...]], on_back: list[tuple[float, ...]]
) -> None:
    """Turned over about its length a board has its near edge where its far edge was: 4 less what it was off it."""
    found = worked(cut)
    assert found[BoardFace.FACE] == [pytest.approx(one) for one in on_face]
    assert found[BoardFace.BACK] == [pytest.approx(one) for one in on_back]


def test_a_compound_cut_is_seen_on_the_side_that_it_leaves_short() -> None:
    """The plane u = v / 2 + w: on the face from (0, 0) to (2, 4), on the back 3/4 farther in, so a strip of 3/4 there.

    Turned over, its corners (0, 0), (3/4, 0), (2 3/4, 4), (2, 4) lie at 4 - v. It leans off square to the face by
    acos of its normal across the face: sqrt(1 + 1/4) of sqrt(1 + 1/4 + 1), 41.81°.
    """
    flat = Plane(start=(0.0, 0.0, 0.0), finish=(2.0, 4.0, 0.0), way=(0.75, 0.0, 0.75), keep=(10.0, 2.0, 0.0))
    found = worked(PlaneCut(at=End.START, flat=flat))
    assert found[BoardFace.FACE] == []
    (strip_of,) = found[BoardFace.BACK]
    assert strip_of[:-1] == pytest.approx((0, 4, 0.75, 4, 2, 0, 2.75, 0))
    assert abs(strip_of[-1]) == pytest.approx(41.81, abs=0.01)


def test_a_rabbet_of_an_end_is_seen_on_the_face_alone() -> None:
    """The head of a rabbeted box: 3/8 deep, 3/4 long at both ends of 32 1/4."""
    head = part_of(kit_of(), "extension jamb", "head")
    assert any(isinstance(cut, EndRabbet) for cut in head.cuts) and any(isinstance(cut, Rip) for cut in head.cuts)
    assert [one.depth for one in worked_face(head, BoardFace.FACE).pockets] == [0.375, 0.375]
    assert worked_face(head, BoardFace.BACK).pockets == ()


@pytest.mark.parametrize(("edge", "span"), [(Edge.NEAR, (1.0, 1.25)), (Edge.FAR, (2.75, 3.0))])
def test_a_groove_lies_as_far_off_its_edge_in_the_back(edge: Edge, span: tuple[float, float]) -> None:
    """A board of 4 by 10, 3/4 thick: 1 off the edge, 1/4 wide, 1/2 deep from its back."""
    cuts = (Rip(width=4.0), Crosscut(length=10.0), Groove(edge=edge, from_edge=1.0, width=0.25, depth=0.5))
    (pocket,) = pockets_of(cuts, thickness=0.75)
    assert (pocket.low, pocket.high) == ((0.0, span[0], 0.25), (10.0, span[1], 0.75))
