"""Everything inside: extension jambs, stool and apron, casing, and the figures they follow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.findings import Subject
from jambs.job.models.shop import Board, Limits, Shop
from jambs.job.models.trim import Corner, InteriorStyle, InteriorTrim
from jambs.length import Grid
from jambs.parts.casing import CasedOpening, casing, outside_width
from jambs.parts.clear import ClearOpening, clear_opening
from jambs.parts.cuts import CannotBeCut
from jambs.parts.findings import NothingBetweenJambs
from jambs.parts.kinds import Where
from jambs.parts.kit import Figure, FigureKind, FittedSide, JambFrame
from jambs.parts.part import Part
from jambs.parts.stack import frame_parts, jamb_frames, steps_back
from jambs.parts.stool import make_apron, make_stool, stool_length
from jambs.place.placement import Placement
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """The interior parts of one opening, its clear opening at the window, its jamb frames and figures."""

    clear: ClearOpening
    frames: tuple[JambFrame, ...]
    parts: tuple[Part, ...]
    figures: tuple[Figure, ...]

    @property
    def at_wall(self) -> ClearOpening:
        """The clear opening at the finished wall, where the casing is: that of the frame against the wall."""
        return self.frames[-1].clear if self.frames else self.clear


def interior_clear(placement: Placement, grid: Grid) -> ClearOpening:
    """The clear opening between the interior extension jambs; a door's reaches down to the floor."""
    opening = placement.opening
    floor = opening.floor_below_frame
    return clear_opening(
        opening.frame,
        opening.window.frame_face,
        frame_reveal=opening.interior.frame_reveal,
        grid=grid,
        bottom=None if floor is None else -floor,
    )


def make_inside(
    placement: Placement,
    sides: dict[Side, FittedSide],
    planned_depth: float,
    *,
    shop: Shop,
    limits: Limits,
    boards: Sequence[Board],
) -> Inside:
    """Make all interior parts; without interior depth there is only casing on the frame.

    ``planned_depth``: interior depth before anything was measured [in]; ``boards``: at hand.

    Raises:
        CannotBeCut: nothing is left between the jambs, or the stool cannot lap under the frame.
    """
    trim = placement.opening.interior
    clear = interior_clear(placement, shop.grid)
    _hold_open(clear, placement)
    parts: list[Part] = []
    frames: tuple[JambFrame, ...] = ()
    at_wall = clear
    if max(side.start_depth for side in sides.values()) > 0:
        frames = jamb_frames(
            clear, sides, trim, placement.inside_edge, planned_depth, shop=shop, limits=limits, boards=boards
        )
        at_wall = frames[-1].clear
        parts += frame_parts(frames, trim)
        if trim.stool and trim.apron:
            parts.append(make_stool(at_wall, sides[Side.SILL], trim, trim.stool, placement.inside_edge))
    parts += casing(_cased(at_wall, trim, shop.proud), trim.casing, Where.INTERIOR)
    if frames and trim.stool and trim.apron:
        parts.append(make_apron(at_wall, trim, trim.apron, trim.stool))
    figures = (*_figures(clear, at_wall, trim, shop.proud), *_stack_figures(frames))
    return Inside(clear=clear, frames=frames, parts=tuple(parts), figures=figures)


def _hold_open(clear: ClearOpening, placement: Placement) -> None:
    if clear.width <= 0 or clear.height <= 0:
        frame, about = placement.opening.frame, Subject.opening(placement.opening.mark)
        raise CannotBeCut(NothingBetweenJambs(subject=about, width=frame.width, height=frame.height))


def _cased(clear: ClearOpening, trim: InteriorTrim, proud: float) -> CasedOpening:
    reveal, picture = trim.casing_reveal, trim.style is InteriorStyle.PICTURE_FRAMED
    return CasedOpening(
        left=clear.left - reveal,
        right=clear.right + reveal,
        bottom=clear.bottom - reveal if picture else clear.bottom,
        top=clear.top + reveal,
        back=-proud,
        has_bottom=picture,
    )


def _figures(clear: ClearOpening, at_wall: ClearOpening, trim: InteriorTrim, proud: float) -> tuple[Figure, ...]:
    cased, thickness = _cased(at_wall, trim, proud), trim.jamb.thickness
    overhang = trim.casing.overhang if trim.casing.corner is Corner.BUTT else 0.0
    above = cased.height + trim.casing.width * (2 if cased.has_bottom else 1)
    figures = [
        Figure(kind=FigureKind.CLEAR_OPENING_WIDTH, value=clear.width, note="between extension jambs"),
        Figure(kind=FigureKind.CLEAR_OPENING_HEIGHT, value=clear.height, note=_height_note(trim)),
        Figure(kind=FigureKind.JAMB_BOX_WIDTH, value=at_wall.width + 2 * thickness, note="outside of the legs"),
        Figure(kind=FigureKind.FRAME_REVEAL, value=clear.frame_reveal, note="frame to jamb face"),
        Figure(kind=FigureKind.CASING_REVEAL, value=trim.casing_reveal, note="jamb face to casing"),
        Figure(kind=FigureKind.PROUD, value=proud, note="jamb past the finished wall"),
        Figure(kind=FigureKind.CASING_OUTSIDE_WIDTH, value=outside_width(cased, trim.casing), note="edge to edge"),
        Figure(kind=FigureKind.CASING_OUTSIDE_HEIGHT, value=above, note="edge to edge"),
    ]
    if overhang:
        figures.append(Figure(kind=FigureKind.HEAD_CASING_OVERHANG, value=overhang, note="past the legs, each end"))
    if trim.stool:
        length = stool_length(at_wall, trim, trim.stool)
        figures.append(Figure(kind=FigureKind.STOOL_LENGTH, value=length, note="horn to horn"))
    return tuple(figures)


def _stack_figures(frames: Sequence[JambFrame]) -> tuple[Figure, ...]:
    """Return how wide the boards of stacked frames are, from the window on, and the step between two."""
    if len(frames) < 2:
        return ()
    kinds = (FigureKind.FRAME_AT_WINDOW, *(FigureKind.FRAME_BETWEEN,) * (len(frames) - 2), FigureKind.FRAME_AT_WALL)
    widths = (
        Figure(kind=kind, value=frame.width, note=f"width of the boards of frame {frame.member}")
        for kind, frame in zip(kinds, frames, strict=True)
    )
    step = Figure(kind=FigureKind.STACK_REVEAL, value=steps_back(frames)[0], note="face of a frame to the next one's")
    return (*widths, step)


def _height_note(trim: InteriorTrim) -> str:
    return {
        InteriorStyle.PICTURE_FRAMED: "between extension jambs",
        InteriorStyle.STOOL_AND_APRON: "stool to head jamb",
        InteriorStyle.THREE_SIDED: "floor to head jamb",
    }[trim.style]
