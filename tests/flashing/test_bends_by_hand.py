"""Where the metal of the base job lies, bend by bend, and what is said of its laps: sums by hand.

Trim plane 12, cladding face 12 3/4, flange plane 9 1/4. The frame shows 2 1/2, less 1/4 of reveal: clear 31 wide,
its head at 47 1/2 - 2 1/4 = 45 1/4; casing 4 1/2 x 1 from 1/4 above that, so its upper edge is at 50.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import changed, job_of, kit_of
from metal import lined

from jambs.flashing.bending import resolve_bending
from jambs.flashing.blank import Blank, BlankKind
from jambs.flashing.blank_words import assumed_of
from jambs.flashing.flat import flat_head
from jambs.flashing.make import Flashings, blank_list, head_of, make_flashings
from jambs.job.models.outside import FlashingEntry
from jambs.length import FRAMING_GRIDS, GRIDS, MM_PER_INCH, Units
from jambs.parts.board.touches import BlankBend, UncasedBlank


def made(flashing: dict[str, object] | None = None, **paths: Any) -> Flashings:
    return make_flashings(kit_of(**paths), FlashingEntry.model_validate(flashing or {}), Units.INCH)


def blank(kind: BlankKind, flashing: dict[str, object] | None = None, **paths: Any) -> Blank:
    return next(one for one in made(flashing, **paths).blanks if one.kind is kind)


def near(points: list[tuple[float, float]]) -> Any:
    return [pytest.approx(point, abs=1e-9) for point in points]


def test_the_head_flashing_bend_by_bend() -> None:
    """A fall of 1 in 10 over 1 in, 1/2 down, a drip 1/4 out at 45 degrees, a hem of 3/8 folded back on it."""
    head = blank(BlankKind.HEAD_FLASHING)
    hem = 0.375 / math.sqrt(2)
    assert list(head.profile) == near(
        [(12, 53.1), (12, 50.1), (13, 50.0), (13, 49.5), (13.25, 49.25), (13.25 - hem, 49.25 + hem)]
    )
    # Casing 31 + 2 x 1/4 + 2 x 4 1/2 + 2 x 1/2 over, 1/2 past it at each end, a dam of 1 at each.
    assert (head.between, head.length) == pytest.approx((42.5, 44.5), abs=1e-9)
    girth = 3 + math.hypot(1, 0.1) + 0.5 + math.sqrt(2) / 4 + 0.375
    assert head.girth == pytest.approx(girth, abs=1e-9)
    assert [bend.at for bend in head.bends] == pytest.approx(
        [3, 3 + math.hypot(1, 0.1), 3.5 + math.hypot(1, 0.1), girth - 0.375], abs=1e-9
    )
    fall = math.degrees(math.atan(0.1))
    assert [bend.turn_deg for bend in head.bends] == pytest.approx([90 - fall, fall - 90, 45, 180], abs=1e-9)


def test_without_a_hem_the_drip_is_the_last_leg() -> None:
    head = blank(BlankKind.HEAD_FLASHING, {"hem": "0"})
    assert [leg.name for leg in head.legs] == ["upstand", "top", "front leg", "drip"]


def test_the_pan_from_the_inside_edge_to_the_flange() -> None:
    """Inside edge 4 11/16, 4 9/16 to the flange, 6 % of it is 0.27375; the rough opening's bottom is at -1/4."""
    pan = blank(BlankKind.SILL_PAN)
    rise = 0.06 * 4.5625
    assert list(pan.profile) == near([(4.6875, rise + 0.75), (4.6875, rise - 0.25), (9.25, -0.25), (9.25, -1.25)])
    assert (pan.between, pan.length) == (36.0, 38.0)


def test_the_pan_of_a_window_on_clips_goes_to_its_outside_edge() -> None:
    """Clips: 1 1/4 further out, 10 1/2."""
    clips: dict[str, Any] = {"windows__fixed__nailing_flange": "no", "windows__fixed__flange_width": None}
    pan = blank(BlankKind.SILL_PAN, **clips)
    assert (pan.profile[0][0], pan.profile[-1][0]) == pytest.approx((4.6875, 10.5), abs=1e-9)
    assert [lap.step.what for lap in made(**clips).laps][1] == "window on its clips"


def test_the_pan_of_a_window_on_clips_ends_behind_a_sill_that_runs_in_under_its_frame() -> None:
    """The sill's back edge lies 1/2 in from the frame's outside edge, 10 1/2: two things cannot be in one place."""
    clips: dict[str, Any] = {"windows__fixed__nailing_flange": "no", "windows__fixed__flange_width": None}
    under: dict[str, Any] = {"exterior_trim__outside__sill__under_frame": "1/2"}
    pan, sill = (blank(kind, **clips, **under) for kind in (BlankKind.SILL_PAN, BlankKind.SILL_FLASHING))
    assert pan.profile[-1][0] == sill.profile[0][0] == pytest.approx(10.0, abs=1e-9)
    assert blank(BlankKind.SILL_PAN, **under).profile[-1][0] == 9.25


def test_the_sill_flashing_from_under_the_frame_to_the_cladding() -> None:
    """Sill 1 1/2 thick at 10 degrees, nothing of it under the frame: from the outside edge 10 1/2 to 12 3/4."""
    sill = blank(BlankKind.SILL_FLASHING, exterior_trim__outside__sill__under_frame="0")
    cosine = math.cos(math.radians(10))
    assert [leg.width for leg in sill.legs][:3] == pytest.approx([1.5 / cosine, 2.25 / cosine, 0.5], abs=1e-9)
    assert [depth for depth, _ in sill.profile][:4] == pytest.approx([10.5, 10.5, 12.75, 12.75], abs=1e-9)
    assert sill.profile[1][1] - sill.profile[2][1] == pytest.approx(2.25 * math.tan(math.radians(10)), abs=1e-9)
    # Notch to notch: the sill between its horns is 31 + 2 x 3/4.
    assert sill.between == pytest.approx(32.5, abs=1e-9)


def test_laps_say_how_far() -> None:
    said = {lap.step.what: lap.step.over(Units.INCH) for lap in made().laps}
    assert said["sill pan"] == 'front leg 1" down over the layer that sheds the water under the opening'
    assert said["sill flashing"] == 'over the cladding under the sill, by 1/2"'
    assert said["head flashing"] == 'front leg 1/2" down over the head casing'
    assert said["what sheds the water"] == (
        'settle which layer does: the wall names no membrane; bring it over the upstand of 3"'
    )
    assert said["cladding over the head"] == "over it, 3/8\" clear of the head casing's upper edge"
    assert [lap.number for lap in made().laps] == list(range(1, len(made().laps) + 1))
    assert "over the pan; sealant behind the head and side flanges" in said["window, nailing flange"]


def test_what_is_not_said_is_usual_in_both_units() -> None:
    inch, metric = (resolve_bending(FlashingEntry(), units=units) for units in (Units.INCH, Units.MM))
    assert (inch.drip_out, inch.hem, inch.end_dam) == (0.25, 0.375, 1.0)
    assert [one * MM_PER_INCH for one in (metric.drip_out, metric.hem, metric.end_dam)] == pytest.approx([6, 10, 25])
    assert inch.fall_deg == metric.fall_deg == pytest.approx(math.degrees(math.atan(0.1)))
    assert [one.value for one in assumed_of(inch, Units.INCH)] == ["5.7° (10 %)", '1/4"', '3/8"', '1"']
    # 10 Pa a millimeter: an inch holds 254 Pa back.
    assert inch.pressure_held == pytest.approx(254.0)


def test_without_exterior_trim_there_is_no_metal() -> None:
    none = made(exterior_trim=None)
    assert (none.blanks, none.laps, none.findings) == ((), (), ())
    assert head_of(none) is None


def test_the_list_puts_alike_blanks_in_one_row_long_ones_first() -> None:
    one, other = made(), made(openings__0__frame="40 x 47 1/2", openings__0__rough_opening="40 1/2 x 48")
    rows = blank_list((one, other, one), job_of(changed()).shop.grid)
    heads = [row for row in rows if row.name == "head flashing"]
    # 44 1/2 long, and 4 1/2 more; legs 3, 1.005, 1/2, 0.354 and 3/8, each to the nearest thirty-second: 3 + 1 + 1/2 +
    # 11/32 + 3/8 = 5 7/32.
    girth = 5 + 7 / 32
    assert [(row.length, row.girth, row.marks) for row in heads] == [
        (49.0, girth, ("W1",)),
        (44.5, girth, ("W1", "W1")),
    ]
    names = [row.name for row in rows]
    assert names == sorted(names) and len(set(names)) == 3
    for name in set(names):
        lengths = [row.length for row in rows if row.name == name]
        assert lengths == sorted(lengths, reverse=True)


@pytest.mark.parametrize(("pressure", "told"), [("254", False), ("254.1", True), ("253", False)])
def test_a_dam_of_an_inch_holds_254_pascals(pressure: str, told: bool) -> None:
    """25.4 mm at 10 Pa a millimeter."""
    found = made({"end_dam": "1", "driving_pressure": pressure}).findings
    assert any("end dams" in one.sentence(Units.INCH) for one in found) is told


@pytest.mark.parametrize(
    ("grid", "widths"),
    [
        # 76.2, 25.53, 12.7, 8.98 and 9.53 mm: none takes what the others leave over.
        ("1 mm", [76, 26, 13, 9, 10]),
        ("1/16", [3.0, 1.0, 0.5, 3 / 8, 3 / 8]),
        # Nor is a leg rounded away: 0.354 is one step.
        ("1/2", [3.0, 1.0, 0.5, 0.5, 0.5]),
    ],
)
def test_every_leg_is_marked_out_to_the_nearest_step(grid: str, widths: list[float]) -> None:
    head = head_of(made())
    assert head is not None
    on = head.on({**GRIDS, **FRAMING_GRIDS}[grid])
    unit = 25.4 if grid.endswith("mm") else 1.0
    assert [leg.width * unit for leg in on.legs] == pytest.approx(widths)
    assert on.girth == pytest.approx(sum(widths) / unit)


def test_the_kit_gets_the_blank_of_its_head_flashing() -> None:
    """Girth 5 7/32 of its legs on thirty-seconds, length 44 1/2, four bends, the first 3 from the upper edge."""
    grid = job_of(changed()).shop.grid
    flat = flat_head(kit_of(), made(), grid)
    assert flat is not None
    assert (flat.width, flat.length) == (5 + 7 / 32, 44.5)
    assert (type(flat.bend), flat.bend.bends, flat.bend.first_at) == (BlankBend, 4, 3.0)
    assert flat_head(kit_of(exterior_trim=None), made(exterior_trim=None), grid) is None


def test_over_an_opening_that_metal_lines_the_head_flashing_has_no_casing_to_go_over() -> None:
    """The face leg of the head return is a fold of sheet: out under the cladding of 3/4."""
    flashings = made(exterior_trim__outside=lined())
    flat = flat_head(kit_of(exterior_trim__outside=lined()), flashings, job_of(changed()).shop.grid)
    assert flat is not None and type(flat.bend) is UncasedBlank
    assert (flat.bend.past_casing, flat.bend.gap_to_cladding, flat.bend.end_dam) == (0.5, 0.375, 1.0)


def test_of_one_length_the_narrower_blank_comes_first() -> None:
    """Upstands of 4, 3 and 5 in over windows of one width: girths 6 7/32, 5 7/32 and 7 7/32."""
    upstands = [made(exterior_trim__outside__head_flashing__upstand=size) for size in ("4", "3", "5")]
    rows = blank_list(tuple(upstands), job_of(changed()).shop.grid)
    heads = [(row.length, row.girth) for row in rows if row.name == "head flashing"]
    assert heads == [(44.5, girth + 7 / 32) for girth in (5, 6, 7)]


@pytest.mark.parametrize(("units", "leg"), [(Units.INCH, 1.0), (Units.MM, 25 / MM_PER_INCH)])
def test_the_legs_of_a_pan_are_round_in_the_units_of_the_job(units: Units, leg: float) -> None:
    """An inch, or 25 mm, up behind the frame: common practice, no source."""
    blanks = make_flashings(kit_of(), FlashingEntry(), units).blanks
    pan = next(one for one in blanks if one.kind is BlankKind.SILL_PAN)
    assert pan.legs[0].width == pytest.approx(leg)
