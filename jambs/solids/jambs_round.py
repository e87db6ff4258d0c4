"""Jambs of an opening that is no rectangle, along the edges of their path, and how they lean, inside and outside."""

from __future__ import annotations

from dataclasses import dataclass, replace

from jambs.geometry import tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.flat_jambs import flat_path
from jambs.parts.jambs.shaped_jambs import clear_path, goes_all_round
from jambs.parts.kit.kit import Kit
from jambs.parts.shapes.clear import clear_opening
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.parts.trim.metal_returns import sill_at_frame
from jambs.place.flares import Flares
from jambs.solids.depths_round import exterior_sides
from jambs.solids.model import KitSolids
from jambs.solids.shape_lookup import BoardsRound, boards_round, lining_round
from jambs.solids.shape_sill import path_on_sill


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatSide:
    """Flared jambs in flat segments on one side of the wall, and what they are laid out between.

    ``begins``, ``ends``: path of the clear opening where their faces begin, at the frame or a sealant joint outside it,
    and where they end. ``start``: depth of the wall where they begin, ``deep``: from there to where they end [in].
    ``way``: -1 toward the room, 1 outside. ``flares``: of jambs along the arcs and of a sill.
    """

    where: Where
    flat: FlatPath
    begins: FramePath
    ends: FramePath
    start: float
    deep: float
    flares: Flares
    has_bottom: bool

    @property
    def way(self) -> float:
        """Which way along the depth of the wall they run out."""
        return -1.0 if self.where is Where.INTERIOR else 1.0

    @property
    def far(self) -> float:
        """Depth of the wall where they end [in]."""
        return self.start + self.way * self.deep


def flat_of(kit: Kit) -> FlatPath | None:
    """Return the path of flared jambs inside in flat segments; None of any other opening."""
    opening, frames = kit.placement.opening, kit.frames
    if opening.shape is None or not frames:
        return None
    return flat_path(opening, clear_path(opening, frames[0].clear), frames[0], kit.flares)


def flat_inside(solids: KitSolids) -> FlatSide | None:
    """Return the jambs inside where they follow arcs in flat segments."""
    kit, flat = solids.kit, flat_of(solids.kit)
    if flat is None:
        return None
    opening, trim = kit.placement.opening, kit.placement.opening.interior
    begins = clear_path(opening, kit.frames[0].clear)
    arc = next(edge.side for edge in begins if edge.center)
    return FlatSide(
        where=Where.INTERIOR,
        flat=flat,
        begins=begins,
        ends=clear_path(opening, kit.room),
        start=kit.placement.inside_edge,
        deep=kit.sides[arc].greatest + solids.job.shop.proud,
        flares=kit.flares,
        has_bottom=trim.style.has_bottom,
    )


def flat_outside(solids: KitSolids) -> FlatSide | None:
    """Return the exterior jambs where they follow arcs in flat segments."""
    placement, trim = solids.kit.placement, solids.kit.placement.opening.exterior
    opening, flares = placement.opening, solids.kit.outside_flares
    flat = solids.kit.flat_outside
    if trim is None or flat is None:
        return None
    begins, leans = _begins(solids, trim), _leans(trim, flares)
    arc = next(edge.side for edge in begins if edge.center)
    deep = exterior_sides(solids)[arc].greatest - trim.sealant_joint
    return FlatSide(
        where=Where.EXTERIOR,
        flat=flat,
        begins=begins,
        ends=outset(begins, leans.all_out(deep)),
        start=placement.outside_edge + trim.sealant_joint,
        deep=deep,
        flares=leans,
        has_bottom=goes_all_round(opening, trim),
    )


def _leans(trim: ExteriorTrim, flares: Flares) -> Flares:
    """Flares of jambs, and of a sill as it falls; there is none of wood under metal that lines the opening."""
    sill = trim.returns.sill if trim.returns else trim.sill
    return replace(flares, sill=sill.slope) if sill else flares


def _begins(solids: KitSolids, trim: ExteriorTrim) -> FramePath:
    """Path of the clear opening outside, a sealant joint off the frame."""
    opening = solids.kit.placement.opening
    if trim.sill:
        return path_on_sill(solids, trim, trim.sealant_joint)
    bottom = None if goes_all_round(opening, trim) else -trim.sealant_joint
    if trim.returns and trim.returns.sill:
        at_frame = sill_at_frame(solids.kit.placement, trim) or 0.0
        bottom = at_frame - trim.sealant_joint * tangent(trim.returns.sill.slope)
    face, grid = opening.window.outside_face, solids.job.shop.grid
    clear = clear_opening(opening.frame, face, frame_reveal=trim.frame_reveal, grid=grid, bottom=bottom)
    return clear_path(opening, clear)


@dataclass(frozen=True, slots=True, kw_only=True)
class JambsRound:
    """The extension jambs along the edges of their path, and how far each leans out [degrees].

    Their path is the frame's; where flat segments follow its arcs, that of the clear opening with chords there.
    """

    boards: BoardsRound
    flares: dict[FrameEdge, float]

    @classmethod
    def of(cls, solids: KitSolids, where: Where = Where.INTERIOR) -> JambsRound:
        """Return those of a kit, inside or outside."""
        is_inside = where is Where.INTERIOR
        side = flat_inside(solids) if is_inside else flat_outside(solids)
        leans = solids.kit.flares if is_inside else solids.kit.outside_flares
        if side is None:
            boards = boards_round(solids, where, PartKind.EXTENSION_JAMB) if is_inside else lining_round(solids)
            return cls(boards=boards, flares={edge: leans.at(edge.side) for edge in boards.path})
        path, own = side.flat.path, side.flat.flares
        laid = boards_round(solids, where, PartKind.EXTENSION_JAMB, path=path) if is_inside else None
        return cls(
            boards=laid or lining_round(solids, path),
            flares={edge: own.get(i, side.flares.at(edge.side)) for i, edge in enumerate(path)},
        )
