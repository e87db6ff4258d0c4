"""Sun and sky on the glass of a window at one position, through its own exterior jambs, casing and cladding."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.length import METERS_PER_INCH
from jambs.section.region import SectionCut as Side
from jambs.study.at_position import AtPosition, DrawnSide, WindowInWall
from jambs.study.heat.section_cut import EXTERIOR_TRIM
from jambs.study.regions.region import StudyError
from jambs.study.sun.daylight import SUMMER_MONTHS, WINTER_MONTHS, Reveal, beam_path, monthly_sun, sky_component


@dataclass(frozen=True, slots=True, kw_only=True)
class SunAt:
    """Fraction of the clear-sky beam on a wall that faces one way which reaches the glass, 0 to 1.

    None where next to none reaches this wall in those months.
    """

    facing_deg: float
    winter: float | None
    summer: float | None


def sun_at(reveal: Reveal, *, latitude_deg: float, facing_deg: float) -> SunAt:
    """Sun of the half-year of winter and of the three months of summer, of the hemisphere."""
    north = latitude_deg >= 0
    return SunAt(
        facing_deg=facing_deg,
        winter=_sun(reveal, _months(WINTER_MONTHS, north), latitude_deg, facing_deg),
        summer=_sun(reveal, _months(SUMMER_MONTHS, north), latitude_deg, facing_deg),
    )


def sky_at(reveal: Reveal) -> float:
    """Sky component on the glass on an overcast day, 0 to 1; nothing stands opposite (a bare wall gets 0.396)."""
    return sky_component(reveal, steps=90)


def reveal_at(subject: WindowInWall, found: AtPosition) -> Reveal:
    """The reveal before the glass [m]: from the pane to the outermost of cladding and casing, between the jambs."""
    jamb, head = found.side(Side.JAMB), found.side(Side.HEAD)
    frame, blocks = subject.opening.frame, subject.window.blocks
    placement = found.kit.placement
    pane = placement.outside_edge - blocks[Side.JAMB].panel_start / METERS_PER_INCH
    trim = subject.opening.exterior
    planes = subject.planes
    outermost = max(planes.cladding_face, planes.trim_plane + (trim.casing.thickness if trim else 0.0))
    return Reveal(
        width=frame.width * METERS_PER_INCH - 2 * blocks[Side.JAMB].face,
        height=frame.height * METERS_PER_INCH - blocks[Side.HEAD].face - blocks[Side.SILL].face,
        recess=max(0.0, (outermost - pane) * METERS_PER_INCH),
        above=_free(head, blocks[Side.HEAD].face),
        beside=_free(jamb, blocks[Side.JAMB].face),
        rim=blocks[Side.JAMB].panel_start,
    )


def _free(side: DrawnSide | None, face: float) -> float:
    """From the edge of the glass to the face of the exterior jamb, or to the opening's edge where there is none. [m]"""
    if side is None:
        return face
    jambs = [block.y1 for block in side.cut.blocks if block.kind in EXTERIOR_TRIM]
    return max(0.0, face - max(jambs, default=0.0))


def _months(months: tuple[int, ...], north: bool) -> tuple[int, ...]:
    return months if north else tuple((month + 5) % 12 + 1 for month in months)


def _sun(reveal: Reveal, months: tuple[int, ...], latitude_deg: float, facing_deg: float) -> float | None:
    try:
        path = beam_path(months, latitude_deg=latitude_deg, facing_deg=facing_deg)
    except StudyError:
        return None
    return monthly_sun(reveal, path)
