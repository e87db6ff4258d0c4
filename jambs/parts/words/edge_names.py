"""The long edges of a board by where they lie: the same words on cut sheet, drawing, template and plan."""

from __future__ import annotations

from collections.abc import Collection

from jambs.parts.board.arrises import Arris
from jambs.parts.board.cuts import Edge
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.sides import BoardEnd

MOSTLY = 0.5
"""An edge whose way across has at least this share of depth faces room or weather, not the opening."""


def edge_names(part: Part) -> tuple[str, str]:
    """Name the near and the far edge of a part."""
    if part.kind is PartKind.CASING:
        return ("inner edge", "outer edge")
    if part.kind is PartKind.CROWN:
        return ("lower edge", "upper edge")
    _, y, depth = part.seat.across
    if abs(depth) < MOSTLY:
        return ("lower edge", "upper edge") if y > 0 else ("upper edge", "lower edge")
    far = "outer edge" if part.where is Where.EXTERIOR else "room edge"
    return ("frame edge", far)


def is_turned(part: Part) -> bool:
    """Say whether a part starts at the right or at the top, so that its pictures are turned by half a turn."""
    return part.seat.ends[0] in (BoardEnd.RIGHT, BoardEnd.TOP)


def edge_name(part: Part, edge: Edge) -> str:
    """Name one long edge of a part."""
    near, far = edge_names(part)
    return near if edge is Edge.NEAR else far


def arris_name(part: Part, arrises: Collection[Arris]) -> str:
    """Name where some edges of face and back lie: ``room edge on the back``, both edges of it ``on the back``."""
    edges, sides = {one.edge for one in arrises}, {one.on_back for one in arrises}
    named = edge_name(part, edges.pop()) if len(edges) == 1 else ""
    side = f"on the {'back' if sides.pop() else 'face'}" if len(sides) == 1 else ""
    return " ".join(word for word in (named, side) if word)
