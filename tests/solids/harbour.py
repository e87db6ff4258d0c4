"""The harbour house in three dimensions, made once for all tests of this room; without the kernel they are skipped."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from jambs.job import Job, read_job
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids import availability
from jambs.solids.model import KitSolids, model_kit

HARBOUR_HOUSE = Path(__file__).parents[2] / "examples" / "harbour-house"

if missing := availability():
    pytest.skip(missing.code, allow_module_level=True)


@cache
def harbour_job() -> Job:
    return read_job(HARBOUR_HOUSE)


@cache
def harbour_kits() -> dict[str, Kit]:
    return {kit.mark: kit for kit in (make_kit(one, harbour_job()) for one in place_windows(harbour_job()))}


@cache
def harbour_solids(mark: str) -> KitSolids:
    return model_kit(harbour_kits()[mark], harbour_job())
