"""A chart of a window that can have one position only, as under an arch, where no buck is made."""

from __future__ import annotations

from dataclasses import replace

from jambs.sheets.curves import Chart, chart_svg


def test_a_chart_of_one_position_is_drawn() -> None:
    chart = Chart(
        title="Heat",
        lines=(),
        candidates=(("A", 11.0),),
        ends=(11.0, 11.0),
        step=1.0,
        text=str,
        value_text="{:.3f}".format,
        marks=(),
    )
    assert "nan" not in chart_svg(replace(chart, band=(11.0, 11.0)), width=180.0, height=90.0)
