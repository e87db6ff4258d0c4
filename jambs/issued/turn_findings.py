"""What a verb is told while it has its turn: whom it waits for, what was put right, what is not known any more."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.issued.findings import RecordFinding, told
from jambs.issued.paths import FOLDER
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnFinding(RecordFinding):
    """Something that is told while the work goes on."""

    severity: Severity = Severity.NOTE


Tell = Callable[[TurnFinding], None]
"""Is told what happens while the work goes on."""


def untold(one: TurnFinding) -> None:
    """Tell nobody."""


# ---- the lock


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitsForAnother(TurnFinding):
    """Another one writes into the folder."""

    code: ClassVar[str] = "waits-for-another"
    holder: str
    folder: str

    def sentence(self, units: Units) -> str:
        """Say whom it waits for."""
        return f"waiting: {self.holder} is writing to {self.folder}; this goes on when it is done"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoLocksThere(TurnFinding):
    """The file system of the folder knows no locks."""

    code: ClassVar[str] = "no-locks-there"
    severity: Severity = Severity.CHECK
    folder: str

    def sentence(self, units: Units) -> str:
        """Say what to see to."""
        return f"{self.folder} is on a disk that knows no locks; see that nobody else writes there now"


# ---- the record put right


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordGone(TurnFinding):
    """Papers stand in the folder and no record."""

    code: ClassVar[str] = "record-gone"
    severity: Severity = Severity.CHECK
    folder: str

    def sentence(self, units: Units) -> str:
        """Say what is void."""
        return (
            f"{self.folder} holds papers, but no record of what was issued: it is gone. Sheets printed before today "
            "are void, whatever issue they name."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenOver(TurnFinding):
    """A record of the earlier format was taken over, of so many issues."""

    code: ClassVar[str] = "taken-over"
    issues: int

    def sentence(self, units: Units) -> str:
        """Say so."""
        return f"the record of {self.issues} issues in the earlier format was taken over"


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierIssueLost(TurnFinding):
    """An issue of the earlier format cannot be read; ``aside``: where its file is now, empty where there is none."""

    code: ClassVar[str] = "earlier-issue-lost"
    severity: Severity = Severity.CHECK
    number: int
    why: Finding
    aside: str

    def sentence(self, units: Units) -> str:
        """Say which, why, and what is not known."""
        lost = "what it changed is no longer known"
        return f"the record of issue {self.number} is {told((self.why,))}{_set_aside(self.aside)}; {lost}"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntriesHealed(TurnFinding):
    """Entries were written anew, by number."""

    code: ClassVar[str] = "entries-healed"
    numbers: tuple[int, ...]

    def sentence(self, units: Units) -> str:
        """Say which."""
        numbers = _runs(self.numbers)
        return f"entry {numbers} of the record was damaged or gone, and is written anew from its copy"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntrySetAside(TurnFinding):
    """An entry is damaged and has no copy; ``aside``: where its file is now."""

    code: ClassVar[str] = "entry-set-aside"
    severity: Severity = Severity.CHECK
    number: int
    why: Finding
    aside: str

    def sentence(self, units: Units) -> str:
        """Say which, and why."""
        return f"{FOLDER}/entries/{self.number:05}.json is {told((self.why,))}{_set_aside(self.aside)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntriesMissing(TurnFinding):
    """Entries are not there and have no copy, by number."""

    code: ClassVar[str] = "entries-missing"
    severity: Severity = Severity.CHECK
    numbers: tuple[int, ...]

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"entry {_runs(self.numbers)} of the record is missing"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotKnownAnyMore(TurnFinding):
    """What was lost with entries, by number; ``known``: issues on record; ``next_issue``: the number it will have."""

    code: ClassVar[str] = "not-known-any-more"
    severity: Severity = Severity.CHECK
    numbers: tuple[int, ...]
    known: tuple[int, ...]
    next_issue: int

    def sentence(self, units: Units) -> str:
        """Say what is known without them and what is not."""
        entries = f"{'entry' if len(self.numbers) == 1 else 'entries'} {_runs(self.numbers)}"
        known = ", ".join(map(str, self.known)) or "none"
        return (
            f"No longer known: what was written and issued by {entries}. Known issues: {known}. "
            f"The next issue is {self.next_issue}, so that no number stands on two sheets."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveLogDamaged(TurnFinding):
    """The log of a move cannot be read; ``aside``: where its file is now."""

    code: ClassVar[str] = "move-log-damaged"
    severity: Severity = Severity.CHECK
    aside: str

    def sentence(self, units: Units) -> str:
        """Say what is done without it."""
        back = "the papers are put back as they are on record"
        return f"the log of a move of papers is damaged{_set_aside(self.aside)}; {back}"


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveNotCompleted(TurnFinding):
    """A verb was stopped while it moved its papers in, and what it needs is gone."""

    code: ClassVar[str] = "move-not-completed"
    severity: Severity = Severity.CHECK
    verb: str
    why: tuple[Finding, ...]

    def sentence(self, units: Units) -> str:
        """Say whose it was, and why it stays undone."""
        why = "\n".join(one.sentence(units) for one in self.why)
        return f"a jambs {self.verb} was stopped while it moved its papers in, and cannot be completed: {why}"


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveCompleted(TurnFinding):
    """A verb was stopped while it moved its papers in; ``issue``: that it made, None where it made none."""

    code: ClassVar[str] = "move-completed"
    verb: str
    issue: int | None

    def sentence(self, units: Units) -> str:
        """Say whose it was, and what it made."""
        issue = "" if self.issue is None else f": issue {self.issue}"
        return f"an earlier jambs {self.verb} was stopped while it moved its papers in; that is now completed{issue}"


# ---- papers


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperTurnFinding(TurnFinding):
    """Something that is told of one paper, by its path in the folder."""

    path: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftAsChanged(PaperTurnFinding):
    """Somebody wrote on it before a move was completed."""

    code: ClassVar[str] = "left-as-changed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return f"{self.path} was changed since and is left as it is"


@dataclass(frozen=True, slots=True, kw_only=True)
class VoidButChanged(PaperTurnFinding):
    """It is void, and somebody wrote on it."""

    code: ClassVar[str] = "void-but-changed"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Say that it stays."""
        return f"{self.path} is void; it was changed since it was written, and is left there"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangedSince(PaperTurnFinding):
    """It stays on the list, and somebody wrote on it."""

    code: ClassVar[str] = "changed-since"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return f"{self.path} was changed since it was written"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperPutBack(PaperTurnFinding):
    """It was gone, or else damaged, and its content is kept."""

    code: ClassVar[str] = "paper-put-back"
    is_gone: bool

    def sentence(self, units: Units) -> str:
        """Say which of both."""
        return f"{self.path} was {_lost(self.is_gone)} and is put back"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperOffTheList(PaperTurnFinding):
    """It is gone, or else damaged, and not put back."""

    code: ClassVar[str] = "paper-off-the-list"
    is_gone: bool

    def sentence(self, units: Units) -> str:
        """Say which of both."""
        return f"{self.path} is {_lost(self.is_gone)} and is off the list of papers"


def _lost(is_gone: bool) -> str:
    return "gone" if is_gone else "damaged"


def _set_aside(aside: str) -> str:
    return f", and was set aside as {aside}" if aside else ""


def _runs(numbers: Iterable[int]) -> str:
    """Return numbers with runs drawn together: ``1-4, 7``."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs)
