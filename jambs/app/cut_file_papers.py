"""Cut files: one for each part that has a shape, or for every part of wood if asked; in two releases of DXF."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from jambs.drawings.cut_files.figure import CutFigure, faces_cut, has_shape, part_figures
from jambs.drawings.cut_files.nest import sheet_figures
from jambs.drawings.cut_files.notes import file_name
from jambs.drawings.cut_files.write import Release, cut_file
from jambs.issue_stamp import IssueStamp
from jambs.issued.writing import PaperFacts
from jambs.job import Job
from jambs.length import Units
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.planned import waits_in
from jambs.parts.readings.as_built import PLANNED
from jambs.stock.house.house_plan import PlannedLot

CUT_FILE, FOLDER, SHEETS = "cut file", "cut files", "sheets"
ENCODING = {Release.R2010: "utf-8", Release.R12: "cp1252"}
"""Of the two releases; a letter that the older one lacks is written by its number."""
BESIDE = {Release.R2010: "", Release.R12: "R12/"}
"""The oldest release stands in a folder of its own, under the same names."""


def write_cut_files(
    kit: CutKit, job: Job, folder: Path, *, issue: IssueStamp | None = None, all_parts: bool = False
) -> None:
    """Write the cut files of an opening: of its parts that have a shape, or of all its parts of wood."""
    waiting = {one.mark for part in kit.parts if waits_in(kit, part) for one in (part, *part.frame_members)}
    for part in parts_cut(kit, all_parts=all_parts):
        notes = [PLANNED] if part.mark in waiting else []
        notes += [issue.plain] if issue else []
        for figure in part_figures(part, units=job.units, notes=notes, grid=job.shop.grid):
            _write(figure, job.units, folder / FOLDER)


def write_sheet_files(planned: Sequence[PlannedLot], job: Job, folder: Path, *, stamp: str) -> None:
    """Write a cut file for each sheet of a cutting plan; ``stamp``: what the plan says of its issue."""
    for lot in planned:
        for figure in sheet_figures(lot, units=job.units, stamp=stamp):
            _write(figure, job.units, folder / SHEETS)


def parts_cut(kit: CutKit, *, all_parts: bool) -> Iterator[Part]:
    """Yield the parts of an opening that have a cut file; stiles, rails and panels of a jamb after it."""
    boards = (one for part in kit.parts for one in (part, *part.frame_members))
    yield from (part for part in boards if has_shape(part) or (all_parts and part.is_wood))


def cut_file_paths(kit: CutKit, *, all_parts: bool) -> set[str]:
    """Return the paths that ``write_cut_files`` writes, within the folder of papers."""
    return {
        _path(part, face, beside)
        for part in parts_cut(kit, all_parts=all_parts)
        for face in faces_cut(part)
        for beside in BESIDE.values()
    }


def _path(part: Part, face: BoardFace, beside: str) -> str:
    return f"{FOLDER}/{beside}{file_name(part.mark, face)}.dxf"


def cut_file_facts(kits: Iterable[CutKit]) -> dict[str, PaperFacts]:
    """Return what is known of each cut file of some openings, by path."""
    return {
        _path(part, face, beside): PaperFacts(kind=CUT_FILE, marks=(kit.mark,))
        for kit in kits
        for whole in kit.parts
        for part in (whole, *whole.frame_members)
        for face in BoardFace
        for beside in BESIDE.values()
    }


def _write(figure: CutFigure, units: Units, folder: Path) -> None:
    for release in Release:
        path = folder / f"{BESIDE[release]}{figure.name}.dxf"
        path.parent.mkdir(parents=True, exist_ok=True)
        text = cut_file(figure, units=units, release=release)
        path.write_bytes(text.encode(ENCODING[release], errors="dxfreplace"))


def kind_of_paper(path: str) -> str:
    """Return the kind of a paper of a cutting plan: its name, or cut file."""
    return CUT_FILE if path.startswith(f"{SHEETS}/") else Path(path).stem
