"""Walls, frames and cuts that several tests of the heat study use, and the reader of their authorities."""

import csv
from pathlib import Path

from retired_cut import Detail, WallBuild

from jambs.study.heat.frame import FrameBlock
from jambs.study.regions.region import AirRegion, Block
from jambs.study.wall.stack import HeatLayer, HeatStack

AUTHORITIES = Path(__file__).parent.parent / "authorities" / "study"

JAMB = Detail(side="jamb", framing=0.076)
SILL = Detail(side="sill", framing=0.038)
HEAD = Detail(side="head", framing=0.273)


def read_authority(name: str) -> list[dict[str, str]]:
    """Rows of a table of published values, without its head comments."""
    lines = (AUTHORITIES / name).read_text().splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def solid_layer(
    name: str,
    *,
    thickness: float,
    conductivity: float,
    framing_conductivity: float | None = None,
    framing_fraction: float = 0.0,
    permeance: float | None = None,
) -> HeatLayer:
    """Layer of a material of known conductivity [W/(m K)], with framing of another one between. Lengths [m]."""
    return HeatLayer(
        name=name,
        thickness=thickness,
        resistance=thickness / conductivity,
        framing_resistance=None if framing_conductivity is None else thickness / framing_conductivity,
        framing_fraction=framing_fraction,
        permeance=permeance,
    )


def layers(stud: float, rigid: float) -> tuple[HeatLayer, ...]:
    """Layers of the walls the golden anchors were computed with, inside -> outside. [m]"""
    return (
        solid_layer("gypsum", thickness=0.0127, conductivity=0.16),
        solid_layer("stud space", thickness=stud, conductivity=0.039),
        solid_layer("sheathing", thickness=0.0111, conductivity=0.12),
        solid_layer("rigid insulation", thickness=rigid, conductivity=0.034),
        solid_layer("outer sheathing", thickness=0.0127, conductivity=0.12),
    )


def wall(stud: float, rigid: float, *, length: float = 1.0) -> WallBuild:
    """A wall of those layers with 38 mm of strapping and cladding outside."""
    return WallBuild(
        stack=HeatStack(layers=layers(stud, rigid)), framed="stud space", sheathing="sheathing", length=length
    )


WALLS = {
    "2x4 + 2 in": wall(0.0889, 0.0508),
    "2x6 + 4 in": wall(0.1397, 0.1016),
    "2x6 + 8 in": wall(0.1397, 0.2032),
}
FRAMES = {
    "wood": FrameBlock(depth=0.068, face=0.110, transmittance=1.6, panel_thickness=0.028, panel_setback=0.018),
    "PVC": FrameBlock(depth=0.070, face=0.115, transmittance=1.3, panel_thickness=0.028, panel_setback=0.018),
    "insulated": FrameBlock(depth=0.090, face=0.110, transmittance=0.8, panel_thickness=0.044, panel_setback=0.018),
}


def box(name: str, conductivity: float, x: tuple[float, float], y: tuple[float, float]) -> Block:
    """A block in few words. [m]"""
    return Block(name=name, conductivity=conductivity, x0=x[0], x1=x[1], y0=y[0], y1=y[1])


def air(name: str, temperature: float, resistance: float, x: tuple[float, float], y: tuple[float, float]) -> AirRegion:
    """Air in few words. [m]"""
    return AirRegion(name=name, temperature=temperature, resistance=resistance, x0=x[0], x1=x[1], y0=y[0], y1=y[1])
