"""The room that a panel moves in: how much wider and narrower it gets across its grain, and what its groove holds."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.findings import Subject
from jambs.job.models.openings import Job
from jambs.job.models.panels import PanelsEntry
from jambs.job.models.shop import MoistureEntry
from jambs.length import MM_PER_INCH, Grid, Units
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.findings.panel_findings import PanelRoomUnknown
from jambs.parts.wood.moisture import equilibrium_moisture
from jambs.parts.wood.woods import StockWood, WoodError, change_of_size, wood_of

LEAST_HELD = {Units.INCH: 1 / 8, Units.MM: 3 / MM_PER_INCH}
"""A panel stays at least so deep in each of its grooves [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelMovement:
    """How much wider and narrower than in the shop a panel gets, as a share of its width across the grain."""

    growth: float
    shrinkage: float


STILL = PanelMovement(growth=0.0, shrinkage=0.0)
"""Of sheets, and of what nobody knows more of than the room that is asked for."""


def panel_movement(stock: str, job: Job) -> PanelMovement | None:
    """Return how a stock moves between the shop and both seasons; None where wood or moisture is not known."""
    wood, moisture = panel_wood(stock, job), moisture_change(job)
    if wood is None or moisture is None:
        return None
    across = wood.wood.across(wood.sawn)
    return PanelMovement(
        growth=change_of_size(1.0, across, start=0.0, finish=moisture.gain),
        shrinkage=change_of_size(1.0, across, start=0.0, finish=moisture.loss),
    )


def moisture_change(job: Job) -> MoistureEntry | None:
    """Return what wood gains and loses from the shop to its seasons in the house [%]: as stated, or by the climate."""
    climate = job.outside.climate
    if job.shop.moisture or climate is None:
        return job.shop.moisture
    shop, *seasons = (equilibrium_moisture(air) for air in (climate.shop, climate.inside_winter, climate.inside_summer))
    return MoistureEntry.model_construct(gain=max(*seasons, shop) - shop, loss=shop - min(*seasons, shop))


def panel_wood(stock: str, job: Job) -> StockWood | None:
    """Return the wood of a stock; None for a sheet, and for a name that several woods have."""
    try:
        return wood_of(stock, job.outside.woods)
    except WoodError:
        return None


def panel_room(entry: PanelsEntry, opening_width: float, moves: PanelMovement | None, job: Job) -> float:
    """Return what both grooves leave a panel to swell: as asked for, or as it grows, up to the grid [in].

    Raises:
        CannotBeCut: nobody says, and it cannot be known.
    """
    if entry.panel.room is not None:
        return entry.panel.room
    if moves is None:
        stock = entry.panel.stock
        is_in_table = panel_wood(stock, job) is not None
        raise CannotBeCut(PanelRoomUnknown(subject=Subject.stock(stock), stock=stock, is_in_table=is_in_table))
    return job.shop.grid.up((opening_width + 2 * entry.groove.depth) * moves.growth)


def held_when_driest(panel_width: float, opening_width: float, shrinkage: float) -> float:
    """How deep a panel that sits in the middle of its opening is in each groove when it is narrowest [in]."""
    return (panel_width * (1 - shrinkage) - opening_width) / 2


def wanted_depth(depth: float, held: float, least: float, grid: Grid) -> float:
    """Return the depth of a groove that holds a panel by the least, on the grid [in].

    A groove that is deeper by some holds the panel by as much more, less what its greater width moves: a step more.
    """
    return grid.up(depth + least - held + grid.step)
