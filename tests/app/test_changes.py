"""A house that changes: marks stay, old labels are told, void sheets are named, and what is to be printed is there."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import json
import re

import pytest
from shops import Reach, Shop, built, papers, reach, shop, undrawn
from test_site_verbs import text_of

from jambs.app.old_labels import OLD_LABELS
from jambs.issued.marks import MARKS, recorded_marks
from jambs.issued.record import Record

pytestmark = pytest.mark.usefixtures("undrawn")
OUTSIDE = """exterior_trim:
  outside:
    jamb: {thickness: 3/4, stock: cedar}
    frame_reveal: 1/4
    sealant_joint: 1/4
    casing_reveal: 1/4
    casing: {width: 4 1/2, thickness: 1, stock: cedar, corner: butt, overhang: 1/2}
    sill:
      {thickness: 1 1/2, stock: cedar, slope: 10 deg, nosing: 1 1/4, horn: 1,
       drip_kerf: {width: 1/4, depth: 1/4, set_back: 1/2}}
    head_flashing: {past_casing: 1/2, upstand: 3, drip: 1/2, gap_to_cladding: 3/8}
position: {share: 1/2}
"""


def built_again(shop: Shop, *words: str) -> str:
    result = shop.run("build", "house", "--without-solids", *words)
    assert result.exit_code == 0, result.output
    assert_told_papers_are_there(shop, result.output)
    return result.output


def assert_told_papers_are_there(shop: Shop, said: str) -> None:
    for path in re.findall(r"`([^`]+\.pdf)`", said):
        assert (shop.output / path).is_file(), path


def marks_of(shop: Shop) -> dict[str, tuple[str, str, str]]:
    printed = json.loads((shop.output / "parts.json").read_text(encoding="utf-8"))
    parts = [part for opening in printed["openings"] for part in opening["parts"]]
    return {part["mark"]: (part["where"], part["name"], part["position"]) for part in parts}


BATH = "room: Bath\n    frame: 23 1/2 x 23 1/2\n    rough_opening: 24 x 24"


def sizes_of(shop: Shop) -> dict[str, list[str]]:
    printed = json.loads((shop.output / "parts.json").read_text(encoding="utf-8"))
    parts = [part for opening in printed["openings"] for part in opening["parts"]]
    return {part["mark"]: [part[name]["text"] for name in ("thickness", "width", "length")] for part in parts}


@pytest.fixture
def trimmed(shop: Shop, reach: Reach) -> Shop:
    """The worked case with trim outside, issued once."""

    def issue() -> None:
        shop.change("position: {share: 1/2}\n", OUTSIDE)
        built_again(shop)

    reach("trimmed", issue)
    return shop


def test_a_window_moves_and_no_mark_means_another_part(trimmed: Shop) -> None:
    """An exterior extension jamb that is made no more leaves its number unused; the casing beside it keeps its own."""
    before = marks_of(trimmed)
    trimmed.change("share: 1/2", "exterior_depth: 0")
    said = built_again(trimmed)
    after = marks_of(trimmed)
    assert {mark: after[mark] for mark in after if mark in before} == {
        mark: before[mark] for mark in before if mark in after
    }
    gone = [mark for mark in before if mark not in after]
    assert [before[mark][1] for mark in gone if mark.startswith("W01")] == ["exterior extension jamb"] * 3 + [
        "exterior sill"
    ]
    told = next(line for line in said.splitlines() if line.startswith("  W01:"))
    assert "throw away " + ", ".join(mark for mark in gone if mark.startswith("W01")) in told
    page = text_of(trimmed.output / OLD_LABELS)
    for mark in gone:
        assert mark in page
    assert "throw away" in page
    trimmed.change("exterior_depth: 0", "share: 1/2")
    built_again(trimmed)
    assert marks_of(trimmed).items() >= before.items()


def test_labels_print_the_issue_and_say_when_there_is_none(trimmed: Shop) -> None:
    issue = Record.open(trimmed.output).issue(1)
    said = trimmed.run("labels", "house").output
    assert "not issued" not in said
    assert f"issue 1 · {issue.sheets['W01'].code}" in text_of(trimmed.output / "site" / "labels.pdf")
    trimmed.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    said = trimmed.run("labels", "house").output
    assert "W01 changed since the last issue: the labels say *not issued*" in said
    page = text_of(trimmed.output / "site" / "labels.pdf")
    assert "not issued" in page and f"issue 1 · {issue.sheets['W02'].code}" in page


def test_marks_that_only_labels_printed_are_given_too(trimmed: Shop) -> None:
    """A part that was labeled before it was issued keeps its number from parts that come later."""
    highest = recorded_marks(Record.open(trimmed.output)).highest["W01"]
    trimmed.change("share: 1/2", "exterior_depth: 0")
    trimmed.run("labels", "house")
    book = recorded_marks(Record.open(trimmed.output))
    assert book.highest["W01"] == highest + 1
    trimmed.change("exterior_depth: 0", "share: 1/2")
    built_again(trimmed)
    assert recorded_marks(Record.open(trimmed.output)).numbers == book.numbers


def test_an_opening_is_removed(trimmed: Shop) -> None:
    text = trimmed.job.read_text(encoding="utf-8")
    trimmed.job.write_text(text[: text.index("  - mark: W02")], encoding="utf-8")
    said = built_again(trimmed)
    assert "  W02: removed; its sheets and labels are void" in said
    assert "void and taken away, kept in the record: cut sheets/W02.pdf, " in said
    assert not list(trimmed.output.rglob("W02*"))
    record = Record.open(trimmed.output)
    assert all(record.blobs.has(paper.sha256) for paper in record.issue(1).papers.values())
    assert "Issue 2, nothing to print; destroy the void sheets:" in said  # not of one beside it in the wall
    assert not (trimmed.output / "changed cut sheets.pdf").exists()
    assert record.issue(2).sheets == {"W01": record.issue(1).sheets["W01"]}
    for page in ("changes.pdf", "current sheets.pdf", OLD_LABELS):
        assert "W02" in text_of(trimmed.output / page) and "removed" in text_of(trimmed.output / page), page
    assert "cut sheets/W02.pdf" in text_of(trimmed.output / "changes.pdf")
    assert built_again(trimmed).splitlines()[-1] == "Nothing changed since issue 2."


def test_an_opening_comes_back_with_its_old_marks(trimmed: Shop) -> None:
    before, text = marks_of(trimmed), trimmed.job.read_text(encoding="utf-8")
    trimmed.job.write_text(text[: text.index("  - mark: W02")], encoding="utf-8")
    built_again(trimmed)
    trimmed.job.write_text(text, encoding="utf-8")
    said = built_again(trimmed)
    assert "  W02: back again, last in issue 1; its parts have their old marks" in said and "added" not in said
    assert "back again, last in issue 1" in text_of(trimmed.output / "changes.pdf")
    assert marks_of(trimmed) == before


def test_an_opening_is_renamed(trimmed: Shop) -> None:
    before = marks_of(trimmed)
    trimmed.change("mark: W02", "mark: B2")
    alone = trimmed.run("build", "house", "--only", "B2", "--without-solids")
    assert (
        alone.exit_code == 1 and "other marks since the last issue: B2 (was W02); build the whole house" in alone.stderr
    )
    said = built_again(trimmed)
    assert marks_of(trimmed) == {mark.replace("W02", "B2"): part for mark, part in before.items()}
    assert "  B2: renamed, was W02, 1 figure changed" in said
    assert "  W02: renamed, now B2; its sheets and labels are void" in said
    assert "changed sheets of B2; print `changed cut sheets.pdf`" in said
    page = text_of(trimmed.output / OLD_LABELS)
    assert "W02-1" in page and "B2-1" in page and "throw away" not in page
    result = trimmed.run("revisions", "house", "--withdraw-to", "1")
    assert result.exit_code == 0, result.output
    page = text_of(trimmed.output / OLD_LABELS)
    assert "B2-1" in page and "throw away" not in page
    assert marks_of(trimmed) == before
    trimmed.change("mark: B2", "mark: W02")
    assert "Nothing changed since issue 3." in built_again(trimmed)  # its parts have their numbers of then
    trimmed.change("mark: W02", "mark: B2")
    built_again(trimmed)
    assert marks_of(trimmed) == {mark.replace("W02", "B2"): part for mark, part in before.items()}


def test_two_openings_that_exchange_their_marks_say_so_before_anything_is_recut(trimmed: Shop) -> None:
    for old, new in (("mark: W01", "mark: X"), ("mark: W02", "mark: W01"), ("mark: X", "mark: W02")):
        trimmed.change(old, new)
    checked = trimmed.run("check", "house").stdout
    said = built_again(trimmed)
    assert "marks  " not in trimmed.run("check", "house").stdout  # once that is issued
    for mark, other in (("W01", "W02"), ("W02", "W01")):
        told = f"marks exchanged: it is what {other} was; boards labeled {other}-… were cut for it"
        assert f"marks  {mark}: {told}" in checked
        assert f"  {mark}: {told}" in said
        assert told in text_of(trimmed.output / "changes.pdf")
        assert told in text_of(trimmed.output / "changed cut sheets.pdf")
    assert "if cut already" not in said


def test_parts_keep_their_identity_when_openings_exchange_their_marks(trimmed: Shop) -> None:
    """Every old label is told the new mark of its own board, and going back the boards have the labels they had."""
    before, sizes = marks_of(trimmed), sizes_of(trimmed)
    for old, new in (("mark: W01", "mark: X"), ("mark: W02", "mark: W01"), ("mark: X", "mark: W02")):
        trimmed.change(old, new)
    built_again(trimmed)
    assert not before.keys() & marks_of(trimmed).keys()
    page = text_of(trimmed.output / OLD_LABELS)
    assert "throw away" not in page and "recut" not in page
    rows = re.findall(r"(W0\d-\d+) 1 .*? (W0\d-\d+): ", page)
    assert {old for old, _ in rows} == before.keys()
    after = sizes_of(trimmed)
    assert all(sizes[old] == after[new] and old[:3] != new[:3] for old, new in rows)
    assert trimmed.run("revisions", "house", "--withdraw-to", "1").exit_code == 0
    assert marks_of(trimmed) == before
    page = text_of(trimmed.output / OLD_LABELS)
    assert "throw away" not in page and "recut" not in page
    assert re.search(r"W02-21 2 [^:]* W01-1: ", page)  # a label of the issue between
    assert "marks exchanged" in built_again(trimmed)
    assert sizes_of(trimmed) == after


def test_windows_of_a_room_that_are_raised_keep_their_marks(trimmed: Shop) -> None:
    """One then stands where the other stood; neither has the other's mark."""
    trimmed.change("rough_opening: 24 x 24", "rough_opening: 24 x 24\n    sill_height: 36")
    trimmed.change(
        "room: Kitchen\n    frame: 35 1/2 x 47 1/2\n    rough_opening: 36 x 48", BATH + "\n    sill_height: 30"
    )
    built_again(trimmed)
    before = marks_of(trimmed)
    trimmed.change("sill_height: 36", "sill_height: 42")
    trimmed.change("sill_height: 30", "sill_height: 36")
    assert "exchanged" not in built_again(trimmed)
    assert marks_of(trimmed) == before


def test_an_opening_that_becomes_like_another_is_not_exchanged(trimmed: Shop) -> None:
    """Both rooms are Bath: nobody's mark moved."""
    trimmed.change("room: Bath", "room: Attic")
    trimmed.change("weight: 60 lb", "weight: 61 lb")
    assert "exchanged" not in built_again(trimmed)


def test_an_opening_that_takes_a_former_mark_begins_behind_it(trimmed: Shop) -> None:
    before = marks_of(trimmed)
    trimmed.change("mark: W02", "mark: B2")
    built_again(trimmed)
    with trimmed.job.open("a", encoding="utf-8") as job:
        job.write("  - {mark: W02, room: Hall, frame: 23 1/2 x 23 1/2, rough_opening: 24 x 24}\n")
    assert "  W02: added" in built_again(trimmed)
    assert not {mark for mark in marks_of(trimmed) if mark.startswith("W02-")} & set(before)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("room: Bath", "room: Bath\n    sill_height: 40", ["W02: sill height changed", "4 figures changed"]),
        ("room: Bath", "room: Attic", ["W02: room changed, 1 figure changed"]),
        ("weight: 60 lb", "weight: 61 lb", ["W01, W02: weight changed, 1 figure changed"]),
    ],
)
def test_every_change_of_an_opening_has_its_words(trimmed: Shop, old: str, new: str, said: list[str]) -> None:
    trimmed.change(old, new)
    told = built_again(trimmed)
    assert all(one in told for one in said), told
    assert "0 figures" not in told and "settings of the shop" not in told


def test_an_added_opening_has_its_sheets_among_those_to_print(built: Shop) -> None:
    with built.job.open("a", encoding="utf-8") as job:
        job.write("  - {mark: W03, room: Hall, frame: 23 1/2 x 23 1/2, rough_opening: 24 x 24}\n")
    said = built_again(built)
    assert "changed sheets of W03; print `changed cut sheets.pdf`" in said and "  W03: added" in said
    assert "W03-1" in text_of(built.output / "changed cut sheets.pdf")
    assert not (built.output / OLD_LABELS).exists()


def test_marks_of_an_earlier_format_are_taken_from_what_was_printed(trimmed: Shop) -> None:
    record = Record.open(trimmed.output)
    for entry in record.entries:
        for name, digest in entry.documents.items():
            if name == MARKS:
                (trimmed.output / "issued" / "files" / digest).write_bytes(b"")
    without = recorded_marks(Record.open(trimmed.output))
    assert {without.mark(part) for part in without.numbers} == set(marks_of(trimmed))
    assert without == recorded_marks(record)
