"""The arithmetic of a position: flange plane ↔ interior and exterior depth [in]."""

from __future__ import annotations

from jambs.job.models.windows import WindowType
from jambs.wall.planes import WallPlanes


def interior_depth(window: WindowType, flange_plane: float) -> float:
    """Finished face → inside edge of the frame [in]."""
    return flange_plane - window.jamb_depth


def exterior_depth(window: WindowType, planes: WallPlanes, flange_plane: float) -> float:
    """Outside edge of the frame → trim plane [in]; negative where the frame stands proud of it."""
    return planes.trim_plane - window.frame_projection - flange_plane


def share_at(planes: WallPlanes, flange_plane: float) -> float | None:
    """Share of the added depth that is taken inside, 0 … 1; None where the wall adds no depth."""
    added = planes.added_depth
    return (flange_plane - planes.sheathing_plane) / added if added > 0 else None


def flange_at_share(planes: WallPlanes, share: float) -> float:
    """Flange plane that takes a share of the added depth inside [in]."""
    return planes.sheathing_plane + share * planes.added_depth


def flange_at_equal_depths(window: WindowType, planes: WallPlanes) -> float:
    """Flange plane that makes interior and exterior depth equal [in]."""
    return (planes.trim_plane + window.jamb_depth - window.frame_projection) / 2
