"""A window seen square on, as its elevation on paper has it: frames, panes, and how each unit opens."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.drawings.views.sash import corners, frame_box, glass_boxes, opening_lines, unit_boxes
from jambs.drawings.views.shaped_window import outlines_seen
from jambs.geometry import Point
from jambs.job.models.openings import Opening

Polygon = Sequence[Point]


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowSeen:
    """Polygons [in], x right, y up as it is looked at, from the lower left corner of the frame.

    ``outline``: of the whole, ``frames``: of each unit; ``opens``: lines to the hinge, broken on the screen.
    """

    outline: Polygon
    frames: tuple[Polygon, ...]
    panes: tuple[Polygon, ...]
    opens: tuple[Polygon, ...]


def window_seen(opening: Opening, *, from_outside: bool) -> WindowSeen:
    """Return the window of an opening as seen from one side."""
    if opening.shape:
        outline, pane = outlines_seen(opening, from_outside=from_outside)
        return WindowSeen(outline=outline, frames=(outline,), panes=(pane,), opens=())
    units = unit_boxes(opening, from_outside=from_outside)
    return WindowSeen(
        outline=corners(frame_box(opening)),
        frames=tuple(corners(box) for _, box, _ in units),
        panes=tuple(corners(pane) for unit, _, sight in units for pane in glass_boxes(unit, sight)),
        opens=tuple(
            line.points for unit, _, sight in units for line in opening_lines(unit, sight, from_outside=from_outside)
        ),
    )
