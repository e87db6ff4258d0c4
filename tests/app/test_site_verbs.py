"""To the site and back from the command line: measure, labels, revisions; builds killed at random."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import csv
import os
import random
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader
from shops import Shop, built, papers, shop, undrawn

from jambs.app.measure import MeasureTable, TableKind, openings_to_measure, write_measure_table
from jambs.commands.measure_command import _tell_table
from jambs.issued.durable import sha256_of
from jambs.issued.record import Record
from jambs.job import read_job

DEPTHS = {
    "1": "4 3/4",
    "2": "4 3/4",
    "3": "4 3/4",
    "4": "4 3/4",
    "5": "4 3/4",
    "6": "4 3/4",
    "7": "4 3/4",
    "8": "4 3/4",
}


def text_of(pdf: Path) -> str:
    return " ".join(page.extract_text() for page in PdfReader(pdf).pages).replace("\n", " ")


def fill(shop: Shop, mark: str, values: dict[str, str]) -> None:
    """Fill the table in as on the site, and name it in the job."""
    table = shop.folder / "house" / "measures.csv"
    with table.open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.reader(file))
    for row in rows:
        if row[0] == mark:
            row[4] = {"date": "2026-06-01", "by": "Ann", **values}.get(row[1], row[4])
    with table.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(rows)
    if "measures:" not in shop.job.read_text(encoding="utf-8"):
        shop.change("\nposition:", "\nmeasures: measures.csv\nposition:")


def record_of(shop: Shop) -> Record:
    return Record.open(shop.output)


def test_measure_writes_sheets_and_the_table_once(shop: Shop) -> None:
    result = shop.run("measure", "house")
    assert result.exit_code == 0, result.stderr
    site = shop.output / "site"
    assert len(PdfReader(site / "measure sheets.pdf").pages) == 2
    assert "Depths to measure" in text_of(site / "depths to measure.pdf")
    table = shop.folder / "house" / "measures.csv"
    table.write_text("mine", encoding="utf-8")
    again = shop.run("measure", "house", "--table", "xlsx")
    assert again.exit_code == 0
    assert "house/measures.csv is there already and is left as it is" in again.stdout
    assert table.read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("kind", ["csv", "xlsx"])
def test_a_table_of_an_earlier_plan_says_so(shop: Shop, kind: TableKind) -> None:
    """It is the reader's file and stays; what it says is planned is not so any more for one window."""
    job = read_job(shop.job)
    beside, folder = shop.job.parent, shop.output
    assert write_measure_table(job, openings_to_measure(job, folder), beside, kind=kind).is_new
    table = write_measure_table(job, openings_to_measure(job, folder), beside)
    assert (table.is_new, table.of_another_plan) == (False, ())
    shop.change("    rough_opening: 24 x 24", "    rough_opening: 24 x 24\n    position: {interior_depth: 4}")
    job = read_job(shop.job)
    assert write_measure_table(job, openings_to_measure(job, folder), beside).of_another_plan == ("W02",)


@pytest.mark.parametrize("kind", ["csv", "xlsx"])
def test_a_table_without_rows_of_an_opening_says_so(shop: Shop, kind: TableKind) -> None:
    """One came since, or has another mark; those whose readings stand in the job file need no rows."""
    job = read_job(shop.job)
    beside, folder = shop.job.parent, shop.output
    write_measure_table(job, openings_to_measure(job, folder), beside, kind=kind)
    assert write_measure_table(job, openings_to_measure(job, folder), beside).lacking == ()
    shop.change("mark: W02", "mark: W7")
    job = read_job(shop.job)
    assert write_measure_table(job, openings_to_measure(job, folder), beside).lacking == ("W7",)
    read = "{date: 2026-03-20, interior_depth: {head_left: 4, head_right: 4, sill_left: 4, sill_right: 4}}"
    shop.change("mark: W7", f"mark: W7\n    measured: {read}")
    job = read_job(shop.job)
    assert write_measure_table(job, openings_to_measure(job, folder), beside).lacking == ()


def test_what_is_no_table_lacks_nothing(shop: Shop) -> None:
    (shop.job.parent / "measures.csv").write_text("mine", encoding="utf-8")
    job = read_job(shop.job)
    found = write_measure_table(job, openings_to_measure(job, shop.output), shop.job.parent)
    assert (found.lacking, found.of_another_plan) == ((), ())


def test_measure_says_which_planned_depths_of_a_table_hold_no_longer(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    _tell_table(MeasureTable(file=tmp_path / "measures.csv", is_new=False, of_another_plan=("W02", "W03")))
    assert "its column planned is of an earlier plan for W02, W03: go by the measure sheets" in capsys.readouterr().out
    _tell_table(MeasureTable(file=tmp_path / "measures.csv", is_new=False, lacking=("W7", "W8")))
    said = capsys.readouterr().out
    assert "earlier plan" not in said and "it has no rows for W7, W8: write them below the others" in said
    _tell_table(MeasureTable(file=tmp_path / "measures.csv", is_new=False))
    said = capsys.readouterr().out
    assert "earlier plan" not in said and "no rows" not in said


def test_a_shape_has_a_measure_sheet_and_its_places_in_the_table(shop: Shop) -> None:
    shop.change("    rough_opening: 36 x 48", "    shape: {kind: octagon, cut: 8}")
    result = shop.run("measure", "house")
    assert result.exit_code == 0, result.stderr
    pages = PdfReader(shop.output / "site" / "measure sheets.pdf").pages
    assert len(pages) == 2 and "The frame (octagon) goes by its order" in " ".join(pages[0].extract_text().split())
    table = (shop.folder / "house" / "measures.csv").read_text(encoding="utf-8-sig")
    rows = [row for row in csv.reader(table.splitlines()) if row[0] == "W01"]
    assert [row[2] for row in rows[2:6]] == [
        "interior depth, left leg top",
        "interior depth, head, left slant middle",
        "interior depth, head left",
        "interior depth, head, level edge middle",
    ]
    assert rows[-1][2] == "wall finish on"


def test_a_sheet_somebody_wrote_on_is_left(shop: Shop) -> None:
    shop.run("measure", "house")
    sheet = shop.output / "site" / "measure sheets.pdf"
    sheet.write_bytes(b"with pencil")
    result = shop.run("measure", "house")
    assert result.exit_code == 1
    assert "measure sheets.pdf (changed since it was written)" in result.stderr
    assert sheet.read_bytes() == b"with pencil"


def test_a_slip_is_asked_about_and_the_opening_stays_planned(shop: Shop) -> None:
    shop.run("measure", "house")
    fill(shop, "W01", DEPTHS | {"7": "5 3/4"})
    result = shop.run("check", "house")
    assert result.exit_code == 0
    assert 'place 7 (interior depth, sill left) reads 5 3/4"' in result.stdout
    assert 'an inch too much? Was 4 3/4" meant?' in result.stdout
    assert "2 openings; 2 planned" in result.stdout
    assert "asked  W01: place 7" in shop.run("measure", "house").stdout


def test_labels_by_cutting_on_stock_of_ones_own(shop: Shop) -> None:
    words = ["labels", "house", "--by", "cutting", "--count", "2x7", "--label", "4 x 1 1/3"]
    result = shop.run(*words, "--corner", "5/32 x 5/6", "--pitch", "4 3/16 x 1 1/3")
    assert result.exit_code == 0, result.stderr
    assert "labels" in result.stdout
    assert "W01-1" in text_of(shop.output / "site" / "labels.pdf")


@pytest.mark.parametrize(
    ("words", "code", "message"),
    [
        (("--count", "many"), 2, "'many' is not a count; write across x down, like 3x10"),
        (("--label", "wide"), 2, "'wide' is not a size; write it like 2 5/8 x 1 or 70 mm x 36 mm"),
        (("--count", "5x10"), 1, "the labels reach"),
    ],
)
def test_label_stock_that_cannot_be(shop: Shop, words: tuple[str, ...], code: int, message: str) -> None:
    result = shop.run("labels", "house", *words)
    assert result.exit_code == code
    assert message in result.stderr


def test_a_changed_opening_is_issued_alone(built: Shop) -> None:
    before = (built.output / "cut sheets" / "W02.pdf").read_bytes()
    built.run("measure", "house")
    fill(built, "W01", DEPTHS)
    result = built.run("build", "house")
    assert result.exit_code == 0, result.stderr
    assert result.stdout.splitlines()[-4:] == [
        "Issue 2, changed sheets of W01; print `changed cut sheets.pdf` and destroy the old ones:",
        "  W01: measured 2026-06-01, 4 figures changed; if cut already, recut W01-1, W01-2, W01-3, W01-4",
        "What labels on boards mean now is listed in `old labels.pdf`.",
        "All current sheets are listed in `current sheets.pdf`.",
    ]
    issue = record_of(built).latest_issue
    assert issue is not None and (issue.issue, issue.changed) == (2, ("W01",))
    assert (built.output / "cut sheets" / "W02.pdf").read_bytes() == before
    sheet = text_of(built.output / "cut sheets" / "W01.pdf")
    assert "Changed since issue 1: measured 2026-06-01" in sheet and "recut: too narrow" in sheet
    assert f"issue 2 · {issue.day} · {issue.sheets['W01'].code}" in sheet
    changes = text_of(built.output / "changes.pdf")
    assert "W01-1" in changes and '4 25/32"' in changes and "W02" not in changes
    assert "W02" not in text_of(built.output / "changed cut sheets.pdf")
    index = text_of(built.output / "current sheets.pdf")
    first = record_of(built).issue(1)
    assert f"1 ({first.sheets['W01'].code})" in index and issue.sheets["W01"].code in index


def test_building_again_issues_nothing(built: Shop) -> None:
    before = {path: path.read_bytes() for path in built.output.rglob("*.pdf")}
    result = built.run("build", "house")
    assert result.exit_code == 0
    assert result.stdout.splitlines()[-1] == "Nothing changed since issue 1."
    assert list(record_of(built).issues) == [1]
    assert {path: path.read_bytes() for path in built.output.rglob("*.pdf")} == before


@pytest.mark.usefixtures("undrawn")
def test_building_again_after_a_change_issues_nothing_either(built: Shop) -> None:
    built.run("measure", "house")
    fill(built, "W01", DEPTHS)
    built.run("build", "house")
    changed = {path: path.read_bytes() for path in built.output.rglob("*.pdf")}
    result = built.run("build", "house")
    assert result.stdout.splitlines()[-1] == "Nothing changed since issue 2."
    assert {path: path.read_bytes() for path in built.output.rglob("*.pdf")} == changed


def test_back_to_the_first_issue(built: Shop) -> None:
    first = (built.output / "cut sheets" / "W01.pdf").read_bytes()
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    assert built.run("build", "house", "--only", "W01").exit_code == 0
    assert (built.output / "cut sheets" / "W01.pdf").read_bytes() != first
    result = built.run("revisions", "house", "--withdraw-to", "1")
    assert result.exit_code == 0, result.stderr
    assert result.stdout.splitlines()[0] == "issue 3 is the same as issue 1; papers of other issues are void"
    assert "W01, same as issue 1" in result.stdout
    assert (built.output / "cut sheets" / "W01.pdf").read_bytes() == first
    assert not (built.output / "changes.pdf").exists()
    assert list(record_of(built).issues) == [1, 2, 3]


def test_no_such_issue(built: Shop) -> None:
    result = built.run("revisions", "house", "--withdraw-to", "9")
    assert result.exit_code == 1
    assert result.stderr.strip() == "there is no issue 9 on record; issued so far: 1"


@pytest.mark.usefixtures("undrawn")
@pytest.mark.parametrize("seed", [1])
def test_a_build_killed_at_random_leaves_the_last_issue_whole(built: Shop, seed: int) -> None:
    """Whatever the moment: every issue that is recorded has all its files, and the next build puts the papers right."""
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    code = "from jambs.commands.command_line import main; main(['build', 'house'])"
    process = subprocess.Popen(
        [sys.executable, "-c", code], cwd=built.folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    try:
        process.wait(timeout=random.Random(seed).uniform(0.5, 6.0))
    except subprocess.TimeoutExpired:
        os.kill(process.pid, signal.SIGKILL)
        process.wait()
    assert built.run("build", "house").exit_code == 0
    record = record_of(built)
    assert list(record.issues) == [1, 2] and record.interrupted is None
    for issue in record.issues.values():
        for digest in (*issue.files.values(), *issue.documents.values()):
            assert record.blobs.has(digest)
    for path, paper in record.papers.items():
        assert sha256_of((built.output / path).read_bytes()) == paper.sha256, path
