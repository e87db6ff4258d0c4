"""Pieces of a row that are sawn alike, told together: their marks, and which of their side they are."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from jambs.arcs import with_arcs
from jambs.parts.board.kinds import PartKind, position_words, run_words
from jambs.parts.board.listing import and_list, in_rows
from jambs.parts.board.part import Part

STEPS = 128
"""Corners are one and the same that are one in so many steps of an inch, finer than any saw is set."""


def is_piece(part: Part) -> bool:
    """Say whether a part is one of a row: of segments, of edges of a shape, of the boards over several mulls."""
    return (part.runs or 1) > 1 or _is_over_a_mull(part)


def _is_over_a_mull(part: Part) -> bool:
    return part.kind is PartKind.MULL_CASING and part.members > 1


def piece_form(part: Part) -> tuple[object, ...]:
    """Return what pieces that are sawn alike have in common: corners as seen on the face, across, and of pockets."""
    faces = (part.outline, part.curved_outline) if part.arcs else (part.outline,)
    corners = (with_arcs(one).points if part.arcs else one for one in faces)
    pockets = _corners(point for one in part.pockets for point in (one.low, one.high))
    return (part.kind, part.where, *(_corners(one) for one in corners), _corners(part.profile), pockets)


def _corners(points: Iterable[Sequence[float]]) -> tuple[tuple[int, ...], ...]:
    """Return corners in one order, whichever of them an outline begins at, since lines are compared as text."""
    return tuple(sorted({tuple(round(value * STEPS) for value in point) for point in points}))


def piece_place(part: Part) -> tuple[str, int, int]:
    """Return the side of a piece in words, which of it the piece is from the left, and of how many."""
    side = position_words(part.kind, part.side, is_on_wall=part.is_on_wall)
    return side, part.member, part.members if _is_over_a_mull(part) else part.runs or 1


def mark_lines(marks: Sequence[str]) -> tuple[str, ...]:
    """Return the marks of some pieces in short, ``A2-1``, ``to A2-12,``: three and more in a row by their ends."""
    told: list[tuple[str, ...]] = []
    for row in in_rows([_number(mark) for mark in marks]):
        first, last = marks[row[0]], marks[row[-1]]
        told += [(first, f"to {last}")] if len(row) > 2 else [(marks[at],) for at in row]
    *before, last_row = told
    return (*(line for row in before for line in (*row[:-1], f"{row[-1]},")), *last_row)


def _number(mark: str) -> int:
    return int(mark.rsplit("-", 1)[-1])


def places_words(places: Sequence[tuple[str, int, int]]) -> str:
    """Say where some pieces are: ``head, 2 to 12 of 13 from the left``; ``head and bottom, all 26``."""
    sides: dict[tuple[str, int], list[int]] = {}
    for side, run, runs in places:
        sides.setdefault((side, runs), []).append(run)
    if all(len(found) == runs for (_, runs), found in sides.items()):
        return f"{and_list([side for side, _ in sides])}, all {len(places)}"
    return "; ".join(f"{side}, {_runs(found, runs)}" for (side, runs), found in sides.items())


def _runs(found: Sequence[int], runs: int) -> str:
    """Say which of a side's pieces some are; of two or three they have names."""
    if len(found) == runs:
        return f"all {runs}"
    names = [run_words(run, runs).removeprefix(", ") for run in found]
    if not any(name[0].isdigit() for name in names):
        return and_list(names)
    rows = in_rows(found)
    told = [[str(found[at]) for at in row] for row in rows]
    short = [part for row in told for part in ([f"{row[0]} to {row[-1]}"] if len(row) > 2 else row)]
    return f"{and_list(short)} of {runs} from the left"
