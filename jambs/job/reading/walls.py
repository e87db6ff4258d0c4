"""Walls and boards as the job file names them become full objects with all their values."""

from __future__ import annotations

import re
from dataclasses import replace

from jambs.job.models.layers import USUAL_SPACING, Layer, LayerEntry, MadeOf, Role, Wall, WallEntry
from jambs.job.models.openings import Assumed
from jambs.job.models.shop import Board, BoardEntry
from jambs.job.reading.catalog import (
    CatalogLayer,
    catalog_boards,
    catalog_layers,
    find_board,
    find_layer,
    material_name,
    other_sizes,
)
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import advice
from jambs.job.reading.tree import TextSource
from jambs.length import FINE, LengthError, Units, length_text, read_length

LEAST_SHEET = 24.0
"""A board as wide as this is a sheet [in]."""
METERS_PER_FOOT = 0.3048

CATALOG_LISTS = "`jambs catalog` lists all names"

HOLLOW = (Role.FRAMING, Role.CAVITY, Role.STRAPPING)
"""Layers with room between their members."""


def look_up_wall(
    name: str, entry: WallEntry, source: TextSource, complaints: Complaints
) -> tuple[Wall | None, tuple[Assumed, ...]]:
    """Look up every layer of a wall; nothing if one cannot be found. Also what was assumed about it."""
    assumed: list[Assumed] = []
    layers = [
        _look_up_layer(one, source.within(("layers", place)), complaints, assumed)
        for place, one in enumerate(entry.layers)
    ]
    found = tuple(layer for layer in layers if layer)
    if len(found) < len(layers) or not _in_order(found, source, complaints):
        return None, ()
    return Wall(name=name, layers=found, buck=entry.buck), tuple(assumed)


def _look_up_layer(
    entry: LayerEntry, source: TextSource, complaints: Complaints, assumed: list[Assumed]
) -> Layer | None:
    known, written = _known(entry.material, complaints.units)
    thickness = entry.thickness or written or (known.thickness if known else None)
    role = entry.role or (known.role if known else None)
    cavity = _cavity(entry, role, thickness, source, complaints)
    if known is None and (role is None or thickness is None):
        near = _meant(entry.material, complaints.units)
        message = f"is not in the catalog, a material of your own needs role and thickness; {near}"
        complaints.say(source, ("material",), message)
        return None
    if thickness is None or role is None:
        complaints.say(source, (), "has no thickness of its own; add the thickness you build with")
        return None
    if known and known.thickness_is_assumed and role is Role.CLADDING and entry.thickness is None:
        assumed.append(_assumed_thickness(known, complaints.units))
    layer = _own_layer(entry, role, thickness) if known is None else _known_layer(entry, known, role, thickness)
    made_of = entry.made_of or (known.made_of if known else _own_made_of(entry, role, assumed))
    spacing = entry.spacing or _spacing(entry, role, complaints.units, assumed)
    share = _framing_share(entry, role, source, complaints)
    return replace(layer, spacing=spacing, cavity=cavity, framing_share=share, made_of=made_of)


def _meant(material: str, units: Units) -> str:
    """Say which material of the catalog was meant, or in which sizes it has this one."""
    sizes = [one for one in other_sizes(material) if one.thickness is None or FINE[units].holds(one.thickness)]
    texts = [f"{one.name} ({length_text(one.thickness, units=units)} thick)" for one in sizes if one.thickness]
    texts += [f"{one.name} (with the thickness you give)" for one in sizes if not one.thickness]
    otherwise = f"no such size is in it, these are: {', '.join(texts)}" if texts else CATALOG_LISTS
    return advice(material, [layer.name for layer in catalog_layers()], otherwise=otherwise)


def _own_made_of(entry: LayerEntry, role: Role, assumed: list[Assumed]) -> MadeOf | None:
    """Say what a layer of the user's own is of: certain for a membrane; of insulation the safe side is assumed."""
    if role is Role.MEMBRANE:
        return MadeOf.MEMBRANE
    if role is not Role.INSULATION:
        return None
    why = "the safe side for fire; the job does not say: write made_of beside it, fiber or what it is"
    assumed.append(Assumed(what=f"what {entry.material} is made of", value=MadeOf.FOAM.value, why=why))
    return MadeOf.FOAM


def _own_layer(entry: LayerEntry, role: Role, thickness: float) -> Layer:
    return Layer(
        name=entry.material,
        role=role,
        thickness=thickness,
        conductivity=entry.conductivity,
        permeance=entry.permeance,
        member_width=entry.member_width,
        carries=entry.carries,
    )


def _known_layer(entry: LayerEntry, known: CatalogLayer, role: Role, thickness: float) -> Layer:
    own_permeance = entry.permeance is not None
    return Layer(
        name=known.name,
        role=role,
        thickness=thickness,
        conductivity=entry.conductivity or known.conductivity,
        permeance=entry.permeance if own_permeance else known.permeance_at(thickness),
        member_width=entry.member_width or known.member_width,
        carries=entry.carries,
        source=known.source,
    )


def _known(material: str, units: Units) -> tuple[CatalogLayer | None, float | None]:
    """Find a material by its name, or by its name and a thickness behind or before it, like ``EPS 2``."""
    if known := find_layer(material) or (find_layer(f"{material_name(material)} mm") if units is Units.MM else None):
        return known, None
    parted = re.fullmatch(r"(.*?\S)\s+(\d[\d\s./-]*\s*(?:mm|cm)?)", material_name(material))
    known = find_layer(parted[1]) if parted else None
    if not parted or known is None or known.thickness is not None:
        return None, None
    try:
        return known, _written_length(parted[2].strip(), material, units)
    except LengthError:
        return None, None


def _written_length(size: str, material: str, units: Units) -> float:
    """Read the size in a material's name [in]; in a metric job inches carry their mark."""
    is_inch = re.search(r"\d\s*(?:\"|in\b|inch\b)", material) is not None
    return read_length(f'{size}"' if is_inch else size, units=units)


def _cavity(
    entry: LayerEntry, role: Role | None, thickness: float | None, source: TextSource, complaints: Complaints
) -> Layer | None:
    if entry.cavity is None:
        return None
    if role not in HOLLOW:
        complaints.say(source, ("cavity",), "only framing, strapping and a service cavity are filled; remove it")
        return None
    given, fill = entry.cavity, find_layer(entry.cavity.material)
    if fill is None and given.conductivity is not None:
        return Layer(
            name=given.material,
            role=Role.INSULATION,
            thickness=thickness or 1.0,
            conductivity=given.conductivity,
        )
    if fill is None or fill.role is not Role.INSULATION:
        names = [layer.name for layer in catalog_layers() if layer.role is Role.INSULATION]
        near = advice(given.material, names, otherwise="one of your own needs its conductivity")
        complaints.say(source, ("cavity",), f"{given.material!r} fills no cavity; {near}")
        return None
    return Layer(
        name=fill.name,
        role=Role.INSULATION,
        thickness=thickness or 1.0,
        conductivity=given.conductivity or fill.conductivity,
        permeance=fill.permeance_at(thickness or 1.0),
        made_of=fill.made_of,
        source=fill.source,
    )


def _framing_share(entry: LayerEntry, role: Role | None, source: TextSource, complaints: Complaints) -> float | None:
    if entry.framing_share is not None and role not in HOLLOW:
        complaints.say(source, ("framing_share",), "only framing, strapping and a service cavity have one; remove it")
        return None
    return entry.framing_share


def _spacing(entry: LayerEntry, role: Role, units: Units, assumed: list[Assumed]) -> float | None:
    if role is not Role.FRAMING:
        return None
    usual = USUAL_SPACING[units]
    why = "common practice, no source; the job gives no spacing"
    assumed.append(Assumed(what=f"spacing of {entry.material}", value=length_text(usual, units=units), why=why))
    return usual


def _assumed_thickness(known: CatalogLayer, units: Units) -> Assumed:
    value = length_text(known.thickness or 0.0, units=units)
    why = "usual for this cladding, no source; measure yours, the exterior sill depends on it"
    return Assumed(what=f"thickness of {known.name}", value=value, why=why)


def _in_order(layers: tuple[Layer, ...], source: TextSource, complaints: Complaints) -> bool:
    """Hold the order of the layers against inside → outside."""
    if not any(layer.role in (Role.FRAMING, Role.SHEATHING) for layer in layers):
        message = "have neither framing nor sheathing, so nothing carries a window; add one"
        complaints.say(source, ("layers",), message)
        return False
    for place, outer in enumerate(layers):
        wrong = [inner for inner in layers[:place] if _stands_wrong(inner.role, outer.role)]
        if wrong:
            names = f"{outer.name!r} stands outside {wrong[0].name!r}"
            complaints.say(source, ("layers", place), f"{names}; list the layers from the inside to the outside")
            return False
    return True


def _stands_wrong(inner: Role, outer: Role) -> bool:
    """Nothing stands outside the cladding, and the inside finish not outside the framing."""
    if inner is Role.CLADDING:
        return outer is not Role.CLADDING
    return inner is Role.FRAMING and outer is Role.FINISH


def look_up_board(entry: BoardEntry, source: TextSource, complaints: Complaints) -> Board | None:
    """Look up the actual size of a board that is given by its nominal name."""
    known = find_board(entry.nominal) if entry.nominal else None
    thickness = entry.thickness or (known.thickness if known else None)
    sheet = entry.sheet
    width = sheet.width if sheet else entry.width or (known.width if known else None)
    if thickness is None or (width is None and not known):
        names = [board.nominal for board in catalog_boards()]
        near = advice(entry.nominal or "", names, otherwise=f"no such size is in it, these are: {', '.join(names)}")
        message = f"is not in the catalog, a board of your own needs thickness and width; {near}"
        complaints.say(source, ("nominal",), message)
        return None
    if width is None:
        complaints.say(source, (), f"{entry.nominal} comes in random widths; add the width you can get")
        return None
    return Board(
        stock=entry.stock,
        nominal=entry.nominal,
        thickness=thickness,
        width=width,
        lengths=(sheet.height,) if sheet else entry.lengths,
        price_per_foot=_price_per_foot(entry),
        prices=entry.price or (),
        supply=entry.supply,
        is_sheet=sheet is not None or width >= LEAST_SHEET,
        source=known.source if known else "job file",
    )


def _price_per_foot(entry: BoardEntry) -> float | None:
    per_meter = entry.price_per_meter
    return entry.price_per_foot if per_meter is None else per_meter * METERS_PER_FOOT
