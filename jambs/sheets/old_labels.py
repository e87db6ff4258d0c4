"""Old labels: what a label that is on a board already means now, and what to do with that board."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from jambs.findings import Statement
from jambs.job.models.openings import Job
from jambs.length import Units
from jambs.sheets.every_page import page_data
from jambs.sheets.press import press
from jambs.values import Record


class Label(Protocol):
    """An old label."""

    @property
    def mark(self) -> str:
        """The mark on it."""

    @property
    def issues(self) -> tuple[int, ...]:
        """The issues whose label says so."""

    @property
    def what(self) -> str:
        """The part in words."""

    @property
    def old(self) -> str:
        """Its size then."""

    @property
    def now(self) -> str:
        """The part's mark today, empty where there is none."""

    @property
    def new(self) -> str:
        """Its size today."""

    @property
    def verdict(self) -> Statement:
        """What to do with the board."""

    @property
    def holds(self) -> bool:
        """Say whether the label is right as it is."""


class Labels(Protocol):
    """The old labels of one opening."""

    @property
    def mark(self) -> str:
        """The opening."""

    @property
    def room(self) -> str:
        """Its room."""

    @property
    def now(self) -> int | None:
        """The issue of its labels today; none where it is gone."""

    @property
    def labels(self) -> Sequence[Label]:
        """All that were printed."""

    @property
    def new(self) -> tuple[str, ...]:
        """Marks of parts that had no label before."""

    @property
    def unread(self) -> tuple[int, ...]:
        """Issues whose labels are not on record any more."""


def old_labels_pdf(openings: Sequence[Labels], job: Job, *, number: int, day: str) -> bytes:
    """Return the page of old labels as PDF bytes."""
    return press("old_labels", old_labels_data(openings, job, number=number, day=day))


def old_labels_data(openings: Sequence[Labels], job: Job, *, number: int, day: str) -> Record:
    """Return what the page of old labels prints."""
    return {**page_data(job), "number": number, "day": day, "openings": [_opening(one) for one in openings]}


def _opening(one: Labels) -> Record:
    other = {label.mark for label in one.labels if not label.holds}
    return {
        "mark": one.mark,
        "room": one.room,
        "now": one.now,
        "hold": [_held(mark, issues, is_told=mark in other) for mark, issues in _holding(one.labels).items()],
        "labels": [_label(label) for label in one.labels if not label.holds],
        "fresh": list(one.new),
        "unread": list(one.unread),
    }


def _holding(labels: Sequence[Label]) -> dict[str, list[int]]:
    """Return the issues of the labels that hold, by their marks: a part may have been told by other words."""
    found: dict[str, list[int]] = {}
    for label in labels:
        if label.holds:
            found[label.mark] = sorted({*found.get(label.mark, ()), *label.issues})
    return found


def _held(mark: str, issues: Sequence[int], *, is_told: bool) -> str:
    """Name a label that holds; where the same mark was printed otherwise too, with the issues it is of."""
    return f"{mark} (issue{'s' * (len(issues) > 1)} {', '.join(map(str, issues))})" if is_told else mark


def _label(one: Label) -> Record:
    issues = ", ".join(map(str, one.issues))
    now = "" if not one.now else one.new if one.now == one.mark else f"{one.now}: {one.new}"
    verdict = one.verdict.sentence(Units.INCH)
    return {"mark": one.mark, "issues": issues, "what": one.what, "old": one.old, "now": now, "verdict": verdict}
