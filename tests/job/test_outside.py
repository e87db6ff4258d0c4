"""The sections of a job file about the outside: what may be written, and what is wrong."""

from __future__ import annotations

import jsonschema
import pytest
import yaml
from pydantic import ValidationError

from jambs.job.models.outside import Air, CladdingKind, Fixed, OutsideEntry, Sawn
from jambs.length import Units

WRITTEN = """
elevations:
  north:
    start_line: -8
    eave: 9'-0
    width: 32'
    faces: north
    stories: [{floor: 9'-1, openings: [W11, W12]}]
    cladding: {kind: shingles, length: 18, coursing: single, least_exposure: 5, wanted_exposure: 6 1/2}
  south:
    start_line: -4
    eave: 100
    cladding: {kind: boards, widths: [7 1/4, 5 1/2], least_lap: 1, greatest_lap: 1 1/2, line_tolerance: 1/16}
flashing: {fall: 10 %, drip_out: 6 mm, hem: 3/8, end_dam: 1, driving_pressure: 250}
fasteners:
  strapping: {fastener: No. 10 wood screw, penetration: 1, spacing: 12, lengths: [6, 7], cladding_weight: 15 kg/m2}
  outer sheathing: {fastener: long wood screw, penetration: 1 1/2, spacing: 16, rows: 2}
climate:
  shop: 60 F, 50 %
  inside_winter: {temperature: 20 C, humidity: 30 %}
  inside_summer: 75 F, 60 %
  outside_winter: -5 C, 85 %
  outside_summer: 20 C, 75 %
woods:
  poplar: {species: Yellow-poplar, sawn: flat}
sealant_movement: 25
"""


def read(text: str, units: Units = Units.INCH) -> OutsideEntry:
    """Read as the job file is read: every value a text."""
    return OutsideEntry.model_validate(yaml.load(text, yaml.BaseLoader), context={"units": units})


def test_what_may_be_written() -> None:
    found = read(WRITTEN)
    north, south = found.elevations["north"], found.elevations["south"]
    assert (north.start_line, north.eave, north.width, north.faces) == (-8, 108, 384, 0)
    assert north.stories[0].openings == ("W11", "W12")
    assert south.cladding is not None
    assert south.cladding.kind is CladdingKind.BOARDS and south.cladding.widths == (7.25, 5.5)
    assert set(found.fasteners) == {Fixed.STRAPPING, Fixed.COVER}
    assert found.fasteners[Fixed.STRAPPING].cladding_weight == pytest.approx(15 * 2.20462 / 10.7639, rel=1e-5)
    assert found.climate is not None and found.climate.outside_winter.temperature == pytest.approx(23, abs=1e-9)
    assert found.woods["poplar"].sawn is Sawn.FLAT


def test_an_editor_accepts_it_too() -> None:
    jsonschema.validate(yaml.safe_load(WRITTEN), OutsideEntry.model_json_schema())


def test_all_of_it_may_be_left_out() -> None:
    assert read("{}") == OutsideEntry()


def test_a_metric_job() -> None:
    text = "elevations: {a: {start_line: -200, eave: 2600, cladding: {kind: boards, widths: [145], least_lap: 20}}}"
    entry = read(text, Units.MM).elevations["a"]
    assert (entry.start_line * 25.4, entry.eave * 25.4) == pytest.approx((-200, 2600), abs=0.05)


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("eave: 9'-0", "eave: -9", "eave is not above start_line"),
        ("shop: 60 F, 50 %", "shop: 60, 50 %", "is not a temperature; write 68 F or 20 C"),
        (
            "shop: 60 F, 50 %",
            "shop: 60 F",
            "is not a temperature with a humidity; write temperature and relative humidity",
        ),
        ("shop: 60 F, 50 %", "shop: 60 F, 100 %", "is not a relative humidity; write 0 % to 99 %"),
        ("shop: 60 F, 50 %", "shop: 260 F, 50 %", "write a temperature from -60 F to 200 F"),
        ("15 kg/m2", "15", "is not a weight of a surface; write 3 psf or 15 kg/m2"),
        ("length: 18, ", "", "shingles need length and least_exposure"),
        ("sawn: flat", "sawn: rift", "Input should be 'flat' or 'quarter'"),
        ("end_dam: 1,", "end_dams: 1,", "Extra inputs are not permitted"),
    ],
)
def test_what_is_wrong(old: str, new: str, message: str) -> None:
    assert old in WRITTEN
    with pytest.raises(ValidationError, match=message):
        read(WRITTEN.replace(old, new, 1))


def test_air_in_one_text_or_two_keys() -> None:
    one = Air.model_validate("20 C, 45 %")
    assert one == Air.model_validate({"temperature": "68 F", "humidity": "45 %"})
