"""What changed, and the index of current sheets: an old sheet in a pocket is known by its number and code."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from jambs.job.models.openings import Job
from jambs.sheets.every_page import page_data
from jambs.sheets.press import press
from jambs.sheets.stamp import Stamp, Stamps, change_row

NO_DRAWINGS: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexRow:
    """One opening in the index: its current sheets, and the issues whose sheets are void.

    ``current``: none of an opening that is gone; ``gone`` then says how.
    """

    mark: str
    room: str
    current: Stamp | None
    void: Sequence[str]
    gone: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class VoidSheets:
    """An opening that is gone: how, the issue of its last sheets, and its papers, which are in the record."""

    mark: str
    why: str
    issue: int | None
    papers: Sequence[str]


def index_pdf(
    rows: Sequence[IndexRow],
    job: Job,
    *,
    number: int,
    day: str,
    stale: Sequence[tuple[str, str, str]] = (),
    drawings: Mapping[str, str] = NO_DRAWINGS,
) -> bytes:
    """Return the index of current sheets as PDF bytes.

    ``drawings``: where the drawing of each opening is, beside the index; a mark is a link to it.
    ``stale``: papers of other kinds that this issue makes stale: which, what changed, what to run.
    """
    data = {
        **page_data(job),
        "number": number,
        "day": day,
        "stale": [list(one) for one in stale],
        "rows": [
            {
                "mark": row.mark,
                "room": row.room,
                "number": row.current.number if row.current else None,
                "day": row.current.day if row.current else "",
                "code": row.current.code if row.current else "",
                "drawing": drawings.get(row.mark, "") if row.current else "",
                "gone": row.gone,
                "void": list(row.void),
            }
            for row in rows
        ],
    }
    return press("issue_index", data)


def changes_pdf(
    stamps: Stamps,
    why: Mapping[str, str],
    rooms: Mapping[str, str],
    void: Sequence[VoidSheets],
    job: Job,
    *,
    number: int,
    day: str,
    other_boards: Collection[str] = (),
) -> bytes:
    """Return the list of what changed in an issue as PDF bytes: openings that are gone, then those in ``why``.

    ``other_boards``: openings of which nothing changed but the boards that their parts come out of, told in one line.
    """
    changed = {mark: stamps.by_mark[mark] for mark in why if mark in stamps.by_mark and mark not in other_boards}
    data = {
        **page_data(job),
        "number": number,
        "day": day,
        "other_boards": [mark for mark in why if mark in other_boards],
        "void": [{"mark": one.mark, "why": one.why, "issue": one.issue, "papers": list(one.papers)} for one in void],
        "openings": [
            {
                "mark": mark,
                "room": rooms.get(mark, ""),
                "since": stamp.since,
                "why": why[mark],
                "changes": [change_row(one) for one in stamp.changes],
            }
            for mark, stamp in changed.items()
        ],
    }
    return press("issue_changes", data)
