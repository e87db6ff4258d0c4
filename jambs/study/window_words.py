"""What of a window nobody stated that its heat asks for, in words."""

from __future__ import annotations

from jambs.job.models.metal_returns import SheetMetal
from jambs.job.models.openings import Assumed
from jambs.length import Units


def frame_transmittance_assumed(transmittance: float) -> Assumed:
    """Return the usual U_f [W/m2K] of a frame."""
    why = "usual for wood or plastic, no source; give u_frame. The coldest corner depends on it"
    return Assumed(what="transmittance of the frame", value=f"{transmittance:g} W/m²K", why=why)


def glazing_assumed(thickness: float, space: float, units: Units, *, is_given: bool) -> Assumed:
    """Return the thickness of a glazing, from pane to pane [in]; ``is_given``: the job gives its panes."""
    why = f"panes with {units.text(space)} between them{'' if is_given else ', two panes; the job gives no glass'}"
    return Assumed(what="thickness of the glazing", value=units.text(thickness), why=why)


def glazing_place_assumed(place: str, why: str) -> Assumed:
    """Return where in the frame's depth the glazing was put."""
    return Assumed(what="glazing in the depth of the frame", value=place, why=why)


def glass_edge_assumed() -> Assumed:
    """Return where the edge of the glass was put."""
    why = "the job gives no width of the sash's own stiles and rails"
    return Assumed(what="edge of the glass", value="at the wider face of the frame", why=why)


def metal_assumed(material: str, kind: SheetMetal, conductivity: float) -> Assumed:
    """Return the metal [W/(m K)] that a sheet of an unknown name was taken to be."""
    known = ", ".join(SheetMetal)
    why = f'the usual sheet; "{material}" does not tell what it is of; give metal in returns: {known}'
    return Assumed(what="bent metal outside", value=f"{kind.value}, {conductivity:g} W/mK", why=why)
