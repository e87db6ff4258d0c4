"""The answer to a reading: the printed figures, what is asked for next, which fractions stand first."""

from __future__ import annotations

from dataclasses import replace

import pytest
from cases import changed, job_of, placed

from jambs.job.measured.measuring_points import Kind
from jambs.length import GRIDS
from jambs.sheets.reading_answer import asked_order, fractions, likely_fractions, reading_answer


def test_the_corners_inside_are_asked_for_first_clockwise_from_the_upper_left() -> None:
    order = asked_order(placed())
    assert [(place.x, place.y) for place in order[:4]] == [(0, 1), (1, 1), (1, 0), (0, 0)]
    assert all(place.kind is Kind.INTERIOR_DEPTH for place in order[:4])
    assert not any(place.is_corner for place in order[4:8])


@pytest.mark.parametrize(
    ("planned", "grid", "likely"),
    [
        (4 + 5 / 16, "1/16", ["3/16", "1/4", "5/16", "3/8", "7/16"]),
        (4 + 15 / 16, "1/16", ["1/16", "13/16", "7/8", "15/16"]),
        (4.0, "1/16", ["1/16", "1/8", "7/8", "15/16"]),
        (4 + 1 / 4, "1/32", ["3/16", "7/32", "1/4", "9/32", "5/16"]),
        (-1.25, "1/16", ["1/8", "3/16", "1/4", "5/16", "3/8"]),
    ],
)
def test_the_likely_fractions_lie_around_the_planned_one(planned: float, grid: str, likely: list[str]) -> None:
    found = likely_fractions(planned, GRIDS[grid])
    assert set(likely) <= set(found) and len(found) == 5


def test_a_metric_job_has_no_fractions() -> None:
    assert fractions(GRIDS["1 mm"]) == [] and likely_fractions(4.0, GRIDS["0.5 mm"]) == []
    assert fractions(GRIDS["1/16"])[:3] == ["1/16", "1/8", "3/16"] and len(fractions(GRIDS["1/16"])) == 15
    assert len(fractions(GRIDS["1/64"])) == 63
    assert likely_fractions(None, GRIDS["1/16"]) == []


def test_where_no_kit_can_be_made_the_answer_says_why_in_the_place_of_widths() -> None:
    """Planned 1/4 in deep inside, which the shop does not mill (common practice, no source)."""
    shallow, job = replace(placed(), interior_depth=0.25), job_of(changed())
    answer = reading_answer(shallow, job)
    assert answer["boards"] == []
    assert answer["caption"].startswith('No width: W1: the interior depth is 1/4"')
    assert answer["told"] == []
    assert reading_answer(placed(), job)["caption"] == "No width yet: read the corners"
