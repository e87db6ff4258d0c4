"""What was assumed of woods and sealants, as people read it."""

from __future__ import annotations

from jambs.job.models.openings import Assumed
from jambs.movement.plan import SEALANT_PERCENT, KitMovement
from jambs.parts.wood.woods import StockWood


def assumed_of(movement: KitMovement) -> tuple[Assumed, ...]:
    """List what the job leaves out: of each stock once, and what the sealant takes."""
    woods = (_assumed(one.part.stock, one.wood) for one in movement.boards)
    found = tuple(dict.fromkeys(one for one in woods if one))
    if not movement.is_rating_assumed:
        return found
    value = f"±{SEALANT_PERCENT:g} % of the joint"
    return (*found, Assumed(what="sealant", value=value, why="ASTM C920 class 25; read it on the cartridge"))


def _assumed(stock: str, found: StockWood) -> Assumed | None:
    if found.is_stated and found.wood.is_sure:
        return None
    why = "the species is stated" if found.is_stated else "the job does not say; flat-sawn boards move most"
    if not found.wood.is_sure:
        why += "; coefficients from memory"
    return Assumed(what=f"wood of {stock}", value=f"{found.wood.species}, {found.sawn.value} sawn", why=why)
