"""The fasteners of an opening, of a wall's field, and of the house."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from jambs.fasten.findings import FurringVerdict, NoneLongEnough, NoTableOfLengths
from jambs.fasten.furring import Answer, FurringCase, Verdict, furring_verdict
from jambs.fasten.reach import Sold, Through, find_sold, next_length, through_field, through_opening
from jambs.findings import Finding, Subject
from jambs.job.models.layers import USUAL_SPACING, Layer, MadeOf, Role
from jambs.job.models.outside import ElevationEntry, FastenerEntry, Fixed
from jambs.length import ROUND_OFF, Units, whole_down, whole_up
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.clad_checks import insulation_behind_returns
from jambs.parts.kit.kit import Kit
from jambs.wall.planes import WallPlanes

ROLES = {Fixed.STRAPPING: Role.STRAPPING, Fixed.COVER: Role.COVER}
FIXED_ROUND_OPENINGS = (
    (Fixed.CASING, Where.EXTERIOR),
    (Fixed.BUCK, Where.BUCK),
    (Fixed.RETURN_FURRING, Where.EXTERIOR),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerLine:
    """One kind of fastener at one place.

    ``where``: mark of the opening or name of the elevation. ``needed``: through everything and the penetration asked;
    ``length``: next one sold, None where none reaches [in]. ``count``: None where the job does not say how much wall;
    ``asked``: the key of the elevation that would give it. ``is_about``: the count is a layout of the field, not of
    single boards. ``sold``: whose lengths these are, None where the job gives its own or nobody does. ``furring``: what
    the table says of it.
    """

    where: str
    fixed: Fixed
    fastener: str
    through: tuple[Through, ...]
    needed: float
    length: float | None
    penetration: float
    spacing: float
    count: int | None
    is_about: bool
    sold: Sold | None
    furring: Verdict | None
    findings: tuple[Finding, ...]
    asked: str = "width"


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseRow:
    """Fasteners to buy: kind, length [in], how many, what for; ``is_about`` where a part of the count is a layout."""

    fastener: str
    length: float
    count: int
    fixed: tuple[Fixed, ...]
    is_about: bool


def opening_fasteners(kit: Kit, entries: Mapping[Fixed, FastenerEntry], units: Units) -> tuple[FastenerLine, ...]:
    """Plan the fasteners of one opening's casing, buck and return furring, where the job says how they are fastened."""
    lines = []
    for fixed, where in FIXED_ROUND_OPENINGS:
        entry, through = entries.get(fixed), through_opening(fixed, kit)
        boards = [part for part in kit.parts if part.where is where and _is(part, fixed, kit)]
        if entry is None or through is None or not boards:
            continue
        count = sum(board_count(board.length, entry) for board in boards)
        verdict = _at_opening(fixed, entry, kit)
        lines.append(_line(Subject.opening(kit.mark), fixed, entry, through, count, False, verdict, units))
    return tuple(lines)


def _is(part: Part, fixed: Fixed, kit: Kit) -> bool:
    """Say whether a board is fixed as casing or as a buck is: casing on a wall between openings as the other."""
    if fixed is Fixed.BUCK:
        return part.where is Where.BUCK
    if fixed is Fixed.RETURN_FURRING:
        return part.kind is PartKind.RETURN_FURRING
    return part.kind is PartKind.CASING or (kit.run is not None and part.kind is PartKind.MULL_CASING)


def _at_opening(fixed: Fixed, entry: FastenerEntry, kit: Kit) -> Verdict | None:
    """What the table says of an opening's fasteners; of furring in the reveal only where insulation lies behind it."""
    if fixed is Fixed.RETURN_FURRING and not insulation_behind_returns(kit.placement):
        return None
    return _verdict(fixed, entry, kit.placement.planes)


def board_count(length: float, entry: FastenerEntry) -> int:
    """Return how many go along a board: one near each end, between them at most the spacing apart, in each row."""
    between = max(length - 2 * entry.from_end, 0.0)
    return (whole_up(between / entry.spacing) + 1) * entry.rows


def field_fasteners(
    where: str,
    elevation: ElevationEntry,
    width: float | None,
    kits: Sequence[Kit],
    planes: WallPlanes,
    entries: Mapping[Fixed, FastenerEntry],
    units: Units,
) -> tuple[FastenerLine, ...]:
    """Plan the fasteners of the strapping or outer sheathing of one wall of an elevation.

    ``width``: how much of the elevation is this wall [in], None where the job does not say; ``kits``: of its openings.
    ``units``: whose usual spacing holds where the job gives none.
    """
    lines = []
    for fixed, role in ROLES.items():
        entry = entries.get(fixed)
        layer = next((one.layer for one in reversed(planes.layers) if one.layer.role is role), None)
        if entry is None or layer is None:
            continue
        apart = known_spacing(layer, planes) or USUAL_SPACING[units]
        count = None if width is None else field_count(elevation, width, kits, apart, entry)
        verdict = _verdict(fixed, entry, planes)
        lines.append(_line(Subject.elevation(where), fixed, entry, through_field(planes), count, True, verdict, units))
    return tuple(lines)


def known_spacing(layer: Layer, planes: WallPlanes) -> float | None:
    """Return how far apart strapping stands, or the studs under an outer sheathing [in]; None if not said."""
    framing = [one.layer.spacing for one in planes.layers if one.layer.role is Role.FRAMING and one.layer.spacing]
    own = layer.spacing if layer.role is Role.STRAPPING else None
    return own or next(iter(framing), None)


def field_count(
    elevation: ElevationEntry, width: float, kits: Iterable[Kit], apart: float, entry: FastenerEntry
) -> int:
    """Return about how many go into the field: members across the width, fasteners up each, openings left out."""
    members = whole_down(width / apart) + 1
    count = members * board_count(elevation.eave - elevation.start_line, entry)
    for kit in kits:
        hole = kit.placement.opening.rough_opening
        count -= math.floor(hole.width / apart) * math.floor(hole.height / entry.spacing) * entry.rows
    return max(count, 0)


def _verdict(fixed: Fixed, entry: FastenerEntry, planes: WallPlanes) -> Verdict | None:
    """What the table says of strapping over foam; of everything else over insulation that it needs design."""
    outboard = [one.layer for one in planes.layers if one.inner >= planes.sheathing_plane - ROUND_OFF]
    insulation = [layer for layer in outboard if layer.role is Role.INSULATION]
    if fixed is Fixed.BUCK or not insulation:
        return None
    if fixed is not Fixed.STRAPPING:
        return Verdict(answer=Answer.NOT_STRAPPING, fixed=fixed)
    others = [layer.name for layer in insulation if layer.made_of is not MadeOf.FOAM]
    if others:
        return Verdict(answer=Answer.NOT_FOAM, name=others[0])
    strapping = next(layer for layer in outboard if layer.role is Role.STRAPPING)
    spacing = known_spacing(strapping, planes)
    if spacing is None:
        return Verdict(answer=Answer.NO_SPACING)
    if entry.cladding_weight is None:
        return Verdict(answer=Answer.NO_CLADDING_WEIGHT)
    sold = find_sold(entry.fastener)
    case = FurringCase(
        fastener=sold.fastener if sold else entry.fastener,
        penetration=entry.penetration,
        fastener_spacing=entry.spacing,
        furring_spacing=spacing,
        cladding_psf=entry.cladding_weight,
        foam=sum(layer.thickness for layer in insulation),
    )
    return furring_verdict(case)


def _line(
    about: Subject,
    fixed: Fixed,
    entry: FastenerEntry,
    through: tuple[Through, ...],
    count: int | None,
    is_about: bool,
    verdict: Verdict | None,
    units: Units,
) -> FastenerLine:
    sold = find_sold(entry.fastener, units)
    lengths = entry.lengths or (sold.lengths if sold else ())
    needed = sum(one.thickness for one in through) + entry.penetration
    length = next_length(needed, lengths)
    return FastenerLine(
        where=about.name,
        fixed=fixed,
        fastener=sold.fastener if sold else entry.fastener,
        through=through,
        needed=needed,
        length=length,
        penetration=entry.penetration if length is None else entry.penetration + length - needed,
        spacing=entry.spacing,
        count=count,
        is_about=is_about,
        sold=None if entry.lengths else sold,
        furring=verdict,
        findings=_findings(about, fixed, entry, needed, lengths),
    )


def _findings(
    about: Subject, fixed: Fixed, entry: FastenerEntry, needed: float, lengths: Sequence[float]
) -> tuple[Finding, ...]:
    if not lengths:
        return (NoTableOfLengths(subject=about, fixed=fixed, fastener=entry.fastener, needed=needed),)
    if next_length(needed, lengths) is not None:
        return ()
    longest = max(lengths)
    return (NoneLongEnough(subject=about, fixed=fixed, fastener=entry.fastener, needed=needed, longest=longest),)


def house_fasteners(lines: Iterable[FastenerLine]) -> tuple[HouseRow, ...]:
    """Add up the fasteners of the house by kind and length; lines without a length or a count are left out."""
    rows: dict[tuple[str, float], list[FastenerLine]] = {}
    for line in lines:
        if line.length is not None and line.count is not None:
            rows.setdefault((line.fastener, line.length), []).append(line)
    return tuple(
        HouseRow(
            fastener=fastener,
            length=length,
            count=sum(line.count for line in some if line.count),
            fixed=tuple(dict.fromkeys(line.fixed for line in some)),
            is_about=any(line.is_about for line in some),
        )
        for (fastener, length), some in sorted(rows.items())
    )


def verdict_findings(lines: Iterable[FastenerLine], about: Subject) -> tuple[FurringVerdict, ...]:
    """Gather what the table says of the fasteners of the house: each verdict once, with the places it holds for."""
    places: dict[tuple[Fixed, Verdict], list[FastenerLine]] = {}
    for line in lines:
        if line.furring:
            places.setdefault((line.fixed, line.furring), []).append(line)
    return tuple(_verdict_finding(some, about) for some in places.values())


def _verdict_finding(lines: Sequence[FastenerLine], about: Subject) -> FurringVerdict:
    verdict = lines[0].furring
    assert verdict is not None
    return FurringVerdict(
        subject=about,
        severity=verdict.severity,
        fixed=lines[0].fixed,
        places=tuple(line.where for line in lines),
        verdict=verdict,
    )
