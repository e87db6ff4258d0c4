"""The papers of the outside: story poles and elevations as DXF; courses, flashing, fasteners, moving wood as PDF."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.app.chain import Unbuildable
from jambs.courses.plan import CoursePlan
from jambs.courses.story_pole import story_pole
from jambs.drawings.course_elevation import course_elevation, write_course_elevation
from jambs.drawings.elements.view import View
from jambs.drawings.plates import plate_picture
from jambs.drawings.poles import write_story_pole
from jambs.drawings.views.bends import bent_view, flat_view
from jambs.drawings.views.laps import laps_view
from jambs.flashing.blank import Blank
from jambs.flashing.make import Flashings
from jambs.issue_stamp import IssueStamp
from jambs.job import Job
from jambs.outside.house import PlannedHouse
from jambs.outside.plan import PlannedOutside
from jambs.outside.register import Register
from jambs.parts.kit.kit import Kit
from jambs.sheets.course_sheets import ROOM, ElevationPaper, write_course_sheets
from jambs.sheets.fastener_sheets import write_fastener_sheets, write_fasteners_csv
from jambs.sheets.flashing_sheets import (
    BENT_SHARE,
    BLANK_ROOM,
    LAPS_ROOM,
    BlankPaper,
    LapsPaper,
    bent_alike,
    lapped_alike,
    write_blanks_csv,
    write_flashing_sheets,
)
from jambs.sheets.movement_sheets import write_movement_sheet
from jambs.sheets.pictures import GAP, Picture, PictureError
from jambs.sheets.press import PressError


def write_outside(house: PlannedHouse, job: Job, folder: Path, *, issue: IssueStamp) -> None:
    """Write the papers of the outside into a folder of their own; none where the job says nothing of it.

    Raises:
        Unbuildable: a paper cannot be made.
    """
    outside, register = house.outside, house.register
    if outside.is_empty:
        return
    folder.mkdir(parents=True)
    try:
        _write_courses(outside.courses, register, job, folder, issue)
        _write_flashing(house, job, folder, issue.text)
        _write_fasteners(outside, register, job, folder, issue.text)
        _write_movement(outside, register, job, folder, issue.text)
    except (ValueError, PictureError, PressError) as error:
        raise Unbuildable(f"outside: {error}") from error


def _write_courses(
    courses: Sequence[CoursePlan], register: Register, job: Job, folder: Path, issue: IssueStamp
) -> None:
    if not courses:
        return
    width, height = ROOM[job.shop.paper]
    papers = []
    for plan in courses:
        name = plan.elevation.name
        write_story_pole(story_pole(plan), units=job.units, path=folder / f"story pole {name}.dxf", issue=issue)
        write_course_elevation(plan, folder / f"elevation {name}.dxf", issue=issue)
        picture = _picture(course_elevation(plan), job, width, height)
        papers.append(ElevationPaper(plan=plan, picture=picture))
    write_course_sheets(papers, register, job, folder / "courses and story poles.pdf", stamp=issue.text)


def _picture(view: View, job: Job, width: float, height: float) -> Picture:
    drawn = plate_picture(view, units=job.units, width=width, height=height)
    return Picture(title=drawn.title, svg=drawn.svg, scale=f"scale {drawn.scale}")


def _write_flashing(house: PlannedHouse, job: Job, folder: Path, stamp: str) -> None:
    flashings = house.outside.flashings
    if not flashings:
        return
    blanks, laps = _blank_papers(flashings, job), _laps_papers(flashings, house.kits, job)
    write_flashing_sheets(flashings, blanks, laps, house.register, job, folder / "flashing.pdf", stamp=stamp)
    write_blanks_csv(flashings, job.shop.grid, job.units, folder / "flashing blanks.csv")


def _blank_papers(flashings: Sequence[Flashings], job: Job) -> list[BlankPaper]:
    groups: dict[object, list[Blank]] = {}
    for blank in (blank.on(job.shop.grid) for one in flashings for blank in one.blanks):
        groups.setdefault(bent_alike(blank, units=job.units), []).append(blank)
    return [_blank_paper(some, job) for _, some in sorted(groups.items(), key=lambda group: group[1][0].name)]


def _blank_paper(blanks: Sequence[Blank], job: Job) -> BlankPaper:
    first = blanks[0]
    width, height = BLANK_ROOM[job.shop.paper]
    left = width * BENT_SHARE
    return BlankPaper(
        blank=first,
        marks=tuple(blank.mark for blank in blanks),
        bent=_picture(bent_view(first, units=job.units), job, left, height),
        flat=_picture(flat_view(first, units=job.units), job, width - left - GAP / 72, height),
    )


def _laps_papers(flashings: Sequence[Flashings], kits: Sequence[Kit], job: Job) -> list[LapsPaper]:
    own = {kit.mark: kit for kit in kits}
    groups: dict[object, list[Flashings]] = {}
    for one in flashings:
        groups.setdefault(lapped_alike(own[one.mark], one, units=job.units), []).append(one)
    width, height = LAPS_ROOM[job.shop.paper]
    return [
        LapsPaper(
            flashings=some[0],
            marks=tuple(one.mark for one in some),
            picture=_picture(laps_view(own[some[0].mark], some[0], job), job, width, height),
        )
        for some in groups.values()
    ]


def _write_fasteners(outside: PlannedOutside, register: Register, job: Job, folder: Path, stamp: str) -> None:
    if outside.fasteners:
        write_fastener_sheets(outside.fasteners, register, job, folder / "fasteners.pdf", stamp=stamp)
        write_fasteners_csv(outside.fasteners, job.units, folder / "fasteners.csv")


def _write_movement(outside: PlannedOutside, register: Register, job: Job, folder: Path, stamp: str) -> None:
    climate = job.outside.climate
    if outside.movements and climate:
        write_movement_sheet(outside.movements, climate, register, job, folder / "wood movement.pdf", stamp=stamp)
