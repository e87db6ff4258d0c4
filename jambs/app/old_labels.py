"""The page that lists old labels, whenever papers are issued or an earlier issue comes back."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from jambs.issued.entry import IssuedSheet
from jambs.issued.old_labels import LabelsNow, old_labels
from jambs.issued.record import Record
from jambs.issued.remarked import Moves
from jambs.job import Job
from jambs.length import MM_PER_INCH, ROUND_OFF, Units
from jambs.sheets.old_labels import old_labels_pdf

OLD_LABELS = "old labels.pdf"


def cut_tolerance(job: Job, units: Units) -> float:
    """Return how far a cut part may be off its new size and still be good, in the units of what is compared."""
    fit = max(job.shop.taper_tolerance, job.shop.grid.step) + ROUND_OFF
    return fit * MM_PER_INCH if units is Units.MM else fit


def now_of(sheets: Mapping[str, IssuedSheet], printed: Mapping[str, Any], moves: Moves, job: Job) -> LabelsNow:
    """Return what holds now, for labels to be held against."""
    openings = {one["mark"]: one for one in printed["openings"] if one["mark"] in sheets}
    units = Units(printed["units"])
    tolerance = cut_tolerance(job, units)
    return LabelsNow(sheets=sheets, openings=openings, units=units.value, moves=moves, tolerance=tolerance)


def write_old_labels(record: Record, now: LabelsNow, job: Job, folder: Path, *, number: int, day: str) -> None:
    """Write the page of old labels into a folder of papers, or take an earlier one away where every label holds."""
    openings = old_labels(record, now)
    (folder / OLD_LABELS).unlink(missing_ok=True)
    if openings:
        (folder / OLD_LABELS).write_bytes(old_labels_pdf(openings, job, number=number, day=day))
