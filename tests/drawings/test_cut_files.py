"""Cut files read back, by two readers: outlines against the record, areas by hand, layers and units as they are named.

Layer names of the oldest release (letters, digits, $ - _, at most 31) and $INSUNITS 1 and 4: DXF reference.
"""

from __future__ import annotations

import math
import re
from dataclasses import replace
from functools import cache
from io import StringIO
from itertools import pairwise
from pathlib import Path
from typing import Any

import dxfgrabber
import pytest
from ezdxf.entities import dimstyle
from reading_cut_files import opened, outlines
from shapely.geometry import Point, Polygon, box

from jambs.drawings.cut_files.figure import has_shape, part_figures
from jambs.drawings.cut_files.layers import GRAIN, NOTE
from jambs.drawings.cut_files.lettering import LEAST, LETTER
from jambs.drawings.cut_files.write import Release, _frame, cut_file
from jambs.face import make_kits, read_job
from jambs.length import MM_PER_INCH
from jambs.parts.board.cuts import BoardSizes, Crosscut, Edge, End, Rip, compound_miter
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace, worked_face
from jambs.sheets.part_record import part_record
from jambs.sides import Side

EXAMPLES = Path(__file__).parents[2] / "examples"
SAME = 1e-6
"""Outlines nearer than this are one [in]."""
SHAPED = [
    ("harbour-house", "W01-4"),  # a stool with horns
    ("harbour-house", "W01-10"),  # a leg on a sloping sill, and its mate
    ("harbour-house", "W01-11"),
    ("harbour-house", "W01-12"),  # a sill: bevels, notches, a groove in the back
    ("harbour-house", "W01-14"),  # a casing, its foot beveled toward the back
    ("harbour-house", "W02-1"),  # rabbets at both ends of a tapered board
    ("harbour-house", "W04-4"),  # a stool that tapers
    ("hillside-house", "F2-1"),  # ends beveled at the face
    ("hillside-house", "F1-12"),
]
WORK = ("CUT", "OUTLINE", "POCKET", "BEVEL")


@cache
def house(example: str) -> tuple[Any, dict[str, Part]]:
    job = read_job(EXAMPLES / example)
    return job, {part.mark: part for kit in make_kits(job) for part in kit.parts}


@cache
def texts(example: str, mark: str, release: Release) -> dict[str, str]:
    """Return the cut files of a part by their names."""
    job, parts = house(example)
    return {
        one.name: cut_file(one, units=job.units, release=release) for one in part_figures(parts[mark], units=job.units)
    }


@pytest.mark.parametrize("release", Release)
@pytest.mark.parametrize(("example", "mark"), SHAPED)
def test_the_outline_is_that_of_the_record(example: str, mark: str, release: Release) -> None:
    job, parts = house(example)
    (found,) = outlines(opened(texts(example, mark, release)[mark]))["CUT"]
    told = part_record(parts[mark], grid=job.shop.grid)["outline"]
    assert len(found) == len(told)
    limit = SAME if job.units == "inch" else SAME * MM_PER_INCH
    assert all(abs(a - b) < limit for one, two in zip(found, told, strict=True) for a, b in zip(one, two, strict=True))


@pytest.mark.parametrize("release", Release)
@pytest.mark.parametrize(("example", "mark"), SHAPED)
def test_files_are_clean(example: str, mark: str, release: Release) -> None:
    for text in texts(example, mark, release).values():
        document = opened(text)
        audit = document.audit()
        assert not audit.errors and not audit.fixes
        every = [one for layer in outlines(document).values() for one in layer]
        assert all(
            len(set(one)) == len(one) and Polygon(one).is_valid and Polygon(one).exterior.is_ccw for one in every
        )
        for layer in outlines(document).values():
            assert all(Polygon(a).intersection(Polygon(b)).area < SAME for a in layer for b in layer if a is not b)
        lowest = [min(point[axis] for one in every for point in one) for axis in (0, 1)]
        assert lowest == [0.0, 0.0]


@pytest.mark.parametrize("release", Release)
@pytest.mark.parametrize(("example", "mark"), SHAPED)
def test_another_reader_finds_the_same_outlines(example: str, mark: str, release: Release) -> None:
    for text in texts(example, mark, release).values():
        other = dxfgrabber.read(StringIO(text))
        found: dict[str, list[list[tuple[float, float]]]] = {}
        for one in other.entities:
            if one.dxftype in ("LWPOLYLINE", "POLYLINE") and one.is_closed:
                found.setdefault(one.layer, []).append([(point[0], point[1]) for point in one.points])
        assert found == outlines(opened(text))


def area_of(example: str, mark: str, name: str, layer: str) -> float:
    found = outlines(opened(texts(example, mark, Release.R2010)[name]))[layer]
    return float(sum(Polygon(one).area for one in found))


def test_areas_by_hand() -> None:
    # stool W01-4: 53 1/8 x 6 3/16 less two horns' notches of 3 11/16 x 4 11/16
    stool = area_of("harbour-house", "W01-4", "W01-4", "CUT")
    assert stool == pytest.approx(53.125 * 6.1875 - 2 * 3.6875 * (4.6875 + 0.0625), abs=SAME)
    # head jamb W02-1: 33 3/4 long, 4 23/32 at the start, 4 25/32 at the finish; a rabbet of 3/4 at each end
    assert area_of("harbour-house", "W02-1", "W02-1", "CUT") == pytest.approx(33.75 * (4.71875 + 4.78125) / 2, abs=SAME)
    ends = 0.75 * (4.71875 + 4.78125)  # each rabbet as wide as the board there; the taper evens out
    assert area_of("harbour-house", "W02-1", "W02-1", "POCKET 3-8 DEEP") == pytest.approx(ends, abs=SAME)
    # drip kerf of sill W01-12: 1/4 wide, as long as the sill, 55 1/2
    assert area_of("harbour-house", "W01-12", "W01-12 back", "POCKET 1-4 DEEP") == pytest.approx(55.5 / 4, abs=SAME)
    # its front edge: 1 1/2 x tan 10 degrees = 0.26449 off the face, over the whole length
    assert area_of("harbour-house", "W01-12", "W01-12", "BEVEL 10") == pytest.approx(55.5 * 0.2644904712, abs=SAME)
    # jamb F2-1: 20 mm thick, mitered at both ends through the thickness: 20 mm x 191 mm off each end
    assert area_of("hillside-house", "F2-1", "F2-1", "BEVEL 45") == pytest.approx(2 * 20 * 191, abs=1e-5)


def test_a_foot_beveled_toward_the_back_is_met_in_the_back() -> None:
    (face, back) = texts("harbour-house", "W01-14", Release.R2010).values()
    assert {*outlines(opened(face))} == {"CUT"}
    assert {*outlines(opened(back))} == {"OUTLINE", "BEVEL 10"}


def test_the_back_is_the_face_turned_over() -> None:
    face, back = (opened(text) for text in texts("harbour-house", "W01-12", Release.R2010).values())
    wide = 4.326196918605678  # as the cut list says it
    turned = {(u, wide - v) for u, v in outlines(face)["CUT"][0]}
    assert {(round(u, 6), round(v, 6)) for u, v in turned} == {
        (round(u, 6), round(v, 6)) for u, v in outlines(back)["OUTLINE"][0]
    }
    # the drip kerf starts 1/2 from the front edge, which is the far one and lies near now
    assert min(v for _, v in outlines(back)["POCKET 1-4 DEEP"][0]) == 0.5


def test_mates_are_drawn_each_as_it_is() -> None:
    left, right = (
        outlines(opened(texts("harbour-house", mark, Release.R2010)[mark]))["CUT"][0] for mark in ("W01-10", "W01-11")
    )
    _, parts = house("harbour-house")
    assert (parts["W01-10"].side, parts["W01-11"].side) == (Side.LEFT, Side.RIGHT)
    long = max(u for u, _ in left)
    assert {(round(long - u, 9), round(v, 9)) for u, v in left} == {(round(u, 9), round(v, 9)) for u, v in right}
    assert {(round(u, 9), round(v, 9)) for u, v in left} != {(round(u, 9), round(v, 9)) for u, v in right}


@pytest.mark.parametrize(("example", "mark"), SHAPED)
def test_names_of_layers(example: str, mark: str) -> None:
    for text in texts(example, mark, Release.R12).values():
        names = [layer.dxf.name for layer in opened(text).layers]
        assert all(re.fullmatch(r"[A-Za-z0-9$_-]{1,31}", name) for name in names)
    for text in texts(example, mark, Release.R2010).values():
        names = [layer.dxf.name for layer in opened(text).layers]
        assert all(re.fullmatch(r"0|Defpoints|[A-Z0-9 .-]+", name) for name in names)
        used = {one.dxf.layer for one in opened(text).modelspace()}
        assert {*names} - {"0", "Defpoints"} == used  # none is empty
        assert {"GRAIN", "ENGRAVE", "NOTE"} <= used


@pytest.mark.parametrize(("example", "unit", "mark"), [("harbour-house", 1, "W01-4"), ("hillside-house", 4, "F2-1")])
def test_units_and_extents(example: str, unit: int, mark: str) -> None:
    job, parts = house(example)
    document = opened(texts(example, mark, Release.R2010)[mark])
    assert document.header["$INSUNITS"] == unit
    factor = 1.0 if unit == 1 else MM_PER_INCH
    size = (parts[mark].length * factor, parts[mark].width * factor)
    for release in Release:
        header = opened(texts(example, mark, release)[mark]).header
        assert header["$EXTMIN"][:2] == (0.0, 0.0)
        assert header["$EXTMAX"][:2] == pytest.approx(size, abs=1e-9)
        assert header["$LIMMAX"][:2] == pytest.approx(size, abs=1e-9)
        # The paper is the smaller one of the job, in its own units: letter 11 x 8 1/2 in, A4 297 x 210 mm (ISO 216).
        assert header["$PLIMMAX"][:2] == pytest.approx((11.0, 8.5) if unit == 1 else (297.0, 210.0))
    words = {"inch": "drawn in inches, 1:1", "mm": "drawn in millimeters, 1:1"}[job.units.value]
    assert all(words in texts(example, mark, release)[mark] for release in Release)


def test_a_mark_is_engraved_only_where_it_is_never_seen() -> None:
    face, back = (opened(text) for text in texts("harbour-house", "W01-12", Release.R2010).values())
    assert face.layers.get("ENGRAVE").is_off()
    assert back.layers.get("ENGRAVE").is_on()
    assert [one.dxf.text for one in face.modelspace().query('TEXT[layer=="ENGRAVE"]')] == ["W01-12"]
    job, parts = house("harbour-house")
    buck = next(part for part in parts.values() if part.kind is PartKind.LINER_BUCK)
    (figure,) = part_figures(buck, units=job.units)
    assert opened(cut_file(figure, units=job.units, release=Release.R2010)).layers.get("ENGRAVE").is_on()


def test_what_has_a_shape() -> None:
    _, parts = house("harbour-house")
    assert has_shape(parts["W01-4"])
    assert not has_shape(parts["W01-1"])  # a plain board
    flashing = next(part for part in parts.values() if part.kind is PartKind.HEAD_FLASHING)
    assert not has_shape(flashing)


def test_notes_come_first_in_plain_letters() -> None:
    job, parts = house("harbour-house")
    (figure,) = part_figures(parts["W01-4"], units=job.units, notes=["PLANNED – measure before cutting"])
    notes = [one.text for one in figure.words if one.layer.name == "NOTE"]
    assert notes[0] == "PLANNED - measure before cutting"
    assert all(note.isascii() for note in notes)


def test_words_on_a_board_sawn_hollow_stay_within_its_curves() -> None:
    job, parts = house("creamery")
    on_edge = [part for part in parts.values() if part.is_wood and part.is_sawn_on_edge and not part.is_laminated]
    assert on_edge
    for part in on_edge:
        (figure,) = part_figures(part, units=job.units, notes=["PLANNED - measure before cutting"])
        board = Polygon(part.curved_outline)
        for words in figure.words:
            (u, v), across = words.at, LETTER * words.height * len(words.text)
            is_above = words.layer is NOTE and v >= figure.size[1]
            assert words.height >= LEAST, words.text
            assert is_above or board.covers(box(u, v, u + across, v + words.height)), words.text
        arrows = [point for stroke in figure.strokes if stroke.layer is GRAIN for point in stroke.points]
        assert all(board.covers(Point(point)) for point in arrows), part.mark


@pytest.mark.parametrize("example", ["harbour-house", "creamery"])
def test_notes_are_read_at_the_machine(example: str) -> None:
    """On the board from 1/10 in on, else all above it, 1/5 in high, none on another and none on the board."""
    job, parts = house(example)
    above = 0
    for part in parts.values():
        if not part.is_wood or part.is_laminated:
            continue
        for figure in part_figures(part, units=job.units, grid=job.shop.grid):
            notes = [one for one in figure.words if one.layer is NOTE]
            levels = [one.at[1] for one in notes]
            if levels[-1] > figure.size[1]:
                above += 1
                assert {one.height for one in notes} == {0.2} and {one.at[0] for one in notes} == {0.0}
                assert levels == sorted(levels, reverse=True) and levels[-1] == pytest.approx(figure.size[1] + 0.2)
                assert figure.shown[1] == pytest.approx(levels[0] + 0.2)
            else:
                assert {one.height for one in notes} <= {notes[0].height} and notes[0].height >= 0.1, part.mark
                assert figure.shown[1] == figure.size[1]
            assert all(one - two >= 1.5 * notes[0].height for one, two in pairwise(levels))
    assert above


def test_the_grain_arrow_is_three_tenths_of_its_board_long_and_lies_in_the_middle() -> None:
    job, parts = house("creamery")
    flat = [part for part in parts.values() if part.is_wood and not part.is_laminated and not part.is_sawn_on_edge]
    for part in flat:
        for figure in part_figures(part, units=job.units):
            shaft, head = (one.points for one in figure.strokes if one.layer is GRAIN)
            assert math.dist(*shaft) == pytest.approx(0.3 * part.length), part.mark
            assert (shaft[0][0] + shaft[1][0]) / 2 == pytest.approx(part.length / 2)
            assert head[1] == shaft[1] and head[1][0] > head[0][0]  # from the start end to the finish end
            assert head[1][0] - head[0][0] <= 0.12 * 0.3 * part.length + 1e-9
            assert head[0][0] == head[2][0] and head[0][1] > shaft[1][1] > head[2][1]


def test_the_arrow_of_a_board_sawn_hollow_is_as_long_as_its_words_have_room() -> None:
    """A1-13 of the creamery: its curves leave the mark less than three tenths of it; the arrow goes no farther."""
    job, parts = house("creamery")
    for part in (one for one in parts.values() if one.is_wood and one.is_sawn_on_edge and not one.is_laminated):
        (figure,) = part_figures(part, units=job.units)
        (shaft, _) = (one.points for one in figure.strokes if one.layer is GRAIN)
        assert 0.02 * part.length < math.dist(*shaft) <= 0.3 * part.length + 1e-9
        (mark,) = (one for one in figure.words if one.layer is not NOTE)
        room = LETTER * mark.height * len(mark.text)
        assert math.dist(*shaft) == pytest.approx(0.3 * part.length) or math.dist(*shaft) >= room - 1e-9


def test_the_same_bytes_in_every_run() -> None:
    job, parts = house("harbour-house")
    other = cut_file(part_figures(parts["W02-1"], units=job.units)[0], units=job.units, release=Release.R2010)
    again = cut_file(part_figures(parts["W01-4"], units=job.units)[0], units=job.units, release=Release.R2010)
    assert other != again == texts("harbour-house", "W01-4", Release.R2010)["W01-4"]


def compound() -> Part:
    """A board of 30 x 4 x 1 whose finish is cut at a miter and a bevel at once, its long point on the face."""
    sizes = BoardSizes(length=30.0, width=4.0, thickness=1.0, start_width=4.0, finish_width=4.0)
    end = compound_miter(sizes, End.FINISH, miter_deg=30.0, bevel_deg=20.0, long_edge=Edge.FAR)
    _, parts = house("harbour-house")
    cuts = (Rip(width=4.0), Crosscut(length=30.0), end)
    return replace(parts["W01-4"], cuts=cuts, blank=replace(parts["W01-4"].blank, thickness=1.0))


def test_the_same_bytes_whether_or_not_a_drawing_was_written_before(monkeypatch: pytest.MonkeyPatch) -> None:
    """The library leaves suffixes of dimension styles out until it is told otherwise: group 3 (DXF reference)."""
    job, parts = house("harbour-house")
    (figure,) = part_figures(parts["W01-4"], units=job.units)
    known = [name for name in dimstyle.EXPORT_MAP_R2007 if name != "dimpost"]
    monkeypatch.setattr(dimstyle, "EXPORT_MAP_R2007", known)
    _frame.cache_clear()
    text = cut_file(figure, units=job.units, release=Release.R2010)
    assert re.search(r"AcDbDimStyleTableRecord\n +2\nStandard\n +70\n0\n +3\n", text)


def test_an_end_at_a_compound_angle() -> None:
    face, back = (worked_face(compound(), side) for side in BoardFace)
    # on the face the miter: 4 x tan 30 = 2.3094 back over the width; the bevel takes nothing off the face
    assert Polygon(face.outline).area == pytest.approx(30 * 4 - 4 * 2.3094010768 / 2, abs=SAME)
    assert face.bevels == ()
    # on the back a strip along the whole slant, tan 20 / cos 30 = 0.42027 along the grain by 4 across
    (bevel,) = back.bevels
    assert Polygon(bevel.outline).area == pytest.approx(4 * 0.4202749, abs=1e-5)
    assert bevel.angle_deg == pytest.approx(20.0)
    assert sorted(u for u, v in bevel.outline if v == 0.0) == pytest.approx([30.0 - 0.4202749, 30.0], abs=1e-5)
