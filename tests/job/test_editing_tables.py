"""Edits of tables and the way back: one cell becomes another, and its bytes alone."""

from __future__ import annotations

import csv
import io
import zipfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook, load_workbook
from openpyxl.comments import Comment
from openpyxl.styles import Font

from jambs.csv_text import guarded
from jambs.job.editing.csv_cells import csv_rows, with_csv_cells, with_csv_rows
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.editing.history import Draft
from jambs.job.editing.xlsx_cells import with_xlsx_cells

TABLE = 'mark;room;frame\r\n\r\nW01; Kitchen ;"30"" x 48"""\r\nW02;"Bed;\nand bath"\r\nW03;Söller;24 x 36'
BEDROOMS = Path(__file__).parents[2] / "examples" / "harbour-house" / "bedrooms.csv"


def table(text: str) -> FileText:
    return FileText(name="openings.csv", content=text.encode())


def test_cells_are_found_where_they_stand() -> None:
    rows = csv_rows(table(TABLE))
    assert [row.values for row in rows] == [
        ("mark", "room", "frame"),
        ("W01", " Kitchen ", '30" x 48"'),
        ("W02", "Bed;\nand bath"),
        ("W03", "Söller", "24 x 36"),
    ]
    assert [row.line for row in rows] == [1, 3, 4, 6]


@pytest.mark.parametrize(
    ("place", "value", "was", "now"),
    [
        ((1, 0), "K1", "\nW01;", "\nK1;"),
        ((1, 2), "36 x 48", '"30"" x 48"""', '"36 x 48"'),
        ((2, 1), "Bed", '"Bed;\nand bath"', '"Bed"'),
        ((3, 1), "a;b", "Söller", '"a;b"'),
        ((3, 1), "=1+1", "Söller", "'=1+1"),
        ((2, 3), "left", '"Bed;\nand bath"', '"Bed;\nand bath";;left'),
    ],
)
def test_a_cell_is_written_in_its_place(place: tuple[int, int], value: str, was: str, now: str) -> None:
    file = table(TABLE)
    new = with_csv_cells(file, {place: value})
    assert new.text == TABLE.replace(was, now)


def test_every_cell_of_an_example_changes_its_line_alone() -> None:
    file = FileText(name="bedrooms.csv", content=BEDROOMS.read_bytes())
    for at, row in enumerate(csv_rows(file)):
        for column in range(len(row.cells)):
            new = with_csv_cells(file, {(at, column): "7 3/8"})
            pairs = enumerate(zip(file.text.split("\n"), new.text.split("\n"), strict=True), start=1)
            assert [number for number, (one, other) in pairs if one != other] == [row.line]


@given(
    rows=st.lists(st.lists(st.text("ab ,;\t\"'\n\r=-1ö", max_size=6), min_size=2, max_size=4), min_size=1, max_size=4),
    at=st.tuples(st.integers(0, 3), st.integers(0, 5)),
    value=st.text("ab ,;\t\"'\n=-1ö", max_size=6),
    dialect=st.sampled_from([(",", "\n"), (";", "\r\n"), ("\t", "\n")]),
)
@settings(max_examples=150)
def test_any_table_takes_any_cell(
    rows: list[list[str]], at: tuple[int, int], value: str, dialect: tuple[str, str]
) -> None:
    """Against the reader of the standard library, which shares no code with ours."""
    separator, end = dialect
    text = io.StringIO()
    csv.writer(text, delimiter=separator, lineterminator=end).writerows([["m", "r"], *rows])
    file = table(text.getvalue())
    found = csv_rows(file)
    row = found[at[0] % len(found)]
    try:
        new = with_csv_cells(file, {(found.index(row), at[1]): value})
    except EditRefused:  # the new cell brings so many of another separator that the table would be read by that one
        assert row == found[0]
        return
    read = list(csv.reader(io.StringIO(new.text, newline=""), delimiter=separator))
    wanted = [list(one.values) for one in found]
    changed = wanted[found.index(row)]
    changed += [""] * (at[1] + 1 - len(changed))
    changed[at[1]] = str(guarded(value))
    assert [one for one in read if any(one) or len(one) > 1] == [one for one in wanted if any(one) or len(one) > 1]


def test_a_cell_by_which_the_table_would_be_read_otherwise_is_refused() -> None:
    with pytest.raises(EditRefused, match="more than this cell would become another"):
        with_csv_cells(table("a,b\n1,2\n"), {(0, 0): "x;y;z"})


def test_several_cells_are_written_at_once() -> None:
    cells = {(1, 0): "K1", (1, 2): "36 x 48", (2, 1): "Bed", (2, 4): "left", (2, 3): "in", (3, 2): ""}
    new = with_csv_cells(table(TABLE), cells)
    assert new.text == ('mark;room;frame\r\n\r\nK1; Kitchen ;"36 x 48"\r\nW02;"Bed";;in;left\r\nW03;Söller;')


def test_rows_are_put_at_the_end_in_the_hand_of_the_table() -> None:
    new = with_csv_rows(table(TABLE), [("W04", "Hall; left", "")])
    assert new.text == f'{TABLE}\r\nW04;"Hall; left";\r\n'


def test_a_quote_that_is_never_closed_is_told_with_its_line() -> None:
    with pytest.raises(EditRefused, match=r"openings.csv:2: a quote is never closed"):
        csv_rows(table('a,b\n"c,d\n'))


def book() -> FileText:
    made = Workbook()
    sheet = made.active
    assert sheet is not None
    sheet.append(["mark", "place", "measured"])
    sheet.append(["W01", 1, None])
    sheet["A1"].font = Font(bold=True)
    made.create_sheet("notes")["B2"] = "=SUM(1,2)"
    out = io.BytesIO()
    made.save(out)
    return FileText(name="measures.xlsx", content=out.getvalue())


def test_a_cell_of_a_spreadsheet_is_written_alone() -> None:
    new = with_xlsx_cells(book(), {(2, 3): "4 3/8"})
    found = load_workbook(io.BytesIO(new.content))
    first, notes = found.worksheets
    assert [[cell.value for cell in row] for row in first] == [["mark", "place", "measured"], ["W01", 1, "4 3/8"]]
    assert first["C2"].number_format == "@" and first["A1"].font.bold
    assert notes["B2"].value == "=SUM(1,2)"


def test_a_spreadsheet_with_what_would_be_lost_is_refused() -> None:
    out = io.BytesIO(book().content)
    with zipfile.ZipFile(out, "a") as packed:
        packed.writestr("xl/charts/chart1.xml", "<c/>")
    with pytest.raises(EditRefused, match="holds charts, which would be lost"):
        with_xlsx_cells(FileText(name="measures.xlsx", content=out.getvalue()), {(2, 3): "4 3/8"})
    with pytest.raises(EditRefused, match="is not a spreadsheet"):
        with_xlsx_cells(FileText(name="measures.xlsx", content=b"no"), {(2, 3): "4 3/8"})


def test_comments_are_told_by_their_name_and_pictures_beside_them_too() -> None:
    """The library that writes the book keeps their words, and loses how large their boxes are and bold letters."""
    made = load_workbook(io.BytesIO(book().content))
    made.worksheets[0]["C2"].comment = Comment("low corner, read twice", "Ann")
    out = io.BytesIO()
    made.save(out)
    with pytest.raises(EditRefused, match="holds comments with their boxes and lettering, which would be lost"):
        with_xlsx_cells(FileText(name="measures.xlsx", content=out.getvalue()), {(2, 3): "4 3/8"})
    with zipfile.ZipFile(out, "a") as packed:
        packed.writestr("xl/drawings/drawing1.xml", "<c/>")
    with pytest.raises(EditRefused, match="lettering and pictures or drawings, which"):
        with_xlsx_cells(FileText(name="measures.xlsx", content=out.getvalue()), {(2, 3): "4 3/8"})


def test_a_spreadsheet_whose_worked_out_values_would_be_lost_is_refused() -> None:
    """A formula that nothing has worked out yet has no value to lose."""
    made = Workbook()
    made.worksheets[0].append(["mark", "place", "measured"])
    made.worksheets[0].append(["W01", 1, "=4+3/8"])
    out, worked = io.BytesIO(), io.BytesIO()
    made.save(out)
    assert with_xlsx_cells(FileText(name="measures.xlsx", content=out.getvalue()), {(3, 1): "W02"})
    with zipfile.ZipFile(out) as plain, zipfile.ZipFile(worked, "w") as packed:
        for name in plain.namelist():
            packed.writestr(
                name,
                plain.read(name).replace(b"</f><v />", b"</f><v>4.375</v>").replace(b"</f><v/>", b"</f><v>4.375</v>"),
            )
    with pytest.raises(EditRefused, match="holds a formula in C2, whose value would be lost; put its value there"):
        with_xlsx_cells(FileText(name="measures.xlsx", content=worked.getvalue()), {(3, 1): "W02"})


# ---- back and forth


def test_taking_every_step_back_leads_to_the_same_bytes() -> None:
    job, other = FileText(name="job.yaml", content=b"a: 1\n"), table(TABLE)
    draft = Draft.of(job)
    second = FileText(name="job.yaml", content=b"a: 2\n")
    draft = draft.with_step("a is 2", second).with_step("a schedule", other)
    assert [step.words for step in draft.done] == ["a is 2", "a schedule"]
    assert draft.changed == ((job, second), (None, other))
    once = draft.back()
    assert once.files == {"job.yaml": second}
    start = once.back().back()
    assert start.files["job.yaml"].sum == job.sum and not start.changed and not start.done
    assert start.forth().forth().forth().files == draft.files
    assert once.with_step("a is 3", FileText(name="job.yaml", content=b"a: 3\n")).undone == ()
    assert draft.with_step("nothing", second) == draft
    assert not draft.as_saved().changed and draft.as_saved().back().changed == ((other, None),)
