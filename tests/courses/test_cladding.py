"""What may be seen of a course: the table of shingles, board widths less their laps."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from pydantic import ValidationError

from jambs.courses.cladding import CourseError, exposure_table, greatest_exposure, resolve_cladding
from jambs.courses.cladding_words import assumed_of, cladding_words, limit_words
from jambs.job.models.outside import CladdingEntry, CladdingKind, Coursing
from jambs.length import GRIDS, Units

TABLE = Path(__file__).parents[1] / "authorities" / "outside" / "shingle_exposure.csv"
KINDS = {"shingle": CladdingKind.SHINGLES, "shake handsplit-resawn": CladdingKind.SHAKES}
COLUMNS = {
    "single_course_in": Coursing.SINGLE,
    "double_no1_in": Coursing.DOUBLE_NO_1,
    "double_no2_in": Coursing.DOUBLE_NO_2,
}


def rows() -> list[dict[str, str]]:
    lines = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return list(csv.DictReader(lines))


def test_every_exposure_of_the_published_table() -> None:
    """Published estimating manual, agrees with International Residential Code R703.6."""
    published = {
        (KINDS[row["material"]], float(row["length_in"]), coursing): float(row[column])
        for row in rows()
        for column, coursing in COLUMNS.items()
        if row[column]
    }
    assert published == {(row.kind, row.length, row.coursing): row.greatest for row in exposure_table()}


def cladding(**keys: object) -> CladdingEntry:
    return CladdingEntry.model_validate(keys)


def test_a_length_the_table_does_not_have() -> None:
    with pytest.raises(CourseError, match=r"no 20 in shingles laid single; it has 16 in single"):
        greatest_exposure(CladdingKind.SHINGLES, length=20, coursing=Coursing.SINGLE)


def test_more_than_the_table_allows() -> None:
    entry = cladding(kind="shingles", length="16", least_exposure="5", greatest_exposure="8")
    with pytest.raises(CourseError, match=r'greatest_exposure is 8"; 16" shingles laid single show at most 7 1/2"'):
        resolve_cladding(entry, units=Units.INCH)


def test_boards_show_their_width_less_the_lap() -> None:
    """Metric boards 145 mm and 170 mm wide, lapped 20 to 30 mm: 115 to 125 and 140 to 150 mm are seen, by hand."""
    entry = CladdingEntry.model_validate(
        {"kind": "boards", "widths": ["170", "145"], "least_lap": "20", "greatest_lap": "30"},
        context={"units": Units.MM},
    )
    found = resolve_cladding(entry, units=Units.MM).exposures(GRIDS["1 mm"])
    assert found == (*range(115, 126), *range(140, 151))


def test_boards_show_no_less_than_their_width_less_the_greatest_lap() -> None:
    """4 1/2 in wide, lapped 1 to 4: from 1/2 to 3 1/2 in are seen, in sixteenths 8 to 56.

    A cut course under the eave need not show more than a whole one may: 1/2.
    """
    found = resolve_cladding(
        cladding(kind="boards", widths=["4 1/2"], least_lap="1", greatest_lap="4"), units=Units.INCH
    )
    assert found.exposures(GRIDS["1/16"]) == tuple(range(8, 57))
    assert found.least_top == 0.5


@pytest.mark.parametrize(("units", "greatest", "unseen", "top"), [(Units.INCH, 0.5, 0.0625, 4), (Units.MM, 12, 2, 100)])
def test_what_is_usual_where_the_job_says_nothing(units: Units, greatest: float, unseen: float, top: float) -> None:
    """Round figures of each system; common practice, no source."""
    entry = CladdingEntry.model_validate(
        {"kind": "boards", "widths": ["8 in"], "least_lap": "1 in"}, context={"units": units}
    )
    found = resolve_cladding(entry, units=units)
    inch = 1.0 if units is Units.INCH else 25.4
    usual = (found.greatest_change * inch, found.unseen_change * inch, found.least_top * inch)
    assert usual == pytest.approx((greatest, unseen, top))


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"kind": "shingles", "length": "18", "least_exposure": "5"}, '18" shingles, single course'),
        ({"kind": "boards", "widths": ["8", "6"], "least_lap": "1"}, '6", 8" boards, lapped 1"'),
        (
            {"kind": "clapboards", "widths": ["6"], "least_lap": "1", "greatest_lap": "1 1/2"},
            '6" clapboards, lapped 1" to 1 1/2"',
        ),
    ],
)
def test_a_cladding_by_name(keys: dict[str, object], said: str) -> None:
    assert cladding_words(resolve_cladding(cladding(**keys), units=Units.INCH), Units.INCH) == said


def test_matched_boards_show_one_width_only() -> None:
    entry = cladding(kind="boards", widths=["5 1/2"], least_lap="3/8")
    assert resolve_cladding(entry, units=Units.INCH).exposures(GRIDS["1/32"]) == (5 * 32 + 4,)


def test_clapboards_lap_an_inch_at_least() -> None:
    """The minimum lap for bevel siding is 1 inch: naval training manual NAVEDTRA 14044, chapter 4."""
    with pytest.raises(CourseError, match=r'least_lap is 3/4"; clapboards lap at least 1"'):
        resolve_cladding(cladding(kind="clapboards", widths=["5 1/2"], least_lap="3/4"), units=Units.INCH)


@pytest.mark.parametrize(("lap", "is_short"), [("25", False), ("24.5", True)])
def test_metric_clapboards_lap_25_millimeters(lap: str, is_short: bool) -> None:
    """The round value near an inch; common practice, no source."""
    entry = CladdingEntry.model_validate(
        {"kind": "clapboards", "widths": ["140"], "least_lap": lap}, context={"units": Units.MM}
    )
    if is_short:
        with pytest.raises(CourseError, match="clapboards lap at least"):
            resolve_cladding(entry, units=Units.MM)
    else:
        assert resolve_cladding(entry, units=Units.MM).exposures(GRIDS["1 mm"]) == (115,)


def test_where_the_greatest_exposure_is_from_is_said() -> None:
    boards = resolve_cladding(cladding(kind="boards", widths=["5 1/2"], least_lap="3/8"), units=Units.INCH)
    assert limit_words(boards, Units.INCH) == "board widths and laps of the job"
    shingles = resolve_cladding(cladding(kind="shingles", length="18", least_exposure="5"), units=Units.INCH)
    assert limit_words(shingles, Units.INCH).startswith('at most 8 1/2": ')


def test_what_the_job_leaves_out_is_said() -> None:
    found = resolve_cladding(cladding(kind="shingles", length="18", least_exposure="5"), units=Units.INCH)
    assert {one.what: one.value for one in assumed_of(found, Units.INCH)} == {
        "wanted exposure": '8 1/2"',
        "greatest change of exposure": '1/2"',
        "unseen change of exposure": '1/16"',
    }


@pytest.mark.parametrize(
    ("keys", "message"),
    [
        ({"kind": "shingles", "length": "18"}, "shingles need length and least_exposure"),
        ({"kind": "boards", "widths": ["6"]}, "boards need widths and least_lap"),
        ({"kind": "boards", "widths": ["6"], "least_lap": "2", "greatest_lap": "1"}, "greatest_lap is less than"),
        ({"kind": "boards", "widths": ["1"], "least_lap": "1"}, "no wider than it laps"),
    ],
)
def test_claddings_that_are_none(keys: dict[str, object], message: str) -> None:
    with pytest.raises(ValidationError, match=message):
        cladding(**keys)


def test_least_past_greatest() -> None:
    entry = cladding(kind="shingles", length="16", least_exposure="8")
    with pytest.raises(CourseError, match=r'least_exposure is 8", past the greatest of 7 1/2"'):
        resolve_cladding(entry, units=Units.INCH)
