"""The cut sheet read back from its PDF by pypdf, which shares no code with the program that set it."""

from __future__ import annotations

import itertools
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import hand_kits as hand
import hand_parts as boards
import paper
import pytest
from said import SaidFinding, SaidReason

from jambs.findings import Severity
from jambs.job.models.fields import Size
from jambs.job.models.shop import Board
from jambs.length import FINE, Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.touches import StripBend
from jambs.parts.kit.cautions import Beside, Caution
from jambs.parts.kit.cut_kit import CutKit
from jambs.place.escape import escape_check
from jambs.sheets.cut_sheet import cut_sheets_pdf, write_cut_sheet
from jambs.sheets.pictures import Picture
from jambs.sheets.record import job_record, opening_record

LETTER = (612.0, 792.0)
"""US letter [pt]: 8 1/2 by 11 in, ANSI/ASME Y14.1 size A, 72 pt to the inch."""
A4 = (595.28, 841.89)
"""210 by 297 mm, ISO 216."""
LONG = "Head of the stair, over the landing by the long north window"
"""60 characters, the most a room may have."""


def sheet(kit: CutKit, **job: Any) -> bytes:
    return cut_sheets_pdf([kit], hand.make_job(**job), {kit.mark: hand.make_pictures()})


def said(value: Any) -> set[str]:
    """Return every length in any text of a record."""
    if isinstance(value, dict | list):
        inner = value.values() if isinstance(value, dict) else value
        return set().union(*map(said, inner))
    return paper.lengths(value) if isinstance(value, str) else set()


def crowded(mark: str = "W-NORTH-12.A") -> CutKit:
    """Thirty parts, the longest texts a job file allows, many findings: the worst a sheet has to hold."""
    parts = [*boards.interior_parts(mark), *boards.exterior_parts(mark), *boards.buck_parts(mark)]
    more = [replace(part, mark=f"{mark}-{number}") for number, part in enumerate(parts[:10], start=21)]
    bend = StripBend(upstand=4 + 23 / 32, top=4 + 23 / 32, drip=0.5, past_casing=0.25, gap_to_cladding=0.375)
    board = Board(stock="clear-vertical-grain-" * 2 + "cedar", nominal="5/4x12", thickness=1.0, width=11.25)
    whole = [
        replace(part, blank=replace(part.blank, board=board), touches=(bend,) * 3, kind=PartKind.EXTERIOR_JAMB)
        for part in (*parts, *more)
    ]
    whole[0] = replace(whole[0], blank=replace(whole[0].blank, strips=(6.25, 6.25, 4.71875)))
    kit = hand.make_kit(mark, parts=whole)
    long = f"{LONG}. " * 3
    findings = tuple(
        SaidFinding(severity=weight, text=f"{number}: {long}") for weight in Severity for number in range(4)
    )
    opening = replace(kit.placement.opening, room=LONG, window_name="W" * 60, frame=Size(119.984375, 119.984375))
    placement = replace(kit.placement, opening=opening, reasons=(SaidReason(text=long),) * 2)
    return replace(
        kit, findings=findings, cautions=(Caution(beside=Beside.SAW, words=f"Saw: {long}"),) * 4, placement=placement
    )


def metric(mark: str = "W-04") -> CutKit:
    """A window ordered in whole millimeters in an inch job: both units stand beside each other."""
    opening = hand.make_opening(mark, frame=Size(914 / 25.4, 1219 / 25.4), rough_opening=Size(940 / 25.4, 1245 / 25.4))
    return replace(hand.make_kit(mark), placement=hand.make_placement(opening))


def kits() -> list[Any]:
    half = hand.make_kit("W03", measured=True)
    return [
        pytest.param(hand.make_kit(), id="planned, inside and outside"),
        pytest.param(hand.measured_kit(), id="measured, inside, tapered"),
        pytest.param(half, id="measured from the room, outside planned"),
        pytest.param(crowded(), id="crowded"),
        pytest.param(metric(), id="ordered in millimeters"),
    ]


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("kit", kits())
def test_every_size_on_paper_is_in_the_record(kit: CutKit, units: Units) -> None:
    record = opening_record(kit, grid=hand.make_job(units=units).shop.grid)
    allowed = said(record) | said(job_record([], hand.make_job(units=units)))
    proud = {text.removeprefix("-") for text in allowed}
    text = paper.words(sheet(kit, units=units)).replace('scale 3/4" = 1\'-0"', "").replace('scale 3" = 1\'-0"', "")
    assert paper.lengths(text) - allowed - proud == set()


def widths(part: dict[str, Any]) -> str:
    """Return the width as it stands in the table: both ends of a taper, left before right, top over bottom."""
    taper = part["taper"]
    if taper is None:
        return str(part["width"]["text"])
    ends = {taper[end]: taper[f"{end}_width"]["text"] for end in ("start", "finish")}
    return " ".join(f"{ends[at]} {at}" for at in ("left", "right", "top", "bottom") if at in ends)


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("kit", kits()[:3])
def test_every_part_stands_on_one_line_with_its_sizes(kit: CutKit, units: Units) -> None:
    text = paper.words(sheet(kit, units=units))
    for part in opening_record(kit, grid=hand.make_job(units=units).shop.grid)["parts"]:
        row = f"{part['board']} {part['thickness']['text']} {widths(part)} {part['length']['text']} {part['ends']}"
        after_mark = text.split(f"{part['mark']} ")[-1]
        assert re.search(re.escape(row), after_mark), row


@pytest.mark.parametrize("size", [("letter", LETTER), ("A4", A4)], ids=["letter", "A4"])
@pytest.mark.parametrize("kit", kits())
def test_nothing_collides_or_leaves_the_page(kit: CutKit, size: tuple[str, tuple[float, float]]) -> None:
    name, (width, height) = size
    pdf = sheet(kit, paper=name)
    found = paper.runs(pdf)
    box = paper.pages(pdf)[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((width, height), abs=0.01)
    assert paper.collisions(found) == []
    assert min(run.x for run in found) >= 35.9
    assert max(run.x + run.width for run in found) <= width - 35.9
    assert min(run.y for run in found) >= 18
    assert max(run.y + 0.72 * run.size for run in found) <= height - 18


def test_no_size_breaks_inside() -> None:
    """Every whole size is drawn in one piece: a run never ends where its fraction is still to come."""
    found = paper.runs(sheet(crowded()))
    torn = [
        (one.text, two.text)
        for one, two in itertools.pairwise(found)
        if re.search(r"\d$", one.text) and re.match(r"\d+/\d+\"", two.text)
    ]
    assert torn == []


def test_interior_kit_takes_one_page_and_a_whole_kit_two() -> None:
    inside = hand.make_kit("W02", parts=boards.interior_parts("W02"))
    low = hand.make_pictures(elevation=(2.9, 2.9), section=(4.3, 2.9))
    assert len(paper.pages(cut_sheets_pdf([inside], hand.make_job(), {"W02": low}))) == 1
    assert len(paper.pages(sheet(hand.make_kit()))) == 2


def test_each_opening_counts_its_own_pages_under_its_own_head() -> None:
    openings = [hand.make_kit("W01"), hand.make_kit("W02", parts=boards.interior_parts("W02")[:4]), crowded("D1")]
    pdf = cut_sheets_pdf(openings, hand.make_job(), {kit.mark: hand.make_pictures() for kit in openings})
    texts = [page.extract_text() for page in paper.pages(pdf)]
    heads = [text.split()[0] for text in texts]
    counts = [re.findall(r"page (\d+) of (\d+)", text) for text in texts]
    long = len(texts) - 3
    assert heads == ["W01", "W01", "W02", *["D1"] * long]
    expected = [("1", "2"), ("2", "2"), ("1", "1"), *((str(page), str(long)) for page in range(1, long + 1))]
    assert counts == [[one] for one in expected]


def test_banner_tells_planned_from_measured() -> None:
    planned, measured, half = (
        paper.words(sheet(kit)) for kit in (hand.make_kit(), hand.measured_kit(), hand.make_kit("W03", measured=True))
    )
    banner = "PLANNED – MEASURE BEFORE CUTTING"
    assert planned.count(banner) == 2 and "MEASURED" not in planned
    assert "MEASURED 2026-03-20 by shop" in measured and banner not in measured
    whole = f"INSIDE MEASURED 2026-03-20 OUTSIDE {banner}"
    assert half.count(whole) == 2 and f"Exterior parts (8) {banner}" in half


def test_only_what_is_planned_is_set_white_on_black() -> None:
    states = [
        opening_record(kit, grid=FINE[Units.INCH])["state"]
        for kit in (hand.make_kit(), hand.make_kit("W03", measured=True))
    ]
    assert [[piece["is_planned"] for piece in state["banner"]] for state in states] == [[True], [False, True]]


def test_depth_that_was_measured_replaces_the_planned_one() -> None:
    text = paper.words(sheet(hand.measured_kit()))
    assert 'INTERIOR DEPTH 4 5/8" to 4 13/16"' in text
    assert 'head, left to right 4 11/16", 4 3/4"' in text
    assert 'left leg, bottom to top 4 5/8", 4 11/16"' in text


def test_frame_standing_proud_says_so() -> None:
    kit = hand.make_kit()
    text = paper.words(sheet(replace(kit, placement=replace(kit.placement, exterior_depth=-1.25))))
    assert 'EXTERIOR DEPTH 1 1/4" proud' in text


def test_stop_comes_before_check_and_both_before_the_parts() -> None:
    stop = SaidFinding(severity=Severity.STOP, text='The box is 1/8" too wide.')
    text = paper.words(sheet(hand.make_kit(findings=(stop,))))
    assert text.index("STOP The box") < text.index("CHECK The frame hangs") < text.index("Interior parts")


def test_glued_strips_and_assumed_values_are_said() -> None:
    wide = boards.make_part(1, width=13.5, strips=(4.75, 4.75, 4.75))
    wide = replace(wide, blank=replace(wide.blank, strip_length=43.25, jointing=1 / 16))
    text = paper.words(sheet(hand.make_kit(parts=[wide])))
    words = 'glue up from 3 strips 4 3/4" × 43 1/4": joint 1/16" off each glued edge, glue, then rip to 13 1/2"'
    assert words in text
    assert "assumed window weight: 68 lb (from the glass make-up and the frame)" in text


def resources(page: Any) -> Any:
    return page["/Resources"]


def test_only_the_bundled_font_is_used() -> None:
    names = {
        font["/BaseFont"].split("+")[-1]
        for page in paper.pages(sheet(crowded()))
        for font in (one.get_object() for one in resources(page)["/Font"].values())
    }
    assert names == {"LiberationSans", "LiberationSans-Bold"}


def test_same_bytes_in_every_run(tmp_path: Path) -> None:
    """A second process with another hash seed prints the same bytes."""
    write_cut_sheet(hand.make_kit(), hand.make_job(), hand.make_pictures(), tmp_path / "here.pdf")
    code = (
        "import sys, pathlib; sys.path.insert(0, sys.argv[1]); import hand_kits as h\n"
        "from jambs.sheets.cut_sheet import write_cut_sheet\n"
        "write_cut_sheet(h.make_kit(), h.make_job(), h.make_pictures(), pathlib.Path(sys.argv[2]))"
    )
    there = tmp_path / "there.pdf"
    folder = Path(__file__).parent
    subprocess.run(
        [sys.executable, "-c", code, str(folder), str(there)],
        check=True,
        cwd=folder.parents[1],
        env={"PYTHONHASHSEED": "7", "PYTHONPATH": os.pathsep.join(map(str, folder.parents[:2]))},
    )
    assert (tmp_path / "here.pdf").read_bytes() == there.read_bytes()


def swung(kit: CutKit, *, escape: bool, **swing: Any) -> CutKit:
    opening = replace(kit.placement.opening, escape=escape)
    found = kit.placement.swing and replace(kit.placement.swing, **swing)
    job = hand.make_job()
    return replace(
        kit,
        placement=replace(kit.placement, opening=opening, swing=found, escape=escape_check(opening, found, job)),
    )


def test_the_sheet_says_how_far_the_sash_opens_and_what_an_escape_leaves() -> None:
    """Degrees are cut off, not rounded: a sash never opens further than is said."""
    kit = swung(hand.make_kit(), escape=False, greatest_deg=91.96, stopped_by="the casing")
    text = paper.words(sheet(kit))
    assert "sash opens to 91°, stopped by the casing" in text and "escape" not in text
    free = paper.words(sheet(swung(kit, escape=True, greatest_deg=180.0, stopped_by="nothing")))
    assert "sash opens to 180°, nothing stops it" in free
    # 28 3/4 x 41 1/2 = 1193.1 sq in = 8.29 sq ft.
    assert (
        'Escape opening, has / needs: clear area 8.29 sq ft / 5.7 sq ft · clear width 28 3/4" / 20" · '
        'clear height 41 1/2" / 24" · sill over the floor 39" / at most 44" '
        "(International Residential Code 2018, R310; the local code decides)"
    ) in free
    fixed = replace(kit, placement=replace(kit.placement, swing=None))
    assert "sash opens" not in paper.words(sheet(fixed))


def test_a_section_says_that_it_shows_the_plan_once_depths_are_measured() -> None:
    said = "inside as measured half way up"
    planned, measured = paper.words(sheet(hand.make_kit())), paper.words(sheet(hand.measured_kit()))
    assert planned.count(said) == 0 and measured.count(said) == 1
    assert f'scale 3" = 1\'-0" · {said}' in measured


def test_what_stands_under_a_narrow_drawing_does_not_push_it_over_the_one_beside_it() -> None:
    """By hand: in 540 pt between margins of 36 pt the section of 187.2 pt begins at 388.8 pt, its title with it."""
    pictures = hand.make_pictures(elevation=(4.7, 3.2), section=(2.6, 3.2))
    pdf = cut_sheets_pdf([hand.measured_kit()], hand.make_job(), {"W02": pictures})
    (title,) = (run for run in paper.runs(pdf) if run.text.startswith("Section at left jamb"))
    assert title.x == pytest.approx(36 + 540 - 2.6 * 72, abs=0.1)


@pytest.mark.parametrize(("height", "is_shown"), [(1.0, True), (3.4, False), (1.2, None), (1.5, None), (2.5, None)])
def test_more_pictures_never_begin_a_page_of_their_own(height: float, is_shown: bool | None) -> None:
    kit, few = hand.make_kit(), hand.make_pictures(elevation=(3, 2), section=(2, 2))
    more = Picture(title="Exploded view", svg=hand.box_svg(3.0, height), scale="scale 1:50")
    without = cut_sheets_pdf([kit], hand.make_job(), {"W01": few})
    pdf = cut_sheets_pdf([kit], hand.make_job(), {"W01": replace(few, more=((more,),))})
    assert len(paper.pages(pdf)) == len(paper.pages(without))
    assert is_shown is None or ("Exploded view" in paper.words(pdf)) == is_shown


def test_sizes_give_way_to_a_picture_as_far_as_they_are_read_from_more_than_two_meters() -> None:
    """14 pt are capitals of 3.6 mm: 5 minutes of arc at 2.4 m (from memory)."""
    kit, few = hand.make_kit(), hand.make_pictures(elevation=(3, 2), section=(2, 2))
    shown = Picture(title="Exploded view", svg=hand.box_svg(3.0, 1.0), scale="scale 1:50")
    without = cut_sheets_pdf([kit], hand.make_job(), {"W01": few})
    pdf = cut_sheets_pdf([kit], hand.make_job(), {"W01": replace(few, more=((shown,),))})
    sizes = [max(one.size for one in paper.runs(each) if one.text == '3/4"') for each in (without, pdf)]
    assert sizes == [17.0, 14.0]
