"""Everything outside: extension jambs, sill, casing, head flashing; only casing where the frame stands proud."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.findings import Subject, SubjectKind
from jambs.geometry import Point
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.flare import GREATEST_FLARE_DEG
from jambs.job.models.path import has_two_legs, size_over_all
from jambs.job.models.shop import Limits
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.findings.flare_findings import FlareTooSteep
from jambs.parts.findings.kit_findings import SillRunsIntoFlange
from jambs.parts.findings.style_findings import ExteriorJambHasNoWidth
from jambs.parts.jambs.exterior_jamb import exterior_jambs
from jambs.parts.jambs.shaped_jambs import clear_path, goes_all_round, shaped_exterior_jambs
from jambs.parts.kit.kit import Figure, FigureKind, FittedSide, OpeningRun, WallBetween
from jambs.parts.mulls.mull import Cover, mull_covers, outside_covers
from jambs.parts.mulls.mull_box import outside_boxes
from jambs.parts.run import OVER_ALL, mulls_on_wall, outer_over_all, over_all, walls_between
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import ClearOpening, clear_opening
from jambs.parts.trim.casing import CasedOpening, casing, outside_width
from jambs.parts.trim.exterior_sill import SillPlace, make_sill, sill_fall
from jambs.parts.trim.flashing import make_flashing
from jambs.parts.trim.metal_returns import make_metal_returns, metal_sill, over_the_head, sill_at_frame
from jambs.parts.trim.shaped_casing import casing_box, shaped_casing
from jambs.parts.trim.sides import deepest
from jambs.parts.trim.sill_place import sill_place
from jambs.place.flares import Flares, flares_outside
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Outside:
    """The exterior parts of one opening and their figures; ``clear`` is None where the frame has no exterior jamb."""

    clear: ClearOpening | None
    parts: tuple[Part, ...]
    figures: tuple[Figure, ...]


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
        return _returned(placement, sides, trim, rack.shop.grid)
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
        *_on_frames(_covers(placement, trim, over, rack.shop.grid), placement, trim, 0.0),
        *_casing(cased, placement, trim, rack),
        *_mulls_on_wall(walls_between(run, frames), cased, trim, 0.0),
        *_flashing(cased, placement, trim),
    )
    figures = (
        Figure(kind=FigureKind.SEALANT_JOINT, value=joint, note="frame to casing, backer behind"),
        Figure(
            kind=FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH,
            value=_casing_width(placement, cased, trim),
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


def _mulls_on_wall(walls: Sequence[WallBetween], cased: CasedOpening, trim: ExteriorTrim, reveal: float) -> list[Part]:
    """Make the boards on the walls between openings that are trimmed as one."""
    if trim.mull_casing is None:
        return []
    over = trim.mull_casing
    around = trim.casing.model_copy(update={"thickness": over.thickness, "stock": over.stock})
    return mulls_on_wall(walls, cased, reveal, around, Where.EXTERIOR)


def _clear(placement: Placement, trim: ExteriorTrim, grid: Grid) -> ClearOpening:
    """The clear opening between the exterior jambs, from the lower left corner of the frame [in]."""
    under, slope = (trim.sill.under_frame, trim.sill.slope) if trim.sill else (0.0, 0.0)
    return clear_opening(
        placement.opening.frame,
        placement.opening.window.outside_face,
        frame_reveal=trim.frame_reveal,
        grid=grid,
        # The joint is left where the sloping sill is highest: at its edge under the frame.
        bottom=-trim.sealant_joint - sill_fall(under, slope) if trim.sill else _without_sill(placement, trim),
    )


def _deep(
    placement: Placement, sides: dict[Side, FittedSide], trim: ExteriorTrim, rack: Rack, run: OpeningRun | None
) -> Outside:
    opening, joint, grid = placement.opening, trim.sealant_joint, rack.shop.grid
    _hold_to_some_width(sides, joint)
    slope = trim.sill.slope if trim.sill else 0.0
    under = trim.sill.under_frame if trim.sill else 0.0
    _hold_clear_of_the_flange(under, opening.window.frame_projection)
    clear = _clear(placement, trim, grid)
    flares = _hold_flares(placement, trim)
    parts = _jambs(clear, sides, placement, trim, slope, rack, flares)
    clears = [_clear(one.placement, trim, grid) for one in run.members] if run else None
    over, over_sides, walls = over_all(run, clear, clears), outer_over_all(run, sides), walls_between(run, clears)
    depth = over_sides[Side.SILL].greatest
    at_trim = _at_trim(over, flares, deepest(sides) - joint)
    cased = _cased(over, at_trim, placement, trim, over_sides, slope)
    place = None
    if trim.sill:
        # Under the feet of both legs, backs and all, as they end; as far at both sides as at the one that leans more.
        back = max(flares.across(leg, trim.jamb.thickness) for leg in LEGS)
        backs, at_feet = (at_trim.left - back, at_trim.right + back), _depths_at_feet(placement, over_sides)
        place = sill_place(over, backs, cased, placement, trim, depth, at_feet)
        parts.append(make_sill(place, trim.sill, grid, walls, trim.jamb.thickness))
    covers = _covers(placement, trim, clear, grid)
    boxed = [one for one in covers if one.mull.boxed_outside]
    parts += _on_frames([one for one in covers if one not in boxed], placement, trim, slope)
    parts += outside_boxes(boxed, clear, sides, cased, trim, placement.outside_edge, slope, grid)
    parts += [*_casing(cased, placement, trim, rack), *_mulls_on_wall(walls, cased, trim, trim.casing_reveal)]
    parts += _flashing(cased, placement, trim)
    return Outside(clear=clear, parts=tuple(parts), figures=_figures(placement, clear, at_trim, cased, place, trim))


def _returned(placement: Placement, sides: dict[Side, FittedSide], trim: ExteriorTrim, grid: Grid) -> Outside:
    """Bent metal lines the opening from the frame to the wall, with no casing round it; a flashing over its head."""
    opening = placement.opening
    _hold_to_some_width(sides, trim.sealant_joint, PartKind.METAL_RETURN)
    at_frame = sill_at_frame(placement, trim)
    clear = clear_opening(
        opening.frame,
        opening.window.outside_face,
        frame_reveal=trim.frame_reveal,
        grid=grid,
        bottom=_without_sill(placement, trim) if at_frame is None else at_frame,
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
        is_cased=False,
    )
    figures = (
        Figure(kind=FigureKind.EXTERIOR_CLEAR_WIDTH, value=clear.width, note="between metal returns"),
        Figure(kind=FigureKind.EXTERIOR_FRAME_REVEAL, value=clear.frame_reveal, note="frame to face of the return"),
        Figure(kind=FigureKind.SEALANT_JOINT, value=trim.sealant_joint, note="frame to its leg, bedded in sealant"),
        *_metal_sill_figures(placement, trim),
    )
    return Outside(
        clear=clear, parts=(*make_metal_returns(clear, sides, placement, trim, grid), flashing), figures=figures
    )


def _metal_sill_figures(placement: Placement, trim: ExteriorTrim) -> list[Figure]:
    place, sill = metal_sill(placement, trim), trim.returns.sill if trim.returns else None
    if place is None or sill is None:
        return []
    run = place.start + place.run - placement.outside_edge
    return [
        Figure(kind=FigureKind.SILL_RUN, value=run, note="frame's outside edge to front of nosing, level"),
        Figure(kind=FigureKind.SILL_FALL, value=sill_fall(run, sill.slope), note="over the run"),
        Figure(kind=FigureKind.SILL_NOSING, value=sill.nosing, note="past the cladding face"),
    ]


def _covers(placement: Placement, trim: ExteriorTrim, clear: ClearOpening, grid: Grid) -> list[Cover]:
    """Lay covers over the mulls of ganged units."""
    if trim.mull_casing is None:
        return []
    return [*mull_covers(placement.opening, clear, reveal=trim.frame_reveal, grid=grid, from_outside=True)]


def _on_frames(covers: list[Cover], placement: Placement, trim: ExteriorTrim, slope_deg: float) -> list[Part]:
    """Cover mulls that are not boxed: the boards lie on the outside edges of the frames, in sealant."""
    return outside_covers(covers, trim.mull_casing, placement.outside_edge, slope_deg) if trim.mull_casing else []


def _hold_to_some_width(sides: dict[Side, FittedSide], joint: float, kind: PartKind = PartKind.EXTERIOR_JAMB) -> None:
    """What lines the opening begins a sealant joint outside the frame; its width is what is left to the trim plane."""
    cut = [sides[side] for side in (Side.HEAD, Side.LEFT, Side.RIGHT)]
    least = min(side.least for side in cut)
    if least - joint < SAME_SIZE:
        about = Subject(kind=SubjectKind.PART, name=kind.words)
        is_metal = kind is PartKind.METAL_RETURN
        raise CannotBeCut(ExteriorJambHasNoWidth(subject=about, depth=least, joint=joint, is_metal=is_metal))


def _hold_clear_of_the_flange(under_frame: float, frame_projection: float) -> None:
    if under_frame > frame_projection:
        about = Subject(kind=SubjectKind.PART, name=PartKind.EXTERIOR_SILL.words)
        raise CannotBeCut(SillRunsIntoFlange(subject=about, under_frame=under_frame, greatest=frame_projection))


def _hold_flares(placement: Placement, trim: ExteriorTrim) -> Flares:
    """Return the flares of the exterior jambs as they come out in the wall.

    Raises:
        CannotBeCut: one that was given by length is too steep at this depth.
    """
    depth = placement.exterior_depth
    flares = flares_outside(placement.opening, depth)
    for side in Side:
        stated = trim.flare.at(side) if trim.flare else None
        if stated and stated.wider and flares.at(side) > GREATEST_FLARE_DEG + ROUND_OFF:
            raise CannotBeCut(
                FlareTooSteep(
                    subject=Subject.opening(placement.opening.mark),
                    side=side,
                    wider=stated.wider,
                    depth=depth - trim.sealant_joint,
                    flare_deg=flares.at(side),
                    greatest_deg=GREATEST_FLARE_DEG,
                )
            )
    return flares


def _at_trim(clear: ClearOpening, flares: Flares, depth: float) -> ClearOpening:
    """The clear opening where flared jambs end: wider at each side, and higher; the sill's top is told at the frame."""
    return replace(
        clear,
        left=clear.left - flares.out(Side.LEFT, depth),
        right=clear.right + flares.out(Side.RIGHT, depth),
        top=clear.top + flares.out(Side.HEAD, depth),
    )


def _without_sill(placement: Placement, trim: ExteriorTrim) -> float | None:
    """Height at which legs end that stand on no sill: a door's at the bottom of its frame, on the threshold or deck.

    None where a board lies along the sill as along the head.
    """
    opening, joint = placement.opening, trim.sealant_joint
    if goes_all_round(opening, trim):
        return None
    return 0.0 if opening.floor_below_frame is not None else -joint


def _cased(
    clear: ClearOpening,
    at_trim: ClearOpening,
    placement: Placement,
    trim: ExteriorTrim,
    sides: dict[Side, FittedSide],
    slope: float,
) -> CasedOpening:
    """Each leg stands where the sill has fallen to at its own side: a measured trim plane may be deeper at one."""
    left, right = _depths_at_feet(placement, sides)
    all_round = goes_all_round(placement.opening, trim)
    below = trim.casing_reveal if all_round else 0.0
    return CasedOpening(
        left=at_trim.left - trim.casing_reveal,
        right=at_trim.right + trim.casing_reveal,
        bottom=clear.bottom - (below if below else sill_fall(left, slope)),
        right_bottom=clear.bottom - sill_fall(right, slope),
        top=at_trim.top + trim.casing_reveal,
        back=placement.planes.trim_plane,
        has_bottom=all_round,
        slope_deg=slope,
    )


def _depths_at_feet(placement: Placement, sides: dict[Side, FittedSide]) -> Point:
    """Return how deep the trim plane lies where casing stands on a sill, at the left and at the right [in].

    By the legs; where there are not two by the sill, which an arc, scribed to the wall, meets at one depth.
    """
    shape = placement.opening.shape
    if shape is None or not shape.is_cut_below(placement.opening.frame):
        return sides[Side.LEFT].start_depth, sides[Side.RIGHT].start_depth
    sill = sides[Side.SILL]
    return (sill.greatest, sill.greatest) if shape.is_arched else (sill.start_depth, sill.finish_depth)


def _jambs(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    placement: Placement,
    trim: ExteriorTrim,
    slope: float,
    rack: Rack,
    flares: Flares,
) -> list[Part]:
    if flares:
        leaned = shaped_exterior_jambs(placement, clear, sides, trim, slope, rack, flares)
        return [replace(part, member=1, runs=None) for part in leaned]
    if placement.opening.shape:
        return [*shaped_exterior_jambs(placement, clear, sides, trim, slope, rack)]
    return [*exterior_jambs(clear, sides, trim, placement.outside_edge, slope)]


def _casing(cased: CasedOpening, placement: Placement, trim: ExteriorTrim, rack: Rack) -> tuple[Part, ...]:
    if placement.opening.shape:
        return shaped_casing(placement.opening, cased, trim.casing, Where.EXTERIOR, rack)
    return casing(cased, trim.casing, Where.EXTERIOR)


def _flashing(cased: CasedOpening, placement: Placement, trim: ExteriorTrim) -> tuple[Part, ...]:
    """Make the head flashing; over a head that is not one level edge it is laid out on site (a finding says so)."""
    if placement.opening.shape:
        return ()
    return (
        make_flashing(
            middle=(cased.left + cased.right) / 2,
            top=cased.top + trim.casing.width,
            back=placement.planes.trim_plane,
            casing_length=outside_width(cased, trim.casing) + 2 * trim.casing.overhang,
            casing_thickness=trim.casing.thickness,
            flashing=trim.head_flashing,
        ),
    )


def _casing_width(
    placement: Placement, cased: CasedOpening, trim: ExteriorTrim, place: SillPlace | None = None
) -> float:
    """Width of the casing over its legs, or of a shape without two legs where it is widest [in].

    Of slants on a sill that is at their feet, each as low as the sill is there.
    """
    shape = placement.opening.shape
    if place and trim.sill and shape and shape.is_cut_below(placement.opening.frame) and not shape.is_arched:
        return place.length - 2 * trim.sill.horn
    if has_two_legs(frame_path(placement.opening)):
        return outside_width(cased, trim.casing)
    return casing_box(placement.opening, cased, trim.casing).width


def _clear_width(placement: Placement, clear: ClearOpening) -> float:
    if has_two_legs(frame_path(placement.opening)):
        return clear.width
    return size_over_all(clear_path(placement.opening, clear)).width


def _flared_figures(clear: ClearOpening, at_trim: ClearOpening) -> list[Figure]:
    """Tell the opening at the trim plane where jambs flare."""
    if at_trim == clear:
        return []
    note = "between flared jambs, where they end"
    return [Figure(kind=FigureKind.EXTERIOR_CLEAR_AT_TRIM, value=at_trim.width, note=note)]


def _figures(
    placement: Placement,
    clear: ClearOpening,
    at_trim: ClearOpening,
    cased: CasedOpening,
    place: SillPlace | None,
    trim: ExteriorTrim,
) -> tuple[Figure, ...]:
    wide = _clear_width(placement, clear)
    figures = [
        Figure(kind=FigureKind.EXTERIOR_CLEAR_WIDTH, value=wide, note="between exterior jambs"),
        *_flared_figures(clear, at_trim),
        Figure(kind=FigureKind.EXTERIOR_FRAME_REVEAL, value=clear.frame_reveal, note="frame to jamb face"),
        Figure(kind=FigureKind.EXTERIOR_CASING_REVEAL, value=trim.casing_reveal, note="jamb face to casing"),
        Figure(kind=FigureKind.SEALANT_JOINT, value=trim.sealant_joint, note="frame to jamb, backer behind"),
        Figure(
            kind=FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH,
            value=_casing_width(placement, cased, trim, place),
            note="edge to edge",
        ),
    ]
    if place and trim.sill:
        run = place.run - trim.sill.under_frame
        figures += [
            Figure(kind=FigureKind.SILL_RUN, value=run, note="frame's outside edge to front of nosing, level"),
            Figure(kind=FigureKind.SILL_FALL, value=sill_fall(run, trim.sill.slope), note="over the run"),
            Figure(kind=FigureKind.SILL_NOSING, value=trim.sill.nosing, note="past the cladding face"),
        ]
    return tuple(figures)
