"""Which metal a bent sheet is of, and how it conducts heat: a table, its sources in it."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.job.models.metal_returns import MetalReturnsEntry, SheetMetal
from jambs.job.reading.catalog import one_spelling


@dataclass(frozen=True, slots=True, kw_only=True)
class Metal:
    """A metal of the table: conductivity [W/(m K)], the names that sheets of it are bought by, the source."""

    kind: SheetMetal
    aliases: tuple[str, ...]
    conductivity: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnMetal:
    """What returns are bent of; ``is_assumed``: neither the job says it nor the name of the sheet."""

    metal: Metal
    is_assumed: bool


@cache
def metals() -> tuple[Metal, ...]:
    """Return the metals of the table."""
    text = files("jambs.data").joinpath("metals.csv").read_text(encoding="utf-8")
    return tuple(
        Metal(
            kind=SheetMetal(row["metal"]),
            aliases=tuple(row["aliases"].split("; ")),
            conductivity=float(row["conductivity_W_mK"]),
            source=row["source"],
        )
        for row in csv.DictReader(text.splitlines())
    )


def metal_of(entry: MetalReturnsEntry) -> ReturnMetal:
    """Return the metal that is stated, or that the sheet is named for; aluminum where neither tells it."""
    stated = next((one for one in metals() if one.kind is entry.metal), None)
    found = stated or _named(entry.material)
    usual = next(one for one in metals() if one.kind is SheetMetal.ALUMINUM)
    return ReturnMetal(metal=found or usual, is_assumed=found is None)


def _named(material: str) -> Metal | None:
    plain = one_spelling(material.strip().lower())
    return next((one for one in metals() if plain in (one.kind.value, *one.aliases)), None)
