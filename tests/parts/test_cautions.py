"""The caution about foam and fire goes by what a layer is made of, never by letters in its name."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of, kit_of

from jambs.job.models.layers import MadeOf


def layers(one: Any) -> list[Any]:
    """A wall without foam but for one layer."""
    return [
        "gypsum board 1/2",
        {"material": "stud 2x6", "spacing": "16"},
        "plywood 1/2",
        one,
        {"material": "plywood 1/2", "role": "cover sheet"},
        "wood shingles",
    ]


def warns(one: Any) -> bool:
    kit = kit_of(walls__main__layers=layers(one))
    return any(text.startswith("Foam and fire") for text in kit.cautions)


INSULATION = {"role": "insulation", "thickness": "2"}


@pytest.mark.parametrize(
    ("name", "keys", "expected"),
    [
        ("EPS", {"thickness": "2"}, True),
        ("PIR board", INSULATION, True),
        ("closed-cell insulation", INSULATION, True),
        ("GPS graphite board", INSULATION, True),
        ("aerated board", INSULATION, True),  # unknown: the safe side, and the papers say that it was assumed
        ("aerated board", {**INSULATION, "made_of": "mineral"}, False),
        ("aerated board", {**INSULATION, "made_of": "foam plastic"}, True),
        ("Steps panel", {"role": "cover sheet", "thickness": "1"}, False),
        ("Steps panel", {"role": "cover sheet", "thickness": "1", "made_of": "foam plastic"}, True),
        ("polyester batts", INSULATION, False),
        ("polyethylene 6 mil", {}, False),
        ("wood-fibre board", {"thickness": "2"}, False),
    ],
)
def test_foam_is_told_by_what_it_is(name: str, keys: dict[str, str], expected: bool) -> None:
    assert warns({"material": name, **keys}) is expected


def test_foam_between_studs_counts() -> None:
    """Foam sprayed between the studs lies behind the same board toward the room."""
    filled = layers("plywood 1/2")
    filled[1] = {"material": "stud 2x6", "spacing": "16", "cavity": "closed-cell spray foam"}
    filled[2:4] = ["plywood 1/2"]
    assert any(text.startswith("Foam") for text in kit_of(walls__main__layers=filled).cautions)
    filled[1] = {"material": "stud 2x6", "spacing": "16", "cavity": "cellulose"}
    assert not any(text.startswith("Foam") for text in kit_of(walls__main__layers=filled).cautions)


def test_what_is_assumed_is_said_and_what_is_known_is_not() -> None:
    def told(one: Any) -> list[str]:
        job = job_of(changed(walls__main__layers=layers(one)))
        return [f"{one.what}: {one.value}" for one in (*job.assumed, *job.openings[0].assumed) if "made of" in one.what]

    assert told({"material": "aerated board", **INSULATION}) == ["what aerated board is made of: foam plastic"]
    assert told({"material": "aerated board", **INSULATION, "made_of": "fibre"}) == []
    assert told({"material": "EPS", "thickness": "2"}) == []
    assert told({"material": "drainage sheet", "role": "membrane", "thickness": "1/8"}) == []
    assert told({"material": "Steps panel", "role": "cover sheet", "thickness": "1"}) == []


def test_the_job_has_the_last_word() -> None:
    job = job_of(changed(walls__main__layers=layers({"material": "EPS", "thickness": "2", "made_of": "fibre"})))
    assert [one.made_of for one in job.openings[0].wall.layers][3] is MadeOf.FIBRE
