"""Frames with panels, sawn member by member from their cut lists and put together as the jamb they make.

Measured in coordinates of the jamb: u along it, v across from its frame edge, w from its face to its back.
"""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Vector
from jambs.job.models.panels import PanelsEntry
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.solids.model import KitSolids, Solid, board_shape, stood
from jambs.solids.report import TIGHT, Measure

V, W = 1, 2
"""Axes of a board: across its width, through its thickness."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """A member of a frame as sawn, and its corners in coordinates of the jamb (u, v, w) [in]."""

    part: Part
    solid: Solid
    corners: tuple[Vector, ...]

    def reach(self, axis: int, *, at_face: bool = False) -> tuple[float, float]:
        """Least and greatest place along one axis, of all corners or of those in its face [in]."""
        face = min(corner[W] for corner in self.corners)
        found = [corner[axis] for corner in self.corners if not at_face or corner[W] - face < TIGHT]
        return min(found), max(found)


def members_of(jamb: Part) -> list[Member]:
    """Saw the members of a jamb and stand them where they belong."""
    return [_stood(jamb, part) for part in jamb.frame_members]


def _stood(jamb: Part, part: Part) -> Member:
    bench = board_shape(part.silhouettes)
    solid = stood(name=part.mark, material=part.stock, part=part, bench=bench, seat=part.seat)
    corners = {jamb.seat.board_point(corner) for facet in solid.facets for loop in facet.loops for corner in loop}
    return Member(part=part, solid=solid, corners=tuple(corners))


def panel_measures(solids: KitSolids) -> list[Measure]:
    """Measure the frames of an opening's jambs: stiles, rails between them, panels in their grooves."""
    entry = solids.kit.placement.opening.interior.panels
    if entry is None:
        return []
    step = solids.job.shop.grid.step
    return [one for part in solids.kit.parts if part.frame_members for one in frame_measures(part, entry, step)]


def frame_measures(jamb: Part, entry: PanelsEntry, step: float) -> list[Measure]:
    """Measure the frame of one jamb; ``step``: of the shop's grid [in]."""
    assert jamb.blank.panels
    layout, members = jamb.blank.panels.layout, members_of(jamb)
    near, far = (one for one in members if one.part.kind is PartKind.STILE)
    rails = [one for one in members if one.part.kind is PartKind.RAIL]
    panels = [one for one in members if one.part.kind is PartKind.PANEL]
    bottoms = (_groove_bottom(near, entry, is_near=True), _groove_bottom(far, entry, is_near=False))
    of = f"of the {jamb.side.board_words}"
    found = [
        Measure(name=f"between the stiles {of}", asked=layout.opening_width, found=far.reach(V)[0] - near.reach(V)[1]),
        Measure(name=f"stile {of} to its frame edge", asked=0.0, found=near.reach(V)[0]),
    ]
    for rail in rails:
        low, high = rail.reach(V, at_face=True)
        tenons = rail.reach(V)
        asked, words = entry.groove.depth - entry.tenon, f"{rail.part.mark[-1]} {of}"
        found += [
            Measure(name=f"rail {words}, shoulder to shoulder", asked=layout.opening_width, found=high - low),
            Measure(name=f"tenon of rail {words} to the groove", asked=asked, found=tenons[0] - bottoms[0]),
            Measure(name=f"other tenon of rail {words} to the groove", asked=asked, found=bottoms[1] - tenons[1]),
        ]
    loose = TIGHT + step
    for panel in panels:
        low, high = panel.reach(V)
        room = bottoms[1] - bottoms[0] - (high - low)
        name = f"room of panel {panel.part.mark[-1]} {of} across"
        found.append(Measure(name=name, asked=layout.room, found=room, tolerance=loose))
    return found


def _groove_bottom(stile: Member, entry: PanelsEntry, *, is_near: bool) -> float:
    """Where the groove of a stile ends across the jamb [in]."""
    level = entry.groove.from_face
    inner = stile.reach(V)[1] if is_near else stile.reach(V)[0]
    at_groove = [corner[V] for corner in stile.corners if abs(corner[W] - level) < TIGHT]
    return max(at_groove, key=lambda v: abs(v - inner))
