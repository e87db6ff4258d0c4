"""The answer to a reading at the opening: how wide each board is now, what to ask about, what is read next.

Every figure is the one that the cut sheet prints, from the same kit and the same record.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.findings import Severity
from jambs.job.measured.measures import reading_text
from jambs.job.measured.measuring_points import DEPTHS, LEANS, Kind, Place, measure_places, place_words, reading_at
from jambs.job.measured.reading_checks import ReadingQuestion
from jambs.job.models.openings import Job, SideDepths
from jambs.job.models.side_lines import TURNED
from jambs.length import Grid, Units, whole_down
from jambs.parts.board.kinds import PartKind, Where, run_words
from jambs.parts.board.part import Part
from jambs.parts.findings.mull_findings import FinishedReadOtherwise
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError, make_kit
from jambs.parts.mulls.mull import cut_to_finished
from jambs.parts.readings.as_built import planned_value, questions, without_odd_readings
from jambs.parts.readings.reading_findings import (
    FrameHigherAtOneSide,
    FrameRacked,
    FrameWiderAtOneEnd,
    ReadingsSetAside,
)
from jambs.parts.readings.wall_findings import (
    ArcIsScribed,
    CannotStandAsRead,
    MeasuredOffPlan,
    MeasuredTooShallow,
    SideRippedParallel,
    WallBends,
    WallTapers,
    WallThicknessOff,
    WallTwists,
    WallTwistsTooMuch,
)
from jambs.parts.trim.sides import ARC, edge_words
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.sheets.measure_sheet import planned_texts
from jambs.sheets.part_record import part_record
from jambs.sheets.part_rows import part_row
from jambs.sheets.wall_picture import wall_data
from jambs.sides import BoardEnd, Side
from jambs.values import Record

OF_READINGS = (
    CannotStandAsRead,
    FinishedReadOtherwise,
    ArcIsScribed,
    FrameHigherAtOneSide,
    FrameRacked,
    FrameWiderAtOneEnd,
    MeasuredOffPlan,
    MeasuredTooShallow,
    ReadingsSetAside,
    SideRippedParallel,
    WallBends,
    WallTapers,
    WallThicknessOff,
    WallTwists,
    WallTwistsTooMuch,
)
"""Findings that a reading can bring about, told to whoever reads the tape."""
MINUS, MINUS_PROUD = "−", "− proud"
"""What a length below zero means: a frame that stands out past the face; or the lower, the left, the outer way."""
LIKELY = 5
"""So many fractions around the planned one stand first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HowFar:
    """How far an opening is measured: a word, and whether boards may be cut by it."""

    word: str
    is_measured: bool = False


PLANNED, HALF, MEASURED, TO_CHECK = (
    HowFar(word="planned"),
    HowFar(word="half measured"),
    HowFar(word="measured", is_measured=True),
    HowFar(word="to check"),
)


def reading_answer(placement: Placement, job: Job) -> Record:
    """Return what is answered to the readings of an opening: texts only.

    ``placement``: where the window stands by plan; its opening has what was read so far.
    """
    asked = questions(placement, units=job.units)
    kit, wrong = _kit(placement, job)
    findings = [one for one in (kit.findings if kit else ()) if isinstance(one, OF_READINGS)]
    told = sorted(findings, key=lambda one: one.severity is Severity.NOTE)
    return {
        "state": state_of(placement, job.units).word,
        "boards": _boards(kit, job) if kit and kit.placement.opening.measured else [],
        "questions": [{"place": one.place.number, "text": one.words(units=job.units)} for one in asked],
        "caption": _caption(kit, asked, wrong),
        "told": [*wrong[1:], *_lengths(kit, job), *dict.fromkeys(one.sentence(job.units) for one in told)],
        "read": read_texts(placement, job.units),
        "sure": [*placement.opening.readings.sure] if placement.opening.readings else [],
        "next": next((place.number for place in asked_order(placement) if not _is_read(place, placement)), 0),
        "date": placement.opening.readings.date.isoformat() if placement.opening.readings else "",
        "by": (placement.opening.readings.by or "") if placement.opening.readings else "",
    }


def state_of(placement: Placement, units: Units) -> HowFar:
    """Say how far an opening is measured."""
    opening = placement.opening
    if opening.readings is None:
        return PLANNED
    if questions(placement, units=units):
        return TO_CHECK
    corners = [place for place in measure_places(opening) if place.kind is Kind.INTERIOR_DEPTH and place.is_corner]
    if all(_is_read(place, placement) for place in corners):
        return MEASURED
    return HALF if any(_is_read(place, placement) for place in measure_places(opening)) else PLANNED


def asked_order(placement: Placement) -> list[Place]:
    """Return the places in the order they are asked for: the corners inside first, then as they are numbered."""
    places = measure_places(placement.opening)
    return sorted(places, key=lambda place: (place.kind is not Kind.INTERIOR_DEPTH, not place.is_corner))


def read_texts(placement: Placement, units: Units) -> dict[str, str]:
    """Return what was read at each place, as it is typed; nothing of places that nobody read."""
    readings = placement.opening.readings
    found = {
        str(place.number): reading_text(place, reading_at(place, readings), units=units, mark=False)
        for place in measure_places(placement.opening)
    }
    return {number: text for number, text in found.items() if text}


def place_rows(placement: Placement, job: Job) -> list[Record]:
    """Return every place of an opening in the order it is asked for, with what the plan says and how it is entered."""
    planned = planned_texts(placement, job)
    return [
        {
            "number": place.number,
            "kind": place.kind.value,
            "words": place_words(place),
            "planned": planned[place.number],
            "is_depth": place.kind in DEPTHS,
            "is_inside": place.kind is Kind.INTERIOR_DEPTH,
            "is_corner": place.is_corner,
            "is_yes_or_no": place.kind is Kind.WALL_FINISH,
            "minus": MINUS_PROUD if place.kind in DEPTHS else MINUS if place.kind in LEANS else "",
            "likely": likely_fractions(planned_value(place, placement), job.shop.grid),
            "x": place.x,
            "y": place.y,
        }
        for place in asked_order(placement)
    ]


def fractions(grid: Grid) -> list[str]:
    """Return the fractions of an inch on the shop's grid, from the least; none where it is a metric one."""
    if grid.units is Units.MM:
        return []
    return [grid.text(grid.at(count), mark=False) for count in range(1, whole_down(1 / grid.step))]


def likely_fractions(planned: float | None, grid: Grid) -> list[str]:
    """Return the fractions nearest to that of a planned length [in], from the least; the whole inch is none of them."""
    if planned is None or grid.units is Units.MM:
        return []
    steps = whole_down(1 / grid.step)
    middle = grid.count(abs(planned)) % steps
    near = sorted(range(1, steps), key=lambda count: min((count - middle) % steps, (middle - count) % steps))[:LIKELY]
    return [grid.text(grid.at(count), mark=False) for count in sorted(near)]


def _is_read(place: Place, placement: Placement) -> bool:
    return reading_at(place, placement.opening.readings) is not None


def _kit(placement: Placement, job: Job) -> tuple[Kit | None, Sequence[str]]:
    """Return the kit that would be cut now; else why there is none."""
    try:
        return make_kit(without_odd_readings(placement, units=job.units), job), ()
    except PartsError as error:
        return None, error.sentences(job.units)


def _boards(kit: Kit, job: Job) -> list[Record]:
    """Return the extension jambs inside: each end's width, what it was cut by, and how the room edge is made."""
    measured = kit.placement.opening.measured
    depths = measured.interior_depth if measured else None
    wall = wall_data(kit, job)
    edges = {edge["words"]: edge["what"] for edge in wall["edges"]} if wall else {}
    jambs = [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.where is Where.INTERIOR]
    order = (Side.LEFT, Side.RIGHT, Side.HEAD, Side.SILL)
    arcs = {edge.side for edge in frame_path(kit.placement.opening) if edge.center}
    straight = [part for part in jambs if part.side not in arcs]
    curved = [part for part in jambs if part not in straight]
    return [
        *(
            _board(part, depths, edges, job.shop.grid)
            for part in sorted(straight, key=lambda part: order.index(part.side))
        ),
        *([_curved(curved[0], depths, edges, job.shop.grid)] if curved else []),
    ]


def _caption(kit: Kit | None, asked: Sequence[ReadingQuestion], wrong: Sequence[str]) -> str:
    """Say what the table of boards shows, or why it is empty; ``wrong``: what keeps the kit from being made."""
    if asked:
        return "No width until the question is answered"
    if kit is None:
        return f"No width: {wrong[0]}"
    if not kit.placement.opening.measured:
        return "No width yet: read the corners"
    jambs = [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.where is Where.INTERIOR]
    return "Width of the boards" if jambs else "No jambs to rip here"


def _lengths(kit: Kit | None, job: Job) -> list[str]:
    """Say how long the boards are that are cut to an opening which was read when it was finished."""
    boards = cut_to_finished(kit.parts, kit.placement.opening) if kit else []
    text = job.shop.grid.text
    return [f"{one.told}: {text(one.length)} long" for one in boards if not one.is_cut_to_opening]


def _board(part: Part, depths: SideDepths | None, edges: dict[str, str], grid: Grid) -> Record:
    row, side = part_row(part_record(part, grid=grid)), part.side
    widths = {one["at"]: one["width"] for one in row["taper"] or ()}
    ends = [end for end in (BoardEnd.LEFT, BoardEnd.RIGHT, BoardEnd.TOP, BoardEnd.BOTTOM) if end in part.seat.ends]
    read = dict(zip(part.seat.ends, _ends_read(depths, part), strict=True))
    run, runs = (part.member, part.runs) if part.runs else (1, 1)
    return {
        "words": side.board_words + run_words(run, runs),
        "ends": [{"at": end.words, "width": widths.get(end.value, row["width"]), "is_read": read[end]} for end in ends],
        "how": edges.get(edge_words(side, run, runs), ""),
    }


def _ends_read(depths: SideDepths | None, part: Part) -> tuple[bool, bool]:
    """Say of both ends of a board whether their depth was read, from its start to its finish."""
    if depths is None or not depths.points(part.side):
        return (False, False)
    read = depths.read(part.side)[depths.along(part.side, part.member if part.runs else 1)]
    first, last = read[0] is not None, read[-1] is not None
    return (last, first) if part.side in TURNED else (first, last)


def _curved(part: Part, depths: SideDepths | None, edges: dict[str, str], grid: Grid) -> Record:
    """Return the boards along arcs, which all have one width."""
    width = part_row(part_record(part, grid=grid))["width"]
    is_read = depths is not None and depths.has_read_ends(part.side)
    return {"words": ARC, "ends": [{"at": "all along", "width": width, "is_read": is_read}], "how": edges.get(ARC, "")}
