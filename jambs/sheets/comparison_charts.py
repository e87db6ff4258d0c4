"""The curves of a placement comparison: heat, humidity at which it sweats, sun and sky, over the flange plane."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from jambs.length import MM_PER_INCH, Units, length_text, share_text
from jambs.sheets.curves import Chart, CurveLine, chart_svg, values_of
from jambs.values import Record
from jambs.wall.planes import WallPlanes

CHART_HEIGHT = 160.0
STEPS = (0.5, 1, 2, 5, 10, 20, 50, 100, 200)
"""Between positions that are named along a chart, in the job's units."""


def charts(window: Record, planes: WallPlanes, units: Units, *, width: float) -> list[str]:
    """Return the three charts of one window of the record as SVG, each of a width [pt]; one place makes no curve."""
    if len(window["curve"]) < 2:
        return []
    return [chart_svg(chart, width=width, height=CHART_HEIGHT) for chart in _charts(window, planes, units)]


def _charts(window: Record, planes: WallPlanes, units: Units) -> list[Chart]:
    points, plain = window["curve"], _plain_chart(window, planes, units)
    band = (window["least"]["band"][0]["value"], window["least"]["band"][1]["value"])
    percent = replace(plain, value_text=share_text)
    return [
        replace(plain, title="Heat through the joint, W/mK", lines=_heat_lines(points), band=band),
        replace(percent, title="Indoor humidity at which water condenses", lines=_humidity_lines(points)),
        replace(percent, title="Sun and sky that reach the glass", lines=_sun_lines(points)),
    ]


def _plain_chart(window: Record, planes: WallPlanes, units: Units) -> Chart:
    """Return what all charts of a window have in common."""
    points = window["curve"]
    factor = MM_PER_INCH if units == "mm" else 1.0
    ends = (points[0]["flange_plane"]["value"], points[-1]["flange_plane"]["value"])
    span = ends[1] - ends[0]
    return Chart(
        title="",
        lines=(),
        candidates=tuple(
            (one["letter"], one["flange_plane"]["value"]) for one in window["candidates"] if "heat" in one
        ),
        ends=ends,
        step=next(step for step in STEPS if span / step <= 7),
        text=lambda position: length_text(position / factor, units=units),
        value_text="{:.3f}".format,
        marks=_faces(planes, factor),
    )


def _heat_lines(points: Sequence[Record]) -> tuple[CurveLine, ...]:
    sides = points[0]["heat"]["sides"]
    return (
        CurveLine(name="mean", points=values_of(points, "heat", "mean")),
        *(CurveLine(name=side, points=values_of(points, "heat", "sides", side)) for side in sides),
    )


def _humidity_lines(points: Sequence[Record]) -> tuple[CurveLine, ...]:
    corner = f"corner of {points[0]['cold']['estimate_side']}, estimate"
    return (
        CurveLine(name="coldest place", points=values_of(points, "cold", "sweats_above")),
        CurveLine(name=corner, points=values_of(points, "cold", "estimate_sweats_above")),
    )


def _sun_lines(points: Sequence[Record]) -> tuple[CurveLine, ...]:
    """Sun of the first two ways the windows face, where any reaches them, and the sky: four curves at most."""
    found = [
        CurveLine(name=f"{one['faces']}, {season}", points=_season(points, place, season))
        for place, one in enumerate(points[0]["sun"][:2])
        for season in ("winter", "summer")
    ]
    lit = [line for line in found if any(value is not None for _, value in line.points)]
    return (*lit[:3], CurveLine(name="sky", points=values_of(points, "sky")))


def _season(points: Sequence[Record], place: int, season: str) -> tuple[tuple[float, float | None], ...]:
    suns = ((each["flange_plane"]["value"], each["sun"][place][season]) for each in points)
    return tuple((position, sun["value"] if sun else None) for position, sun in suns)


def _faces(planes: WallPlanes, factor: float) -> tuple[tuple[float, str], ...]:
    """Faces of the layers that a flange may lie on; sheathing and trim plane by name."""
    named = [(planes.sheathing_plane, "sheathing"), (planes.trim_plane, "trim plane")]
    between = [
        one.outer for one, _ in pairwise(planes.layers) if planes.sheathing_plane < one.outer < planes.trim_plane
    ]
    return tuple((depth * factor, name) for depth, name in (*named, *((depth, "") for depth in between)))
