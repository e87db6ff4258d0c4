"""Falls that were considered, also where nothing was found: by the limits of R312.2 (IRC 2018)."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of
from gangs import ganged_kit, unit

from jambs.place.falls import Fall, fall_of, falls_words
from jambs.place.glass import FALL_DROP, FALL_SILL
from jambs.place.solve import place_windows

FACE = 2.5
"""Bottom of the frame to the clear opening [in]."""


def fall(**keys: Any) -> Fall:
    sash = keys.pop("sash", "awning")
    own = {f"openings__0__{key}": value for key, value in keys.items()}
    job = job_of(changed(windows__fixed__sash=sash, **own))
    return fall_of(place_windows(job)[0].opening)


@pytest.mark.parametrize(
    ("keys", "found"),
    [
        ({"sash": "fixed", "sill_height": "12"}, Fall.FIXED),
        ({"sill_height": None}, Fall.NO_HEIGHT),
        ({"sill_height": f"{FALL_SILL - FACE}"}, Fall.HIGH),
        ({"sill_height": "21"}, Fall.NO_DROP),
        ({"sill_height": "21", "drop_outside": f"{FALL_DROP - FACE}"}, Fall.LOW_OUTSIDE),
        ({"sill_height": "21", "drop_outside": f"{FALL_DROP - FACE + 1}"}, Fall.FALL),
    ],
)
def test_what_was_considered_goes_by_sash_height_and_drop(keys: dict[str, Any], found: Fall) -> None:
    assert fall(**keys) is found


def test_an_order_says_it_of_every_opening_and_of_units_once() -> None:
    opening = place_windows(job_of(changed()))[0].opening
    assert falls_words([opening]) == "W1: fixed, nothing opens"
    pair = ganged_kit(openings__0__units=[unit("30 x 48"), unit("30 x 48")]).placement.opening
    assert falls_words([pair]).count("W1") == 1
