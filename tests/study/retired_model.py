"""The parametric model of a window over its positions, once the house's own: now the peer of the drawn sections."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from retired_curve import Curve
from retired_cut import Detail, WallBuild, build_cut, framing_share, reference_of

from jambs.study.heat.cut import (
    LinearTransmittance,
    SurfaceFactors,
    corner_estimate,
    linear_transmittance,
    surface_factors,
)
from jambs.study.heat.films import HEAT_FILMS, SURFACE_FILMS, Films
from jambs.study.heat.frame import FrameBlock
from jambs.study.heat.frame_alone import coldest_alone
from jambs.study.regions.grid import Fineness
from jambs.study.resistance_rule import rule_position
from jambs.study.wall.stack import HeatStack


@dataclass(frozen=True, slots=True, kw_only=True)
class Installation:
    """One side of the opening with the window at one position.

    `exterior_depth` from the frame's outside face out to the trim plane, `interior_depth` from its inside face in to
    the finished face [m]; `resistance_inside` the share of the wall's resistance inside of the frame's middle.
    """

    detail: Detail
    exterior_depth: float
    interior_depth: float
    resistance_inside: float
    transmittance: LinearTransmittance
    factors: SurfaceFactors


@dataclass(frozen=True, slots=True, kw_only=True)
class SideSweep:
    """One side of the opening over all positions, from proud of the trim plane to flush with the finished face.

    `framing_share` is what the framing at this side adds to the clear wall without any window [W/(m K)].
    `rule_position` is where the rule of RULE_FRACTION puts the frame: the cross-check of `curve.best`. [m]
    """

    detail: Detail
    installations: tuple[Installation, ...]
    framing_share: float
    rule_position: float

    @property
    def curve(self) -> Curve:
        """Linear transmittance over the exterior depth, means of the limits. [m], [W/(m K)]"""
        return Curve(
            positions=tuple(each.exterior_depth for each in self.installations),
            values=tuple(each.transmittance.value for each in self.installations),
        )

    @property
    def rule_excess(self) -> float:
        """What the rule's position costs over the best one; over 0.002 the sweep should be looked at. [W/(m K)]"""
        curve = self.curve
        return curve.at(self.rule_position) - curve.least


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """A change of the detail, in words, and what it does at the same position."""

    words: str
    installation: Installation
    change: float


def install(
    wall: WallBuild,
    frame: FrameBlock,
    detail: Detail,
    exterior_depth: float,
    *,
    surface_films: Films = SURFACE_FILMS,
    fineness: Fineness | None = None,
) -> Installation:
    """Heat and coldest corner of one side with the frame's outside face `exterior_depth` inside the trim plane. [m]

    Raises ValueError when the frame does not lie between cladding face and finished face.
    """
    heat = build_cut(wall, frame, detail, exterior_depth, films=HEAT_FILMS)
    surface = build_cut(wall, frame, detail, exterior_depth, films=surface_films)
    interior_depth = wall.stack.thickness - exterior_depth - frame.depth
    return Installation(
        detail=detail,
        exterior_depth=exterior_depth,
        interior_depth=interior_depth,
        resistance_inside=resistance_fraction_inside(wall.stack, interior_depth + frame.depth / 2),
        transmittance=linear_transmittance(heat, reference_of(wall, frame), fineness=fineness),
        factors=surface_factors(surface, fineness=fineness),
    )


def resistance_fraction_inside(stack: HeatStack, depth: float) -> float:
    """Fraction of the wall's resistance on the inside of a depth below the finished face, outward [m]."""
    inside, left = stack.inside_film, depth
    for layer in stack.layers:
        share = min(1.0, max(0.0, left / layer.thickness)) if layer.thickness else float(left > 0)
        inside, left = inside + share * layer.resistance, left - layer.thickness
    return inside / stack.clear_resistance


def all_positions(wall: WallBuild, frame: FrameBlock, *, count: int = 40) -> tuple[float, ...]:
    """Evenly spaced exterior depths, from flush with the cladding to flush with the finished face. [m]"""
    last = wall.stack.thickness - frame.depth
    return tuple(float(position) for position in np.linspace(-wall.cladding, last, count))


def sweep(
    wall: WallBuild,
    frame: FrameBlock,
    details: Sequence[Detail],
    *,
    exterior_depths: Sequence[float] | None = None,
    surface_films: Films = SURFACE_FILMS,
    fineness: Fineness | None = None,
) -> tuple[SideSweep, ...]:
    """Every side given by `details` over the positions, all there are when none are given. [m]"""
    places = exterior_depths or all_positions(wall, frame)
    return tuple(
        SideSweep(
            detail=detail,
            installations=tuple(
                install(wall, frame, detail, place, surface_films=surface_films, fineness=fineness) for place in places
            ),
            framing_share=framing_share(wall, detail, fineness=fineness),
            rule_position=rule_position(wall.stack, frame.depth),
        )
        for detail in details
    )


def window_curve(sides: Sequence[SideSweep], lengths: Sequence[float]) -> Curve:
    """Heat per degree that the installation of a whole window costs over its position. [W/K]

    `lengths` of the sides in the same order [m]; both jambs of a window go into one length.
    """
    if len(sides) != len(lengths):
        raise ValueError(f"{len(sides)} sides but {len(lengths)} lengths, must be one length for each side.")
    curves = [side.curve for side in sides]
    total = sum(length * np.array(curve.values) for curve, length in zip(curves, lengths, strict=True))
    return Curve(positions=curves[0].positions, values=tuple(float(value) for value in np.asarray(total)))


def sill_corner_estimate(frame: FrameBlock, jamb: Installation, sill: Installation) -> float:
    """Estimate of the temperature factor in the corner of jamb and sill; an estimate, not a limit."""
    first, second = (one.factors.coldest.temperature for one in (jamb, sill))
    return corner_estimate(first, second, coldest_alone(frame))


def usual_variants(detail: Detail) -> tuple[tuple[str, Detail], ...]:
    """Changes of a detail worth comparing, in words: buck, gap fill, jamb thickness, insulation on the frame."""
    bare = replace(detail, exterior_jamb=0.0)
    return (
        ("buck 1/2 in", replace(detail, buck=0.0127)),
        ("buck 1-1/2 in", replace(detail, buck=0.038)),
        ("buck stops at the sheathing", replace(detail, buck_through_insulation=False)),
        ("gap left as air", replace(detail, gap_conductivity=0.07)),
        ("gap filled with shims", replace(detail, gap_conductivity=0.12)),
        ("extension jambs 1/2 in", replace(detail, interior_jamb=0.0127, exterior_jamb=0.0127)),
        ("extension jambs 1-1/4 in", replace(detail, interior_jamb=0.032, exterior_jamb=0.032)),
        ("no interior jamb", replace(detail, interior_jamb=0.0)),
        ("no exterior jamb", bare),
        ("insulation lapped 30 mm on the frame, no exterior jamb", replace(bare, lap=0.030)),
        ("insulation lapped 50 mm on the frame, no exterior jamb", replace(bare, lap=0.050)),
    )


def compare_details(
    wall: WallBuild,
    frame: FrameBlock,
    detail: Detail,
    exterior_depth: float,
    *,
    variants: Sequence[tuple[str, Detail]] | None = None,
    fineness: Fineness | None = None,
) -> tuple[Variant, ...]:
    """What changes of the detail do at one position [m], beside the detail itself; changes in W/(m K)."""
    base = install(wall, frame, detail, exterior_depth, fineness=fineness)
    found = [Variant(words="as planned", installation=base, change=0.0)]
    for words, other in variants if variants is not None else usual_variants(detail):
        changed = install(wall, frame, other, exterior_depth, fineness=fineness)
        change = changed.transmittance.value - base.transmittance.value
        found.append(Variant(words=words, installation=changed, change=change))
    return tuple(found)
