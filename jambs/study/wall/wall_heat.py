"""A wall of the job as the heat study sees it: its layers in meters, what is left out, what had to be assumed."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from jambs.findings import Subject
from jambs.job.models.layers import Layer, Role
from jambs.job.models.openings import Assumed
from jambs.length import METERS_PER_INCH, ROUND_OFF, Units
from jambs.study.regions.conductivities import WOOD_CONDUCTIVITY
from jambs.study.regions.region import StudyError
from jambs.study.wall.assumed_words import conductivity_assumed, left_out_assumed
from jambs.study.wall.members import member_share
from jambs.study.wall.stack import US_PERM, HeatLayer, HeatStack
from jambs.study.wall_findings import NoFramingLayer
from jambs.wall.planes import PlacedLayer, WallPlanes

STILL_AIR_RESISTANCE = 0.18
"""Across an unventilated air layer of 25 mm and more, heat flowing level [m2K/W]: ISO 6946, from memory."""
STILL_AIR_PERMEANCE = 4000.0
"""Of a hollow [ng/(s m2 Pa)]: what 5 cm of still air let through, 195 ng/(s m Pa) of it, from memory."""
USUAL_CONDUCTIVITY = {
    Role.FINISH: 0.20,
    Role.FRAMING: WOOD_CONDUCTIVITY,
    Role.SHEATHING: WOOD_CONDUCTIVITY,
    Role.MEMBRANE: 0.33,
    Role.INSULATION: 0.040,
    Role.STRAPPING: WOOD_CONDUCTIVITY,
    Role.COVER: WOOD_CONDUCTIVITY,
    Role.CLADDING: WOOD_CONDUCTIVITY,
}
"""Of a layer whose conductivity nobody states [W/mK]: common design values, from memory."""
HOLLOW = (Role.CAVITY, Role.FRAMING, Role.STRAPPING)
VENTILATED = (Role.STRAPPING, Role.CLADDING)
"""What air moves behind, where it stands outside of all insulation."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatWall:
    """A wall for the heat study.

    ``outside_face``: finished face → outside face of what counts, along the depth axis [in]; the ventilated space and
    what stands outside it are left out, and named in ``left_out``. ``placed``: the layers that count, as
    ``stack`` has them, inside → outside. ``is_sheathed``: the wall has a sheathing; else ``sheathing`` names the
    framing in its place.
    """

    stack: HeatStack
    sheathing: str
    placed: tuple[PlacedLayer, ...]
    outside_face: float
    is_sheathed: bool
    left_out: tuple[str, ...]
    assumed: tuple[Assumed, ...]

    def layer_at(self, depth: float) -> HeatLayer | None:
        """The layer at a depth from the finished face [in]; None beyond what counts."""
        for placed, layer in zip(self.placed, self.stack.layers, strict=True):
            if placed.inner - ROUND_OFF <= depth <= placed.outer + ROUND_OFF and placed.outer > placed.inner:
                return layer
        return None


def heat_wall(planes: WallPlanes, *, units: Units) -> HeatWall:
    """Turn the planes of a wall into the layers that heat and vapor pass.

    Raises:
        StudyError: the wall has no framing, so that nothing says what a window is set in.
    """
    outside_face = _outside_face(planes)
    placed = tuple(one for one in planes.layers if one.outer <= outside_face + ROUND_OFF)
    named = tuple(zip(_names(placed), placed, strict=True))
    framed = [name for name, one in named if one.layer.role is Role.FRAMING]
    sheathed = [name for name, one in named if one.layer.role is Role.SHEATHING]
    if not framed:
        raise StudyError(NoFramingLayer(subject=Subject.wall(planes.wall.name)))
    assumed: list[Assumed] = []
    layers = tuple(_layer(name, one, assumed, units) for name, one in named)
    left_out = tuple(one.layer.name for one in planes.layers if one not in placed)
    if left_out:
        assumed.append(left_out_assumed(left_out))
    return HeatWall(
        stack=HeatStack(layers=layers),
        sheathing=(sheathed or framed)[-1],
        placed=placed,
        outside_face=placed[-1].outer,
        is_sheathed=bool(sheathed),
        left_out=left_out,
        assumed=tuple(assumed),
    )


def _outside_face(planes: WallPlanes) -> float:
    """Where the ventilated space begins: at strapping or cladding with no insulation outside of it.

    Strapping under insulation, or with insulation between, is a layer of the wall with wood across it.
    """
    insulated = max((one.outer for one in planes.layers if _insulates(one.layer)), default=0.0)
    least = max(insulated, planes.sheathing_plane) - ROUND_OFF
    ventilated = (one.inner for one in planes.layers if one.layer.role in VENTILATED and one.inner >= least)
    return min(ventilated, default=planes.cladding_face)


def _insulates(layer: Layer) -> bool:
    return layer.role is Role.INSULATION or layer.cavity is not None


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
    layer, thickness = placed.layer, (placed.outer - placed.inner) * METERS_PER_INCH
    share = member_share(layer, assumed, units=units)
    return HeatLayer(
        name=name,
        thickness=thickness,
        resistance=_resistance(layer, thickness, assumed),
        framing_resistance=thickness / conductivity_of(layer) if share else None,
        framing_fraction=share,
        permeance=_permeance(layer),
    )


def _permeance(layer: Layer) -> float | None:
    """Across the layer away from its members [ng/(s m2 Pa)]; None where nobody states it."""
    if layer.role in HOLLOW and layer.cavity is None:
        return STILL_AIR_PERMEANCE
    perms = (layer.cavity or layer).permeance
    return None if perms is None else perms * US_PERM


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
    return layer.conductivity or USUAL_CONDUCTIVITY.get(layer.role, WOOD_CONDUCTIVITY)


def _note_conductivity(layer: Layer, assumed: list[Assumed]) -> None:
    if layer.conductivity is None and layer.role not in (Role.CAVITY, Role.MEMBRANE):
        assumed.append(conductivity_assumed(layer.name, conductivity_of(layer)))
