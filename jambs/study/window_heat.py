"""A window type of the job as the heat study sees it: one frame block for each side, and what had to be assumed."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.openings import Assumed
from jambs.job.models.windows import USUAL_PANE, USUAL_PANES, USUAL_SPACE, WindowType
from jambs.length import METERS_PER_INCH, Units
from jambs.section.region import SectionCut as Side
from jambs.study.heat.frame import FrameBlock
from jambs.study.window_words import (
    frame_transmittance_assumed,
    glass_edge_assumed,
    glazing_assumed,
    glazing_place_assumed,
)

USUAL_FRAME_TRANSMITTANCE = 1.6
"""U_f of a wood or plastic frame where the job gives none [W/m2K]: common practice, no source."""


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
    panes, pane = (glass.panes, glass.pane_thickness) if glass else (USUAL_PANES, USUAL_PANE[units])
    space = glass.space if glass and glass.space is not None else USUAL_SPACE[units]
    thickness = panes * pane + (panes - 1) * space
    depth = window.jamb_depth + window.frame_projection
    set_back, stated = _pane_set_back(window, depth, thickness)
    faces = {
        side: max(window.frame_face.at(seen), window.outside_face.at(seen))
        for side, seen in ((cut, cut.side) for cut in Side)
    }
    blocks = {
        side: FrameBlock(
            depth=depth * METERS_PER_INCH,
            face=face * METERS_PER_INCH,
            transmittance=window.u_frame or USUAL_FRAME_TRANSMITTANCE,
            panel_thickness=thickness * METERS_PER_INCH,
            panel_setback=None if set_back is None else set_back * METERS_PER_INCH,
        )
        for side, face in faces.items()
    }
    return WindowHeat(blocks=blocks, assumed=_assumed(window, thickness, stated, units))


def _pane_set_back(window: WindowType, depth: float, thickness: float) -> tuple[float | None, tuple[str, str] | None]:
    """Frame's outside edge → outer face of the glazing, in the middle of its sash [in]; where assumed, place and why.

    None: in the middle of the frame. A pane past an edge of the frame is put at that edge, as the block of the frame
    has no room for it beyond.
    """
    if window.sash_thickness is None or window.sash_set_back is None:
        return None, ("in the middle", "the job gives no sash_thickness and sash_set_back")
    outer = window.sash_set_back
    if not window.sash.outward:
        outer = depth - window.sash_set_back - window.sash_thickness
    wanted = outer + (window.sash_thickness - thickness) / 2
    found = min(max(wanted, 0.0), depth - thickness)
    return found, None if found == wanted else ("at the frame's edge", "the sash's own middle lies past it")


def _assumed(window: WindowType, thickness: float, pane: tuple[str, str] | None, units: Units) -> tuple[Assumed, ...]:
    found = []
    if window.u_frame is None:
        found.append(frame_transmittance_assumed(USUAL_FRAME_TRANSMITTANCE))
    if window.glass is None or (window.glass.space is None and window.glass.panes > 1):
        found.append(glazing_assumed(thickness, USUAL_SPACE[units], units, is_given=window.glass is not None))
    if pane:
        found.append(glazing_place_assumed(*pane))
    return (*found, glass_edge_assumed())
