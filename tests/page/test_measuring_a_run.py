"""Readings of openings that are trimmed as one: the answer at one counts what holds of the others, as a build does."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest
import yaml
from trimmed_as_one import side_by_side

from jambs.job import Job
from jambs.job.models.openings import Opening
from jambs.place.placement import Placement
from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.sent_reading import SentReading


@pytest.fixture
def measuring(tmp_path: Path) -> Measuring:
    (tmp_path / "job.yaml").write_text(yaml.safe_dump(side_by_side(2), sort_keys=False, allow_unicode=True))
    found = Measuring(Desk(file=tmp_path / "job.yaml", target=tmp_path / "output"))
    for mark in ("W1", "W2"):
        for place in (1, 3, 5, 7):
            sent = {"id": f"{mark} {place}", "mark": mark, "day": "2026-06-01", "by": "Ann"}
            found.take(SentReading(place=place, text="4 11/16", was="", is_sure=True, **sent))
    return found


def openings(measuring: Measuring, mark: str) -> dict[str, Opening]:
    _, job = measuring.placement(mark)
    return {one.mark: one for one in job.openings}


def test_the_answer_counts_what_was_read_of_the_neighbor(measuring: Measuring) -> None:
    assert all(one.readings for one in openings(measuring, "W1").values())


def test_a_neighbors_reading_that_was_set_aside_counts_for_nothing(
    measuring: Measuring, monkeypatch: pytest.MonkeyPatch
) -> None:
    class SecondVoid:
        def held(self, placements: Sequence[Placement], job: Job) -> tuple[Placement, ...]:
            bare = [replace(one, opening=replace(one.opening, readings=None, measured=None)) for one in placements]
            return tuple(own if own.opening.mark == "W1" else none for own, none in zip(placements, bare, strict=True))

    monkeypatch.setattr("jambs.screen.measuring.first_reads", lambda job, folder: SecondVoid())
    found = openings(measuring, "W1")
    assert found["W1"].readings and not found["W2"].readings
