"""The lists for the whole house, read back from their PDFs."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import hand_kits as hand
import paper
import pytest
from cases import changed, job_of, strips
from pypdf import PdfReader
from said import SaidFinding
from test_cut_sheet import crowded, said

import jambs.face as face
import jambs.sheets.house as house_lists
import jambs.sheets.rough_openings as rough_lists
from jambs.app.chain import make_kits
from jambs.findings import Severity, Subject
from jambs.job.models.fields import Size
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Assumed, Job, Opening
from jambs.job.models.windows import Sash
from jambs.length import Units
from jambs.outside.plan import PlannedOutside
from jambs.outside.register import Register, make_register
from jambs.parts.kit.cut_kit import CutKit
from jambs.place.placement import Buck
from jambs.place.support import framing_sill
from jambs.sheets.house import order_data, summary_data, write_order_sheet, write_summary
from jambs.sheets.record import job_record
from jambs.sheets.rough_openings import rough_opening_data, write_rough_opening_schedule
from jambs.sheets.told import assumed_rows
from jambs.values import Record


def register_of(kits: Sequence[CutKit], job: Job) -> Register:
    return make_register(kits, PlannedOutside(), job)


def summary(kits: Sequence[CutKit]) -> Record:
    job = hand.make_job()
    return summary_data(kits, register_of(kits, job), job)


def write_whole_summary(kits: Sequence[CutKit], job: Job, path: Path) -> None:
    write_summary(kits, register_of(kits, job), job, path)


EXAMPLES = Path(__file__).parents[2] / "examples"
WRITERS = [write_rough_opening_schedule, write_order_sheet, write_whole_summary]


def house(count: int = 16) -> list[CutKit]:
    """Openings of two sizes, every third measured, every fourth fixed and standing proud."""
    kits = []
    for number in range(count):
        mark = f"W{number + 1:02}"
        kit = hand.make_kit(mark) if number % 3 else hand.measured_kit(mark)
        if number % 4 == 3:
            opening = replace(
                kit.placement.opening, window_name="fixed", frame=Size(59.5, 47.5), hinge=None, escape=number == 7
            )
            kit = replace(kit, placement=replace(kit.placement, opening=opening, buck=None, exterior_depth=-1.25))
        kits.append(kit)
    return kits


@pytest.mark.parametrize("write", WRITERS)
@pytest.mark.parametrize("units", Units)
def test_every_size_on_paper_is_in_the_record(write: Any, units: Units, tmp_path: Path) -> None:
    job, kits = hand.make_job(units=units), house()
    write(kits, job, tmp_path / "list.pdf")
    allowed = said(job_record(kits, job))
    found = paper.lengths(paper.words((tmp_path / "list.pdf").read_bytes()))
    assert found and found - allowed - {text.removeprefix("-") for text in allowed} == set()


@pytest.mark.parametrize("write", WRITERS)
@pytest.mark.parametrize("units", Units)
def test_nothing_collides_or_leaves_the_page(write: Any, units: Units, tmp_path: Path) -> None:
    name = "A4" if units is Units.MM else "letter"
    write([*house(), crowded()], hand.make_job(units=units, paper=name), tmp_path / "list.pdf")
    pdf = (tmp_path / "list.pdf").read_bytes()
    page = paper.pages(pdf)[0].mediabox
    found = paper.runs(pdf)
    assert paper.collisions(found) == []
    assert page.width > page.height
    assert max(run.x + run.width for run in found) <= float(page.width) - 35.9
    assert min(run.x for run in found) >= 35.9
    assert min(run.y for run in found) >= 18


def test_order_counts_windows_that_are_the_same() -> None:
    kinds = order_data(house(), hand.make_job())["kinds"]
    assert [(one["count"], one["type"], one["frame"]) for one in kinds] == [
        (12, "casement", '35 1/2" × 47 1/2"'),
        (4, "fixed", '59 1/2" × 47 1/2"'),
    ]
    assert kinds[1]["marks"] == ["W04", "W08", "W12", "W16"]
    assert sum(one["count"] for one in kinds) == 16


def test_left_and_right_hinges_are_ordered_apart() -> None:
    left = hand.make_kit("W01")
    right = replace(left, placement=replace(left.placement, opening=hand.make_opening("W02", hinge="right")))
    kinds = order_data([left, right], hand.make_job())["kinds"]
    assert [(one["hinge"], one["count"]) for one in kinds] == [("left", 1), ("right", 1)]


def test_order_gathers_depths_that_are_the_same() -> None:
    rows = order_data([hand.make_kit("W01"), hand.make_kit("W02")], hand.make_job())["depths"]
    assert rows == [
        {
            "wall": "main",
            "type": "casement",
            "flange_plane": '9 1/4"',
            "interior": '4 11/16"',
            "exterior": '1 1/2"',
            "buck": "outboard",
            "marks": ["W01", "W02"],
        }
    ]


def test_rough_sill_is_the_shim_space_under_the_frame() -> None:
    """By hand: bottom of the frame 36 in over the floor, 1/4 in of shims under it."""
    row = rough_opening_data([hand.make_kit()], hand.make_job())["rows"][0]
    assert (row["sill_height"], row["rough_sill"]) == ('36"', '35 3/4"')
    assert (row["framing"], row["buck_depth"]) == ('36" × 48"', '2 3/4"')
    assert (row["framing_sill"], row["framing_head"]) == ('35 3/4"', '83 3/4"')
    assert row["buck_parts"] == "W01-17 … W01-20"


def lined(opening: Opening, framing: Size) -> CutKit:
    """Return a kit in a liner buck 3/4 in thick."""
    buck = Buck(kind=BuckKind.LINER, inner=0.5, outer=9.25, thickness=0.75, stock="plywood", set_back=0.0)
    sill = framing_sill(opening, buck)
    placement = hand.make_placement(opening, buck=buck, framing_opening=framing, framing_sill=sill)
    return replace(hand.make_kit(opening.mark), placement=placement)


def test_framing_stands_outside_the_liner() -> None:
    """By hand: rough sill 36 - 1/4; less 3/4 of liner is 35; the hole is 48 + 2 x 3/4 high, its head at 84 1/2."""
    row = rough_opening_data([lined(hand.make_opening(), Size(37.5, 49.5))], hand.make_job())["rows"][0]
    assert (row["rough_sill"], row["framing_sill"], row["framing_head"]) == ('35 3/4"', '35"', '84 1/2"')


def test_door_is_framed_from_the_finished_floor() -> None:
    """A door's hole has no sill: floor 3/4 under the frame, 48 of rough opening, 3/4 of liner at the head."""
    door = hand.make_opening("D1", sill_height=None, floor_below_frame=0.75)
    row = rough_opening_data([lined(door, Size(37.5, 49.5))], hand.make_job())["rows"][0]
    assert (row["sill_height"], row["rough_sill"]) == ('frame 3/4" above floor', "–")
    assert (row["framing_sill"], row["framing_head"]) == ("floor", '49 1/2"')
    flat = lined(replace(door, floor_below_frame=0.0), Size(37.5, 49.5))
    assert rough_opening_data([flat], hand.make_job())["rows"][0]["sill_height"] == "frame at floor level"


@pytest.mark.parametrize(
    ("units", "frame", "said"),
    [
        (Units.INCH, Size(610 / 25.4, 35.5), '610 mm (24 1/64") × 35 1/2"'),
        (Units.INCH, Size(635 / 25.4, 24 + 1 / 64), '25" × 24 1/64"'),
        (Units.MM, Size(610 / 25.4, 35.5), '610 mm × 35 1/2" (901.7 mm)'),
        (Units.INCH, Size(635 / 25.4, 940 / 25.4), '635 mm (25") × 940 mm (37 1/64")'),
        (Units.MM, Size(1200.5 / 25.4, 25), "1200.5 mm × 635 mm"),
    ],
)
def test_windows_are_ordered_in_the_unit_they_were_stated_in(units: Units, frame: Size, said: str) -> None:
    kit = hand.make_kit(placement=hand.make_placement(hand.make_opening(frame=frame)))
    assert order_data([kit], hand.make_job(units=units))["rows"][0]["frame"] == said


@pytest.mark.parametrize(
    ("window", "depth", "projection"),
    [
        ({"jamb_depth": "70 mm", "frame_projection": "20 mm"}, '70 mm (2 3/4")', '20 mm (25/32")'),
        ({"jamb_depth": None, "frame_depth": "90 mm", "flange_set_back": "20 mm"}, '70 mm (2 3/4")', '20 mm (25/32")'),
        ({"jamb_depth": "4 9/16", "frame_projection": "1 1/4"}, '4 9/16"', '1 1/4"'),
    ],
)
def test_depths_are_ordered_in_the_unit_of_the_maker(window: dict[str, Any], depth: str, projection: str) -> None:
    """The wall is summed in 64ths of an inch: 70 mm is 2.7559, nearest 2 3/4; the order says what the maker says."""
    plain = {key: value for key, value in {**changed()["windows"]["fixed"], **window}.items() if value is not None}
    if "frame_depth" in window:
        del plain["frame_projection"]
    job = job_of(changed(windows__fixed=plain, position={"flange_on": "sheathing"}))
    record = job_record(strips(make_kits(job)), job)["openings"][0]["window"]
    assert (record["jamb_depth"]["text"], record["frame_projection"]["text"]) == (depth, projection)
    assert record["jamb_depth"]["value"] in (2.75, 4.5625)


def test_no_side_hung_window_is_ordered_without_its_hinge_side() -> None:
    kit = hand.make_kit(placement=hand.make_placement(hand.make_opening(hinge=None)))
    data = order_data([kit], hand.make_job())
    assert (data["kinds"][0]["hinge"], data["kinds"][0]["hinge_is_missing"]) == ("HINGE SIDE NOT STATED", True)
    assert data["rows"][0]["opens"] == "sash: casement out, HINGE SIDE NOT STATED"
    assert data["rows"][0]["hinge"] == "HINGE SIDE NOT STATED"


@pytest.mark.parametrize(
    ("name", "sash", "said"),
    [
        ("garden door", "door in", "sash: door in, hinge left"),
        ("terrace leaf", "door out", "sash: door out, hinge left"),
        ("awning", "awning", "hinge left"),
        ("casement", "casement out", "sash: casement out, hinge left"),
    ],
)
def test_the_name_of_a_window_and_how_it_opens_are_told_apart(name: str, sash: str, said: str) -> None:
    assert house_lists._opens({"name": name, "sash": sash, "hinge": "left"}) == said


def test_a_name_is_not_said_twice() -> None:
    fixed = hand.WINDOW.model_copy(update={"sash": Sash.FIXED})
    opening = hand.make_opening(window_name="fixed", window=fixed, hinge=None, wall=replace(hand.WALL, name="sea wall"))
    kit = hand.make_kit(placement=hand.make_placement(opening))
    assert order_data([kit], hand.make_job())["rows"][0]["opens"] == ""
    assert rough_opening_data([kit], hand.make_job())["rows"][0]["wall"] == 'wall "sea wall"'
    assert rough_opening_data([hand.make_kit()], hand.make_job())["rows"][0]["wall"] == 'wall "main"'


def test_summary_puts_stop_first_and_says_the_same_thing_once() -> None:
    stop = SaidFinding(subject=Subject.opening("W02"), severity=Severity.STOP, text="The box does not fit.")
    data = summary([hand.make_kit("W01"), hand.make_kit("W02", findings=(stop,))])
    said_once = [(one["weight"], one["about"]) for one in data["findings"]]
    assert said_once == [("stop", ["W02"]), ("check", ["W01", "W02"]), ("note", ["W01"])]
    assert data["counts"] == {"check": 2, "note": 1, "stop": 1}


def test_summary_shows_depth_and_rip_of_every_opening() -> None:
    rows = summary([hand.make_kit(), hand.measured_kit()])["rows"]
    assert [(one["state"], one["interior"], one["rip"]) for one in rows] == [
        ("planned", '4 11/16"', '4 23/32"'),
        ("measured", '4 5/8" to 4 13/16"', '4 23/32" to 4 27/32"'),
    ]


@pytest.mark.parametrize(("share", "said"), [(0.5, "share 50 %"), (-1.05, ""), (None, "")])
def test_share_is_told_only_between_sheathing_and_trim_plane(share: float | None, said: str) -> None:
    kit = hand.make_kit()
    placed = replace(kit, placement=replace(kit.placement, share=share))
    assert summary([placed])["rows"][0]["share"] == said


@pytest.mark.parametrize("write", WRITERS)
def test_same_bytes_again(write: Any, tmp_path: Path) -> None:
    for name in ("one.pdf", "two.pdf"):
        write(house(3), hand.make_job(), tmp_path / name)
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


def test_the_schedule_of_a_large_house_is_set_in_pieces_with_its_pages_numbered_through(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    job, kits = hand.make_job(), house(12)
    write_rough_opening_schedule(kits, job, tmp_path / "one.pdf")
    monkeypatch.setattr(rough_lists, "PIECE", 5)
    write_rough_opening_schedule(kits, job, tmp_path / "pieces.pdf")
    one, pieces = (PdfReader(tmp_path / name).pages for name in ("one.pdf", "pieces.pdf"))
    said_in_one, said_in_pieces = ([page.extract_text() for page in pages] for pages in (one, pieces))
    assert [text.count("Framers: use the three columns in the framing") for text in said_in_pieces] == [
        0,
        0,
        1,
        *[0] * (len(pieces) - 3),
    ]
    assert all(f"page {n} of {len(pieces)}" in text for n, text in enumerate(said_in_pieces, start=1))
    assert len(pieces) > len(one)
    of_one, of_pieces = (paper.lengths(" ".join(texts)) for texts in (said_in_one, said_in_pieces))
    assert of_one == of_pieces


def test_the_summary_says_once_for_each_number_of_hands_who_lifts() -> None:
    glass = [line for line in summary(house(4))["cautions"] if line.startswith("Glass")]
    assert glass and len({line.partition(";")[0] for line in glass}) == len(glass)
    assert all(sum(f"{kit.mark} about" in line for line in glass) == 1 for kit in house(4))


@pytest.mark.parametrize(("is_rounded", "state"), [(True, "rounded up"), (False, "assumed")])
def test_a_rough_opening_that_is_given_and_rounded_is_not_called_assumed(
    is_rounded: bool, state: str, tmp_path: Path
) -> None:
    kit = hand.make_kit()
    said = Assumed(what="rough opening", value='36" x 48"', why="why", is_rounded=is_rounded)
    opening = replace(kit.placement.opening, assumed=(said,))
    write_rough_opening_schedule(
        [replace(kit, placement=replace(kit.placement, opening=opening))], hand.make_job(), tmp_path / "one.pdf"
    )
    text = PdfReader(tmp_path / "one.pdf").pages[0].extract_text()
    assert [word in text for word in ("rounded up", "assumed")] == [state == "rounded up", state == "assumed"]


@pytest.mark.parametrize("count", [2, 5, 8, 10, 11, 12, 13])
def test_bucks_go_on_under_the_openings_and_their_title_stays_with_them(count: int, tmp_path: Path) -> None:
    write_rough_opening_schedule(house(count), hand.make_job(), tmp_path / "list.pdf")
    sheets = [page.extract_text() for page in paper.pages((tmp_path / "list.pdf").read_bytes())]
    (titled,) = (number for number, sheet in enumerate(sheets) if "Buck parts" in sheet)
    bucks = sheets[titled].partition("Buck parts")[2]
    assert "outboard buck" in bucks
    assert "Framers: use" in sheets[titled] or count > 8, "a new sheet only where the openings fill theirs"


def test_sizes_that_were_assumed_have_a_times_sign_on_paper_and_stay_in_the_record() -> None:
    """The record keeps what a job file has, so that no opening reads as changed since an earlier issue."""
    kept = {"what": "rough opening", "value": '37 1/8" x 49 1/8"', "why": "the job gives 940 mm x 1245 mm"}
    (shown,) = assumed_rows([kept])
    assert shown == {"what": "rough opening", "value": '37 1/8" × 49 1/8"', "why": "the job gives 940 mm × 1245 mm"}
    assert kept["value"] == '37 1/8" x 49 1/8"'


@pytest.mark.parametrize("example", ["creamery", "harbour-house"])
def test_no_sheet_has_a_letter_between_sizes(example: str) -> None:
    job = face.read_job(EXAMPLES / example)
    kits = face.make_kits(job)
    between = re.compile(r'[\d"m] x \d')
    data = [summary_data(kits, register_of(kits, job), job), rough_opening_data(kits, job), order_data(kits, job)]
    assert '" × ' in repr(data) or "mm × " in repr(data)
    assert [text for one in data for text in texts_in(one) if between.search(text)] == []


def texts_in(data: Any) -> Iterator[str]:
    """Yield every text that some data hold."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        yield from (text for one in data.values() for text in texts_in(one))
    elif isinstance(data, list | tuple):
        yield from (text for one in data for text in texts_in(one))
