"""Cladding that returns to the frame, measured on its boards: clear width, edges and gaps, what lies on what."""

from __future__ import annotations

import math

from jambs.job.models.cladding_returns import CladdingReturnsEntry
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.cladding_returns import corner_past
from jambs.sides import LEGS, Side
from jambs.solids.casing_on_edges import casing_on_edges
from jambs.solids.joints import joint
from jambs.solids.lining_measures import clear_and_reveal, is_planned_outside, sealant_joint_at
from jambs.solids.lookup import D, Set, X, Y, one_of, pick
from jambs.solids.metal_checks import starts_low, width_at_end
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure

LINED = (Side.HEAD, *LEGS)


def clad_measures(solids: KitSolids, trim: ExteriorTrim, entry: CladdingReturnsEntry) -> list[Measure]:
    """Measure clear width, the reveal at the head, where returns and corner boards begin and end, and their feet."""
    returns = _returns(solids)
    found = clear_and_reveal(solids, returns)
    found += [sealant_joint_at(solids, returns, side) for side in LINED]
    found += _mitered(solids) if entry.is_mitered else _at_corner(solids, entry)
    return [*found, *_feet(solids, trim, entry)]


def _mitered(solids: KitSolids) -> list[Measure]:
    """Measure that mitered returns end in the face of the cladding, as planned."""
    if not is_planned_outside(solids):
        return []
    face = solids.kit.placement.planes.cladding_face
    return [
        Measure(name=f"{side.board_words} of the returns to the cladding's face", asked=0.0, found=face - one.high[D])
        for side, one in _returns(solids).by_side.items()
    ]


def _at_corner(solids: KitSolids, entry: CladdingReturnsEntry) -> list[Measure]:
    """Measure the gap at the corner board, how far it stands past the return, and that it ends at the trim plane."""
    board = entry.corner_board
    assert board is not None
    returns, corner = _returns(solids), _corner(solids)
    found = [
        Measure(
            name=f"gap at the corner board, {side.board_words}",
            asked=board.gap,
            found=corner[side].low[D] - returns[side].high[D],
        )
        for side in LINED
    ]
    past = (
        corner[Side.LEFT].high[X] - returns[Side.LEFT].high[X],
        returns[Side.RIGHT].low[X] - corner[Side.RIGHT].low[X],
        returns[Side.HEAD].low[Y] - corner[Side.HEAD].low[Y],
    )
    asked = corner_past(entry)
    found += [Measure(name="corner board past the return", asked=asked, found=one) for one in past]
    if is_planned_outside(solids):
        plane = solids.kit.placement.planes.trim_plane
        found += [
            Measure(
                name=f"outer edge of the corner board, {side.board_words}, to the trim plane",
                asked=0.0,
                found=plane - corner[side].high[D],
            )
            for side in LINED
        ]
    return found


def _feet(solids: KitSolids, trim: ExteriorTrim, entry: CladdingReturnsEntry) -> list[Measure]:
    """Measure how far over the sill's top the lowest points of the legs stand."""
    sill = one_of(solids, Where.EXTERIOR, PartKind.EXTERIOR_SILL)
    if sill is None or trim.sill is None:
        return []
    _, top, start = sill.seat.origin
    fall = math.tan(math.radians(trim.sill.slope))
    return [
        Measure(
            name=f"foot of {one.name} over the sill",
            asked=entry.gap_at_sill,
            found=min(corner[Y] - (top - (corner[D] - start) * fall) for corner in _corners(one)),
        )
        for one in (*_returns(solids).all, *_corner(solids).all)
        if one.part and one.part.side.is_leg
    ]


def _corners(solid: Solid) -> list[tuple[float, float, float]]:
    return [corner for facet in solid.facets for loop in facet.loops for corner in loop]


def clad_joints(solids: KitSolids, trim: ExteriorTrim, entry: CladdingReturnsEntry) -> list[JointCheck]:
    """Measure how heads lie on legs in every layer, how all lies on the furring, and the casing on corner boards."""
    returns, corner = _returns(solids), _corner(solids)
    found = _heads_on_legs("cladding return", returns, entry.thickness, is_mitered=entry.is_mitered)
    strips = [_furring(solids, number) for number in (1, 2)]
    for one in strips:
        found += _heads_on_legs("return furring", one, entry.furring.thickness) if one else []
    found += _on_furring(solids, strips, trim.sill.slope if trim.sill else 0.0)
    if entry.corner_board is None:
        return found
    found += _heads_on_legs("corner board", corner, entry.corner_board.thickness)
    covered = min(entry.corner_board.thickness - trim.casing_reveal, trim.casing.width)
    clear = corner[Side.RIGHT].low[X] - corner[Side.LEFT].high[X]
    casing = pick(solids, Where.EXTERIOR, PartKind.CASING)
    edges = dict.fromkeys(Side, covered)
    return [*found, *casing_on_edges(solids, corner, casing, trim, edges, clear, what="corner board")]


def _heads_on_legs(what: str, boards: Set, thickness: float, *, is_mitered: bool = False) -> list[JointCheck]:
    """Measure how a head lies on both legs: over their thickness, as wide as the narrower is there.

    ``is_mitered``: the legs' outer edges are beveled, and a leg that reaches past the head loses less under it.
    """
    found, head = [], boards[Side.HEAD]
    for leg in LEGS:
        side = boards[leg]
        # The head starts at the right; a side that starts at its foot ends at the head.
        own, over = width_at_end(side, is_finish=starts_low(side)), width_at_end(head, is_finish=leg is Side.LEFT)
        wide, less = min(own, over), max(thickness - max(own - over, 0.0), 0.0) ** 2 / 2 if is_mitered else 0.0
        fall = abs(width_at_end(head, is_finish=True) - width_at_end(head, is_finish=False)) / _long(head)
        name = f"the {what}'s {leg.board_words} {side.name} and the head {head.name}"
        near = TIGHT + thickness**2 * fall
        found.append(joint(name, [side], [head], asked=thickness * wide - less, tolerance=near))
    return found


def _long(board: Solid) -> float:
    assert board.part is not None
    return board.part.length


def _on_furring(solids: KitSolids, strips: list[Set], slope_deg: float) -> list[JointCheck]:
    """Measure that the returns' backs lie on all of the furring that is behind them; feet are cut to the slope."""
    found, fall = [], math.tan(math.radians(slope_deg))
    for side, board in _returns(solids).by_side.items():
        behind = [one[side] for one in strips if side in one]
        lean = fall if side.is_leg else 0.0
        far = board.low[D] + width_at_end(board, is_finish=not starts_low(board))
        asked = 0.0
        for one in behind:
            low, high = max(one.low[D], board.low[D]), min(one.high[D], board.high[D])
            asked += max(high - low, 0.0) * (_long(board) - (far - (low + high) / 2) * lean)
        name = f"the cladding return's {side.board_words} {board.name} and the furring behind it"
        found.append(joint(name, [board], behind, asked=asked))
    return found


def _returns(solids: KitSolids) -> Set:
    return pick(solids, Where.EXTERIOR, PartKind.CLADDING_RETURN)


def _corner(solids: KitSolids) -> Set:
    return pick(solids, Where.EXTERIOR, PartKind.CORNER_BOARD)


def _furring(solids: KitSolids, member: int) -> Set:
    return pick(solids, Where.EXTERIOR, PartKind.RETURN_FURRING, member=member)
