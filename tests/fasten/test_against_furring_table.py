"""Every row of the published table of furring over foam: IBC 2018 Table 2603.13.2, as IRC 2018 Table R703.15.2."""

from __future__ import annotations

import csv
from dataclasses import replace
from pathlib import Path

import pytest

from jambs.fasten.furring import FurringCase, Verdict, furring_table, furring_verdict
from jambs.fasten.furring_words import verdict_words
from jambs.length import Units

TABLE = Path(__file__).parents[1] / "authorities" / "outside" / "furring_over_foam.csv"


def rows() -> list[dict[str, str]]:
    lines = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return list(csv.DictReader(lines))


def case(row: dict[str, str], foam: float) -> FurringCase:
    return FurringCase(
        fastener=row["fastener"].replace("No.10", "No. 10"),
        penetration=float(row["min_penetration_in"]),
        fastener_spacing=float(row["fastener_spacing_in"]),
        furring_spacing=float(row["furring_oc_in"]),
        cladding_psf=float(row["cladding_psf"]),
        foam=foam,
    )


def words_of(verdict: Verdict) -> str:
    return verdict_words(verdict, Units.INCH)


def named(row: dict[str, str]) -> str:
    return "-".join(row.values()).replace(" ", "-").replace("/", "")


@pytest.mark.parametrize("row", rows(), ids=named)
def test_every_row(row: dict[str, str]) -> None:
    if row["max_foam_in"] == "DR":
        verdict = furring_verdict(case(row, 0.25))
        assert not verdict.is_allowed
        assert words_of(verdict).startswith("needs design: the table asks for design")
        return
    most = float(row["max_foam_in"])
    allowed, past = (furring_verdict(case(row, foam)) for foam in (most, most + 1 / 64))
    assert allowed.is_allowed and allowed.row is not None and allowed.row.greatest_foam == most
    assert words_of(allowed).startswith(f"in the table: up to {row['max_foam_in']} in of foam")
    assert not past.is_allowed and words_of(past).startswith("needs design: ")
    short = replace(case(row, most), penetration=float(row["min_penetration_in"]) - 1 / 8)
    assert "of penetration, the table asks for" in words_of(furring_verdict(short))


def test_edition_and_local_code_are_always_said() -> None:
    for row in rows():
        words = words_of(furring_verdict(case(row, 0.25)))
        assert "2018 Table 2603.13.2" in words and "R703.15.2" in words and "the local code decides" in words


def test_as_many_rows_as_published() -> None:
    assert len(furring_table()) == len(rows()) == 96


def test_between_rows_the_stricter_holds() -> None:
    """No. 10 screws 14 apart on furring 20 apart under 5 lb per sq ft: by hand the row 16, 24, 11 holds, 0.9 in."""
    between = FurringCase(
        fastener="No. 10 wood screw", penetration=1, fastener_spacing=14, furring_spacing=20, cladding_psf=5, foam=0.9
    )
    verdict = furring_verdict(between)
    assert verdict.is_allowed and verdict.row is not None
    assert (verdict.row.fastener_spacing, verdict.row.furring_spacing, verdict.row.cladding_psf) == (16, 24, 11)
    assert not furring_verdict(replace(between, foam=1.0)).is_allowed


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        ({"fastener": "drywall screw"}, "the table has no drywall screw (it has 0.131 nail"),
        ({"fastener_spacing": 25.0}, "the table ends before this case"),
        ({"furring_spacing": 30.0}, "the table ends before this case"),
        ({"cladding_psf": 26.0}, "the table ends before this case"),
    ],
)
def test_outside_the_table(changed: dict[str, float], message: str) -> None:
    inside = FurringCase(
        fastener="1/4 lag screw", penetration=2, fastener_spacing=12, furring_spacing=16, cladding_psf=3, foam=1
    )
    assert furring_verdict(inside).is_allowed
    assert message in words_of(furring_verdict(replace(inside, **changed)))  # type: ignore[arg-type]
