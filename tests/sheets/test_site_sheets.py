"""Measure sheets, labels and install sheets, read back from the printed page."""

from __future__ import annotations

import csv
import re
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise
from pathlib import Path
from typing import Any

import pytest
from arches import arch_changes
from cases import BASE, METRIC, STOOL, changed, job_of, strips
from paper import collisions, pages, runs, words

from jambs.app.chain import make_kits
from jambs.fasten.furring_words import verdict_words
from jambs.job import Job
from jambs.job.measured.measures import measures_rows
from jambs.job.measured.measuring_points import Kind, measure_places
from jambs.length import HALF_64TH, Units, read_length
from jambs.outside.house import plan_house
from jambs.outside.trim_fasteners import shim_places, trim_fasteners
from jambs.parts.board.cuts import Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.words.cut_words import board_words
from jambs.place.placement import Placement
from jambs.place.solve import place_windows
from jambs.sheets.install_sheet import install_sheets_pdf
from jambs.sheets.label_codes import code_text, label_code
from jambs.sheets.labels import STOCK, LabelError, LabelStock, checked_stock, cutting_order, labels_data, labels_pdf
from jambs.sheets.measure_sheet import measure_list_pdf, measure_sheets_pdf, planned_texts
from jambs.sides import Side

FURRING = Path(__file__).parents[1] / "authorities" / "outside" / "furring_over_foam.csv"
AROUND = {side: ["4 11/16", "4 13/16", "4 11/16"] for side in ("head", "sill", "left", "right")}
MEASURED = {"date": "2026-06-01", "by": "Ann", "interior_depth": AROUND}
HOUSES: dict[str, dict[str, Any]] = {
    "inch": {},
    "mm": METRIC,
    "stool": {"interior_trim__inside": STOOL},
    "measured": {"openings__0__measured": MEASURED},
    "tall": {"openings__0__frame": "47 1/2 x 95 1/2", "openings__0__rough_opening": "48 x 96"},
    "stool to be milled ahead": {
        "interior_trim__inside": STOOL,
        "shop__planned_allowance": "1/8",
        "shop__paper": "letter",
    },
    "tiny": {"openings__0__frame": "12 x 10", "openings__0__rough_opening": "12 1/2 x 10 1/2"},
}


@cache
def house(name: str) -> tuple[Job, tuple[Placement, ...], tuple[CutKit, ...]]:
    data = changed(**HOUSES[name])
    job = job_of(data)
    return job, place_windows(job), strips(make_kits(job))


@pytest.mark.parametrize("name", HOUSES)
def test_a_measure_sheet_is_one_page_with_every_place(name: str) -> None:
    job, placements, _ = house(name)
    pdf = measure_sheets_pdf(placements, job)
    assert len(pages(pdf)) == len(placements)
    found = {run.text for run in runs(pdf)}
    places = measure_places(placements[0].opening)
    assert {str(place.number) for place in places} <= found
    planned = planned_texts(placements[0], job)
    text = words(pdf)
    assert [one for one in planned.values() if one and f"plan {one}" not in text] == []


@pytest.mark.parametrize("name", HOUSES)
def test_no_two_texts_of_a_measure_sheet_lie_over_each_other(name: str) -> None:
    job, placements, _ = house(name)
    assert collisions(runs(measure_sheets_pdf(placements, job))) == []
    assert collisions(runs(measure_list_pdf(placements, job))) == []


def test_what_a_depth_may_turn_out_to_be_is_told_until_it_is_measured() -> None:
    for name, is_told in (("inch", True), ("measured", False)):
        job, placements, _ = house(name)
        assert ("Milling before measuring, final rip after" in words(measure_sheets_pdf(placements, job))) is is_told


def test_boxes_of_a_tall_opening_do_not_lie_over_each_other() -> None:
    """Every reading has its planned value under a box of at least 18 pt: a box and its value take 27."""
    job, placements, _ = house("tall")
    planned = [run for run in runs(measure_sheets_pdf(placements, job)) if run.text.startswith("plan")]
    assert len(planned) > 10
    close = [
        (one.y, other.y)
        for one, other in combinations(planned, 2)
        if one.page == other.page and abs(one.x - other.x) < 63 and abs(one.y - other.y) < 28.5
    ]
    assert close == []


def test_no_planned_value_lies_on_the_box_below_it() -> None:
    """From a plan down to the number of the box below: 11 of half a box, 3 to the number's foot, and 3 clear [pt]."""
    job, placements, _ = house("measured")
    for found in (job, placements), house("inch")[:2]:
        all_runs = runs(measure_sheets_pdf(found[1], found[0]))
        plans = [run for run in all_runs if run.text.startswith("plan")]
        numbers = [run for run in all_runs if run.text.isdigit()]
        gaps = [
            plan.y - number.y
            for plan in plans
            for number in numbers
            if -25 < number.x - plan.x < 0 and plan.y > number.y
        ]
        assert gaps and min(gaps) > 17


def test_yes_and_no_stand_clear_of_each_other() -> None:
    """The word yes is 13 pt wide at 8.5 pt; the box of no is 13 and begins before its word by 16."""
    job, placements, _ = house("inch")
    yes, no = (
        next(run for run in runs(measure_sheets_pdf(placements, job)) if run.text == word) for word in ("yes", "no")
    )
    assert no.x - yes.x > 13 + 16 + 4


def test_a_diagonal_is_planned_to_what_a_tape_reads() -> None:
    """Of 35 1/2 x 47 1/2: 59.30, which is 59 19/64, on a tape 59 5/16."""
    job, placements, _ = house("inch")
    planned = planned_texts(placements[0], job)
    assert [planned[one.number] for one in measure_places(placements[0].opening) if one.kind is Kind.DIAGONAL] == [
        '59 5/16"',
        '59 5/16"',
    ]
    assert planned[1] == '4 11/16"'


def test_the_table_says_what_the_sheet_says() -> None:
    """Planned values of the sheet's places are those of the table's rows, place by place."""
    job, placements, _ = house("inch")
    planned = {one.opening.mark: planned_texts(one, job) for one in placements}
    text = words(measure_sheets_pdf(placements, job))
    for mark, number, _, said, _, _ in list(measures_rows(job.openings, planned, units=job.units))[1:]:
        if number.isdigit() and said:
            assert planned[mark][int(number)] == said
            assert f"plan {said}" in text


def test_what_was_read_stands_in_the_boxes() -> None:
    job, placements, _ = house("measured")
    text = words(measure_sheets_pdf(placements, job))
    assert "Ann" in text and "2026-06-01" in text and text.count('4 13/16"') == 4


# ---- labels


def label_places(pdf: bytes, marks: set[str]) -> list[tuple[int, float, float, str]]:
    """Where each part mark stands: page, x from the left, y from the top [in]."""
    heights = [float(page.mediabox.height) for page in pages(pdf)]
    return [
        (run.page, run.x / 72, (heights[run.page] - run.y) / 72, run.text) for run in runs(pdf) if run.text in marks
    ]


@pytest.mark.parametrize(("name", "stock"), [("inch", "letter"), ("mm", "A4")])
def test_every_part_has_its_label_inside_its_place(name: str, stock: str) -> None:
    job, _, kits = house(name)
    sheet = STOCK[stock]
    marks = [
        part.mark + letter
        for kit in kits
        for part in kit.parts
        for letter in ("", *"abcdef"[: len(part.strips)])  # a glued part, and each strip of it
    ]
    found = label_places(labels_pdf(kits, job, sheet, first=3), set(marks))
    assert [mark for *_, mark in found] == marks
    for at, (page, x, y, _) in enumerate(found, start=2):
        row, column = divmod(at % sheet.count, sheet.across)
        left, top = sheet.left + column * sheet.pitch_across, sheet.top + row * sheet.pitch_down
        assert page == at // sheet.count
        assert left <= x <= left + sheet.width and top <= y <= top + sheet.height


@pytest.mark.parametrize(("name", "stock"), [("inch", "letter"), ("mm", "A4")])
def test_labels_do_not_run_together(name: str, stock: str) -> None:
    job, _, kits = house(name)
    assert collisions(runs(labels_pdf(kits, job, STOCK[stock]))) == []


def test_every_strip_of_a_glue_up_has_a_label_of_its_own() -> None:
    """Jambs 4 23/32 wide out of 1x4: (4 23/32 + 1/8 kerf + 2 x 1/16) / 2, up to 2 1/2; an inch longer than the part."""
    narrow = {"shop__boards": [{"nominal": "1x4", "stock": "poplar"}]}
    job = job_of(changed(**narrow))
    kits = strips(make_kits(job))
    head = next(part for part in kits[0].parts if part.kind is PartKind.EXTENSION_JAMB and part.side is Side.HEAD)
    labels = [one for sheet in labels_data(kits, job, STOCK["letter"])["sheets"] for one in sheet]
    found = [one for one in labels if one["of"] == head.mark]
    assert [one["mark"] for one in found] == [head.mark, f"{head.mark}a", f"{head.mark}b"]
    assert found[1]["name"] == "strip 1 of 2 to glue up: extension jamb, head"
    assert found[2]["size"] == f'3/4" × 2 1/2" × {job.shop.grid.text(head.length + 1)}'
    ordered = labels_data(kits, job, STOCK["letter"], order=cutting_order(kits, units=job.units))
    marks = [one["mark"] for sheet in ordered["sheets"] for one in sheet]
    at = marks.index(head.mark)
    assert marks[at : at + 3] == [head.mark, f"{head.mark}a", f"{head.mark}b"]
    # What comes out of one board has one label.
    plain_job, _, plain = house("inch")
    assert len([one for one in labels_data(plain, plain_job, STOCK["letter"])["sheets"][0]]) == len(plain[0].parts)


def test_cutting_order_is_board_by_board_widest_first() -> None:
    _, _, kits = house("inch")
    parts = {part.mark: part for kit in kits for part in kit.parts}
    ordered = [parts[mark] for mark in cutting_order(kits, units=Units.INCH)]
    for one, two in pairwise(ordered):
        boards = [board_words(part, units=Units.INCH) for part in (one, two)]
        assert boards[0] < boards[1] or (boards[0] == boards[1] and one.width >= two.width)
    assert sorted(parts) == sorted(part.mark for part in ordered)


def test_a_label_says_of_a_part_that_it_tapers_and_of_no_other() -> None:
    """The sill lies 1/8 deeper at the right than at the left; head and legs are parallel."""
    depths = {
        "head": ["4 11/16"] * 3,
        "left": ["4 11/16"] * 3,
        "right": ["4 11/16"] * 3,
        "sill": ["4 11/16", "4 13/16"],
    }
    depths["right"][0] = "4 13/16"
    read = {**MEASURED, "interior_depth": depths}
    job = job_of(changed(openings__0__measured=read))
    (kit,) = make_kits(job)
    tapered = {part.mark for part in kit.parts if any(isinstance(cut, Taper) for cut in part.cuts)}
    labels = [one for some in labels_data(strips([kit]), job, STOCK["letter"])["sheets"] for one in some]
    assert {one["mark"] for one in labels if one["name"].endswith(", tapered")} == tapered != set()


def test_a_label_says_where_a_size_may_still_change() -> None:
    """Jambs, stool and exterior sill wait for the tape, and casing legs on that sill; no other casing, nor a buck."""
    (job, _, kits), (measured_job, _, measured_kits) = house("inch"), house("measured")
    waiting = {"extension jamb", "stool", "exterior extension jamb", "exterior sill"}
    inside, outside = (
        sum(part.name in waiting and part.where is where for part in kits[0].parts)
        for where in (Where.INTERIOR, Where.EXTERIOR)
    )
    feet = 2
    assert words(labels_pdf(kits, job, STOCK["letter"])).count("PLANNED") == inside + outside + feet
    # Measured from the room only: what lines the wall inside is no longer planned.
    outside = sum(part.name in waiting and part.where is Where.EXTERIOR for part in measured_kits[0].parts)
    assert words(labels_pdf(measured_kits, measured_job, STOCK["letter"])).count("PLANNED") == outside + feet > feet


def label_stock(**changes: Any) -> LabelStock:
    return replace(STOCK["letter"], **changes)


@pytest.mark.parametrize(
    ("stock", "message"),
    [
        (label_stock(across=4), "the labels reach 2.56 in past the right edge of letter paper"),
        (label_stock(down=11, top=0.75), "the labels reach 0.75 in past the lower edge of letter paper"),
        (label_stock(pitch_across=2.5), "the labels lie over each other: the pitch is less than a label"),
    ],
)
def test_label_stock_that_does_not_fit(stock: LabelStock, message: str) -> None:
    with pytest.raises(LabelError, match=re.escape(message)):
        checked_stock(stock)


# ---- install sheets


def install_pdf(name: str) -> bytes:
    job, _, _ = house(name)
    planned = plan_house(make_kits(job), job)
    return install_sheets_pdf(planned.kits, planned.installing, job)


@pytest.mark.parametrize("name", HOUSES)
def test_no_two_texts_of_an_install_sheet_lie_over_each_other(name: str) -> None:
    assert collisions(runs(install_pdf(name))) == []


def test_install_fasteners_by_hand() -> None:
    # Jamb 3/4, shim space 1-7/8 (frame face 2-1/2 less 3/8 and 3/4, 1/4 + … = 36 less 32-1/4 over 2), 1-1/4 in: 3-7/8.
    # Casing 3/4, gypsum 1/2, 1 in: 2-1/4. Outside: 1 + 1/2 + 3 + 2 + 1/2 + 1-1/2 = 8-1/2, next sold 9.
    job, _, kits = house("inch")
    lines = trim_fasteners(kits[0], job)
    found = {(line.what, line.where): (line.needed, line.length) for line in lines}
    assert found["extension jamb", "left leg, right leg, head, bottom"] == (3.875, 4.0)
    assert found["interior casing", "outer edge"] == (2.25, 2.25)
    (outside,) = (line for line in lines if line.what == "exterior casing")
    assert (outside.needed, outside.length, outside.penetration) == (8.5, 9.0, 1.5)
    # What the sheet says it goes through adds up to the length that is sold: 1 + 6 + 2 into the framing.
    assert outside.reached == 2.0
    assert next(line.reached for line in lines if line.what == "interior casing") == 1.0
    assert all(line.is_assumed for line in lines if not line.says)


@cache
def furring_rows() -> list[dict[str, str]]:
    lines = [line for line in FURRING.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return list(csv.DictReader(lines))


@pytest.mark.parametrize("fastener", ["No. 10 wood screw", "1/4 lag screw"])
def test_penetration_against_the_furring_table(fastener: str) -> None:
    """IBC 2018 Table 2603.13.2: with the table's penetration asked, the length sold still gives as much."""
    named = fastener.replace("No. ", "No.")
    least = {float(row["min_penetration_in"]) for row in furring_rows() if row["fastener"] == named}
    (asked,) = least
    entry = {"fastener": fastener, "penetration": str(asked), "spacing": "16", "from_end": "2"}
    layers = list(BASE["walls"]["main"]["layers"])
    layers[3:5] = [{"material": "EPS", "thickness": "1"}]
    job = job_of({**changed(walls__main__layers=layers), "fasteners": {"casing": entry}})
    (kit,) = make_kits(job)
    (line,) = (one for one in trim_fasteners(kit, job) if one.what == "exterior casing")
    assert line.penetration == asked and not line.is_assumed
    assert line.length is None or line.length - sum(one.thickness for one in line.through) >= asked - HALF_64TH
    assert line.verdict is not None
    assert verdict_words(line.verdict, job.units).startswith(
        "needs design: the published table is for furring over foam, not for casing"
    )


@pytest.mark.parametrize("length", [6, 10, 24, 34.75, 58, 95])
def test_shims_near_the_ends_and_never_far_apart(length: float) -> None:
    job, _, _ = house("inch")
    places = shim_places(length, job.shop.grid)
    assert all(0 < at < length for at in places)
    if length > 12:
        assert places[0] == 4 and places[-1] == pytest.approx(length - 4, abs=1 / 4)
        assert all(at % 0.5 == 0 for at in places)  # nobody reads them finer
        assert max((b - a for a, b in pairwise(places)), default=0) <= 16 + 1 / 2


def test_the_wall_as_measured_is_drawn_and_told() -> None:
    # Each side 4-11/16, 4-13/16, 4-11/16: a bulge; least squares 4-35/48, lifted to 4-13/16: 1/8 at the ends.
    text = words(install_pdf("measured"))
    assert text.count('bulge 1/8": leave the width on and scribe the room edge to the wall') == 4
    assert 'Twist 0": the four corners lie in one plane.' in text
    assert "Scribe to the wall and plane down: W1-1, W1-2, W1-3, W1-4." in text


def test_diagonal_of_the_jamb_box() -> None:
    # Clear 30-3/4 × 42-3/4: 30.75² + 42.75² = 2773.125, root 52.66…: 52-21/32 on the grid.
    job, _, kits = house("inch")
    assert (kits[0].clear_width, kits[0].clear_height) == (30.75, 42.75)
    assert 'both diagonals 52 21/32"' in words(install_pdf("inch"))
    assert read_length("52 21/32", units=job.units) == pytest.approx((30.75**2 + 42.75**2) ** 0.5, abs=1 / 64)


def test_a_telephone_finds_the_opening_by_the_code_on_its_sheet(monkeypatch: pytest.MonkeyPatch) -> None:
    """The code was also read back from a printed page, by a reader that shares no code with its writer."""
    job, placements, _ = house("inch")
    pressed: list[dict[str, Any]] = []

    def caught(template: str, data: dict[str, Any]) -> bytes:
        pressed.append(data)
        return b""

    monkeypatch.setattr("jambs.sheets.measure_sheet.press", caught)
    measure_sheets_pdf(placements, job)
    measure_sheets_pdf(placements, job, stamp="issue 3")
    codes = [(sheet["mark"], sheet["code"]) for data in pressed for sheet in data["sheets"]]
    marks = [one.opening.mark for one in placements]
    wanted = [(mark, code_text(mark, issue, job.name)) for issue in ("not issued", "issue 3") for mark in marks]
    assert codes == [(mark, label_code(text).svg) for mark, text in wanted]


@pytest.mark.parametrize(
    ("shape", "count"),
    [
        ({"kind": "raked", "left": "28", "right": "36"}, 8 + 4),
        ("octagon", 8 + 8),
        ({"kind": "segment arch", "rise": "6"}, 10 + 5),
        ("full round", 8 + 4),
    ],
)
def test_sheet_and_list_have_a_box_for_every_depth_that_is_read_of_a_shape(shape: Any, count: int) -> None:
    """Inside corners and middles, of an arch crown and quarters; outside the corners, of an arch the crown."""
    job = job_of(changed(**arch_changes(shape, 36, 36), exterior_trim__outside__sill=None))
    placements = place_windows(job)
    pdf = measure_list_pdf(placements, job)
    assert [run.text for run in runs(pdf) if run.text.isdigit()] == [str(one) for one in range(1, count + 1)]
    assert collisions(runs(pdf)) == []
    sheet = runs(measure_sheets_pdf(placements, job))
    drawn = [run.text for run in sheet if run.text.isdigit()]
    # Each in the picture and on its box; the last is whether the wall's finish was on.
    assert sorted(drawn, key=int) == sorted([*map(str, range(1, count + 1))] * 2 + [str(count + 1)], key=int)
    assert collisions(sheet) == []
