"""The boards between ganged units: mull casings and the casing of a transom bar, on the frames, inside and outside.

A cover lies on the edges of both frames, a frame reveal back from their faces, as the extension jambs stand round all
units. An upright one runs from the bottom of its row to its top, a transom bar from leg to leg.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.findings import Finding, Subject
from jambs.geometry import DOWN, INWARD, LEFT, OUTWARD, RIGHT, UP, tangent
from jambs.job.models.fields import Size
from jambs.job.models.gang import Gang, Mull, MullCasingEntry, MullKind
from jambs.job.models.openings import Opening
from jambs.job.models.windows import FrameFace, WindowType
from jambs.length import HALF_64TH, Grid
from jambs.parts.board.cuts import CannotBeCut, Crosscut, Cut, End, EndBevel, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import ToOpening
from jambs.parts.findings.mull_findings import FinishedReadOtherwise, MullCasingHasNoLap, MullCasingLapsShort
from jambs.parts.kit.kit import Figure, FigureKind
from jambs.parts.shapes.clear import ClearOpening, interior_clear
from jambs.place.along_mull import AlongMull
from jambs.place.flares import SQUARE, Flares
from jambs.sides import Side

TO_FINISHED = (PartKind.MULL_CASING, PartKind.TRANSOM_BAR_CASING, PartKind.STOOL)
"""Between returns these are cut to what the drywall crew made."""
LEAST_LAP = 1 / 4
"""A cover laps over each frame by at least this much [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover(AlongMull):
    """Where the board over a mull lies: its edges, and its ends at the frames [in]."""

    @property
    def lap(self) -> float:
        """How far it reaches over the frame that it covers least [in]."""
        return min(self.mull.low - self.low, self.high - self.mull.high)


def mull_covers(
    opening: Opening, clear: ClearOpening, *, reveal: float, grid: Grid, from_outside: bool = False
) -> tuple[Cover, ...]:
    """Lay a cover over every mull of an opening; ``clear``: what the ends of the covers meet, at the frames.

    ``reveal``: inner edge of a frame → edge of the cover [in]. Widths are put on the grid, and so are the
    places from the left leg and from the bottom.
    """
    gang = opening.gang
    if gang is None:
        return ()
    bars = [
        _cover(one, gang, clear.left, clear.right, clear.bottom, reveal, grid, from_outside)
        for one in gang.mulls
        if one.kind is MullKind.TRANSOM_BAR
    ]
    found = []
    for mull in gang.mulls:
        if mull.kind is MullKind.MULL:
            low = bars[mull.row - 1].high if mull.row else clear.bottom
            high = bars[mull.row].low if mull.row < len(bars) else clear.top
            found.append(_cover(mull, gang, low, high, clear.left, reveal, grid, from_outside))
    return (*found, *bars)


def _cover(
    mull: Mull,
    gang: Gang,
    start: float,
    finish: float,
    taped_from: float,
    reveal: float,
    grid: Grid,
    from_outside: bool,
) -> Cover:
    before, after = _faces_at(mull, gang, from_outside=from_outside)
    low = taped_from + grid.round(mull.low - before + reveal - taped_from)
    width = grid.round(before + mull.between + after - 2 * reveal)
    cover = Cover(mull=mull, low=low, high=low + width, start=start, finish=finish)
    if cover.lap <= 0:
        about = Subject.opening("")
        raise CannotBeCut(MullCasingHasNoLap(subject=about, reveal=reveal, face=min(before, after)))
    return cover


def _faces_at(mull: Mull, gang: Gang, *, from_outside: bool) -> tuple[float, float]:
    """Return the faces of the frames on both sides of a mull [in]."""
    before = _face(gang.unit(mull.before[0]).window, from_outside=from_outside)
    after = _face(gang.unit(mull.after[0]).window, from_outside=from_outside)
    return (before.right, after.left) if mull.kind is MullKind.MULL else (before.head, after.sill)


def _face(window: WindowType, *, from_outside: bool) -> FrameFace:
    return window.outside_face if from_outside else window.frame_face


def inside_covers(covers: Sequence[Cover], entry: MullCasingEntry, inside_edge: float, flares: Flares) -> list[Part]:
    """Make the covers inside; ``inside_edge``: depth of the frames' inside edges [in].

    Between flared jambs an end is beveled as the jamb leans.
    """
    room = inside_edge - entry.thickness
    parts = []
    for cover in covers:
        low, high = _leans(cover, covers, flares)
        out, up = (tangent(one) * entry.thickness for one in (low, high))
        start, length = cover.start - out, cover.length + out + up
        if cover.is_bar:
            seat = Seat(origin=(start, cover.low, room), along=RIGHT, across=UP, through=OUTWARD)
        else:
            seat = Seat(origin=(cover.high, start, room), along=UP, across=LEFT, through=OUTWARD)
        parts.append(_part(cover, covers, entry, Where.INTERIOR, (*_cuts(cover, length), *_bevels(low, high)), seat))
    return parts


def cut_to_opening(parts: Sequence[Part], opening: Opening) -> list[Part]:
    """Let boards wait for the opening that another crew finishes, until what they are cut to in it was read.

    A bar and a stool go by its width, an upright by its height.
    """
    if opening.interior.returns is None:
        return list(parts)
    width, height = (opening.readings.finished_opening if opening.readings else None) or (None, None)
    return [
        part
        if (height if part.kind is PartKind.MULL_CASING else width) is not None
        else replace(part, touches=(*part.touches, ToOpening()))
        for part in parts
    ]


def cut_to_finished(parts: Sequence[Part], opening: Opening) -> list[Part]:
    """Return the boards that are cut to an opening which another crew finishes, read or not."""
    is_lined = opening.interior.returns is not None
    return [one for one in parts if is_lined and one.where is Where.INTERIOR and one.kind in TO_FINISHED]


def outside_covers(
    covers: Sequence[Cover],
    entry: MullCasingEntry,
    outside_edge: float,
    slope_deg: float,
    flares: Flares = SQUARE,
    joint: float = 0.0,
) -> list[Part]:
    """Make the covers outside; ``outside_edge``: depth of the frames' outside edges [in].

    The foot of an upright one is beveled to the slope of the sill on which it stands. Between flared jambs, which
    begin a sealant ``joint`` farther out, an end is beveled as the jamb leans [in].
    """
    front, past = outside_edge + entry.thickness, entry.thickness - joint
    parts = []
    for cover in covers:
        low, high = _leans(cover, covers, flares)
        foot = 0.0 if cover.is_bar or cover.mull.row else slope_deg
        out, up = (tangent(one) * past for one in (low, high))
        down, low = tangent(foot) * entry.thickness + out, low or foot
        if cover.is_bar:
            seat = Seat(origin=(cover.start - down, cover.high, front), along=RIGHT, across=DOWN, through=INWARD)
        else:
            seat = Seat(origin=(cover.low, cover.start - down, front), along=UP, across=RIGHT, through=INWARD)
        cuts = (*_cuts(cover, cover.length + down + up), *_bevels(low, high))
        parts.append(_part(cover, covers, entry, Where.EXTERIOR, cuts, seat))
    return parts


def _leans(cover: Cover, covers: Sequence[Cover], flares: Flares) -> tuple[float, float]:
    """Return how far what stands at its start and at its finish leans out [degrees]; a bar stands square."""
    if flares is SQUARE:
        return 0.0, 0.0
    if cover.is_bar:
        return flares.at(Side.LEFT), flares.at(Side.RIGHT)
    bars = sum(one.is_bar for one in covers)
    low = 0.0 if cover.mull.row else flares.at(Side.SILL)
    return low, 0.0 if cover.mull.row < bars else flares.at(Side.HEAD)


def _cuts(cover: Cover, length: float) -> tuple[Cut, ...]:
    return (Rip(width=cover.width), Crosscut(length=length))


def _bevels(start_deg: float, finish_deg: float) -> tuple[Cut, ...]:
    found = ((End.START, start_deg), (End.FINISH, finish_deg))
    return tuple(EndBevel(end=end, angle_deg=angle) for end, angle in found if angle)


def _part(
    cover: Cover,
    covers: Sequence[Cover],
    entry: MullCasingEntry,
    where: Where,
    cuts: tuple[Cut, ...],
    seat: Seat,
) -> Part:
    return Part(
        kind=PartKind.TRANSOM_BAR_CASING if cover.is_bar else PartKind.MULL_CASING,
        side=Side.HEAD if cover.is_bar else Side.LEFT,
        where=where,
        member=cover.mull.member,
        members=sum(one.is_bar is cover.is_bar for one in covers),
        blank=PartBlank(stock=entry.stock, thickness=entry.thickness),
        cuts=cuts,
        seat=seat,
    )


def cover_figures(covers: Sequence[Cover], clear: ClearOpening) -> tuple[Figure, ...]:
    """Return where each cover lies inside, taped from the left leg, or from the bottom of the clear opening."""
    return tuple(
        Figure(kind=FigureKind.TRANSOM_BAR_UP, value=one.low - clear.bottom, note="bottom of the opening to its edge")
        if one.is_bar
        else Figure(
            kind=FigureKind.MULL_ACROSS,
            value=one.low - clear.left,
            note=f"face at the left to {_taped_to(one)}, units {one.mull.before[0]} and {one.mull.after[0]}",
        )
        for one in covers
    )


def _taped_to(cover: Cover) -> str:
    return "the face of its left jamb" if cover.mull.boxed_inside else "the edge of its casing"


def finished_findings(clear: ClearOpening, opening: Opening, grid: Grid) -> list[Finding]:
    """Say where an opening that another crew finished was read otherwise than planned; ``clear``: as it is [in]."""
    planned = interior_clear(opening, grid)
    if abs(planned.width - clear.width) <= HALF_64TH and abs(planned.height - clear.height) <= HALF_64TH:
        return []
    sizes = Size(width=clear.width, height=clear.height), Size(width=planned.width, height=planned.height)
    return [FinishedReadOtherwise(subject=Subject.opening(opening.mark), read=sizes[0], planned=sizes[1])]


def cover_findings(covers: Sequence[Cover], mark: str) -> list[Finding]:
    """Find where a cover hardly reaches over the frames."""
    about = Subject.opening(mark)
    short = {one.lap for one in covers if one.lap < LEAST_LAP}
    return [MullCasingLapsShort(subject=about, lap=min(short), least=LEAST_LAP)] if short else []
