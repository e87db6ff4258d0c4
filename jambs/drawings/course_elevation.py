"""One side of the house with its courses, its openings, and the heads and sills that no course line meets."""

from __future__ import annotations

from itertools import groupby, pairwise
from pathlib import Path

from jambs.courses.cladding_words import cladding_words, limit_words
from jambs.courses.elevation import OpeningOnElevation
from jambs.courses.plan import CourseLine, CoursePlan, Missed
from jambs.courses.plan_words import cure_words, proof_words, start_cure_words
from jambs.courses.views import clear_runs
from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import PAGES
from jambs.drawings.elements.view import CallOut, Chain, Ink, Interval, Mark, Shape, View, ViewSide
from jambs.drawings.layout.packing import room_on
from jambs.drawings.plates import fitted, write_plate
from jambs.issue_stamp import IssueStamp
from jambs.length import HALF_64TH, feet_text
from jambs.parts.kit.on_elevation import Box as Corners

EVERY = 5
"""A course that meets nothing is called out if its number is a multiple of this; the story pole lists them all."""
PAST_TRIM = 6.0
"""A missed head or sill is drawn past its opening's trim by this [in]."""
MARGIN = 24.0
"""From the outermost opening to the end of the courses where the width is unknown [in]."""


def course_elevation(plan: CoursePlan) -> View:
    """Return the view of an elevation as seen from outside: x from its left corner, y over the ground floor [in]."""
    left, right = ends_of(plan)
    elevation = plan.elevation
    wall = (left, elevation.start_line, right, elevation.eave)
    return View(
        name=f"elevation {elevation.name}",
        title=f"Elevation {elevation.name}",
        shapes=(_outline(wall, Ink.SEEN_OUTSIDE), *_courses(plan, left, right), *_openings(plan), *_missed(plan)),
        chains=tuple(_positions(plan, left, right)),
        call_outs=(*_course_call_outs(plan, right), *_missed_call_outs(plan), _floor(left)),
        marks=tuple(_mark(one) for one in elevation.openings),
        remarks=tuple(remarks_of(plan)),
    )


def write_course_elevation(plan: CoursePlan, path: Path, *, issue: IssueStamp) -> None:
    """Write an elevation with its courses as DXF at true size, its texts sized for the scale in its title."""
    units = plan.grid.units
    room = room_on(PAGES[units][0])
    placed = fitted(course_elevation(plan), units=units, width=room.width, height=room.height)
    write_plate([placed], units=units, path=path, issue=issue)


def ends_of(plan: CoursePlan) -> tuple[float, float]:
    """Return the left and right end of the courses [in]; where the job gives no width, a margin past the openings."""
    elevation = plan.elevation
    return 0.0, elevation.width or max((one.trim[2] for one in elevation.openings), default=0.0) + MARGIN


def remarks_of(plan: CoursePlan) -> list[str]:
    """Return what is said under the elevation: cladding, proof, and for each missed line its cure."""
    cladding, units = plan.cladding, plan.grid.units
    said = [f"{cladding_words(cladding, units)}; {limit_words(cladding, units)}.", proof_words(plan)]
    said += [missed_words(plan, one) for one in plan.missed]
    return said + ([f"Or {start_cure_words(plan)}."] if plan.start_move else [])


def missed_words(plan: CoursePlan, missed: Missed) -> str:
    """Say which height is missed, by how much, and what would cure it."""
    cure = cure_words(missed, plan.grid) or "no single move brings it onto a line"
    return f"{missed.wanted.words}: {off_words(plan, missed)}. Remedy: {cure}."


def off_words(plan: CoursePlan, missed: Missed) -> str:
    """Say how far the nearest course line is: ``nearest line 11/16" above``."""
    return f"nearest line {plan.grid.text(abs(missed.off))} {'above' if missed.off > 0 else 'below'}"


def _outline(corners: Corners, ink: Ink) -> Shape:
    left, bottom, right, top = corners
    return Shape(points=((left, bottom), (right, bottom), (right, top), (left, top)), ink=ink)


def _courses(plan: CoursePlan, left: float, right: float) -> list[Shape]:
    """Every course line but the ends of the cladding, cut out at the trim."""
    return [
        Shape(points=((start, line.height), (end, line.height)), ink=Ink.COURSE, closed=False)
        for line in plan.lines[1:-1]
        for start, end in clear_runs((left, right), line.height, plan.elevation.openings)
    ]


def _openings(plan: CoursePlan) -> list[Shape]:
    trims = [_seen(one, one.trim, Ink.TRIM_OUTSIDE) for one in plan.elevation.openings]
    return trims + [_seen(one, one.frame, Ink.WINDOW) for one in plan.elevation.openings]


def _seen(one: OpeningOnElevation, box: Corners, ink: Ink) -> Shape:
    """Draw the frame or the trim of an opening: a rectangle, or the outline it has."""
    if one.outlines is None:
        return _outline(box, ink)
    return Shape(points=one.outlines[ink is Ink.TRIM_OUTSIDE], ink=ink)


def _positions(plan: CoursePlan, left: float, right: float) -> list[Chain]:
    """Dimension where frames stand, from the left corner to the end of the wall; those over each other in rows."""
    rows: list[list[tuple[float, float]]] = []
    for start, end in sorted({(one.frame[0], one.frame[2]) for one in plan.elevation.openings}):
        row = next((row for row in rows if row[-1][1] <= start), None)
        if row is None:
            rows.append([(start, end)])
        else:
            row.append((start, end))
    level = plan.elevation.start_line
    chains = []
    for row in rows:
        stops = [left, *(x for span in row for x in span), right]
        pairs = [(one, two) for one, two in pairwise(stops) if two - one > HALF_64TH]
        intervals = tuple(Interval(start=(one, level), finish=(two, level)) for one, two in pairs)
        chains.append(Chain(side=ViewSide.BOTTOM, intervals=intervals, after="frames", is_main=True))
    return chains


def _missed(plan: CoursePlan) -> list[Shape]:
    shapes = []
    for one in plan.missed:
        start, end = _missed_ends(plan, one)
        height = one.wanted.height
        shapes.append(Shape(points=((start, height), (end, height)), ink=Ink.MISSED, closed=False))
    return shapes


def _missed_ends(plan: CoursePlan, missed: Missed) -> tuple[float, float]:
    trims = {one.mark: one.trim for one in plan.elevation.openings}
    left, right = ends_of(plan)
    if missed.wanted.mark not in trims:
        return left, right
    trim = trims[missed.wanted.mark]
    return max(trim[0] - PAST_TRIM, left), min(trim[2] + PAST_TRIM, right)


def _course_call_outs(plan: CoursePlan, right: float) -> list[CallOut]:
    last = plan.lines[-1]
    shown = [
        line for line in plan.lines if line in (plan.lines[0], last) or line.meets or (line.number - 1) % EVERY == 0
    ]
    return [_call_out((right, line.height), _course_words(plan, line), ViewSide.RIGHT) for line in shown]


def _course_words(plan: CoursePlan, line: CourseLine) -> str:
    """Call a course line by the course under it, as the story pole does."""
    running = feet_text(line.running, units=plan.grid.units, least=0.0)
    name = f"top of {line.number - 1}" if line.exposure is not None else "start line"
    return ", ".join([running, name, *(wanted.words for wanted in line.meets)])


def _missed_call_outs(plan: CoursePlan) -> list[CallOut]:
    """Call out every height that is missed once, at the end of the wall: a leader into it would strike openings."""
    found: list[CallOut] = []
    left, _ = ends_of(plan)
    for height, alike in groupby(sorted(plan.missed, key=_height), key=_height):
        words = "\n".join(f"{one.wanted.words} missed" for one in alike)
        found.append(_call_out((left, height), words, ViewSide.LEFT))
    return found


def _height(missed: Missed) -> float:
    return missed.wanted.height


def _floor(left: float) -> CallOut:
    return _call_out((left, 0.0), "ground floor", ViewSide.LEFT)


def _call_out(target: tuple[float, float], words: str, side: ViewSide) -> CallOut:
    return CallOut(target=target, lines=tuple(words.split("\n")), side=side, short=words)


def _mark(one: OpeningOnElevation) -> Mark:
    left, bottom, right, top = one.frame
    call_out = _call_out(((left + right) / 2, (bottom + top) / 2), one.mark, ViewSide.RIGHT)
    return Mark(text=one.mark, room=Box(left, bottom, right, top), call_out=call_out)
