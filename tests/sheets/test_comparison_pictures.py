"""Curves and small sections of the placement comparison: letters apart, planes in line, lines at round values."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from itertools import combinations
from typing import Any

import pytest
from cases import kit_of

from jambs.length import Units
from jambs.section.cut import cut_section
from jambs.section.region import SectionCut
from jambs.sheets.comparison_charts import charts
from jambs.sheets.curves import Chart, CurveLine, chart_svg, values_of
from jambs.sheets.section_picture import empty_picture, section_picture, window_of


def chart(*candidates: tuple[str, float], values: tuple[float | None, ...] = (0.03, 0.01, 0.02, 0.05)) -> Chart:
    points = tuple((float(place), value) for place, value in enumerate(values))
    return Chart(
        title="Heat",
        lines=(CurveLine(name="mean", points=points),),
        candidates=candidates,
        ends=(0.0, len(values) - 1.0),
        step=1.0,
        text="{:g}".format,
        value_text="{:.3f}".format,
    )


def circles(svg: str) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)"', svg)]


@pytest.mark.parametrize("places", [(1.0, 1.0, 1.0), (0.0, 0.01, 0.02, 0.03, 0.04), (2.9, 3.0, 3.0), (0.5, 2.5)])
def test_letters_never_lie_on_each_other(places: tuple[float, ...]) -> None:
    svg = chart_svg(chart(*zip("ABCDE", places, strict=False)), width=230, height=160)
    found = circles(svg)
    assert len(found) == len(places)
    for (x0, y0), (x1, y1) in combinations(found, 2):
        assert ((x0 - x1) ** 2 + (y0 - y1) ** 2) ** 0.5 > 2 * 4.6
    assert all(0 < x < 230 and 0 < y < 160 for x, y in found)


def test_a_letter_on_the_axis_touches_no_value_beside_it() -> None:
    """Values end to the left of the circle, whose radius is 4.6."""
    svg = chart_svg(chart(("A", 0.0)), width=230, height=160)
    ((x, _),) = circles(svg)
    ends = [float(end) for end in re.findall(r'<text x="([\d.]+)"[^>]*text-anchor="end"[^>]*>0\.\d{3}<', svg)]
    assert len(ends) == 5 and max(ends) <= x - 4.6 - 1


def test_a_letter_stands_on_its_curve() -> None:
    """At place 1 the curve is at its least value, 0.01: on the lowest line, for the values run from 0.01 to 0.05."""
    svg = chart_svg(chart(("A", 1.0)), width=230, height=160)
    ((_, y),) = circles(svg)
    assert y == pytest.approx(160 - 22, abs=0.1)
    assert [text for text in re.findall(r">(0\.\d{3})<", svg)] == ["0.010", "0.020", "0.030", "0.040", "0.050"]


@pytest.mark.parametrize(
    ("most", "lines"),
    [(0.07, ["0.000", "0.020", "0.040", "0.060", "0.080"]), (0.16, ["0.000", "0.050", "0.100", "0.150", "0.200"])],
)
def test_lines_stand_at_ones_twos_or_fives(most: float, lines: list[str]) -> None:
    svg = chart_svg(chart(values=(0.0, 0.01, most)), width=230, height=160)
    assert re.findall(r">(0\.\d{3})<", svg) == lines


def test_a_curve_has_gaps_where_there_is_no_value() -> None:
    svg = chart_svg(chart(values=(0.03, None, 0.02, 0.05)), width=230, height=160)
    (path,) = re.findall(r'<path d="(M[^"]*)" fill="none" stroke="#000" stroke-width="1.3"/>', svg)
    assert (path.count("M"), path.count("L")) == (2, 1)


def test_values_of_a_record() -> None:
    points: list[dict[str, Any]] = [
        {"flange_plane": {"value": 6.5}, "heat": {"whole": {"value": 0.1}}},
        {"flange_plane": {"value": 7.0}, "heat": None},
    ]
    assert values_of(points, "heat", "whole") == ((6.5, 0.1), (7.0, None))


def test_sections_of_one_wall_line_up_and_show_the_flange_where_it_is() -> None:
    """Dashed lines at the same height in every picture; the bold line moves by what the flange moves."""
    sections = [
        cut_section(kit_of(position={"share": share}), SectionCut.JAMB, wall_length=9.0) for share in ("0", "1/2")
    ]
    window = window_of(sections, width=100, height=110)
    pictures = [section_picture(one, window, planes=(0.0, 6.5, 12.0)) for one in sections]
    dashed = [re.findall(r'<path d="M0.00,([\d.]+)[^>]*stroke-dasharray', one) for one in pictures]
    assert dashed[0] == dashed[1] and len(dashed[0]) == 3
    bold = [float(re.findall(r'<path d="M0.00,([\d.]+)[^>]*stroke-width="1.2"', one)[0]) for one in pictures]
    heights = [float(one) for one in dashed[0]]
    per_inch = (heights[0] - heights[2]) / 12.0
    assert per_inch > 0, "the outside is on top"
    assert bold[0] == pytest.approx(heights[1], abs=0.02)
    assert bold[0] - bold[1] == pytest.approx(2.75 * per_inch, abs=0.02)
    for one in (*pictures, empty_picture(window, planes=(0.0, 6.5, 12.0))):
        assert ElementTree.fromstring(one).get("width") == f"{window.size[0]:.2f}pt"
    assert window.size[0] <= 100.01 and window.size[1] <= 110.01


def test_a_window_that_fits_in_one_place_has_no_curve() -> None:
    """A flange on the sheathing under thin strapping: there is no span to draw over, and none is divided by."""
    place: dict[str, Any] = {"flange_plane": {"value": 11.0}}
    planes = kit_of().placement.planes
    assert charts({"curve": [place]}, planes, Units.INCH, width=230) == []
