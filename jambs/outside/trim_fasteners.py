"""How the trim and the buck of one opening are fastened: through what, how long; what the job leaves open, assumed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from jambs.fasten.findings import NoTrimFastenerLongEnough
from jambs.fasten.furring import Verdict
from jambs.fasten.plan import FastenerLine, opening_fasteners
from jambs.fasten.reach import Through, find_sold, next_length
from jambs.findings import Finding, Subject
from jambs.job.models.layers import BuckKind, Role
from jambs.job.models.openings import Job
from jambs.job.models.outside import FastenerEntry, Fixed
from jambs.length import FRAMING_GRIDS, MM_PER_INCH, ROUND_OFF, Grid, Units, whole_up
from jambs.parts.box import box_gaps
from jambs.parts.kit import JambFrame, Kit
from jambs.place.placement import Sides
from jambs.sides import Side

JAMB_PENETRATION = {Units.INCH: 1.25, Units.MM: 30 / MM_PER_INCH}
"""Of a trim screw through jamb and shims, into framing or buck [in]; common practice, no source."""
CASING_PENETRATION = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""Of a nail through casing and wall finish, into framing [in]; common practice, no source."""
Penetration = Mapping[Units, float]
JAMB_FASTENER, CASING_FASTENER = "trim screw", "casing nail"
FROM_END = {Units.INCH: 4.0, Units.MM: 100 / MM_PER_INCH}
SHIM_SPACING = {Units.INCH: 16.0, Units.MM: 400 / MM_PER_INCH}
"""First shims from a corner, and the most between two pairs [in]; common practice, no source."""
SHIM_GRID = {Units.INCH: FRAMING_GRIDS["1/2"], Units.MM: FRAMING_GRIDS["10 mm"]}
"""Nobody reads a place for shims finer."""
ASSUMED_OUTSIDE = {
    Units.INCH: {"fastener": "long wood screw", "penetration": "1 1/2", "spacing": "16"},
    Units.MM: {"fastener": "long wood screw", "penetration": "40 mm", "spacing": "400 mm"},
}
"""Where the job does not say how casing and buck are fastened; common practice, no source."""


class Fastened(Enum):
    """What a line of fasteners holds."""

    JAMB = "extension jamb"
    INTERIOR_CASING = "interior casing"
    EXTERIOR_CASING = "exterior casing"
    BUCK = "buck"


@dataclass(frozen=True, slots=True, kw_only=True)
class InstallFastener:
    """One kind of fastener of one opening [in]: what it goes through, ``needed`` and sold ``length``, its way in.

    ``sides``: those it is for, none where it is for all. ``verdict``: what the published table says of it, where it
    says anything.
    """

    kind: Fastened
    what: str
    where: str
    fastener: str
    through: tuple[Through, ...]
    needed: float
    length: float | None
    penetration: float
    is_assumed: bool
    is_inside: bool
    sides: tuple[Side, ...] = ()
    note: str = ""
    verdict: Verdict | None = None

    @property
    def reached(self) -> float:
        """What the length that is sold reaches into the framing; where none is sold, what is required [in]."""
        return self.penetration + (self.length - self.needed if self.length else 0.0)


def shim_places(length: float, grid: Grid) -> tuple[float, ...]:
    """Return where shims go along a side, from its first end [in]: near the ends, between them evenly.

    A short side has one place in its middle: two would stand nearer to each other than to the ends.
    """
    end, spacing = FROM_END[grid.units], SHIM_SPACING[grid.units]
    if length <= 3 * end:
        return (SHIM_GRID[grid.units].round(length / 2),)
    steps = max(1, whole_up((length - 2 * end) / spacing))
    coarse = SHIM_GRID[grid.units]
    return tuple(coarse.round(end + at * (length - 2 * end) / steps) for at in range(steps + 1))


def shim_gaps(kit: Kit) -> Sides:
    """Back of each extension jamb, of stacked ones against the wall, → rough opening [in]."""
    return box_gaps(kit.frames[-1].clear, kit.placement)


def trim_fasteners(kit: Kit, job: Job) -> tuple[InstallFastener, ...]:
    """Plan all fasteners of one opening's trim; what the job does not state is assumed and marked so."""
    lines = [*_jamb_lines(kit, job), *_casing_lines(kit, job.units)]
    lines += [_outside_line(line, line.fixed not in job.outside.fasteners) for line in buck_and_casing(kit, job)]
    return tuple(lines)


def buck_and_casing(kit: Kit, job: Job) -> tuple[FastenerLine, ...]:
    """Plan the fasteners of exterior casing and buck, as the job has them or as they are assumed."""
    entries = {
        fixed: job.outside.fasteners.get(fixed) or _assumed_entry(job.units) for fixed in (Fixed.CASING, Fixed.BUCK)
    }
    return opening_fasteners(kit, entries, job.units)


def too_short(lines: Iterable[InstallFastener], about: Subject, units: Units) -> Iterator[Finding]:
    """Find trim that no fastener of the table is long enough for; those outside have findings of their own."""
    for line in lines:
        sold = find_sold(line.fastener, units)
        if line.length is None and line.is_inside and sold:
            longest = max(sold.lengths)
            yield NoTrimFastenerLongEnough(
                subject=about,
                what=line.what,
                where=line.where,
                fastener=line.fastener,
                needed=line.needed,
                longest=longest,
            )


def _assumed_entry(units: Units) -> FastenerEntry:
    return FastenerEntry.model_validate(ASSUMED_OUTSIDE[units])


def _line(
    what: str,
    where: str,
    fastener: str,
    through: tuple[Through, ...],
    *,
    kind: Fastened,
    into: Penetration,
    units: Units,
    note: str,
    sides: tuple[Side, ...] = (),
) -> InstallFastener:
    sold, penetration = find_sold(fastener, units), into[units]
    needed = sum(one.thickness for one in through) + penetration
    return InstallFastener(
        kind=kind,
        sides=sides,
        what=what,
        where=where,
        fastener=fastener,
        through=through,
        needed=needed,
        length=next_length(needed, sold.lengths if sold else ()),
        penetration=penetration,
        is_assumed=True,
        is_inside=True,
        note=note,
    )


def _jamb_lines(kit: Kit, job: Job) -> list[InstallFastener]:
    """Through jamb and shim space on each side of every jamb frame; sides of one length share a line."""
    return [line for frame in kit.frames for line in _frame_lines(frame, kit, job)]


def _frame_lines(frame: JambFrame, kit: Kit, job: Job) -> list[InstallFastener]:
    gaps, thickness = box_gaps(frame.clear, kit.placement), kit.placement.opening.interior.jamb.thickness
    what = Fastened.JAMB.value + (f", frame {frame.member}" if len(kit.frames) > 1 else "")
    by_gap: dict[float, list[Side]] = {}
    for side, gap in ((Side.LEFT, gaps.left), (Side.RIGHT, gaps.right), (Side.HEAD, gaps.head)):
        by_gap.setdefault(round(max(gap, 0.0), 6), []).append(side)
    lines = []
    for gap, sides in by_gap.items():
        through = (Through(name="jamb", thickness=thickness), Through(name="shims", thickness=gap), *_buck(kit))
        note = "a pair at every shim, near each edge; at the head only where the span is long"
        lines.append(
            _line(
                what,
                ", ".join(side.board_words for side in sides),
                JAMB_FASTENER,
                through,
                kind=Fastened.JAMB,
                into=JAMB_PENETRATION,
                units=job.units,
                note=note,
                sides=tuple(sides),
            )
        )
    return lines


def _buck(kit: Kit) -> tuple[Through, ...]:
    """A liner buck lies between the shims and the framing."""
    buck = kit.placement.buck
    if buck is None or buck.kind is not BuckKind.LINER:
        return ()
    return (Through(name="liner buck", thickness=buck.thickness),)


def _casing_lines(kit: Kit, units: Units) -> list[InstallFastener]:
    """Interior casing: its inner edge into the jamb, its outer edge through the wall finish into the framing."""
    if not kit.placement.opening.interior.is_cased:
        return []
    thickness = kit.placement.opening.interior.casing.thickness
    casing = Through(name="casing", thickness=thickness)
    finish = [
        Through(name=one.layer.name, thickness=one.layer.thickness)
        for one in kit.placement.planes.layers
        if one.outer <= kit.placement.planes.stud_face + ROUND_OFF and one.outer > one.inner
    ]
    note = "inner edge: short brads into the jamb's edge, clear of the corner"
    if any(one.layer.role is Role.CAVITY for one in kit.placement.planes.layers):
        note += "; outer edge: through the service cavity, look for cables and pipes"
    through = (casing, *finish)
    return [
        _line(
            Fastened.INTERIOR_CASING.value,
            "outer edge",
            CASING_FASTENER,
            through,
            kind=Fastened.INTERIOR_CASING,
            into=CASING_PENETRATION,
            units=units,
            note=note,
        )
    ]


def _outside_line(line: FastenerLine, is_assumed: bool) -> InstallFastener:
    kind = Fastened.EXTERIOR_CASING if line.fixed is Fixed.CASING else Fastened.BUCK
    return InstallFastener(
        kind=kind,
        what=kind.value,
        where=f"{line.count} in all" if line.count else "",
        fastener=line.fastener,
        through=line.through,
        needed=line.needed,
        length=line.length,
        penetration=line.needed - sum(one.thickness for one in line.through),
        is_assumed=is_assumed,
        is_inside=False,
        verdict=line.furring,
    )
