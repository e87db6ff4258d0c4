"""Where each part is fastened, through what, and with what length: for the install sheet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.fasten.plan import FastenerLine, opening_fasteners
from jambs.fasten.reach import Through, find_sold, next_length
from jambs.findings import Finding
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Assumed, Job
from jambs.job.models.outside import FastenerEntry, Fixed
from jambs.length import ROUND_OFF, Grid, length_text, whole_up
from jambs.parts.box import box_gaps
from jambs.parts.inside import interior_clear
from jambs.parts.kinds import PartKind
from jambs.parts.kit import Kit
from jambs.place.placement import Sides
from jambs.sides import Side

JAMB_PENETRATION = 1.25
"""Of a trim screw through jamb and shims, into framing or buck [in]; common practice, no source."""
CASING_PENETRATION = 1.0
"""Of a nail through casing and wall finish, into framing [in]; common practice, no source."""
JAMB_FASTENER, CASING_FASTENER = "trim screw", "casing nail"
FROM_END, SHIM_SPACING = 4.0, 16.0
"""First shims from a corner, and the most between two pairs [in]; common practice, no source."""
ASSUMED_OUTSIDE = {"fastener": "long wood screw", "penetration": "1 1/2", "spacing": "16"}
"""Where the job does not say how casing and buck are fastened; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InstallFastener:
    """One kind of fastener of one opening [in]: what it goes through, ``needed`` and sold ``length``, its way in."""

    what: str
    where: str
    fastener: str
    through: tuple[Through, ...]
    needed: float
    length: float | None
    penetration: float
    is_assumed: bool
    note: str = ""

    def words(self, job: Job) -> str:
        """Say the way of the fastener: ``jamb (3/4") + shims (1 7/8") + 1 1/4" into the framing``."""
        steps = [f"{one.name} ({length_text(one.thickness, units=job.units)})" for one in self.through]
        into = f"{length_text(self.penetration, units=job.units)} into the framing"
        return " + ".join([*steps, into])


def shim_places(length: float, grid: Grid) -> tuple[float, ...]:
    """Return where shims go along a side, from its first end [in]: near the ends, between them evenly."""
    if length <= 2 * FROM_END:
        return (grid.round(length / 2),)
    steps = max(1, whole_up((length - 2 * FROM_END) / SHIM_SPACING))
    return tuple(grid.round(FROM_END + at * (length - 2 * FROM_END) / steps) for at in range(steps + 1))


def shim_gaps(kit: Kit, job: Job) -> Sides:
    """Back of each extension jamb → rough opening [in]."""
    return box_gaps(interior_clear(kit.placement, job), kit.placement)


def install_fasteners(kit: Kit, job: Job) -> tuple[tuple[InstallFastener, ...], tuple[Finding, ...]]:
    """Plan all fasteners of one opening's trim; what the job does not state is assumed and marked so."""
    entries = {fixed: job.outside.fasteners.get(fixed) or _assumed_entry() for fixed in (Fixed.CASING, Fixed.BUCK)}
    outside = opening_fasteners(kit, entries, job)
    lines = [*_jamb_lines(kit, job), *_casing_lines(kit)]
    lines += [_outside_line(line, line.fixed not in job.outside.fasteners) for line in outside]
    return tuple(lines), tuple(finding for line in outside for finding in line.findings)


def _assumed_entry() -> FastenerEntry:
    return FastenerEntry.model_validate(ASSUMED_OUTSIDE)


def assumed_fasteners(lines: Sequence[InstallFastener], job: Job) -> tuple[Assumed, ...]:
    """List penetrations that nobody stated."""
    grid = job.shop.grid
    return tuple(
        Assumed(
            what=f"{line.what} fasteners",
            value=f"{line.fastener}, at least {grid.text(grid.up(line.penetration))} into the framing",
            why="common practice, the job does not say",
        )
        for line in lines
        if line.is_assumed
    )


def _line(
    what: str, where: str, fastener: str, through: tuple[Through, ...], penetration: float, note: str = ""
) -> InstallFastener:
    sold = find_sold(fastener)
    needed = sum(one.thickness for one in through) + penetration
    return InstallFastener(
        what=what,
        where=where,
        fastener=fastener,
        through=through,
        needed=needed,
        length=next_length(needed, sold.lengths if sold else ()),
        penetration=penetration,
        is_assumed=True,
        note=note,
    )


def _jamb_lines(kit: Kit, job: Job) -> list[InstallFastener]:
    """Through jamb and shim space on each side; sides of one length share a line."""
    if not any(part.kind is PartKind.EXTENSION_JAMB for part in kit.parts):
        return []
    gaps, thickness = shim_gaps(kit, job), kit.placement.opening.interior.jamb.thickness
    by_gap: dict[float, list[str]] = {}
    for side, gap in ((Side.LEFT, gaps.left), (Side.RIGHT, gaps.right), (Side.HEAD, gaps.head)):
        by_gap.setdefault(round(max(gap, 0.0), 6), []).append(side.board_words)
    lines = []
    for gap, sides in by_gap.items():
        through = (Through(name="jamb", thickness=thickness), Through(name="shims", thickness=gap), *_buck(kit))
        note = "a pair at every shim, near each edge; at the head only where the span is long"
        lines.append(_line("extension jamb", ", ".join(sides), JAMB_FASTENER, through, JAMB_PENETRATION, note))
    return lines


def _buck(kit: Kit) -> tuple[Through, ...]:
    """A liner buck lies between the shims and the framing."""
    buck = kit.placement.buck
    if buck is None or buck.kind is not BuckKind.LINER:
        return ()
    return (Through(name="liner buck", thickness=buck.thickness),)


def _casing_lines(kit: Kit) -> list[InstallFastener]:
    """Interior casing: its inner edge into the jamb, its outer edge through the wall finish into the framing."""
    thickness = kit.placement.opening.interior.casing.thickness
    casing = Through(name="casing", thickness=thickness)
    finish = [
        Through(name=one.layer.name, thickness=one.outer - one.inner)
        for one in kit.placement.planes.layers
        if one.outer <= kit.placement.planes.stud_face + ROUND_OFF and one.outer > one.inner
    ]
    note = "inner edge: short brads into the jamb's edge, clear of the corner"
    through = (casing, *finish)
    return [_line("interior casing", "outer edge", CASING_FASTENER, through, CASING_PENETRATION, note)]


def _outside_line(line: FastenerLine, is_assumed: bool) -> InstallFastener:
    what = "exterior casing" if line.fixed is Fixed.CASING else "buck"
    verdict = line.furring.words if line.furring else ""
    return InstallFastener(
        what=what,
        where=f"{line.count} in all" if line.count else "",
        fastener=line.fastener,
        through=line.through,
        needed=line.needed,
        length=line.length,
        penetration=line.needed - sum(one.thickness for one in line.through),
        is_assumed=is_assumed,
        note=verdict,
    )
