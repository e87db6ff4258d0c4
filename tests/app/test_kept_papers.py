"""Papers of openings that did not change are laid as they were issued: the same files, and nothing drawn for them."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, NoReturn

import pytest
from example_papers import example_papers
from pypdf import PdfReader
from shops import Shop, shop

from jambs.app import kept_papers
from jambs.app import papers as app_papers
from jambs.app.basis import basis_of
from jambs.app.chain import make_kits
from jambs.app.issue_record import issue_record
from jambs.drawings.drawing import draw_opening
from jambs.drawings.views.key_plan import side_of_house
from jambs.face import check, steps, write_papers
from jambs.issued.basis import AROUND, SHEETS, Basis, differing
from jambs.issued.durable import file_sums
from jambs.issued.entry import WrittenPaper
from jambs.issued.record import Record
from jambs.job import Job, read_job
from jambs.outside.house import plan_house
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.bookmarks import bookmarks_of

EXAMPLES = Path(__file__).parents[2] / "examples"
LETTER, A4 = (612, 792), (595, 842)
"""ANSI/ASME Y14.1 size A and ISO 216 [pt]."""
PLAIN = ("build", "house", "--without-solids")
SMALL = "frame: 23 1/2 x 23 1/2\n    rough_opening: 24 x 24"
HIGHER = "frame: 23 1/2 x 25 1/2\n    rough_opening: 24 x 26"


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The openings that were drawn, by mark."""
    marks: list[str] = []
    draw = draw_opening

    def told(kit: CutKit, *given: Any, **named: Any) -> Any:
        marks.append(kit.mark)
        return draw(kit, *given, **named)

    monkeypatch.setattr(app_papers, "draw_opening", told)
    return marks


def issued(folder: Path) -> dict[str, str]:
    """Every file of a folder of papers, its record among them, but the name of who wrote last."""
    return {path: digest for path, digest in file_sums(folder).items() if not path.endswith(".lock")}


def damage_a_kept_sheet(shop: Shop) -> None:
    sheet = Record.open(shop.output).papers["cut sheets/W01.pdf"]
    (shop.output / "issued" / "files" / sheet.sha256).write_bytes(b"damaged")


Step = tuple[Callable[[Shop], object], tuple[str, ...], list[str]]
"""What is done to the job or the folder, how it is built then, and which openings are drawn."""
YEAR: tuple[Step, ...] = (
    (lambda shop: None, PLAIN, ["W01", "W02"]),
    (lambda shop: None, PLAIN, []),
    (lambda shop: shop.change(SMALL, HIGHER), PLAIN, ["W02"]),
    (lambda shop: shop.change("room: Kitchen", "room: Pantry"), (*PLAIN, "--only", "W02"), []),
    (lambda shop: None, PLAIN, ["W01"]),
    (lambda shop: None, (*PLAIN, "--all-cut-files"), ["W01", "W02"]),
    (lambda shop: None, PLAIN, []),
    (lambda shop: (shop.output / "drawings" / "W01.pdf").unlink(), PLAIN, []),
    (lambda shop: shop.change("mark: W02", "mark: W07"), PLAIN, ["W07"]),
    (damage_a_kept_sheet, PLAIN, ["W01"]),
    (lambda shop: shop.change("kerf: 1/8", "kerf: 3/32"), PLAIN, ["W01", "W07"]),
    (lambda shop: shop.change("grid: 1/32", "grid: 1/32\n  paper: A4"), PLAIN, ["W01", "W07"]),
    (lambda shop: shop.change("proud: 1/32", "proud: 1/16"), PLAIN, ["W01", "W07"]),
)


def test_a_year_has_the_same_papers_as_where_all_are_made_anew(
    shop: Shop, drawn: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """File by file, the record of the issues among them; drawn is what changed alone."""
    laid, twin = kept_papers.lay_unchanged, Shop(shop.folder / "twin", monkeypatch)
    shutil.copytree(shop.folder / "house", twin.folder / "house")
    for number, (change, words, expected) in enumerate(YEAR):
        change(shop)
        change(twin)
        drawn.clear()
        result = shop.run(*words)
        assert result.exit_code == 0, result.output
        assert drawn == expected, f"step {number}"
        monkeypatch.setattr(kept_papers, "lay_unchanged", lambda *_, **__: set())
        assert twin.run(*words).output == result.output
        monkeypatch.setattr(kept_papers, "lay_unchanged", laid)
        assert issued(shop.output) == issued(twin.output), f"step {number}"


def test_where_nothing_changed_all_sheets_together_are_laid_too(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    def joined(*_: Any, **__: Any) -> NoReturn:
        raise AssertionError("it stands as it was issued")

    assert shop.run(*PLAIN).exit_code == 0
    for name in ("join_chapters", "write_all_drawings"):
        monkeypatch.setattr(app_papers, name, joined)
    assert shop.run(*PLAIN).output.splitlines()[-1] == "Nothing changed since issue 1."


def test_progress_is_told_as_often_whatever_is_drawn(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(shop.folder)
    for _ in range(2):
        asked, told = check(read_job(shop.job), shop.output, with_solids=False), list[str]()
        write_papers(asked, progress=told.append)
        assert (told, len(told)) == (["W01", "W02", "lists"], steps(asked))


def test_other_paper_is_printed_on_at_once_and_is_no_other_issue(shop: Shop, drawn: list[str]) -> None:
    """The sheets in the shop hold: nothing that stands on them changed."""
    assert shop.run(*PLAIN).exit_code == 0
    sheet = shop.output / "cut sheets" / "W01.pdf"
    assert page_sizes(sheet) == {LETTER}
    shop.change("grid: 1/32", "grid: 1/32\n  paper: A4")
    drawn.clear()
    result = shop.run(*PLAIN)
    assert drawn == ["W01", "W02"]
    assert "sheets of single openings did not" in result.output.splitlines()[-1]
    for name in ("cut sheets/W01.pdf", "install sheets/W02.pdf", "all cut sheets.pdf", "rough openings.pdf"):
        assert {frozenset(size) for size in page_sizes(shop.output / name)} == {frozenset(A4)}, name
    assert "issue 1" in PdfReader(sheet).pages[0].extract_text()
    drawn.clear()
    assert shop.run(*PLAIN).exit_code == 0
    assert drawn == []


def page_sizes(pdf: Path) -> set[tuple[int, int]]:
    return {(round(page.mediabox.width), round(page.mediabox.height)) for page in PdfReader(pdf).pages}


def test_what_a_drawing_shows_is_true_of_today(shop: Shop) -> None:
    """How far tapers are ripped parallel, what fills the wall, how wide a flange is: none is told of a planned part."""
    drawing = shop.output / "drawings" / "W01.pdf"
    assert shop.run(*PLAIN).exit_code == 0
    was = text_of(drawing)
    shop.change("taper_tolerance: 1/32", "taper_tolerance: 1/16")
    assert shop.run(*PLAIN).exit_code == 0
    assert text_of(drawing) == was.replace('tapers 1/32"', 'tapers 1/16"') != was
    shop.change("spacing: 16}", "spacing: 16, cavity: fiberglass batt}")
    assert shop.run(*PLAIN).exit_code == 0
    assert "batt" in text_of(drawing)
    flat = shop.output / "drawings" / "W01 flat.dxf"
    before = flat.read_bytes()
    shop.change("flange_width: 1 1/4", "flange_width: 1 3/8")
    assert shop.run(*PLAIN).exit_code == 0
    assert flat.read_bytes() != before


def test_an_opening_that_moves_is_moved_on_the_key_of_all_on_its_side() -> None:
    """Their drawings show it, and tell nothing else of it."""
    job = read_job(EXAMPLES / "harbour-house")
    moved = replace(
        job,
        openings=tuple(
            replace(one, from_left=one.from_left + 1) if one.mark == "W05" and one.from_left else one
            for one in job.openings
        ),
    )
    was, now = (basis_today(one) for one in (job, moved))
    beside = {one.mark for one in job.openings if side_of_house(one, job) == "west"}
    assert {"W05"} < beside < {one.mark for one in job.openings}
    assert {*differing(was, now, (AROUND,))} == beside
    assert {*differing(was, now, (SHEETS,))} == {"W05"}


def basis_today(job: Job) -> Basis:
    house = plan_house(make_kits(job), job)
    return basis_of(house.kits, job, issue_record(house.kits, house.installing, job))


def text_of(pdf: Path) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(pdf).pages)


def test_solids_that_were_left_out_are_made_and_kept_from_then_on(shop: Shop, drawn: list[str]) -> None:
    pytest.importorskip("cadquery")
    assert shop.run(*PLAIN).exit_code == 0
    for expected in (["W01", "W02"], []):
        drawn.clear()
        assert shop.run("build", "house").exit_code == 0
        assert drawn == expected
        assert (shop.output / "solids" / "W01.step").is_file()


def known(job: Job, papers: Mapping[str, WrittenPaper], **asked: bool) -> Iterator[tuple[set[str], set[str]]]:
    """Yield, for each opening, the papers that are known to be written, and those that are on record."""
    for kit in plan_house(make_kits(job), job).kits:
        written = {path for path, paper in papers.items() if paper.marks == (kit.mark,)}
        yield app_papers.paths_of(kit, job, **asked), written


def test_every_paper_of_an_opening_is_known_before_it_is_written(shop: Shop) -> None:
    """Else one that an opening has now and had not then would never be made."""
    for words in (PLAIN, (*PLAIN, "--all-cut-files")):
        assert shop.run(*words).exit_code == 0
        all_of_them = len(words) > len(PLAIN)
        papers = Record.open(shop.output).papers
        for expected, written in known(read_job(shop.job), papers, with_solids=False, all_cut_files=all_of_them):
            assert expected == written


@pytest.mark.parametrize("example", ["gable-house", "creamery", "harbour-house"])
def test_every_paper_of_an_example_is_known(example: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    """Solids, templates, cut files of both faces, forms, and boards sawn on edge among them."""
    folder = example_papers(example, tmp_path_factory).folder
    papers, job = Record.open(folder).papers, read_job(EXAMPLES / example)
    found = [*known(job, papers, with_solids=True, all_cut_files=False)]
    assert len(found) == len(job.openings)
    assert [expected for expected, _ in found] == [written for _, written in found]


def test_all_sheets_have_a_bookmark_for_each_opening_and_what_was_issued(shop: Shop) -> None:
    assert shop.run(*PLAIN).exit_code == 0
    shop.change(SMALL, HIGHER)
    assert shop.run(*PLAIN).exit_code == 0
    whole = PdfReader(shop.output / "all cut sheets.pdf")
    single = [PdfReader(shop.output / "cut sheets" / f"{mark}.pdf") for mark in ("W01", "W02")]
    assert [words for words, _, _ in bookmarks_of(whole)] == ["W01", "W02"]
    assert whole.page_labels[: len(single[0].pages) + 1][-2:] == [f"W01, {len(single[0].pages)}", "W02, 1"]
    texts = [page.extract_text() for one in single for page in one.pages]
    assert [page.extract_text() for page in whole.pages] == texts
    assert "Changed since issue 1" in "".join(texts)
    changed = PdfReader(shop.output / "changed cut sheets.pdf")
    assert [page.extract_text() for page in changed.pages] == texts[len(single[0].pages) :]
