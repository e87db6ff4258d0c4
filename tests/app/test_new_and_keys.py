"""``jambs new --ask`` as a dialogue, and ``jambs keys`` on the terminal and on paper."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pypdf import PdfReader
from shops import Shop, shop

from jambs.job import read_job
from jambs.job.key_list import TOP, key_sections, sections_with
from jambs.job.key_words import key_words
from jambs.job.models.windows import Sash
from jambs.sheets.key_pictures import PICTURES

ANSWERS = (
    "Lake house",
    "inch",
    "gypsum board 1/2, stud 2x6, 1/2 plywood, EPS 3, EPS 2 1/2, strapping 1x3, vertical boards",
    "outboard",
    "5 13/16",
    "1 1/4",
    "2 1/2",
    "tilt-turn",
    "equal depths",
    "K1, Kitchen, 35 1/2 x 47 1/2",
)
METRIC = (
    "Sjøhus: 2",
    "mm",
    "gypsum board 12.5 mm, stud 45x145, 12 mm OSB, EPS 100, strapping 25 mm, boards 21 mm",
    "none",
    "115",
    "35",
    "65",
    "fixed",
    "on the sheathing",
    "K1..K3, Loft, 890 x 1190",
)


def asked(shop: Shop, *answers: str) -> str:
    result = shop.run("new", "lake", "--ask", answer="".join(f"{one}\n" for one in answers))
    assert result.exit_code == 0, result.output
    return result.stdout


def test_ten_answers_make_a_job_that_can_be_checked(shop: Shop) -> None:
    """By hand: 1/2 + 5 1/2 + 1/2 + 3 + 2 1/2 + 3/4 = 12 3/4; less 5 13/16 is 6 15/16, half of it 3 15/32."""
    said = asked(shop, *ANSWERS)
    assert re.findall(r"^(\d+)/10  ", said, re.M) == [str(number) for number in range(1, 11)]
    job = read_job(shop.folder / "lake")
    (opening,) = job.openings
    assert (job.name, opening.mark, opening.room, opening.window.sash) == (
        "Lake house",
        "K1",
        "Kitchen",
        Sash.TILT_AND_TURN,
    )
    assert (opening.window.jamb_depth, opening.window.frame_projection) == (5.8125 - 1.25, 1.25)
    checked = shop.run("check", "lake").stdout.splitlines()[2]
    assert re.split(r"  +", checked)[3:5] == ['3 15/32"', '3 15/32"']


def test_a_metric_job_without_a_buck(shop: Shop) -> None:
    asked(shop, *METRIC)
    job = read_job(shop.folder / "lake")
    assert (job.name, [one.mark for one in job.openings]) == ("Sjøhus: 2", ["K1", "K2", "K3"])
    assert job.openings[0].wall.buck is None
    assert shop.run("check", "lake").exit_code == 0


def test_a_bad_answer_is_asked_again_with_the_sentence_of_the_job_file(shop: Shop) -> None:
    layers, depth = "gypsum board 1/2, stud 2x5", "49/16"
    said = asked(shop, *ANSWERS[:2], layers, *ANSWERS[2:5], depth, *ANSWERS[5:])
    assert said.count("no such size is in it, these are: stud 2x3") == 1
    assert said.count("'49/16' is not a length (the fraction is not less than one; is a space missing?)") == 1
    assert re.findall(r"^(\d+)/10  ", said, re.M) == ["1", "2", "3", "3", "4", "5", "6", "6", "7", "8", "9", "10"]


def test_an_empty_answer_is_not_passed_over_in_silence(shop: Shop) -> None:
    said = asked(shop, *ANSWERS[:2], "", *ANSWERS[2:])
    assert said.count("An answer is needed") == 1
    assert "is written" in said


def test_good_answers_are_asked_once(shop: Shop) -> None:
    said = asked(shop, *ANSWERS)
    assert "An answer is needed" not in said
    assert "write" not in re.sub(r"[Ww]ritten like.*|is written", "", said)


def test_the_job_has_comments_and_nothing_that_nobody_said_of_the_window(shop: Shop) -> None:
    asked(shop, *ANSWERS)
    text = (shop.folder / "lake" / "job.yaml").read_text(encoding="utf-8")
    assert text.startswith("# Written from your answers. Nobody asked you for shop, boards and trim")
    assert "    frame_depth: 5 13/16  # outside edge of the frame → its inside edge, the whole depth\n" in text
    for key in ("jamb_depth", "flange_width", "sash_thickness", "rough_opening", "sill_height", "hinge"):
        assert not re.search(rf"^ *{key}:", text, re.M), key


def test_who_stops_has_nothing_written(shop: Shop) -> None:
    result = shop.run("new", "lake", "--ask", answer="Lake house\ninch\n")
    assert result.exit_code == 130
    assert not (shop.folder / "lake").exists()


def test_the_list_has_every_key_once(shop: Shop) -> None:
    listed = [(one.key, one.words) for section in key_sections() for one in section.lines]
    assert sorted(key for key, _ in listed) == sorted(key for _, key in key_words())
    assert [key for key, words in listed if not words] == []


def test_the_list_says_where_a_key_stands(shop: Shop) -> None:
    paths = {one.path for one in key_sections()}
    assert {TOP, "shop", "shop: boards: -", "walls: NAME: layers: -", "windows: NAME", "openings: -"} <= paths


def test_only_what_must_be_given_has_a_star(shop: Shop) -> None:
    window = next(one for one in key_sections() if one.path == "windows: NAME")
    starred = {line.key for line in window.lines if line.is_required}
    assert starred == {"jamb_depth", "frame_projection", "frame_face", "nailing_flange", "sash"}


def test_keys_on_the_terminal(shop: Shop) -> None:
    said = shop.run("keys", "windows").stdout
    assert "\n  jamb_depth*           bearing face of the nailing flange → inside edge of the frame; or\n" in said
    assert f"\n{'':24}frame_depth\n" in said
    assert "tilt and turn" in said
    assert "kerf" not in said
    assert max(map(len, said.splitlines())) <= 100


CLAD = ("CladdingReturnsEntry", "ReturnFurringEntry", "CornerBoardEntry")
DRAWN = ("WindowType", "OpeningEntry", "MetalReturnsEntry", "MetalSillEntry", "TrimWithEntry", *CLAD)


@pytest.mark.parametrize("name", PICTURES)
def test_a_picture_names_the_keys_that_are_said_to_be_on_it(name: str, shop: Shop) -> None:
    """Readings repeat keys of the window; a side of the frame has the frame's arrow."""
    drawn = {one.key for one in key_words().values() if one.picture == name and one.model in DRAWN}
    terminal = shop.run("keys", name).stdout.split("\n\n* must")[0].replace("_\n", "_")
    terminal = re.split(r"\n\n(?:windows|position|openings|exterior_trim)", terminal)[0]
    svg = PICTURES[name]()
    assert drawn
    for key in drawn - {"exterior_frame_face"}:
        assert key in svg or all(f">{part}" in svg for part in re.split(r"(?<=_)", key, maxsplit=1)), key
        assert key in terminal or key.split("_")[0] + "_" in terminal, key


def test_a_word_that_no_key_has(shop: Shop) -> None:
    result = shop.run("keys", "zebra")
    assert result.exit_code == 1
    assert result.stderr == "no key and no section has 'zebra' in its name; `jambs keys` lists all\n"
    assert sections_with("zebra") == ()


@pytest.mark.parametrize(("units", "width"), [("inch", 11 * 72), ("mm", 297 / 25.4 * 72)])
def test_the_printed_list_has_four_pages_and_every_key(units: str, width: float, shop: Shop) -> None:
    assert shop.run("keys", "--pdf", "keys.pdf", "--units", units).exit_code == 0
    pages = PdfReader(shop.folder / "keys.pdf").pages
    assert len(pages) == 4
    assert float(pages[0].mediabox.width) == pytest.approx(width, abs=1)
    text = re.sub(r"\s+", "", "".join(page.extract_text() for page in pages))
    assert [key for _, key in key_words() if key not in text] == []


def test_a_printed_list_is_not_written_over(shop: Shop) -> None:
    (shop.folder / "keys.pdf").write_text("mine", encoding="utf-8")
    assert shop.run("keys", "--pdf", "keys.pdf").exit_code == 1
    assert (shop.folder / "keys.pdf").read_text(encoding="utf-8") == "mine"
    assert shop.run("keys", "--pdf", "keys.pdf", "--overwrite").exit_code == 0
