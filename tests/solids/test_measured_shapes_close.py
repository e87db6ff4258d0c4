"""Openings that are no rectangle in walls that lean: every kit sawn from its cut list alone closes all the same."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from measured_kits import Wall, measured
from random_kits import RandomKit, kit_from
from random_openings import shape_kits
from rounds import inside_only, round_changes

from jambs.length import Units
from jambs.parts.board.cuts import Taper
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit


def report_of(made: RandomKit) -> FitReport:
    return fit_report(model_kit(made.kit, made.job))


leans = st.tuples(*(st.integers(-8, 8).map(lambda count: count / 64),) * 3)


@given(shape_kits(), leans)
@settings(max_examples=3, deadline=None)
def test_every_measured_kit_of_a_shape_closes(made: RandomKit, wall: Wall) -> None:
    assume(made.kit.placement.interior_depth > 1.5 and made.kit.placement.exterior_depth > 1)
    found = measured(made, wall)
    assert found.kit.is_measured
    assert report_of(found).faults == ()


@pytest.mark.parametrize(
    ("shape", "size"),
    [
        ("triangle", (48, 30)),
        ("full round", (36, 36)),
        ({"kind": "quarter round", "high_side": "left"}, (30, 30)),
        ("half round", (36, 54)),
    ],
    ids=["triangle", "full round", "quarter round", "half round"],
)
def test_a_round_or_a_triangle_in_a_leaning_wall_closes(shape: Any, size: tuple[int, int]) -> None:
    """A full round is bent in two halves, which is cheaper to model than its segments."""
    how: dict[str, Any] = {"curved": "bent laminations"} if shape == "full round" else {}
    made = measured(kit_from(inside_only(round_changes(shape, *size, **how))), (1 / 32, 1 / 16, 1 / 8))
    assert made.kit.is_measured
    assert report_of(made).faults == ()


def test_a_board_that_tapers_the_wrong_way_is_told() -> None:
    """The witness sees: the left slope of a triangle turned end for end, too narrow at its peak."""
    made = measured(kit_from(inside_only(round_changes("triangle", 48, 30))), (0, 0, 1 / 8))
    bad = [
        replace(part, cuts=tuple(_turned(cut) for cut in part.cuts)) if part.position == "head, left" else part
        for part in made.kit.parts
    ]
    faults = [
        one.sentence(Units.INCH) for one in fit_report(model_kit(replace(made.kit, parts=tuple(bad)), made.job)).faults
    ]
    assert sum("depth of the head, left" in one for one in faults) == 2


def _turned(cut: Any) -> Any:
    if not isinstance(cut, Taper):
        return cut
    return replace(cut, start_width=cut.finish_width, finish_width=cut.start_width)
