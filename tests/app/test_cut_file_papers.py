"""Cut files among the papers: which parts have one, what is known of them, and what becomes of them."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

from pathlib import Path

from ezdxf.filemanagement import readfile
from shops import Shop, papers, shop

from jambs.app.cut_file_papers import cut_file_facts, kind_of_paper, parts_cut
from jambs.face import make_kits, read_job
from jambs.issued.record import Record


def cut_files(folder: Path) -> list[str]:
    return sorted(path.name for path in (folder / "cut files").glob("*.dxf"))


def test_parts_with_a_shape_have_one_in_both_releases(papers: Path, shop: Shop) -> None:
    kits = make_kits(read_job(shop.folder / "house"))
    marks = [part.mark for kit in kits for part in parts_cut(kit, all_parts=False)]
    assert marks and cut_files(papers) == sorted({*cut_files(papers)})
    assert {name.split(".")[0].removesuffix(" back") for name in cut_files(papers)} == {*marks}
    assert sorted(path.name for path in (papers / "cut files" / "R12").iterdir()) == cut_files(papers)
    assert readfile(papers / "cut files" / cut_files(papers)[0]).dxfversion == "AC1024"
    assert readfile(papers / "cut files" / "R12" / cut_files(papers)[0]).dxfversion == "AC1009"


def test_plain_boards_have_one_if_asked_and_lose_it_again(shop: Shop) -> None:
    result = shop.run("build", "house", "--without-solids", "--all-cut-files")
    assert result.exit_code == 0, result.output
    kits = make_kits(read_job(shop.folder / "house"))
    wood = [part.mark for kit in kits for part in kit.parts if part.is_wood]
    assert {name.split(".")[0].removesuffix(" back") for name in cut_files(shop.output)} == {*wood}
    assert shop.run("build", "house", "--without-solids").exit_code == 0
    assert len(cut_files(shop.output)) < len(wood)


def test_a_file_is_of_its_opening(shop: Shop) -> None:
    assert shop.run("build", "house", "--without-solids").exit_code == 0
    record = Record.open(shop.output)
    some = {path: paper for path, paper in record.papers.items() if path.startswith("cut files/")}
    assert some
    for path, paper in some.items():
        assert paper.kind == "cut file"
        assert [Path(path).name.split("-")[0]] == list(paper.marks)


def test_facts_name_both_faces_and_both_releases(shop: Shop) -> None:
    kits = make_kits(read_job(shop.folder / "house"))
    facts = cut_file_facts(kits)
    assert len(facts) == 4 * sum(len(kit.parts) for kit in kits)
    mark = kits[0].parts[0].mark
    assert {f"cut files/{mark}.dxf", f"cut files/{mark} back.dxf", f"cut files/R12/{mark}.dxf"} <= {*facts}


def test_kinds_of_papers_of_a_plan() -> None:
    assert kind_of_paper("sheets/R12/D1.dxf") == "cut file"
    assert kind_of_paper("cutting plan.pdf") == "cutting plan"


def test_a_planned_depth_is_told_in_the_file(papers: Path) -> None:
    told = [path.read_text(encoding="utf-8") for path in (papers / "cut files").glob("*.dxf")]
    assert any("PLANNED - MEASURE BEFORE CUTTING" in one for one in told)
    assert not all("PLANNED - MEASURE BEFORE CUTTING" in one for one in told)  # casings do not wait for a depth
