"""The order of laps: from below, each thing over the one before it, so that water always runs out onto the next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.flashing.blank import Blank, BlankKind
from jambs.job.models.openings import Job
from jambs.length import length_text
from jambs.parts.kinds import PartKind
from jambs.parts.kit import Kit


@dataclass(frozen=True, slots=True, kw_only=True)
class Lap:
    """One step: its number from below, what goes on, and what it laps over and how."""

    number: int
    what: str
    over: str


def lap_order(kit: Kit, blanks: Sequence[Blank], job: Job) -> tuple[Lap, ...]:
    """Return the order of laps of one opening, from below."""
    made = {blank.kind: blank for blank in blanks}
    steps: list[tuple[str, str]] = []
    if pan := made.get(BlankKind.SILL_PAN):
        lap = _text(pan.leg("front leg").width, job)
        steps.append((pan.name, f"front leg {lap} down over the membrane under the opening"))
    steps += _window(kit, BlankKind.SILL_PAN in made)
    if sill := made.get(BlankKind.SILL_FLASHING):
        lap = _text(sill.leg("front leg").width, job)
        steps.append((sill.name, f"over the course of cladding under the sill, by {lap}"))
        steps.append((PartKind.EXTERIOR_SILL.words, "on the sill flashing, its back at the frame with a sealant joint"))
    steps.append(("exterior jambs and casing", "legs on the sill, head casing over the legs"))
    head = made[BlankKind.HEAD_FLASHING]
    steps.append((head.name, f"front leg {_text(head.leg('front leg').width, job)} down over the head casing"))
    steps.append(("membrane", f"over the upstand of {_text(head.leg('upstand').width, job)}, taped at its upper edge"))
    steps.append(("cladding over the head", _cladding(kit, job)))
    return tuple(Lap(number=n, what=what, over=over) for n, (what, over) in enumerate(steps, start=1))


def _window(kit: Kit, has_pan: bool) -> list[tuple[str, str]]:
    on = "the pan" if has_pan else "the threshold's bed"
    if not kit.placement.opening.window.nailing_flange:
        return [
            ("window on its clips", f"over {on}; open at the bottom, so that the pan drains"),
            ("tape at the sides", "from the frame onto the membrane, over the pan's end dams"),
            ("tape at the head", "over the tape at the sides"),
        ]
    return [
        ("window, nailing flange", f"over {on}; no sealant under the bottom flange, so that the pan drains"),
        ("tape at the side flanges", "over the flanges and the pan's end dams"),
        ("tape at the head flange", "over the tape at the sides"),
        ("membrane at the head", "down over the head flange and its tape"),
    ]


def _cladding(kit: Kit, job: Job) -> str:
    trim = kit.placement.opening.exterior
    gap = trim.head_flashing.gap_to_cladding if trim else 0.0
    return f"over the membrane, {_text(gap, job)} clear of the head casing's upper edge"


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
