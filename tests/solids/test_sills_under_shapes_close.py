"""Kits whose slants or arcs stand on an exterior sill, sawn from their cut lists alone, close."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from measured_kits import measured
from sills_under_shapes import SILL, on_sill

from jambs.geometry import Plane
from jambs.length import Units
from jambs.parts.board.cuts import Miter
from jambs.parts.board.kinds import PartKind, Where
from jambs.solids import kernel
from jambs.solids.fit import fit_report
from jambs.solids.model import STANDING, model_kit, past_plane, stood

SHAPES: list[tuple[Any, float, float]] = [
    ("triangle", 48, 30),
    ({"kind": "triangle", "peak_from_left": "0"}, 48, 30),
    ("half round", 36, 18),
    ({"kind": "quarter round", "high_side": "right"}, 30, 30),
    ({"kind": "segment arch", "rise": "10"}, 36, 10),
]


@pytest.mark.parametrize(("shape", "width", "height"), SHAPES)
def test_what_stands_on_a_sill_closes(shape: Any, width: float, height: float) -> None:
    made = on_sill(shape, width, height, exterior_trim__outside__sill={**SILL, "under_frame": "3/4", "slope": "14 deg"})
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    assert any("the feet of the exterior casing and the sill" in one.name for one in report.joints)
    assert any("right notch of the sill to the jamb's back" in one.name for one in report.measures)


@pytest.mark.parametrize("wall", [(1 / 8, 0, 0), (1 / 32, 1 / 16, 1 / 8)])
def test_what_stands_on_a_sill_closes_in_a_wall_that_was_measured(wall: tuple[float, float, float]) -> None:
    """Feet go by the sill where there are no legs: deeper by 1/8 than planned they stand as much lower as it falls."""
    for shape, width, height in (SHAPES[0], SHAPES[2], SHAPES[3]):
        made = measured(on_sill(shape, width, height), wall)
        assert made.kit.is_measured
        assert fit_report(model_kit(made.kit, made.job)).faults == ()


def test_a_foot_cut_square_to_the_wall_does_not_bear() -> None:
    """The witness sees: the slope left out of the feet of a triangle's casing."""
    made = on_sill("triangle", 48, 30)
    piece = next(part for part in made.kit.parts if part.kind is PartKind.CASING and part.where is Where.EXTERIOR)
    cuts = tuple(cut for cut in piece.cuts if isinstance(cut, Miter) or type(cut).__name__ != "PlaneCut")
    parts = tuple(replace(part, cuts=cuts) if part is piece else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any("the feet of the exterior casing" in fault.sentence(Units.INCH) for fault in found)


def test_a_cylinder_that_is_cut_oblique_is_listed_as_it_is() -> None:
    """A quarter of a tube, radii 10 and 11, 6 long, less what lies past a plane at 45° through a corner of its end.

    Its outer side, unrolled, is 11 x (6 - 11 (1 - cos u)) summed to a right angle less what the cut takes: with the
    cut along y = x it keeps 6 - 11 sin u of each line while that is more than nothing.
    """
    outline = [
        ((10.0, 0.0, 0.0), None),
        ((11.0, 0.0, 0.0), _on(11)),
        ((0.0, 11.0, 0.0), None),
        ((0.0, 10.0, 0.0), _on(10)),
    ]
    tube = kernel.curved_prism(outline, (0.0, 0.0, 20.0))
    plane = Plane(start=(0.0, 0.0, 6.0), finish=(10.0, 0.0, 6.0), way=(0.0, 1.0, 1.0), keep=(10.0, 0.0, 0.0))
    solid = stood(name="", material="", part=None, bench=kernel.less(tube, past_plane(plane)), seat=STANDING)
    outer = [facet for facet in solid.facets if abs(facet.offset - 11) < 0.01 and abs(facet.normal[2]) < 1e-6]
    area = sum(_area(facet.loops[0]) for facet in outer)
    # The sum of 11 x (6 + 11 sin u) over a right angle.
    assert area == pytest.approx(11 * (6 * math.pi / 2 + 11), rel=1e-3)


def _on(radius: float) -> tuple[float, float, float]:
    return (radius * math.sqrt(0.5), radius * math.sqrt(0.5), 0.0)


def _area(loop: tuple[tuple[float, float, float], ...]) -> float:
    x, y, z = (
        sum(a[i] * b[j] - a[j] * b[i] for a, b in zip(loop, (*loop[1:], loop[0]), strict=True))
        for i, j in ((1, 2), (2, 0), (0, 1))
    )
    return math.sqrt(x * x + y * y + z * z) / 2
