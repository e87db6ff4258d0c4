"""A window as its maker's sheet has it, entries for several openings, ``like:``, and positions in plain words.

How makers write their sheets (whole frame depth, set-back of the flange, overlap of the sash, tilt and turn) is common
practice, no source.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from houses import HOUSE, METRIC, faults_of, read_text, spoiled
from test_schema import as_json, validator

from jambs.job import Job
from jambs.job.models.windows import Sash, WindowType

FIXED = "    jamb_depth: 3\n    frame_projection: 1\n"
CASEMENT = "    jamb_depth: 4 9/16\n    frame_projection: 1 1/4\n"


def job_with(*edits: tuple[str, str], folder: Path, text: str = HOUSE) -> Job:
    return read_text(spoiled(*edits, text=text), folder)


def window_with(*edits: tuple[str, str], folder: Path) -> WindowType:
    return job_with(*edits, folder=folder).openings[1].window


@pytest.mark.parametrize(
    "written",
    [
        "frame_depth: 4\n    frame_projection: 1",
        "frame_depth: 4\n    flange_set_back: 1",
        "jamb_depth: 3\n    flange_set_back: 1",
        "frame_depth: 4\n    jamb_depth: 3",
        "frame_depth: 101.6 mm\n    flange_set_back: 1",
        "frame_depth: 4\n    jamb_depth: 3\n    frame_projection: 1\n    flange_set_back: 1",
    ],
)
def test_any_two_of_the_depths_give_the_rest(written: str, tmp_path: Path) -> None:
    """By hand: 4 in all, 1 in front of the flange, 3 behind it."""
    window = window_with((FIXED, f"    {written}\n"), folder=tmp_path)
    assert (window.jamb_depth, window.frame_projection) == (3, 1)


def test_a_metric_frame_is_taken_apart_in_millimeters(tmp_path: Path) -> None:
    """By hand: 115 mm in all less 35 mm is 80 mm."""
    assert "jamb_depth: 80, frame_projection: 35" in METRIC
    edit = ("jamb_depth: 80, frame_projection: 35", "frame_depth: 115, flange_set_back: 35")
    same = [read_text(text, tmp_path).openings[0].window for text in (METRIC, spoiled(edit, text=METRIC))]
    assert same[0].jamb_depth == pytest.approx(80 / 25.4)
    assert same[1].jamb_depth == pytest.approx(80 / 25.4)
    assert same[1].frame_projection == same[0].frame_projection


def test_a_frame_depth_that_cannot_be_read_is_told_once(tmp_path: Path) -> None:
    said = faults_of(spoiled((FIXED, "    frame_depth: 4,5\n    flange_set_back: 1\n")), tmp_path)
    assert len(said) == 1
    assert said[0].startswith("job.yaml:37: windows.fixed: frame_depth: '4,5' is not a length")


@pytest.mark.parametrize("written", ["tilt and turn", "tilt-turn", "tilt turn", "Tilt-and-Turn"])
def test_tilt_and_turn_is_a_sash_of_its_own(written: str, tmp_path: Path) -> None:
    window = window_with(("sash: fixed", f"sash: {written}"), folder=tmp_path)
    assert window.sash is Sash.TILT_AND_TURN
    assert (window.sash.swings, window.sash.outward, window.sash.is_side_hung) == (True, False, True)


def test_the_overlap_says_where_the_edge_of_the_sash_is(tmp_path: Path) -> None:
    """By hand: a face of 2 less an overlap of 1/2 is 1 1/2 to the sash's edge."""
    window = window_with(("sash: fixed", "sash: fixed\n    sash_overlap: 1/2"), folder=tmp_path)
    assert window.sash_edge(window.frame_face.left) == 1.5


def test_without_overlap_the_sash_ends_at_the_frame(tmp_path: Path) -> None:
    window = window_with(folder=tmp_path)
    assert window.sash_edge(window.frame_face.left) == 2


def test_what_the_sheet_does_not_say_is_assumed_and_said_so(tmp_path: Path) -> None:
    casement = "    flange_width: 1 1/4\n    sash: casement out\n    sash_thickness: 1 3/4\n    sash_set_back: 1/4\n"
    opening = job_with((casement, "    sash: casement out\n"), folder=tmp_path).openings[0]
    assert opening.unstated == ("flange_width", "sash_thickness", "sash_set_back")
    assumed = {one.what: one.value for one in opening.assumed}
    assert assumed["flange width"] == '1 1/4"'
    assert assumed["sash thickness"] == '1 3/4"'
    assert assumed["sash set back"] == '0"'
    assert assumed["edge of the sash"] == "at the inner edge of the frame"


def test_what_the_sheet_says_is_not_assumed(tmp_path: Path) -> None:
    overlap = ("sash_set_back: 1/4", "sash_set_back: 1/4\n    sash_overlap: 1/2")
    opening = job_with(overlap, folder=tmp_path).openings[0]
    assert opening.unstated == ()
    assert [one.what for one in opening.assumed] == ["frame face outside"]


def test_a_fixed_window_without_a_flange_needs_neither(tmp_path: Path) -> None:
    opening = job_with(folder=tmp_path).openings[1]
    assert opening.unstated == ()
    assert [one.what for one in opening.assumed if "sash" in one.what or "flange" in one.what] == []


LIKE_WINDOW = ("  fixed:\n" + FIXED, "  fixed:\n    like: casement\n    frame_depth: 4\n    flange_set_back: 1\n")


def test_a_window_may_be_like_another(tmp_path: Path) -> None:
    window = window_with(LIKE_WINDOW, folder=tmp_path)
    assert (window.jamb_depth, window.frame_projection) == (3, 1)
    assert window.glass is not None and window.glass.panes == 2  # the casement's
    assert window.sash is Sash.FIXED  # its own


def test_a_trim_may_be_like_another_that_is_like_a_third(tmp_path: Path) -> None:
    """The order in the file does not matter; a mapping is laid over key by key."""
    chain = (
        "  wide:\n    like: deep\n    casing: {width: 5}\n  deep:\n    like: picture\n    frame_reveal: 0\n  picture:\n"
    )
    job = job_with(
        ("  picture:\n", chain), ("    frame: 24 x 24", "    frame: 24 x 24\n    interior_trim: wide"),
        ("    frame: 35 1/2", "    interior_trim: picture\n    frame: 35 1/2"), folder=tmp_path,
    )  # fmt: skip
    first, second = (opening.interior for opening in job.openings)
    assert (second.casing.width, second.casing.thickness, second.frame_reveal) == (5, 0.75, 0)
    assert (first.casing.width, first.frame_reveal) == (3.5, 0.125)


def test_an_opening_may_be_like_a_window_that_is_like_another(tmp_path: Path) -> None:
    own = ("    window: fixed", "    window: {like: fixed, frame_face: 1}")
    window = window_with(LIKE_WINDOW, own, folder=tmp_path)
    assert (window.jamb_depth, window.frame_face.left) == (3, 1)
    assert window.glass is not None


def test_a_fault_of_the_first_is_not_told_of_those_that_are_like_it(tmp_path: Path) -> None:
    said = faults_of(spoiled(LIKE_WINDOW, ("panes: 2", "panes: two")), tmp_path)
    assert [line.split(":")[1] for line in said] == ["35"]


@pytest.mark.parametrize(
    ("written", "marks"),
    [
        ("L1..L3", ["L1", "L2", "L3"]),
        ("L08..L10", ["L08", "L09", "L10"]),
        ("L1 … L2", ["L1", "L2"]),
        ("L1 to L2", ["L1", "L2"]),
        ("[L1, B7]", ["L1", "B7"]),
        ("L1..L1", ["L1"]),
    ],
)
def test_one_entry_makes_an_opening_for_each_mark(written: str, marks: list[str], tmp_path: Path) -> None:
    job = job_with(("mark: W02", f"mark: {written}"), folder=tmp_path)
    assert [one.mark for one in job.openings] == ["W01", *marks]
    assert {(one.frame, one.room) for one in job.openings[1:]} == {(job.openings[1].frame, "Bath")}


def test_a_row_of_a_schedule_makes_several_openings_too(tmp_path: Path) -> None:
    rows = "mark,room,wall,window,frame\nL1..L3,Loft,garage,fixed,24 x 24\n"
    (tmp_path / "windows.csv").write_text(rows, encoding="utf-8")
    job = job_with(("openings:\n", "schedule: windows.csv\nopenings:\n"), folder=tmp_path)
    assert [one.mark for one in job.openings] == ["W01", "W02", "L1", "L2", "L3"]


def test_a_mark_with_a_dash_and_no_range_is_one_mark(tmp_path: Path) -> None:
    job = job_with(("mark: W02", "mark: N-12"), folder=tmp_path)
    assert job.openings[1].mark == "N-12"


def test_a_mark_that_a_range_has_too_is_told(tmp_path: Path) -> None:
    said = faults_of(spoiled(("mark: W02", "mark: W01..W03")), tmp_path)
    assert said == [
        "job.yaml:78: openings[1] \"W01\": mark: 'W01' is given to two openings, first at job.yaml:66; "
        "give each its own mark"
    ]


RULE = "position: {share: 1/2}"


@pytest.mark.parametrize(
    ("written", "face"),
    [
        ("on the sheathing", "sheathing"),
        ("flange on the trim plane", "trim plane"),
        ("sheathing", "sheathing"),
        ("plywood 1/2", "plywood 1/2"),
        ("1/2 plywood", "plywood 1/2"),
        ("on the plywood", "plywood 1/2"),
        ("on the gypsum board", "gypsum board 1/2"),
        ("{flange_on: 1/2 plywood}", "plywood 1/2"),
        ("expanded polystyrene", "EPS"),
        ("on the insulation", "insulation"),
    ],
)
def test_a_position_in_plain_words_is_the_face_the_flange_lies_on(written: str, face: str, tmp_path: Path) -> None:
    wall = ("      - {material: plywood 1/2, role: outer sheathing}\n", "      - strapping 1x3\n")
    garage = ("    wall: garage", "    wall: main")
    opening = job_with(wall, garage, (RULE, f"position: {written}"), folder=tmp_path).openings[0]
    assert (opening.position.rule, opening.position.flange_on) == ("flange_on", face)


@pytest.mark.parametrize("written", ["on the plywoo", "on the ply", "on the board"])
def test_a_part_of_a_name_is_no_face(written: str, tmp_path: Path) -> None:
    assert "is not a rule, and no face of wall" in faults_of(spoiled((RULE, f"position: {written}")), tmp_path)[0]


def test_a_material_of_two_layers_of_unlike_size_is_no_face(tmp_path: Path) -> None:
    wall = (
        "      - {material: plywood 1/2, role: outer sheathing}\n",
        "      - {material: plywood 3/4, role: outer sheathing}\n",
    )
    job = spoiled(wall, ("    wall: garage", "    wall: main"), (RULE, "position: on the plywood"))
    assert any("is not a rule, and no face of wall main" in said for said in faults_of(job, tmp_path))


@pytest.mark.parametrize(
    ("written", "rule"),
    [("equal depths", "equal_depths"), ("Choose", "choose"), ("'share: 1/2'", "share"), ("share 0.4", "share")],
)
def test_a_rule_in_plain_words_stays_a_rule(written: str, rule: str, tmp_path: Path) -> None:
    assert job_with((RULE, f"position: {written}"), folder=tmp_path).openings[0].position.rule == rule


@pytest.mark.parametrize("edit", [LIKE_WINDOW, ("    jamb_depth: 3\n", "    frame_depth: 4\n"),
                                  (FIXED, "    jamb_depth: 3\n    flange_set_back: 1\n"),
                                  ("sash: fixed", "sash: tilt and turn"), ("mark: W02", "mark: [L1, L2]"),
                                  ("position: {share: 1/2}", "position: on the sheathing"),
                                  ("exterior_trim: none", "exterior_trim: none\n    head_with: reveal of W01"),
                                 ])  # fmt: skip
def test_an_editor_takes_a_makers_sheet(edit: tuple[str, str]) -> None:
    assert [one.message for one in validator().iter_errors(as_json(spoiled(edit), yaml.BaseLoader))] == []


@pytest.mark.parametrize("edit", [("    jamb_depth: 3\n", ""), ("    frame_projection: 1\n", "")])
def test_an_editor_misses_a_depth(edit: tuple[str, str]) -> None:
    assert list(validator().iter_errors(as_json(spoiled(edit), yaml.BaseLoader)))
