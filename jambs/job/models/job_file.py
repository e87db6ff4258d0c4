"""The whole job file as one model: for its keys, and for the schema that editors check it by."""

from __future__ import annotations

from typing import Any

from pydantic import Field

from jambs.job.models.layers import WallEntry
from jambs.job.models.openings import JobEntry, OpeningEntry
from jambs.job.models.outside import OutsideEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.shop import Limits, Shop
from jambs.job.models.trim import ExteriorTrim, InteriorTrim
from jambs.job.models.windows import WindowType


class JobFile(OutsideEntry, JobEntry):
    """A job file. Layers inside → outside; left and right as seen from inside; lengths as the trade writes them."""

    shop: Shop
    limits: Limits = Limits()
    walls: dict[str, WallEntry]
    windows: dict[str, WindowType]
    interior_trim: dict[str, InteriorTrim]
    exterior_trim: dict[str, ExteriorTrim] = Field(default_factory=dict)
    position: PositionRule | None = None
    openings: tuple[OpeningEntry, ...] = ()


def schema() -> dict[str, Any]:
    """Return the JSON Schema of the job file, for editors that complete and check YAML by one."""
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **JobFile.model_json_schema()}
