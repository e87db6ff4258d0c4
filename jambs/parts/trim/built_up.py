"""Casings built up from members: boards as ever, and what stands round, under, over and between them.

Where a head of members lies over the legs there is no head casing; where rosettes stand in the corners, the boards end
at them. All members have their backs where the casing has its own. Seen from the room no board is mirrored: what stands
runs up at the left and down at the right, what lies runs from left to right.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

from jambs.geometry import DOWN, INWARD, LEFT, OUTWARD, RIGHT, UP
from jambs.job.models.built_up import BackbandEntry, BuiltUpEntry, HeadMember, MemberKind, PlinthEntry, RosetteEntry
from jambs.job.models.trim import CasingEntry, Corner, InteriorTrim
from jambs.parts.board.cuts import Crosscut, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.trim.casing import CasedOpening, casing
from jambs.parts.trim.crown import FriezeFace, crown_parts, crown_sizes
from jambs.sides import LEGS, Side

KINDS = {
    MemberKind.FILLET: PartKind.FILLET,
    MemberKind.FRIEZE: PartKind.FRIEZE,
    MemberKind.CAP: PartKind.CAP,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class OverAll:
    """The box that a casing with all its members takes on the wall (x, y) [in]."""

    left: float
    right: float
    bottom: float
    top: float


def built_up_casing(opening: CasedOpening, trim: InteriorTrim) -> tuple[Part, ...]:
    """Make the interior casing of an opening, with the members that it is built up from where there are some."""
    built, entry = trim.built_up, trim.casing
    if built is None:
        return casing(opening, entry, Where.INTERIOR)
    parts = [*_boards(opening, trim)]
    if built.backband:
        parts += _backband(opening, trim, built.backband)
    if built.rosettes:
        parts += _rosettes(opening, entry, built.rosettes)
    if built.plinths:
        parts += _plinths(opening, built.plinths)
    return (*parts, *_head(opening, trim, built))


def past_inner(trim: InteriorTrim) -> float:
    """How far rosettes reach over the inner edge of the casing they are centered on [in]."""
    rosettes = trim.built_up.rosettes if trim.built_up else None
    return (rosettes.size - trim.casing.width) / 2 if rosettes else 0.0


def _boards(opening: CasedOpening, trim: InteriorTrim) -> tuple[Part, ...]:
    """The boards of the casing: legs from plinth to rosette or head, level ones between rosettes."""
    built, entry = trim.built_up, trim.casing
    assert built is not None
    past, foot = past_inner(trim), built.plinths.height if built.plinths else 0.0
    low = opening.bottom + (foot or (past if opening.has_bottom else 0.0))
    legs = casing(replace(opening, bottom=low, top=opening.top - past), entry, Where.INTERIOR)
    between = entry.model_copy(update={"overhang": -(entry.width + past)}) if built.rosettes else entry
    level = () if built.head else casing(opening, between, Where.INTERIOR)
    return (
        *(part for part in level if not part.side.is_leg),
        *(part for part in legs if part.side.is_leg),
    )


def _backband(opening: CasedOpening, trim: InteriorTrim, band: BackbandEntry) -> tuple[Part, ...]:
    """Make the band: a casing round the casing, mitered; under a head of members on the legs alone, square."""
    built, width = trim.built_up, trim.casing.width
    assert built is not None
    has_head = bool(built.head)
    outer = replace(
        opening,
        left=opening.left - width,
        right=opening.right + width,
        top=opening.top + (0.0 if has_head else width),
        bottom=opening.bottom - (width if opening.has_bottom else 0.0),
    )
    entry = CasingEntry.model_construct(
        width=band.width,
        thickness=band.thickness,
        stock=band.stock,
        corner=Corner.BUTT if has_head else Corner.MITER,
        overhang=0.0,
        back_bevel_deg=0.0,
    )
    found = (replace(part, kind=PartKind.BACKBAND) for part in casing(outer, entry, Where.INTERIOR))
    return tuple(part for part in found if part.side.is_leg or not has_head)


def _rosettes(opening: CasedOpening, entry: CasingEntry, rosettes: RosetteEntry) -> tuple[Part, ...]:
    """Make the blocks in the upper corners, and in the lower ones where a casing closes the bottom."""
    past = (rosettes.size - entry.width) / 2
    lows = [opening.top - past, *([opening.bottom + past - rosettes.size] if opening.has_bottom else [])]
    sizes = (rosettes.size, rosettes.size, rosettes.thickness)
    return tuple(
        replace(
            _block(PartKind.ROSETTE, side, opening, sizes, rosettes.stock, inner=past, low=low),
            member=member,
            members=len(lows),
        )
        for side in LEGS
        for member, low in enumerate(lows, 1)
    )


def _plinths(opening: CasedOpening, plinths: PlinthEntry) -> tuple[Part, ...]:
    sizes = (plinths.width, plinths.height, plinths.thickness)
    return tuple(
        _block(PartKind.PLINTH, side, opening, sizes, plinths.stock, inner=0.0, low=opening.bottom) for side in LEGS
    )


def _block(
    kind: PartKind,
    side: Side,
    opening: CasedOpening,
    sizes: tuple[float, float, float],
    stock: str,
    *,
    inner: float,
    low: float,
) -> Part:
    """Make a block of (width, height, thickness), its inner edge ``inner`` past the casing's, its foot at ``low``.

    Its grain runs up at the left and down at the right, its near edge toward the opening.
    """
    width, height, thickness = sizes
    at_left = side is Side.LEFT
    edge = opening.left + inner if at_left else opening.right - inner
    seat = Seat(
        origin=(edge, low if at_left else low + height, opening.back - thickness),
        along=UP if at_left else DOWN,
        across=LEFT if at_left else RIGHT,
        through=OUTWARD,
    )
    return Part(
        kind=kind,
        side=side,
        where=Where.INTERIOR,
        blank=PartBlank(stock=stock, thickness=thickness),
        cuts=(Rip(width=width), Crosscut(length=height)),
        seat=seat,
    )


def _legs_outside(opening: CasedOpening, trim: InteriorTrim) -> tuple[float, float]:
    """Outer edges of what stands under a head: legs, and the band beside them [in]."""
    band = trim.built_up.backband if trim.built_up else None
    out = trim.casing.width + (band.width if band else 0.0)
    return opening.left - out, opening.right + out


def _head(opening: CasedOpening, trim: InteriorTrim, built: BuiltUpEntry) -> tuple[Part, ...]:
    """Lay the members of a head on the legs, one on the other; marks of a kind count from the bottom."""
    left, right = _legs_outside(opening, trim)
    parts: list[Part] = []
    level, seen = opening.top, dict[MemberKind, int]()
    for member in built.head:
        seen[member.kind] = seen.get(member.kind, 0) + 1
        make = _lying if member.kind.lies else _standing
        found = make(member, left - member.overhang, right + member.overhang, level, opening.back)
        parts.append(replace(found, member=seen[member.kind]))
        level += member.height
        if built.crown and member is crowned(built):
            face = FriezeFace(
                left=left - member.overhang,
                right=right + member.overhang,
                top=level,
                height=member.height,
                face=opening.back - member.projection,
                back=opening.back,
            )
            parts += crown_parts(face, built.crown)
    return tuple(parts)


def crowned(built: BuiltUpEntry) -> HeadMember:
    """Return the frieze that a crown stands on: the first that has a cap on it."""
    kinds = (MemberKind.FRIEZE, MemberKind.CAP)
    return next(one for one, above in pairwise(built.head) if (one.kind, above.kind) == kinds)


def crown_past_cap(built: BuiltUpEntry) -> float:
    """How far a crown stands out past the cap on it, at the front or at an end [in]; negative: the cap covers it."""
    if built.crown is None:
        return 0.0
    frieze, out = crowned(built), crown_sizes(built.crown).projection
    cap = built.head[built.head.index(frieze) + 1]
    return max(frieze.projection + out - cap.projection, frieze.overhang + out - cap.overhang)


def _lying(member: HeadMember, left: float, right: float, level: float, back: float) -> Part:
    """A member whose board lies flat: its face up, its straight near edge at the wall."""
    return _level_board(
        member,
        right - left,
        thickness=member.height,
        width=member.projection,
        seat=Seat(origin=(right, level + member.height, back), along=LEFT, across=INWARD, through=DOWN),
    )


def _standing(member: HeadMember, left: float, right: float, level: float, back: float) -> Part:
    """A member whose board stands: its face to the room, its near edge below."""
    return _level_board(
        member,
        right - left,
        thickness=member.projection,
        width=member.height,
        seat=Seat(origin=(left, level, back - member.projection), along=RIGHT, across=UP, through=OUTWARD),
    )


def _level_board(member: HeadMember, length: float, *, thickness: float, width: float, seat: Seat) -> Part:
    return Part(
        kind=KINDS[member.kind],
        side=Side.HEAD,
        where=Where.INTERIOR,
        blank=PartBlank(stock=member.stock, thickness=thickness),
        cuts=(Rip(width=width), Crosscut(length=length)),
        seat=seat,
    )


def over_all(opening: CasedOpening, trim: InteriorTrim) -> OverAll:
    """Return the box of a built-up casing, from the foot of its legs to the top of its head [in]."""
    built, width, past = trim.built_up, trim.casing.width, past_inner(trim)
    assert built is not None
    band = built.backband.width if built.backband else 0.0
    beside = width + past + band
    if built.plinths:
        beside = max(beside, built.plinths.width)
    if built.head:
        past_cap = max(crown_past_cap(built), 0.0)
        out = max(width + band + max(member.overhang for member in built.head) + past_cap, beside)
        top = opening.top + sum(member.height for member in built.head)
    else:
        out, top = beside, opening.top + width + past + band
    below = width + past + band if opening.has_bottom else 0.0
    return OverAll(left=opening.left - out, right=opening.right + out, bottom=opening.bottom - below, top=top)
