"""Where the glazing stands in the frame: from the sash where the job gives it, else assumed and said."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of

from jambs.length import Units
from jambs.section.region import SectionCut as Side
from jambs.study.window_heat import WindowHeat, window_heat

INCH = 0.0254
GLASS = {"panes": "2", "pane_thickness": "1/8", "space": "1/2"}
SASH = {"windows__fixed__sash_thickness": "1 3/4", "windows__fixed__sash_set_back": "1/4"}


def heat_of(**paths: Any) -> WindowHeat:
    job = job_of(changed(**{"windows__fixed__u_frame": "1.6", "windows__fixed__glass": GLASS, **paths}))
    return window_heat(job.openings[0].window, units=job.units)


def told(found: WindowHeat) -> dict[str, str]:
    return {one.what: one.value for one in found.assumed}


def test_a_sash_that_opens_out_has_its_pane_near_the_outside_edge() -> None:
    """Set back 1/4, sash 1 3/4, glazing 3/4: outer face 1/4 + 1/2 = 3/4 in (19 mm) in, not 2 17/32 (64 mm)."""
    out = heat_of(windows__fixed__sash="casement out", **SASH)
    assert out.blocks[Side.JAMB].panel_start == pytest.approx(0.75 * INCH, abs=1e-12)
    assert "glazing in the depth of the frame" not in told(out)
    assert "thickness of the glazing" not in told(out)


def test_a_sash_that_opens_in_is_measured_from_the_inside_edge() -> None:
    """Frame 5 13/16 deep: 5 13/16 - 1/4 - 1 3/4 + 1/2 = 4 5/16 from the outside edge."""
    block = heat_of(windows__fixed__sash="casement in", **SASH).blocks[Side.JAMB]
    assert block.panel_start == pytest.approx((4 + 5 / 16) * INCH, abs=1e-12)


def test_a_pane_past_the_edge_of_the_frame_is_put_at_the_edge_and_said() -> None:
    proud = {**SASH, "windows__fixed__sash_set_back": "-1"}
    found = heat_of(windows__fixed__sash="casement out", **proud)
    assert found.blocks[Side.JAMB].panel_start == 0.0
    assert told(found)["glazing in the depth of the frame"] == "at the frame's edge"


def test_without_a_sash_it_stands_in_the_middle_and_that_is_said() -> None:
    found = heat_of()
    assert found.blocks[Side.JAMB].panel_start == pytest.approx((5 + 13 / 16 - 0.75) / 2 * INCH, abs=1e-12)
    assert told(found)["glazing in the depth of the frame"] == "in the middle"


@pytest.mark.parametrize("left_out", SASH)
def test_half_a_sash_leaves_the_glazing_in_the_middle_too(left_out: str) -> None:
    """How thick it is says not where it stands, and where it stands not where its middle is."""
    half = {key: value for key, value in SASH.items() if key != left_out}
    found = heat_of(windows__fixed__sash="fixed", **half)
    assert found.blocks == heat_of().blocks
    assert told(found)["glazing in the depth of the frame"] == "in the middle"


def test_the_space_between_the_panes_counts() -> None:
    wide = heat_of(windows__fixed__glass={**GLASS, "space": "5/8"})
    assert wide.blocks[Side.JAMB].panel_thickness == pytest.approx(0.875 * INCH, abs=1e-12)
    assert "thickness of the glazing" in told(heat_of(windows__fixed__glass={"panes": "2", "pane_thickness": "1/8"}))


def test_a_metric_job_has_its_usual_glazing_in_round_millimeters() -> None:
    """4 + 12 + 4 = 20 mm; 1/8 + 1/2 + 1/8 = 3/4 in an inch job."""
    job = job_of(changed(windows__fixed__u_frame="1.6"))
    window = job.openings[0].window
    metric, inch = (window_heat(window, units=units) for units in (Units.MM, Units.INCH))
    assert [told(one)["thickness of the glazing"] for one in (metric, inch)] == ["20 mm", '3/4"']
    (why,) = [one.why for one in metric.assumed if one.what == "thickness of the glazing"]
    assert why == "panes with 12 mm between them, two panes; the job gives no glass"
