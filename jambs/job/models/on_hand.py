"""Boards on hand and the drops worth keeping: what the shop has before anything is bought."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, model_validator

from jambs.job.models.fields import NUMBER, Amount, BoardWidth, Long, Model, ModelOrText, Text, Thickness, fault

Price = Annotated[float, BeforeValidator(Amount(0, 100_000)), NUMBER]
"""Of one board, in the job's currency."""
Count = Annotated[int, BeforeValidator(lambda value: int(Amount(0, 10_000, whole=True)(value))), NUMBER]


class OnHandEntry(ModelOrText):
    """Boards on hand: of one size, or all those of a table (``drops.csv``) beside the job file.

    ``edges: straight``: ripped or planed already, so that nothing is lost to straighten one.
    """

    table: Text | None = None
    stock: Text | None = None
    nominal: Text | None = None
    thickness: Thickness | None = None
    width: BoardWidth | None = None
    length: Long | None = None
    count: Count = 1
    price: Price = 0.0
    edges: Literal["rough", "straight"] = "rough"

    @model_validator(mode="before")
    @classmethod
    def _from_text(cls, value: Any) -> Any:
        return {"table": value} if isinstance(value, str) else value

    @model_validator(mode="after")
    def _sized(self) -> OnHandEntry:
        if self.table is not None:
            return self
        if self.stock is None or self.length is None:
            raise fault("gives no stock or no length; write both, or name a table of drops")
        if self.nominal is None and (self.thickness is None or self.width is None):
            raise fault("gives neither nominal nor both thickness and width; write one or the other")
        return self


class LeastDrop(Model):
    """The least drop that is kept [in]."""

    length: Long
    width: BoardWidth


class OnHand(Model):
    """Boards on hand, all of one actual size [in]; ``price``: what one is worth, else nothing.

    ``is_straight``: both edges are straight already. ``source``: the job file or the table they stand in.
    """

    stock: str
    nominal: str | None
    thickness: float
    width: float
    length: float
    count: int
    price: float = 0.0
    is_straight: bool = False
    source: str = "job file"
