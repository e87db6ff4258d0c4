"""Labels of earlier issues that are on boards: what each means now, and what to do with its board."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from jambs.issued.compare import named, paired, size_words, verdict
from jambs.issued.entry import IssuedSheet
from jambs.issued.errors import Unreadable
from jambs.issued.moves import walked_back
from jambs.issued.record import Record
from jambs.issued.remarked import Moves
from jambs.issued.verdict_reasons import CutPartVerdict, Recut, StillGood, ThrowAway, TrimIt

Opening = Mapping[str, Any]
Row = tuple[str, str, str, str, str, CutPartVerdict]
"""Mark, name and size of an old part, its mark and size today, what to do."""
OTHER_SHAPE = (KeyError, TypeError, ValueError, AttributeError)


@dataclass(frozen=True, slots=True, kw_only=True)
class OldLabel:
    """One label as it was printed. ``issues``: those whose label says so. ``now``, ``new``: mark and size of the part
    today, empty where there is none. ``verdict``: what to do with a board that carries it.
    """

    mark: str
    issues: tuple[int, ...]
    what: str
    old: str
    now: str
    new: str
    verdict: CutPartVerdict

    @property
    def holds(self) -> bool:
        """Say whether the label is right as it is."""
        return self.verdict == StillGood() and self.mark == self.now and self.old == self.new


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningLabels:
    """The old labels of one opening. ``now``: the issue that its labels are of today, none where it is gone.

    ``new``: marks of parts that had no label before, none where that is not known. ``unread``: issues whose labels are
    not on record any more.
    """

    mark: str
    room: str
    now: int | None
    labels: tuple[OldLabel, ...]
    new: tuple[str, ...]
    unread: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelsNow:
    """What holds now: sheets and records of the openings, by mark; what moved since the last issue.

    ``units``: those of the records and of ``tolerance``.
    """

    sheets: Mapping[str, IssuedSheet]
    openings: Mapping[str, Opening]
    units: str
    moves: Moves
    tolerance: float


def old_labels(record: Record, now: LabelsNow) -> list[OpeningLabels]:
    """Return the old labels of every opening whose sheets changed since its first issue, or that is gone.

    Of an opening that other crews line there is nothing to tell.
    """
    sheets: dict[tuple[str, str | None], list[tuple[str, IssuedSheet]]] = {}
    for mark, today, sheet in _earlier_sheets(record, now):
        sheets.setdefault((today or mark, today), []).append((mark, sheet))
    each = [
        _opening_labels(record, now, mark, today, found)
        for (mark, today), found in sheets.items()
        if today is None or any(sheet.key != now.sheets[today].key for _, sheet in found)
    ]
    return [one for one in each if one.labels or one.new or one.unread]


def _earlier_sheets(record: Record, now: LabelsNow) -> Iterator[tuple[str, str | None, IssuedSheet]]:
    """Yield the sheets before those of today, the newest first: their mark, the mark of that opening today, the sheet.

    One that says what holds today again is among them: its labels are on boards too.
    """
    seen: set[tuple[str, int]] = set()
    for issue, here in walked_back(record, now.openings, now.moves):
        for mark, sheet in issue.sheets.items():
            today = here.get(mark)
            is_current = today is not None and now.sheets[today] == sheet
            if not is_current and (mark, sheet.number) not in seen:
                seen.add((mark, sheet.number))
                yield mark, today, sheet


def _opening_labels(
    record: Record, now: LabelsNow, mark: str, today: str | None, sheets: list[tuple[str, IssuedSheet]]
) -> OpeningLabels:
    opening, found, unread = now.openings[today] if today else None, dict[Row, list[int]](), []
    known: set[str] = set()
    room = opening["room"] if opening else ""
    for old_mark, sheet in sheets:
        try:
            was = record.printed_opening(sheet, old_mark, now.units)
            rows = list(_rows(was, opening, now.tolerance))
        except (Unreadable, *OTHER_SHAPE):
            unread.append(sheet.number)
            continue
        room = room or was["room"]
        for row in rows:
            found.setdefault(row, []).append(sheet.number)
            known.add(row[3])
    return OpeningLabels(
        mark=mark,
        room=room,
        now=now.sheets[mark].number if opening else None,
        labels=tuple(sorted(_labels(found), key=_order)),
        new=tuple(part["mark"] for part in opening["parts"] if part["mark"] not in known and not is_of_crew(part))
        if opening and not unread
        else (),
        unread=tuple(unread),
    )


def _labels(found: Mapping[Row, list[int]]) -> Iterator[OldLabel]:
    for (mark, what, old, now, new, told), issues in found.items():
        yield OldLabel(mark=mark, issues=tuple(sorted(issues)), what=what, old=old, now=now, new=new, verdict=told)


def _order(label: OldLabel) -> tuple[str, int, tuple[int, ...]]:
    opening, _, number = label.mark.rpartition("-")
    return (opening, int(number) if number.isdigit() else 0, label.issues)


def _rows(was: Opening, opening: Opening | None, tolerance: float) -> Iterator[Row]:
    """Yield what each old part is: its mark, its name, its size, then mark and size today and what to do.

    What another crew makes never had a label; what one makes since has none any more.
    """
    for part, now in paired(was, opening or {"parts": ()}):
        if part is None or is_of_crew(part):
            continue
        row = part["mark"], named(part), size_words(part)
        if now is None or is_of_crew(now):
            yield (*row, "", "", ThrowAway())
        else:
            yield (*row, now["mark"], size_words(now), to_do(verdict(part, now, tolerance=tolerance)))


def is_of_crew(part: Opening) -> bool:
    """Say whether another crew makes a part, so that it has no label."""
    return "crew" in part


def to_do(told: Recut | StillGood) -> CutPartVerdict:
    """Return a verdict as it is told of a label: ``still good``, ``rip to the new size``, ``recut: too narrow``."""
    return TrimIt(trims=told.trims) if isinstance(told, StillGood) and told.trims else told
