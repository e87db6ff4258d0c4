"""A job that goes from inches to millimeters or back: a board that is cut stays as large as it is."""

from __future__ import annotations

import copy
import re
from typing import Any

import pytest
from cases import BASE, job_of, strips

from jambs.app.chain import make_kits
from jambs.app.old_labels import now_of
from jambs.issued.compare import OpeningChanges, compare_openings, verdict
from jambs.issued.other_units import in_units
from jambs.issued.reasons import StatedChanged, UnitsChanged
from jambs.issued.verdict_reasons import Recut, RecutWhy, StillGood
from jambs.sheets.record import job_record

Opening = dict[str, Any]
NUMBER = r"(?:\d+ )?\d+(?:/\d+)?"
TOLERANCE = {"inch": 1 / 32, "mm": 1.0}
GRIDS = {"inch": "1/32 in", "mm": "1 mm"}


def said_in_inches(data: Any) -> Any:
    """The base job with *in* behind each length, so that it means the same whatever its units are."""
    if isinstance(data, dict):
        return {key: one if key == "nominal" else said_in_inches(one) for key, one in data.items()}
    if isinstance(data, list):
        return [said_in_inches(one) for one in data]
    if isinstance(data, str) and re.fullmatch(f"{NUMBER}(?: x {NUMBER})?", data):
        return " x ".join(f"{one} in" for one in data.split(" x "))
    return data


def opening_in(units: str, *, casing: str = "3 1/2 in") -> Opening:
    data = said_in_inches(copy.deepcopy(BASE)) | {"units": units}
    data["shop"]["grid"] = GRIDS[units]
    data["position"] = {"exterior_depth": "1 1/2 in"}
    data["interior_trim"]["inside"]["casing"]["width"] = casing
    data["windows"]["fixed"]["weight"] = "60 lb"
    job = job_of(data)
    return job_record(strips(make_kits(job)), job)["openings"][0]  # type: ignore[no-any-return]


def test_an_issue_that_comes_back_in_inches_is_held_to_inches_whatever_the_job_is_in_now() -> None:
    """The millimeter that a metric shop is off, not an inch."""
    data = said_in_inches(copy.deepcopy(BASE)) | {"units": "mm", "position": {"exterior_depth": "1 1/2 in"}}
    data["shop"]["grid"] = "1 mm"
    now = now_of({}, {"units": "inch", "openings": []}, {}, job_of(data))
    assert now.units == "inch"
    assert now.tolerance == pytest.approx(1 / 25.4, abs=1e-4)


def changes(then: str, now: str, *, casing: str = "3 1/2 in") -> OpeningChanges:
    old, new = in_units(opening_in(then), then, now), opening_in(now, casing=casing)
    return compare_openings(old, new, tolerance=TOLERANCE[now])


@pytest.mark.parametrize(("then", "now"), [("inch", "mm"), ("mm", "inch")])
def test_boards_cut_in_other_units_are_still_good(then: str, now: str) -> None:
    """No board is more than the millimeter off that the shop's grid rounds."""
    old, new = in_units(opening_in(then), then, now), opening_in(now)
    pairs = list(zip(old["parts"], new["parts"], strict=True))
    assert len(pairs) > 10
    for one, other in pairs:
        told = verdict(one, other, tolerance=TOLERANCE[now])
        assert isinstance(told, StillGood) or told.why is not RecutWhy.THICKNESS, (one["mark"], told)
    assert verdict(pairs[4][0], pairs[4][1], tolerance=TOLERANCE[now]) == StillGood()


@pytest.mark.parametrize(("then", "now"), [("inch", "mm"), ("mm", "inch")])
def test_the_units_are_why_and_nothing_that_stayed_is_told(then: str, now: str) -> None:
    found = changes(then, now)
    assert found.why[0] == UnitsChanged(was=then)
    assert not any(isinstance(one, StatedChanged) for one in found.why)
    told = {one.what for one in found.changes}
    assert not told & {"frame", "rough opening", "wall, layers", "interior trim, casing width", "window, jamb depth"}


def test_what_changed_with_the_units_is_told_beside_them() -> None:
    found = changes("inch", "mm", casing="70 mm")
    assert found.why == (UnitsChanged(was="inch"), StatedChanged(key="trim"))
    rows = {one.what: (one.old, one.new) for one in found.changes}
    assert rows["interior trim, casing width"] == ('3 1/2"', "70 mm")
    narrower = changes("inch", "mm", casing="100 mm")
    recut = [one for one in narrower.changes if isinstance(one.verdict, Recut) and "casing" in one.what]
    assert recut and all(one.verdict == Recut(why=RecutWhy.NARROW) for one in recut if "width" in one.what)


def test_what_was_printed_stays_as_it_was_printed() -> None:
    old = in_units(opening_in("inch"), "inch", "mm")
    casing = next(part for part in old["parts"] if part["name"] == "casing")
    assert (casing["width"]["value"], casing["width"]["text"]) == (pytest.approx(88.9), '3 1/2"')
    assert max(point[0] for point in casing["outline"]) == pytest.approx(casing["length"]["value"])
    assert old["planes"]["flange_plane"]["value"] > 200
    assert in_units(opening_in("mm"), "mm", "mm") == opening_in("mm")
