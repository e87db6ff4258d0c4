"""The order of laps: from below, each thing over the one before it, so that water always runs out onto the next.

What laps over metal and flange is what the wall has there: its membrane, a strip brought out from it, or, where the
wall names none, the layer that has yet to be settled.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from jambs.flashing.blank import Blank, BlankKind
from jambs.flashing.membrane import is_behind, weather_membrane
from jambs.job.models.openings import Job
from jambs.job.models.trim import Corner
from jambs.length import length_text
from jambs.parts.kinds import PartKind, Where
from jambs.parts.kit import Kit
from jambs.sides import Side


class LapKind(Enum):
    """What goes on, for drawings and sketches; nothing compares its words."""

    PAN = "pan"
    WINDOW = "window"
    SIDE_TAPE = "side tape"
    HEAD_TAPE = "head tape"
    HEAD_MEMBRANE = "head membrane"
    SILL_FLASHING = "sill flashing"
    SILL = "sill"
    TRIM = "trim"
    HEAD_FLASHING = "head flashing"
    UPSTAND = "upstand"
    CLADDING = "cladding"


PARTS_OF = {
    LapKind.SILL: (PartKind.EXTERIOR_SILL,),
    LapKind.TRIM: (PartKind.EXTERIOR_JAMB, PartKind.CASING),
    LapKind.HEAD_FLASHING: (PartKind.HEAD_FLASHING,),
}
"""The exterior parts of the kit that a lap puts on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lap:
    """One step: its number from below, what goes on, and what it laps over and how."""

    number: int
    kind: LapKind
    what: str
    over: str


Step = tuple[LapKind, str, str]


def lap_order(kit: Kit, blanks: Sequence[Blank], job: Job) -> tuple[Lap, ...]:
    """Return the order of laps of one opening, from below; of the parts and blanks it has, and of no others."""
    made = {blank.kind: blank for blank in blanks}
    pan = made.get(BlankKind.SILL_PAN)
    steps = [_pan(pan, kit, job)] if pan else []
    steps += _window(kit, job, has_pan=pan is not None)
    steps += _sill(kit, made.get(BlankKind.SILL_FLASHING), job)
    steps += [_trim(kit), *_head(kit, job)]
    return tuple(Lap(number=n, kind=kind, what=what, over=over) for n, (kind, what, over) in enumerate(steps, start=1))


def _pan(pan: Blank, kit: Kit, job: Job) -> Step:
    lap = _text(pan.leg("front leg").width, job)
    return LapKind.PAN, pan.name, f"front leg {lap} down over {_under(kit, job)}"


def _under(kit: Kit, job: Job) -> str:
    """Return what lies under the opening where the window is fastened."""
    behind = _behind_the_window(kit)
    if behind is None:
        return "the layer that sheds the water under the opening"
    if is_behind(behind):
        return f"a strip of membrane under the opening, brought out {_text(behind, job)} from the wall's"
    return "the membrane under the opening"


def _behind_the_window(kit: Kit) -> float | None:
    """Weather membrane → flange plane; → outside edge of the frame where there is no flange [in]."""
    placement = kit.placement
    membrane = weather_membrane(placement.planes)
    plane = placement.flange_plane if placement.opening.window.nailing_flange else placement.outside_edge
    return None if membrane is None else plane - membrane


def _window(kit: Kit, job: Job, *, has_pan: bool) -> list[Step]:
    name = "door" if kit.placement.opening.floor_below_frame is not None else "window"
    if not kit.placement.opening.window.nailing_flange:
        dams = ", over the pan's end dams" if has_pan else ""
        return [
            (LapKind.WINDOW, f"{name} on its clips", _seat(kit, job, has_pan, "open at the bottom")),
            (LapKind.SIDE_TAPE, "tape at the sides", f"from the frame onto what sheds the water beside it{dams}"),
            (LapKind.HEAD_TAPE, "tape at the head", "over the tape at the sides"),
        ]
    dams = " and the pan's end dams" if has_pan else ""
    return [
        (LapKind.WINDOW, f"{name}, nailing flange", _seat(kit, job, has_pan, "no sealant under the bottom flange")),
        (LapKind.SIDE_TAPE, "tape at the side flanges", f"over the flanges{dams}"),
        (LapKind.HEAD_TAPE, "tape at the head flange", "over the tape at the sides"),
        _head_membrane(kit, job),
    ]


def _seat(kit: Kit, job: Job, has_pan: bool, left_open: str) -> str:
    """Return what the window stands on, and how it drains; a door's threshold is sealed where it has no pan."""
    if has_pan:
        return f"over the pan; {left_open}, so that the pan drains"
    if kit.placement.opening.floor_below_frame is not None:
        return "its threshold bedded in sealant over its whole width, on what carries it"
    return f"over {_under(kit, job)}; {left_open}, so that water drains out"


def _head_membrane(kit: Kit, job: Job) -> Step:
    behind, over = _behind_the_window(kit), "down over the head flange and its tape"
    if behind is None:
        return LapKind.HEAD_MEMBRANE, "layer that sheds the water", over
    if is_behind(behind):
        out = f"from the wall's membrane, {_text(behind, job)} further in, {over}"
        return LapKind.HEAD_MEMBRANE, "strip of membrane at the head", out
    return LapKind.HEAD_MEMBRANE, "membrane at the head", over


def _sill(kit: Kit, flashing: Blank | None, job: Job) -> list[Step]:
    steps = []
    if flashing:
        lap = _text(flashing.leg("front leg").width, job)
        steps.append((LapKind.SILL_FLASHING, flashing.name, f"over the course of cladding under the sill, by {lap}"))
    if _has(kit, PartKind.EXTERIOR_SILL):
        on = "on the sill flashing, its" if flashing else "its"
        steps.append((LapKind.SILL, PartKind.EXTERIOR_SILL.words, f"{on} back at the frame with a sealant joint"))
    return steps


def _trim(kit: Kit) -> Step:
    trim = kit.placement.opening.exterior
    what = "exterior jambs and casing" if _has(kit, PartKind.EXTERIOR_JAMB) else "exterior casing"
    has_bottom = any(
        part.kind is PartKind.CASING and part.where is Where.EXTERIOR and part.side is Side.SILL for part in kit.parts
    )
    foot = "on the sill" if _has(kit, PartKind.EXTERIOR_SILL) else "down past the frame"
    foot = "on the bottom piece" if has_bottom else foot
    is_butt = trim is not None and trim.casing.corner is Corner.BUTT
    top = "head casing over the legs" if is_butt else "head casing mitered to them, sealed in the miter"
    return LapKind.TRIM, what, f"legs {foot}, {top}"


def _has(kit: Kit, kind: PartKind) -> bool:
    return any(part.kind is kind for part in kit.parts)


def _head(kit: Kit, job: Job) -> list[Step]:
    """Return what goes on over the head casing: the metal, what laps its upstand, the cladding."""
    trim, planes = kit.placement.opening.exterior, kit.placement.planes
    assert trim is not None
    metal, membrane = trim.head_flashing, weather_membrane(planes)
    gap = f"{_text(metal.gap_to_cladding, job)} clear of the head casing's upper edge"
    front = f"front leg {_text(metal.drip, job)} down over the head casing"
    what, over, that = _upstand(None if membrane is None else planes.trim_plane - membrane, metal.upstand, job)
    return [
        (LapKind.HEAD_FLASHING, PartKind.HEAD_FLASHING.words, front),
        (LapKind.UPSTAND, what, over),
        (LapKind.CLADDING, "cladding over the head", f"over {that}, {gap}"),
    ]


def _upstand(behind: float | None, upstand: float, job: Job) -> tuple[str, str, str]:
    """Return what laps the upstand of the head flashing, how, and what the cladding then goes over.

    ``behind``: weather membrane → trim plane [in]; None where the wall names no membrane.
    """
    over = f"over the upstand of {_text(upstand, job)}"
    if behind is None:
        return "what sheds the water", f"settle which layer does: the wall names no membrane; bring it {over}", "it"
    if is_behind(behind):
        out = f"from the membrane, {_text(behind, job)} behind the trim plane, out {over}; taped at both edges"
        return "strip of membrane", out, "the strip"
    return "membrane", f"{over}, taped at its upper edge", "the membrane"


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
