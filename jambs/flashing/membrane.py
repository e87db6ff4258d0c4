"""Where the wall's weather membrane lies, and what laps over the metal and the flange there."""

from __future__ import annotations

from jambs.job.models.layers import Role
from jambs.length import HALF_64TH, MM_PER_INCH
from jambs.wall.planes import WallPlanes

LEAST_FLASHING_LAP = 10 / MM_PER_INCH
"""National Building Code of Canada 9.27.3.8 [in]."""


def weather_membrane(planes: WallPlanes) -> float | None:
    """Depth of the weather membrane [in]: the outermost on or outside the sheathing plane; None where none is named.

    One further in keeps vapor back.
    """
    weather = planes.sheathing_plane - HALF_64TH
    membranes = [one.outer for one in planes.layers if one.layer.role is Role.MEMBRANE and one.outer >= weather]
    return max(membranes, default=None)


def air_control_plane(planes: WallPlanes) -> float:
    """Depth of the layer that keeps air back [in]: the weather membrane, else one further in, else the sheathing plane.

    Common practice, no source: which layer it is, the job does not say; whoever builds the wall decides.
    """
    inner = [one.outer for one in planes.layers if one.layer.role is Role.MEMBRANE]
    weather = weather_membrane(planes)
    return weather if weather is not None else max(inner, default=planes.sheathing_plane)


def is_behind(behind: float) -> bool:
    """Say whether a membrane lies too far behind a plane to lap over what stands there [in]."""
    return behind > LEAST_FLASHING_LAP
