"""A wall of the job as the heat study sees it: its layers in metres, what is left out, what had to be assumed."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from jambs.job.models.layers import Layer, Role
from jambs.job.models.openings import Assumed
from jambs.length import MM_PER_INCH, Units, decimal_text, length_text
from jambs.study.heat.region import StudyError
from jambs.study.wall.stack import US_PERM, HeatLayer, HeatStack
from jambs.wall.planes import PlacedLayer, WallPlanes

METRES_PER_INCH = MM_PER_INCH / 1000
STILL_AIR_RESISTANCE = 0.18
"""Across an unventilated air layer of 25 mm and more, heat flowing level [m2K/W]: ISO 6946, from memory."""
FRAMING_FRACTIONS = ((18.0, 0.25), (float("inf"), 0.22))
"""Whole-wall share of framing up to a spacing of studs [in]: usual US values for 16 and 24 in, from memory."""
USUAL_CONDUCTIVITY = {
    Role.FINISH: 0.20,
    Role.FRAMING: 0.12,
    Role.SHEATHING: 0.12,
    Role.MEMBRANE: 0.33,
    Role.INSULATION: 0.040,
    Role.STRAPPING: 0.12,
    Role.COVER: 0.12,
    Role.CLADDING: 0.12,
}
"""Of a layer whose conductivity nobody states [W/mK]: common design values, from memory."""
HOLLOW = (Role.CAVITY, Role.FRAMING, Role.STRAPPING)


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatWall:
    """A wall for the heat study.

    ``outside_face``: finished face → outside face of what counts, along the depth axis [in]; strapping and cladding
    beyond it are left out, ventilated air behind them. ``placed``: the layers that count, as ``stack`` has them,
    inside → outside. ``is_sheathed``: the wall has a sheathing; else ``sheathing`` names the framing in its place.
    """

    stack: HeatStack
    sheathing: str
    placed: tuple[PlacedLayer, ...]
    outside_face: float
    is_sheathed: bool
    assumed: tuple[Assumed, ...]

    def layer_at(self, depth: float) -> HeatLayer | None:
        """The layer at a depth from the finished face [in]; None beyond what counts."""
        for placed, layer in zip(self.placed, self.stack.layers, strict=True):
            if placed.inner - 1e-9 <= depth <= placed.outer + 1e-9 and placed.outer > placed.inner:
                return layer
        return None


def heat_wall(planes: WallPlanes, *, units: Units) -> HeatWall:
    """Turn the planes of a wall into the layers that heat and vapour pass.

    Raises:
        StudyError: the wall has no framing, so that nothing says what a window is set in.
    """
    placed = tuple(one for one in planes.layers if one.outer <= _outside_face(planes) + 1e-9)
    names = _names(placed)
    framed = [name for name, one in zip(names, placed, strict=True) if one.layer.role is Role.FRAMING]
    sheathed = [name for name, one in zip(names, placed, strict=True) if one.layer.role is Role.SHEATHING]
    if not framed:
        raise StudyError(f"wall {planes.wall.name!r} has no framing layer; the heat study needs one around the window.")
    assumed: list[Assumed] = []
    layers = tuple(_layer(name, one, assumed, units) for name, one in zip(names, placed, strict=True))
    return HeatWall(
        stack=HeatStack(layers=layers),
        sheathing=(sheathed or framed)[-1],
        placed=placed,
        outside_face=placed[-1].outer,
        is_sheathed=bool(sheathed),
        assumed=tuple(assumed),
    )


def _outside_face(planes: WallPlanes) -> float:
    """Where strapping or cladding begins outside the sheathing: air moves behind it."""
    vented = (
        one.inner
        for one in planes.layers
        if one.layer.role in (Role.STRAPPING, Role.CLADDING) and one.inner >= planes.sheathing_plane - 1e-9
    )
    return min(vented, default=planes.cladding_face)


def _names(placed: tuple[PlacedLayer, ...]) -> list[str]:
    """Each layer under a name of its own: its role, or its place from the inside, behind a name that comes twice."""
    counts = Counter(one.layer.name for one in placed)
    roles = Counter((one.layer.name, one.layer.role) for one in placed)
    seen: Counter[tuple[str, Role]] = Counter()
    names = []
    for one in placed:
        key = (one.layer.name, one.layer.role)
        seen[key] += 1
        name = one.layer.name
        if counts[name] > 1:
            name += f" ({one.layer.role.value})" if roles[key] == 1 else f" ({seen[key]} of {roles[key]})"
        names.append(name)
    return names


def _layer(name: str, placed: PlacedLayer, assumed: list[Assumed], units: Units) -> HeatLayer:
    layer, thickness = placed.layer, (placed.outer - placed.inner) * METRES_PER_INCH
    permeance = layer.cavity.permeance if layer.cavity else None if layer.role in HOLLOW else layer.permeance
    if layer.role in HOLLOW and layer.cavity is None:
        # Still air lets vapour through as freely as nothing else does: 25 mm are over 100 perm.
        permeance = 4000.0 / US_PERM
    fraction = _framing_fraction(layer, assumed, units) if layer.role is Role.FRAMING else 0.0
    return HeatLayer(
        name=name,
        thickness=thickness,
        resistance=_resistance(layer, thickness, assumed),
        framing_resistance=thickness / conductivity_of(layer) if fraction else None,
        framing_fraction=fraction,
        permeance=None if permeance is None else permeance * US_PERM,
    )


def _resistance(layer: Layer, thickness: float, assumed: list[Assumed]) -> float:
    """Across the layer away from its members. [m2 K/W]"""
    if layer.role in HOLLOW:
        _note_conductivity(layer, assumed)
        if layer.cavity is None:
            return STILL_AIR_RESISTANCE
        layer = layer.cavity
    elif thickness > 0:
        _note_conductivity(layer, assumed)
    return thickness / conductivity_of(layer)


def conductivity_of(layer: Layer) -> float:
    """Conductivity of a layer's own material, the usual one of its role where nobody states it. [W/mK]"""
    return layer.conductivity or USUAL_CONDUCTIVITY.get(layer.role, 0.12)


def _note_conductivity(layer: Layer, assumed: list[Assumed]) -> None:
    if layer.conductivity is None and layer.role not in (Role.CAVITY, Role.MEMBRANE):
        value = f"{decimal_text(conductivity_of(layer), 3)} W/mK"
        why = "usual for its role, from memory; neither job nor catalogue states it"
        assumed.append(Assumed(what=f"conductivity of {layer.name}", value=value, why=why))


def _framing_fraction(layer: Layer, assumed: list[Assumed], units: Units) -> float:
    spacing = layer.spacing or 16.0
    fraction = next(share for limit, share in FRAMING_FRACTIONS if spacing <= limit)
    why = f"usual for studs {length_text(spacing, units=units)} apart with plates and openings, from memory"
    assumed.append(Assumed(what=f"share of framing in {layer.name}", value=f"{fraction:.0%}", why=why))
    return fraction
