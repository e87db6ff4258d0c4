"""Escape openings against International Residential Code R310 (read): 5.7 sq ft, 24 in high, 20 in wide, sill 44 in."""

from __future__ import annotations

from dataclasses import replace

from cases import changed, job_of, placed

from jambs.job.models.fields import Size
from jambs.job.models.shop import Escape
from jambs.length import Units
from jambs.place.escape import clear_opening, escape_check, escape_faults
from jambs.place.escape_findings import escape_words
from jambs.place.solve import place_windows

CASEMENT = {
    "jamb_depth": "4 9/16",
    "frame_projection": "1 1/4",
    "frame_face": "2",
    "nailing_flange": "yes",
    "flange_width": "1 1/4",
    "sash": "casement out",
    "sash_thickness": "1 3/4",
    "sash_set_back": "1/4",
}


def faults(frame: str, sill: str = "36", **window: str) -> tuple[str, ...]:
    found = placed(
        windows__fixed={**CASEMENT, **window},
        openings__0__frame=frame,
        openings__0__sill_height=sill,
        openings__0__rough_opening=None,
    )
    return tuple(escape_words(one, Units.INCH) for one in escape_faults(found.opening, found.swing, Escape()))


def test_34_by_24_is_under_the_area() -> None:
    # 34 x 24 = 816 sq in = 5.667 sq ft, under 5.7. Frame = clear + sash 1-3/4 + two faces of 2 in.
    assert faults("39 3/4 x 28") == ("clear area 5.67 sq ft is under 5.7 sq ft",)


def test_34_1_4_by_24_passes() -> None:
    # 34.25 x 24 = 822 sq in = 5.708 sq ft.
    assert faults("40 x 28") == ()


def test_width_height_and_sill_are_each_named() -> None:
    assert faults("25 1/2 x 64") == ('clear width 19 3/4" is under 20"',)
    assert faults("60 x 27") == ('clear height 23" is under 24"',)
    assert faults("40 x 60", sill="43") == ('sill 45" over the floor is above 44"',)


def test_a_double_hung_window_opens_half_less_half_its_meeting_rail() -> None:
    """60 - 2 x 2 = 56 high; both sashes lap by the rail of 1 1/2: (56 - 1 1/2) / 2 = 27 1/4 stay open."""
    found = placed(
        windows__fixed={**CASEMENT, "sash": "double hung", "meeting_rail": "1 1/2"},
        openings__0__frame="36 x 60",
        openings__0__rough_opening=None,
    )
    clear = clear_opening(found.opening, found.swing)
    assert (clear.width, clear.height) == (32.0, 27.25)


def test_an_escape_opening_has_its_figures_and_another_window_none() -> None:
    """34 1/4 x 24 as above; the passage begins at the frame's face of 2 over a sill height of 36."""
    job = job_of(changed(windows__fixed=CASEMENT, openings__0__frame="40 x 28", openings__0__rough_opening=None))
    found = place_windows(job)[0]
    assert escape_check(found.opening, found.swing, job) is None
    check = escape_check(replace(found.opening, escape=True), found.swing, job)
    assert check is not None
    assert (check.clear, check.sill) == (Size(width=34.25, height=24.0), 38.0)
    assert check.needed == Escape() and not check.is_of_the_job


def test_a_slider_opens_half_less_half_its_meeting_stile() -> None:
    """36 - 2 x 2 = 32 wide: (32 - 1 1/2) / 2 = 15 1/4 stay open; a fixed light lets nobody out."""
    slider = {**CASEMENT, "sash": "slider", "meeting_rail": "1 1/2"}
    paths = {"openings__0__frame": "36 x 60", "openings__0__rough_opening": None}
    assert clear_opening(placed(windows__fixed=slider, **paths).opening, None) == Size(width=15.25, height=56.0)
    fixed = {**CASEMENT, "sash": "fixed"}
    assert clear_opening(placed(windows__fixed=fixed, **paths).opening, None) == Size(width=0.0, height=0.0)


def test_a_window_too_heavy_or_too_far_out_needs_an_engineer() -> None:
    found = placed(limits={"overhang": "2", "weight": "50 lb"}, openings__0__weight="95 lb")
    assert (
        'Needs an engineer: the window stands 2 3/4" past the sheathing (limit 2") and weighs about 95 lb '
        "(limit 50 lb)."
    ) in [one.sentence(Units.INCH) for one in found.findings]


def test_weight_is_estimated_from_the_glass() -> None:
    # 35.5 x 47.5 in = 11.71 sq ft; two panes of 1/8 in at 13 lb per sq ft and inch (2500 kg/m3, from memory): 38.06 lb;
    # frame and sash 3 lb/ft (assumed) along 13.83 ft: 41.5 lb.
    found = placed(windows__fixed__glass={"panes": "2", "pane_thickness": "1/8"})
    assert found.weight_is_assumed
    assert abs(found.weight - 79.56) < 0.05
