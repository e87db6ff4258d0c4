"""Courses and story poles: one elevation after the other, its drawing, what is missed and its cure, heights to mark."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from jambs.courses.cladding_words import assumed_of, cladding_words, limit_words
from jambs.courses.plan import CourseLine, CoursePlan, Missed, course_grid
from jambs.courses.plan_words import cure_words, proof_words, start_cure_words
from jambs.courses.pole_words import datum_words, mark_words, running_text
from jambs.courses.story_pole import PoleMark, StoryPole, story_pole
from jambs.findings import Subject
from jambs.job.models.openings import Job
from jambs.job.models.shop import Shop
from jambs.length import Units, feet_text
from jambs.outside.register import Paper, Register, Registered
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.pictures import Picture, set_row
from jambs.sheets.press import press
from jambs.sheets.record import assumed_records
from jambs.sheets.told import told
from jambs.values import Record

ROOM = {"letter": (10.0, 4.4), "A4": (10.6, 4.3)}
"""What the drawing of an elevation may take on a page lying on its long side, width and height [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ElevationPaper:
    """The courses of one elevation and its drawing."""

    plan: CoursePlan
    picture: Picture


def write_course_sheets(
    papers: Sequence[ElevationPaper], register: Register, job: Job, path: Path, *, stamp: str = ""
) -> None:
    """Write the courses and the story poles of all elevations as PDF."""
    path.write_bytes(press("courses", stamped(course_data(papers, register, job), stamp)))


def course_data(papers: Sequence[ElevationPaper], register: Register, job: Job) -> Record:
    """Return what the sheets of courses and story poles print."""
    step = job.shop.grid.text(course_grid(job).step)
    foot = f"marks to {step} · heights from the start line · left and right as seen from outside"
    return {
        **page_data(job),
        "foot": foot,
        "elevations": [_elevation(one, register, job.shop, job.units) for one in papers],
    }


def _elevation(paper: ElevationPaper, register: Register, shop: Shop, units: Units) -> Record:
    plan, pole = paper.plan, story_pole(paper.plan)
    width, height = (side * 72 for side in ROOM[shop.paper])
    (placed,) = set_row((paper.picture,), width=width, height=height)
    return {
        "name": plan.elevation.name,
        "svg": paper.picture.svg,
        "width": placed.width,
        "height": placed.height,
        "note": placed.note,
        "facts": _facts(plan, pole),
        "proof": proof_words(plan),
        "missed": [_missed(plan, one) for one in plan.missed],
        "start_cures": [start_cure_words(plan)] if plan.start_move else [],
        "findings": told(_own(plan, register)),
        "assumed": assumed_records(assumed_of(plan.cladding, units)),
        "returned": _returned(plan),
        "datum": datum_words(pole),
        "length": feet_text(pole.length, units=plan.grid.units),
        "marks": [_mark(mark, plan) for mark in pole.marks],
    }


def _own(plan: CoursePlan, register: Register) -> list[Registered]:
    """Return what there is to know of the courses of one elevation."""
    about = Subject.elevation(plan.elevation.name)
    return [one for one in register.on(Paper.COURSES) if one.subject == about]


def _facts(plan: CoursePlan, pole: StoryPole) -> list[Record]:
    text = plan.grid.text
    return [
        {"name": "cladding", "value": cladding_words(plan.cladding, plan.grid.units)},
        {"name": "limit", "value": limit_words(plan.cladding, plan.grid.units)},
        {"name": "courses", "value": str(plan.courses)},
        {"name": "exposures", "value": f"{text(plan.least)} to {text(plan.greatest)}"},
        {"name": "greatest change between neighbors", "value": text(plan.greatest_change)},
        {"name": "height, start line to eave", "value": feet_text(pole.length, units=plan.grid.units)},
    ]


def _returned(plan: CoursePlan) -> list[Record]:
    """Return the pieces of courses that run back to a frame, a line for each side of a reveal."""
    text, units = plan.grid.text, plan.grid.units
    return [
        {
            "opening": leg.opening,
            "mark": leg.mark,
            "pieces": str(leg.pieces),
            "length": text(leg.length),
            "first": feet_text(plan.grid.round(leg.heights[0]), units=units, least=0.0) if leg.heights else "",
            "running": feet_text(leg.running, units=units, least=0.0),
        }
        for leg in plan.returned
    ]


def _missed(plan: CoursePlan, missed: Missed) -> Record:
    way = "above" if missed.off > 0 else "below"
    running = plan.grid.round(missed.wanted.height - plan.elevation.start_line)
    return {
        "what": missed.wanted.words,
        "running": feet_text(running, units=plan.grid.units, least=0.0),
        "off": f"{plan.grid.text(abs(missed.off))} {way}",
        "cure": cure_words(missed, plan.grid) or "nothing that moves it alone",
    }


def _mark(mark: PoleMark, plan: CoursePlan) -> Record:
    """Return one line of the story pole: what stands on the stick and what is said of it."""
    return {
        "running": running_text(mark, plan.grid),
        "note": mark_words(mark, plan.grid),
        "is_course": mark.is_course,
        "is_met": isinstance(mark.of, CourseLine) and bool(mark.of.meets),
    }
