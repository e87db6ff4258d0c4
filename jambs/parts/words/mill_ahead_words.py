"""What may be ripped before measuring, in words of the measure sheet: who, to what width, and what to know of it."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from jambs.length import Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.mill_ahead import RippedAhead, Source

Line = tuple[str, str, str]
"""Parts and verb, the figure, the rest of the sentence."""


def milling_lines(found: Sequence[RippedAhead], kit: Kit, units: Units) -> list[Line]:
    """Say of each width once for which parts it is."""
    alike = groupby(sorted(found, key=_width), key=_width)
    return [_line(list(group), kit, units) for _, group in alike]


def _width(one: RippedAhead) -> tuple[str, str, float, float, float]:
    return one.source.value, one.board.words if one.board else "", one.width, one.leaves, one.short


def _line(group: list[RippedAhead], kit: Kit, units: Units) -> Line:
    first, who = group[0], _who([one.part for one in group], kit)
    if first.source is Source.WHOLE_BOARD and not first.leaves:
        rest = f" at worst, and no board in stock gives it: wait for the tape, or glue up to {units.text(first.wanted)}"
        return f"{who} may need", units.text(first.wanted), rest
    verb = "glue up to" if first.source is Source.PANEL else "rip to"
    less = f"{units.text(first.short)} less than may be needed at worst"
    leaves = f", that leaves {units.text(first.leaves)}"
    if first.source is Source.WHOLE_BOARD:
        leaves += f", all that a board in stock gives: {less}"
    elif first.is_said and first.short:
        leaves += f" (the planned allowance of the shop; {less})"
    if first.source is Source.WIDER_BOARD and first.board and first.part.blank.board:
        leaves += f", out of {first.board.words} and not of {first.part.blank.board.words}"
    return f"{who}: {verb}", units.text(first.width), leaves


def _who(parts: list[Part], kit: Kit) -> str:
    """Name the parts; all jambs of the kit in one word."""
    jambs = [one for one in kit.parts if one.kind is PartKind.EXTENSION_JAMB and one.where is Where.INTERIOR]
    if [one for one in parts if one.kind is PartKind.EXTENSION_JAMB] == jambs and jambs:
        others = [one.told for one in parts if one.kind is not PartKind.EXTENSION_JAMB]
        return ", ".join(["all jambs", *others])
    return ", ".join(one.position if one.kind is PartKind.EXTENSION_JAMB else one.told for one in parts)
