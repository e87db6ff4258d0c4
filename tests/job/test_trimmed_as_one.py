"""Openings that are trimmed as one as a job lists them: the runs they stand in, and what keeps them apart, in words."""

from __future__ import annotations

from typing import Any

import pytest
from metal import lined
from trimmed_as_one import run_job, side_by_side

from jambs.job.models.trim_run import TrimRun
from jambs.job.reading.faults import JobFaults


def faults(count: int = 2, **paths: Any) -> list[str]:
    with pytest.raises(JobFaults) as raised:
        run_job(count, **paths)
    return [f"{fault.where}: {fault.sentence}" for fault in raised.value.faults]


def test_a_run_is_followed_from_its_leftmost() -> None:
    job = run_job(3, openings__1__trim_with={"right_of": "W1", "wall": "7"})
    run = TrimRun(marks=("W1", "W2", "W3"), walls=(7.0, 5.5))
    assert [one.run for one in job.openings] == [run, run, run]
    assert run.lead == "W1"
    assert run.others("W2") == ("W1", "W3")


def test_a_run_is_the_same_in_whatever_order_its_openings_are_listed() -> None:
    data = side_by_side(3)
    listed = [data["openings"][place] for place in (2, 0, 1)]
    run = TrimRun(marks=("W1", "W2", "W3"), walls=(5.5, 5.5))
    assert {one.mark: one.run for one in run_job(3, openings=listed).openings} == dict.fromkeys(run.marks, run)


def test_openings_that_say_nothing_stand_in_no_run() -> None:
    assert [one.run for one in run_job(1).openings] == [None]


def test_both_are_said_in_one_text_as_a_schedule_holds_it() -> None:
    assert run_job(2, openings__1__trim_with="5 1/2 right of W1").openings[1].run == TrimRun(
        marks=("W1", "W2"), walls=(5.5,)
    )


AT = 'openings[1] "W2": trim_with'


@pytest.mark.parametrize(
    ("paths", "said"),
    [
        (
            {"openings__1__trim_with": "W1"},
            f"{AT}: 'W1' does not say both; write {{right_of: W3, wall: 5 1/2}}, or 5 1/2 right of W3",
        ),
        (
            {"openings__1__trim_with__right_of": "W7"},
            f"{AT}.right_of: no opening has the mark 'W7'; write one of W1",
        ),
        (
            {"openings__1__trim_with__right_of": "W2"},
            f"{AT}.right_of: W2 is the opening itself; name the one at its left",
        ),
        (
            {"openings__1__frame": "35 1/2 x 46"},
            f'{AT}: its frame is 46" and that of W1 47 1/2" high; one head lies over both: make them alike',
        ),
        (
            {"openings__1__sill_height": "35"},
            f'{AT}: its sill height is 35" and that of W1 36"; write sill_with: W1 in its place',
        ),
        (
            {"openings__1__sill_height": None},
            f"{AT}: only one of both says how high it stands; write sill_with: W1 here, or no height at all",
        ),
        (
            {"openings__1__position": {"share": "1/4"}},
            f"{AT}: its position is another than that of W1, and one stool lies under both; give it to the wall",
        ),
        (
            {"openings__1__exterior_trim": "none"},
            f"{AT}: its exterior_trim is none and that of W1 outside; give both the same",
        ),
    ],
    ids=["half said", "no such mark", "itself", "frame", "height", "no height", "position", "exterior trim"],
)
def test_what_does_not_go_together_is_told_at_the_right_one(paths: dict[str, Any], said: str) -> None:
    assert said in faults(**paths)


def test_windows_of_two_depths_have_no_stool_in_common() -> None:
    deep = {**side_by_side()["windows"]["fixed"], "jamb_depth": "5 9/16"}
    found = faults(windows__deep=deep, openings__0__window="fixed", openings__1__window="deep")
    assert found == [
        f'{AT}: its window\'s jamb_depth is 5 9/16" and that of W1 4 9/16"; choose windows with the same depths and '
        "faces"
    ]


def test_faces_may_differ_at_the_sides_and_not_at_head_and_sill() -> None:
    fixed = side_by_side()["windows"]["fixed"]
    face = {"left": "2", "right": "3", "head": "2 1/2", "sill": "2 1/2"}
    named: dict[str, Any] = {"openings__0__window": "fixed", "openings__1__window": "other"}
    assert run_job(windows__other={**fixed, "frame_face": face}, **named).openings[1].run is not None
    found = faults(windows__other={**fixed, "frame_face": {**face, "sill": "3"}}, **named)
    cure = "choose windows with the same depths and faces"
    assert found == [
        f'{AT}: the frame face of its window at the sill is 3" and that of W1 2 1/2"; {cure}',
        f'{AT}: the outside face of its window at the sill is 3" and that of W1 2 1/2"; {cure}',
    ]


@pytest.mark.parametrize(
    ("paths", "said"),
    [
        (
            {"interior_trim__inside__mull_casing": None},
            "its interior trim has no mull_casing, and W1 is trimmed as one with a neighbor; give it mull_casing: "
            "{thickness: …, stock: …} for the board on the wall between",
        ),
        (
            {"exterior_trim__outside__mull_casing": None},
            "its exterior trim has no mull_casing, and W1 is trimmed as one with a neighbor; give it mull_casing: "
            "{thickness: …, stock: …} for the board on the wall between",
        ),
        (
            {"interior_trim__inside__flare": {"sides": "10 deg"}},
            "its interior trim has a flare, and W1 is trimmed as one with a neighbor; trim flared openings each by "
            "itself, or take flare out",
        ),
        (
            {"exterior_trim__outside": lined()},
            "its exterior trim has returns of bent metal, and W1 is trimmed as one with a neighbor; sheet is turned at "
            "the corners of its own opening and has its legs on the wall between, so that nothing lies over both: take "
            "trim_with out and line each by itself, heads in line by sill_with, gang them under units in one rough "
            "opening, where strips of metal cover the mulls, or take returns out",
        ),
    ],
    ids=["no mull casing", "none outside", "flare", "bent metal outside"],
)
def test_a_trim_that_no_board_can_lie_over_is_told_of_both(paths: dict[str, Any], said: str) -> None:
    assert faults(**paths) == [
        f'openings[0] "W1": {said}',
        f'openings[1] "W2": {said.replace("W1", "W2")}',
    ]


def test_a_ring_and_two_at_the_right_of_one_are_told() -> None:
    ring = faults(3, openings__0__trim_with={"right_of": "W3", "wall": "5"})
    assert ring[0] == (
        'openings[0] "W1": trim_with: W1 is at the right of itself, by way of others; the one at the left, as seen '
        "from inside, names none: take trim_with out there"
    )
    assert faults(3, openings__2__trim_with__right_of="W1") == [
        f"{AT}.right_of: W2 and W3 are both at the right of W1; let each name the one beside it"
    ]


def test_an_opening_at_fault_itself_is_not_called_unknown_by_its_neighbor() -> None:
    (told,) = faults(3, openings__1__trim_with={"right_of": "W1", "wall": "-1"})
    assert told.startswith(f"{AT}.wall: ")
