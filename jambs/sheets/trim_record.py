"""The record of an opening's trim as the job states it."""

from __future__ import annotations

from collections.abc import Collection

from jambs.job.models.openings import Opening
from jambs.job.models.trim import Corner
from jambs.length import Units
from jambs.parts.board.kinds import Where
from jambs.values import Record, dump


def trim_record(opening: Opening, *, units: Units, corners: str = "", mitered: Collection[Where] = ()) -> Record:
    """Return interior and exterior trim by name, with the keys that the job gives.

    ``corners``: how the jambs of a shape meet, where the job's joint does not tell it. ``mitered``: where its casing
    has miters alone, whatever the job's corner is.
    """
    record: Record = {
        "interior": {"name": opening.interior_name, **_said(dump(opening.interior, units=units))},
        "exterior": opening.exterior
        and {"name": opening.exterior_name, **_outside_said(dump(opening.exterior, units=units))},
    }
    if corners and record["interior"].get("jamb"):
        record["interior"]["jamb"]["corners"] = corners
    for where in mitered:
        record[where.value]["casing"]["corners"] = Corner.MITER.value
    return record


LATER_KEYS = (
    "stack",
    "panels",
    "returns",
    "cladding_returns",
    "wall_edge",
    "tile_sill",
    "flare",
    "built_up",
    "profile",
    "mull_casing",
)
"""Of interior trim, in the file only where a job gives them."""


def _said(trim: Record) -> Record:
    """Return trim without the keys that a job does not give: those of few jobs, jamb and casing of returns."""
    without = {"jamb", "casing", "casing_reveal"} if trim["returns"] else {"casing", "casing_reveal"}
    left_out = without if trim["returns"] or trim["wall_edge"] else set()
    return {key: value for key, value in _stated(trim).items() if key not in left_out}


def _outside_said(trim: Record) -> Record:
    """Return exterior trim without the keys that a job does not give: of bent metal jamb, casing and wooden sill.

    Of returned cladding the jamb, and where its corner is mitered casing too.
    """
    left_out = {"jamb", "casing", "casing_reveal", "sill"} if trim["returns"] else set[str]()
    clad = trim["cladding_returns"]
    if clad:
        left_out = {"jamb"} if clad["corner_board"] else {"jamb", "casing", "casing_reveal"}
    return {key: value for key, value in _stated(trim).items() if key not in left_out}


def _stated(trim: Record) -> Record:
    """Return trim without the keys that a job does not give; of its jambs too: how none is bent or sawn."""
    jamb = {key: value for key, value in (trim["jamb"] or {}).items() if key != "curved" or value is not None}
    said = {**trim, "jamb": jamb or None}
    return {key: value for key, value in said.items() if key not in LATER_KEYS or value is not None}
