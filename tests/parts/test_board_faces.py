"""Parts in space: the faces of every board close, look outward, and hold the wood that its cut list leaves."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

import jambs
from jambs.geometry import Vector, cross, dot, minus
from jambs.outlines import area
from jambs.parts.board.board_faces import Face, board_faces
from jambs.parts.board.cuts import Crosscut, Edge, EdgeBevel, End, EndBevel, EndRabbet, Groove, Miter, Notch, Rip, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.sides import Side
from jambs.solids.arced import arced_board
from jambs.solids.flat_sided import FLAT_CUTS, flat_sided_volume

EXAMPLES = Path(__file__).parents[2] / "examples"
PLAIN = Seat(origin=(0, 0, 0), along=(1, 0, 0), across=(0, 1, 0), through=(0, 0, 1))


def board(*cuts: object) -> Part:
    """A board 20 long, 4 wide, 1 thick, with cuts."""
    blank = PartBlank(stock="pine", thickness=1.0)
    made = (Rip(width=4.0), Crosscut(length=20.0), *cuts)
    return Part(kind=PartKind.STOOL, side=Side.SILL, where=Where.INTERIOR, blank=blank, cuts=made, seat=PLAIN)  # type: ignore[arg-type]


def volume(faces: list[Face]) -> float:
    """Volume within closed faces that look outward, by the divergence theorem [cu in]."""
    return sum(dot(face[0], _area(face)) for face in faces) / 3


def _area(face: Face) -> Vector:
    total = (0.0, 0.0, 0.0)
    for one, two in pairwise(face[1:]):
        part = cross(minus(one, face[0]), minus(two, face[0]))
        total = (total[0] + part[0] / 2, total[1] + part[1] / 2, total[2] + part[2] / 2)
    return total


@pytest.mark.parametrize(
    ("cuts", "left"),
    [
        ((), 80.0),  # 20 × 4 × 1
        ((Taper(start_width=4.0, finish_width=3.0),), 70.0),  # 20 × 3.5 × 1
        ((Miter(end=End.START, angle_deg=45.0, long_edge=Edge.FAR),), 72.0),  # less 4 × 4 / 2
        ((EndBevel(end=End.FINISH, angle_deg=45.0),), 78.0),  # less 1 × 1 / 2 × 4
        ((EdgeBevel(edge=Edge.NEAR, angle_deg=45.0, face_short=True),), 70.0),  # less 1 × 1 / 2 × 20
        ((Notch(end=End.START, edge=Edge.FAR, along=3.0, across=2.0),), 74.0),  # less 3 × 2 × 1
        ((EndRabbet(end=End.FINISH, along=0.5, depth=0.25),), 79.5),  # less 1/2 × 1/4 × 4
        ((Groove(edge=Edge.NEAR, from_edge=1.0, width=0.25, depth=0.5),), 77.5),  # less 20 × 1/4 × 1/2
    ],
)
def test_each_cut_takes_its_wood(cuts: tuple[object, ...], left: float) -> None:
    faces = board_faces(board(*cuts))
    assert volume(faces) == pytest.approx(left)


def test_a_groove_and_a_bevel_show_in_the_faces() -> None:
    grooved = board_faces(board(Groove(edge=Edge.NEAR, from_edge=1.0, width=0.25, depth=0.5)))
    assert any(all(w == 0.5 for _, _, w in face) for face in grooved)  # its bottom
    beveled = board_faces(board(EdgeBevel(edge=Edge.NEAR, angle_deg=45.0, face_short=True)))
    assert any({(v, w) for _, v, w in face} == {(1.0, 0.0), (0.0, 1.0)} for face in beveled)


@pytest.mark.parametrize("example", ["gable-house", "garden-studio", "quarry-loft"])
def test_every_part_of_a_job_closes_and_holds_its_wood(example: str) -> None:
    for kit in jambs.make_kits(jambs.read_job(EXAMPLES / example)):
        for part in kit.parts:
            faces = board_faces(part)
            open_ = [sum(_area(face)[axis] for face in faces) for axis in range(3)]
            assert open_ == pytest.approx([0.0, 0.0, 0.0], abs=1e-6), part.mark
            if arced := arced_board(part):
                # Arcs are drawn as chords, within a two-thousandth of an inch of true.
                assert volume(faces) == pytest.approx(arced.volume, rel=2e-3), part.mark
            elif all(isinstance(cut, FLAT_CUTS) for cut in part.cuts) and not part.is_bent:
                assert volume(faces) == pytest.approx(flat_sided_volume(part), rel=1e-6), part.mark
            elif not part.is_bent:
                most = area(part.silhouettes.end) * part.length
                assert 0.5 * most < volume(faces) <= most + 1e-6, part.mark
