"""Woods and how they move across the grain: the table, and what a stock of the job is."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.findings import FindingsError, Subject
from jambs.job.models.outside import Sawn, WoodEntry
from jambs.parts.wood.wood_findings import NoSuchSpecies, SeveralWoods


class WoodError(FindingsError):
    """A stock of which nobody can say what wood it is."""


SEVERAL = ("pine",)
"""What a yard sells by one name and is several woods: nobody can say which."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """A species: change of a size, as a share of it for each percent of moisture, along the radius and across it.

    ``is_sure``: the value was read or derived from what was read, not remembered.
    """

    species: str
    aliases: tuple[str, ...]
    radial: float
    tangential: float
    source: str
    is_sure: bool

    def across(self, sawn: Sawn) -> float:
        """Return the share by which a board gets wider for each percent of moisture: flat sawn tangential."""
        return self.tangential if sawn is Sawn.FLAT else self.radial


@cache
def woods() -> tuple[Wood, ...]:
    """Return the woods of the table."""
    text = files("jambs.data").joinpath("woods.csv").read_text(encoding="utf-8")
    return tuple(
        Wood(
            species=row["species"],
            aliases=tuple(filter(None, row["aliases"].split("; "))),
            radial=float(row["radial_per_pct"]),
            tangential=float(row["tangential_per_pct"]),
            source=row["source"],
            is_sure=row["status"] != "memory",
        )
        for row in csv.DictReader(text.splitlines())
    )


def find_wood(name: str) -> Wood | None:
    """Return the wood of a name: its species, or the name a yard sells it by."""
    plain = name.strip().lower()
    return next((wood for wood in woods() if plain in map(str.lower, (wood.species, *wood.aliases))), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class StockWood:
    """What a stock of the job is; ``is_stated``: the job says so."""

    wood: Wood
    sawn: Sawn
    is_stated: bool


def wood_of(stock: str, entries: Mapping[str, WoodEntry]) -> StockWood | None:
    """Return the wood of a stock; None for one that is no wood of the table, like plywood.

    Raises:
        WoodError: the job names a species that the table does not have, or a stock that is several woods.
    """
    entry = entries.get(stock)
    if several := _several(entry.species if entry else stock):
        raise WoodError(SeveralWoods(subject=Subject.stock(stock), species=several))
    wood = find_wood(entry.species if entry else stock)
    if entry and wood is None:
        known = tuple(one.species for one in woods())
        raise WoodError(NoSuchSpecies(subject=Subject.stock(stock), species=entry.species, known=known))
    if wood is None:
        return None
    sawn = entry.sawn if entry else Sawn.FLAT
    return StockWood(wood=wood, sawn=sawn, is_stated=entry is not None)


def _several(stock: str) -> tuple[str, ...]:
    """The species of a name that stands for several woods of which none is the usual one; empty for any other name."""
    name = stock.strip().lower()
    return tuple(one.species for one in woods() if name in SEVERAL and one.species.lower().startswith(f"{name}, "))


def change_of_size(size: float, coefficient: float, *, start: float, finish: float) -> float:
    """Return the change of a size between two moisture contents [%], in the unit of the size; growth is positive.

    Wood Handbook (FPL-GTR-190, 2010), equation (13-2): good between 6 and 14 %.
    """
    return size * coefficient * (finish - start)
