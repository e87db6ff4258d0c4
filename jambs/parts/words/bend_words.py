"""How sheet metal is bent to a head flashing, in words."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.length import Grid
from jambs.parts.board.part import Part
from jambs.parts.board.touches import BlankBend, StripBend


def strip_bends(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a strip is bent to a head flashing."""
    for bend in part.touches:
        if not isinstance(bend, StripBend):
            continue
        up, over, down, past, gap = (
            grid.text(size) for size in (bend.upstand, bend.top, bend.drip, bend.past_casing, bend.gap_to_cladding)
        )
        yield (
            f"bend: {up} up behind the membrane, {over} over the casing, {down} down; "
            f"{past} past the casing at each end; cladding stays {gap} above it"
        )


def blank_bends(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a blank is bent whose bends stand on the flashing sheet."""
    for bend in part.touches:
        if not isinstance(bend, BlankBend):
            continue
        at, dam, past, gap = (
            grid.text(size) for size in (bend.first_at, bend.end_dam, bend.past_casing, bend.gap_to_cladding)
        )
        yield f"blank; {bend.bends} bends, the first {at} from the upper edge: see the flashing sheet"
        past = f"{past} past the casing at each end"
        yield f"{dam} of each end turned up as end dam; {past}; cladding stays {gap} above it"
