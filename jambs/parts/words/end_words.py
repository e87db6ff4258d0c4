"""What is done to the ends of a part, in words; sizes on the shop's grid."""

from __future__ import annotations

from collections.abc import Callable

from jambs.length import Grid
from jambs.parts.board.angle_words import angle_text, setting_words
from jambs.parts.board.arrises import OnePlane, arris_lengths
from jambs.parts.board.cuts import (
    BoardSizes,
    End,
    EndBevel,
    EndRabbet,
    Miter,
    PlaneCut,
    end_of,
    saw_angles,
)
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.touches import StripBend
from jambs.parts.words.bend_words import mitered_in_the_flat
from jambs.parts.words.ply_words import bent_ends
from jambs.parts.words.point_words import long_point_words, points_words
from jambs.parts.words.steps import steps_of
from jambs.sides import BoardEnd

SQUARE = "square"
_EndCut = Miter | EndBevel | EndRabbet


def ends_words(part: Part, *, grid: Grid) -> str:
    """Say how the two ends of a part are cut: ``square both ends``, ``miter 45° both ends; short point 31 1/8"``."""
    if part.kind is PartKind.HEAD_FLASHING and steps_of(part, StripBend):
        return f"{SQUARE} both ends; end dams as the cladding needs"
    if part.is_laminated:
        return bent_ends(part)
    if mitered := mitered_in_the_flat(part):
        return mitered
    if _is_any_plane(part):
        return _plane_ends(part, grid)
    return _ENDS.get(part.kind, _square_ends)(part, grid)


def _is_any_plane(part: Part) -> bool:
    """Say whether an end may be cut by any plane: at a compound angle, or of a jamb that leans or meets one."""
    is_mitered = (part.kind is PartKind.EXTENSION_JAMB and bool(steps_of(part, Miter))) or part.runs is not None
    return is_mitered or part.is_leaned or any(end_of(cut) for cut in steps_of(part, PlaneCut))


def _plane_ends(part: Part, grid: Grid) -> str:
    """Say how a saw is set for ends cut by any plane: ``left compound, miter 31.6°, blade tilted 33.9°, …``."""
    sizes = part.silhouettes.sizes
    lengths = arris_lengths(sizes, part.cuts)
    words = [_plane_end(part, sizes, end, grid) for end in End]
    ends = [f"both ends {words[0]}"]
    if words[0] != words[1]:
        ends = [f"{name.words} {how}" for name, how in zip(part.seat.ends, words, strict=True)]
    if words == [SQUARE, SQUARE]:
        return f"{SQUARE} both ends"
    return "; ".join([*ends, points_words(part, lengths, grid)])


def _plane_end(part: Part, sizes: BoardSizes, end: End, grid: Grid) -> str:
    cut = next((cut for cut in part.cuts if end_of(cut) is end and isinstance(cut, OnePlane)), None)
    if cut is None:
        return _jamb_end(_end_cut(part, end), grid)
    plane = cut.plane(sizes)
    return f"{setting_words(*saw_angles(plane)) or SQUARE}, long point {long_point_words(part, plane, sizes, end)}"


def _square_ends(part: Part, grid: Grid) -> str:
    return f"{SQUARE} both ends"


def _jamb_ends(part: Part, grid: Grid) -> str:
    words = [_jamb_end(_end_cut(part, end), grid) for end in End]
    if len(set(words)) == 1:
        return f"both ends {words[0]}" if _end_cut(part, End.START) else f"{SQUARE} both ends"
    return "; ".join(f"{name.words} {how}" for name, how in zip(part.seat.ends, words, strict=True))


def _jamb_end(cut: _EndCut | None, grid: Grid) -> str:
    if isinstance(cut, EndRabbet):
        along, depth = grid.text(cut.along), grid.text(cut.depth)
        return f"rabbet {along} wide, {depth} deep in the face"
    if isinstance(cut, EndBevel):
        return f"bevel {angle_text(cut.angle_deg)}, long point at the back"
    return SQUARE


def _casing_ends(part: Part, grid: Grid) -> str:
    cuts = {name: _end_cut(part, end) for name, end in zip(part.seat.ends, End, strict=True)}
    short = grid.text(near_edge_length(part))
    if all(isinstance(cut, Miter) for cut in cuts.values()):
        return f"{_miter_words(part)} both ends; short point {short}"
    words = {name: _casing_end(cut, short) for name, cut in cuts.items()}
    if len(set(words.values())) == 1:
        return f"{SQUARE} both ends"
    return f"top {words[BoardEnd.TOP]}; bottom {words[BoardEnd.BOTTOM]}"


def _miter_words(part: Part) -> str:
    return f"miter {angle_text(next(cut.angle_deg for cut in part.cuts if isinstance(cut, Miter)))}"


def _casing_end(cut: _EndCut | None, short: str) -> str:
    if isinstance(cut, Miter):
        return f"miter {angle_text(cut.angle_deg)}, short point {short}"
    if isinstance(cut, EndBevel):
        return f"bevel {angle_text(cut.angle_deg)} to the sill, long point on the face"
    return SQUARE


def _exterior_jamb_ends(part: Part, grid: Grid) -> str:
    sloped = next((cut for cut in part.cuts if isinstance(cut, Miter)), None)
    if sloped is None:
        return f"{SQUARE} both ends"
    short = grid.text(near_edge_length(part))
    slope = angle_text(sloped.angle_deg)
    return f"top {SQUARE}; bottom miter {slope} to the sill, long point outside, {short} on the frame side"


def _cover_ends(part: Part, grid: Grid) -> str:
    """Ends of a board over a mull: beveled to the sill outside, inside to jambs that flare."""
    bevels = {end: _end_cut(part, end) for end in End}
    if not any(bevels.values()):
        return f"{SQUARE} both ends"
    to_sill = " to the sill" if part.where is Where.EXTERIOR else ""
    words = [
        f"{name.words} bevel {angle_text(cut.angle_deg)}{to_sill}, long point on the face"
        if isinstance(cut := bevels[end], EndBevel)
        else f"{name.words} {SQUARE}"
        for name, end in zip(part.seat.ends, End, strict=True)
    ]
    return "; ".join(words)


def _apron_ends(part: Part, grid: Grid) -> str:
    bevel = next((cut for cut in part.cuts if isinstance(cut, EndBevel)), None)
    if bevel is None:
        return f"{SQUARE} both ends"
    return f"bevel {angle_text(bevel.angle_deg)} both ends, long point on the face"


_ENDS: dict[PartKind, Callable[[Part, Grid], str]] = {
    PartKind.EXTENSION_JAMB: _jamb_ends,
    PartKind.CASING: _casing_ends,
    PartKind.BACKBAND: _casing_ends,
    PartKind.EXTERIOR_JAMB: _exterior_jamb_ends,
    PartKind.CLADDING_RETURN: _exterior_jamb_ends,
    PartKind.CORNER_BOARD: _exterior_jamb_ends,
    PartKind.RETURN_FURRING: _exterior_jamb_ends,
    PartKind.APRON: _apron_ends,
    PartKind.MULL_JAMB: _exterior_jamb_ends,
    PartKind.MULL_CASING: _cover_ends,
    PartKind.TRANSOM_BAR_CASING: _cover_ends,
}


def _end_cut(part: Part, end: End) -> _EndCut | None:
    """Return what is done at one end beyond the crosscut."""
    return next((cut for cut in part.cuts if isinstance(cut, _EndCut) and cut.end is end), None)


def near_edge_length(part: Part) -> float:
    """Length of the near edge, short point to short point of a mitered casing [in]."""
    along = [u for u, v in part.outline if v == 0.0]
    return max(along) - min(along)
