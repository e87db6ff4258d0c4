"""A kit once the outside is planned: what the papers print and what is cut."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Any

from jambs.findings import Finding
from jambs.parts.board.cuts import Crosscut, Rip
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.board.touches import BlankBend, StripBend, Touch, WoodMoves
from jambs.parts.kit.kit import Kit


@dataclass(frozen=True, slots=True, kw_only=True)
class CutKit(Kit):
    """All parts of one opening as they are cut: its head flashing is the blank to cut, its boards say how they move."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatBlank:
    """Bent metal before it is bent [in]: across all its legs, along with its end dams, and how it is bent."""

    width: float
    length: float
    bend: BlankBend


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedForKit:
    """What the plan of the outside changes in a kit: its head flashing, boards that say how they move, by mark."""

    flashing: FlatBlank | None = None
    moves: Mapping[str, WoodMoves] = field(default_factory=dict)
    findings: Sequence[Finding] = ()


def as_cut(kit: Kit, planned: PlannedForKit) -> CutKit:
    """Return a kit as it is cut; with nothing planned its head flashing stays a plain strip."""
    kept: dict[str, Any] = {one.name: getattr(kit, one.name) for one in fields(kit)}
    parts, lent = (tuple(_planned(part, planned) for part in some) for some in (kit.parts, kit.lent))
    return CutKit(**{**kept, "parts": parts, "lent": lent, "findings": (*kit.findings, *planned.findings)})


def _planned(part: Part, planned: PlannedForKit) -> Part:
    if part.kind is PartKind.HEAD_FLASHING and planned.flashing:
        part = _as_blank(part, planned.flashing)
    moves = planned.moves.get(part.mark)
    return replace(part, touches=(*part.touches, moves)) if moves else part


def _as_blank(part: Part, flat: FlatBlank) -> Part:
    """Give the plain strip the girth and length of the blank; where it is seen, in place, it stays what it was."""
    kept: tuple[Touch, ...] = tuple(one for one in part.touches if not isinstance(one, StripBend))
    return replace(
        part,
        cuts=(Rip(width=flat.width), Crosscut(length=flat.length)),
        in_place=part.cuts,
        touches=(*kept, flat.bend),
    )
