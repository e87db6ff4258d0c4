"""What is suggested: never a number or a size that nobody wrote, never another word for the one that stands there.

A suggestion gets obeyed. One that carries a size of its own ends at the saw, so there is none; facts of the trade that
the cases rest on (what a frame's depth is, how sheets and studs are called) are common practice, no source.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from houses import HOUSE, METRIC, faults_of, read_text, spoiled

from jambs.job.key_words import key_words, missing
from jambs.job.models.fields import Model
from jambs.job.models.job_file import models
from jambs.job.reading.faults import nearest
from jambs.job.reading.sentences import unknown_key
from jambs.length import MM_PER_INCH

MODELS = models()


def numbers(text: str) -> set[str]:
    return set(re.findall(r"\d+", text))


@pytest.mark.parametrize("model", MODELS, ids=lambda model: model.__name__)
def test_no_missing_key_is_filled_with_a_size(model: type[Model]) -> None:
    for key in model.model_fields:
        assert numbers(missing(model.__name__, key).replace("A4", "").replace("A3", "")) == set(), key


@pytest.mark.parametrize("model", MODELS, ids=lambda model: model.__name__)
def test_every_key_has_its_meaning_in_words_and_every_meaning_a_key(model: type[Model]) -> None:
    assert [key for named, key in key_words() if named == model.__name__] == list(model.model_fields)


def test_the_table_of_keys_speaks_of_no_other_models() -> None:
    assert {named for named, _ in key_words()} == {model.__name__ for model in MODELS}


def test_the_words_of_a_key_stand_on_one_line_of_the_list() -> None:
    assert [one.key for one in key_words().values() if len(one.words) > 90] == []


def windows_with(old: str, new: str, folder: Path) -> str:
    return "\n".join(faults_of(spoiled((old, new)), folder))


@pytest.mark.parametrize("key", ["window_depth", "wall_depth", "depth", "buck_depth"])
def test_another_depth_is_never_taken_for_the_jamb_depth(key: str, tmp_path: Path) -> None:
    """A window's whole depth is its jamb depth and its frame projection: one put for the other is wrong by the rest."""
    said = windows_with("    jamb_depth: 4 9/16\n", f"    {key}: 4 9/16\n", tmp_path)
    assert "did you mean" not in said
    assert f"{key}: unknown key; related keys are" in said
    assert (
        "jamb_depth (bearing face of the nailing flange → inside edge of the frame (see `jambs keys depths`))" in said
    )
    assert numbers(said.replace("job.yaml:26", "").replace("job.yaml:27", "")) == set()


@pytest.mark.parametrize(
    ("misreading", "meant"),
    [
        ("jam_depth", "jamb_depth"),
        ("jamb depth", "jamb_depth"),
        ("Jamb-Depth", "jamb_depth"),
        ("jambdepth", "jamb_depth"),
        ("depth_jamb", "jamb_depth"),
        ("frame_projecton", "frame_projection"),
        ("sash_setback", "sash_set_back"),
        ("flange_widht", "flange_width"),
    ],
)
def test_a_slip_of_the_pen_is_still_seen(misreading: str, meant: str) -> None:
    from jambs.job.models.windows import WindowType

    said = unknown_key(misreading, WindowType)
    assert said.startswith(f"unknown key; did you mean {meant} (") and said.endswith(")?")


@pytest.mark.parametrize(
    ("found", "names"),
    [
        ("W20", ["W01", "W02"]),
        ("2x5", ["2x4", "2x6"]),
        ("wall 3", ["wall 1", "wall 2"]),
        ("frame_depth", ["jamb_depth", "frame_face"]),
        ("frame_width", ["flange_width", "frame_face"]),
        ("casing_width", ["casing_reveal", "frame_reveal"]),
        ("door in", ["door out", "casement in"]),
        ("interior_depth", ["exterior_depth", "interior_reveal"]),
    ],
)
def test_another_number_or_another_word_is_no_slip(found: str, names: list[str]) -> None:
    assert nearest(found, names) == []


@pytest.mark.parametrize(("found", "name"), [("W2", "W02"), ("w02", "W02"), ("mian", "main"), ("fixt", "fixed")])
def test_a_name_with_a_slip_is_found(found: str, name: str) -> None:
    assert nearest(found, [name, "garage", "W11"]) == [name]


SHEET = "      - plywood 1/2\n      - {material: EPS"
METRIC_SHEET = "OSB 12 mm"


@pytest.mark.parametrize(
    "written", ["1/2 plywood", '1/2" plywood', "1/2 in. plywood", "plywood 1/2 in", "Plywood  1/2", "1/2-inch plywood"]
)
def test_a_sheet_is_read_with_its_thickness_first_or_last(written: str, tmp_path: Path) -> None:
    job = read_text(spoiled((SHEET, f"      - '{written}'\n      - {{material: EPS")), tmp_path)
    layer = job.openings[0].wall.layers[2]
    assert (layer.name, layer.thickness) == ("plywood 1/2", 0.5)


@pytest.mark.parametrize("written", ["EPS 2", '2" EPS', "2 EPS", "2 in EPS", "EPS 50.8 mm", "50.8 mm EPS"])
def test_foam_is_read_with_its_thickness_first_or_last(written: str, tmp_path: Path) -> None:
    job = read_text(spoiled(("- {material: EPS, thickness: 2}", f"- '{written}'")), tmp_path)
    layer = job.openings[0].wall.layers[3]
    assert layer.name == "EPS"
    assert layer.thickness == pytest.approx(2)


@pytest.mark.parametrize("written", ["12 mm OSB", "OSB 12 mm", "OSB 12", "12 OSB"])
def test_a_metric_sheet_is_read_with_its_thickness_first_or_last(written: str, tmp_path: Path) -> None:
    assert METRIC_SHEET in METRIC
    job = read_text(METRIC.replace(METRIC_SHEET, written, 1), tmp_path)
    layer = next(one for one in job.openings[0].wall.layers if one.name.startswith("OSB"))
    assert layer.name == "OSB 12 mm"
    assert layer.thickness == pytest.approx(12 / MM_PER_INCH, abs=1e-3)


@pytest.mark.parametrize(
    ("written", "exists"),
    [
        ("strapping 3/4", 'strapping 1x2 (3/4" thick)'),
        ("3/4 strapping", 'strapping 1x3 (3/4" thick)'),
        ("plywood 9/16", 'plywood 19/32 (19/32" thick)'),
        ("stud 2x5", 'stud 2x6 (5 1/2" thick)'),
    ],
)
def test_a_size_that_is_not_made_gets_those_that_are(written: str, exists: str, tmp_path: Path) -> None:
    said = windows_with(SHEET, f"      - {written}\n      - {{material: EPS", tmp_path)
    assert "did you mean" not in said
    assert "no such size is in it, these are: " in said
    assert exists in said
    assert " mm (" not in said and "45x" not in said


def test_a_material_nobody_knows_gets_no_sizes(tmp_path: Path) -> None:
    said = windows_with(SHEET, "      - cork 1/2\n      - {material: EPS", tmp_path)
    assert said.endswith("a material of your own needs role and thickness; `jambs catalog` lists all names")


@pytest.mark.parametrize("text", [HOUSE, METRIC])
def test_the_sound_houses_are_told_nothing(text: str, tmp_path: Path) -> None:
    assert faults_of(text, tmp_path) == []


@pytest.mark.parametrize("written", ["3/17", "4 9/15", "1/3", "5 1/10"])
def test_no_tape_has_seventeenths(written: str, tmp_path: Path) -> None:
    said = windows_with("    jamb_depth: 4 9/16", f"    jamb_depth: {written}", tmp_path)
    assert f"{written!r} is not a length (a tape is divided in halves, quarters, to sixty-fourths)" in said


@pytest.mark.parametrize(
    ("found", "model", "said"),
    [
        ("flange_width", "WallEntry", "stands with a window, under windows: "),
        ("sill_height", "WindowType", "stands with an opening, under openings: "),
        ("sill height", "JobFile", "stands with an opening, under openings: "),
        ("kerf", "JobFile", "stands under shop: "),
        ("year_built", "Shop", "stands at the top of the job file: "),
        ("sealant_joint", "InteriorTrim", "stands with a trim, under exterior_trim: "),
    ],
)
def test_a_key_that_stands_in_the_wrong_place_is_told_where_it_belongs(found: str, model: str, said: str) -> None:
    (owner,) = (one for one in MODELS if one.__name__ == model)
    assert unknown_key(found, owner).startswith(f"unknown key here; {found.replace(' ', '_')} {said}")


@pytest.mark.parametrize(
    ("found", "model"),
    [
        ("thickness", "WindowType"),  # of layers, of boards, of trim: which is meant is not known
        ("interior_depth", "OpeningEntry"),  # a position, or a reading
        ("frame_width", "WindowType"),  # of a reading alone, and no width of a frame as it is ordered
        ("jamb_depth", "WindowType"),  # its own
        ("sill_hight", "Shop"),  # a slip, and elsewhere: too far to guess
    ],
)
def test_a_name_of_several_places_is_sent_to_none(found: str, model: str) -> None:
    (owner,) = (one for one in MODELS if one.__name__ == model)
    assert "stands " not in unknown_key(found, owner)
