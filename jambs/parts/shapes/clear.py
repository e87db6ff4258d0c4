"""The clear opening between extension jambs: the one place where sizes are rounded to the shop's grid."""

from __future__ import annotations

from dataclasses import dataclass, replace

from jambs.job.models.fields import Size
from jambs.job.models.openings import Opening
from jambs.job.models.windows import FrameFace
from jambs.length import Grid


@dataclass(frozen=True, slots=True, kw_only=True)
class ClearOpening:
    """Faces of a trimmed opening in wall coordinates, from the frame's lower left corner [in].

    x of left and right, y of bottom and top; ``frame_reveal``: inner edge of the frame → face of the jamb as it comes
    out after rounding.
    """

    left: float
    right: float
    bottom: float
    top: float
    frame_reveal: float

    @property
    def width(self) -> float:
        """Between the faces of the legs [in]."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Between the faces of head and bottom [in]."""
        return self.top - self.bottom


def interior_clear(opening: Opening, grid: Grid) -> ClearOpening:
    """The clear opening between the interior extension jambs [in]; a door's reaches down to the floor."""
    floor = opening.floor_below_frame
    return clear_opening(
        opening.frame,
        opening.window.frame_face,
        frame_reveal=opening.interior.frame_reveal,
        grid=grid,
        bottom=None if floor is None else -floor,
    )


def unrounded_clear(opening: Opening) -> Size:
    """Width × height between the interior jambs as the sizes of the job add up, before they are put on a grid [in]."""
    frame, face, reveal = opening.frame, opening.window.frame_face, opening.interior.frame_reveal
    floor = opening.floor_below_frame
    below = reveal - face.sill if floor is None else floor
    return Size(
        width=frame.width - face.left - face.right + 2 * reveal, height=frame.height - face.head + reveal + below
    )


def made_clear(opening: Opening, grid: Grid) -> ClearOpening:
    """The clear opening as it is [in]: where another crew lined it, as far as it was read when it was finished.

    What it is wider or narrower than planned is shared by both sides; its height is from the bottom up.
    """
    clear, read = interior_clear(opening, grid), opening.readings and opening.readings.finished_opening
    if opening.interior.returns is None or not read:
        return clear
    width, height = read
    aside = 0.0 if width is None else (width - clear.width) / 2
    top = clear.top if height is None else clear.bottom + height
    left, right = clear.left - aside, clear.right + aside
    return replace(clear, left=left, right=right, top=top, frame_reveal=clear.frame_reveal + aside)


def clear_opening(
    frame: Size, face: FrameFace, *, frame_reveal: float, grid: Grid, bottom: float | None = None
) -> ClearOpening:
    """Find the clear opening in front of a frame [in].

    ``C = frame - faces + 2 × frame_reveal``, rounded once to the grid; what rounding leaves is shared by both sides.
    ``bottom``: y of a bottom that does not follow the frame (floor, sloping sill); then only the head has a reveal.
    """
    width = grid.round(frame.width - face.left - face.right + 2 * frame_reveal)
    reveal = (width - (frame.width - face.left - face.right)) / 2
    left = face.left - reveal
    if bottom is None:
        height = grid.round(frame.height - face.head - face.sill + 2 * frame_reveal)
        low = face.sill - (height - (frame.height - face.head - face.sill)) / 2
    else:
        # The head keeps its place on the grid, whatever the height of what lies below.
        height = grid.round(frame.height - face.head + frame_reveal) - bottom
        low = bottom
    return ClearOpening(left=left, right=left + width, bottom=low, top=low + height, frame_reveal=reveal)
