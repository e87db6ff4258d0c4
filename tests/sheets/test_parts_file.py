"""``parts.json`` and ``parts.csv`` read back by json, jsonschema and csv."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from typing import Any

import hand_kits as hand
import hand_parts as boards
import jsonschema
import pytest
from said import SaidFinding

from jambs.findings import Severity, Subject
from jambs.length import Units, read_length
from jambs.outside.plan import PlannedOutside
from jambs.outside.register import make_register
from jambs.parts.board.part import Seat
from jambs.sheets.parts_file import (
    CSV_SIZES,
    csv_header,
    json_text,
    parts_schema,
    write_parts_csv,
    write_parts_json,
)
from jambs.sheets.record import job_record

KITS = [hand.make_kit(), hand.measured_kit(), hand.make_kit("W03", parts=[boards.make_part(1, strips=(3.0, 3.5))])]


OF_A_WALL = SaidFinding(subject=Subject.wall("main"), severity=Severity.CHECK, text="The wall has no membrane.")


def written(units: Units, folder: Path) -> Any:
    path = folder / "parts.json"
    job = hand.make_job(units=units)
    register = make_register(KITS, PlannedOutside(findings=(OF_A_WALL,)), job)
    write_parts_json(KITS, register, job, path)
    return json.loads(path.read_text(encoding="utf-8"))


def sizes(value: Any) -> list[dict[str, Any]]:
    """Return every size of a record that carries a value and a length's text."""
    if isinstance(value, list):
        return [size for one in value for size in sizes(one)]
    if not isinstance(value, dict):
        return []
    if set(value) == {"value", "text"} and not str(value["text"]).endswith("°"):
        return [value]
    return [size for one in value.values() for size in sizes(one)]


@pytest.mark.parametrize("units", Units)
def test_json_keeps_to_its_schema(units: Units, tmp_path: Path) -> None:
    validator = jsonschema.Draft202012Validator(parts_schema())
    validator.check_schema(parts_schema())
    assert [error.message for error in validator.iter_errors(written(units, tmp_path))] == []


def test_what_few_jobs_give_is_no_new_key_of_the_others(tmp_path: Path) -> None:
    """A sheet that was issued before there were arches is not another one now."""
    for opening in written(Units.INCH, tmp_path)["openings"]:
        assert "curved" not in json.dumps(opening["trim"])


def test_schema_refuses_what_is_not_described(tmp_path: Path) -> None:
    record = written(Units.INCH, tmp_path)
    record["openings"][0]["parts"][0]["lenght"] = 3
    del record["openings"][1]["planes"]["trim_plane"]
    messages = sorted(one.message for one in jsonschema.Draft202012Validator(parts_schema()).iter_errors(record))
    assert messages == [
        "'trim_plane' is a required property",
        "Additional properties are not allowed ('lenght' was unexpected)",
    ]


@pytest.mark.parametrize(("units", "half_step"), [(Units.INCH, 1 / 64), (Units.MM, 0.5)])
def test_text_and_number_are_one_size(units: Units, half_step: float, tmp_path: Path) -> None:
    """The printed text is the number, off by no more than half a step of the shop's grid: 1/32 in, 1 mm.

    A stated size may come in two units, its own first.
    """
    found = sizes(written(units, tmp_path))
    assert len(found) > 100
    per_inch = 1.0 if units is Units.INCH else 25.4
    for size in found:
        read = read_length(size["text"].partition(" (")[0], units=units) * per_inch
        assert read == pytest.approx(size["value"], abs=half_step + 1e-6)


def test_metric_numbers_are_millimeters(tmp_path: Path) -> None:
    """4 23/32 in = 4.71875 x 25.4 mm exactly (the inch is 25.4 mm by definition, 1959); the shop rips to 1 mm."""
    part = written(Units.MM, tmp_path)["openings"][0]["parts"][0]
    assert part["width"] == {"value": 119.85625, "text": "120 mm"}
    assert part["outline"][1] == [819.15, 0.0]


def test_json_reads_back_as_the_record() -> None:
    record = job_record(KITS, hand.make_job())
    assert json.loads(json_text(record)) == json.loads(json.dumps(record))


def rows(units: Units, folder: Path) -> list[dict[str, str]]:
    path = folder / "parts.csv"
    write_parts_csv(KITS, hand.make_job(units=units), path)
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8-sig"))))


@pytest.mark.parametrize("units", Units)
def test_csv_round_trip(units: Units, tmp_path: Path) -> None:
    parts = [part for opening in job_record(KITS, hand.make_job(units=units))["openings"] for part in opening["parts"]]
    found = rows(units, tmp_path)
    unit = "in" if units is Units.INCH else "mm"
    assert list(found[0]) == csv_header(units)
    for row, part in zip(found, parts, strict=True):
        for name in ("thickness", "width", "length"):
            assert float(row[f"{name} [{unit}]"]) == part[name]["value"]
            assert row[f"{name} text"] == part[name]["text"]
        assert (row["mark"], row["ends"]) == (part["mark"], part["ends"])
        assert row["work"] == "; ".join(part["work"])


def test_csv_header_names_its_units() -> None:
    """The columns other programs rely on, word for word; a new one goes to the end."""
    assert ", ".join(csv_header(Units.MM)) == (
        "opening, room, state, mark, part, position, where, stock, board, thickness [mm], thickness text, "
        "width [mm], width text, start_width [mm], start_width text, finish_width [mm], finish_width text, "
        "length [mm], length text, start end, finish end, ends, work, strips [mm]"
    )


def test_csv_names_both_widths_of_a_taper(tmp_path: Path) -> None:
    row = next(one for one in rows(Units.INCH, tmp_path) if one["mark"] == "W02-3")
    taper = [row[key] for key in ("start end", "start_width text", "finish end", "finish_width text")]
    assert taper == ["top", '4 27/32"', "bottom", '4 25/32"']
    assert row["state"] == "measured"


def test_csv_leaves_empty_what_a_part_has_not(tmp_path: Path) -> None:
    row = rows(Units.INCH, tmp_path)[0]
    assert {row[f"{name} text"] for name in CSV_SIZES if name.startswith(("start", "finish"))} == {""}
    assert row["state"] == "planned"


def test_csv_lists_strips(tmp_path: Path) -> None:
    assert rows(Units.INCH, tmp_path)[-1]["strips [in]"] == "3.0 + 3.5"


@pytest.mark.parametrize(
    ("along", "ends"),
    [
        ((0.0, 1.0, 0.0), ("bottom", "top")),
        ((0.0, -1.0, 0.0), ("top", "bottom")),
        ((1.0, 0.0, 0.0), ("left", "right")),
        ((-1.0, 0.0, 0.0), ("right", "left")),
    ],
)
def test_ends_are_named_as_seen_from_inside(along: tuple[float, float, float], ends: tuple[str, str]) -> None:
    seat = Seat(origin=along, along=along, across=along, through=along)
    assert tuple(end.words for end in seat.ends) == ends
