"""Where boards and blocks lie in the wall, their ends and their edges, by hand.

The base window: frame 35 1/2 by 47 1/2, faces 2 1/2, frame reveal 1/8: the clear opening is 2 3/8 to 33 1/8 across and
2 3/8 to 45 1/8 up. Casing reveal 3/16: the casing stands round 2 3/16 to 33 5/16 and up to 45 5/16.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import STOOL, kit_of, part_of
from test_built_up_by_hand import ON_STOOL, ROSETTES, built

from jambs.length import Units
from jambs.parts.arrises import edge_section
from jambs.parts.cut_words import work_words
from jambs.parts.cuts import ALONG, BoardSizes, Crosscut, Edge, EdgeBevel, End, EndRabbet, Rip, SlantedNotch
from jambs.parts.kinds import PartKind, Where
from jambs.parts.kit import Kit
from jambs.parts.part import Seat
from jambs.parts.sawing import saw
from jambs.parts.worked_faces import BoardFace, turned_over, worked_face
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


def test_a_sill_says_how_wide_its_face_is_between_the_bevels() -> None:
    """Blank 3.8185, 1 1/2 thick, 10°: the face is 1.5 tan 10° = 0.2645 less: 3.554, to the nearest 64th 3 35/64."""
    words = work_words(part_of(kit_of(), "exterior sill", "sill", Where.EXTERIOR), units=Units.INCH)
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


def test_a_rabbet_of_an_end_is_seen_on_the_face_alone() -> None:
    """The head of a rabbeted box: 3/8 deep, 3/4 long at both ends of 32 1/4."""
    head = part_of(kit_of(), "extension jamb", "head")
    assert any(isinstance(cut, EndRabbet) for cut in head.cuts) and any(isinstance(cut, Rip) for cut in head.cuts)
    assert [one.depth for one in worked_face(head, BoardFace.FACE).pockets] == [0.375, 0.375]
    assert worked_face(head, BoardFace.BACK).pockets == ()
