"""Texts of a job where they come out: in every table as text, and told where the papers have no letters for them."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from openpyxl import load_workbook
from shops import Shop, shop, undrawn
from test_buy import priced

from jambs.csv_text import guarded
from jambs.sheets.letters import letters_lacking

pytestmark = pytest.mark.usefixtures("undrawn")
FORMULA = "=1+1"


def cells(path: Path) -> list[str]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return [cell for row in csv.reader(file) for cell in row]


def test_no_table_of_a_build_starts_a_formula(priced: Shop) -> None:
    shop = priced
    shop.change("room: Kitchen", f"room: {FORMULA}")
    assert shop.run("build", "house", "--without-solids").exit_code == 0
    assert shop.run("buy", "house", "--stages", "0").exit_code == 0
    tables = sorted(shop.output.rglob("*.csv"))
    assert {"parts.csv", "cut list.csv", "buying list.csv", "drops.csv"} <= {one.name for one in tables}
    for table in tables:
        assert [cell for cell in cells(table) if guarded(cell) != cell] == [], table
    assert f"'{FORMULA}" in cells(shop.output / "parts.csv")


def test_our_own_table_of_measures_is_read_back(shop: Shop) -> None:
    """A name that begins like a formula goes out guarded and comes back as it was, from CSV and XLSX."""
    by = "  measured: {date: 2026-03-20, by: '=Ann'}\n"
    shop.change("    room: Bath\n", f"    room: Bath\n  {by}")
    for kind in ("csv", "xlsx"):
        assert shop.run("measure", "house", "--table", kind).exit_code == 0
        table = shop.folder / "house" / f"measures.{kind}"
        if kind == "csv":
            assert "'=Ann" in cells(table)
        else:
            sheet = load_workbook(table).worksheets[0]
            assert "f" not in {cell.data_type for row in sheet.iter_rows() for cell in row}
        text = shop.job.read_text(encoding="utf-8")
        shop.change(f"  {by}", "")
        shop.change("\nposition:", f"\nmeasures: measures.{kind}\nposition:")
        result = shop.run("check", "house")
        assert result.exit_code == 0, result.stderr
        assert f"measures.{kind}: " in result.stdout and "rows read" in result.stdout
        from jambs.job import read_job

        assert [one.readings.by for one in read_job(shop.job).openings if one.readings] == ["=Ann"]
        shop.job.write_text(text, encoding="utf-8")
        table.unlink()


@pytest.mark.parametrize(
    ("text", "lacking"),
    [("台所 (big)", ("台", "所")), ("den 🏠", ("🏠",)), ("Küche Łódź Θάλασσα Кухня ½ × 3′ – “a”", ()), ("Kitchen", ())],
)
def test_letters_that_the_papers_lack(text: str, lacking: tuple[str, ...]) -> None:
    assert letters_lacking(text) == lacking


def test_every_letter_that_is_not_looked_up_is_there() -> None:
    from jambs.sheets import letters

    early = [chr(number) for number in range(ord(letters.ALWAYS)) if chr(number).isprintable()]
    assert [letter for letter in early if ord(letter) not in letters._known()] == []


@pytest.mark.parametrize("verb", ["check", "measure", "labels"])
def test_a_letter_the_papers_lack_is_told(verb: str, shop: Shop) -> None:
    shop.change("room: Kitchen", "room: 台所")
    result = shop.run(verb, "house")
    assert result.exit_code == 0
    assert result.stderr == (
        "check  '台所': the letters of the papers have no 台, 所, a box is printed instead; "
        "write it in Latin, Greek or Cyrillic letters\n"
    )


def test_nothing_is_told_of_letters_the_papers_have(shop: Shop) -> None:
    shop.change("room: Kitchen", "room: Кухня Łódź")
    assert shop.run("check", "house").stderr == ""


@pytest.mark.parametrize("first", ["31", "99999999"])
def test_labels_start_on_the_first_sheet(first: str, shop: Shop) -> None:
    result = shop.run("labels", "house", "--first", first)
    assert result.exit_code == 1
    assert f"there is no label {first} on a sheet of 30; start at 1 to 30" in result.stderr
    assert shop.run("labels", "house", "--first", "30").exit_code == 0


def test_a_label_too_small_to_read(shop: Shop) -> None:
    result = shop.run("labels", "house", "--label", "0 x 0", "--pitch", "0 x 0", "--count", "9999x9999")
    assert result.exit_code == 1 and "a label is less than a quarter inch" in result.stderr
