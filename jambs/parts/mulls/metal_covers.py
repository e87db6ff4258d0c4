"""Strips of bent metal over the mulls of ganged units that are lined with metal outside: both long edges hemmed.

They lie on the outside edges of the frames, where wooden covers lie in wooden trim, and are as wide as those.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.job.models.gang import MullCasingEntry
from jambs.job.models.metal_returns import MetalReturnsEntry
from jambs.length import Grid
from jambs.parts.board.bent_metal import FOLD_DEG, BentProfile, MetalLeg, MetalLegKind
from jambs.parts.board.cuts import Crosscut, Rip
from jambs.parts.board.part import Part, PartBlank
from jambs.parts.board.touches import ReturnBend
from jambs.parts.mulls.mull import Cover, outside_covers


def metal_covers(covers: Sequence[Cover], entry: MetalReturnsEntry, outside_edge: float, grid: Grid) -> list[Part]:
    """Make the strips; ``outside_edge``: depth of the frames' outside edges [in]. Their lengths lie on the grid."""
    strip = MullCasingEntry.model_construct(thickness=entry.thickness, stock=entry.material)
    return [_hemmed(one, entry, grid) for one in outside_covers(covers, strip, outside_edge, 0.0)]


def _hemmed(seen: Part, entry: MetalReturnsEntry, grid: Grid) -> Part:
    """Make the blank of a strip from what is seen of it."""
    hems = [MetalLeg(kind=MetalLegKind.HEM, width=entry.hem, direction_deg=turn) for turn in (-FOLD_DEG, FOLD_DEG)]
    face = MetalLeg(kind=MetalLegKind.COVER, width=seen.width, direction_deg=0.0)
    profile = BentProfile(legs=(hems[0], face, hems[1]), thickness=entry.thickness, radius=entry.bend_radius)
    return replace(
        seen,
        blank=PartBlank(stock=entry.material, thickness=entry.thickness, is_metal=True),
        cuts=(Rip(width=profile.girth), Crosscut(length=grid.round(seen.length))),
        in_place=seen.cuts,
        touches=(ReturnBend(profile=profile, lap=0.0),),
    )
