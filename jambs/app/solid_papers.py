"""The kit in three dimensions: modeled, measured, written as STEP and GLB; pictures for drawing and sheet.

A kit whose solids do not go together stops the papers of its opening.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from jambs.app.chain import Unbuildable
from jambs.app.paper_names import FIT_REPORT, GLB, SOLID, STEP, elevation_solid
from jambs.csv_text import csv_text
from jambs.drawings.elements.view import View, ViewKind
from jambs.drawings.views.kit_picture import kit_picture
from jambs.issue_stamp import IssueStamp
from jambs.issued.writing import PaperFacts
from jambs.job import Job
from jambs.parts.kit.kit import Kit

if TYPE_CHECKING:
    from jambs.solids.findings import SolidsLeftOut
    from jambs.solids.fit import FitReport
    from jambs.solids.model import KitSolids

ISOMETRIC = "isometric view"


def left_out() -> SolidsLeftOut | None:
    """Return why there are no solids here and how to get them; None where there are."""
    from jambs.solids import availability

    return availability()


def write_solids(kit: Kit, job: Job, folder: Path, *, issue: IssueStamp | None = None) -> tuple[View, ...]:
    """Model one kit, measure it, write its STEP, GLB and fit report; return views of it for its drawing.

    Nothing where solids cannot be made.

    Raises:
        Unbuildable: the parts, as cut, do not go together.
    """
    if left_out() is not None:
        return ()
    from jambs.solids import fit_report, model_kit, write_glb, write_step

    (folder / STEP.folder).mkdir(exist_ok=True)
    solids = model_kit(kit, job)
    report = fit_report(solids)
    if not report.fits:
        faults = (fault.sentence(job.units) for fault in report.faults)
        raise Unbuildable(*(f"{kit.mark}: the parts do not fit: {fault}" for fault in faults))
    write_step(solids, folder / STEP.path(kit.mark), issue=issue)
    write_glb(solids, folder / GLB.path(kit.mark), issue=issue)
    _write_fit_report(report, job, folder / FIT_REPORT.path(kit.mark))
    return _views(solids)


def _views(solids: KitSolids) -> tuple[View, ...]:
    from jambs.solids import picture, views

    drawn = picture(solids, views.FROM_ROOM)
    lines = [line.points for line in drawn.lines if not line.is_hidden]
    remark = "assembled, seen from the room"
    return (kit_picture(ISOMETRIC, ISOMETRIC.capitalize(), ViewKind.ASSEMBLED, lines=lines, marks=(), remark=remark),)


def _rows(report: FitReport, job: Job) -> tuple[tuple[str, ...], ...]:
    from jambs.solids.report import sized, sized_area

    units = job.units
    measures = (
        (report.mark, "measure", one.name, f"{one.asked:.3f}°", f"{one.found:.3f}°")
        if one.is_angle
        else (report.mark, "measure", one.name, sized(one.asked, units), sized(one.found, units))
        for one in report.measures
    )
    joints = (
        (report.mark, "joint", one.name.rstrip(","), sized_area(one.asked, units), sized_area(one.found, units))
        for one in report.joints
    )
    notes = ((report.mark, "note", note.sentence(units), "", "") for note in report.notes)
    return (*measures, *joints, *notes)


def _write_fit_report(report: FitReport, job: Job, path: Path) -> None:
    """Write what was measured on the solids of an opening: asked beside found."""
    head = ("opening", "what", "name", "asked", "measured on the solids")
    text = csv_text([head, *_rows(report, job)], line_end="\r\n")
    path.write_text(text, encoding="utf-8-sig", newline="")


def write_elevations(
    kits: Sequence[Kit], job: Job, folder: Path, *, issue: IssueStamp | None = None, kept: Container[str] = ()
) -> None:
    """Write one STEP for each elevation whose openings all state their place along the wall; ``kept``: none of these.

    Raises:
        Unbuildable: an opening cannot stand where it is stated.
    """
    if left_out() is not None:
        return
    from jambs.solids import model_kit, write_elevation_step
    from jambs.solids.step import ElevationError

    for name, members in _placed_elevations(kits, job):
        if elevation_solid(name) in kept:
            continue
        try:
            solids = [model_kit(kit, job) for kit in members]
            write_elevation_step(solids, folder / elevation_solid(name), elevation=name, issue=issue)
        except ElevationError as error:
            raise Unbuildable(*error.sentences(job.units)) from error


def elevation_facts(kits: Sequence[Kit], job: Job) -> dict[str, PaperFacts]:
    """Return what is known of the solids of each elevation, by path: all openings on it."""
    return {
        elevation_solid(name): PaperFacts(kind=SOLID, marks=tuple(kit.mark for kit in members))
        for name, members in _placed_elevations(kits, job)
    }


def _placed_elevations(kits: Sequence[Kit], job: Job) -> Iterator[tuple[str, Sequence[Kit]]]:
    """Yield the elevations whose openings all state their place along the wall and over the floor, with their kits.

    Those that are left out for a height are found before anything is drawn (``outside/plan.py``, ``courses/plan.py``).
    """
    from jambs.courses.elevation import elevation_of
    from jambs.parts.kit.on_elevation import kits_on

    for name, entry in job.outside.elevations.items():
        members = kits_on(name, entry, kits)
        placed = elevation_of(name, entry, members)
        if members and not placed.unplaced and all(one.is_placed for one in placed.openings):
            yield name, members
