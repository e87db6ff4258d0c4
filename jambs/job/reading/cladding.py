"""What cladding that returns to the frame asks of the wall: that it has cladding, and as thick where it is mitered."""

from __future__ import annotations

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.layers import Role, Wall
from jambs.job.models.openings import OpeningEntry
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.tree import TextSource
from jambs.length import HALF_64TH, Units


def ask_cladding(
    entry: OpeningEntry, wall: Wall, exterior: ExteriorTrim | None, source: TextSource, complaints: Complaints
) -> bool:
    """Hold an opening whose cladding is returned to its wall; say whether something was wrong."""
    clad = exterior.cladding_returns if exterior else None
    if exterior is None or clad is None:
        return False
    said = _of_wall(wall, clad.thickness, complaints.units, is_mitered=clad.is_mitered)
    if not said and exterior.sill is None and entry.floor_below_frame is None:
        said = "gives cladding_returns and no sill, so that water runs in under the frame; give it a sill"
    if said:
        complaints.say(source, ("exterior_trim",), said)
    return bool(said)


def _of_wall(wall: Wall, thickness: float, units: Units, *, is_mitered: bool) -> str:
    """Say what the wall lacks; nothing where its cladding can turn the corner."""
    layers = [layer for layer in wall.layers if layer.role is Role.CLADDING]
    if not layers:
        return (
            f"gives cladding_returns, and the wall {wall.name!r} names no cladding that could turn the corner; add it "
            "as the last of its layers (role: cladding), or write a jamb instead"
        )
    deep = sum(layer.thickness for layer in layers)
    if is_mitered and abs(deep - thickness) > HALF_64TH:
        return (
            f"miters cladding_returns {units.text(thickness)} thick to cladding of {units.text(deep)} in the wall "
            f"{wall.name!r}, so that the miter does not close; write the same thickness, or corner: corner boards"
        )
    return ""
