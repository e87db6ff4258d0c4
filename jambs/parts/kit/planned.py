"""Which parts make up a depth of the wall that is only planned, and what is left on them until it is measured."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum, auto

from jambs.job.models.openings import Opening
from jambs.job.models.shop import Shop
from jambs.parts.board.cuts import EndBevel, Miter
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import Kit, OpeningRun
from jambs.parts.readings.as_built import is_measured, is_read
from jambs.parts.run import goes_past
from jambs.sides import LEGS, Side

DEPTH_PARTS = (
    PartKind.EXTENSION_JAMB,
    PartKind.STOOL,
    PartKind.MULL_JAMB,
    PartKind.EXTERIOR_JAMB,
    PartKind.CLADDING_RETURN,
    PartKind.RETURN_FURRING,
    PartKind.EXTERIOR_SILL,
)
"""Parts whose width makes up a depth of the wall, so that a planned depth may still change them."""
ON_THE_ROOM_EDGE = (
    PartKind.EXTENSION_JAMB,
    PartKind.CASING,
    PartKind.BACKBAND,
    PartKind.FILLET,
    PartKind.FRIEZE,
    PartKind.CAP,
    PartKind.CROWN,
    PartKind.APRON,
    PartKind.STOOL,
)
"""Parts that end where the room edge of the jambs comes out, so that a flare makes them longer with the depth."""


def depth_is_planned(part: Part, opening: Opening, run: OpeningRun | None = None) -> bool:
    """Say whether the width of a part may still change, because nobody has measured its depth.

    ``run``: what the opening is trimmed as one with; what goes past others follows their depths too.
    """
    return any(_depth_waits(part, one) for one in _read_at(part, opening, run))


def _depth_waits(part: Part, opening: Opening) -> bool:
    if part.kind is PartKind.RETURN_FURRING and part.member == part.members > 1:
        return False  # the strip at the corner is as wide in any depth
    if part.kind not in DEPTH_PARTS or (part.member < part.members and part.kind is PartKind.EXTENSION_JAMB):
        return False  # of stacked frames only the one against the wall waits for the tape
    return not is_read(opening, part.where)


BETWEEN_UNITS = (PartKind.MULL_CASING, PartKind.TRANSOM_BAR_CASING)
"""Boards whose size goes by how the units stand to each other, which is read where they are set."""


class Waits(Enum):
    """What of a part may still change: its width, its length, its foot, or what goes by how openings or units stand."""

    WIDTH = auto()
    LENGTH = auto()
    FOOT = auto()
    APART = auto()


def is_planned(part: Part, opening: Opening) -> bool:
    """Say whether a size of a part may still change, because nobody has measured what it goes by."""
    return bool(_waiting(part, opening))


def _waiting(part: Part, opening: Opening) -> frozenset[Waits]:
    """Return what of a part may still change.

    How far openings stand apart that are trimmed as one is no reading: what goes past them is cut by the tape.
    """
    is_past = opening.run is not None and goes_past(part)
    waiting = {
        Waits.WIDTH: _depth_waits(part, opening),
        Waits.LENGTH: length_is_planned(part, opening),
        Waits.FOOT: foot_is_planned(part, opening),
        Waits.APART: is_past or (part.kind in BETWEEN_UNITS and not is_read(opening, part.where)),
    }
    return frozenset(what for what, waits in waiting.items() if waits)


def foot_is_planned(part: Part, opening: Opening) -> bool:
    """Say whether the foot of a leg outside may still change: on a sloping sill it is lower in a deeper wall."""
    if not part.side.is_leg or is_read(opening, part.where):
        return False
    if part.kind in (PartKind.CORNER_BOARD, PartKind.RETURN_FURRING):
        return any(isinstance(cut, Miter) for cut in part.cuts)
    is_leg = part.kind is PartKind.CASING and part.where is Where.EXTERIOR
    return is_leg and any(isinstance(cut, EndBevel) for cut in part.cuts)


def length_is_planned(part: Part, opening: Opening) -> bool:
    """Say whether the length of a part may still change: it ends where the room edge of flared jambs comes out.

    A jamb that leans by an angle comes out farther the deeper the wall is; one that leans by a length does not.
    """
    if part.where is Where.EXTERIOR:
        return _is_longer_outside(part, opening)
    if part.where is not Where.INTERIOR or part.kind not in ON_THE_ROOM_EDGE or is_measured(opening):
        return False
    ends = Side if opening.shape else (Side.HEAD, Side.SILL) if part.side.is_leg else LEGS
    flare = opening.interior.flare
    return flare is not None and any((size := flare.at(side)) and size.angle_deg for side in ends)


AT_THE_TRIM_PLANE = (PartKind.EXTERIOR_JAMB, PartKind.CASING, PartKind.EXTERIOR_SILL, PartKind.HEAD_FLASHING)
"""Exterior parts that end where flared jambs come out at the trim plane, so that they are longer in a deeper wall."""


def _is_longer_outside(part: Part, opening: Opening) -> bool:
    """Say whether the length of an exterior part goes by a flare that is given as an angle, and no depth was read."""
    flare = opening.exterior.flare if opening.exterior else None
    if flare is None or part.kind not in AT_THE_TRIM_PLANE or is_read(opening, part.where):
        return False
    ends = Side if opening.shape else (Side.HEAD,) if part.side.is_leg else LEGS
    return any((size := flare.at(side)) and size.angle_deg for side in ends)


def waits_in(kit: Kit, part: Part) -> frozenset[Waits]:
    """Return what of a part of a kit may still change."""
    each = (_waiting(part, one) for one in _read_at(part, kit.placement.opening, kit.run))
    return frozenset[Waits]().union(*each)


def _read_at(part: Part, opening: Opening, run: OpeningRun | None) -> tuple[Opening, ...]:
    """Return the openings whose readings a part goes by: of those trimmed as one the last leg goes by the last one's,
    and boards that go past several by those of all.
    """
    if run is None:
        return (opening,)
    if part.kind is PartKind.CASING and part.side is Side.RIGHT:
        return (run.members[-1].placement.opening,)
    return tuple(one.placement.opening for one in run.members) if goes_past(part) else (opening,)


def marks_of_planned(kits: Iterable[CutKit]) -> frozenset[str]:
    """Return the marks of the parts of which a size may still change."""
    return frozenset(part.mark for kit in kits for part in kit.parts if waits_in(kit, part))


def width_left_on(part: Part, opening: Opening, shop: Shop, run: OpeningRun | None = None) -> float:
    """What is left on the width of a part until its depth is measured [in]; furring is never wider than stated."""
    if not depth_is_planned(part, opening, run):
        return 0.0
    allowance, trim = shop.planned_allowance or 0.0, opening.exterior
    if part.kind is PartKind.RETURN_FURRING and trim and trim.cladding_returns:
        return min(allowance, max(trim.cladding_returns.furring.width - part.width, 0.0))
    return allowance
