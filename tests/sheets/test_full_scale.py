"""Templates at full scale: every line of them read back from the content of the page, 72 points an inch, no more.

72 points make an inch: PDF reference, default user space.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from paper import collisions, runs, words
from pypdf import PdfReader

from jambs.drawings.cut_files.figure import part_figures
from jambs.face import draw, make_kits, read_job
from jambs.job import Job
from jambs.length import FINE, Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.readings.as_built import PLANNED
from jambs.parts.words.cut_words import work_words
from jambs.place.frame_path import frame_path
from jambs.place.shape_words import outline_words
from jambs.sheets.full_scale import DRAWN_EXACT, templates_of
from jambs.sheets.press import press
from jambs.sheets.template import TITLE, TURNED, Template
from jambs.sheets.template_pages import first_fit, templates_data, write_templates
from jambs.sheets.tiles import Tiling

EXAMPLES = Path(__file__).parents[2] / "examples"
POINTS = 72.0
SAME = 2e-3
"""A page holds its numbers to about a thousandth of a point."""
Line = list[tuple[float, float]]


@cache
def house(example: str) -> tuple[Job, dict[str, CutKit]]:
    job = read_job(EXAMPLES / example)
    return job, {kit.mark: kit for kit in make_kits(job)}


@cache
def pdf(example: str, mark: str) -> bytes:
    job, kits = house(example)
    return press("full_scale", templates_data(kits[mark], templates_of(kits[mark], grid=job.shop.grid), job))


def lines(data: bytes, number: int) -> list[Line]:
    """Return every drawn line of a page [pt], from its content and the matrices in force there."""
    found: list[Line] = []

    def visit(operator: bytes, operands: Any, cm: Any, tm: Any) -> None:
        if operator in (b"m", b"l"):
            x, y = (float(one) for one in operands)
            at = (x * cm[0] + y * cm[2] + cm[4], x * cm[1] + y * cm[3] + cm[5])
            if operator == b"m":
                found.append([])
            found[-1].append(at)

    PdfReader(BytesIO(data)).pages[number].extract_text(visitor_operand_before=visit)
    return found


def lengths(line: Line) -> list[float]:
    return [math.dist(one, two) / POINTS for one, two in pairwise(line)]


def holds(found: list[Line], wanted: list[float]) -> bool:
    """Say whether some line has these lengths one after the other [in]."""
    return any(
        len(lengths(one)) == len(wanted) and lengths(one) == pytest.approx(wanted, abs=SAME / 72) for one in found
    )


def test_a_horn_is_as_long_on_paper_as_on_the_board() -> None:
    # stool W01-4: 6 3/16 wide, notches 3 11/16 along and 4 11/16 + 1/16 of play in; 2 in more past it.
    # start end, from the broken line round: over the notch, along the notch, the horn, the whole end's outer edge
    wanted = [3.6875, 6.1875 - 4.75, 3.6875 + 2.0, 6.1875, 2.0, 4.75]
    found = [length for one in lines(pdf("harbour-house", "W01"), 0) for length in lengths(one)]
    for length in wanted:
        assert any(abs(one - length) < SAME / 72 for one in found), length


def test_a_bar_is_measured_first() -> None:
    assert holds(lines(pdf("harbour-house", "W01"), 0), [4.0])
    assert "4 in: measure it" in words(pdf("harbour-house", "W01"))
    assert holds(lines(pdf("hillside-house", "F1"), 0), [100 / 25.4])
    assert "100 mm: measure it" in words(pdf("hillside-house", "F1"))


@pytest.mark.parametrize(("example", "mark"), [("harbour-house", "W01"), ("hillside-house", "F1")])
def test_every_sheet_says_how_it_is_printed(example: str, mark: str) -> None:
    data = pdf(example, mark)
    count = len(PdfReader(BytesIO(data)).pages)
    assert words(data).count("Print at 100 %, never fit to page") == count
    assert collisions(runs(data)) == []
    box = PdfReader(BytesIO(data)).pages[0].mediabox
    size = (612.0, 792.0) if example == "harbour-house" else (210 / 25.4 * 72, 297 / 25.4 * 72)
    assert (float(box.width), float(box.height)) == pytest.approx(size, abs=0.01)


def test_tiles_show_all_of_a_drawing_and_share_their_crosses() -> None:
    tiling = Tiling(size=(16.0, 9.5), room=(7.5, 8.0), overlap=0.5)
    assert tiling.count == (3, 2)  # 7.5 + 7 + 7 = 21.5 > 16 > 14.5, 8 + 7.5 = 15.5 > 9.5
    assert [tile.name for tile in tiling.tiles] == ["A1", "B1", "C1", "A2", "B2", "C2"]
    seen: dict[tuple[float, float], int] = {}
    for tile in tiling.tiles:
        for x, y in tiling.crosses(tile):
            at = (tile.low[0] + x, tile.low[1] + y)
            seen[at] = seen.get(at, 0) + 1
    # 2 on each of the 4 strips between columns, and of the 3 between rows; each on both its sheets
    assert len(seen) == 2 * 4 + 2 * 3 and set(seen.values()) == {2}


def test_what_fits_one_sheet_is_one_sheet() -> None:
    assert Tiling(size=(7.5, 8.0), room=(7.5, 8.0), overlap=0.5).count == (1, 1)
    assert Tiling(size=(7.51, 8.0), room=(7.5, 8.0), overlap=0.5).count == (2, 1)
    assert Tiling(size=(14.5, 8.0), room=(7.5, 8.0), overlap=0.5).count == (2, 1)  # 2 × 7.5 less one overlap


def test_a_large_template_is_tiled_without_a_gap() -> None:
    """A stool of the hillside house is 230 mm wide: its edge goes on from one sheet to the next by the crosses."""
    job, kits = house("hillside-house")
    data = templates_data(kits["F1"], templates_of(kits["F1"], grid=job.shop.grid), job)
    tiled = [one for sheet in data["sheets"] for one in sheet["templates"] if one["tile"]]
    assert {sheet["tile"]["name"] for sheet in tiled} == {"A1", "A2"}
    for low, up in zip(tiled[::2], tiled[1::2], strict=True):
        assert up["tile"]["low"][1] + data["overlap"] == pytest.approx(low["tile"]["area"][1])


@pytest.mark.parametrize("mark", ["G7", "G8"])
def test_no_label_of_a_form_is_cut_in_two_by_an_edge_and_each_stands_on_some_sheet(mark: str) -> None:
    """The center line of the full round is named at the edge of its lowest sheet; half of the words stood there."""
    job, kits = house("gable-house")
    templates = templates_of(kits[mark], grid=job.shop.grid)
    data = templates_data(kits[mark], templates, job)
    tiled = [one for sheet in data["sheets"] for one in sheet["templates"] if one["tile"]]
    shown = {(one["title"], label["words"]) for one in tiled for label in one["labels"]}
    assert {(one.title, words) for one in templates for _, words in one.labels} <= shown
    for one in tiled:
        tile = one["tile"]
        tops = [tile["low"][1] + tile["area"][1] - label["at"][1] for label in one["labels"]]
        is_last = tile["name"].endswith(str(tile["down"]))
        assert not [top for top in tops if 0 < top < 0.2 and not is_last], tile["name"]


@pytest.mark.parametrize(("mark", "most"), [("A1", 23), ("B1", 24)])
def test_arches_are_tiled_along_their_strips(mark: str, most: int) -> None:
    """33 sheets each when every piece had full sheets of its own; where strips share sheets nothing leaves its room."""
    data = pdf("creamery", mark)
    assert len(PdfReader(BytesIO(data)).pages) <= most
    assert collisions(runs(data)) == []
    job, kits = house("creamery")
    found = templates_data(kits[mark], templates_of(kits[mark], grid=job.shop.grid), job)
    stacked = 0
    for sheet in found["sheets"]:
        tiled = [one for one in sheet["templates"] if one["tile"]]
        stacked += len(tiled) > 1
        for one in tiled:
            high = one["tile"]["area"][1]
            assert one["down"] + TITLE + high <= found["area"][1] + 1e-9
            assert len(one["tile"]["crosses"]) >= 2
            assert one["tile"]["down"] > 1 or high == pytest.approx(max(one["size"][1], 1.5))
        for upper, lower in pairwise(tiled):
            assert lower["down"] >= upper["down"] + TITLE + upper["tile"]["area"][1] + 0.2
    assert stacked or mark == "B1"


def test_mirror_images_share_a_template_and_it_says_which_way_it_lies() -> None:
    """Left and right of an arch: each piece is on one template, and its outline is that or, turned over, its mirror."""
    job, kits = house("creamery")
    arced = [one for one in templates_of(kits["B1"], grid=job.shop.grid) if one.title.endswith("its curves")]
    drawn = {mark: one for one in arced for mark in one.title.partition(":")[0].split(", ")}
    parts = [part for part in kits["B1"].parts if part.arcs and not part.is_laminated]
    assert {*drawn} == {part.mark for part in parts} and len(arced) < len(parts)
    for part in parts:
        template = drawn[part.mark]
        left, right = (pick(u for u, _ in part.curved_outline) for pick in (min, max))
        is_over = f"turned over for {part.mark}" in template.note
        own = [((right - u) if is_over else (u - left), v) for u, v in part.curved_outline]
        for x, y in own:
            assert min(math.dist((x, y), at) for at in template.cut[0]) < 1e-4, part.mark
        end = part.seat.ends[0].words
        assert f"left is the {end} end" in template.note or f"the {end} end of " in template.note


@pytest.mark.parametrize("mark", ["A1", "B1"])
def test_radii_are_told_on_the_shops_grid_on_every_paper(mark: str) -> None:
    """Cut sheet, template, note of the cut file and drawing: 291 mm on a grid of 1 mm, never 291.2 mm on one."""
    job, kits = house("creamery")
    kit, grid = kits[mark], job.shop.grid
    arced = [part for part in kit.parts if part.arcs]
    told = {part.mark: radii_in(" ".join(work_words(part, grid=grid))) for part in arced}
    assert any(grid.as_sawn(arc.radius) != pytest.approx(arc.radius, abs=1e-6) for part in arced for arc in part.arcs)
    for one in templates_of(kit, grid=grid):
        if one.title.endswith("its curves"):
            marks = one.title.partition(":")[0].split(", ")
            found = {*re.findall(r"\d[\d.]* mm", one.note.partition("radii ")[2].partition(DRAWN_EXACT)[0])}
            assert all(told[part] == found for part in marks) and DRAWN_EXACT in one.note
        elif "the form" in one.title:
            found = {*re.findall(r"\d[\d.]* mm", one.note.partition(DRAWN_EXACT)[0])}
            assert found and all("." not in size for size in found)
    for part in arced:
        for figure in part_figures(part, units=job.units, grid=grid):
            assert all("." not in radius for one in figure.words for radius in radii_in(one.text))
    sheets = draw(kit, job).sheets
    drawn = {text for sheet in sheets for text in re.findall(r"'R ([\d.]+)[ ']", repr(sheet))}
    opening = kit.placement.opening
    assert opening.shape
    window = outline_words(frame_path(opening), opening.shape.kind, job.units)  # as it is stated, and no board's
    assert {radius for radius in drawn if "." in radius} == {*re.findall(r"\d+\.\d+", window)} < drawn


def radii_in(text: str) -> set[str]:
    """Return every radius that is told in a text."""
    found = re.findall(r"(?:radius|radii,?(?: from the left)?) ((?:\d[\d.]* mm(?:, )?)+)", text)
    return {size for some in found for size in re.findall(r"\d[\d.]* mm", some)}


def test_small_templates_fill_the_first_sheet_that_has_room() -> None:
    assert first_fit([5.0, 6.0, 3.0, 4.0, 1.0], 9.0) == [[0, 2, 4], [1], [3]]
    assert first_fit([4.5, 4.5], 9.0) == [[0, 1]]
    assert first_fit([], 9.0) == []


def test_left_and_right_ends_are_mirrored_and_both_drawn() -> None:
    job, kits = house("harbour-house")
    start, finish = (one for one in templates_of(kits["W01"], grid=job.shop.grid) if one.title.startswith("W01-4"))
    wide = start.size[0]
    assert {(round(wide - x, 9), round(y, 9)) for x, y in start.cut[0]} == {
        (round(x, 9), round(y, 9)) for x, y in finish.cut[0]
    }
    assert "left end" in {*start.title.split(", ")} or "left end" in finish.title


def test_a_turned_template_is_not_mirrored() -> None:
    job, kits = house("hillside-house")
    (profile,) = (one for one in templates_of(kits["F1"], grid=job.shop.grid) if "its end" in one.title)
    around = [one.cut[0] for one in (profile, profile.turned)]

    def area(line: Sequence[tuple[float, float]]) -> float:
        return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(line)) / 2

    assert area(around[0]) == pytest.approx(area(around[1])) != 0
    assert profile.turned.size == (profile.size[1], profile.size[0])


def test_a_template_of_a_planned_depth_says_so_and_no_other() -> None:
    """W04 is measured inside and only planned outside: its stool may be cut, its sill not yet; of W01 neither."""
    job, kits = house("harbour-house")
    kinds = {part.mark: part.kind for part in kits["W04"].parts}
    told = {(kinds[one.title.split()[0]], one.is_planned) for one in templates_of(kits["W04"], grid=job.shop.grid)}
    assert told == {(PartKind.STOOL, False), (PartKind.EXTERIOR_SILL, True)}
    measured, planned = (
        PdfReader(BytesIO(pdf("harbour-house", mark))).pages[0].extract_text() for mark in ("W04", "W01")
    )
    assert PLANNED in planned and PLANNED not in measured


def test_an_opening_without_notches_has_none(tmp_path: Path) -> None:
    job, kits = house("harbour-house")
    plain = next(kit for kit in kits.values() if not templates_of(kit, grid=job.shop.grid))
    write_templates(plain, job, tmp_path / "t" / "x.pdf")
    assert not (tmp_path / "t").exists()


def test_each_slant_of_a_shape_is_drawn_once() -> None:
    """Round the octagon all ends are cut to half of 45°: on the jambs over 3/4 thick, on the casing over 3 1/2 wide."""
    kit = house("gable-house")[1]["G6"]
    jambs, casing = templates_of(kit, grid=FINE[Units.INCH])
    assert jambs.title == f"{', '.join(f'G6-{number}' for number in range(1, 9))}: extension jamb, 22.5° off square"
    assert casing.title.startswith("G6-9, G6-10") and casing.title.endswith("G6-16: casing, 22.5° off square")
    slope = math.tan(math.radians(22.5))
    # The face of a jamb, above, is the short side; of casing the outer edge, above, is the long one. Both go 2 in on.
    assert [point for point in jambs.cut[0]] == [
        pytest.approx(point)
        for point in ((2 + 0.75 * slope, 0.75), (0.75 * slope, 0.75), (0, 0), (2 + 0.75 * slope, 0))
    ]
    assert [point for point in casing.cut[0]] == [
        pytest.approx(point) for point in ((2 + 3.5 * slope, 3.5), (0, 3.5), (3.5 * slope, 0), (2 + 3.5 * slope, 0))
    ]


def test_slants_of_a_raked_head_are_half_of_each_turn_and_its_slope() -> None:
    """16 in 24: the head slopes by 33.69°, so its miters are (90 - 33.69) / 2 and (90 + 33.69) / 2, the others 45°.

    On the jambs the low corner is mitered and the high one butted to the slope.
    """
    titles = [one.title for one in templates_of(house("gable-house")[1]["G4"], grid=FINE[Units.INCH])]
    found = [title.split(": ")[1] for title in titles]
    assert found == [
        "extension jamb, 28.2° off square",
        "extension jamb, 33.7° off square",
        "casing, 28.2° off square",
        "casing, 61.8° off square",
        "casing, 45° off square",
    ]


def test_a_rectangle_needs_no_slant() -> None:
    assert templates_of(house("gable-house")[1]["G1"], grid=FINE[Units.INCH]) == ()


def test_a_notch_is_told_as_on_the_cut_sheet() -> None:
    """On a slope of 15 % it is 160.8 mm deep: the shop reads 161, on the template as on the sheet."""
    job, kits = house("hillside-house")
    sill = next(part for part in kits["F1"].parts if part.kind is PartKind.EXTERIOR_SILL)
    notes = [one.note for one in templates_of(kits["F1"], grid=job.shop.grid) if one.title.startswith(sill.mark)]
    assert "161 mm in from" in notes[0]
    assert any("161 mm" in line for line in work_words(sill, grid=job.shop.grid))


def test_a_template_that_is_turned_says_where_above_and_left_have_gone() -> None:
    """A quarter turn to the left: up goes left, left goes down."""
    up = Template(title="end", note="near edge at the left", size=(2.0, 3.0), cut=(((0.0, 0.0), (0.0, 3.0)),))
    assert up.turned.cut == (((3.0, 0.0), (0.0, 0.0)),)
    assert up.turned.note == f"near edge at the left; {TURNED}"


def test_a_template_of_several_parts_names_the_left_end_of_each() -> None:
    notes = [one.note for one in templates_of(house("gable-house")[1]["G7"], grid=FINE[Units.INCH])]
    assert any("left is the bottom end of G7-5, the left end of G7-6, the top end of G7-7" in note for note in notes)


def test_a_notched_end_says_which_long_edge_lies_above_and_a_slant_says_none() -> None:
    """The stool of the loft lies as on its drawing, face up, frame edge above; its horn goes out at the room edge."""
    job, kits = house("quarry-loft")
    ends = [one for one in templates_of(kits["L1"], grid=job.shop.grid) if "notch" in one.note]
    assert len(ends) == 2 and all("; room edge below, frame edge above;" in one.note for one in ends)
    for one in ends:
        out = 0.0 if "left end" in one.title else one.size[0]
        (line,) = one.cut
        horn = [v for u, v in line if abs(u - out) < 1e-6]
        # Finished depth 101 of 126: the horn is the 25 toward the room.
        assert [min(horn) * 25.4, max(horn) * 25.4] == pytest.approx([0.0, 25.0])
    job, kits = house("gable-house")
    others = [one for kit in kits.values() for one in templates_of(kit, grid=job.shop.grid) if "notch" not in one.note]
    assert others and not any("frame edge above" in one.note for one in others)


def test_every_template_is_told_to_who_cannot_see_it_under_a_heading_of_its_own() -> None:
    """Headings and figures of a tagged PDF (ISO 32000-1, 14.8.4): both ends of stool and sill, and the sill on edge."""
    told: list[tuple[str, str]] = []

    def walk(node: Any) -> None:
        node = node.get_object() if hasattr(node, "get_object") else node
        for one in node if isinstance(node, list) else [node]:
            if hasattr(one, "get_object") and (one := one.get_object()) is not None and hasattr(one, "get"):
                if one.get("/S") in ("/H2", "/Figure"):
                    told.append((one["/S"], str(one.get("/Alt", ""))))
                walk(one.get("/K", []))

    root: Any = PdfReader(BytesIO(pdf("harbour-house", "W01"))).trailer["/Root"]
    walk(root["/StructTreeRoot"]["/K"])
    figures = [words for kind, words in told if kind == "/Figure"]
    assert len(figures) == sum(kind == "/H2" for kind, _ in told) == 5
    assert figures[0].startswith("W01-4 stool, ")
    assert all(", at full scale. " in words for words in figures)


@pytest.mark.parametrize(
    ("example", "mark", "count", "left_out"),
    [("creamery", "A1", 5, {"A1", "B1", "B3", "C3"}), ("gable-house", "G7", 4, {"A1", "B3"})],
)
def test_a_tile_on_which_there_is_nothing_to_trace_is_not_printed(
    example: str, mark: str, count: int, left_out: set[str]
) -> None:
    """The foot of a form and its center line are straight and square to each other: they need no paper of their own."""
    job, kits = house(example)
    data = templates_data(kits[mark], templates_of(kits[mark], grid=job.shop.grid), job)
    tiles = [
        one for sheet in data["sheets"] for one in sheet["templates"] if one["tile"] and "the form" in one["title"]
    ]
    assert len(tiles) == count
    assert all(set(one["tile"]["blank"]) == left_out for one in tiles)
    assert "its foot and the center line, square to each other, are drawn on with a straightedge" in tiles[0]["note"]
    assert "There is nothing to trace on A1" in words(pdf(example, mark))


@pytest.mark.parametrize("mark", ["A1", "B1"])
def test_all_of_a_curve_is_on_the_tiles_that_are_printed(mark: str) -> None:
    """Every point to cut along but those of a straight foot is within what some printed tile shows."""
    job, kits = house("creamery")
    found = templates_of(kits[mark], grid=job.shop.grid)
    data = templates_data(kits[mark], found, job)
    shown: dict[str, list[Any]] = {}
    for one in (one for sheet in data["sheets"] for one in sheet["templates"] if one["tile"]):
        shown.setdefault(one["title"], []).append(one)
    assert shown
    for tiles in shown.values():
        ways = [one for one in found if one.title == tiles[0]["title"]]
        ways += [one.turned for one in ways]
        (template,) = (one for one in ways if one.size == tiles[0]["size"])
        for point in (point for line in template.cut for point in line):
            boxes = ((one["tile"]["low"], one["tile"]["area"]) for one in tiles)
            assert any(
                all(low - SAME <= at <= low + wide + SAME for at, low, wide in zip(point, lows, area, strict=True))
                for lows, area in boxes
            ), (template.title, point)
