"""The shop's settings, the limits it works within, and the boards at hand."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from jambs.job.fields import (
    NUMBER,
    Amount,
    BoardWidth,
    Depth,
    Fit,
    Height,
    Long,
    Model,
    Reveal,
    Small,
    Text,
    Thickness,
    Weight,
    fault,
)
from jambs.length import GRIDS, Grid


def _read_grid(value: Any) -> Grid:
    if isinstance(value, Grid):
        return value
    text = str(value).strip().removesuffix('"').removesuffix(" in")
    if text not in GRIDS:
        raise fault(f"{value!r} is no grid; write one of {', '.join(GRIDS)}")
    return GRIDS[text]


class BoardEntry(Model):
    """A board that can be had: by its nominal name (``1x6``), or by its own actual size."""

    stock: Text
    nominal: Text | None = None
    thickness: Thickness | None = None
    width: BoardWidth | None = None
    lengths: tuple[Long, ...] = ()
    price_per_foot: Annotated[float, BeforeValidator(Amount(0.001, 100_000)), NUMBER] | None = None

    @model_validator(mode="after")
    def _sized(self) -> BoardEntry:
        own = self.thickness is not None and self.width is not None
        if self.nominal is None and not own:
            raise fault("gives neither nominal nor both thickness and width; write nominal: 1x6, or both sizes")
        return self


class Shop(Model):
    """How the shop works [in]: the grid sizes are rounded to, the saw, what is left for fitting."""

    grid: Annotated[Grid, BeforeValidator(_read_grid), WithJsonSchema({"enum": list(GRIDS)})]
    kerf: Fit
    proud: Fit
    shim_space: Reveal
    edge_allowance: Reveal
    taper_tolerance: Fit
    paper: Literal["letter", "A4"] = "letter"
    boards: Annotated[tuple[BoardEntry, ...], Field(min_length=1)]


class Escape(Model):
    """What an escape opening must have clear: area [sq in], width, height, sill over the floor [in].

    Defaults: International Residential Code R310 (5.7 sq ft, 20 in, 24 in, 44 in); the local code decides.
    """

    area_square_feet: Annotated[float, BeforeValidator(Amount(0.1, 100)), NUMBER] = 5.7
    width: Depth = 20.0
    height: Depth = 24.0
    greatest_sill_height: Height = 44.0


class Limits(Model):
    """What a position, a wall and a window may be at most and at least.

    None of these is sawn to; each has a default of common practice, no source, and is printed as assumed.
    Past ``overhang`` or ``weight`` the papers say *needs an engineer*.
    """

    least_interior_depth: Depth = 0.75
    greatest_interior_depth: Depth = 12.0
    least_exterior_depth: Depth = 0.75
    greatest_exterior_depth: Depth = 8.0
    overhang: Depth = 3.0
    weight: Weight = 150.0
    sash_opening_deg: Annotated[float, BeforeValidator(Amount(0, 180)), NUMBER] = 80.0
    handle_clearance: Small = 1.0
    taper: Reveal = 0.5
    twist: Reveal = 0.25
    shift_for_board: Small = 0.75
    escape: Escape = Escape()


class Board(Model):
    """A board at hand with its actual size [in]: thickness × width, and the lengths it is sold in."""

    stock: str
    nominal: str | None
    thickness: float
    width: float
    lengths: tuple[float, ...] = ()
    price_per_foot: float | None = None
    source: str = "job file"

    @property
    def words(self) -> str:
        """The board as it is bought: ``1x6 poplar``."""
        return f"{self.nominal} {self.stock}" if self.nominal else self.stock
