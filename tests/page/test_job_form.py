"""The job as fields: every value of the file, its meaning, and the command line's own sentence beside what is wrong."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pages import READING, OpenPage, asked_now, open_page
from starlette.testclient import TestClient

from jambs.job import JobFaults, read_job
from jambs.job.starter import new_job_text
from jambs.length import Units
from jambs.page.keys import KeyRole
from jambs.screen.desk import Desk
from jambs.screen.form_keys import key_tables
from jambs.screen.job_edits import next_mark
from jambs.screen.job_form import form_record
from jambs.screen.spoken_keys import spoken


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


def fields(record: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Yield all fields of a form."""
    yield from record.get("top", ())
    for one in (*record.get("sections", ()), *record.get("groups", ())):
        yield from one.get("fields", ())
        yield from fields({"groups": one.get("groups", ())})


def field(record: dict[str, Any], *path: str | int) -> dict[str, Any]:
    return next(one for one in fields(record) if one["path"] == list(path))


def change(client: TestClient, **asked: Any) -> dict[str, Any]:
    answer: dict[str, Any] = client.post("/job/change", json=asked_now(client, asked)).json()
    return answer


def test_a_complaint_stands_beside_its_field_in_the_words_of_check(opened: OpenPage) -> None:
    client, path = opened.client(), ["windows", "fixed", "jamb_depth"]
    assert field(client.get("/job/form").json(), *path)["wrong"] == []
    record = change(client, act="set", path=path, value="3 1/5")
    opened.file.write_text(
        opened.file.read_text(encoding="utf-8").replace("jamb_depth: 3 1/4", "jamb_depth: 3 1/5"), encoding="utf-8"
    )
    with pytest.raises(JobFaults) as told:
        read_job(opened.file)
    assert field(record, *path)["wrong"] == [fault.sentence for fault in told.value.faults]
    assert [one["wrong"] for one in fields(record) if one["path"] != path and one["wrong"]] == []
    assert record["wrong"] == []


def test_what_no_field_is_about_is_told_above(opened: OpenPage) -> None:
    client = opened.client()
    record = change(client, act="remove", path=["position"])
    assert len(record["wrong"]) == 1
    assert "position is missing" in record["wrong"][0]


@pytest.mark.parametrize("units", list(Units))
def test_every_value_of_the_starter_job_has_a_meaning(units: Units, tmp_path: Path) -> None:
    desk = Desk(file=tmp_path / "new" / "job.yaml", target=tmp_path / "papers", begin=new_job_text(units))
    record = form_record(desk)
    assert record["is_new"]
    assert record["wrong"] == []
    bare = [one["path"] for one in fields(record) if not one["words"] and not isinstance(one["path"][-1], int)]
    assert [path for path in bare if path[-1] != "like"] == []
    assert not (tmp_path / "new").exists()


def test_layers_are_moved_added_and_removed(opened: OpenPage) -> None:
    client, layers = opened.client(), ["walls", "wall", "layers"]
    before = opened.file.read_text(encoding="utf-8")
    names = [layer["name"] for layer in client.get("/job/form").json()["walls"]["wall"]]
    record = change(client, act="insert", path=layers, at=2, value="housewrap")
    assert [layer["name"] for layer in record["walls"]["wall"]] == [*names[:2], "housewrap", *names[2:]]
    record = change(client, act="move", path=[*layers, 2], to=3)
    assert [layer["name"] for layer in record["walls"]["wall"]] == [*names[:3], "housewrap", *names[3:]]
    record = change(client, act="remove", path=[*layers, 3])
    assert [layer["name"] for layer in record["walls"]["wall"]] == names
    assert opened.file.read_text(encoding="utf-8") == before


def test_an_opening_is_copied_under_the_next_mark(opened: OpenPage) -> None:
    client = opened.client()
    record = change(client, act="copy", path=["openings", 0])
    assert [field(record, "openings", place, "mark")["value"] for place in (0, 1)] == ["W1", "W2"]
    assert "W2" in client.get("/").text


def test_a_window_is_copied_under_another_name(opened: OpenPage) -> None:
    record = change(opened.client(), act="copy", path=["windows", "fixed"], name="wide")
    assert field(record, "windows", "wide", "jamb_depth")["value"] == "3 1/4"


def test_a_copy_that_nobody_named_has_the_next_free_name(opened: OpenPage) -> None:
    client = opened.client()
    for path in (["windows", "fixed"], ["windows", "fixed"], ["windows", "fixed 2"]):
        record = change(client, act="copy", path=path)
    names = {one["path"][1] for one in fields(record) if one["path"][0] == "windows"}
    assert names == {"fixed", "fixed 2", "fixed 3", "fixed 4"}


def test_a_copied_opening_has_a_mark_that_no_row_of_the_schedule_has_and_no_place_yet(tmp_path: Path) -> None:
    client = open_page(tmp_path, "harbour-house").client()  # W01 to W05 in the job file, W06 to W14 in its schedule
    record = change(client, act="copy", path=["openings", 0])
    assert field(record, "openings", 1, "mark")["value"] == "W15"
    keys = [one["path"][2] for one in fields(record) if one["path"][:2] == ["openings", 1]]
    assert "from_left" not in keys and "sill_height" in keys
    assert record["wrong"] == []


def test_a_copy_of_several_openings_is_one_after_them(opened: OpenPage) -> None:
    client = opened.client()
    change(client, act="set", path=["openings", 0, "mark"], value="W1..W3")
    assert field(change(client, act="copy", path=["openings", 0]), "openings", 1, "mark")["value"] == "W4"


def test_units_take_over_what_was_said_of_the_one_window(opened: OpenPage) -> None:
    client = opened.client()
    path: list[str | int] = ["openings", 0]
    change(client, act="add", path=path, under=["window"], value="fixed")
    change(client, act="add", path=path, under=["units", 0, "frame"], value="20 x 36")
    record = change(client, act="copy", path=[*path, "units", 0])
    said = {key: field(record, *path, "units", 1, key)["value"] for key in ("window", "frame")}
    assert said == {"window": "fixed", "frame": "20 x 36"}
    assert not {"window", "frame"} & {one["path"][2] for one in fields(record) if one["path"][:2] == path}
    assert not {"window", "frame"} & set(more_of(record, *path))  # each unit says them


def test_what_takes_words_alone_offers_them(opened: OpenPage) -> None:
    """A key whose meaning lists its words, one that takes yes or no, one that takes what it likes."""
    offered = {key["key"]: key["choices"] for key in key_tables()["JambEntry"]}
    assert offered["joint"] == ["head over legs", "legs through", "rabbet", "miter"]
    outside = {key["key"]: key["choices"] for key in key_tables()["ExteriorJambEntry"]}
    assert outside["curved"] == ["sawn segments", "flat segments"]  # nothing outside is bent
    assert set(offered["curved"]) == {"bent laminations", "bent in one", "sawn segments", "flat segments"}
    offered = {key["key"]: key["choices"] for key in key_tables()["OpeningEntry"]}
    assert (offered["escape"], offered["hinge"], offered["frame"]) == (["yes", "no"], ["left", "right"], [])


def test_a_complaint_calls_a_key_as_its_field_is_called(opened: OpenPage) -> None:
    client = opened.client()
    change(client, act="add", path=["openings", 0], under=["shape"], value="full round")
    record = change(client, act="add", path=["openings", 0], under=["rough_opening"], value="25 x 37")
    wrong = [sentence for one in fields(record) for sentence in one["wrong"]]
    assert any("the shop's “shim space” larger" in sentence for sentence in wrong)
    assert not any("_" in sentence for sentence in wrong)


def test_only_a_key_is_called_otherwise() -> None:
    assert spoken("from_left is missing; 'from_left' in from_left.csv, my_wall") == (
        "“from left” is missing; 'from_left' in from_left.csv, my_wall"
    )


@pytest.mark.parametrize(
    ("mark", "marks", "new"),
    [("W1", ["W1"], "W2"), ("W09", ["W09", "W10"], "W11"), ("Bath", ["Bath"], "Bath-2"), ("L3", ["L3"], "L4")],
)
def test_the_next_free_mark(mark: str, marks: list[str], new: str) -> None:
    assert next_mark(mark, marks) == new


@pytest.mark.parametrize(
    "asked",
    [
        {},
        {"act": "set", "path": [], "value": "1"},
        {"act": "set", "path": "windows", "value": "1"},
        {"act": "set", "path": ["windows", "none", "jamb_depth"], "value": "1"},
        {"act": "set", "path": ["windows", "fixed", "jamb_depth"], "value": {"a": "b"}},
        {"act": "set", "path": ["windows", "fixed", "jamb_depth"], "value": "1\n2: 3"},
        {"act": "set", "path": ["windows", "fixed", "jamb_depth"], "value": "1" * 500},
        {"act": "move", "path": ["walls", "wall", "layers", 0], "to": 99},
        {"act": "move", "path": ["walls", "wall", "layers", True], "to": 1},
        {"act": "insert", "path": ["walls", "wall", "layers"], "at": -1, "value": "housewrap"},
        {"act": "copy", "path": ["openings", 7]},
        {"act": "remove", "path": ["openings", 0]},
        {"act": "write", "path": ["job"], "value": "x"},
        {"act": "set", "path": [None], "value": "x"},
    ],
)
def test_what_is_no_edit_changes_nothing(asked: dict[str, Any], opened: OpenPage) -> None:
    client = opened.client()
    answer = client.post("/job/change", json=asked_now(client, asked))
    assert answer.status_code == 409
    assert answer.json()["said"]
    assert client.get("/draft").json()["lines"] == []
    assert opened.reported == []


def test_two_tabs_work_on_one_draft(opened: OpenPage) -> None:
    one, two = opened.client(), opened.client()
    change(one, act="set", path=["openings", 0, "room"], value="Loft")
    change(two, act="set", path=["openings", 0, "frame"], value="24 x 40")
    assert two.post("/draft/save", json={}).status_code == 200
    saved = opened.file.read_text(encoding="utf-8")
    assert "room: Loft" in saved and "frame: 24 x 40" in saved


def test_only_the_lines_that_changed_change(opened: OpenPage) -> None:
    client = opened.client()
    before = opened.file.read_text(encoding="utf-8").splitlines()
    change(client, act="set", path=["shop", "proud"], value="1/32")
    client.post("/draft/save", json={})
    after = opened.file.read_text(encoding="utf-8").splitlines()
    assert [(old, new) for old, new in zip(before, after, strict=True) if old != new] == [
        ("  proud: 1/16", "  proud: 1/32")
    ]


def test_each_trim_is_seen_as_at_the_first_opening_that_has_it(opened: OpenPage) -> None:
    trims = opened.client().get("/job/form").json()["trims"]
    assert list(trims["interior_trim"]) == ["plain"]
    marks = {one["mark"] for one in trims["interior_trim"]["plain"]["shapes"] if one["kind"] == "interior"}
    assert marks == {f"W1-{number}" for number in range(1, 9)}  # four jambs, four casings
    assert trims["exterior_trim"] == {}


def more_of(record: dict[str, Any], *path: str | int) -> set[str]:
    """Return the keys that may be added at a path."""

    def groups(one: dict[str, Any]) -> Iterator[dict[str, Any]]:
        for group in (*one.get("sections", ()), *one.get("groups", ())):
            yield group
            yield from groups(group)

    return {key["key"] for group in groups(record) if group.get("path") == list(path) for key in group["more"]}


@pytest.mark.parametrize(
    ("asked", "written"),
    [
        ({"path": [], "under": ["limits", "overhang"], "value": "3"}, "limits: {overhang: 3}"),
        ({"path": [], "under": ["elevations", "north", "width"], "value": "20'"}, "elevations: {north: {width: 20'}}"),
        ({"path": ["openings", 0], "under": ["shape"], "value": "octagon"}, "shape: octagon"),
        ({"path": ["openings", 0], "under": ["shape", "kind"], "value": "raked"}, "shape: {kind: raked}"),
        ({"path": ["openings", 0], "under": ["units", 0, "window"], "value": "fixed"},
         "units: [{frame: 24 x 36, window: fixed}]"),
        ({"path": ["openings", 0], "under": ["transoms", 0, 0, "window"], "value": "a"}, "transoms: [[{window: a}]]"),
        ({"path": ["walls", "wall", "layers", 0], "under": ["thickness"], "value": "5/8"},
         "{material: gypsum board 1/2, thickness: 5/8}"),
    ],
)  # fmt: skip
def test_keys_are_added_with_what_stands_under_them(asked: dict[str, Any], written: str, opened: OpenPage) -> None:
    client = opened.client()
    record = change(client, act="add", **asked)
    assert "said" not in record
    lines = [line["text"] for group in client.get("/draft").json()["lines"] for line in group if line["kind"] == "new"]
    assert len(lines) == 1 and written in lines[0]
    assert asked["under"][0] not in more_of(record, *asked["path"])


def test_what_was_added_under_a_key_goes_on_from_there(opened: OpenPage) -> None:
    client, path = opened.client(), ["openings", 0]
    change(client, act="add", path=path, under=["shape", "kind"], value="raked")
    record = change(client, act="add", path=[*path, "shape"], under=["left"], value="30")
    assert field(record, "openings", 0, "shape", "left")["value"] == "30"
    assert "right" in more_of(record, "openings", 0, "shape")
    record = change(client, act="remove", path=[*path, "shape"])
    assert record["wrong"] == [] and "shape" in more_of(record, "openings", 0)


def test_an_opening_chooses_among_the_names_of_the_job(opened: OpenPage) -> None:
    client = opened.client()
    record = change(client, act="add", path=["openings", 0], under=["window"], value="fixed")
    assert field(record, "openings", 0, "window")["choices"] == ["", "fixed"]
    record = change(client, act="copy", path=["windows", "fixed"], name="wide")
    assert field(record, "openings", 0, "window")["choices"] == ["", "fixed", "wide"]
    assert "" not in field(record, "windows", "fixed", "sash")["choices"]


def test_every_part_of_the_job_file_has_its_table_and_every_step_leads_on() -> None:
    tables = key_tables()
    assert set(tables["JobFile"][0]) == {
        "key",
        "words",
        "picture",
        "choices",
        "is_required",
        "of",
        "steps",
        "takes_text",
    }
    under = {key["of"] for keys in tables.values() for key in keys if key["of"]}
    assert under <= set(tables)
    steps = {key["key"]: key["steps"] for key in (*tables["OpeningEntry"], *tables["JobFile"]) if key["of"]}
    assert [steps[key] for key in ("shape", "units", "transoms", "elevations")] == [[], [0], [0, 0], [""]]


def test_of_two_keys_added_in_a_row_the_second_stands_beside_the_first(opened: OpenPage) -> None:
    client = opened.client()
    for key, value in (("pane_thickness", "1/8"), ("panes", "2"), ("panes", "3")):
        record = change(client, act="add", path=["windows", "fixed"], under=["glass", key], value=value)
        assert "said" not in record
    assert field(record, "windows", "fixed", "glass", "panes")["value"] == "3"
    assert field(record, "windows", "fixed", "glass", "pane_thickness")["value"] == "1/8"


def test_an_opening_that_a_telephone_measured_is_renamed_and_measured_on(opened: OpenPage) -> None:
    client, telephone = opened.client(), opened.client(KeyRole.TELEPHONE)
    assert telephone.post("/telephone/reading", json=READING).status_code == 200
    record = change(client, act="set", path=["openings", 0, "mark"], value="W9")
    assert record["wrong"] == [] and not any(one["wrong"] for one in record["sections"])
    late = {**READING, "id": "b" * 32, "place": 2}
    assert telephone.post("/telephone/reading", json=late).status_code == 200  # W1 until that is saved
    assert client.post("/draft/save", json={}).status_code == 409
    assert client.post("/draft/onto", json={}).status_code == 200
    assert client.post("/draft/save", json={}).status_code == 200
    answer = telephone.post("/telephone/reading", json={**late, "id": "c" * 32, "mark": "W9", "place": 3})
    assert [answer.json()["answer"]["read"][place] for place in "123"] == ["3 3/8"] * 3
    assert "W1," not in opened.file.with_name("measures.csv").read_text(encoding="utf-8")
    assert opened.reported == []
