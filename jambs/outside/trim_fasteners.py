"""How the trim and the buck of one opening are fastened: through what, how long; what the job leaves open, assumed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from jambs.fasten.fastener_words import FRAMING, TARGETS
from jambs.fasten.findings import NoTrimFastenerLongEnough
from jambs.fasten.plan import FIXED_ROUND_OPENINGS, FastenerLine, opening_fasteners
from jambs.fasten.reach import Through, find_sold
from jambs.findings import Finding, Subject
from jambs.job.models.layers import Role
from jambs.job.models.openings import Job
from jambs.job.models.outside import FastenerEntry, Fixed
from jambs.length import FINE, FRAMING_GRIDS, HALF_64TH, MM_PER_INCH, Grid, Units, whole_up
from jambs.outside.fastener_line import (
    CASING_FASTENER,
    CASING_PENETRATION,
    JAMB_FASTENER,
    JAMB_PENETRATION,
    Fastened,
    InstallFastener,
    computed_line,
    wall_finish,
)
from jambs.outside.other_fasteners import FURRING_FASTENER, liner_buck, other_lines, window_line
from jambs.outside.wood_behind_words import wood_words
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.listing import marks_listed
from jambs.parts.board.part import Part
from jambs.parts.clad_checks import insulation_behind_returns
from jambs.parts.jambs.box import box_gaps
from jambs.parts.kit.backing import BackingKind, backing_of
from jambs.parts.kit.kit import JambFrame, Kit
from jambs.place.placement import Sides
from jambs.sides import Side

FROM_END = {Units.INCH: 4.0, Units.MM: 100 / MM_PER_INCH}
SHIM_SPACING = {Units.INCH: 16.0, Units.MM: 400 / MM_PER_INCH}
"""First shims from a corner, and the most between two pairs [in]; common practice, no source."""
SHIM_GRID = {Units.INCH: FRAMING_GRIDS["1/2"], Units.MM: FRAMING_GRIDS["10 mm"]}
"""Nobody reads a place for shims finer."""
ASSUMED_OUTSIDE = {
    Units.INCH: {"fastener": "long wood screw", "penetration": "1 1/2", "spacing": "16"},
    Units.MM: {"fastener": "long wood screw", "penetration": "40 mm", "spacing": "400 mm"},
}
"""Where the job does not say how casing, buck and return furring are fastened; common practice, no source."""
OUTSIDE = {
    Fixed.CASING: Fastened.EXTERIOR_CASING,
    Fixed.BUCK: Fastened.BUCK,
    Fixed.RETURN_FURRING: Fastened.RETURN_FURRING,
}


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
    """Plan all fasteners of one opening: of the window, its trim, what other crews leave, its buck.

    What the job does not state is assumed and marked so.
    """
    lines = [
        window_line(kit, job.units),
        *_jamb_lines(kit, job),
        *_casing_lines(kit, job.units),
        *other_lines(kit, job),
    ]
    lines += [_outside_line(line, line.fixed not in job.outside.fasteners) for line in buck_and_casing(kit, job)]
    return tuple(lines)


def buck_and_casing(kit: Kit, job: Job) -> tuple[FastenerLine, ...]:
    """Plan the fasteners of exterior casing, buck and return furring, as the job has them or as they are assumed.

    Of furring on the cut edge of insulation nothing can be assumed: the job says what holds it there.
    """
    stated = job.outside.fasteners
    entries = {fixed: stated.get(fixed) or _assumed_entry(fixed, job.units) for fixed, _ in FIXED_ROUND_OPENINGS}
    if Fixed.RETURN_FURRING not in stated and insulation_behind_returns(kit.placement):
        del entries[Fixed.RETURN_FURRING]
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


def _assumed_entry(fixed: Fixed, units: Units) -> FastenerEntry:
    own = {"fastener": FURRING_FASTENER} if fixed is Fixed.RETURN_FURRING else {}
    return FastenerEntry.model_validate({**ASSUMED_OUTSIDE[units], **own})


def _jamb_lines(kit: Kit, job: Job) -> list[InstallFastener]:
    """Through jamb and shim space on each side of every jamb frame; sides of one length share a line."""
    return [line for frame in kit.frames for line in _frame_lines(frame, kit, job)]


def _frame_lines(frame: JambFrame, kit: Kit, job: Job) -> list[InstallFastener]:
    gaps, thickness = box_gaps(frame.clear, kit.placement), kit.placement.opening.interior.jamb.thickness
    what = Fastened.JAMB.value + (f", frame {frame.member}" if len(kit.frames) > 1 else "")
    jambs = [part for part in kit.parts if _is_of(part, frame)]
    by_gap: dict[float, list[Side]] = {}
    for side in (Side.LEFT, Side.RIGHT, Side.HEAD, Side.SILL):
        if any(part.side is side for part in jambs):
            gap = FINE[job.units].round(job.shop.grid.as_sawn(max(getattr(gaps, side.value), 0.0)))
            by_gap.setdefault(gap, []).append(side)
    return [
        computed_line(
            kind=Fastened.JAMB,
            what=what,
            where=_where(sides, jambs),
            fastener=JAMB_FASTENER,
            through=(Through(name="jamb", thickness=thickness), Through(name="shims", thickness=gap), *liner_buck(kit)),
            into=JAMB_PENETRATION,
            units=job.units,
            note=_jamb_note(sides, kit, job.units) + _nailed(sides, gap, kit, job),
            sides=tuple(sides),
        )
        for gap, sides in by_gap.items()
    ]


def _is_of(part: Part, frame: JambFrame) -> bool:
    """Say whether a part is a jamb of a frame; the boards of a shape count their runs, and are of the only one."""
    is_jamb = part.kind is PartKind.EXTENSION_JAMB and part.where is Where.INTERIOR
    return is_jamb and (part.runs is not None or part.member == frame.member)


def _where(sides: Sequence[Side], jambs: Sequence[Part]) -> str:
    """Name the sides; where one is parted into several boards, all boards by their marks."""
    own = [part for part in jambs if part.side in sides]
    if any(part.runs for part in own):
        return marks_listed(part.mark for part in own)
    return ", ".join(side.board_words for side in sides)


def _jamb_note(sides: Sequence[Side], kit: Kit, units: Units) -> str:
    wood, is_shaped = wood_words(kit, units), kit.placement.opening.shape is not None
    notes = ["a pair at every shim" if wood else "a pair at every shim, near each edge"]
    if Side.HEAD in sides and not is_shaped:
        notes.append("at the head only where the span is long")
    if Side.SILL in sides and not is_shaped:
        notes.append("at the bottom in line with the head")
    return "; ".join([*notes, wood] if wood else notes)


def _nailed(sides: Sequence[Side], gap: float, kit: Kit, job: Job) -> str:
    """Say what screws near the room edge pass where a nailer takes some of the shim space [in]; not of flared jambs."""
    wide = [one.width for one in backing_of(kit) if one.kind is BackingKind.NAILER and one.side in sides]
    if not wide or kit.flares:
        return ""
    nailer, text = min(max(wide), gap), job.shop.grid.text
    shims = f"shims ({text(gap - nailer)}) + " if gap - nailer > HALF_64TH else ""
    return f"; near the room edge through jamb + {shims}nailer ({text(nailer)}): as long"


def _casing_lines(kit: Kit, units: Units) -> list[InstallFastener]:
    """Interior casing: its inner edge into the jamb, its outer edge through the wall finish into the framing."""
    if not kit.placement.opening.interior.is_cased or (kit.run and not kit.run.is_lead):
        return []
    thickness = kit.placement.opening.interior.casing.thickness
    casing = Through(name="casing", thickness=thickness)
    note = "inner edge: short brads into the jamb's edge, clear of the corner"
    if any(one.layer.role is Role.CAVITY for one in kit.placement.planes.layers):
        note += "; outer edge: through the service cavity, look for cables and pipes"
    return [
        computed_line(
            kind=Fastened.INTERIOR_CASING,
            where="outer edge",
            fastener=CASING_FASTENER,
            through=(casing, *wall_finish(kit)),
            into=CASING_PENETRATION,
            units=units,
            note=note,
        )
    ]


def _outside_line(line: FastenerLine, is_assumed: bool) -> InstallFastener:
    kind = OUTSIDE[line.fixed]
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
        target=TARGETS.get(line.fixed, FRAMING),
    )
