"""Openings without casing measured on the solids: returns against what was asked, the sill between them."""

from __future__ import annotations

from jambs.job.models.openings import Opening
from jambs.job.models.returns import ReturnsEntry
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.returns import wall_board_lap
from jambs.sides import LEGS, Side
from jambs.solids.lookup import D, Set, X, Y, one_of, pick
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import Measure


def return_measures(solids: KitSolids) -> list[Measure]:
    """Measure the boards that return the wall, and the stool or tile between them; nothing at wooden jambs."""
    entry = solids.kit.placement.opening.interior.returns
    boards = pick(solids, Where.INTERIOR, PartKind.RETURN)
    if entry is None or not boards:
        return []
    found = [*_between(solids, boards, entry), *_depths(solids, boards, entry)]
    stool, tile = (one_of(solids, Where.INTERIOR, kind) for kind in (PartKind.STOOL, PartKind.TILE_SILL))
    if stool:
        found += _stool(solids, stool, boards, entry)
    return found + (_tile(solids, tile, boards, entry) if tile else [])


def _between(solids: KitSolids, boards: Set, entry: ReturnsEntry) -> list[Measure]:
    """The coated faces make the clear opening, and show the frame by its reveal."""
    kit, coat, step = solids.kit, entry.corner_bead.nose, solids.job.shop.grid.step
    left, right, head = boards[Side.LEFT], boards[Side.RIGHT], boards[Side.HEAD]
    opening = kit.placement.opening
    face, asked = opening.window.frame_face, _reveal(opening)
    shown = (("left", face.left - left.high[X]), ("right", face.right + right.low[X] - opening.frame.width))
    width = right.low[X] - left.high[X] - 2 * coat
    found = [Measure(name="clear opening width between coated returns", asked=kit.clear_width, found=width)]
    found += [
        Measure(name=f"frame reveal at the {side}", asked=asked, found=size - coat, tolerance=step / 4 + 0.001)
        for side, size in shown
    ]
    if Side.SILL in boards:
        height = head.low[Y] - boards[Side.SILL].high[Y] - 2 * coat
        found.append(Measure(name="clear opening height between coated returns", asked=kit.clear_height, found=height))
    return found


def _reveal(opening: Opening) -> float:
    """What the frame shows on each side [in]: as asked, and half of what the finished opening was read wider."""
    asked, face = opening.interior.frame_reveal, opening.window.frame_face
    width, _ = (opening.readings.finished_opening if opening.readings else None) or (None, None)
    if width is None:
        return asked
    return (width - (opening.frame.width - face.left - face.right)) / 2


def _depths(solids: KitSolids, boards: Set, entry: ReturnsEntry) -> list[Measure]:
    """Every board from its gap at the frame to the wall, or to the board of the wall that covers its edge."""
    kit = solids.kit
    lap = wall_board_lap(kit.placement, entry)
    edge, found = kit.placement.inside_edge, list[Measure]()
    for side, board in boards.by_side.items():
        words = f"the {side.board_words} return"
        gap, depth = edge - board.high[D], edge - board.low[D] + lap
        found.append(Measure(name=f"gap between frame and {words}", asked=entry.gap_at_frame, found=gap))
        found.append(Measure(name=f"depth of {words}", asked=kit.sides[side].greatest, found=depth))
    return found


def _stool(solids: KitSolids, stool: Solid, boards: Set, entry: ReturnsEntry) -> list[Measure]:
    """Between the coated returns, its top at the bottom of the clear opening, its horns past the corners."""
    trim = solids.kit.placement.opening.interior
    assert trim.stool is not None
    height = boards[Side.HEAD].low[Y] - entry.corner_bead.nose - stool.high[Y]
    between = [corner[X] for facet in stool.facets for corner in facet.loops[0] if corner[D] > stool.high[D] - 0.001]
    found = [
        Measure(name="clear opening height over the stool", asked=solids.kit.clear_height, found=height),
        Measure(name="stool between the returns", asked=solids.kit.clear_width, found=max(between) - min(between)),
    ]
    coat, ends = entry.corner_bead.nose, {Side.LEFT: boards[Side.LEFT].high[X], Side.RIGHT: boards[Side.RIGHT].low[X]}
    past = {Side.LEFT: ends[Side.LEFT] + coat - stool.low[X], Side.RIGHT: stool.high[X] - ends[Side.RIGHT] + coat}
    return found + [
        Measure(name=f"horn past the {side.words} return", asked=trim.stool.horn, found=past[side]) for side in LEGS
    ]


def _tile(solids: KitSolids, tile: Solid, boards: Set, entry: ReturnsEntry) -> list[Measure]:
    trim, edge = solids.kit.placement.opening.interior, solids.kit.placement.inside_edge
    assert trim.tile_sill is not None
    coat, joint = entry.corner_bead.nose, trim.tile_sill.joint
    return [
        Measure(
            name="joint at the left of the tile", asked=joint, found=tile.low[X] - boards[Side.LEFT].high[X] - coat
        ),
        Measure(
            name="joint at the right of the tile", asked=joint, found=boards[Side.RIGHT].low[X] - coat - tile.high[X]
        ),
        Measure(name="joint at the frame", asked=joint, found=edge - tile.high[D]),
        Measure(
            name="front of the tile past the wall",
            asked=solids.kit.sides[Side.SILL].greatest + trim.tile_sill.nosing,
            found=edge - tile.low[D],
        ),
        Measure(
            name="clear opening height over the tile",
            asked=solids.kit.clear_height,
            found=boards[Side.HEAD].low[Y] - coat - tile.high[Y],
        ),
    ]
