"""What lines a reveal outside, measured alike whatever it is of: clear width, reveal at the head, sealant joints."""

from __future__ import annotations

from jambs.parts.kit.kit import FigureKind
from jambs.sides import Side
from jambs.solids.inside_measures import against_figure
from jambs.solids.lookup import D, Set, X, Y
from jambs.solids.model import KitSolids
from jambs.solids.report import TIGHT, Measure


def clear_and_reveal(solids: KitSolids, lining: Set) -> list[Measure]:
    """Measure the clear width between the sides, and the reveal of the frame at the head."""
    opening = solids.kit.placement.opening
    assert opening.exterior is not None
    sight = opening.frame.height - opening.window.outside_face.head
    return [
        against_figure(solids, FigureKind.EXTERIOR_CLEAR_WIDTH, lining[Side.RIGHT].low[X] - lining[Side.LEFT].high[X]),
        Measure(
            name="exterior frame reveal at the head",
            asked=opening.exterior.frame_reveal,
            found=lining[Side.HEAD].low[Y] - sight,
            tolerance=TIGHT + solids.job.shop.grid.step / 2,
        ),
    ]


def sealant_joint_at(solids: KitSolids, lining: Set, side: Side) -> Measure:
    """Measure how far off the frame a side begins."""
    placement = solids.kit.placement
    assert placement.opening.exterior is not None
    begins = lining[side].low[D] - placement.outside_edge
    asked = placement.opening.exterior.sealant_joint
    return Measure(name=f"sealant joint at the {side.board_words}", asked=asked, found=begins)


def is_planned_outside(solids: KitSolids) -> bool:
    """Say whether the exterior depth is as planned, measured nowhere."""
    measured = solids.kit.placement.opening.measured
    return measured is None or measured.exterior_depth is None
