"""The hole in the framing on the framer's grid; sums by hand."""

from __future__ import annotations

import pytest
from cases import placed

LINER = {"kind": "liner", "thickness": "23/32", "stock": "plywood"}


@pytest.mark.parametrize(("grid", "width", "height"), [("1/8", 37.5, 49.5), (None, 37.4375, 49.4375)])
def test_a_liner_is_framed_on_the_grid(grid: str | None, width: float, height: float) -> None:
    """36 and two boards of 23/32 is 37 7/16; 37 1/2 on eighths, the rest behind the liner."""
    found = placed(walls__main__buck=LINER, **({"shop__framing_grid": grid} if grid else {}))
    assert (found.framing_opening.width, found.framing_opening.height) == (width, height)


def test_a_liner_is_framed_as_high_where_no_sill_height_is_given() -> None:
    """49 7/16 is 49 1/2 on eighths: there is no height that the sill could go down to."""
    found = placed(walls__main__buck=LINER, shop__framing_grid="1/8", openings__0__sill_height=None)
    assert (found.framing_opening.height, found.framing_sill) == (49.5, None)


def test_an_opening_the_job_gives_stays_where_a_tape_holds_it() -> None:
    found = placed(shop__framing_grid="1/8", openings__0__rough_opening="36 1/16 x 48")
    assert (found.framing_opening.width, found.opening.rough_opening.width) == (36.0625, 36.0625)
    assert not [one for one in found.opening.assumed if one.what == "rough opening"]


def test_an_opening_in_the_other_unit_is_rounded_up_and_says_what_was_given() -> None:
    """940 mm is 37.008 in, 1245 mm is 49.016 in."""
    metric = {"openings__0__frame": "914 mm x 1219 mm", "openings__0__rough_opening": "940 mm x 1245 mm"}
    found = placed(shop__framing_grid="1/8", **metric)
    assert (found.framing_opening.width, found.framing_opening.height) == (37.125, 49.125)
    (said,) = [one for one in found.opening.assumed if one.what == "rough opening"]
    assert said.value == '37 1/8" x 49 1/8"'
    assert said.why == 'the job gives 940 mm x 1245 mm; framing is sawn to 1/8", the shims take the rest'
    assert said.is_rounded
    exact = placed(**metric)
    assert exact.framing_opening.width == pytest.approx(940 / 25.4)


def test_the_rough_sill_lies_on_the_grid_and_the_shims_say_the_rest() -> None:
    """49 1/8 less 47.992 leaves 1.133; half under a frame at 36 would be 35.433: 35 3/8 on eighths, 5/8 of shims."""
    metric = {"openings__0__frame": "914 mm x 1219 mm", "openings__0__rough_opening": "940 mm x 1245 mm"}
    found = placed(shop__framing_grid="1/8", openings__0__sill_height="36", **metric)
    assert found.framing_sill == 35.375
    assert found.shims.sill == 0.625
    assert found.shims.head == pytest.approx(49.125 - 1219 / 25.4 - 0.625)


def test_a_liner_that_is_off_the_grid_has_its_sill_down_and_its_head_up() -> None:
    """35 3/4 less 23/32 is 35 1/32: 35 on eighths. 35 1/32 + 49 7/16 is 84 15/32: 84 1/2, so 49 1/2 high."""
    found = placed(shop__framing_grid="1/8", walls__main__buck=LINER, openings__0__sill_height="36")
    assert (found.framing_sill, found.framing_opening.height) == (35.0, 49.5)


@pytest.mark.parametrize("grid", ["1/8", "1 mm"])
def test_where_nothing_is_said_of_framing_nothing_is_rounded_and_sixty_fourths_are_told(grid: str) -> None:
    metric = {"openings__0__frame": "914 mm x 1219 mm", "openings__0__rough_opening": "940 mm x 1245 mm"}

    def told(**more: str) -> list[str]:
        return [one.code for one in placed(**metric, **more).findings if one.code == "off-the-tape"]

    assert told() == ["off-the-tape"]
    assert told(shop__framing_grid=grid) == []


def test_shims_say_the_rest() -> None:
    """35 1/2 and two spaces of 9/32 is 36 1/16; 36 1/8 on eighths leaves 5/16 on each side."""
    found = placed(shop__framing_grid="1/8", shop__shim_space="9/32", openings__0__rough_opening=None)
    assert found.opening.rough_opening.width == 36.125
    assert (found.shims.left, found.shims.right) == (0.3125, 0.3125)


def test_what_a_liners_sill_goes_down_is_framed_too() -> None:
    """35 3/4 less 21/32 is 35 3/32: 35 on eighths. 35 3/32 + 49 5/16 is 84 13/32: 84 1/2, so 49 1/2 high."""
    liner = {**LINER, "thickness": "21/32"}
    found = placed(shop__framing_grid="1/8", walls__main__buck=liner, openings__0__sill_height="36")
    assert (found.framing_sill, found.framing_opening.height) == (35.0, 49.5)
