"""The catalog of layers and boards: what a job file may name, with actual sizes and where they are from."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.job.models.layers import MadeOf, Role
from jambs.length import Units, read_length


@dataclass(frozen=True, slots=True, kw_only=True)
class CatalogLayer:
    """A material that walls are made of.

    ``thickness`` [in], nothing where the job has to give it; ``thickness_is_assumed``: it varies with the product, so
    the papers say it was assumed. ``member_width`` [in] of a stud or batten. ``conductivity`` [W/mK].
    ``permeance`` [perm] of the layer, or ``permeability`` [perm in] of the material. ``source`` names the documents.
    """

    name: str
    aliases: tuple[str, ...]
    tolerance: str | None
    role: Role
    made_of: MadeOf | None
    thickness: float | None
    thickness_is_assumed: bool
    member_width: float | None
    conductivity: float | None
    permeance: float | None
    permeability: float | None
    source: str
    status: str

    def permeance_at(self, thickness: float) -> float | None:
        """Return the permeance of a layer of this thickness [perm], where it is known."""
        if self.permeability is not None:
            return self.permeability / thickness
        return self.permeance


@dataclass(frozen=True, slots=True, kw_only=True)
class CatalogBoard:
    """A board by the name it is bought by, with its actual size [in]; hardwood has no width of its own."""

    nominal: str
    thickness: float
    width: float | None
    source: str
    status: str


def _rows(name: str) -> Iterator[dict[str, str]]:
    text = files("jambs.data").joinpath(name).read_text(encoding="utf-8")
    return iter(csv.DictReader(text.splitlines()))


def _length(text: str) -> float | None:
    return read_length(text, units=Units.INCH) if text else None


def _number(text: str) -> float | None:
    return float(text) if text else None


@cache
def catalog_layers() -> tuple[CatalogLayer, ...]:
    """Return all layers of the catalog, in its order."""
    return tuple(
        CatalogLayer(
            name=row["material"],
            aliases=tuple(filter(None, row["aliases"].split("; "))),
            tolerance=row["tolerance"] or None,
            role=Role(row["role"]),
            made_of=MadeOf(row["made_of"]) if row["made_of"] else None,
            thickness=_length(row["thickness"]),
            thickness_is_assumed=row["thickness_is_assumed"] == "yes",
            member_width=_length(row["member_width"]),
            conductivity=_number(row["conductivity_W_mK"]),
            permeance=_number(row["permeance_perm"]),
            permeability=_number(row["permeability_perm_in"]),
            source=row["source"],
            status=row["status"],
        )
        for row in _rows("layers.csv")
    )


@cache
def catalog_boards() -> tuple[CatalogBoard, ...]:
    """Return all boards of the catalog, in its order."""
    return tuple(
        CatalogBoard(
            nominal=row["nominal"],
            thickness=read_length(row["thickness"], units=Units.INCH),
            width=_length(row["width"]),
            source=row["source"],
            status=row["status"],
        )
        for row in _rows("boards.csv")
    )


def plain_name(text: str) -> str:
    """Return a name as it is compared: without case, inch marks, and the ways to write a fraction or a size."""
    text = text.lower().replace('"', "").replace("×", "x")
    text = re.sub(r"(?<=\d)-(?=\d+/\d)", " ", text)
    text = re.sub(r"(?<=\d)\s*x\s*(?=\d)", "x", text)
    return " ".join(text.split())


SPELLINGS = (("fibre", "fiber"), ("vapour", "vapor"), ("aluminium", "aluminum"))


def one_spelling(text: str) -> str:
    """Return a lower-case name in the spelling of the catalog: fibre and fiber are one word."""
    for other, ours in SPELLINGS:
        text = text.replace(other, ours)
    return text


SIZE_FIRST = re.compile(r"(\d[\d\s./x-]*(?:(?:mm|cm|mil|lb|inch|in)\b\.?)?)\s*([a-z].*)")
"""A size and a material behind it: ``1/2 plywood``, ``12 mm osb``."""


def material_name(text: str) -> str:
    """Return the name of a material as it is compared: its size last, wherever it was written."""
    plain = re.sub(r"(?<=\d)[\s-]*(?:inch|in)\b\.?", "", one_spelling(plain_name(text)))
    found = SIZE_FIRST.fullmatch(plain)
    return f"{found[2]} {found[1].strip()}" if found else plain


@cache
def _layers_by_name() -> dict[str, CatalogLayer]:
    return {material_name(name): layer for layer in catalog_layers() for name in (layer.name, *layer.aliases)}


def find_layer(name: str) -> CatalogLayer | None:
    """Return the layer of the catalog that a job file names, if there is one; its size may stand first or last."""
    return _layers_by_name().get(material_name(name))


def other_sizes(name: str) -> tuple[CatalogLayer, ...]:
    """Return the layers that a name speaks of if its size is left aside."""
    words = _words(name)
    return tuple(one for one in catalog_layers() if words and any(words <= _words(n) for n in (one.name, *one.aliases)))


def _words(name: str) -> set[str]:
    return {word for word in material_name(name).split() if not word[0].isdigit() and word not in ("mm", "mil", "lb")}


def find_board(nominal: str) -> CatalogBoard | None:
    """Return the board of the catalog that a job file names, if there is one."""
    return next((b for b in catalog_boards() if plain_name(b.nominal) == plain_name(nominal)), None)
