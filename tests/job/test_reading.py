"""A sound job file becomes a Job: names looked up, the nearest rule taken, what was assumed written down."""

from __future__ import annotations

import codecs
import datetime
from pathlib import Path

import pytest
from cases import changed, job_of
from houses import HOUSE, METRIC, faults_of, read_text, spoiled

from jambs.job import JobFaults, read_job
from jambs.job.models.fields import Size
from jambs.job.models.layers import Role
from jambs.job.models.openings import Opening
from jambs.job.starter import new_job_text
from jambs.length import Units


def opening(text: str, folder: Path, place: int = 1) -> Opening:
    return read_text(text, folder).openings[place]


def of_w02(line: str) -> str:
    """The house with a line added to, or changed in, opening W02."""
    key = line.split(":")[0]
    old = next((one for one in HOUSE[HOUSE.index("mark: W02") :].splitlines() if one.strip().startswith(f"{key}:")), "")
    head, tail = HOUSE.split("  - mark: W02")
    tail = tail.replace(f"{old}\n", "", 1) if old else tail
    return f"{head}  - mark: W02{tail}    {line}\n"


def test_a_job_is_read_whole(tmp_path: Path) -> None:
    job = read_text(HOUSE, tmp_path)
    first, second = job.openings
    assert (job.name, job.units, job.shop.paper) == ("Test house", Units.INCH, "letter")
    assert [board.words for board in job.boards] == ["1x6 poplar", "5/4 maple"]
    assert [(board.thickness, board.width) for board in job.boards] == [(0.75, 5.5), (1 + 1 / 16, 9.0)]
    assert first.frame == Size(width=35.5, height=47.5)
    assert [layer.thickness for layer in first.wall.layers] == [0.5, 5.5, 0.5, 2.0, 0.5]
    assert [layer.role for layer in first.wall.layers][-1] is Role.COVER
    assert first.measured is not None and first.measured.date == datetime.date(2026, 3, 20)
    assert (first.exterior_name, second.exterior_name) == ("plain", None)
    assert (first.interior_name, second.interior_name) == ("picture", "picture")


def test_the_cavity_is_as_thick_as_its_studs(tmp_path: Path) -> None:
    studs = opening(HOUSE, tmp_path, 0).wall.layers[1]
    assert studs.cavity is not None
    assert (studs.cavity.name, studs.cavity.thickness) == ("fiberglass batt", 5.5)
    assert (studs.spacing, studs.member_width) == (16.0, 1.5)


def test_measured_corners_are_the_ends_of_the_sides(tmp_path: Path) -> None:
    measured = opening(HOUSE, tmp_path, 0).measured
    assert measured is not None
    depths = measured.interior_depth
    assert depths is not None
    assert depths.head == (4 + 5 / 8, 4 + 11 / 16)
    assert depths.left == depths.head[:1] * 2
    assert depths.right == depths.head[1:] * 2


@pytest.mark.parametrize("value", ["0", "1", "1/2", "0.4"])
def test_a_share_of_nothing_is_a_rule_too(value: str, tmp_path: Path) -> None:
    rule = opening(spoiled(("{share: 1/2}", f"{{share: {value}}}")), tmp_path).position
    assert rule.rule == "share"


@pytest.mark.parametrize("rule", ["interior_depth: 0", "exterior_depth: 0", "equal_depths: yes", "choose: yes"])
def test_one_rule_is_enough(rule: str, tmp_path: Path) -> None:
    read = opening(spoiled(("{share: 1/2}", f"{{{rule}}}")), tmp_path).position
    assert read.rule == rule.split(":")[0]


@pytest.mark.parametrize(("word", "rule"), [("choose", "choose"), ("equal depths", "equal_depths")])
def test_a_rule_may_be_one_word(word: str, rule: str, tmp_path: Path) -> None:
    assert opening(spoiled(("{share: 1/2}", word)), tmp_path).position.rule == rule


def test_the_nearest_position_holds(tmp_path: Path) -> None:
    """The opening's own before its wall's before the job's."""
    walled = spoiled(("    layers: [gypsum board 5/8", "    position: {share: 1/4}\n    layers: [gypsum board 5/8"))
    own = spoiled(("    frame: 24 x 24\n", "    frame: 24 x 24\n    position: {share: 3/4}\n"), text=walled)
    first, second = read_text(walled, tmp_path).openings
    assert (first.position.share, second.position.share) == (0.5, 0.25)
    assert not second.position_is_own
    second = opening(own, tmp_path)
    assert (second.position.share, second.position_is_own) == (0.75, True)


def test_a_face_may_be_named_by_layer_or_by_role(tmp_path: Path) -> None:
    for face, name in (("Trim Plane", "trim plane"), ("Sheathing", "sheathing"), ('Plywood 5/8"', "plywood 5/8")):
        text = of_w02(f"position: {{flange_on: {face}}}")
        assert opening(text, tmp_path).position.flange_on == name


def test_an_opening_may_change_what_it_names(tmp_path: Path) -> None:
    text = of_w02("interior_trim: {like: picture, casing: {width: 2 1/2}, jamb: {stock: maple}}")
    first, second = read_text(text, tmp_path).openings
    assert second.interior_name == "picture (W02)"
    assert (second.interior.casing.width, first.interior.casing.width) == (2.5, 3.5)
    assert (second.interior.jamb.stock, second.interior.jamb.thickness) == ("maple", 0.75)


def test_like_may_be_left_out_when_there_is_one(tmp_path: Path) -> None:
    assert opening(of_w02("interior_trim: {casing_reveal: 1/4}"), tmp_path).interior.casing_reveal == 0.25


def test_none_takes_a_key_away(tmp_path: Path) -> None:
    text = of_w02("exterior_trim: {like: plain, sill: none}")
    found = opening(text, tmp_path).exterior
    assert found is not None and found.sill is None


def test_a_changed_wall_has_a_name_of_its_own(tmp_path: Path) -> None:
    wall = opening(of_w02("wall: {like: garage, layers: [stud 2x6, EPS 3]}"), tmp_path).wall
    assert wall.name == "garage (W02)"
    assert [layer.thickness for layer in wall.layers] == [5.5, 3.0]


def test_a_thickness_may_stand_behind_the_name(tmp_path: Path) -> None:
    text = spoiled(("{material: EPS, thickness: 2}", "EPS 2 1/2"))
    layer = opening(text, tmp_path, 0).wall.layers[3]
    assert (layer.name, layer.thickness) == ("EPS", 2.5)
    assert opening(METRIC, tmp_path, 0).wall.layers[3].thickness == pytest.approx(60 / 25.4, abs=1e-12)


def test_a_material_of_ones_own_needs_no_catalog(tmp_path: Path) -> None:
    text = spoiled(
        ("      - plywood 1/2\n", "      - {material: cork, role: insulation, thickness: 1, conductivity: 0.04}\n")
    )
    layer = opening(text, tmp_path, 0).wall.layers[2]
    assert (layer.name, layer.role, layer.conductivity, layer.source) == ("cork", Role.INSULATION, 0.04, "job file")


def test_permeance_follows_the_thickness(tmp_path: Path) -> None:
    """EPS of 2.5 perm in: 2 in let through half of what 1 in does."""
    assert opening(HOUSE, tmp_path, 0).wall.layers[3].permeance == 1.25


def test_the_rough_opening_is_assumed_where_it_is_not_given(tmp_path: Path) -> None:
    """24 and 2 x 1/4 shim space are 24 1/2, by hand."""
    first, second = read_text(HOUSE, tmp_path).openings
    assert second.rough_opening == Size(width=24.5, height=24.5)
    found = [one for one in second.assumed if one.what == "rough opening"]
    assert [one.value for one in found] == ['24 1/2" x 24 1/2"']
    assert found[0].why == "frame and the shop's shim space of 1/4\" on each side"
    assert not [one for one in first.assumed if one.what == "rough opening"]


def test_what_nobody_stated_is_assumed_in_so_many_words(tmp_path: Path) -> None:
    job = read_text(HOUSE, tmp_path)
    first, second = ([one.what for one in opening.assumed] for opening in job.openings)
    assert first == ["frame face outside", "edge of the sash"]
    assert second == ["spacing of stud 2x4", "rough opening"]
    limits = [one.what for one in job.assumed]
    assert "heaviest window without an engineer" in limits
    assert "farthest past the sheathing without an engineer" not in limits
    assert "escape opening" not in limits


def test_an_escape_opening_brings_its_limits(tmp_path: Path) -> None:
    """International Residential Code R310: 5.7 sq ft, 24 in high, 20 in wide, sill at most 44 in over the floor."""
    job = read_text(of_w02("escape: yes").replace("    sash: fixed", "    sash: slider"), tmp_path)
    (found,) = [one for one in job.assumed if one.what == "escape opening"]
    assert found.value == '5.7 sq ft, at least 20" wide and 24" high, sill at most 44" over the floor'


def test_the_thickness_of_a_cladding_is_assumed_or_given(tmp_path: Path) -> None:
    """The exterior sill is sawn to it, so it is never silent."""
    clad = "[gypsum board 5/8, stud 2x4, plywood 5/8{}]"
    for layer, expected in (
        (", wood shingles", ["thickness of wood shingles"]),
        (", {material: wood shingles, thickness: 3/4}", []),
        (", vertical boards", []),
    ):
        text = spoiled((clad.format(""), clad.format(layer)))
        assumed = opening(text, tmp_path).assumed
        assert [one.what for one in assumed if one.what.startswith("thickness")] == expected


def test_paper_follows_the_units(tmp_path: Path) -> None:
    assert read_text(METRIC, tmp_path).shop.paper == "A4"
    letter = spoiled(("  kerf: 3\n", "  kerf: 3\n  paper: letter\n"), text=METRIC)
    assert read_text(letter, tmp_path).shop.paper == "letter"


def test_text_that_looks_like_something_else_stays_text(tmp_path: Path) -> None:
    """YAML would make a date, a number, a truth and a sexagesimal of these."""
    for room in ("2026-03-02", "1e3", "no", "12:30", "0x10", "1_000"):
        assert opening(of_w02(f"room: {room}"), tmp_path).room == room


@pytest.mark.parametrize("units", list(Units))
def test_the_starter_reads_without_faults(units: Units, tmp_path: Path) -> None:
    job = read_text(new_job_text(units), tmp_path)
    assert job.units is units
    assert [opening.mark for opening in job.openings] == ["W01", "D01"]


@pytest.mark.parametrize("units", list(Units))
def test_what_the_starter_says_of_heat_can_be_uncommented(units: Units, tmp_path: Path) -> None:
    """The site, and in place of the framed layer the same one with all that the heat study takes from it."""
    lines = new_job_text(units).splitlines()
    first = lines.index("# site:")
    for at in range(first, first + 4):
        lines[at] = lines[at].removeprefix("# ")
    (known,) = (at for at, line in enumerate(lines) if line.startswith("      # - {material: stud"))
    lines[known - 2 : known + 1] = [lines[known].replace("# - ", "- ")]
    job = read_text("\n".join(lines), tmp_path)
    studs = next(layer for layer in job.openings[0].wall.layers if layer.cavity)
    assert job.site is not None
    assert (job.site.humidity_class, job.site.latitude_deg) == (2, 44.0)
    assert (studs.framing_share, studs.conductivity) == (0.15, 0.12)
    assert studs.cavity is not None and studs.cavity.conductivity == 0.038


def test_the_starter_leaves_its_measured_depths_to_be_uncommented(tmp_path: Path) -> None:
    text = new_job_text(Units.INCH)
    head, tail = text.split("    # measured:\n")
    job = read_text(f"{head}    measured:\n{tail.replace('    # ', '    ')}", tmp_path)
    assert job.openings[0].measured is not None


def test_a_byte_order_mark_is_no_fault(tmp_path: Path) -> None:
    (tmp_path / "job.yaml").write_bytes(codecs.BOM_UTF8 + HOUSE.encode())
    assert read_job(tmp_path).name == "Test house"


def test_the_folder_of_a_job_is_enough(tmp_path: Path) -> None:
    (tmp_path / "house.yml").write_text(HOUSE, encoding="utf-8")
    assert read_job(tmp_path).name == "Test house"
    (tmp_path / "job.yaml").write_text(METRIC, encoding="utf-8")
    assert read_job(tmp_path).name == "Metric test house"


def fault_of_file(path: Path) -> str:
    with pytest.raises(JobFaults) as caught:
        read_job(path)
    return str(caught.value)


def test_a_folder_of_several_jobs_names_them(tmp_path: Path) -> None:
    folder = tmp_path / "house"
    folder.mkdir()
    empty = fault_of_file(folder)
    assert empty == "house: no job file here; name the one to read, or call it job.yaml"
    for name in ("a.yaml", "b.yaml"):
        (folder / name).write_text(HOUSE, encoding="utf-8")
    several = "house: holds more than one job file: a.yaml, b.yaml; name the one to read, or call it job.yaml"
    assert fault_of_file(folder) == several


def test_files_that_are_no_text_or_no_mapping(tmp_path: Path) -> None:
    path = tmp_path / "job.yaml"
    path.write_bytes("job: Häuschen".encode("latin-1"))
    assert fault_of_file(path) == "job.yaml: is not UTF-8 text; save it as UTF-8"
    path.write_text("# nothing yet\n", encoding="utf-8")
    assert fault_of_file(path) == "job.yaml: holds no keys; write key: value lines, or start with `jambs new`"
    path.write_text("[" * 5000, encoding="utf-8")
    assert fault_of_file(path) == "job.yaml: YAML cannot read this: it is nested too deeply; correct it"
    path.unlink()
    gone = "job.yaml: cannot be opened (No such file or directory); check the path"
    assert fault_of_file(path) == gone


def test_faults_come_in_the_order_of_the_lines(tmp_path: Path) -> None:
    text = spoiled(("    frame: 24 x 24", "    frame: 24"), ("  kerf: 1/8", "  kerf: 9"), ("sash: fixed", "sash: fixt"))
    lines = [int(fault.split(":")[1]) for fault in faults_of(text, tmp_path)]
    assert lines == sorted(lines) and len(lines) == 3


def test_quoted_words_are_never_empty(tmp_path: Path) -> None:
    """Bare, ``~`` and ``null`` leave a value out; in quotes they are texts."""
    for word in ("~", "null"):
        assert opening(of_w02(f'room: "{word}"'), tmp_path).room == word
        assert faults_of(of_w02(f"room: {word}"), tmp_path) == [
            'job.yaml:83: openings[1] "W02": room: has no value; write one, or remove the line'
        ]


def test_a_fault_of_what_an_opening_is_like_is_told_once(tmp_path: Path) -> None:
    text = spoiled(
        ("    jamb_depth: 3\n", "    jamb_depth: three\n"),
        ("    window: fixed\n", "    window: {like: fixed, frame_face: wide}\n"),
    )
    assert [fault.split(": ", 1)[1].split(" is no")[0] for fault in faults_of(text, tmp_path)] == [
        "windows.fixed: jamb_depth: 'three'",
        "openings[1] \"W02\": window.frame_face: 'wide'",
    ]


def test_assumed_limits_speak_the_jobs_units(tmp_path: Path) -> None:
    """Round in millimeters; R310 as it is printed in them: 508, 610, 1118 mm and 0.53 m2 (IRC 2018)."""
    metric = spoiled(
        ("    frame: 890 x 1190\n", "    frame: 890 x 1190\n    escape: yes\n"),
        ("sash: fixed", "sash: slider"),
        text=METRIC,
    )
    values = {one.what: one.value for one in read_text(metric, tmp_path).assumed}
    assert values["heaviest window without an engineer"] == "70 kg"
    assert values["farthest past the sheathing without an engineer"] == "75 mm"
    assert values["escape opening"] == (
        "0.53 m², at least 508 mm wide and 610 mm high, sill at most 1118 mm over the floor"
    )


def test_an_escape_opening_has_to_open(tmp_path: Path) -> None:
    (found,) = faults_of(of_w02("escape: yes"), tmp_path)
    assert "escape: is yes and its window is fixed: nobody gets out; give it a window that opens, or write no" in found
    assert faults_of(of_w02("escape: no"), tmp_path) == []
    assert faults_of(of_w02("escape: yes").replace("    sash: fixed", "    sash: slider"), tmp_path) == []


@pytest.mark.parametrize(("line", "expected"), [("escape: yes", ["45 mm"]), ("escape: no", [])])
def test_a_meeting_rail_is_assumed_only_where_an_escape_rests_on_it(
    line: str, expected: list[str], tmp_path: Path
) -> None:
    old = "    frame: 890 x 1190\n"
    text = spoiled((old, f"{old}    {line}\n"), ("sash: fixed", "sash: double hung"), text=METRIC)
    (opening,) = read_text(text, tmp_path).openings
    assert [one.value for one in opening.assumed if one.what == "meeting rail"] == expected
    given = text.replace("sash: double hung", "sash: double hung, meeting_rail: 40")
    assert [one.what for one in read_text(given, tmp_path).openings[0].assumed if one.what == "meeting rail"] == []


@pytest.mark.parametrize(
    ("written", "lines"),
    [
        ("Long Lane 12", ("Long Lane 12",)),
        ("Long Lane 12\nSmall Town\n", ("Long Lane 12", "Small Town")),
        (["Long Lane 12", "Small Town"], ("Long Lane 12", "Small Town")),
        (None, ()),
    ],
)
def test_an_address_is_one_line_or_a_few(written: object, lines: tuple[str, ...]) -> None:
    assert job_of(changed(**({"address": written} if written else {}))).address == lines


def test_an_address_of_too_many_lines_is_refused() -> None:
    with pytest.raises(JobFaults, match="address: has 5 lines; write 1 to 4"):
        job_of(changed(address="a\nb\nc\nd\ne"))
