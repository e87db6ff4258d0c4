"""How sheet metal is bent to a head flashing, in words."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.length import MM_PER_INCH, Grid, Units, decimal_text
from jambs.parts.board.bent_metal import FOLD_DEG, BendLine
from jambs.parts.board.part import Part
from jambs.parts.board.touches import (
    BlankBend,
    BlankOverReturn,
    MetalCorner,
    ReturnBend,
    StripBend,
    StripOverReturn,
    UncasedBlank,
    UncasedStrip,
)
from jambs.sides import Side


def strip_bends(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a strip is bent to a head flashing."""
    for bend in part.touches:
        if not isinstance(bend, StripBend):
            continue
        up, over, down, past, gap = (
            grid.text(size) for size in (bend.upstand, bend.top, bend.drip, bend.past_casing, bend.gap_to_cladding)
        )
        out, ends = _over(bend)
        yield (
            f"bend: {up} up behind the membrane, {over} {out}, {down} down; "
            f"{past} past {ends} at each end; cladding stays {gap} above it"
        )


def _over(bend: StripBend | BlankBend) -> tuple[str, str]:
    """Say what a flashing lies over, and past what its ends stand."""
    if isinstance(bend, StripOverReturn | BlankOverReturn):
        return "over the head return", "the head return"
    is_uncased = isinstance(bend, UncasedStrip | UncasedBlank)
    return ("out under the cladding", "the face legs") if is_uncased else ("over the casing", "the casing")


def blank_bends(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a blank is bent whose bends stand on the flashing sheet."""
    for bend in part.touches:
        if not isinstance(bend, BlankBend):
            continue
        at, dam, past, gap = (
            grid.text(size) for size in (bend.first_at, bend.end_dam, bend.past_casing, bend.gap_to_cladding)
        )
        yield f"blank; {bend.bends} bends, the first {at} from the upper edge: see the flashing sheet"
        past = f"{past} past {_over(bend)[1]} at each end"
        yield f"{dam} of each end turned up as end dam; {past}; cladding stays {gap} above it"


def sheet_text(thickness: float, units: Units) -> str:
    """Return the thickness of a sheet as it is sold: ``0.032"``, ``0.8 mm``."""
    if units is Units.INCH:
        return f'{decimal_text(thickness, 3)}"'
    return f"{decimal_text(thickness * MM_PER_INCH, 2)} mm"


def return_bends(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a blank is bent to line an opening: its legs, its bend lines, what is done at its ends."""
    for bend in part.touches:
        if not isinstance(bend, ReturnBend):
            continue
        profile, lines = bend.profile, bend.profile.lines
        if part.kind.is_between_units:
            hem, at = grid.text(profile.legs[0].width), _line_words(lines[0], lines[0].at, grid)
            yield f"face {grid.text(profile.legs[1].width)} wide, a hem of {hem} folded back behind it at both edges"
            yield f"bend from both edges {at}"
            continue
        legs = " + ".join(grid.text(leg.width) for leg in profile.legs)
        yield f"legs {legs}{' at the deeper end' if part.taper else ''}, outside to outside"
        first, *others = lines
        if part.taper:  # its outer edge leans, and takes all bend lines but the first with it
            far = ", ".join(_line_words(one, profile.girth - one.at, grid) for one in reversed(others))
            yield f"bend {_line_words(first, first.at, grid)} from the edge at the frame; from the outer edge {far}"
        else:
            bends = ", ".join(_line_words(one, one.at, grid) for one in lines)
            yield f"bend from the edge at the frame {bends}"
        if bend.lap:
            over = "turned up behind the sides as a dam" if part.side is Side.SILL else "turned down over the sides"
            yield f"{grid.text(bend.lap)} of each end slit from the leg outside and {over}, that leg straight on"
        for end, corner in zip(part.seat.ends, bend.corners or (), strict=False):
            if corner:
                yield _corner_words(end.words, corner, grid)
        if bend.foot_deg:
            angle = decimal_text(bend.foot_deg, 1)
            yield f"snip the foot to the sill, {angle}° off square, longer outside"


def mitered_in_the_flat(part: Part) -> str:
    """Say which ends of bent metal are mitered, of a blank that is cut square; nothing where none is."""
    corners = next((one.corners for one in part.touches if isinstance(one, ReturnBend) and one.corners), ())
    ends = [name.words for name, corner in zip(part.seat.ends, corners, strict=False) if corner]
    if not ends:
        return ""
    both = "both ends" if len(ends) == len(part.seat.ends) else f"the {ends[0]} end, the other stays square"
    return f"blank cut square, then mitered in the flat at {both}"


def _corner_words(end: str, corner: MetalCorner, grid: Grid) -> str:
    """Say how one end of metal along an edge of a shape is cut: it laps the next, or is lapped by it."""
    half, turn = decimal_text(corner.turn_deg / 2, 1), decimal_text(corner.turn_deg, 1)
    past = f"{grid.text(corner.past)} past the corner at its edge"
    if not corner.lap:
        return f"{end}: miter the face leg {half}°, {past}; return and leg at the frame end at the corner"
    lap = grid.text(corner.lap)
    return (
        f"{end}: miter the face leg {half}°, {past}, and leave {lap} beyond that line to lap the next; slit the return "
        f"from it, {lap} of it turned {turn}° over the next; leg at the frame to the corner"
    )


def _line_words(line: BendLine, at: float, grid: Grid) -> str:
    turn = abs(line.turn_deg)
    return f"{grid.text(at)} ({'fold' if turn >= FOLD_DEG else decimal_text(turn, 1) + '°'})"
