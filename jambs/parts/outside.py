"""Everything outside: extension jambs, sill, casing, head flashing; only casing where the frame stands proud."""

from __future__ import annotations

from dataclasses import replace

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.shop import Limits
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.together import Together
from jambs.parts.board.touches import UncasedStrip
from jambs.parts.clad_outside import clad_outside
from jambs.parts.jambs.exterior_jamb import exterior_jambs
from jambs.parts.jambs.flare_checks import hold_edges_open
from jambs.parts.jambs.flat_jambs import flat_path_outside
from jambs.parts.jambs.shaped_jambs import jambs_begin, shaped_exterior_jambs
from jambs.parts.kit.kit import Figure, FigureKind, FittedSide, OpeningRun, WallBetween
from jambs.parts.mulls.metal_covers import metal_covers
from jambs.parts.mulls.mull import mull_covers
from jambs.parts.mulls.mull_box import outside_boxes
from jambs.parts.outside_checks import (
    flares_in_wall,
    hold_backs_apart,
    hold_clear_of_the_flange,
    hold_to_some_width,
)
from jambs.parts.outside_figures import casing_width, metal_sill_figures, outside_figures
from jambs.parts.outside_trim import (
    Outside,
    cased_outside,
    covers_over,
    ends_at_feet,
    exterior_casing,
    exterior_clear,
    head_flashing_of,
    on_frames,
    without_sill,
)
from jambs.parts.run import OVER_ALL, mulls_on_wall, outer_over_all, over_all, walls_between
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import ClearOpening, clear_opening
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.parts.trim.casing import CasedOpening
from jambs.parts.trim.exterior_sill import make_sill
from jambs.parts.trim.flashing import make_flashing
from jambs.parts.trim.metal_returns import make_metal_returns, make_metal_sill, over_the_head, sill_at_frame, sill_slope
from jambs.parts.trim.shaped_returns import shaped_returns
from jambs.parts.trim.sides import deepest
from jambs.parts.trim.sill_place import sill_place
from jambs.place.flares import SQUARE, Flares
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side


def make_outside(
    placement: Placement, sides: dict[Side, FittedSide], rack: Rack, limits: Limits, run: OpeningRun | None = None
) -> Outside:
    """Make all exterior parts; nothing where the job states no exterior trim.

    ``run``: the openings it is trimmed with, as one: the leftmost has casing, sill and flashing over all.
    """
    trim = placement.opening.exterior
    if trim is None:
        return Outside(clear=None, parts=(), figures=())
    if trim.returns:
        return _returned(placement, sides, trim, rack)
    if trim.cladding_returns:
        return clad_outside(placement, sides, trim, rack)
    found = _at_depth(placement, sides, trim, rack, limits, run)
    if run is None or run.is_lead:
        return found
    own = tuple(part for part in found.parts if part.kind not in OVER_ALL)
    figures = tuple(one for one in found.figures if one.kind is not FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH)
    return replace(found, parts=own, figures=figures)


def _at_depth(
    placement: Placement,
    sides: dict[Side, FittedSide],
    trim: ExteriorTrim,
    rack: Rack,
    limits: Limits,
    run: OpeningRun | None,
) -> Outside:
    depth = max(deepest(one.fitted.outer) for one in run.members) if run else deepest(sides)
    if depth < limits.least_exterior_depth - SAME_SIZE:
        return _proud(placement, trim, rack, run)
    return _deep(placement, sides, trim, rack, run)


def _proud(placement: Placement, trim: ExteriorTrim, rack: Rack, run: OpeningRun | None) -> Outside:
    """The frame stands at the trim plane or proud of it: only casing round it, with a sealant joint."""
    opening, joint = placement.opening, trim.sealant_joint
    frames = _frames(run, joint)
    is_door = opening.floor_below_frame is not None
    cased = CasedOpening(
        left=-joint,
        right=over_all(run, frames[-1], frames).right if frames else opening.frame.width + joint,
        bottom=0.0 if is_door else -joint,
        top=opening.frame.height + joint,
        back=placement.planes.trim_plane,
        has_bottom=not is_door,
    )
    over = ClearOpening(left=0.0, right=opening.frame.width, bottom=0.0, top=opening.frame.height, frame_reveal=0.0)
    parts = (
        *on_frames(covers_over(placement, trim, over, rack.shop.grid), placement, trim, 0.0),
        *exterior_casing(cased, placement, trim, rack),
        *mulls_on_wall(walls_between(run, frames), cased, 0.0, trim, Where.EXTERIOR),
        *head_flashing_of(cased, placement, trim),
    )
    figures = (
        Figure(kind=FigureKind.SEALANT_JOINT, value=joint, note="frame to casing, backer behind"),
        Figure(
            kind=FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH,
            value=casing_width(placement, cased, trim),
            note="edge to edge",
        ),
    )
    return Outside(clear=None, parts=parts, figures=figures)


def _frames(run: OpeningRun | None, joint: float) -> list[ClearOpening]:
    """Return the frames of openings that are trimmed as one, a sealant joint larger at both sides [in]."""
    frames = [one.placement.opening.frame for one in run.members] if run else []
    return [
        ClearOpening(left=-joint, right=one.width + joint, bottom=0.0, top=one.height, frame_reveal=0.0)
        for one in frames
    ]


def _deep(
    placement: Placement, sides: dict[Side, FittedSide], trim: ExteriorTrim, rack: Rack, run: OpeningRun | None
) -> Outside:
    opening, joint, grid = placement.opening, trim.sealant_joint, rack.shop.grid
    hold_to_some_width(sides, joint)
    slope = trim.sill.slope if trim.sill else 0.0
    under = trim.sill.under_frame if trim.sill else 0.0
    hold_clear_of_the_flange(under, opening.window.frame_projection)
    clear = exterior_clear(placement, trim, grid)
    flares = flares_in_wall(placement, trim)
    flat = _flat(clear, placement, trim, sides, slope, flares)
    together = Together()
    parts = together.tried(lambda: _jambs(clear, sides, placement, trim, slope, rack, flares, flat)) or []
    clears = [exterior_clear(one.placement, trim, grid) for one in run.members] if run else None
    over, over_sides = over_all(run, clear, clears), outer_over_all(run, sides)
    depth = over_sides[Side.SILL].greatest
    own = _at_trim(clear, flares, deepest(sides) - joint)
    all_flares = [flares_in_wall(one.placement, trim) for one in run.members] if run else [flares]
    ends = _all_at_trim(run, clears, all_flares, joint)
    hold_edges_open(placement, flares, own, is_outside=True)
    at_trim, walls = over_all(run, own, ends), walls_between(run, ends)
    at_trim = replace(at_trim, top=max(one.top for one in ends or [at_trim]))
    cased = cased_outside(at_trim, placement, trim, over_sides, slope)
    backs_between = _between_backs(run, ends, all_flares, trim.jamb.thickness)
    hold_backs_apart(walls_between(run, clears), backs_between, trim.jamb.thickness)
    place = None
    if trim.sill:
        # Under the feet of both legs, backs and all, as they end; as far at both sides as at the one that leans more.
        back = max(one.across(leg, trim.jamb.thickness) for leg in LEGS for one in all_flares)
        backs, at_feet = (at_trim.left - back, at_trim.right + back), ends_at_feet(placement, over_sides)
        place = sill_place(over, backs, cased, placement, trim, depth, at_feet, flares, flat)
        parts.append(make_sill(place, trim.sill, grid, backs_between))
    covers = covers_over(placement, trim, clear, grid)
    boxed = [one for one in covers if one.mull.boxed_outside]
    parts += on_frames([one for one in covers if one not in boxed], placement, trim, slope, flares)
    lean = flares.at(Side.HEAD)
    parts += outside_boxes(boxed, clear, sides, cased, trim, placement.outside_edge, slope, grid, lean)
    parts += together.tried(lambda: exterior_casing(cased, placement, trim, rack)) or ()
    together.settle()
    parts += mulls_on_wall(walls, cased, trim.casing_reveal, trim, Where.EXTERIOR)
    parts += head_flashing_of(cased, placement, trim)
    figures = outside_figures(placement, clear, own if flares else None, cased, place, trim)
    return Outside(clear=clear, parts=tuple(parts), figures=figures, flat=flat)


def _flat(
    clear: ClearOpening,
    placement: Placement,
    trim: ExteriorTrim,
    sides: dict[Side, FittedSide],
    slope: float,
    flares: Flares,
) -> FlatPath | None:
    """Return the path of flared jambs that follow arcs in flat segments; None of any other."""
    opening = placement.opening
    if opening.shape is None:
        return None
    return flat_path_outside(trim, jambs_begin(opening, clear, trim, slope), sides, flares, slope)


def _returned(placement: Placement, sides: dict[Side, FittedSide], trim: ExteriorTrim, rack: Rack) -> Outside:
    """Bent metal lines the opening from the frame to the wall, with no casing round it; a flashing over its head."""
    opening, grid = placement.opening, rack.shop.grid
    hold_to_some_width(sides, trim.sealant_joint, PartKind.METAL_RETURN)
    at_frame = sill_at_frame(placement, trim)
    clear = clear_opening(
        opening.frame,
        opening.window.outside_face,
        frame_reveal=trim.frame_reveal,
        grid=grid,
        bottom=without_sill(placement, trim) if at_frame is None else at_frame,
    )
    assert trim.returns is not None
    flashing = make_flashing(
        middle=(clear.left + clear.right) / 2,
        # Its drip ends level with the head, and hides the gap over it.
        top=clear.top + trim.head_flashing.drip,
        back=placement.planes.trim_plane,
        casing_length=clear.width + 2 * trim.returns.face_leg,
        casing_thickness=over_the_head(trim, placement),
        flashing=trim.head_flashing,
        bend=UncasedStrip,
    )
    over = mull_covers(opening, clear, reveal=trim.frame_reveal, grid=grid, from_outside=True)
    covers = metal_covers(over, trim.returns, placement.outside_edge, grid)
    figures = (
        Figure(kind=FigureKind.EXTERIOR_CLEAR_WIDTH, value=clear.width, note="between metal returns"),
        Figure(kind=FigureKind.EXTERIOR_FRAME_REVEAL, value=clear.frame_reveal, note="frame to face of the return"),
        Figure(kind=FigureKind.SEALANT_JOINT, value=trim.sealant_joint, note="frame to its leg, bedded in sealant"),
        *metal_sill_figures(placement, trim),
    )
    sill = make_metal_sill(clear, placement, trim, grid)
    if opening.shape:  # over a head that is not one level edge the flashing is laid out on site
        flat = _flat(clear, placement, trim, sides, sill_slope(trim.returns), SQUARE)
        strips = shaped_returns(clear, sides, placement, trim, rack, flat)
        return Outside(clear=clear, parts=(*strips, *sill), figures=figures, flat=flat)
    returns = make_metal_returns(clear, sides, placement, trim, grid)
    return Outside(clear=clear, parts=(*returns, *sill, *covers, flashing), figures=figures)


def _at_trim(clear: ClearOpening, flares: Flares, depth: float) -> ClearOpening:
    """The clear opening where flared jambs end: wider at each side, and higher; the sill's top is told at the frame."""
    if not flares:
        return clear
    return replace(
        clear,
        left=clear.left - flares.out(Side.LEFT, depth),
        right=clear.right + flares.out(Side.RIGHT, depth),
        bottom=clear.bottom - flares.out(Side.SILL, depth),
        top=clear.top + flares.out(Side.HEAD, depth),
    )


def _all_at_trim(
    run: OpeningRun | None, clears: list[ClearOpening] | None, flares: list[Flares], joint: float
) -> list[ClearOpening] | None:
    """Return the openings that are trimmed as one where their jambs end, each by its own depths."""
    if run is None or clears is None:
        return None
    return [
        _at_trim(clear, lean, deepest(one.fitted.outer) - joint)
        for one, clear, lean in zip(run.members, clears, flares, strict=True)
    ]


def _between_backs(
    run: OpeningRun | None, ends: list[ClearOpening] | None, flares: list[Flares], thickness: float
) -> tuple[WallBetween, ...]:
    """Return the walls between openings trimmed as one, from back to back of the jambs as they end."""
    backs = [
        replace(
            end,
            left=end.left - lean.across(Side.LEFT, thickness),
            right=end.right + lean.across(Side.RIGHT, thickness),
        )
        for end, lean in zip(ends or (), flares, strict=False)
    ]
    return walls_between(run, backs)


def _jambs(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    placement: Placement,
    trim: ExteriorTrim,
    slope: float,
    rack: Rack,
    flares: Flares,
    flat: FlatPath | None,
) -> list[Part]:
    if placement.opening.shape:
        return [*shaped_exterior_jambs(placement, clear, sides, trim, slope, rack, flares, flat)]
    if flares:
        leaned = shaped_exterior_jambs(placement, clear, sides, trim, slope, rack, flares)
        return [replace(part, member=1, runs=None) for part in leaned]
    return [*exterior_jambs(clear, sides, trim, placement.outside_edge, slope)]
