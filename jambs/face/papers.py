"""Papers of the whole job in a folder: checked, built, bought for, compared, measured, labeled."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from jambs.app.chain import Unbuildable
from jambs.job import Job

if TYPE_CHECKING:
    from jambs.app.build import Asked
    from jambs.app.labels import WrittenLabels
    from jambs.app.measure import MeasureTable, TableKind
    from jambs.app.writing import PaperFolder
    from jambs.issued.findings import Conflict
    from jambs.sheets.cutting_rest import Spoiled
    from jambs.sheets.labels import LabelStock
    from jambs.stock.house.house_plan import Effort, LotProgress
    from jambs.values import Record


def check(
    job: Job,
    folder: str | Path | None = None,
    *,
    only: Sequence[str] = (),
    with_solids: bool = True,
    all_cut_files: bool = False,
) -> Asked:
    """Plan the house of a job and find all that is to be known of it; nothing is written.

    ``folder``: of its papers, whose record has given marks; ``output/<job>`` if left out. ``only``: marks of openings.
    ``asked.kits``: one for each opening; ``asked.register``: every finding, ``asked.chosen``: the kits asked for.

    Raises:
        UnknownMark: an opening that is asked for is not in the job.
        Unbuildable: some opening cannot be placed or made, or the outside cannot be planned.
    """
    from jambs.app.build import ask
    from jambs.app.output_folder import output_folder

    target = Path(folder) if folder else output_folder(job.sources[0] if job.sources else "job.yaml")
    return ask(job, only=only, target=target, with_solids=with_solids, all_cut_files=all_cut_files)


def summary(asked: Asked) -> str:
    """Return what a check says: depths [job's units], rips and findings, a line for each opening."""
    from jambs.app.table import summary_text

    return summary_text(asked.chosen, asked.register, asked.job, None if asked.only else dict(asked.record))


def outside_summary(asked: Asked) -> str:
    """Return a line for each elevation whose cladding is in courses."""
    from jambs.app.outside_text import outside_text

    return outside_text(asked.house.outside)


def stale(asked: Asked, *, job_words: str) -> list[str]:
    """Return a line for the papers of each verb that hold no longer; ``job_words``: the job as one types it."""
    from jambs.app.stale_text import stale_lines

    return stale_lines(asked.house, asked.job, asked.target, job_words=job_words, parts=asked.record)


def remarked(asked: Asked) -> list[str]:
    """Return a line for each opening that has another mark since the last issue, and what to do with its boards."""
    from jambs.app.stale_text import remarked_lines

    return remarked_lines(asked.marked.moves, asked.house, asked.job.units)


def _nothing(_: object) -> None:
    return None


def steps(asked: Asked) -> int:
    """Return how many times ``write_papers`` tells its progress."""
    from jambs.app.build import steps as counted

    return counted(asked)


def write_papers(
    asked: Asked,
    *,
    may_overwrite: Callable[[Sequence[Conflict]], bool] = lambda _: False,
    progress: Callable[[str], None] = _nothing,
) -> tuple[Path, ...]:
    """Write the papers of what a check has planned, and record them as an issue; return their paths.

    ``may_overwrite``: asked where files of the user's are in the way. ``progress``: told the name of each step.

    Raises:
        Unbuildable: some paper cannot be made; nothing was written.
        InTheWay: files of the user's are in the way; nothing was written.
    """
    from jambs.app.build import build as build_papers

    written = build_papers(asked, may_overwrite=may_overwrite, progress=progress)
    return tuple(asked.target / name for name in written)


def build(
    job: Job, folder: str | Path, *, only: Sequence[str] = (), with_solids: bool = True, overwrite: bool = False
) -> tuple[Path, ...]:
    """Write all papers of a job into a folder, as ``jambs build`` does; return their paths.

    ``only``: marks of openings; empty for the whole house. ``overwrite``: also files that somebody changed.

    Raises:
        Unbuildable: some paper cannot be made; nothing was written.
        InTheWay: files of the user's are in the way; nothing was written.
    """
    asked = check(job, folder, only=only, with_solids=with_solids)
    return write_papers(asked, may_overwrite=lambda _: overwrite)


def buy(
    job: Job,
    folder: str | Path | PaperFolder,
    *,
    seconds: float = 10.0,
    effort: Effort | None = None,
    spoiled: Spoiled | None = None,
    overwrite: bool = False,
    progress: LotProgress | None = None,
) -> Record:
    """Plan what to buy and how to cut it, write the papers of it, and return the record of the plan.

    ``folder``: of the job's papers; the plan goes into ``cutting`` there. ``seconds``: time to search [s]; ``effort``:
    the same with stages and seed. ``spoiled``: boards that were spoiled since the last plan; the rest is planned again.
    ``record["total"]["cost"]["cents"]``: what it costs; ``record["total"]["certified"]``: what no plan can be under; of
    a rest what is planned again. ``to_buy``, ``bought_before``, ``on_hand``: boards; ``to_buy_cost``: of the first.

    Raises:
        Unbuildable: a part fits no board, or the supply of boards runs out.
        InTheWay: files of the user's would be overwritten.
    """
    from jambs.app.buy import buy as buy_job
    from jambs.app.buy import buy_rest
    from jambs.stock.house.house_plan import Effort

    place, search = _place(folder, "cutting"), effort or Effort(seconds=seconds)
    if spoiled is not None and spoiled.boards:
        return buy_rest(job, place, search, spoiled, overwrite=overwrite, progress=progress)
    return buy_job(job, place, search, overwrite=overwrite, progress=progress)


def stale_after_buying(job: Job, folder: str | Path, *, job_words: str) -> list[str]:
    """Return a line for the papers of each verb that hold no longer, as the boards of the plan are now known."""
    try:
        return stale(check(job, folder), job_words=job_words)
    except Unbuildable:  # boards can be bought before the outside can be planned
        return []


def write_comparison(job: Job, folder: str | Path | PaperFolder, *, overwrite: bool = False) -> Record:
    """Compare positions as ``compare`` does, write pages, figures and a table into ``placement``; return the record.

    Raises:
        Unbuildable: a window cannot be placed, or a page cannot be printed.
        InTheWay: files of the user's would be overwritten.
    """
    from jambs.app.positions import compare as compare_job

    return compare_job(job, _place(folder, "placement"), overwrite=overwrite)


def measure(
    job: Job, folder: str | Path, *, table: TableKind = "csv", overwrite: bool = False
) -> tuple[tuple[Path, ...], MeasureTable, list[str]]:
    """Write measure sheets into the papers of a job, and the table to fill in beside the job file.

    Return where the sheets are, the table (one that is there is left as it is), and a question for each reading that
    looks like a misreading.

    Raises:
        Unbuildable: some opening cannot be placed.
        InTheWay: files of the user's would be overwritten.
    """
    from jambs.app.measure import (
        openings_to_measure,
        readings_in_question,
        write_measure_sheets,
        write_measure_table,
    )

    openings = openings_to_measure(job, Path(folder))
    sheets = write_measure_sheets(job, openings, Path(folder), overwrite=overwrite)
    filled = write_measure_table(job, openings, job.sources[0].parent, kind=table)
    return sheets, filled, readings_in_question(job, openings)


def labels(
    job: Job,
    folder: str | Path,
    *,
    stock: LabelStock | None = None,
    by_cutting: bool = False,
    first: int = 1,
    overwrite: bool = False,
) -> WrittenLabels:
    """Write a label for every part into the papers of a job; return where they are, how many, and of which issue.

    ``stock``: the sheets of labels, all sizes in inches; ``first``: label still on the first sheet, from 1.

    Raises:
        Unbuildable: some opening cannot be made, or the stock has no such labels.
        InTheWay: files of the user's would be overwritten.
    """
    from jambs.app.labels import write_labels

    return write_labels(job, Path(folder), stock=stock, by_cutting=by_cutting, first=first, overwrite=overwrite)


def _place(folder: str | Path | PaperFolder, inside: str) -> PaperFolder:
    from jambs.app.writing import PaperFolder

    return folder if isinstance(folder, PaperFolder) else PaperFolder(root=Path(folder), inside=inside)
