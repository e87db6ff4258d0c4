"""Parts that are cut alike, and mirror images of each other: they share a detail."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from jambs.drawings.views.arced_details import outline_signature
from jambs.length import Grid
from jambs.parts.board.part import Part
from jambs.parts.board.touches import ReturnBend
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.flare_words import FROM_SQUARE

FEW = 2
"""More parts than these that are cut alike are counted in the title of their detail."""
STEPS = 128
"""Places are one and the same on paper that are one in so many steps of an inch."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Alike:
    """A part to draw, parts cut like it, itself the first, and parts that are its mirror image."""

    part: Part
    same: tuple[Part, ...]
    mirrored: tuple[Part, ...]

    @property
    def names_ends(self) -> bool:
        """Say whether its ends have the same names in all its parts: boards of an octagon lie every way."""
        return len({frozenset(part.seat.ends) for part in (*self.same, *self.mirrored)}) == 1

    @property
    def marks(self) -> str:
        """The marks of its parts, with their number where they are many."""
        text = listed(self.same)
        if len(self.same) > FEW:
            text += f": {len(self.same)} alike"
        return f"{text}; mirror image {listed(self.mirrored)}" if self.mirrored else text


def listed(parts: Iterable[Part]) -> str:
    """Return the marks of some parts."""
    return ", ".join(part.mark for part in parts)


def told_of(part: Part, grid: Grid) -> tuple[str, ...]:
    """Say how a part is cut: its ends, then the work on it; how angles are read the notes say once."""
    return (ends_words(part, grid=grid), *(one for one in work_words(part, grid=grid) if one != FROM_SQUARE))


def grouped(parts: Iterable[Part], grid: Grid) -> list[Alike]:
    """Put parts together that share a detail, in the order of the first of each."""
    groups: list[Alike] = []
    for part in parts:
        for number, group in enumerate(groups):
            if _is_same(part, group.part, grid):
                groups[number] = Alike(part=group.part, same=(*group.same, part), mirrored=group.mirrored)
                break
            if _is_mirrored(part, group.part):
                groups[number] = Alike(part=group.part, same=group.same, mirrored=(*group.mirrored, part))
                break
        else:
            groups.append(Alike(part=part, same=(part,), mirrored=()))
    return groups


def _is_same(part: Part, other: Part, grid: Grid) -> bool:
    """Say whether a part is cut like another, end names included; ends that are alike may change places."""
    if _form(part) != _form(other):
        return False
    ends, others = part.seat.ends, other.seat.ends
    is_even = _form(part) == _form(part, mirrored=True)
    return ends == others or (is_even and (ends == others[::-1] or _is_told_alike(part, other, grid)))


def _is_told_alike(part: Part, other: Part, grid: Grid) -> bool:
    """Say whether pieces round a shape have the same words, which name no ends then: both are cut alike."""
    is_round_shape = bool(part.arcs) or None not in (part.runs, other.runs)
    return is_round_shape and told_of(part, grid) == told_of(other, grid)


def _is_mirrored(part: Part, other: Part) -> bool:
    return part.seat.ends == other.seat.ends[::-1] and _form(part) == _form(other, mirrored=True)


def _steps(length: float) -> int:
    return round(length * STEPS)


def _form(part: Part, *, mirrored: bool = False) -> tuple[object, ...]:
    """Return what makes two parts alike on paper; mirrored end for end."""
    long = part.silhouettes.sizes.length if part.arcs else part.length

    def end(u: float) -> int:
        return _steps(long - u if mirrored else u)

    sizes = (part.name, part.where, _steps(part.thickness))
    if part.arcs:
        sides = [outline_signature(one, long, mirrored=mirrored) for one in (part.curved_outline, part.outline)]
        return (*sizes, _steps(part.width), *sides)
    outline = frozenset((end(u), _steps(v)) for u, v in part.outline)
    profile = frozenset((_steps(v), _steps(w)) for v, w in part.profile)
    pockets = frozenset(
        (min(end(one.low[0]), end(one.high[0])), *(_steps(side) for side in (*one.low[1:], *one.high[1:])))
        for one in part.pockets
    )
    return (*sizes, outline, profile, pockets, _laps(part, mirrored=mirrored))


def _laps(part: Part, *, mirrored: bool) -> tuple[tuple[int, ...], ...]:
    """Return how ends of bent metal along edges of a shape are cut: what is seen of strips may be alike."""
    corners = [one for bend in part.touches if isinstance(bend, ReturnBend) for one in bend.corners or ()]
    ends = [(_steps(one.turn_deg), _steps(one.past), _steps(one.lap)) if one else () for one in corners]
    return tuple(ends[::-1] if mirrored else ends)
