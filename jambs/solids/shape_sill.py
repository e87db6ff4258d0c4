"""The path between exterior jambs that stand on a sloping sill under a shape without two legs."""

from __future__ import annotations

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FramePath
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.shapes.clear import ClearOpening, clear_opening
from jambs.parts.trim.exterior_sill import sill_fall
from jambs.sides import Side
from jambs.solids.model import KitSolids


def stands_on_sill(solids: KitSolids) -> bool:
    """Say whether no two upright legs stand on an exterior sill."""
    opening = solids.kit.placement.opening
    is_cut = opening.shape is not None and opening.shape.is_cut_below(opening.frame)
    return is_cut and opening.exterior is not None and opening.exterior.sill is not None


def clear_on_sill(solids: KitSolids, trim: ExteriorTrim, out: float) -> ClearOpening:
    """Return the clear opening between the exterior jambs, down to the sill so far outside the frame [in]."""
    opening, sill = solids.kit.placement.opening, trim.sill
    assert sill is not None
    bottom = -trim.sealant_joint - sill_fall(sill.under_frame + out, sill.slope)
    return clear_opening(
        opening.frame,
        opening.window.outside_face,
        frame_reveal=trim.frame_reveal,
        grid=solids.job.shop.grid,
        bottom=bottom,
    )


def path_on_sill(
    solids: KitSolids, trim: ExteriorTrim, out: float, past: float = 0.0, leaned: float | None = None
) -> FramePath:
    """Return the path that lies ``past`` the faces of the exterior jambs, down to the sill there [in].

    Flared ones are there as they lie ``leaned`` outside the frame; where that is None, as far out as the sill.
    """
    path = clear_path(solids.kit.placement.opening, clear_on_sill(solids, trim, out))
    flared = solids.kit.outside_flares.all_out((out if leaned is None else leaned) - trim.sealant_joint)
    return outset(path, {**{side: past + flared[side] for side in Side}, Side.SILL: 0.0})
