"""What is wrong with a record: what cannot be read of it, and what keeps papers from being written into its folder."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject
from jambs.length import Units

THE_RECORD = Subject.house("record")


def told(findings: Sequence[Finding]) -> str:
    """Return findings of a record as a part of a sentence; none of them holds a length."""
    return "; ".join(one.sentence(Units.INCH) for one in findings)


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordFinding(Finding):
    """A finding of the record of a folder of papers."""

    subject: Subject = THE_RECORD
    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class Unread(RecordFinding):
    """Why one file of a record is no good, in a few words that a sentence can take up: *cut short*."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ContentGone(Unread):
    """A kept content is not there; ``why``: what the system says."""

    code: ClassVar[str] = "content-gone"
    why: str

    def sentence(self, units: Units) -> str:
        """Say so."""
        return f"its content is gone ({self.why})"


@dataclass(frozen=True, slots=True, kw_only=True)
class ContentDamaged(Unread):
    """A kept content is not what its name says."""

    code: ClassVar[str] = "content-damaged"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "its kept content is damaged"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryMissing(Unread):
    """An entry is not there."""

    code: ClassVar[str] = "entry-missing"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "missing"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryUnreadable(Unread):
    """The system does not read an entry; ``why``: what it says."""

    code: ClassVar[str] = "entry-unreadable"
    why: str

    def sentence(self, units: Units) -> str:
        """Say why."""
        return f"cannot be read ({self.why})"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryChanged(Unread):
    """An entry is not what the next one was written after."""

    code: ClassVar[str] = "entry-changed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "changed since it was written"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoEntry(Unread):
    """A file holds no entry."""

    code: ClassVar[str] = "no-entry"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "not an entry of a record"


@dataclass(frozen=True, slots=True, kw_only=True)
class FileEmpty(Unread):
    """Nothing is in a file, or only ``zeros``: what a power cut leaves."""

    code: ClassVar[str] = "file-empty"
    zeros: bool

    def sentence(self, units: Units) -> str:
        """Say which."""
        return "full of zeros" if self.zeros else "empty"


@dataclass(frozen=True, slots=True, kw_only=True)
class FileCutShort(Unread):
    """The end of a file is missing."""

    code: ClassVar[str] = "file-cut-short"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "cut short"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRecordText(Unread):
    """A file holds something else."""

    code: ClassVar[str] = "no-record-text"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "not the text of a record"


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemOfAnotherKind(Unread):
    """A value of a file is not what it has to be; ``wanted``: that in words."""

    code: ClassVar[str] = "item-of-another-kind"
    name: str
    wanted: str

    def sentence(self, units: Units) -> str:
        """Say which, and what it has to be."""
        return f"damaged: {self.name} is not {self.wanted}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberOfAnother(Unread):
    """A file says another number than its name."""

    code: ClassVar[str] = "number-of-another"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "damaged: its number is not its own"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPath(Unread):
    """What should be the path of a paper is none, as Python writes it."""

    code: ClassVar[str] = "no-path"
    text: str

    def sentence(self, units: Units) -> str:
        """Say what it is."""
        return f"{self.text} is not a path"


@dataclass(frozen=True, slots=True, kw_only=True)
class PathLeadsOut(Unread):
    """A path goes where no paper goes."""

    code: ClassVar[str] = "path-leads-out"
    path: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"{self.path!r} leads out of the folder of papers"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotKept(Unread):
    """An entry has no document of a name."""

    code: ClassVar[str] = "not-kept"
    name: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"no {self.name} was kept"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRecordOfParts(Unread):
    """What an issue printed is something else."""

    code: ClassVar[str] = "no-record-of-parts"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "what it printed is not a record of parts"


@dataclass(frozen=True, slots=True, kw_only=True)
class IssueNotOnRecord(Unread):
    """An issue cannot be read."""

    code: ClassVar[str] = "issue-not-on-record"
    number: int

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"issue {self.number} is not on record"


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningNotKept(Unread):
    """An issue does not have what it printed of an opening."""

    code: ClassVar[str] = "opening-not-kept"
    mark: str
    number: int

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"what {self.mark} printed in issue {self.number} was not kept"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperUnreadable(Unread):
    """The kept copy of a paper is no good."""

    code: ClassVar[str] = "paper-unreadable"
    path: str
    why: tuple[Finding, ...]

    def sentence(self, units: Units) -> str:
        """Say which, and why."""
        return f"{self.path}: {told(self.why)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class LaterFormat(RecordFinding):
    """A later version wrote the record."""

    code: ClassVar[str] = "later-format"
    version: int

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return f"the record was written by a later version of jambs (format {self.version}); use that version"


@dataclass(frozen=True, slots=True, kw_only=True)
class FolderInTheWay(RecordFinding):
    """A folder stands where a paper goes."""

    code: ClassVar[str] = "folder-in-the-way"
    file: str

    def sentence(self, units: Units) -> str:
        """Say which, and what to do."""
        return f"{self.file} is a folder, and a paper goes there; move it away"


@dataclass(frozen=True, slots=True, kw_only=True)
class FileInTheWay(RecordFinding):
    """A file stands where a folder of papers goes."""

    code: ClassVar[str] = "file-in-the-way"
    file: str

    def sentence(self, units: Units) -> str:
        """Say which, and what to do."""
        return f"{self.file} is a file, and a folder of papers goes there; move it away"


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict(RecordFinding):
    """A file of the user's stands where a paper goes: its path within the folder, and whether it was ours before."""

    code: ClassVar[str] = "of-the-user"
    path: str
    was_ours: bool

    def sentence(self, units: Units) -> str:
        """Say which it is and what is known of it."""
        return f"{self.path} ({'changed since it was written' if self.was_ours else 'not written by jambs'})"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperNotPutBack(RecordFinding):
    """What a move needs is no longer kept; ``kept``: the file that it was in."""

    code: ClassVar[str] = "paper-not-put-back"
    path: str
    why: tuple[Finding, ...]
    kept: str

    def sentence(self, units: Units) -> str:
        """Say which, why, and what to do."""
        return f"{self.path}: {told(self.why)}; put {self.kept} back from a copy"


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkLeadsOut(RecordFinding):
    """A link in the folder of papers leads out of it."""

    code: ClassVar[str] = "link-leads-out"
    link: str
    folder: str

    def sentence(self, units: Units) -> str:
        """Say which, and what to do."""
        return f"{self.link} is a link that leads out of {self.folder}; put a folder of its own there"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchIssue(RecordFinding):
    """None of this number is on record; ``known``: those that are."""

    code: ClassVar[str] = "no-such-issue"
    number: int
    known: tuple[int, ...]

    def sentence(self, units: Units) -> str:
        """Say which there are."""
        there = ", ".join(map(str, self.known)) or "none yet"
        return f"there is no issue {self.number} on record; issued so far: {there}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotWritten(RecordFinding):
    """The system refused a file, and all is as it was, of ``issue`` (0: none); ``is_full``: for want of room."""

    code: ClassVar[str] = "not-written"
    file: str
    why: str
    issue: int
    is_full: bool

    def sentence(self, units: Units) -> str:
        """Say which, why, and what to do."""
        as_it_was = f"the papers are as they were{f', of issue {self.issue}' if self.issue else ''}"
        advice = "; make room on the disk, and run this again" if self.is_full else ""
        return f"{self.file}: {self.why}; {as_it_was}{advice}"


@dataclass(frozen=True, slots=True, kw_only=True)
class FolderOfAnotherJob(RecordFinding):
    """The folder holds the papers of another job: name and file (empty: unknown) of that and of this."""

    code: ClassVar[str] = "folder-of-another-job"
    folder: str
    theirs: str
    their_file: str
    ours: str
    our_file: str

    def sentence(self, units: Units) -> str:
        """Say whose it is, and what to do."""
        theirs = f"{self.theirs!r}{f' ({self.their_file})' if self.their_file else ''}"
        return (
            f"{self.folder} holds the papers of the job {theirs}; those of {self.ours!r} ({self.our_file}) do not go "
            "there. Choose another folder with --out, or move that one away."
        )
