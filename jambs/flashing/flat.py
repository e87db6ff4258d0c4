"""The head flashing as its cut sheet has it: the flat blank, its legs on the shop's grid, and how it is bent."""

from __future__ import annotations

from jambs.flashing.make import Flashings, head_of
from jambs.length import Grid
from jambs.parts.board.touches import BlankBend, BlankOverReturn, UncasedBlank
from jambs.parts.kit.cut_kit import FlatBlank
from jambs.parts.kit.kit import Kit


def flat_head(kit: Kit, flashings: Flashings, grid: Grid) -> FlatBlank | None:
    """Return the flat blank of the head flashing [in]; nothing where there is none."""
    blank, trim = head_of(flashings), kit.placement.opening.exterior
    if blank is None:
        return None
    assert trim is not None
    blank = blank.on(grid)
    over = BlankBend if trim.is_cased else UncasedBlank if trim.returns else BlankOverReturn
    bend = over(
        bends=len(blank.bends),
        first_at=blank.bends[0].at,
        end_dam=blank.end_dam,
        past_casing=trim.head_flashing.past_casing,
        gap_to_cladding=trim.head_flashing.gap_to_cladding,
    )
    return FlatBlank(width=blank.girth, length=grid.up(blank.length), bend=bend)
