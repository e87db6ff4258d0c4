"""What changed, and the index of current sheets: an old sheet in a pocket is known by its number and code."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.sheets.cut_sheet import page_data
from jambs.sheets.press import press
from jambs.sheets.stamp import Stamp, Stamps, change_row


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexRow:
    """One opening in the index: its current sheets, and the issues whose sheets are void."""

    mark: str
    room: str
    current: Stamp
    void: Sequence[str]


def index_pdf(rows: Sequence[IndexRow], job: Job, *, number: int, day: str) -> bytes:
    """Return the index of current sheets as PDF bytes."""
    data = {
        **page_data(job),
        "number": number,
        "day": day,
        "rows": [
            {
                "mark": row.mark,
                "room": row.room,
                "number": row.current.number,
                "day": row.current.day,
                "code": row.current.code,
                "void": list(row.void),
            }
            for row in rows
        ],
    }
    return press("issue_index", data)


def changes_pdf(stamps: Stamps, rooms: Mapping[str, str], job: Job, *, number: int, day: str) -> bytes:
    """Return the list of what changed in an issue as PDF bytes; openings without a changed figure are left out."""
    changed = {mark: stamp for mark, stamp in stamps.by_mark.items() if stamp.changes and stamp.number == number}
    data = {
        **page_data(job),
        "number": number,
        "day": day,
        "openings": [
            {
                "mark": mark,
                "room": rooms.get(mark, ""),
                "since": stamp.since,
                "why": stamp.why,
                "changes": [change_row(one) for one in stamp.changes],
            }
            for mark, stamp in changed.items()
        ],
    }
    return press("issue_changes", data)
