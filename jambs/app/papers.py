"""All papers of a job, written into one folder: first those of each opening, then those of the house."""

from __future__ import annotations

import gc
import os
import signal
import threading
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from functools import partial
from itertools import chain
from multiprocessing import active_children, get_context, parent_process
from multiprocessing.connection import wait
from pathlib import Path

from jambs.app.chain import Unbuildable
from jambs.app.cut_file_papers import cut_file_paths, write_cut_files
from jambs.app.paper_names import (
    ALL_CUT,
    ALL_DRAWINGS,
    DRAWING_SHEETS,
    DRAWINGS,
    FLAT_DRAWING,
    PARTS_CSV,
    PARTS_JSON,
    SHEET_TO_CUT,
    SHEET_TO_INSTALL,
    SHOP_DRAWING,
    SOLIDS,
    TEMPLATES,
)
from jambs.app.pictures import sheet_pictures
from jambs.app.solid_papers import left_out, write_elevations, write_solids
from jambs.app.without_script import without_script
from jambs.drawings.drawing import draw_opening
from jambs.drawings.dxf.model import write_dxf, write_flat_dxf
from jambs.drawings.elements.paper import PAGES, Page
from jambs.drawings.svg.key import drawing_key
from jambs.drawings.svg.sheets import drawing_title, sheet_pages
from jambs.interrupts import held_back
from jambs.issue_stamp import IssueStamp
from jambs.job import Job
from jambs.outside.house import Installing, PlannedHouse
from jambs.outside.register import Register
from jambs.parts.kit.cut_kit import CutKit
from jambs.section.cut import sections_to_draw
from jambs.sheets.cut_sheet import write_cut_sheet
from jambs.sheets.drawing_sheets import write_all_drawings, write_drawing_sheets
from jambs.sheets.full_scale import templates_of
from jambs.sheets.house import write_order_sheet, write_summary
from jambs.sheets.install_sheet import write_install_sheet
from jambs.sheets.joining import Chapter, join_chapters
from jambs.sheets.parts_file import write_parts_csv, write_parts_json
from jambs.sheets.pictures import PictureError
from jambs.sheets.press import PressError
from jambs.sheets.record import job_record
from jambs.sheets.rough_openings import write_rough_opening_schedule
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.template_pages import write_templates
from jambs.values import Record

FEW = 3
"""So few openings are drawn sooner than other processes would have started."""

OFTEN = 20_000
"""After so many new objects a process looks for those that are used no more; Python's own 700 cost a twentieth."""

KILLED = (
    "a process that wrote papers was ended from outside, most often because the machine ran out of memory; nothing was "
    "written. Close other programs, or build some openings at a time with --only"
)

NEVER_ISSUED = IssueStamp(number=0, day="", code="")
"""Of drawings that are made without being issued."""

Progress = Callable[[str], None]
"""Is told the name of each thing that is done."""
Work = Callable[[], object]
"""A piece of work that can be done at any time."""


def write_papers(
    kits: Sequence[CutKit],
    house: PlannedHouse,
    job: Job,
    folder: Path,
    *,
    whole_house: bool,
    progress: Progress,
    stamps: Stamps = NOT_ISSUED,
    with_solids: bool = True,
    all_cut_files: bool = False,
    meanwhile: Sequence[Work] = (),
    kept: Collection[str] = (),
) -> None:
    """Write the papers of these openings, and the lists of the whole house if asked, into a folder.

    ``kept``: paths of papers that are there already; an opening whose cut sheet is has all of its own. ``meanwhile``:
    what else is to be done and needs none of these papers.

    Raises:
        Unbuildable: a drawing or a sheet of some opening cannot be made.
    """
    for paper in (SHOP_DRAWING, SHEET_TO_CUT, SHEET_TO_INSTALL):
        (folder / paper.folder).mkdir(parents=True, exist_ok=True)
    write = partial(
        write_opening,
        installing=house.installing,
        job=job,
        folder=folder,
        stamps=stamps,
        with_solids=with_solids,
        all_cut_files=all_cut_files,
    )
    lists = _lists(kits, house.register, job, folder, stamps) if whole_house else ()
    there = [kit.mark for kit in kits if SHEET_TO_CUT.path(kit.mark) in kept]
    fresh = [kit for kit in kits if kit.mark not in there]
    for mark in chain(there, _openings(fresh, write, chain(lists, meanwhile))):
        progress(mark)
    if whole_house and with_solids:
        write_elevations(kits, job, folder, issue=stamps.house, kept=kept)


def join_papers(
    kits: Sequence[CutKit], job: Job, folder: Path, *, stamps: Stamps = NOT_ISSUED, kept: Collection[str] = ()
) -> None:
    """Put the cut sheets of all openings, and their drawings, into one PDF each, as they are in the folder.

    ``kept``: paths of papers that are there already.
    """
    if ALL_CUT not in kept:
        sheets = ((kit.mark, folder / SHEET_TO_CUT.path(kit.mark)) for kit in kits)
        join_chapters((Chapter(name=mark, file=file) for mark, file in sheets), folder / ALL_CUT)
    if ALL_DRAWINGS in kept:
        return
    drawings = [(kit.mark, folder / DRAWING_SHEETS.path(kit.mark)) for kit in kits]
    key = [(entry.svg, entry.words) for entry in drawing_key()]
    write_all_drawings(kits, drawings, job, folder / ALL_DRAWINGS, stamps=stamps, key=key)


def _openings(kits: Sequence[CutKit], write: Callable[[CutKit], str], meanwhile: Iterable[Work] = ()) -> Iterator[str]:
    """Write the papers of each opening, several at a time where there are many; yield its mark; do all else meanwhile.

    What is left to do when the openings are done would be done by one process while the others wait.
    """
    if len(kits) <= FEW:
        yield from map(write, kits)
        for work in meanwhile:
            work()
        return
    workers, spawn = min(len(kits), os.cpu_count() or 1), get_context("spawn")
    with ProcessPoolExecutor(workers, mp_context=spawn, initializer=_as_worker, initargs=(write,)) as pool:
        with held_back(), without_script():  # one that is stopped while it starts would print a traceback of its own
            running = [pool.submit(_write_here, kit) for kit in kits]
        try:
            told: set[Future[str]] = set()
            for work in meanwhile:
                work()
                fresh = [done for done in running if done.done() and done not in told]
                yield from (done.result() for done in fresh)
                told.update(fresh)
            yield from (done.result() for done in as_completed(set(running) - told))
        except BrokenProcessPool:
            raise Unbuildable(KILLED) from None
        except KeyboardInterrupt:
            for worker in active_children():
                worker.terminate()
            raise
        finally:
            pool.shutdown(cancel_futures=True)


_here: list[Callable[[CutKit], str]] = []
"""In another process: how it writes an opening. The whole job is in there, so it is sent once and not with each."""


def _write_here(kit: CutKit) -> str:
    return _here[0](kit)


def _as_worker(write: Callable[[CutKit], str]) -> None:
    """Leave Ctrl-C to the process that started this one, and end when that one ends.

    What is loaded stays to the end: looking for what is used no more would go through all of it over and over.
    """
    _here.append(write)
    gc.freeze()
    gc.set_threshold(OFTEN)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = parent_process()
    if parent:
        wait([parent.sentinel])
        os._exit(1)


def write_opening(
    kit: CutKit,
    *,
    installing: Mapping[str, Installing],
    job: Job,
    folder: Path,
    stamps: Stamps = NOT_ISSUED,
    with_solids: bool = True,
    all_cut_files: bool = False,
) -> str:
    """Write the drawings and the sheets of one opening; return its mark.

    Raises:
        Unbuildable: a view fits no paper, or a sheet cannot be printed.
    """
    try:
        views = write_solids(kit, job, folder, issue=stamps.of(kit.mark)) if with_solids else ()
        drawing = draw_opening(
            kit,
            sections_to_draw(kit),
            job,
            issue=stamps.of(kit.mark) or NEVER_ISSUED,
            revisions=stamps.revisions(kit.mark),
            pictures=views,
        )
        write_dxf(drawing, folder / SHOP_DRAWING.path(kit.mark))
        write_flat_dxf(drawing, folder / FLAT_DRAWING.path(kit.mark))
        write_drawing_sheets(
            sheet_pages(drawing, printed_on(job)),
            drawing_title(drawing),
            folder / DRAWING_SHEETS.path(kit.mark),
        )
        write_cut_files(kit, job, folder, issue=stamps.of(kit.mark), all_parts=all_cut_files)
        pictures = sheet_pictures(drawing, paper=job.shop.paper)
        write_cut_sheet(kit, job, pictures, folder / SHEET_TO_CUT.path(kit.mark), stamps=stamps)
        install = folder / SHEET_TO_INSTALL.path(kit.mark)
        write_install_sheet(kit, installing[kit.mark], job, install, pictures=pictures, stamps=stamps)
        write_templates(kit, job, folder / TEMPLATES.path(kit.mark), stamps=stamps)
    except (ValueError, PictureError, PressError) as error:
        raise Unbuildable(f"{kit.mark}: {error}") from error
    return kit.mark


def paths_of(kit: CutKit, job: Job, *, with_solids: bool, all_cut_files: bool) -> set[str]:
    """Return the paths of all papers that ``write_opening`` writes, within the folder of papers."""
    papers = [*DRAWINGS, SHEET_TO_CUT, SHEET_TO_INSTALL]
    papers += [TEMPLATES] if templates_of(kit, grid=job.shop.grid) else []
    papers += SOLIDS if with_solids and left_out() is None else ()
    return {paper.path(kit.mark) for paper in papers} | cut_file_paths(kit, all_parts=all_cut_files)


def printed_on(job: Job) -> Page:
    """Return the paper that shop drawings are printed on: letter or A4, else the larger that the job asks for."""
    small, large = PAGES[job.units]
    return large if job.shop.large_drawings else small


def _lists(kits: Sequence[CutKit], register: Register, job: Job, folder: Path, stamps: Stamps) -> Iterator[Work]:
    """Yield the work of the lists of the whole house, each by itself: none needs a paper of an opening."""
    foot, record = stamps.house_foot, job_record(kits, job)
    yield partial(write_rough_opening_schedule, kits, job, folder / "rough openings.pdf", stamp=foot, record=record)
    yield partial(_write_order, kits, job, folder / "window order.pdf", foot, record)
    yield partial(write_summary, kits, register, job, folder / "summary.pdf", stamp=foot, record=record)
    yield partial(write_parts_json, kits, register, job, folder / PARTS_JSON, stamps=stamps, record=record)
    yield partial(write_parts_csv, kits, job, folder / PARTS_CSV, record=record)


def _write_order(kits: Sequence[CutKit], job: Job, path: Path, foot: str, record: Record) -> None:
    from jambs.study.record.planned_positions import planned_positions  # loads the heat study and scipy

    write_order_sheet(kits, job, path, positions=planned_positions(kits, job), stamp=foot, record=record)
