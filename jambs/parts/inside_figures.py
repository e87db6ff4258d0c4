"""The figures of the inside of an opening: what is between jambs or returns, reveals, casing, stool, furring."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.returns import ReturnsEntry
from jambs.job.models.shop import Shop
from jambs.job.models.trim import InteriorStyle, InteriorTrim
from jambs.parts.jambs.stack import steps_back
from jambs.parts.kit.drywall import DrywallWork
from jambs.parts.kit.kit import Figure, FigureKind, JambFrame
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.trim.built_up import over_all
from jambs.parts.trim.casing import CasedOpening, outside_width
from jambs.parts.trim.stool import stool_length
from jambs.place.flares import Flares
from jambs.place.placement import Sides
from jambs.sides import LEGS


def inside_figures(
    clear: ClearOpening,
    at_wall: ClearOpening,
    room: ClearOpening,
    cased: CasedOpening,
    trim: InteriorTrim,
    shop: Shop,
    *,
    flares: Flares,
    frames: Sequence[JambFrame],
    drywall: DrywallWork | None,
) -> tuple[Figure, ...]:
    """Return the figures of the inside: of jambs or returns, of casing or of what the drywall crew leaves."""
    figures = [
        *(
            _return_figures(clear, trim, trim.returns)
            if trim.returns
            else _jamb_figures(clear, at_wall, trim, shop.proud, flares)
        ),
        *(_flared_figures(room, trim, flares) if flares else ()),
        *(_casing_figures(cased, trim) if trim.is_cased else ()),
        *(_drywall_figures(drywall) if drywall else ()),
    ]
    if trim.stool:
        length = stool_length(room, trim, trim.stool)
        figures.append(Figure(kind=FigureKind.STOOL_LENGTH, value=length, note="horn to horn"))
        if shop.horn_play:
            note = "horns to the finished wall, in the notches already"
            figures.append(Figure(kind=FigureKind.HORN_PLAY, value=shop.horn_play, note=note))
    return (*figures, *_stack_figures(frames))


def _both_legs(trim: InteriorTrim, flares: Flares) -> float:
    """Thickness of both legs as a cut along the wall finds it [in]."""
    if not flares:
        return 2 * trim.jamb.thickness
    return sum(flares.across(leg, trim.jamb.thickness) for leg in LEGS)


def _flared_figures(room: ClearOpening, trim: InteriorTrim, flares: Flares) -> tuple[Figure, ...]:
    note = "between the jambs' room edges"
    box = room.width + _both_legs(trim, flares)
    return (
        Figure(kind=FigureKind.FLARED_OPENING_WIDTH, value=room.width, note=note),
        Figure(kind=FigureKind.FLARED_OPENING_HEIGHT, value=room.height, note=_HEIGHTS[trim.style]),
        Figure(kind=FigureKind.FLARED_BOX_WIDTH, value=box, note="outside of the legs at the room"),
    )


def _jamb_figures(
    clear: ClearOpening, at_wall: ClearOpening, trim: InteriorTrim, proud: float, flares: Flares
) -> tuple[Figure, ...]:
    box, note = at_wall.width + _both_legs(trim, flares), "outside of the legs"
    figures = (
        Figure(kind=FigureKind.CLEAR_OPENING_WIDTH, value=clear.width, note="between extension jambs"),
        Figure(kind=FigureKind.CLEAR_OPENING_HEIGHT, value=clear.height, note=_HEIGHTS[trim.style]),
        Figure(kind=FigureKind.JAMB_BOX_WIDTH, value=box, note=f"{note} at the frame" if flares else note),
        Figure(kind=FigureKind.FRAME_REVEAL, value=clear.frame_reveal, note="frame to jamb face"),
        Figure(kind=FigureKind.CASING_REVEAL, value=trim.casing_reveal, note="jamb face to casing"),
        Figure(kind=FigureKind.PROUD, value=proud, note="jamb past the finished wall"),
    )
    return tuple(one for one in figures if trim.is_cased or one.kind is not FigureKind.CASING_REVEAL)


def _casing_figures(cased: CasedOpening, trim: InteriorTrim) -> tuple[Figure, ...]:
    if trim.built_up:
        box = over_all(cased, trim)
        return (
            Figure(kind=FigureKind.BUILT_UP_WIDTH, value=box.right - box.left, note="edge to edge"),
            Figure(kind=FigureKind.BUILT_UP_HEIGHT, value=box.top - box.bottom, note="foot of the legs to the top"),
        )
    overhang = trim.casing.overhang
    above = cased.height + trim.casing.width * (2 if cased.has_bottom else 1)
    figures = (
        Figure(kind=FigureKind.CASING_OUTSIDE_WIDTH, value=outside_width(cased, trim.casing), note="edge to edge"),
        Figure(kind=FigureKind.CASING_OUTSIDE_HEIGHT, value=above, note="edge to edge"),
    )
    if not overhang:
        return figures
    return (*figures, Figure(kind=FigureKind.HEAD_CASING_OVERHANG, value=overhang, note="past the legs, each end"))


def _return_figures(clear: ClearOpening, trim: InteriorTrim, entry: ReturnsEntry) -> tuple[Figure, ...]:
    return (
        Figure(kind=FigureKind.CLEAR_OPENING_WIDTH, value=clear.width, note="between finished returns"),
        Figure(kind=FigureKind.CLEAR_OPENING_HEIGHT, value=clear.height, note=_HEIGHTS[trim.style]),
        Figure(kind=FigureKind.FRAME_REVEAL, value=clear.frame_reveal, note="frame to the finished return"),
        Figure(kind=FigureKind.RETURN_COAT, value=entry.corner_bead.nose, note="face of the board to the nose"),
        Figure(
            kind=FigureKind.GAP_AT_FRAME,
            value=entry.gap_at_frame,
            note="for a bead" if entry.frame_bead else "for sealant",
        ),
    )


def _drywall_figures(work: DrywallWork) -> tuple[Figure, ...]:
    between = work.boards
    boards = (
        (
            Figure(kind=FigureKind.BOARDS_WIDTH, value=between.width, note="face to face, before they are coated"),
            Figure(kind=FigureKind.BOARDS_HEIGHT, value=between.height, note="to the foot of the side boards"),
        )
        if between
        else ()
    )
    return (
        *boards,
        Figure(kind=FigureKind.WALL_BOARD_WIDTH, value=work.wall_board.width, note="cut to this before the beads"),
        Figure(kind=FigureKind.WALL_BOARD_HEIGHT, value=work.wall_board.height, note="cut to this before the beads"),
    )


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


_HEIGHTS = {
    InteriorStyle.PICTURE_FRAMED: "between extension jambs",
    InteriorStyle.STOOL_AND_APRON: "stool to head jamb",
    InteriorStyle.THREE_SIDED: "floor to head jamb",
    InteriorStyle.RETURNS: "between returns",
    InteriorStyle.RETURNS_AND_STOOL: "stool to head",
    InteriorStyle.RETURNS_AND_TILE_SILL: "tile to head",
}


def gap_figures(gaps: Sides, trim: InteriorTrim) -> tuple[Figure, ...]:
    """Return what is left behind the lining: shim space round a jamb box, furring behind returns."""
    kinds = _FURRING if trim.returns else _SHIMS
    note = "back of the board to rough opening" if trim.returns else "jamb box to rough opening"
    under = "sill to rough opening" if trim.returns else "jamb box or stool to rough opening"
    sides = (gaps.left, gaps.right, gaps.head)
    figures = [Figure(kind=kind, value=gap, note=note) for kind, gap in zip(kinds, sides, strict=False)]
    if trim.style is not InteriorStyle.THREE_SIDED:
        figures.append(Figure(kind=kinds[-1], value=gaps.sill, note=under))
    return tuple(figures)


_SHIMS = (
    FigureKind.SHIM_SPACE_LEFT,
    FigureKind.SHIM_SPACE_RIGHT,
    FigureKind.SHIM_SPACE_HEAD,
    FigureKind.SHIM_SPACE_SILL,
)
_FURRING = (FigureKind.FURRING_LEFT, FigureKind.FURRING_RIGHT, FigureKind.FURRING_HEAD, FigureKind.FURRING_SILL)
