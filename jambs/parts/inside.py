"""Everything inside: extension jambs, stool and apron, casing, and the figures they follow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.findings import Subject
from jambs.job.models.openings import Opening
from jambs.job.models.path import has_collapsed
from jambs.job.models.shop import Board, Limits, Shop
from jambs.job.models.trim import InteriorTrim
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.board.together import Together
from jambs.parts.findings.kit_findings import NothingBetweenJambs
from jambs.parts.inside_figures import inside_figures
from jambs.parts.jambs.flare_checks import hold_clear_of_buck, hold_edges_open, hold_flares
from jambs.parts.jambs.flat_jambs import flat_path
from jambs.parts.jambs.shaped_jambs import clear_path, shaped_jambs
from jambs.parts.jambs.stack import frame_parts, jamb_frames
from jambs.parts.kit.drywall import DrywallWork
from jambs.parts.kit.kit import Figure, FigureKind, FittedSide, JambFrame, OpeningRun
from jambs.parts.mulls.mull import Cover, cover_figures, cut_to_opening, inside_covers, mull_covers
from jambs.parts.mulls.mull_box import inside_boxes
from jambs.parts.run import mulls_on_wall, over_all, run_figures, sill_over_all, walls_between
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import ClearOpening, made_clear
from jambs.parts.shapes.flat_segments import FlatPath, flat_feet
from jambs.parts.trim.built_up import built_up_casing
from jambs.parts.trim.casing import CasedOpening
from jambs.parts.trim.molding import molded
from jambs.parts.trim.returns import bare_edge, make_returns
from jambs.parts.trim.shaped_casing import shaped_casing
from jambs.parts.trim.shaped_figures import shaped_figures
from jambs.parts.trim.stool import LegBacks, StoolEnds, make_apron, make_stool
from jambs.place.flares import SQUARE, Flares
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """The interior parts of one opening, its clear opening at window and room, its jamb frames and figures."""

    clear: ClearOpening
    room: ClearOpening
    frames: tuple[JambFrame, ...]
    parts: tuple[Part, ...]
    figures: tuple[Figure, ...]
    drywall: DrywallWork | None = None
    covers: tuple[Cover, ...] = ()

    @property
    def at_wall(self) -> ClearOpening:
        """The clear opening at the finished wall, where the casing is: that of the frame against the wall."""
        return self.frames[-1].clear if self.frames else self.clear


def make_inside(
    placement: Placement,
    sides: dict[Side, FittedSide],
    planned_depth: float,
    *,
    shop: Shop,
    limits: Limits,
    boards: Sequence[Board],
    run: OpeningRun | None = None,
) -> Inside:
    """Make all interior parts; without interior depth there is only casing on the frame.

    ``planned_depth``: interior depth before anything was measured [in]; ``boards``: at hand.
    ``run``: the openings it is trimmed with, as one: the leftmost has the boards over all.

    Raises:
        CannotBeCut: nothing is left between the jambs, the stool cannot lap under the frame, or a flare is too steep.
    """
    trim = placement.opening.interior
    clear = made_clear(placement.opening, shop.grid)
    _hold_open(clear, placement)
    flares = hold_flares(placement)
    hold_clear_of_buck(clear, placement)
    rack, lining, together = Rack(boards=boards, shop=shop), _Lining(), Together()
    if max(side.start_depth for side in sides.values()) > 0:
        lining = _lining(
            clear, sides, placement, planned_depth, flares, together, shop=shop, limits=limits, boards=boards
        )
    at_wall = lining.frames[-1].clear if lining.frames else clear
    room = room_clear(at_wall, sides, flares, shop.proud, is_round=_is_round(placement.opening))
    hold_edges_open(placement, flares, room)
    over_run = over_all(run, room)
    cased = cased_opening(over_run, trim, shop.proud)
    covers = mull_covers(placement.opening, clear, reveal=trim.frame_reveal, grid=shop.grid)
    over = _over_mulls(covers, clear, sides, cased, placement, flares if lining.parts else None, shop)
    stool, apron = _stool_and_apron(lining, over_run, at_wall, sides, flares, placement, shop, run)
    figures = inside_figures(
        clear, at_wall, over_run, cased, trim, shop, flares=flares, frames=lining.frames, drywall=lining.drywall
    )
    on_wall = _on_wall(cased, placement.opening, rack, run, together)
    together.settle()
    if run is not None and not run.is_lead:
        stool, apron, on_wall = (), (), ()
        figures = tuple(one for one in figures if one.kind not in OF_BOARDS_OVER_ALL)
    if placement.opening.shape:
        figures = shaped_figures(figures, placement.opening, clear, room, cased, trim)
    return Inside(
        clear=clear,
        room=room,
        frames=lining.frames,
        parts=(*lining.parts, *stool, *over, *on_wall, *apron),
        figures=(*figures, *run_figures(run), *cover_figures(covers, clear)),
        drywall=lining.drywall,
        covers=covers,
    )


def _is_round(opening: Opening) -> bool:
    return opening.shape is not None and opening.shape.is_arched


def _on_wall(
    cased: CasedOpening, opening: Opening, rack: Rack, run: OpeningRun | None, together: Together
) -> tuple[Part, ...]:
    """Make the casing, and the boards on the walls between openings that are trimmed as one."""
    trim = opening.interior
    casing = together.tried(lambda: _casing(cased, opening, rack)) or ()
    return (*casing, *mulls_on_wall(walls_between(run), cased, trim.casing_reveal, trim, Where.INTERIOR))


def _over_mulls(
    covers: Sequence[Cover],
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    cased: CasedOpening,
    placement: Placement,
    flares: Flares | None,
    shop: Shop,
) -> list[Part]:
    """Make the boards over mulls and bars, flat on the frames or boxed; ``flares``: None where no depth is lined."""
    trim, edge = placement.opening.interior, placement.inside_edge
    boxed = [] if flares is None else [one for one in covers if one.mull.boxed_inside]
    flat = [one for one in covers if one not in boxed]
    boxes = inside_boxes(boxed, clear, sides, cased, trim, edge, shop)
    if trim.mull_casing is None:
        return [*boxes]
    over = inside_covers(flat, trim.mull_casing, edge, flares or SQUARE)
    return [*cut_to_opening(over, placement.opening), *boxes]


OF_BOARDS_OVER_ALL = (
    FigureKind.CASING_OUTSIDE_WIDTH,
    FigureKind.CASING_OUTSIDE_HEIGHT,
    FigureKind.HEAD_CASING_OVERHANG,
    FigureKind.STOOL_LENGTH,
    FigureKind.HORN_PLAY,
)
"""Figures that stand with the opening which has these boards."""


def _casing(cased: CasedOpening, opening: Opening, rack: Rack) -> Sequence[Part]:
    trim = opening.interior
    if not trim.is_cased:
        return ()
    if opening.shape:
        return shaped_casing(opening, cased, trim.casing, Where.INTERIOR, rack)
    return molded(built_up_casing(cased, trim), trim)


def _stool_and_apron(
    lining: _Lining,
    room: ClearOpening,
    at_frame: ClearOpening,
    sides: dict[Side, FittedSide],
    flares: Flares,
    placement: Placement,
    shop: Shop,
    run: OpeningRun | None,
) -> tuple[Sequence[Part], Sequence[Part]]:
    trim = placement.opening.interior
    if not lining.parts or trim.stool is None:
        return (), ()
    legs = LegBacks.of(trim, flares, sides, shop)
    ends = stool_ends(placement.opening, room, at_frame, flares)
    if ends and lining.frames and (flat := _flat(placement.opening, lining.frames[0], flares)):
        deep = max(side.greatest for side in lining.frames[0].sides.values()) + shop.proud
        thick = trim.jamb.thickness
        ends = ends.with_backs(flat_feet(flat, flares, thick, deep), flat_feet(flat, flares, thick, 0.0))
    sill, walls = sill_over_all(run, sides), walls_between(run)
    stool = make_stool(room, sill, trim, trim.stool, placement.inside_edge, legs, ends, walls)
    return cut_to_opening([stool], placement.opening), (
        make_apron(room, trim, trim.apron, trim.stool, ends),
    ) if trim.apron else ()


def _flat(opening: Opening, frame: JambFrame, flares: Flares) -> FlatPath | None:
    return flat_path(opening, clear_path(opening, frame.clear), frame, flares)


def stool_ends(
    opening: Opening, room: ClearOpening, at_frame: ClearOpening, flares: Flares = SQUARE
) -> StoolEnds | None:
    """Return where a shape crosses the top of its stool; nothing where upright legs stand on it."""
    if opening.shape is None or not opening.shape.is_cut_below(opening.frame):
        return None
    paths = clear_path(opening, room), clear_path(opening, at_frame)
    return StoolEnds.of(*paths, opening.interior, flares)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lining:
    """What closes the depth from frame to finished wall: jamb frames, or returns of the drywall crew; or nothing."""

    parts: tuple[Part, ...] = ()
    frames: tuple[JambFrame, ...] = ()
    drywall: DrywallWork | None = None


def _lining(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    placement: Placement,
    planned_depth: float,
    flares: Flares,
    together: Together,
    *,
    shop: Shop,
    limits: Limits,
    boards: Sequence[Board],
) -> _Lining:
    trim = placement.opening.interior
    if trim.returns:
        returned = make_returns(clear, sides, placement, trim.returns)
        return _Lining(parts=tuple(returned.parts), drywall=returned.work)
    frames = jamb_frames(
        clear, sides, trim, placement.inside_edge, planned_depth, shop=shop, limits=limits, boards=boards
    )
    drywall = None if trim.is_cased else bare_edge(frames[-1].clear, trim)
    if placement.opening.shape:
        rack = Rack(boards=boards, shop=shop)
        jambs = together.tried(lambda: shaped_jambs(placement, frames[0], trim, flares, rack))
        return _Lining(parts=jambs or (), frames=frames)
    return _Lining(parts=tuple(frame_parts(frames, trim, flares)), frames=frames, drywall=drywall)


def room_clear(
    clear: ClearOpening, sides: dict[Side, FittedSide], flares: Flares, proud: float, *, is_round: bool = False
) -> ClearOpening:
    """Return the faces of the jambs at their room edges, where each side is deepest; as at the frame without flare.

    ``is_round``: they follow arcs.
    """
    if not flares:
        return clear
    depths = {side: one.greatest for side, one in sides.items()}
    if is_round:  # a cone has one depth, and so what goes on from it
        depths |= dict.fromkeys(
            set(depths) - {Side.SILL}, max(depths[side] for side in depths if side is not Side.SILL)
        )
    out = {side: flares.out(side, depths[side] + proud) if side in sides else 0.0 for side in Side}
    return replace(
        clear,
        left=clear.left - out[Side.LEFT],
        right=clear.right + out[Side.RIGHT],
        bottom=clear.bottom - out[Side.SILL],
        top=clear.top + out[Side.HEAD],
    )


def _hold_open(clear: ClearOpening, placement: Placement) -> None:
    path = clear_path(placement.opening, clear) if placement.opening.shape else None
    if clear.width <= 0 or clear.height <= 0 or (path and has_collapsed(path, frame_path(placement.opening))):
        frame, about = placement.opening.frame, Subject.opening(placement.opening.mark)
        raise CannotBeCut(NothingBetweenJambs(subject=about, width=frame.width, height=frame.height))


def cased_opening(clear: ClearOpening, trim: InteriorTrim, proud: float) -> CasedOpening:
    """The opening that casing goes round: a casing reveal larger than the clear opening at the wall [in]."""
    reveal, picture = trim.casing_reveal, trim.style.has_bottom
    return CasedOpening(
        left=clear.left - reveal,
        right=clear.right + reveal,
        bottom=clear.bottom - reveal if picture else clear.bottom,
        top=clear.top + reveal,
        back=-proud,
        has_bottom=picture,
    )
