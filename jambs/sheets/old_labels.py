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
        "hold": [_held(label, is_told=label.mark in other) for label in one.labels if label.holds],
        "labels": [_label(label) for label in one.labels if not label.holds],
        "fresh": list(one.new),
        "unread": list(one.unread),
    }


def _held(one: Label, *, is_told: bool) -> str:
    """Name a label that holds; where the same mark was printed otherwise too, with the issue it is of."""
    return f"{one.mark} ({_issues(one)})" if is_told else one.mark


def _issues(one: Label) -> str:
    return f"issue{'s' * (len(one.issues) > 1)} {', '.join(map(str, one.issues))}"


def _label(one: Label) -> Record:
    issues = ", ".join(map(str, one.issues))
    now = "" if not one.now else one.new if one.now == one.mark else f"{one.now}: {one.new}"
    verdict = one.verdict.sentence(Units.INCH)
    return {"mark": one.mark, "issues": issues, "what": one.what, "old": one.old, "now": now, "verdict": verdict}
