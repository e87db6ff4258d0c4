"""Where the cladding of a wall stops round an opening whose cladding turns into the reveal, in wall coordinates [in].

At the outer edges of the corner's casing, or, mitered, in the faces of the returns, which lie before the frame; and
over the horns of a sill, which reach farther.
"""

from __future__ import annotations

from jambs.geometry import Outline
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import Box, seen_box
from jambs.sides import Side


def clad_outline(kit: Kit) -> Outline | None:
    """Return the line along which the wall's cladding stops; None where none is returned."""
    trim = kit.placement.opening.exterior
    if trim is None or trim.cladding_returns is None:
        return None
    kind = PartKind.CASING if trim.is_cased else PartKind.CLADDING_RETURN
    found = {part.side: part for part in kit.parts if part.kind is kind and part.where is Where.EXTERIOR}
    low, high = (_edge(found[side], is_cased=trim.is_cased) for side in (Side.LEFT, Side.RIGHT))
    foot = min(seen_box(found[side])[1] for side in (Side.LEFT, Side.RIGHT))
    over = seen_box(found[Side.HEAD]) if trim.is_cased else (low, foot, high, seen_box(found[Side.HEAD])[3])
    horns = next((seen_box(part) for part in kit.parts if part.kind is PartKind.EXTERIOR_SILL), None)
    under = horns or (low, foot, high, foot)
    return (
        (under[0], under[1]),
        (under[2], under[1]),
        (under[2], under[3]),
        (high, under[3]),
        (high, over[1]),
        (over[2], over[1]),
        (over[2], over[3]),
        (over[0], over[3]),
        (over[0], over[1]),
        (low, over[1]),
        (low, under[3]),
        (under[0], under[3]),
    )


def _edge(leg: Part, *, is_cased: bool) -> float:
    """Return where the cladding stops beside a leg (x): at the outer edge of casing, in the face of a return."""
    if not is_cased:
        return leg.seat.origin[0]
    left, _, right, _ = seen_box(leg)
    return left if leg.side is Side.LEFT else right


def box_round(outline: Outline) -> Box:
    """Return the box round an outline [in]."""
    xs, ys = zip(*outline, strict=True)
    return (min(xs), min(ys), max(xs), max(ys))
