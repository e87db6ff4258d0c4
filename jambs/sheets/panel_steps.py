"""The steps of an install sheet that only frame-and-panel jambs have: gluing up their frames, and where they bear."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.length import Grid
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.words.panel_words import letters_of, room_words
from jambs.sheets.kit_parts import marks_text


def panel_steps(jambs: Sequence[Part], grid: Grid) -> list[str]:
    """Return how the frames are put together before the jamb box is built; none of plain boards."""
    framed = [part for part in jambs if part.frame_members]
    if not framed:
        return []
    steps = [
        f"Frames of the jambs ({marks_text(framed)}): put each together dry first, shoulders tight, every panel loose "
        "in its groove; finish the panels, tongues too, before they go in, or bare wood shows when they shrink."
    ]
    alike: dict[str, list[Part]] = {}
    for part in framed:
        alike.setdefault(_frame_words(part, grid), []).append(part)
    steps += [f"{marks_text(parts)}: {words}" for words, parts in alike.items()]
    return [
        *steps,
        "Glue the tenons of the rails, never a panel: it splits if it cannot move. One pin from the back at the "
        "middle of each end keeps it centered. Clamp over the rails, both diagonals alike, flat; then cut each frame "
        "as one board.",
    ]


def _frame_words(part: Part, grid: Grid) -> str:
    first = "bottom" if part.side.is_leg else "left"
    return (
        f"from the {first} rails {letters_of(part, PartKind.RAIL)} between stiles {letters_of(part, PartKind.STILE)}, "
        f"panels {letters_of(part, PartKind.PANEL)} in the grooves with {room_words(part, grid)}, centered."
    )


def behind_frames(jambs: Sequence[Part]) -> list[str]:
    """Return where frames with panels are shimmed and fastened; none of plain boards."""
    if not any(part.frame_members for part in jambs):
        return []
    return ["Shims and screws behind stiles and rails only: none through a panel, nothing that presses on its back."]
