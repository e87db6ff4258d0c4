"""What of a wall nobody stated, in words."""

from __future__ import annotations

from jambs.job.models.openings import Assumed
from jambs.length import Units, decimal_text, share_text


def framing_share_assumed(layer: str, share: float, spacing: float, units: Units) -> Assumed:
    """Return the share of framing, 0 to 1, that is usual for a spacing of studs [in]."""
    why = f"usual for studs {units.text(spacing)} apart with plates and openings, from memory"
    return Assumed(what=f"share of framing in {layer}", value=share_text(share), why=why)


def no_battens_assumed(layer: str) -> Assumed:
    """Return that a layer is taken to have no battens, as nobody gave their spacing."""
    why = "the job gives no spacing for them; give spacing, member_width or framing_share"
    return Assumed(what=f"battens in {layer}", value="none", why=why)


def member_share_assumed(layer: str, width: float, spacing: float, units: Units) -> Assumed:
    """Return the share of members that a width and a spacing make, one of which is the usual one [in]."""
    why = f"width {units.text(width)} over spacing {units.text(spacing)}"
    return Assumed(what=f"share of members in {layer}", value=f"{decimal_text(100 * width / spacing, 1)} %", why=why)


def conductivity_assumed(layer: str, conductivity: float) -> Assumed:
    """Return the conductivity [W/mK] that is usual for the role of a layer."""
    why = "usual for its role, from memory; neither job nor catalog states it"
    return Assumed(what=f"conductivity of {layer}", value=f"{decimal_text(conductivity, 3)} W/mK", why=why)


def left_out_assumed(layers: tuple[str, ...]) -> Assumed:
    """Return the layers that count for neither heat nor damp."""
    why = "ventilated, or outside the ventilated space: film of 0.13 m²K/W before what stays"
    return Assumed(what="left out of heat and damp", value=", ".join(layers), why=why)
