"""The summary at the end of a run: one line per opening, then what has to be known, then where the papers are."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job import Job
from jambs.parts.cut_kit import CutKit
from jambs.sheets.house import summary_data
from jambs.values import Record

COLUMNS = (
    ("mark", "mark"),
    ("room", "room"),
    ("state", "state"),
    ("interior", "interior depth"),
    ("exterior", "exterior depth"),
    ("rip", "rip of the jambs"),
    ("findings", "findings"),
)
"""What the summary calls a column, and its head."""
TOLD = ("stop", "check")
"""Findings that are told in full; notes are on the sheets."""


def summary_text(kits: Sequence[CutKit], job: Job) -> str:
    """Return the summary of a job: depths, rips and findings of every opening, as on its printed summary."""
    summary = summary_data(kits, job)
    parts = [_table([_cells(row) for row in summary["rows"]]), _findings(summary), _count(summary, len(kits))]
    return "\n\n".join(part for part in parts if part)


def _cells(row: Record) -> list[str]:
    found = ", ".join(_counted(count, weight) for weight, count in row["findings"].items()) or "-"
    return [found if key == "findings" else str(row[key]) for key, _ in COLUMNS]


def _counted(count: int, weight: str) -> str:
    return f"{count} {weight}" + ("s" if weight == "note" and count > 1 else "")


def _table(rows: list[list[str]]) -> str:
    heads = [head for _, head in COLUMNS]
    widths = [max(len(row[place]) for row in [heads, *rows]) for place in range(len(heads))]
    lines = [heads, ["-" * width for width in widths], *rows]
    return "\n".join("  ".join(map(str.ljust, line, widths)).rstrip() for line in lines)


def _findings(summary: Record) -> str:
    told = [found for found in summary["findings"] if found["weight"] in TOLD]
    return "\n".join(f"{found['weight']:<5}  {', '.join(found['marks'])}: {found['text']}" for found in told)


def _count(summary: Record, openings: int) -> str:
    counts = summary["counts"]
    planned = openings - summary["measured"]
    said = [f"{openings} opening" + "s" * (openings > 1)]
    said += [f"{planned} planned: measure before cutting"] if planned else ["all measured"]
    said += [f"{counts['stop']} to settle before anything is cut"] if "stop" in counts else []
    said += [f"{counts['check']} to check"] if "check" in counts else []
    said += [f"{_counted(counts['note'], 'note')} on the sheets"] if "note" in counts else []
    return "; ".join(said)
