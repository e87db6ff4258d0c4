"""What holds the rest of an opening: the window, furring and returns, stool and apron, mulls, members of a casing.

Only what the kit has is listed. How a window or a bead is fastened its maker says, not this house.
"""

from __future__ import annotations

from collections.abc import Iterator

from jambs.fasten.fastener_words import through_words
from jambs.fasten.reach import Through, layers_to_framing
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Job
from jambs.job.models.outside import Fixed
from jambs.length import HALF_64TH, MM_PER_INCH, Units
from jambs.outside.fastener_line import (
    CASING_FASTENER,
    CASING_PENETRATION,
    JAMB_FASTENER,
    JAMB_PENETRATION,
    Fastened,
    InstallFastener,
    computed_line,
    stated_line,
    wall_finish,
)
from jambs.parts.board.kinds import BUILT_UP, PartKind, Where
from jambs.parts.board.listing import marks_listed
from jambs.parts.board.part import Part
from jambs.parts.clad_checks import insulation_behind_returns
from jambs.parts.jambs.box import box_gaps
from jambs.parts.kit.backing import Backing, BackingKind, backing_of
from jambs.parts.kit.kit import Kit

FURRING_FASTENER, RETURN_FASTENER = "framing screw", "drywall screw"
FURRING_PENETRATION = {Units.INCH: 1.5, Units.MM: 40 / MM_PER_INCH}
"""Of a screw through furring or a nailer, into framing [in]; common practice, no source."""
RETURN_PENETRATION = {Units.INCH: 5 / 8, Units.MM: 16 / MM_PER_INCH}
"""Of a drywall screw through board, into wood [in]: ASTM C840, 5/8 in, from memory."""
BY_MAKER = "as the maker of the {} says"


def window_line(kit: Kit, units: Units) -> InstallFastener:
    """Say what holds the window, and into what; kind, number and distances are its maker's."""
    placement = kit.placement
    opening, buck = placement.opening, placement.buck
    has_flange = opening.window.nailing_flange
    into = "the framing beside the frame"
    if buck:
        into = f"the {buck.kind.value} buck"
    elif has_flange:
        names = [through_words(one, units) for one in layers_to_framing(placement.planes, placement.flange_plane)]
        into = f"the framing, through {', '.join(names)}" if names else "the framing"
    told = "kind, length, spacing and distance from the corners"
    note = "every unit by itself" if opening.gang else ""
    if opening.floor_below_frame is not None:
        note = "; ".join(one for one in (note, "the threshold too") if one)
    return stated_line(
        kind=Fastened.FLANGE if has_flange else Fastened.CLIPS,
        says=_by_maker(kit),
        way=f"{told}; into {into}",
        note=note,
    )


def _by_maker(kit: Kit) -> str:
    opening = kit.placement.opening
    if opening.gang:
        return BY_MAKER.format("units")
    return BY_MAKER.format("window" if opening.floor_below_frame is None else "door")


def other_lines(kit: Kit, job: Job) -> Iterator[InstallFastener]:
    """Return the fasteners of all that is neither jamb, casing nor buck, in the order of the work."""
    yield from _backing_lines(kit, job.units)
    yield from _return_lines(kit, job.units)
    yield from _sill_lines(kit, job.units)
    yield from _mull_lines(kit, job.units)
    yield from _member_lines(kit)
    yield from _clad_lines(kit, job)


def _backing_lines(kit: Kit, units: Units) -> Iterator[InstallFastener]:
    """Screw furring and nailers to the framing; sides of one thickness share a line."""
    by_width: dict[tuple[BackingKind, float], list[Backing]] = {}
    for one in backing_of(kit):
        by_width.setdefault((one.kind, round(one.width, 6)), []).append(one)
    for (kind, width), some in by_width.items():
        is_furring = kind is BackingKind.FURRING
        yield computed_line(
            kind=Fastened.FURRING if is_furring else Fastened.NAILER,
            where=", ".join(_furred(one) for one in some),
            fastener=FURRING_FASTENER,
            through=(Through(name="furring" if is_furring else "nailer", thickness=width),),
            into=FURRING_PENETRATION,
            units=units,
            sides=tuple(one.side for one in some),
            note="two in a row, near front and back; more than one layer: each to the one before it"
            if is_furring
            else "",
        )


def _furred(one: Backing) -> str:
    """Name a side that is furred out: a board's, or the sill, which no board returns."""
    return one.side.words if one.under else one.side.board_words


def _return_lines(kit: Kit, units: Units) -> Iterator[InstallFastener]:
    entry = kit.placement.opening.interior.returns
    boards = _parts(kit, PartKind.RETURN, Where.INTERIOR)
    if entry and boards:
        yield computed_line(
            kind=Fastened.RETURN,
            where=", ".join(dict.fromkeys(part.position for part in boards)),
            fastener=RETURN_FASTENER,
            through=(Through(name=entry.material, thickness=entry.thickness),),
            into=RETURN_PENETRATION,
            units=units,
            target="furring or framing",
            note="spaced as in the wall board",
        )
    if kit.drywall and kit.drywall.beads:
        names = dict.fromkeys(bead.kind.value for bead in kit.drywall.beads)
        yield stated_line(kind=Fastened.BEADS, says=BY_MAKER.format("bead"), way=", ".join(names))


def _sill_lines(kit: Kit, units: Units) -> Iterator[InstallFastener]:
    """Nail the stool down through its shims, the apron through the wall finish."""
    trim = kit.placement.opening.interior
    is_furred = any(one.under for one in backing_of(kit))
    if trim.stool and _parts(kit, PartKind.STOOL, Where.INTERIOR) and kit.frames:
        gap = max(box_gaps(kit.frames[-1].clear, kit.placement).sill, 0.0)
        stool = Through(name="stool", thickness=trim.stool.thickness)
        shims = (Through(name="shims", thickness=gap),) if gap > HALF_64TH else ()
        stands = (
            "leg" if any(one.side.is_leg for one in _parts(kit, PartKind.EXTENSION_JAMB, Where.INTERIOR)) else "jamb"
        )
        yield computed_line(
            kind=Fastened.STOOL,
            fastener=CASING_FASTENER,
            through=(stool, *shims, *liner_buck(kit)),
            into=CASING_PENETRATION,
            units=units,
            target="the rough sill",
            note=f"down through it at the shims, bored first; each {stands} with two brads slanted through its foot "
            "into it",
        )
    elif trim.stool and _parts(kit, PartKind.STOOL, Where.INTERIOR):
        yield stated_line(
            kind=Fastened.STOOL,
            says="construction adhesive" if is_furred else "construction adhesive on shims",
            way=f"level on the {'furring' if is_furred else 'rough sill'}; brads only where casing or bead hides them",
        )
    if trim.apron and _parts(kit, PartKind.APRON, Where.INTERIOR):
        yield computed_line(
            kind=Fastened.APRON,
            fastener=CASING_FASTENER,
            through=(Through(name="apron", thickness=trim.apron.thickness), *wall_finish(kit)),
            into=CASING_PENETRATION,
            units=units,
            note="along its lower edge; glue and brads down through the stool along its upper edge",
        )


def liner_buck(kit: Kit) -> tuple[Through, ...]:
    """A liner buck lies between the shims and the framing."""
    buck = kit.placement.buck
    if buck is None or buck.kind is not BuckKind.LINER:
        return ()
    return (Through(name="liner buck", thickness=buck.thickness),)


def _mull_lines(kit: Kit, units: Units) -> Iterator[InstallFastener]:
    """Hold the boards between units: jambs to the blocks of their box, covers as the makers of frame and post allow."""
    for where in (Where.INTERIOR, Where.EXTERIOR):
        jambs = _parts(kit, PartKind.MULL_JAMB, where)
        covers = [*_parts(kit, PartKind.MULL_CASING, where), *_parts(kit, PartKind.TRANSOM_BAR_CASING, where)]
        if kit.run:
            yield from _on_wall(kit, covers, units) if where is Where.INTERIOR else ()
            continue
        if jambs:
            yield computed_line(
                kind=Fastened.MULL_JAMB,
                where=f"{where.value}, {_marks(jambs)}",
                fastener=JAMB_FASTENER,
                through=(Through(name="jamb", thickness=jambs[0].thickness),),
                into=JAMB_PENETRATION,
                units=units,
                target="the blocks",
                note="the blocks stand between the two jambs; a pair of screws at every block",
                is_inside=where is Where.INTERIOR,
            )
        if covers and jambs:
            yield stated_line(
                kind=Fastened.MULL_CASING,
                where=f"{where.value}, {_marks(covers)}",
                says="glue and brads",
                way="into the edges of the mull jambs, clear of their faces",
                is_inside=where is Where.INTERIOR,
            )
        elif covers:
            yield stated_line(
                kind=Fastened.MULL_CASING,
                where=f"{where.value}, {_marks(covers)}",
                says=_by_maker(kit),
                way="into post or transom bar where there is one, else into the frames as far as their maker allows",
                note="no screw into a sash, a drain or a seal",
                is_inside=where is Where.INTERIOR,
            )


def _on_wall(kit: Kit, covers: list[Part], units: Units) -> Iterator[InstallFastener]:
    """Hold the boards on the wall between openings that are trimmed as one; outside they count as casing."""
    if covers:
        yield computed_line(
            kind=Fastened.MULL_CASING,
            where=f"interior, {_marks(covers)}",
            fastener=CASING_FASTENER,
            through=(Through(name="casing", thickness=covers[0].thickness), *wall_finish(kit)),
            into=CASING_PENETRATION,
            units=units,
            note="into the studs of the wall between; both edges: short brads into the jambs' edges",
        )


def _member_lines(kit: Kit) -> Iterator[InstallFastener]:
    members = [part for part in kit.parts if part.kind in BUILT_UP and part.where is Where.INTERIOR]
    if members:
        yield stated_line(
            kind=Fastened.MEMBERS,
            where=", ".join(dict.fromkeys(part.kind.words for part in members)),
            says="glue and brads",
            way="into the member below or behind, long enough to reach the framing where it is thick",
            note="clear of miters and of each other's edges",
        )


def _clad_lines(kit: Kit, job: Job) -> Iterator[InstallFastener]:
    """Hold cladding in the reveal to its furring; and say of furring that nothing behind it holds what it waits for."""
    boards = _parts(kit, PartKind.CLADDING_RETURN, Where.EXTERIOR)
    if not boards:
        return
    corners = _parts(kit, PartKind.CORNER_BOARD, Where.EXTERIOR)
    yield stated_line(
        kind=Fastened.CLADDING_RETURN if corners else Fastened.CLADDING_RETURN_ALONE,
        says="as the cladding of the wall",
        way="into the furring, no longer than boards and furring together",
        note="of a kind that does not rust; not through two boards at once",
        is_inside=False,
    )
    if Fixed.RETURN_FURRING not in job.outside.fasteners and insulation_behind_returns(kit.placement):
        yield stated_line(
            kind=Fastened.RETURN_FURRING,
            says="screws sized for it",
            way="into what is behind it: insulation holds none, see the check",
            note="state it under fasteners: return furring, and it is counted",
            is_inside=False,
        )


def _parts(kit: Kit, kind: PartKind, where: Where) -> list[Part]:
    return [part for part in kit.parts if part.kind is kind and part.where is where]


def _marks(parts: list[Part]) -> str:
    return marks_listed(part.mark for part in parts)
