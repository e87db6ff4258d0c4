"""No paper is stale unsaid: check, build and buy name each that holds no longer, for which parts, what to run."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import io
import json
import re
from pathlib import Path

import pytest
from pypdf import PdfReader
from shops import Reach, Shop, built, papers, reach, shop, undrawn

from jambs.app.paper_names import ALL_DRAWINGS, DRAWING, NAMING_BOARDS, SOLID
from jambs.app.stale_words import papers_words, stale_line, things_words
from jambs.issued.basis import NOT_KNOWN, Stale, differing
from jambs.issued.record import Record
from jambs.length import Grid
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets import record
from jambs.sheets.record import opening_record

pytestmark = pytest.mark.usefixtures("undrawn")
WIDE, NARROW = "frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2"
BUILD = ("build", "house", "--without-solids")
BUY = ("buy", "house", "--stages", "0")


def stale(shop: Shop, *words: str) -> list[str]:
    """Run a verb and return its lines about stale papers."""
    result = shop.run(*(words or ("check", "house")))
    assert result.exit_code == 0, result.output
    return [line for line in result.stdout.splitlines() if line.startswith("stale")]


DRAWN = {DRAWING, ALL_DRAWINGS.rpartition(".")[0]}
"""Kinds of papers that say nothing where nothing is drawn."""
SIX = "    - {nominal: 1x6, stock: poplar}"
"""The board that the jambs, 4 23/32 wide, come out of where nothing is planned."""
CLIMATE = """climate: {shop: "65 F, 45 %", inside_winter: "70 F, 30 %", inside_summer: "76 F, 60 %",
          outside_winter: "30 F, 80 %", outside_summer: "70 F, 75 %"}
"""
SPRUCE = "\n    - {nominal: 2x8, stock: spruce, price_per_foot: 2}"
CHEAP_EIGHT = "\n    - {nominal: 1x8, stock: poplar, price_per_foot: 0.10}"


@pytest.fixture
def everything(built: Shop, reach: Reach) -> Shop:
    """The worked case with the papers of every verb but the comparison."""

    def write() -> None:
        built.change(SIX, SIX + SPRUCE)
        for verb in (BUY, ("labels", "house"), ("measure", "house"), BUILD, ("labels", "house")):
            ran = built.run(*verb)
            assert ran.exit_code == 0, (ran.output, ran.exception)

    reach("everything", write)
    return built


def test_check_looks_at_every_part_once(built: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """The summary and the question which papers are stale draw from one record: it is most of what a check does."""
    seen: list[str] = []

    def counted(kit: CutKit, *, grid: Grid) -> dict[str, object]:
        if kit.parts:  # without them it is asked which openings have another mark
            seen.append(kit.mark)
        return opening_record(kit, grid=grid)

    monkeypatch.setattr(record, "opening_record", counted)
    assert built.run("check", "house").exit_code == 0
    assert seen == ["W01", "W02"]


def test_nothing_is_stale_while_nothing_changes(everything: Shop) -> None:
    assert [stale(everything), stale(everything, *BUILD), stale(everything, *BUY)] == [[], [], []]


def test_another_frame_makes_every_paper_stale_with_its_verb(everything: Shop) -> None:
    everything.change(WIDE, NARROW)
    lines = stale(everything)
    assert [line.rpartition("; run ")[2] for line in lines] == [
        "`jambs build house`",
        "`jambs buy house`",
        "`jambs labels house`",
        "`jambs measure house`",
    ]
    assert all("W01" in line for line in lines)
    assert "cutting plan" in lines[1] and "buying list" in lines[1]


def test_a_build_leaves_the_papers_of_other_verbs_stale(everything: Shop) -> None:
    everything.change(WIDE, NARROW)
    assert [line.rpartition("; run ")[2] for line in stale(everything, *BUILD)] == [
        "`jambs buy house`",
        "`jambs labels house`",
        "`jambs measure house`",
    ]
    stale(everything, "labels", "house")
    stale(everything, "measure", "house")
    assert [line.rpartition("; run ")[2] for line in stale(everything)] == ["`jambs buy house`"]


def boards(shop: Shop) -> set[str]:
    """Return the boards of the jambs in parts.json."""
    openings = json.loads((shop.output / "parts.json").read_text(encoding="utf-8"))["openings"]
    return {part["board"] for one in openings for part in one["parts"] if part["name"] == "extension jamb"}


def read(suffix: str, content: bytes) -> str:
    """Return what a paper says but for its issue."""
    if suffix == ".pdf":
        text = "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(content)).pages)
    else:
        text = content.decode("utf-8-sig")
    text = re.sub(r'"issue": \{[^}]*\}|issue \d+, [0-9A-F]{4}, of [^\n]*', "", text)
    return re.sub(r"(replaces )?issue \d+( · [-\d]+ · [0-9A-F]{4})?|\b[0-9A-F]{4}\b", "", text)


def contents(shop: Shop) -> dict[str, tuple[str, bytes]]:
    """Return kind and bytes of every paper of a build that tells of more than its own issue, but of drawings."""
    papers = Record.open(shop.output).papers_of("build").items()
    return {
        path: (paper.kind, (shop.output / path).read_bytes())
        for path, paper in papers
        if paper.kind not in ("issue", SOLID, *DRAWN)
    }


def reads_otherwise(path: str, before: bytes, after: bytes) -> bool:
    """Say whether a paper says anything else but its issue; the same bytes need no reading."""
    suffix = Path(path).suffix
    return before != after and read(suffix, before) != read(suffix, after)


def assert_told_stale_is_what_reads_otherwise(line: str, before: dict[str, tuple[str, bytes]], shop: Shop) -> None:
    """Both ways: of each family of papers one is named if the build makes it otherwise, and only then."""
    named = set(line.removeprefix("stale  ").partition(": ")[0].split(", "))
    after = contents(shop)
    assert after.keys() == before.keys()
    other = {kind for path, (kind, was) in before.items() if reads_otherwise(path, was, after[path][1])}
    assert DRAWING in named
    assert named - DRAWN == other == NAMING_BOARDS - DRAWN
    assert {kind for kind, _ in before.values()} > NAMING_BOARDS - DRAWN | {"install sheet", "wood movement"}


def test_a_plan_with_other_boards_makes_stale_what_names_boards_and_nothing_else(built: Shop) -> None:
    """The sheet names the narrowest board; once there is a plan it names that of the plan, and so do the labels."""
    built.change(SIX, SIX + SPRUCE + CHEAP_EIGHT)
    built.change("openings:", CLIMATE + "openings:")
    assert (stale(built, *BUILD), stale(built, "labels", "house")) == ([], [])
    assert boards(built) == {"1x6 poplar"}
    before = contents(built)
    lines = stale(built, *BUY)
    assert [line.rpartition("; run ")[2] for line in lines] == ["`jambs build house`", "`jambs labels house`"]
    assert ": the boards of " in lines[0]
    said = built.run("labels", "house").stdout
    assert "not issued" not in said  # the parts are as they were issued
    assert [line.rpartition("; run ")[2] for line in stale(built)] == ["`jambs build house`"]
    printed = "".join(page.extract_text() for page in PdfReader(built.output / "site" / "labels.pdf").pages)
    assert "1x8 poplar" in printed and "1x6 poplar" not in printed and "not issued" not in printed
    told = built.run(*BUILD).stdout
    assert "  W01, W02: cut from other boards, no figure changed\n" in told and "recut" not in told, told
    listed = " ".join(page.extract_text() for page in PdfReader(built.output / "changes.pdf").pages)
    assert "Boards alone: in W01, W02 parts come out of other boards" in " ".join(listed.split())
    assert "W01-1" not in listed and "1x8" not in listed  # no part has to be looked at
    assert boards(built) == {"1x8 poplar"}
    assert stale(built) == []
    assert_told_stale_is_what_reads_otherwise(lines[0], before, built)


def test_a_part_that_changed_names_the_narrowest_board_again(built: Shop) -> None:
    built.change(SIX, SIX + SPRUCE + CHEAP_EIGHT)
    for verb in (BUY, BUILD):
        assert built.run(*verb).exit_code == 0
    built.change(WIDE, NARROW)
    built.run(*BUILD)
    assert boards(built) == {"1x6 poplar", "1x8 poplar"}
    built.change(CHEAP_EIGHT, "")
    built.run(*BUILD)
    assert boards(built) == {"1x6 poplar"}


def test_the_index_names_papers_that_its_issue_makes_stale(everything: Shop) -> None:
    def index() -> str:
        pages = PdfReader(everything.output / "current sheets.pdf").pages
        return " ".join("".join(page.extract_text() for page in pages).split())

    assert "Stale" not in index()
    everything.change(WIDE, NARROW)
    stale(everything, *BUILD)
    for verb in ("jambs buy", "jambs labels", "jambs measure"):
        assert verb in index()


def test_a_list_keeps_its_stamp_while_nothing_it_prints_changes(everything: Shop) -> None:
    def foot(name: str) -> str:
        text = PdfReader(everything.output / name).pages[0].extract_text()
        found = re.search(r"(?:changed since )?issue \d+ · \S+ · [0-9A-F]{4}", " ".join(text.split()))
        assert found, text
        return found[0]

    before = foot("summary.pdf")
    assert foot("cutting/cutting plan.pdf") != before  # it was planned before the issue that names its boards
    stale(everything, *BUY)
    assert foot("cutting/cutting plan.pdf") == before
    stale(everything, *BUILD)
    assert foot("summary.pdf") == before
    everything.change(WIDE, NARROW)
    stale(everything, "measure", "house")
    assert foot("site/measure sheets.pdf").startswith("changed since issue")
    stale(everything, *BUILD)
    assert foot("summary.pdf") != before


def test_prices_make_the_plan_stale_and_nothing_else(everything: Shop) -> None:
    everything.change("price_per_foot: 2}", "price_per_foot: 3}")
    assert stale(everything) == [
        "stale  buying list, cut list, cutting plan, drops, plan: prices changed since; run `jambs buy house`"
    ]


def test_an_opening_that_is_gone_is_called_gone_and_one_that_came_new(everything: Shop) -> None:
    """W02 leaves the job and W03 comes; W01, of which nothing changed, stands in no line of what is of parts."""
    assert len(stale(everything)) == 0
    everything.change("mark: W02", "mark: W03")
    everything.change("room: Bath", "room: Hall")
    everything.change("frame: 23 1/2 x 23 1/2\n    rough_opening: 24 x 24", "frame: 29 1/2 x 23 1/2")
    lines = {line.rpartition("`jambs ")[2].split()[0]: line for line in stale(everything)}
    gone, came = "12 parts of W02 gone since", "12 parts of W03 new since"
    assert f"labels: {came}; {gone}; run" in lines["labels"]
    assert f"plan: {came}; {gone}; run" in lines["buy"]
    assert "measure sheets: W03 new since; W02 gone since; run" in lines["measure"]
    assert "W03 new since; W02 gone since; run" in lines["build"]
    assert not any("changed since" in line for line in lines.values())


def test_a_part_that_is_gone_from_an_opening_that_stays_is_called_gone(everything: Shop) -> None:
    """A window that stands on the sheathing needs no outboard buck: its four boards go, the others change."""
    everything.change("    buck: {kind: outboard, thickness: 1 1/2, stock: spruce}\n", "")
    everything.change("position: {share: 1/2}", "position: on the sheathing")
    lines = stale(everything)
    (labels,) = [line for line in lines if "jambs labels" in line]
    assert "; 4 parts of W01, 4 parts of W02 gone since; run" in labels and "new since" not in labels
    (build,) = [line for line in lines if "jambs build" in line]
    assert "W01, W02 changed since; run" in build and "gone" not in build


def test_what_came_and_went_is_told_by_what_the_papers_of_that_verb_were_made_from() -> None:
    """Labels were printed of W2 since, the plan was not: for the plan W2 is new, for the labels it changed."""
    some = Stale(
        verb="buy",
        paths=("x",),
        kinds=("plan",),
        things=("A-1", "B-1", "C-1", "saw"),
        words=("saw",),
        gone=("C-1",),
        new=("B-1",),
    )
    assert things_words(some) == "A-1, saw changed since; B-1 new since; C-1 gone since"
    assert some.changed == ("A-1",)
    gone = Stale(verb="build", paths=("x",), kinds=("summary",), things=tuple("ABCDEFG"), gone=tuple("ABCDEFG"))
    assert things_words(gone) == "7 openings gone since"
    assert things_words(gone, in_full=True) == "A, B, C, D, E, F, G gone since"


def test_of_many_parts_the_opening_is_named() -> None:
    some = Stale(verb="buy", paths=("x",), kinds=("plan",), things=tuple(f"W01-{one}" for one in range(1, 9)))
    assert stale_line(some, job_words="house") == "stale  plan: 8 parts of W01 changed since; run `jambs buy house`"


def test_of_many_openings_the_screen_has_their_count_and_the_index_their_marks() -> None:
    """A line of a terminal for a house of eight openings with two parts each, and what stands in the index."""
    marks = tuple(f"W{one}-{part}" for one in range(1, 9) for part in (1, 2))
    some = Stale(verb="buy", paths=("x",), kinds=("plan",), things=(*marks, "prices"), words=("prices",))
    line = "stale  plan: 16 parts of 8 openings, prices changed since; run `jambs buy house`"
    assert stale_line(some, job_words="house") == line
    assert things_words(some, in_full=True).startswith("2 parts of W1, 2 parts of W2, ")
    openings = Stale(verb="build", paths=("x",), kinds=("cut sheet",), things=tuple("ABCDEFG"))
    assert things_words(openings) == "7 openings changed since"
    assert things_words(openings, in_full=True) == "A, B, C, D, E, F, G changed since"


def test_papers_of_many_kinds_are_counted_on_the_screen_and_named_in_the_index() -> None:
    kinds = ("cut sheet", "drawing", "parts", "summary", "template", "elevation", "fasteners")
    some = Stale(verb="build", paths=tuple("abcdefghi"), kinds=kinds, things=("W1",))
    assert stale_line(some, job_words="house") == "stale  9 papers: W1 changed since; run `jambs build house`"
    assert papers_words(some, in_full=True) == ", ".join(kinds)


def test_boards_alone_are_named() -> None:
    """A cutting plan changes the boards that parts come out of, and nothing else of an opening."""
    some = Stale(verb="build", paths=("x",), kinds=("cut sheet",), things=("W1", "W2"), is_of_boards=True)
    assert things_words(some) == "the boards of W1, W2 changed since"
    many = Stale(verb="build", paths=("x",), kinds=("cut sheet",), things=tuple("ABCDEFG"), is_of_boards=True)
    assert things_words(many) == "the boards of 7 openings changed since"


def test_an_opening_whose_mark_looks_like_that_of_a_part_is_named() -> None:
    """``W-1`` to ``W-7`` are openings: a sheet to cut is of openings, not of parts."""
    some = Stale(verb="build", paths=("x",), kinds=("cut sheet",), things=("W-1", "W-2"))
    assert things_words(some) == "W-1, W-2 changed since"


def test_a_paper_whose_origin_is_not_on_record_says_so() -> None:
    some = Stale(verb="labels", paths=("x",), kinds=("labels",), things=(NOT_KNOWN,))
    assert stale_line(some, job_words="house") == f"stale  labels: {NOT_KNOWN}; run `jambs labels house`"


def test_what_came_and_what_went_differs() -> None:
    old, new = {"parts": {"A": "1", "B": "2"}}, {"parts": {"B": "2", "C": "3"}, "shop": {"prices": "4"}}
    assert differing(old, new, ("parts",)) == ("C", "A")
    assert differing(old, old, ("parts", "shop")) == ()
    assert differing(old, new, ("parts", "shop"), ("B",)) == ()
