"""Openings that have another mark since an issue, as the issue keeps them: renamed ones, and exchanged marks."""

from __future__ import annotations

import json
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from jambs.issued.entry import Entry
from jambs.issued.entry_file import read_plain, texts
from jambs.issued.errors import Unreadable
from jambs.issued.reasons import MarksExchanged, RenamedTo
from jambs.issued.record import Record
from jambs.length import Units

REMARKED = "remarked.json"
"""The document that holds them."""
Moves = Mapping[str, str]
"""The mark of an opening → its mark in the issue before; all at once."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remarked:
    """``renamed``: new mark → the mark that is gone. ``exchanged``: mark → the mark that was what it is now."""

    renamed: Mapping[str, str] = field(default_factory=dict)
    exchanged: Mapping[str, str] = field(default_factory=dict)

    @classmethod
    def of(cls, moves: Moves, there: Collection[str]) -> Remarked:
        """Tell moves apart: renamed where the mark until now is gone, else exchanged. ``there``: all marks of now."""
        return cls(
            renamed={mark: old for mark, old in moves.items() if old not in there},
            exchanged={mark: old for mark, old in moves.items() if old in there},
        )

    @property
    def moves(self) -> Moves:
        """Both together."""
        return {**self.renamed, **self.exchanged}


def remarked_document(remarked: Remarked) -> bytes:
    """Return them as they are kept."""
    plain = {"renamed": dict(remarked.renamed), "exchanged": dict(remarked.exchanged)}
    return json.dumps(plain, ensure_ascii=False).encode("utf-8")


def remarked_in(record: Record, issue: Entry) -> Remarked:
    """Return which openings an issue gave another mark; one that goes back to an earlier issue gave none."""
    if issue.same_as is not None:
        return Remarked()
    if REMARKED not in issue.documents:
        return _told(issue)
    try:
        plain = read_plain(record.document(issue, REMARKED))
        return Remarked(renamed=texts(plain, "renamed"), exchanged=texts(plain, "exchanged"))
    except Unreadable:
        return _told(issue)


def _told(issue: Entry) -> Remarked:
    """Find them by what an issue said of them: before there was a document that was all that it kept."""
    renamed = {RenamedTo(mark=mark).sentence(Units.INCH): mark for mark in issue.sheets}
    exchanged = {MarksExchanged(mark=mark).sentence(Units.INCH): mark for mark in issue.changed}
    why = issue.why.items()
    return Remarked(
        renamed={renamed[said]: mark for mark, said in why if said in renamed},
        exchanged={mark: exchanged[said] for mark, said in why if said in exchanged},
    )
