"""Cut through the wall between two openings trimmed as one: both jambs, the framed wall and the boards on it."""

from __future__ import annotations

from dataclasses import replace

from jambs.geometry import added
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit, OpeningRun
from jambs.parts.run import OVER_ALL
from jambs.section.region import Region, Section, SectionCut, Stuff
from jambs.sides import Side

OPPOSITE = {SectionCut.JAMB: SectionCut.LEFT_JAMB, SectionCut.LEFT_JAMB: SectionCut.JAMB}
NOT_BESIDE = (Stuff.GLASS,)
"""What is not drawn of the other opening: its glass would reach past the picture."""


def half_between(kit: Kit, cut: SectionCut) -> float | None:
    """Return half of what is between the frames at a side [in]; nothing where no wall between lies there."""
    if kit.run is None or cut.side not in kit.run.walled or not cut.is_level:
        return None
    return between_frames(kit.run, cut.side) / 2


def between_frames(run: OpeningRun, side: Side) -> float:
    """Return how far the frame at the other side of a wall between is [in]."""
    if side is Side.LEFT:
        other = run.members[run.at - 1]
        return -other.x - other.placement.opening.frame.width
    return run.members[run.at + 1].x - run.hand.placement.opening.frame.width


def other_kit(kit: Kit, side: Side) -> Kit:
    """Return the opening beside as far as a section cuts it: its place, its boards, those over all."""
    assert kit.run is not None
    at = kit.run.at + (-1 if side is Side.LEFT else 1)
    other = kit.run.members[at]

    def moved(part: Part) -> Part:
        return replace(part, seat=replace(part.seat, origin=added(part.seat.origin, (-other.x, 0.0, 0.0))))

    seen = (part for part in kit.whole.parts if part.opening == other.mark or part.kind in OVER_ALL)
    return replace(
        kit,
        placement=other.placement,
        sides=other.fitted.inner,
        parts=tuple(moved(part) for part in seen),
        lent=(),
        beside=(),
        run=kit.run.seen_from(at),
    )


def joined(own: Section, other: Section, between: float) -> Section:
    """Join the halves of both sides of a wall; what lies on both is cut once."""
    marks = {region.mark for region in own.regions if region.mark}
    beyond = [_turned(one, between) for one in other.regions if one.mark not in marks and one.stuff not in NOT_BESIDE]
    # Boards lie over the wall of both: those of the wall first.
    wall = [one for one in own.regions if not one.mark] + [one for one in beyond if not one.mark]
    boards = [one for one in own.regions if one.mark] + [one for one in beyond if one.mark]
    return replace(own, regions=(*wall, *boards))


def on_this_side(section: Section, kit: Kit) -> Section:
    """Return a section without what lies wholly beyond the middle of a wall between."""
    half = half_between(kit, section.cut)
    if half is None:
        return section
    near = tuple(one for one in section.regions if min(s for s, _ in one.outline) < half)
    return replace(section, regions=near)


def _turned(region: Region, between: float) -> Region:
    return replace(region, outline=tuple((between - s, depth) for s, depth in region.outline))
