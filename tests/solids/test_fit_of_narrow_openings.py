"""The fit report where an opening is narrow and its wall out of plane: boards that taper and lean, none wrong."""

from __future__ import annotations

from typing import Any

from cases import STOOL, changed, job_of

from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids import fit_report
from jambs.solids.model import model_kit

NARROW = {"openings__0__frame": "16 x 48", "openings__0__rough_opening": "16 1/2 x 48 1/2"}


def faults(**paths: Any) -> tuple[object, ...]:
    job = job_of(changed(**{**NARROW, **paths}))
    return fit_report(model_kit(make_kit(place_windows(job)[0], job), job)).faults


def depths(left: str, right: str) -> dict[str, str]:
    return {"head_left": left, "head_right": right, "sill_left": left, "sill_right": right}


def test_a_tapered_head_outside_falls_off_over_the_thickness_of_its_leg() -> None:
    """3/16 over 14 1/2: over a leg of 1 in the head falls 1/77 in, so on the average half of it is missing.

    The wall is twisted, so that its mean plane is plumb and explains nothing.
    """
    measured = {
        "date": "2026-05-18",
        "interior_depth": depths("4 11/16", "4 11/16"),
        "exterior_depth": {**depths("1 11/16", "1 1/2"), "sill_left": "1 1/2", "sill_right": "1 11/16"},
    }
    trim = {
        "exterior_trim__outside__jamb__thickness": "1",
        "exterior_trim__outside__casing__thickness": "1/2",
    }
    assert faults(**trim, openings__0__measured=measured) == ()


def test_an_apron_thicker_than_the_casing_leans_by_more() -> None:
    measured = {"date": "2026-05-18", "interior_depth": depths("4 3/4", "4 9/16")}
    trim = {
        **STOOL,
        "casing": {"width": "3 1/2", "thickness": "1/2", "stock": "poplar", "corner": "miter"},
        "apron": {"width": "3 1/2", "thickness": "1 1/4", "stock": "poplar"},
    }
    assert faults(interior_trim__inside=trim, openings__0__measured=measured) == ()


def test_a_wide_leg_follows_the_wall_over_a_horn_that_is_notched_square() -> None:
    """Of a usual opening too: 1/16 over 31 in is little, over a leg of 5 in it leaves a strip of the horn bare."""
    measured = {
        "date": "2026-05-18",
        "interior_depth": {**depths("6 5/8", "6 21/32"), "sill_left": "6 19/32", "sill_right": "6 21/32"},
    }
    trim = {
        **STOOL,
        "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "legs through"},
        "frame_reveal": "1/4",
        "casing_reveal": "3/8",
        "casing": {"width": "5", "thickness": "7/8", "stock": "poplar", "corner": "butt", "overhang": "1/16"},
        "stool": {"thickness": "3/4", "stock": "poplar", "horn": "5/16", "nosing": "7/16"},
    }
    usual = {"openings__0__frame": "35 1/2 x 47 1/2", "openings__0__rough_opening": "36 x 48"}
    paths = {**usual, "shop__grid": "1/16", "shop__proud": "0", "interior_trim__inside": trim}
    assert faults(**paths, openings__0__measured=measured) == ()


def test_a_return_that_tapers_leans_over_the_thickness_of_a_stool_notched_square() -> None:
    """1/8 over 44 1/2 in: within a stool of 1 in the board's edge comes out 0.003 in, which no stop is made of."""
    returns = {
        "material": "gypsum board",
        "thickness": "1/2",
        "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
        "wall_board": "behind the return",
        "gap_at_frame": "1/4",
        "frame_bead": {"leg": "3/4", "nose": "1/8"},
    }
    trim = {
        "style": "returns and stool",
        "frame_reveal": "1/2",
        "returns": returns,
        "stool": {"thickness": "1", "stock": "poplar", "horn": "1", "nosing": "3/4"},
    }
    measured = {
        "date": "2026-05-18",
        "interior_depth": {**depths("4 3/4", "4 11/16"), "sill_left": "4 5/8", "sill_right": "4 5/8"},
    }
    at_wall = {"openings__0__measured": measured, "interior_trim__inside": trim}
    assert faults(**at_wall) == ()
    assert faults(**at_wall, openings__0__frame="36 x 48", openings__0__rough_opening="36 1/2 x 48 1/2") == ()
