"""How much each board of a kit changes across its width, from the shop to the driest and to the dampest season."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from jambs.job.models.outside import Air, ClimateEntry, WoodEntry
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.board.touches import WoodMoves
from jambs.parts.wood.moisture import equilibrium_moisture
from jambs.parts.wood.woods import StockWood, change_of_size, wood_of

LINEAR = (6.0, 14.0)
"""Moisture between which the coefficients hold [%] (Wood Handbook, chapter 13)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardMovement:
    """A board across its width [in]: ``winter`` and ``summer`` changes from the shop, growth positive.

    Moisture in the shop and in both seasons [%]. ``is_beyond``: some of it is outside 6 to 14 %, where the coefficients
    say less.
    """

    part: Part
    wood: StockWood
    shop_moisture: float
    winter_moisture: float
    summer_moisture: float
    winter: float
    summer: float

    @property
    def is_beyond(self) -> bool:
        """Say whether the coefficients were used outside the moisture they hold for."""
        moistures = (self.shop_moisture, self.winter_moisture, self.summer_moisture)
        return not all(LINEAR[0] <= one <= LINEAR[1] for one in moistures)

    @property
    def growth(self) -> float:
        """The most it gets wider than it was in the shop [in], at least nothing."""
        return max(self.winter, self.summer, 0.0)

    @property
    def shrinkage(self) -> float:
        """The most it gets narrower than it was in the shop [in], at least nothing."""
        return -min(self.winter, self.summer, 0.0)

    @property
    def moves(self) -> WoodMoves:
        """The movement as a part carries it to the cut sheet."""
        return WoodMoves(winter=self.winter, summer=self.summer, is_about=self.is_beyond)

    @property
    def share(self) -> float:
        """The greatest change as a share of the width."""
        return max(self.growth, self.shrinkage) / self.part.width


def board_movement(part: Part, climate: ClimateEntry, entries: Mapping[str, WoodEntry]) -> BoardMovement | None:
    """Return how a part moves; None for metal, sheet goods and bucks, which are inside the wall."""
    wood = wood_of(part.stock, entries) if part.is_wood and part.where is not Where.BUCK else None
    if wood is None:
        return None
    seasons = _seasons(part.where, climate)
    shop, winter, summer = (equilibrium_moisture(air) for air in (climate.shop, *seasons))
    coefficient, width = wood.wood.across(wood.sawn), moving_width(part)
    return BoardMovement(
        part=part,
        wood=wood,
        shop_moisture=shop,
        winter_moisture=winter,
        summer_moisture=summer,
        winter=change_of_size(width, coefficient, start=shop, finish=winter),
        summer=change_of_size(width, coefficient, start=shop, finish=summer),
    )


def moving_width(part: Part) -> float:
    """Return the wood across the grain that moves a part's edges [in]: of a frame with panels its stiles alone."""
    panels = part.blank.panels
    return part.width - panels.layout.opening_width if panels else part.width


def _seasons(where: Where, climate: ClimateEntry) -> tuple[Air, Air]:
    if where is Where.INTERIOR:
        return climate.inside_winter, climate.inside_summer
    return climate.outside_winter, climate.outside_summer
