"""The record of a folder of papers as it is read: never writes, never fails over a damaged file."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from jambs.issued.blobs import Blobs
from jambs.issued.chain import EntryChain, read_chain
from jambs.issued.earlier_format import MIGRATED, EarlierRecord, read_earlier
from jambs.issued.entry import PRINTED, Entry, IssuedSheet, WrittenPaper
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.findings import IssueNotOnRecord, NoRecordOfParts, NoSuchIssue, NotKept, OpeningNotKept
from jambs.issued.move_in import MoveIn, read_log
from jambs.issued.other_units import in_units
from jambs.issued.paths import FOLDER
from jambs.issued.witness import Witness, read_witness

_Printed = tuple[str, Mapping[str, Any], Mapping[str, Mapping[str, Any]]]
"""Units, the shop's grid, and openings by mark, of an issue."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """What a folder of papers has on record.

    ``interrupted``: a move of papers that was killed and is completed by the next verb that writes. ``earlier``: the
    record in the earlier format, as long as it was not taken over.
    """

    folder: Path
    blobs: Blobs
    chain: EntryChain
    witness: Witness | None
    interrupted: MoveIn | None
    earlier: EarlierRecord | None
    _openings: dict[int, _Printed] = field(default_factory=dict, repr=False, compare=False)
    """What issues printed, by opening mark, once it was asked for."""

    @classmethod
    def open(cls, folder: Path) -> Record:
        """Read the record of a folder, an empty one where there is none.

        Raises:
            RecordError: it was written by a later version.
        """
        blobs, witness = Blobs(folder=folder / FOLDER / "files"), read_witness(folder)
        chain = read_chain(folder / FOLDER / "entries", blobs, witness)
        earlier = None if _is_taken_over(chain) else read_earlier(folder, blobs)
        if earlier and all(earlier.chain.entries.get(number) == one for number, one in chain.entries.items()):
            chain = earlier.chain
        else:
            earlier = None
        return cls(
            folder=folder,
            blobs=blobs,
            chain=chain,
            witness=witness,
            interrupted=read_log(folder),
            earlier=earlier,
        )

    @property
    def entries(self) -> list[Entry]:
        """All entries that can be read, the first one first."""
        return list(self.chain.entries.values())

    @property
    def latest(self) -> Entry | None:
        """The entry that holds now, nothing before the first."""
        return self.entries[-1] if self.chain.entries else None

    @property
    def issues(self) -> dict[int, Entry]:
        """The entries that made an issue, by issue number, ascending."""
        return {entry.issue: entry for entry in self.entries if entry.is_issue}

    @property
    def latest_issue(self) -> Entry | None:
        """The entry that made the issue that holds, nothing before the first."""
        return list(self.issues.values())[-1] if self.issues else None

    @property
    def papers(self) -> Mapping[str, WrittenPaper]:
        """Every file that the record answers for, by path."""
        return self.latest.papers if self.latest else {}

    @property
    def told(self) -> int:
        """The last issue whose changes were shown to somebody, 0 for none."""
        if self.witness:
            return self.witness.told
        issue = self.latest.issue if self.latest else 0
        return issue if self.earlier else max(issue - 1, 0)  # not known: say the last one once more

    @property
    def next_issue(self) -> int:
        """A number that no issue ever had: entries lost at the end may each have been an issue."""
        known = max(self.chain.entries, default=0)
        lost_after = sum(1 for one in self.chain.damaged if one.number > known)
        return max((entry.issue for entry in self.entries), default=0) + lost_after + 1

    def papers_of(self, verb: str) -> dict[str, WrittenPaper]:
        """Return the papers on record that a verb wrote, by path."""
        return self.latest.papers_of(verb) if self.latest else {}

    def issue(self, number: int) -> Entry:
        """Return the entry that made an issue.

        Raises:
            RecordError: none of this number can be read.
        """
        try:
            return self.issues[number]
        except KeyError:
            raise RecordError(NoSuchIssue(number=number, known=tuple(self.issues))) from None

    def document(self, entry: Entry, name: str) -> bytes:
        """Return a document of an entry.

        Raises:
            Unreadable: it has none of this name, or its content is damaged.
        """
        if name not in entry.documents:
            raise Unreadable(NotKept(name=name))
        return self.blobs.kept(entry.documents[name])

    def printed(self, entry: Entry) -> dict[str, Any]:
        """Return what an issue printed, opening by opening, as ``parts.json`` has it.

        Raises:
            Unreadable: it was not kept, or is damaged.
        """
        try:
            read = json.loads(self.document(entry, PRINTED))
        except ValueError:
            raise Unreadable(NoRecordOfParts()) from None
        if not isinstance(read, dict) or not isinstance(read.get("openings"), list):
            raise Unreadable(NoRecordOfParts())
        return read

    def printed_opening(self, sheet: IssuedSheet, mark: str, units: str = "") -> Mapping[str, Any]:
        """Return what the sheets of an opening print, from the issue that they were printed in.

        ``units``: those of its lengths, whatever the job was in then; left out, they are as they were.

        Raises:
            Unreadable: it was not kept, or is damaged.
        """
        then, _, openings = self._printed_in(sheet)
        if mark not in openings:
            raise Unreadable(OpeningNotKept(mark=mark, number=sheet.number))
        return in_units(openings[mark], then or units, units or then)

    def printed_grid(self, sheet: IssuedSheet) -> Mapping[str, Any]:
        """Return the shop's grid of the issue that sheets were printed in, as it was printed; empty where not kept."""
        try:
            return self._printed_in(sheet)[1]
        except Unreadable:
            return {}

    def _printed_in(self, sheet: IssuedSheet) -> _Printed:
        """Return units, grid and openings by mark of the issue that sheets were printed in; each is read once.

        Raises:
            Unreadable: it was not kept, or is damaged.
        """
        if sheet.number not in self.issues:
            raise Unreadable(IssueNotOnRecord(number=sheet.number))
        if sheet.number not in self._openings:
            printed = self.printed(self.issues[sheet.number])
            grid = printed.get("grid")
            named = {str(one.get("mark")): one for one in printed["openings"] if isinstance(one, dict)}
            if not (isinstance(grid, dict) and {"value", "text"} <= grid.keys()):
                grid = {}
            self._openings[sheet.number] = (str(printed.get("units", "")), grid, named)
        return self._openings[sheet.number]

    def known_sums(self, path: str) -> set[str]:
        """Return the sha256 of everything that was ever written at a path."""
        return {entry.papers[path].sha256 for entry in self.entries if path in entry.papers}


def _is_taken_over(chain: EntryChain) -> bool:
    return any(entry.verb == MIGRATED for entry in chain.entries.values())
