"""The kinds of value of a job file, each in the ways the trade writes it."""

from __future__ import annotations

import datetime
import math
from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from jambs.job.models.fields import Bearing, Date, Depth, FrameSize, LayerThickness, Share, Slope, Text, Weight, YesNo
from jambs.job.models.shop import Shop
from jambs.job.models.trim import Joint
from jambs.job.models.windows import FrameFace
from jambs.length import GRIDS, Units


def read(kind: Any, written: Any, units: Units = Units.INCH) -> Any:
    return TypeAdapter(kind).validate_python(written, context={"units": units})


def said(kind: Any, written: Any, units: Units = Units.INCH) -> str:
    with pytest.raises(ValidationError) as caught:
        read(kind, written, units)
    return str(caught.value.errors()[0]["msg"])


@pytest.mark.parametrize(
    ("written", "degrees"),
    [
        ("10 deg", 10.0),
        ("10°", 10.0),
        ("3 in 12", 14.036),
        ("3:12", 14.036),
        ("12 in 12", 45.0),
        ("15 %", 8.531),
        ("6%", 3.434),
        ("0 deg", 0.0),
    ],
)
def test_slopes(written: str, degrees: float) -> None:
    """By hand: atan(3/12) is 14.036°, atan(0.15) 8.531°, atan(0.06) 3.434°."""
    assert read(Slope, written) == pytest.approx(degrees, abs=0.0005)


def test_slopes_agree_with_the_tangent() -> None:
    for rise in range(13):
        assert math.tan(math.radians(read(Slope, f"{rise} in 12"))) == pytest.approx(rise / 12, abs=1e-12)


@pytest.mark.parametrize(("written", "pounds"), [("95 lb", 95.0), ("95 lbs", 95.0), ("43 kg", 94.799), ("1 LB", 1.0)])
def test_weights(written: str, pounds: float) -> None:
    """1 lb is 0.45359237 kg by definition (international avoirdupois pound): 43 kg are 94.799 lb."""
    assert read(Weight, written) == pytest.approx(pounds, abs=0.0005)


def test_weights_that_are_none() -> None:
    assert said(Weight, "0.2 kg") == "is 0.2 kg; write a weight from 1 lb to 5000 lb"
    assert said(Weight, "heavy") == "'heavy' is not a weight; write 95 lb or 43 kg"


@pytest.mark.parametrize(
    ("written", "degrees"),
    [("north", 0), ("East", 90), ("southwest", 225), ("190", 190), ("12.5 deg", 12.5)],
)
def test_directions_go_clockwise_from_north(written: str, degrees: float) -> None:
    assert read(Bearing, written) == degrees


def test_directions_that_are_none() -> None:
    assert said(Bearing, "360") == "is 360; write 0 to 359 degrees, clockwise from north"


@pytest.mark.parametrize(
    ("written", "share"), [("1/2", 0.5), ("0", 0.0), ("1", 1.0), (".25", 0.25), ("2 / 3", 2 / 3), ("40 %", 0.4)]
)
def test_shares(written: str, share: float) -> None:
    assert read(Share, written) == share


@pytest.mark.parametrize("written", ["1/0", "1e-1", "nan", "inf", "50 %%", "1/2 %", "1e999999999", "", "1/2/3"])
def test_shares_that_are_none(written: str) -> None:
    assert (
        said(Share, written)
        == f"{written!r} is not a share; write a number from 0 to 1, like 1/2 or 0.4, or percent, like 40 %"
    )


@pytest.mark.parametrize("written", ["35 1/2 x 47 1/2", '35 1/2" × 47 1/2"', "35.5X47.5", "2'-11 1/2\" x 3'-11 1/2\""])
def test_sizes(written: str) -> None:
    size = read(FrameSize, written)
    assert (size.width, size.height) == (35.5, 47.5)
    assert read(FrameSize, size) is size


def test_sizes_of_a_metric_job() -> None:
    size = read(FrameSize, '902 x 47 1/2"', Units.MM)
    assert size.width * 25.4 == pytest.approx(902, abs=1e-9)
    assert size.height == pytest.approx(47.5, abs=0.05 / 25.4), "the nearest 0.1 mm"


@pytest.mark.parametrize(("written", "truth"), [("yes", True), ("No", False), ("true", True), ("FALSE", False)])
def test_yes_and_no(written: str, truth: bool) -> None:
    assert read(YesNo, written) is truth


@pytest.mark.parametrize("written", ["1", "y", "on", ""])
def test_what_is_neither(written: str) -> None:
    assert said(YesNo, written) == f"{written!r} is neither yes nor no; write yes or no"


def test_dates_are_year_month_day() -> None:
    assert read(Date, "2026-03-20") == datetime.date(2026, 3, 20)
    for written in ("20260320", "20.3.2026", "1772409600", "2026-3-20", "2026-13-01"):
        assert said(Date, written) == f"{written!r} is not a date; write year-month-day, like 2026-03-20"


def test_thin_layers_keep_their_thickness() -> None:
    """6 mil is 0.006 in and not 0 on the 1/64 grid."""
    assert read(LayerThickness, "0.006") == 0.006


def test_text_is_one_line() -> None:
    assert said(Text, "two\nlines") == "has line breaks or unprintable characters; write one line of plain text"
    assert said(Text, ["a"]) == "is not text; write one line"


def test_joints_may_be_written_with_their_family() -> None:
    assert read(Joint, "butt, head over legs") is Joint.HEAD_OVER_LEGS
    assert read(Joint, "legs through") is Joint.LEGS_THROUGH


def test_one_face_stands_for_all_sides() -> None:
    face = read(FrameFace, "2 1/2")
    assert (face.left, face.right, face.head, face.sill) == (2.5,) * 4


@pytest.mark.parametrize(("written", "name"), [("1/32", "1/32"), ('1/32"', "1/32"), ("1/32 in", "1/32"), ("1 mm",) * 2])
def test_grids(written: str, name: str) -> None:
    boards = [{"nominal": "1x4", "stock": "pine"}]
    lengths = dict.fromkeys(("kerf", "proud", "shim_space", "edge_allowance", "taper_tolerance"), "1/32")
    assert read(Shop, {"grid": written, "boards": boards, **lengths}).grid == GRIDS[name]


def test_a_layer_of_no_thickness_is_told_that_nothing_is_too_little() -> None:
    assert said(LayerThickness, "0") == 'is 0"; write a length over 0", up to 36"'
    assert said(LayerThickness, "37 in").startswith('is 37"; write a length over 0", up to 36"')
    assert said(Depth, "-1") == 'is -1"; write a length from 0" to 36"'
