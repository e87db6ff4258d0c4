"""Two openings of one wall: do their frames, their holes in the framing, their boards lie over each other?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from jambs.findings import Finding, Subject
from jambs.length import HALF_64TH
from jambs.neighbors.findings import Hole, HolesOverlap, TrimMeetsNeighbor, TrimPiece
from jambs.neighbors.stand import Stand, TrimBoard, from_outside, moved
from jambs.parts.kit.on_elevation import Box


@dataclass(frozen=True, slots=True, kw_only=True)
class OnWall:
    """An opening and the height of its frame's bottom over the datum of the house [in]."""

    stand: Stand
    bottom: float

    def seen(self, box: Box) -> Box:
        """A box of it, seen from outside, over the datum [in]."""
        return moved(from_outside(box, self.stand), 0.0, self.bottom)


Overlap = tuple[float, float]
"""Across, up [in]."""


def overlap(one: Box, other: Box) -> Overlap | None:
    """Return by how much two boxes lie over each other [in]; what only touches, or less than is printed, does not."""
    across = min(one[2], other[2]) - max(one[0], other[0])
    up = min(one[3], other[3]) - max(one[1], other[1])
    return (across, up) if across > HALF_64TH and up > HALF_64TH else None


def collisions(one: OnWall, other: OnWall) -> Iterator[Finding]:
    """Find what of an opening lies over a neighbor: the frames, else the holes; and of their trim the worst.

    What is trimmed as one has its boards over both.
    """
    about = Subject.opening(one.stand.mark)
    for hole, own, its in (
        (Hole.FRAME, one.stand.frame, other.stand.frame),
        (Hole.ROUGH_OPENING, one.stand.hole, other.stand.hole),
    ):
        if over := overlap(one.seen(own), other.seen(its)):
            yield HolesOverlap(subject=about, hole=hole, neighbor=other.stand.mark, across=over[0], up=over[1])
            if hole is Hole.FRAME:
                return
            break
    if other.stand.mark in one.stand.trimmed_with:
        return
    for own_boards, its_boards in ((one.stand.inside, other.stand.inside), (one.stand.outside, other.stand.outside)):
        yield from _worst(about, one, other, own_boards, its_boards)


def _worst(
    about: Subject, one: OnWall, other: OnWall, own: Iterable[TrimBoard], its: Iterable[TrimBoard]
) -> Iterator[TrimMeetsNeighbor]:
    """Of all boards of one set that meet, the pair that has farthest to go to come free."""
    boxes: list[tuple[TrimPiece | None, Box]] = [(board.piece, other.seen(board.box)) for board in its]
    boxes.append((None, other.seen(other.stand.frame)))
    met = [
        (sorted(over), board.piece, piece, over)
        for board in own
        for piece, box in boxes
        if (over := overlap(one.seen(board.box), box))
    ]
    if met:
        _, piece, its_piece, (across, up) = max(met, key=lambda pair: pair[0])
        yield TrimMeetsNeighbor(
            subject=about, neighbor=other.stand.mark, own=piece, other=its_piece, across=across, up=up
        )
