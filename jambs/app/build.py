"""Build a job: read it, make its kits, write its papers into a fresh folder, move them in and record them."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any

from jambs.app.chain import Unbuildable, raise_where_unmade
from jambs.app.in_the_way import InTheWay
from jambs.app.marking import MarkedKits, marked_each, with_marks
from jambs.app.planned_boards import with_planned_boards
from jambs.app.writing import PaperFolder, suppress_record_faults, writing_turn
from jambs.findings import Finding
from jambs.interrupts import held_back, stop_if_interrupted
from jambs.issued.durable import file_sums
from jambs.issued.entry import BUILD
from jambs.issued.findings import Conflict
from jambs.issued.record import Record
from jambs.job import Job
from jambs.job.reading.faults import advice
from jambs.outside.house import PlannedHouse, plan_each_house
from jambs.outside.register import Register
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.record import job_record

Progress = Callable[[str], None]
"""Is told the name of each thing that is done."""
May = Callable[[Sequence[Conflict]], bool]
"""Is asked whether files of the user's may be overwritten."""


class UnknownMark(Exception):
    """A mark was asked for that no opening has; the message says which there are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a build is asked for: the job, its house as planned, which openings (none: all of it), where to.

    ``marked``: the kits before the outside was planned, and the marks that they have in that folder. ``all_cut_files``:
    plain boards have cut files too. ``unplanned``: what keeps parts of the outside from being planned; the house stands
    without them. ``kept``: the record, once it is made.
    """

    job: Job
    house: PlannedHouse
    only: tuple[str, ...]
    target: Path
    marked: MarkedKits
    with_solids: bool = True
    all_cut_files: bool = False
    unplanned: tuple[Finding, ...] = ()
    kept: list[Mapping[str, Any]] = field(default_factory=list, compare=False, repr=False)

    @property
    def record(self) -> Mapping[str, Any]:
        """The record of all parts of the house, made once: it is most of what a check does."""
        if not self.kept:
            self.kept.append(job_record(self.kits, self.job))
        return self.kept[0]

    @property
    def kits(self) -> tuple[CutKit, ...]:
        """All kits of the house."""
        return self.house.kits

    @property
    def register(self) -> Register:
        """The findings of what is asked for."""
        return self.house.register.only(self.only) if self.only else self.house.register

    @property
    def chosen(self) -> tuple[CutKit, ...]:
        """The kits whose papers are written."""
        return tuple(kit for kit in self.kits if not self.only or kit.mark in self.only)


def ask(job: Job, *, only: Sequence[str], target: Path, with_solids: bool = True, all_cut_files: bool = False) -> Asked:
    """Make the kits of a job and choose those that are asked for.

    Raises:
        UnknownMark: an opening that is asked for is not in the job.
        Unbuildable: some opening of the job cannot be placed or made, or openings have other marks since the last
            issue: only an issue of the whole house moves their parts' marks.
    """
    marks = {opening.mark.lower(): opening.mark for opening in job.openings}
    for mark in only:
        if mark.lower() not in marks:
            raise UnknownMark(f"no opening has the mark {mark!r}; {advice(mark, marks.values())}")
    marked = marked_each(job, target)
    house, unplanned = plan_each_house(marked.kits, job)
    raise_where_unmade(marked.unmade, [one.sentence(job.units) for one in unplanned])
    if only and marked.moves:
        moved = ", ".join(f"{now} (was {was})" for now, was in sorted(marked.moves.items()))
        raise Unbuildable(
            f"openings have other marks since the last issue: {moved}; build the whole house once, without --only, so "
            "that their parts keep theirs"
        )
    return Asked(
        job=job,
        house=replace(house, kits=with_boards_on_record(house.kits, job, target)),
        only=tuple(marks[mark.lower()] for mark in only),
        target=target,
        marked=marked,
        with_solids=with_solids,
        all_cut_files=all_cut_files,
    )


def ask_each(job: Job, *, target: Path) -> Asked:
    """Make the kits of a job that can be made, to look at: ``marked.unmade`` says which cannot, and why.

    Of the outside the same: ``unplanned`` says what cannot be planned.

    Raises:
        Unbuildable: the record of the folder is of a later version.
    """
    marked = marked_each(job, target)
    house, unplanned = plan_each_house(marked.kits, job)
    house = replace(house, kits=with_boards_on_record(house.kits, job, target))
    return Asked(job=job, house=house, only=(), target=target, marked=marked, unplanned=unplanned)


def with_boards_on_record(kits: Sequence[CutKit], job: Job, target: Path) -> tuple[CutKit, ...]:
    """Return kits that name the boards of the cutting plan in a folder of papers, where it holds for them."""
    with suppress_record_faults():
        return with_planned_boards(kits, job, Record.open(target))
    return tuple(kits)


def steps(asked: Asked) -> int:
    """Return how many times ``build`` tells its progress."""
    return len(asked.chosen) + (not asked.only)


def build(asked: Asked, *, may_overwrite: May, progress: Progress) -> Sequence[str]:
    """Write the papers and move them to their folder; return their paths.

    Raises:
        Unbuildable: some paper cannot be made or moved; nothing was.
        InTheWay: files of the user's are in the way and may not be overwritten; nothing was moved.
    """
    from jambs.app.issuing import begin_issue, build_commit, put_unchanged_back, write_issue_papers
    from jambs.app.kept_papers import lay_unchanged
    from jambs.app.outside_papers import write_outside
    from jambs.app.papers import join_papers, write_papers
    from jambs.app.solid_papers import left_out

    today = datetime.date.today()
    whole = not asked.only
    place = PaperFolder(root=asked.target)
    with writing_turn(place, asked.job, verb=BUILD) as writing, writing.fresh_folder() as folder:
        issuing = begin_issue(asked.chosen, asked.house, asked.job, writing, day=today.isoformat(), is_whole=whole)
        outside = partial(write_outside, asked.house, asked.job, folder / "outside", issue=issuing.house)
        kept = lay_unchanged(issuing, folder, with_solids=asked.with_solids, all_cut_files=asked.all_cut_files)
        write_papers(
            asked.chosen,
            asked.house,
            asked.job,
            folder,
            whole_house=whole,
            progress=progress,
            stamps=issuing.stamps,
            with_solids=asked.with_solids,
            all_cut_files=asked.all_cut_files,
            meanwhile=[outside] if whole else [],
            kept=kept,
        )
        put_unchanged_back(issuing, folder)
        if whole:
            join_papers(asked.kits, asked.job, folder, stamps=issuing.stamps, kept=kept)
            progress("lists")
        write_issue_papers(issuing, folder)
        found = writing.conflicts(folder)
        if found and not may_overwrite(found):
            raise InTheWay(found, asked.target)
        written = list(file_sums(folder))
        has_solids = asked.with_solids and left_out() is None
        work = build_commit(issuing, folder, is_whole=whole, has_solids=has_solids, all_kits=asked.kits)
        work = with_marks(work, asked.marked, writing.record, has_renamed=whole)
        stop_if_interrupted()
        with held_back():
            writing.commit(work)
        return written
