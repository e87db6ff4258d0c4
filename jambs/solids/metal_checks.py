"""Bent metal that lines an opening, measured on its strips: clear width and reveal, where its edges end, its laps."""

from __future__ import annotations

import math

from jambs.job.models.metal_returns import MetalReturnsEntry
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.metal_returns import past_trim_plane
from jambs.sides import LEGS, Side
from jambs.solids.joints import joint
from jambs.solids.lining_measures import clear_and_reveal, is_planned_outside, sealant_joint_at
from jambs.solids.lookup import D, Set, pick
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure


def metal_measures(solids: KitSolids, entry: MetalReturnsEntry) -> list[Measure]:
    """Measure clear width, the reveal at the head, and where the strips begin and end."""
    strips, placement = _strips(solids), solids.kit.placement
    found, is_planned = clear_and_reveal(solids, strips), is_planned_outside(solids)
    for side in (Side.HEAD, *LEGS):
        found.append(sealant_joint_at(solids, strips, side))
        if is_planned:
            past = past_trim_plane(placement, entry) if side.is_leg else 0.0
            ends = strips[side].high[D] - placement.planes.trim_plane
            found.append(
                Measure(name=f"outer edge of the {side.board_words} past the trim plane", asked=past, found=ends)
            )
    return [*found, *metal_sill_measures(solids, entry)]


def metal_sill_measures(solids: KitSolids, entry: MetalReturnsEntry) -> list[Measure]:
    """Measure how far a sill of metal reaches past the cladding; nothing where there is none."""
    if entry.sill is None:
        return []
    out = _strips(solids)[Side.SILL].high[D] - solids.kit.placement.planes.cladding_face
    return [Measure(name="sill past the cladding", asked=entry.sill.nosing, found=out)]


def metal_joints(solids: KitSolids, entry: MetalReturnsEntry) -> list[JointCheck]:
    """Measure how the head lies on the sides, and how they stand on the sill: on their edges, as thick as the sheet."""
    strips = _strips(solids)
    found = metal_feet(solids, entry) if entry.sill else []
    for leg in LEGS:
        side, head = strips[leg], strips[Side.HEAD]
        # The head starts at the right; a side that starts at its foot ends at the head.
        wide = min(width_at_end(side, is_finish=starts_low(side)), width_at_end(head, is_finish=leg is Side.LEFT))
        near = TIGHT + entry.thickness * solids.outside_slack.gap
        asked = entry.thickness * wide
        name = f"the metal return's {leg.board_words} {side.name} and the head {head.name}"
        found.append(joint(name, [side], [head], asked=asked, tolerance=near))
    return found


def metal_feet(solids: KitSolids, entry: MetalReturnsEntry) -> list[JointCheck]:
    """Measure how the sides stand on a sill of metal: on their edges, as thick as the sheet."""
    strips, found = _strips(solids), []
    assert entry.sill is not None
    near, cosine = TIGHT + entry.thickness * solids.outside_slack.gap, math.cos(math.radians(entry.sill.slope))
    sill = strips[Side.SILL]
    for leg in LEGS:
        side = strips[leg]
        asked = entry.thickness * width_at_end(side, is_finish=not starts_low(side)) / cosine
        name = f"the metal return's {leg.board_words} {side.name} and the sill {sill.name}"
        found.append(joint(name, [side], [sill], asked=asked, tolerance=near))
    return found


def starts_low(side: Solid) -> bool:
    """Say whether what stands at a side starts at its foot."""
    return side.part is not None and side.part.seat.along[1] > 0


def width_at_end(strip: Solid, *, is_finish: bool) -> float:
    """Width of a strip or a board at one of its ends [in]."""
    assert strip.part is not None
    sizes = strip.part.silhouettes.sizes
    return sizes.finish_width if is_finish else sizes.start_width


def _strips(solids: KitSolids) -> Set:
    return pick(solids, Where.EXTERIOR, PartKind.METAL_RETURN)
