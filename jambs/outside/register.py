"""The register of findings of a build: each once, with its subject, the openings it holds for, the papers it is on.

Made in one place, after the outside is planned and before anything is drawn. Every paper and the screen draw from it,
so that their counts agree: a finding counts once for each subject it has, and stands on the summary in any case.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import Enum

from jambs.fasten.plan import verdict_findings
from jambs.findings import Finding, Severity, Subject, SubjectKind
from jambs.job.models.openings import Job
from jambs.length import Units
from jambs.outside.plan import PlannedOutside
from jambs.parts.kit.cut_kit import CutKit

ORDER = (Severity.STOP, Severity.CHECK, Severity.NOTE)
"""The weightiest first."""


class Paper(Enum):
    """Papers that findings stand on beside the summary."""

    CUT_SHEET = "cut sheet"
    INSTALL_SHEET = "install sheet"
    COURSES = "courses and story poles"
    FLASHING = "flashing"
    FASTENERS = "fasteners"
    MOVEMENT = "wood movement"


@dataclass(frozen=True, slots=True, kw_only=True)
class Registered:
    """One finding, its sentence in the units of the job, the openings it holds for by mark, the papers it stands on."""

    finding: Finding
    sentence: str
    marks: tuple[str, ...]
    papers: frozenset[Paper]

    @property
    def severity(self) -> Severity:
        """How much it matters."""
        return self.finding.severity

    @property
    def subject(self) -> Subject:
        """What it is about."""
        return self.finding.subject

    @property
    def is_of_opening(self) -> bool:
        """Say whether it is about one opening, not about a wall, an elevation or the house."""
        return self.subject.kind in (SubjectKind.OPENING, SubjectKind.PART)


@dataclass(frozen=True, slots=True, kw_only=True)
class Register:
    """All findings of a build, the weightiest first."""

    entries: tuple[Registered, ...] = ()

    def of_opening(self, mark: str) -> tuple[Registered, ...]:
        """Return what is about an opening itself."""
        return tuple(one for one in self.entries if one.is_of_opening and mark in one.marks)

    @property
    def of_the_rest(self) -> tuple[Registered, ...]:
        """What is about a wall, an elevation or the house."""
        return tuple(one for one in self.entries if not one.is_of_opening)

    def on(self, paper: Paper, *, mark: str | None = None) -> tuple[Registered, ...]:
        """Return what stands on a paper; on that of one opening, what holds for it."""
        return tuple(one for one in self.entries if paper in one.papers and (mark is None or mark in one.marks))

    def only(self, marks: Iterable[str]) -> Register:
        """Return what is told where only some openings are asked for: what is about them and about their walls."""
        asked = set(marks)
        told = (*(one for one in self.entries if one.is_of_opening or one.subject.kind is SubjectKind.WALL),)
        return Register(entries=tuple(one for one in told if asked & set(one.marks)))


def counts(entries: Iterable[Registered]) -> dict[Severity, int]:
    """Return how many findings there are of each severity, the weightiest first; none that has none."""
    counted = Counter(one.severity for one in entries)
    return {severity: counted[severity] for severity in ORDER if counted[severity]}


class _Gathering:
    """Findings while they are gathered: the same sentence of one subject is one finding."""

    def __init__(self, units: Units) -> None:
        self._units = units
        self._found: dict[tuple[Subject, Severity, str, str], Registered] = {}

    def add(self, findings: Iterable[Finding], papers: Iterable[Paper], marks: Sequence[str] = ()) -> None:
        """Take findings that hold for some openings and stand on some papers."""
        for finding in findings:
            sentence = finding.sentence(self._units)
            owner = marks[0] if finding.subject.kind is SubjectKind.PART and marks else ""
            key = (finding.subject, finding.severity, sentence, owner)
            before = self._found.get(key)
            self._found[key] = Registered(
                finding=finding,
                sentence=sentence,
                marks=tuple(dict.fromkeys((*(before.marks if before else ()), *marks))),
                papers=frozenset(papers) | (before.papers if before else frozenset()),
            )

    def register(self) -> Register:
        """Return what was gathered, the weightiest first, else as it came."""
        entries = sorted(self._found.values(), key=lambda one: ORDER.index(one.severity))
        return Register(entries=tuple(entries))


def make_register(kits: Sequence[CutKit], outside: PlannedOutside, job: Job) -> Register:
    """Gather the findings of a house whose outside is planned."""
    found = _Gathering(job.units)
    for kit in kits:
        told = (*kit.placement.findings, *kit.findings)
        found.add(told, [Paper.CUT_SHEET], [kit.mark])
        # What has to be seen to is told again where the window is put in.
        found.add((one for one in told if one.severity is not Severity.NOTE), [Paper.INSTALL_SHEET], [kit.mark])
    for movement in outside.movements:
        found.add(movement.findings, [Paper.MOVEMENT, Paper.INSTALL_SHEET], [movement.mark])
    for fitting in outside.fittings:
        papers = [Paper.INSTALL_SHEET, *([Paper.FLASHING] if fitting.flashings.blanks else [])]
        found.add(fitting.flashings.findings, papers, [fitting.mark])
        found.add(fitting.findings, [Paper.INSTALL_SHEET], [fitting.mark])
    _add_fasteners(found, outside, job)
    for plan in outside.courses:
        found.add(plan.findings, [Paper.COURSES])
    found.add(outside.findings, [])
    return found.register()


def _add_fasteners(found: _Gathering, outside: PlannedOutside, job: Job) -> None:
    """Gather what is to know of fasteners that the job states, and what the table says of those and of assumed ones."""
    openings = {fitting.mark for fitting in outside.fittings}
    for line in outside.fasteners:
        found.add(line.findings, [Paper.FASTENERS], [line.where] if line.where in openings else [])
    assumed = [line for one in outside.fittings for line in one.outboard if line.fixed not in job.outside.fasteners]
    for verdict in verdict_findings((*outside.fasteners, *assumed), Subject.house(job.name)):
        marks = [place for place in verdict.places if place in openings]
        papers = [Paper.FASTENERS] if verdict.fixed in job.outside.fasteners else []
        found.add([verdict], [*papers, *([Paper.INSTALL_SHEET] if marks else [])], marks)
