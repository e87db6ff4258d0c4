"""A window type of the job as the heat study sees it: one frame block for each side, and what had to be assumed."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.openings import Assumed
from jambs.job.models.windows import WindowType
from jambs.length import Units, decimal_text, length_text
from jambs.section.region import SectionCut as Side
from jambs.study.heat.frame import FrameBlock
from jambs.study.wall.wall_heat import METRES_PER_INCH

USUAL_FRAME_TRANSMITTANCE = 1.6
"""U_f of a wood or plastic frame where the job gives none [W/m2K]: common practice, no source."""
USUAL_PANES, USUAL_PANE, PANE_SPACE = 2, 1 / 8, 1 / 2
"""Of the glazing [in]; the space between panes is never in the job. It hardly changes the figures of a position."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowHeat:
    """Frame blocks by the side of the opening, and what was assumed of the window."""

    blocks: dict[Side, FrameBlock]
    assumed: tuple[Assumed, ...]


def window_heat(window: WindowType, *, units: Units) -> WindowHeat:
    """Make the frame blocks of a window type: as deep as the frame, each as wide as its wider face.

    Raises:
        StudyError: a face is too narrow to hold the glazing, or the frame too shallow.
    """
    glass = window.glass
    panes, pane = (glass.panes, glass.pane_thickness) if glass else (USUAL_PANES, USUAL_PANE)
    thickness = panes * pane + (panes - 1) * PANE_SPACE
    depth = window.jamb_depth + window.frame_projection
    faces = {
        side: max(getattr(window.frame_face, name), getattr(window.outside_face, name))
        for side, name in ((Side.JAMB, "right"), (Side.HEAD, "head"), (Side.SILL, "sill"))
    }
    blocks = {
        side: FrameBlock(
            depth=depth * METRES_PER_INCH,
            face=face * METRES_PER_INCH,
            transmittance=window.u_frame or USUAL_FRAME_TRANSMITTANCE,
            panel_thickness=thickness * METRES_PER_INCH,
        )
        for side, face in faces.items()
    }
    return WindowHeat(blocks=blocks, assumed=_assumed(window, thickness, units))


def _assumed(window: WindowType, thickness: float, units: Units) -> tuple[Assumed, ...]:
    found = []
    if window.u_frame is None:
        value = f"{decimal_text(USUAL_FRAME_TRANSMITTANCE, 1)} W/m²K"
        why = "usual for wood or plastic, no source; give u_frame. The coldest corner depends on it"
        found.append(Assumed(what="transmittance of the frame", value=value, why=why))
    spaces = length_text(PANE_SPACE, units=units)
    why = f"panes with {spaces} between them{'' if window.glass else ', two panes; the job gives no glass'}"
    found.append(Assumed(what="thickness of the glazing", value=length_text(thickness, units=units), why=why))
    why = "the job gives no width of the sash's own stiles and rails"
    found.append(Assumed(what="edge of the glass", value="at the wider face of the frame", why=why))
    return tuple(found)
