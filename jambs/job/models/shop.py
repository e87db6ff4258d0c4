"""The shop's settings, the limits it works within, and the boards at hand."""

from __future__ import annotations

from typing import Annotated, Any, Literal, TypeVar

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from jambs.job.models.fields import (
    KG_PER_POUND,
    NUMBER,
    Amount,
    BoardWidth,
    Depth,
    Fit,
    FrameSize,
    Height,
    Long,
    Model,
    Reveal,
    Small,
    Text,
    Thickness,
    Weight,
    YesNo,
    fault,
)
from jambs.job.models.on_hand import Count, LeastDrop, OnHandEntry, Price
from jambs.length import FRAMING_GRIDS, GRIDS, MM_PER_INCH, TAPE_GRIDS, Grid, Units


def _read_grid(value: Any) -> Grid:
    if isinstance(value, Grid):
        return value
    text = str(value).strip().removesuffix('"').removesuffix(" in")
    if text not in GRIDS:
        raise fault(f"{value!r} is not a grid; write one of {', '.join(GRIDS)}")
    return GRIDS[text]


def _read_framing_grid(value: Any) -> Grid:
    if isinstance(value, Grid):
        return value
    text = str(value).strip().removesuffix('"').removesuffix(" in")
    if text not in FRAMING_GRIDS:
        raise fault(f"{value!r} is not a grid of framing; write one of {', '.join(FRAMING_GRIDS)}")
    return FRAMING_GRIDS[text]


def _read_prices(value: Any) -> Any:
    return [value] if isinstance(value, str | int | float) else value


_NUMBER = {"type": ["string", "number"]}
Prices = Annotated[
    tuple[Price, ...],
    BeforeValidator(_read_prices),
    WithJsonSchema(
        {
            "anyOf": [_NUMBER, {"type": "array", "items": _NUMBER}],
            "description": "a price, or one for each length: [4.20, 5.60]",
        }
    ),
]
"""Of one board, or one price for each length."""
PerLength = Annotated[float, BeforeValidator(Amount(0.001, 100_000)), NUMBER]


def _read_part(value: Any) -> float:
    text = str(value).strip()
    number = Amount(0, 100)(text.removesuffix("%").strip())
    return number / 100 if text.endswith("%") or number > 1 else number


Percent = Annotated[float, BeforeValidator(_read_part), NUMBER]
"""A part of a whole: 10 % or 0.1."""
MOST_SPRINGBACK = 0.25
"""A lamination that loses more of its curve has too few plies to be one; common practice, no source."""


def _read_springback(value: Any) -> float:
    part = _read_part(value)
    if part > MOST_SPRINGBACK:
        raise fault(f"{value!r} is more than a lamination springs back; 0 % to {MOST_SPRINGBACK * 100:g} % is allowed")
    return part


Springback = Annotated[float, BeforeValidator(_read_springback), NUMBER]


class BoardEntry(Model):
    """A board or a sheet that can be had: by its nominal name (``1x6``), or by its own actual size.

    ``sheet``: width × length, the grain along the length. ``price``: of one board, or one for each of its lengths.
    ``supply``: how many can be had, of each length.
    """

    stock: Text
    nominal: Text | None = None
    thickness: Thickness | None = None
    width: BoardWidth | None = None
    sheet: FrameSize | None = None
    lengths: tuple[Long, ...] = ()
    price_per_foot: PerLength | None = None
    price_per_meter: PerLength | None = None
    price: Prices | None = None
    supply: Count | None = None

    @model_validator(mode="after")
    def _sized(self) -> BoardEntry:
        own = self.thickness is not None and (self.width is not None or self.sheet is not None)
        if self.nominal is None and not own:
            raise fault("gives neither nominal nor both thickness and width; write one or the other")
        if self.sheet is not None and (self.width is not None or self.lengths):
            raise fault("gives sheet and also width or lengths; the sheet has both, keep the one line")
        return self

    @model_validator(mode="after")
    def _priced(self) -> BoardEntry:
        given = [key for key in ("price", "price_per_foot", "price_per_meter") if getattr(self, key) is not None]
        if len(given) > 1:
            raise fault(f"gives {' and '.join(given)}; keep one of them")
        boards = 1 if self.sheet is not None else len(self.lengths)
        if self.price is not None and len(self.price) != boards:
            raise fault(f"gives {len(self.price)} as price for {boards} lengths; write one price for each length")
        return self


class MoistureEntry(Model):
    """What wood gains from the shop to its dampest season in the house, and loses to its driest [% of dry weight]."""

    gain: Annotated[float, BeforeValidator(Amount(0, 15)), NUMBER]
    loss: Annotated[float, BeforeValidator(Amount(0, 15)), NUMBER]


class Shop(Model):
    """How the shop works [in]: the grid sizes are rounded to, the saw, what is left for fitting, what is on hand.

    ``kerf``: of every blade; ``rip_kerf``: of the rip blade, where it differs. ``edge_allowance``: lost to straighten
    the first edge of a board that is ripped; ``far_edge_allowance``: and of the other. ``end_trim``: cut off each end
    of a board. ``least_strip``: narrowest rip the saw holds safely. ``head_to_tail``: flat mitered pieces
    lie in pairs, one turned end for end, where that saves boards. ``planned_allowance``: width left on parts whose
    depth is only planned, in flared openings at least. ``jointing_allowance``: off each edge that is glued;
    ``glue_up_over``: how much longer than the part the strips of a glue-up are. ``springback``: share of its curvature
    that a lamination loses off the form. ``horn_play``: how far the horns of a stool stay off the finished wall, so
    that it may swell. ``moisture``: what wood gains and loses when it leaves the shop. ``spares``: boards bought
    beyond the plan. ``least_drop``: what is kept.
    ``large_drawings``: printed on tabloid or A3.
    """

    grid: Annotated[Grid, BeforeValidator(_read_grid), WithJsonSchema({"enum": list(GRIDS)})]
    framing_grid: (
        Annotated[Grid, BeforeValidator(_read_framing_grid), WithJsonSchema({"enum": list(FRAMING_GRIDS)})] | None
    ) = None
    kerf: Fit
    proud: Fit
    shim_space: Reveal
    edge_allowance: Reveal
    taper_tolerance: Fit
    rip_kerf: Fit | None = None
    far_edge_allowance: Reveal | None = None
    end_trim: Reveal | None = None
    least_strip: Reveal | None = None
    head_to_tail: YesNo = False
    planned_allowance: Reveal | None = None
    jointing_allowance: Fit | None = None
    glue_up_over: Small | None = None
    horn_play: Fit | None = None
    moisture: MoistureEntry | None = None
    spares: Percent | None = None
    springback: Springback | None = None
    least_drop: LeastDrop | None = None
    currency: Text = "$"
    on_hand: tuple[OnHandEntry, ...] = ()
    paper: Literal["letter", "A4"] = "letter"
    large_drawings: YesNo = False
    boards: Annotated[tuple[BoardEntry, ...], Field(min_length=1)]

    @property
    def framers_grid(self) -> Grid:
        """What a framer saws to: the framing grid, else what is marked on his tape."""
        return self.framing_grid or TAPE_GRIDS[self.grid.units]


Usual = TypeVar("Usual", bound=Model)


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


USUAL_METRIC = Limits.model_construct(
    _fields_set=set(),
    least_interior_depth=20 / MM_PER_INCH,
    greatest_interior_depth=300 / MM_PER_INCH,
    least_exterior_depth=20 / MM_PER_INCH,
    greatest_exterior_depth=200 / MM_PER_INCH,
    overhang=75 / MM_PER_INCH,
    weight=70 / KG_PER_POUND,
    handle_clearance=25 / MM_PER_INCH,
    taper=12 / MM_PER_INCH,
    twist=6 / MM_PER_INCH,
    shift_for_board=20 / MM_PER_INCH,
    escape=Escape.model_construct(
        _fields_set=set(),
        width=508 / MM_PER_INCH,
        height=610 / MM_PER_INCH,
        greatest_sill_height=1118 / MM_PER_INCH,
    ),
)
"""The same in a metric job, in round millimeters: common practice, no source; R310 as it is printed in millimeters."""


def in_units(limits: Limits, units: Units) -> Limits:
    """Return limits whose defaults are round in the units of the job; what the job gives stays."""
    if units is Units.INCH:
        return limits
    with_escape = limits.model_copy(update={"escape": _with_usual(limits.escape, USUAL_METRIC.escape)})
    return _with_usual(with_escape if "escape" in limits.model_fields_set else limits, USUAL_METRIC)


def _with_usual(given: Usual, usual: Usual) -> Usual:
    """Return a model with other defaults; which keys were given stays known."""
    stated = {key: getattr(given, key) for key in given.model_fields_set}
    return type(given).model_construct(_fields_set=set(stated), **{**dict(usual), **stated})


class Board(Model):
    """A board that can be had with its actual size [in]: thickness × width, and the lengths it is sold in.

    ``prices``: one for each length, where they are given so; ``price_per_foot`` where they are not.
    """

    stock: str
    nominal: str | None
    thickness: float
    width: float
    lengths: tuple[float, ...] = ()
    price_per_foot: float | None = None
    prices: tuple[float, ...] = ()
    supply: int | None = None
    is_sheet: bool = False
    source: str = "job file"

    @property
    def words(self) -> str:
        """The board as it is bought: ``1x6 poplar``."""
        return f"{self.nominal} {self.stock}" if self.nominal else self.stock
