"""Mulls as they were read: where each begins, how wide its gap is, and whether the frames there stand in one plane."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.findings import Finding, Subject
from jambs.job.models.fields import Size
from jambs.job.models.gang import Gang, Mull, MullKind, Unit
from jambs.job.models.openings import Opening, SideDepths
from jambs.job.models.readings import Readings
from jambs.length import HALF_64TH
from jambs.parts.findings.mull_findings import MullDepthOff

OUT_OF_PLANE = 1 / 16 + HALF_64TH
"""Frames that stand off one plane by more leave a casing over their mull hollow [in]; common practice, no source."""


def with_mulls(opening: Opening, readings: Readings) -> Opening:
    """Put mulls where they were read, and let the units beside them reach to them; others stay as planned.

    The last unit of a row and the upper row take what the whole frame was read wider or higher.
    """
    gang = opening.gang
    if gang is None:
        return opening
    mulls = tuple(_read(mull, place, readings) for place, mull in enumerate(gang.mulls))
    units = tuple(_reaching(unit, gang, mulls, opening.frame) for unit in gang.units)
    return replace(opening, gang=replace(gang, units=units, mulls=mulls))


def _read(mull: Mull, place: int, readings: Readings) -> Mull:
    low = _at(readings.mull_edges, place)
    between = _at(readings.mull_gaps, place)
    low = mull.low if low is None else low
    return replace(mull, low=low, high=low + (mull.between if between is None else between))


def _at(read: Sequence[float | None] | None, place: int) -> float | None:
    return read[place] if read and place < len(read) else None


def _reaching(unit: Unit, gang: Gang, mulls: Sequence[Mull], frame: Size) -> Unit:
    beside = [mull for mull in mulls if mull.kind is MullKind.MULL]
    bars = [mull for mull in mulls if mull.kind is MullKind.TRANSOM_BAR]
    left = next((mull.high for mull in beside if unit.number in mull.after), 0.0)
    right = next((mull.low for mull in beside if unit.number in mull.before), frame.width)
    low = next((mull.high for mull in bars if unit.number in mull.after), 0.0)
    high = next((mull.low for mull in bars if unit.number in mull.before), frame.height)
    return replace(unit, x=left, y=low, frame=Size(width=right - left, height=high - low))


def mull_depth_findings(opening: Opening, readings: Readings, depths: SideDepths | None, bare: float) -> list[Finding]:
    """Find where the frames at a mull stand off the plane of the outer jambs: more or less deep than beside it.

    ``depths``: along head and sill [in]; ``bare``: finish that was not on yet when the mulls were read [in].
    """
    gang, read = opening.gang, readings.mull_depths
    if gang is None or depths is None or not read:
        return []
    about, found = Subject.opening(opening.mark), list[Finding]()
    for place, mull in enumerate(gang.uprights):
        for end, points in enumerate((depths.head, depths.sill)):
            value = _at(read, 2 * place + end)
            if value is None or not points:
                continue
            off = value + bare - _along(points, (mull.low + mull.high) / 2 / opening.frame.width)
            if abs(off) > OUT_OF_PLANE:
                found.append(MullDepthOff(subject=about, off=off, units=(*mull.before, *mull.after), is_head=end == 0))
    return found


def _along(points: Sequence[float], share: float) -> float:
    """Return a depth between points at equal steps, at a share of the way [in]."""
    at = share * (len(points) - 1)
    before = min(int(at), len(points) - 2)
    return points[before] + (at - before) * (points[before + 1] - points[before])
