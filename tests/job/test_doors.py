"""A door stands on its threshold: its frame is told against the floor, and no trim crosses it."""

from __future__ import annotations

from typing import Any

import pytest
from cases import BASE, STOOL, changed, job_of

from jambs.job import JobFaults
from jambs.job.questions import begun, wrong_with
from jambs.job.starter import new_job_text
from jambs.length import Units

THREE_SIDED = {**BASE["interior_trim"]["inside"], "style": "three-sided"}
DOOR: dict[str, Any] = {
    "windows__fixed__sash": "door in",
    "interior_trim__inside": THREE_SIDED,
    "openings__0__frame": "37 1/2 x 82 1/2",
    "openings__0__rough_opening": "38 x 83",
    "openings__0__sill_height": None,
    "openings__0__floor_below_frame": "3/4",
}
HAS = ("openings__0__sill_height",)
"""What the base job gives and a door does not."""
MISSING = (
    "is a door, and floor_below_frame is missing: legs, casing and buck end by it; give it{}, from the bottom of the "
    "door's frame down to the finished floor (0: the frame stands on the floor; `jambs keys heights`)"
)


def sentences(**paths: Any) -> list[str]:
    given = {**DOOR, **paths}
    try:
        job_of(changed(**{key: value for key, value in given.items() if value is not None or key in HAS}))
    except JobFaults as error:
        return [fault.sentence for fault in error.faults]
    return []


@pytest.mark.parametrize("sash", ["door in", "door out"])
def test_a_door_is_asked_where_the_floor_is(sash: str) -> None:
    assert sentences(windows__fixed__sash=sash, openings__0__floor_below_frame=None) == [MISSING.format("")]
    assert sentences(windows__fixed__sash=sash) == []
    assert sentences(windows__fixed__sash=sash, openings__0__floor_below_frame="0") == []


@pytest.mark.parametrize("key", ["sill_height", "head_height"])
def test_the_height_of_a_window_is_no_answer(key: str) -> None:
    paths = {"openings__0__floor_below_frame": None, f"openings__0__{key}": "90"}
    assert sentences(**paths) == [MISSING.format(f", instead of {key}")]


@pytest.mark.parametrize("sash", ["fixed", "slider", "casement in"])
def test_a_window_is_not_asked(sash: str) -> None:
    window = {"windows__fixed__sash": sash, "openings__0__floor_below_frame": None, "openings__0__sill_height": "1"}
    assert sentences(**window, interior_trim__inside=BASE["interior_trim"]["inside"]) == []


CROSSED = {
    "picture framed": (BASE["interior_trim"]["inside"], "a jamb and a casing"),
    "stool and apron": (STOOL, "a stool and an apron"),
}


@pytest.mark.parametrize("style", CROSSED)
@pytest.mark.parametrize("sash", ["door in", "slider"])
def test_no_trim_crosses_the_threshold(style: str, sash: str) -> None:
    trim, bottom = CROSSED[style]
    assert sentences(windows__fixed__sash=sash, interior_trim__inside=trim) == [
        f"is {style}, which puts {bottom} across the threshold of a door; give it a trim of style: three-sided"
    ]
    assert sentences(windows__fixed__sash=sash) == []


def test_a_door_may_be_wrong_in_both_ways() -> None:
    both = sentences(openings__0__floor_below_frame=None, interior_trim__inside=STOOL)
    assert len(both) == 2


@pytest.mark.parametrize("units", list(Units))
def test_the_starter_shows_a_door_and_answers_bring_none(units: Units) -> None:
    shown, asked = new_job_text(units), begun("Mine", units)
    assert "floor_below_frame:" in shown and "door in\n" in shown and "style: three-sided\n" in shown
    assert "floor_below_frame" not in asked and "garden door" not in asked and "D01" not in asked
    assert wrong_with(asked) == []
