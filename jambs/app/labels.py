"""One label a part, on label stock given by its own measures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from jambs.app.basis import basis_of
from jambs.app.build import with_boards_on_record
from jambs.app.chain import Unbuildable, planned
from jambs.app.issue_record import issue_record
from jambs.app.label_issues import label_issues
from jambs.app.marking import marked_kits
from jambs.app.site_papers import write_site_papers
from jambs.job import Job
from jambs.sheets.labels import STOCK, LabelError, LabelStock, cutting_order, label_count, labels_pdf

VERB = "labels"


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenLabels:
    """Where the labels are, how many, and in ``sentences`` what is to be known of their issue."""

    files: tuple[Path, ...]
    count: int
    sentences: Sequence[str]


def usual_stock(job: Job, paper: str | None = None) -> LabelStock:
    """Return the usual label stock of a paper, ``letter`` or ``A4``; the shop's if none is named."""
    return STOCK[paper or job.shop.paper]


def write_labels(
    job: Job,
    folder: Path,
    *,
    stock: LabelStock | None = None,
    by_cutting: bool = False,
    first: int = 1,
    overwrite: bool = False,
) -> WrittenLabels:
    """Write a label for every part into the papers of a job: by opening, or in the order of cutting.

    ``stock``: the sheets of labels, sizes in inches; the usual ones if left out. ``first``: label still on the sheet.

    Raises:
        Unbuildable: some opening cannot be made, or the stock has no such labels.
        InTheWay: files of the user's would be overwritten.
    """
    marked = marked_kits(job, folder)
    house = planned(marked.kits, job)
    kits = with_boards_on_record(house.kits, job, folder)
    printed = issue_record(kits, house.installing, job)
    issues = label_issues(printed, folder)
    order = cutting_order(kits, units=job.units) if by_cutting else ()
    try:
        pdf = labels_pdf(kits, job, stock or usual_stock(job), order=order, first=first, issues=issues.words)
    except LabelError as error:
        raise Unbuildable(*error.sentences(job.units)) from None
    basis = basis_of(kits, job, printed)
    files = write_site_papers({"labels.pdf": pdf}, folder, job, basis, verb=VERB, overwrite=overwrite, marked=marked)
    return WrittenLabels(files=files, count=label_count(kits), sentences=issues.sentences)
