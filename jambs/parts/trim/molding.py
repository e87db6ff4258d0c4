"""Molded casing: every board of it is run to the section that the job gives, before its ends are cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.job.models.profile import on_board
from jambs.job.models.trim import InteriorTrim
from jambs.outlines import area, kept
from jambs.parts.board.cuts import Crosscut, Cut, Molded, Rip
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part


def molded(parts: Sequence[Part], trim: InteriorTrim) -> tuple[Part, ...]:
    """Run the boards of a casing to the section of its trim; as they are where it gives none."""
    if trim.profile is None:
        return tuple(parts)
    cut = Molded(section=on_board(trim.profile, trim.casing.width, trim.casing.thickness))
    return tuple(
        replace(part, cuts=_before_ends(part.cuts, cut)) if part.kind is PartKind.CASING else part for part in parts
    )


def _before_ends(cuts: tuple[Cut, ...], cut: Molded) -> tuple[Cut, ...]:
    """Put a cut after the rip and the crosscut: ends are mitered on the finished section."""
    first = [one for one in cuts if isinstance(one, Rip | Crosscut)]
    return (*first, cut, *(one for one in cuts if one not in first))


def end_area(trim: InteriorTrim, deep: float) -> float:
    """Area of the casing's end, as far as ``deep`` out from its back [sq in]."""
    if trim.profile is None:
        return trim.casing.width * min(trim.casing.thickness, deep)
    return area(kept(trim.profile, (0.0, -1.0), (0.0, deep)))


def inner_edge(trim: InteriorTrim) -> float:
    """Thickness of the casing at its inner edge [in]."""
    return trim.profile[-1][1] if trim.profile else trim.casing.thickness
