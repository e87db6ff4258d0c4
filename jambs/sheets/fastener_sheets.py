"""Fasteners through the outboard layers: what to buy for the house, what each place takes, what the table says."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.csv_text import csv_text
from jambs.fasten.fastener_words import assumed_lengths, count_words, line_way
from jambs.fasten.furring_words import EDITION, verdict_words
from jambs.fasten.plan import (
    FastenerLine,
    HouseRow,
    house_fasteners,
)
from jambs.job.models.openings import Job
from jambs.length import Units, length_text
from jambs.outside.register import Paper, Register
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.house_cells import NONE
from jambs.sheets.press import press
from jambs.sheets.record import assumed_records
from jambs.sheets.told import told
from jambs.values import Record, number


def write_fastener_sheets(
    lines: Sequence[FastenerLine], register: Register, job: Job, path: Path, *, stamp: str = ""
) -> None:
    """Write the fastener list of the house and of every place as PDF."""
    path.write_bytes(press("fasteners", stamped(fastener_data(lines, register, job), stamp)))


def fastener_data(lines: Sequence[FastenerLine], register: Register, job: Job) -> Record:
    """Return what the fastener list prints."""
    return {
        **page_data(job),
        "house": [_house_row(row, job.units) for row in house_fasteners(lines)],
        "lines": [_line(group, job.units) for group in _alike(lines, job.units)],
        "findings": told(register.on(Paper.FASTENERS)),
        "assumed": assumed_records(assumed_lengths(lines, job.units)),
        "edition": EDITION,
    }


def _house_row(row: HouseRow, units: Units) -> Record:
    return {
        "fastener": row.fastener,
        "length": length_text(row.length, units=units),
        "count": f"{'about ' if row.is_about else ''}{row.count}",
        "fixed": ", ".join(fixed.value for fixed in row.fixed),
    }


def _way(line: FastenerLine, units: Units) -> str:
    return line_way(line, units)


def _alike(lines: Sequence[FastenerLine], units: Units) -> list[list[FastenerLine]]:
    """Gather places that take the same fasteners through the same layers."""
    groups: dict[tuple[object, ...], list[FastenerLine]] = {}
    for line in lines:
        key = (line.fixed, line.fastener, line.length, line.needed, line.spacing, _way(line, units))
        groups.setdefault(key, []).append(line)
    return list(groups.values())


def _line(group: Sequence[FastenerLine], units: Units) -> Record:
    first = group[0]
    return {
        "fixed": first.fixed.value,
        "fastener": first.fastener,
        "length": length_text(first.length, units=units) if first.length is not None else NONE,
        "needed": length_text(first.needed, units=units),
        "spacing": length_text(first.spacing, units=units),
        "through": _way(first, units),
        "places": [{"where": line.where, "count": count_words(line)} for line in group],
    }


def write_fasteners_csv(lines: Sequence[FastenerLine], units: Units, path: Path) -> None:
    """Write the fasteners of every place as CSV: sizes as numbers and as shop text, units in the header."""
    path.write_text(fasteners_csv(lines, units), encoding="utf-8-sig", newline="")


def fasteners_csv(lines: Sequence[FastenerLine], units: Units) -> str:
    """Return the fasteners of every place as CSV text."""
    unit = "in" if units is Units.INCH else "mm"
    sizes = [c for name in ("length", "needed", "spacing") for c in (f"{name} [{unit}]", f"{name} text")]
    rows: list[list[object]] = [["where", "holds", "fastener", "count", "count is about", *sizes, "through", "table"]]
    for line in lines:
        cells = [cell for size in (line.length, line.needed, line.spacing) for cell in _cells(size, units)]
        count = "" if line.count is None else line.count
        verdict = verdict_words(line.furring, units) if line.furring else ""
        about = "yes" if line.is_about else "no"
        rows.append([line.where, line.fixed.value, line.fastener, count, about, *cells, _way(line, units), verdict])
    return csv_text(rows)


def _cells(size: float | None, units: Units) -> tuple[object, str]:
    return ("", "") if size is None else (number(size, units=units), length_text(size, units=units))
