"""The summary at the end of a run: one line per opening, then what has to be known, then where the papers are."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job import Job
from jambs.outside.register import Register
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.house import summary_data
from jambs.values import Record

COLUMNS = (
    ("mark", "mark"),
    ("room", "room"),
    ("state", "state"),
    ("interior", "interior depth"),
    ("exterior", "exterior depth"),
    ("rip", "jamb rip"),
    ("findings", "findings"),
)
"""What the summary calls a column, and its head."""
TOLD = ("stop", "check")
"""Findings that are told in full; notes are on the sheets."""


def summary_text(kits: Sequence[CutKit], register: Register, job: Job, record: Record | None = None) -> str:
    """Return the summary of a job: depths, rips and findings of every opening, as on its printed summary.

    ``record``: that of the job, where it is made already.
    """
    summary = summary_data(kits, register, job, record)
    parts = [_table([_cells(row) for row in summary["rows"]]), _findings(summary), _count(summary, len(kits))]
    return "\n\n".join(part for part in parts if part)


def _cells(row: Record) -> list[str]:
    found = ", ".join(_counted(count, weight) for weight, count in row["findings"].items()) or "-"
    return [found if key == "findings" else str(row[key]) for key, _ in COLUMNS]


def _counted(count: int, weight: str) -> str:
    return f"{count} {weight}" + "s" * (count > 1)


def _table(rows: list[list[str]]) -> str:
    heads = [head for _, head in COLUMNS]
    widths = [max(len(row[place]) for row in [heads, *rows]) for place in range(len(heads))]
    lines = [heads, ["-" * width for width in widths], *rows]
    return "\n".join("  ".join(map(str.ljust, line, widths)).rstrip() for line in lines)


def _findings(summary: Record) -> str:
    told = [found for found in summary["findings"] if found["weight"] in TOLD]
    return "\n".join(f"{found['weight']:<5}  {', '.join(found['about'])}: {found['text']}" for found in told)


def _count(summary: Record, openings: int) -> str:
    planned = openings - summary["measured"]
    said = [f"{openings} opening" + "s" * (openings > 1)]
    said += [f"{planned} planned: measure before cutting"] if planned else ["all measured"]
    said += _counted_of(summary, "stop", "to settle before anything is cut")
    said += _counted_of(summary, "check", "to check")
    notes = summary["counts"].get("note")
    said += [f"{_counted(notes, 'note')} on the sheets"] if notes else []
    return "; ".join(said)


def _counted_of(summary: Record, weight: str, what: str) -> list[str]:
    """Say how many findings there are of a weight, and how many of them stand in no opening's row."""
    count, rest = (summary[key].get(weight) for key in ("counts", "rest"))
    if not count:
        return []
    return [f"{count} {what}" + (f", {rest} of them of walls, elevations and the house" if rest else "")]
