"""Lengths: text -> length -> text is the identity on every grid; every half step and carry; the trade's spellings."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jambs.length import (
    FINE,
    GRIDS,
    Grid,
    LengthError,
    Units,
    decimal_text,
    feet_text,
    length_text,
    read_length,
)

INCH_GRIDS = [grid for grid in GRIDS.values() if grid.units is Units.INCH]
MM_GRIDS = [grid for grid in GRIDS.values() if grid.units is Units.MM]
counts = st.integers(min_value=-20_000, max_value=20_000)
grids = st.sampled_from([*GRIDS.values(), *FINE.values()])


def exact(count: int, grid: Grid) -> Fraction:
    """A number of steps in inches, as a fraction: a second way that shares no code with the program."""
    size = Fraction(count * grid.numerator, grid.denominator)
    return size if grid.units is Units.INCH else size * 10 / 254


@given(count=counts, grid=grids)
def test_text_to_length_to_text_is_the_identity(count: int, grid: Grid) -> None:
    text = length_text(float(exact(count, grid)), units=grid.units)
    assert length_text(read_length(text, units=grid.units), units=grid.units) == text


@given(count=counts, grid=grids)
def test_length_to_text_to_length_is_the_identity(count: int, grid: Grid) -> None:
    """In inches to the last bit; in millimeters to the nearest float."""
    length = grid.at(count)
    read = read_length(length_text(length, units=grid.units), units=grid.units)
    assert read == pytest.approx(float(exact(count, grid)), rel=1e-15, abs=0)
    if grid.units is Units.INCH:
        assert read == length == float(exact(count, grid))


@given(count=counts, grid=grids, mark=st.booleans())
def test_marks_do_not_matter_in_the_jobs_own_units(count: int, grid: Grid, mark: bool) -> None:
    text = length_text(grid.at(count), units=grid.units, mark=mark)
    if grid.units is Units.MM and not mark:
        assert read_length(text, units=Units.MM) == pytest.approx(grid.at(count), rel=1e-15, abs=0)
    else:
        assert read_length(text, units=grid.units) == pytest.approx(grid.at(count), rel=1e-15, abs=0)


@given(count=st.integers(min_value=0, max_value=20_000))
def test_feet_and_inches_are_the_identity(count: int) -> None:
    length = count / 64
    assert read_length(feet_text(length, units=Units.INCH), units=Units.INCH) == length


@given(count=counts, grid=grids, offset=st.fractions(min_value=Fraction(-49, 100), max_value=Fraction(49, 100)))
def test_a_length_goes_to_the_nearest_step(count: int, grid: Grid, offset: Fraction) -> None:
    length = exact(count, grid) + offset * exact(1, grid)
    assert grid.count(float(length)) == count


@pytest.mark.parametrize("grid", [*INCH_GRIDS, FINE[Units.INCH]], ids=lambda grid: f"1/{grid.denominator}")
def test_every_half_step_goes_up(grid: Grid) -> None:
    """Half steps of inch grids are exact in binary; 4 inches of them, one by one."""
    for count in range(4 * grid.denominator):
        half = float(exact(2 * count + 1, Grid(grid.units, grid.numerator, 2 * grid.denominator)))
        assert grid.count(half) == count + 1
        assert grid.round(half) == float(exact(count + 1, grid))


@pytest.mark.parametrize("grid", MM_GRIDS, ids=lambda grid: f"{grid.numerator}/{grid.denominator} mm")
def test_every_half_step_of_a_millimeter_grid_goes_up(grid: Grid) -> None:
    """No half millimeter is exact in inches: the reader's float must still go up, all along a meter."""
    for count in range(1000 * grid.denominator):
        half = read_length(f"{float(Fraction(2 * count + 1, 2 * grid.denominator))} mm", units=Units.MM)
        assert grid.count(half) == count + 1


def test_every_carry_is_carried() -> None:
    """Just under each whole inch, 128ths round up to the inch and never to 64/64."""
    for inch in range(1, 120):
        just_under = inch - 1 / 256
        assert length_text(just_under, units=Units.INCH) == f'{inch}"'
        assert length_text(inch - 1 / 64, units=Units.INCH).endswith('63/64"')


@given(length=st.floats(min_value=0, max_value=1000))
def test_no_fraction_is_ever_whole_or_unreduced(length: float) -> None:
    text = length_text(length, units=Units.INCH, mark=False)
    if "/" in text:
        top, bottom = map(int, text.split()[-1].split("/"))
        assert top < bottom <= 64
        assert Fraction(top, bottom).denominator == bottom


@given(length=st.floats(min_value=-1000, max_value=1000), grid=grids)
def test_up_is_never_shorter_and_less_than_a_step_longer(length: float, grid: Grid) -> None:
    up = grid.up(length)
    assert -1e-6 * grid.step <= up - length <= grid.step * (1 + 1e-6)
    assert grid.holds(up)


@given(length=st.floats(min_value=-1000, max_value=1000), grid=grids)
def test_rounding_twice_changes_nothing(length: float, grid: Grid) -> None:
    once = grid.round(length)
    assert grid.round(once) == once


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("5 1/2", Fraction(11, 2)),
        ("4-9/16", Fraction(73, 16)),
        ('4-9/16"', Fraction(73, 16)),
        ("4 9/16 in", Fraction(73, 16)),
        ("4 9/16 inches", Fraction(73, 16)),
        ("3/4", Fraction(3, 4)),
        ("7.5", Fraction(15, 2)),
        (".5", Fraction(1, 2)),
        ("2'-11 1/2\"", Fraction(71, 2)),
        ("2' 11 1/2", Fraction(71, 2)),
        ("2'", Fraction(24)),
        ("2 ft", Fraction(24)),
        ("2'-0 1/2\"", Fraction(49, 2)),
        ("2'-1/2\"", Fraction(49, 2)),
        ("-1 1/4", Fraction(-5, 4)),
        ("902 mm", Fraction(9020, 254)),
        ("90.2 cm", Fraction(9020, 254)),
        ("0.902 m", Fraction(9020, 254)),
        ("902mm", Fraction(9020, 254)),
        ("5½", Fraction(11, 2)),
        ("5 ½″", Fraction(11, 2)),
        ("2′-11½″", Fraction(71, 2)),
        ("4–9/16”", Fraction(73, 16)),
        ("¾", Fraction(3, 4)),
    ],
)
def test_lengths_as_the_trade_writes_them(text: str, inches: Fraction) -> None:
    """By hand: feet by 12, fractions added, millimeters by 10/254."""
    assert read_length(text, units=Units.INCH) == pytest.approx(float(inches), rel=1e-15, abs=0)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("902", 902),
        ("902.5", 902.5),
        ("140 mm", 140),
        ("14 cm", 140),
        ('5 1/2"', 139.7),
        ("5 1/2 in", 139.7),
        ("1'", 304.8),
    ],
)
def test_lengths_of_a_metric_job(text: str, mm: float) -> None:
    assert read_length(text, units=Units.MM) * 25.4 == pytest.approx(mm, rel=1e-14, abs=0)


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "abc",
        "51/2",
        "1/0",
        "5/5",
        "5 1/2 1/2",
        "5,5",
        "1e3",
        "0x10",
        "nan",
        "inf",
        "5 mm 3",
        "--5",
        "5.5 1/2",
        "1/2/3",
    ],
)
@pytest.mark.parametrize("units", list(Units))
def test_what_is_no_length(text: str, units: Units) -> None:
    with pytest.raises(
        LengthError, match=r"is not a length.*; write it like 5 1/2, 4-9/16\", 2'-11 1/2\", 7\.5 or 902 mm$"
    ):
        read_length(text, units=units)


def test_an_improper_fraction_is_a_missing_space() -> None:
    with pytest.raises(LengthError) as caught:
        read_length("51/2", units=Units.INCH)
    assert str(caught.value) == (
        "'51/2' is not a length (the fraction is not less than one; is a space missing?); "
        'write it like 5 1/2, 4-9/16", 2\'-11 1/2", 7.5 or 902 mm'
    )


def test_bare_inches_in_a_metric_job_are_not_guessed() -> None:
    with pytest.raises(LengthError) as caught:
        read_length("5 1/2", units=Units.MM)
    assert str(caught.value).startswith("'5 1/2' is not a length (in a mm job inches carry their mark)")


@pytest.mark.parametrize(
    ("length", "inch", "mm"),
    [
        (0.0, '0"', "0 mm"),
        (0.5, '1/2"', "12.7 mm"),
        (5.5, '5 1/2"', "139.7 mm"),
        (-1.25, '-1 1/4"', "-31.8 mm"),
        (-1 / 1024, '0"', "0 mm"),
        (35 + 33 / 64, '35 33/64"', "902.1 mm"),
        (0.999, '1"', "25.4 mm"),
        (-1.5, '-1 1/2"', "-38.1 mm"),
    ],
)
def test_lengths_as_they_are_printed(length: float, inch: str, mm: str) -> None:
    assert length_text(length, units=Units.INCH) == inch
    assert length_text(length, units=Units.MM) == mm


@pytest.mark.parametrize(
    ("length", "text"),
    [(35.5, '35 1/2"'), (36.0, "3'-0\""), (36.5, "3'-0 1/2\""), (95.25, "7'-11 1/4\""), (47.9999, "4'-0\"")],
)
def test_long_lengths_in_feet(length: float, text: str) -> None:
    assert feet_text(length, units=Units.INCH) == text


@pytest.mark.parametrize(
    ("value", "digits", "text"), [(14.04, 1, "14"), (0.5, 2, "0.5"), (-0.01, 1, "0"), (3.0, 0, "3")]
)
def test_plain_numbers(value: float, digits: int, text: str) -> None:
    assert decimal_text(value, digits) == text
