"""The interior trim measured on the solids against what the job asked for."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.geometry import Vector, dot
from jambs.job.models.trim import InteriorStyle, InteriorTrim, StoolEntry
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import FigureKind, FittedSide, JambFrame
from jambs.parts.readings.edge import fit_edge
from jambs.parts.run import sill_over_all
from jambs.parts.trim.casing_plane import hangs_as_read
from jambs.parts.trim.molding import inner_edge
from jambs.sides import LEGS, Side
from jambs.solids.arched_kit import inside_arch_measures
from jambs.solids.built_up_joints import over_all_measured
from jambs.solids.lookup import D, Framed, Set, X, Y, has_all, jambs_of, one_of, over_all, pick
from jambs.solids.measures import Reach, around_each, heights, reach, reveals, widths
from jambs.solids.model import KitSolids, Solid
from jambs.solids.panel_measures import panel_measures
from jambs.solids.probe import Tape
from jambs.solids.report import TIGHT, Measure
from jambs.solids.return_measures import return_measures
from jambs.solids.shape_measures import inside_of_shape
from jambs.solids.shape_stool import beside_feet, has_slanted_feet

INSIDE_FRAME = 1 / 64
"""The frame is measured this far behind its inside edge [in]."""


def inside_measures(solids: KitSolids) -> list[Measure]:
    """Measure clear opening, reveals, depths, shim space, casing and stool."""
    frames = jambs_of(solids)
    casing = pick(solids, Where.INTERIOR, PartKind.CASING)
    if solids.kit.placement.opening.shape:
        stool = one_of(solids, Where.INTERIOR, PartKind.STOOL)
        return [
            *inside_of_shape(solids),
            *inside_arch_measures(solids),
            *(_stool(solids, stool, casing) if stool else []),
        ]
    built_up = _trim(solids).built_up
    is_own, all_round = has_all(solids), over_all(solids, Where.INTERIOR, PartKind.CASING)
    found = _casing(solids, all_round) if casing and is_own and not built_up else []
    if built_up:
        measured = over_all_measured(solids)
        found += [_loosened(against_figure(solids, kind, size), loose) for kind, size, loose in measured]
    if solids.kit.drywall:
        found += return_measures(solids)
    if frames:
        found += _openings(solids, frames, casing)
        for framed in frames:
            found += _depths(solids, *framed)
        found += _wall_depths(solids, frames[-1][1])
        found += [*_box(solids, frames[-1][1]), *panel_measures(solids)]
    stool = one_of(solids, Where.INTERIOR, PartKind.STOOL)
    outer = pick(solids, Where.INTERIOR, PartKind.BACKBAND) or all_round
    return found + (_stool(solids, stool, outer) if stool and is_own else [])


def _trim(solids: KitSolids) -> InteriorTrim:
    return solids.kit.placement.opening.interior


def _openings(solids: KitSolids, frames: Sequence[Framed], casing: Set) -> list[Measure]:
    """The clear opening of every jamb frame, and every reveal from the window's frame to the casing."""
    placement, trim = solids.kit.placement, _trim(solids)
    frame = placement.opening.frame
    middle = (frame.width / 2, frame.height / 2, placement.inside_edge + INSIDE_FRAME)
    has_floor = trim.style is InteriorStyle.THREE_SIDED
    unit, step = reach(Tape(solids.frame), middle), solids.job.shop.grid.step
    upright = None if has_floor else step / 4 + TIGHT
    found, last = list[Measure](), unit
    for framed in frames:
        measures, sides = _opening(solids, *framed)
        found += measures
        if last is unit:
            asked, tight = trim.frame_reveal, step / 4 + TIGHT
            found += reveals("frame reveal", sides, unit, asked=asked, across=tight, upright=upright)
        else:
            found += _stack_reveals(sides, last, trim, step)
        last = sides
    to_room = {side: _out_at_room(solids, side) for side in Side}
    return found + (_casing_reveals(solids, casing, last.moved(to_room, 1.0)) if casing else [])


def _out_at_room(solids: KitSolids, side: Side) -> float:
    """How far the face of a flared jamb stands out at its room edge [in]."""
    fitted = solids.kit.sides.get(side)
    return solids.kit.flares.out(side, fitted.greatest + solids.job.shop.proud) if fitted else 0.0


def _stack_reveals(sides: Reach, last: Reach, trim: InteriorTrim, step: float) -> list[Measure]:
    """Stand each frame of a stack back by the reveal; legs on a stool or a floor all end at one height."""
    upright = step / 4 + TIGHT if trim.style.has_bottom else None
    asked = trim.stack_reveal
    return reveals("reveal between frames", sides, last, asked=asked, across=step / 4 + TIGHT, upright=upright)


def _of_frame(solids: KitSolids, frame: JambFrame) -> str:
    return f" of frame {frame.member}" if len(solids.kit.frames) > 1 else ""


def _opening(solids: KitSolids, one: JambFrame, jambs: Set) -> tuple[list[Measure], Reach]:
    trim, frame = _trim(solids), solids.kit.placement.opening.frame
    of = _of_frame(solids, one)
    x, y = frame.width / 2, frame.height / 2
    stool = one_of(solids, Where.INTERIOR, PartKind.STOOL)
    boards = Tape([*jambs.all, *([stool] if stool else [])])
    middle = (x, y, one.edge - one.least_depth / 2)
    sides = reach(boards, middle)
    # Halfway to the room flared jambs stand out by half of what they flare.
    out = {side: solids.kit.flares.out(side, one.least_depth / 2) for side in Side}
    has_floor = trim.style is InteriorStyle.THREE_SIDED
    bottom = y - jambs.low(Y) if has_floor else sides.sill
    wide = one.clear.width + out[Side.LEFT] + out[Side.RIGHT]
    high = one.clear.height + out[Side.HEAD] + out[Side.SILL]
    found = widths(f"clear opening width{of}", boards, middle, sides, asked=wide, bottom=bottom)
    if has_floor:
        found.append(Measure(name=f"clear opening height{of} over the floor", asked=high, found=bottom + sides.head))
    else:
        found += heights(f"clear opening height{of}", boards, middle, sides, asked=high)
    return found, sides.moved(out, -1.0)


def _casing_reveals(solids: KitSolids, casing: Set, sides: Reach) -> list[Measure]:
    frame = solids.kit.placement.opening.frame
    middle = (frame.width / 2, frame.height / 2, 0.0)
    around = around_each(casing, middle, edge=inner_edge(_trim(solids)))
    slack = solids.inside_slack
    tight = TIGHT + slack.lean + slack.seen_shorter(max(frame.width, frame.height) / 2)
    sill = tight if Side.SILL in casing else None
    found = reveals("casing reveal", around, sides, asked=_trim(solids).casing_reveal, across=tight, upright=sill)
    return found


def _depths(solids: KitSolids, frame: JambFrame, jambs: Set) -> list[Measure]:
    """Every board's depth at both ends as the kit has it."""
    edge, proud, found = frame.edge, frame.proud, list[Measure]()
    before = "frame" if frame.member == 1 else "frame before it"
    for side, solid in jambs.by_side.items():
        fitted, axis = frame.sides[side], Y if side.is_leg else X
        words = side.board_words + _of_frame(solids, frame)
        depths = ((solid.low[axis], fitted.start_depth), (solid.high[axis], fitted.finish_depth))
        for end, (at, asked) in zip(side.ends, depths, strict=True):
            depth = edge - _room_edge(solid, axis, at) - proud
            found.append(Measure(name=f"depth of the {words} at the {end.words}", asked=asked, found=depth))
        found.append(Measure(name=f"near edge of the {words} to the {before}", asked=0.0, found=edge - solid.high[D]))
    return found


def _room_edge(solid: Solid, axis: int, at: float) -> float:
    """Least depth of a board's corners at one end [in]."""
    return min(corner[D] for corner in corners_at(solid, axis, at))


def corners_at(solid: Solid, axis: int, at: float) -> list[Vector]:
    """List the corners of a solid with one coordinate at a value [in]."""
    corners = (corner for facet in solid.facets for corner in facet.loops[0])
    return [corner for corner in corners if abs(corner[axis] - at) < TIGHT]


def _wall_depths(solids: KitSolids, jambs: Set) -> list[Measure]:
    """The boards against the measured wall: rounded to the grid, ripped parallel within the shop's tolerance."""
    measured, shop = solids.kit.placement.opening.measured, solids.job.shop
    if measured is None or measured.interior_depth is None:
        return []
    edge, found = solids.kit.placement.inside_edge, []
    for side, solid in jambs.by_side.items():
        points = getattr(measured.interior_depth, side.value)
        if points is None:
            continue
        fitted, axis = fit_edge(points), Y if side.is_leg else X
        loose = shop.taper_tolerance + shop.grid.step / 2 + TIGHT
        for at, asked in ((solid.low[axis], fitted.first), (solid.high[axis], fitted.last)):
            depth = edge - _room_edge(solid, axis, at) - shop.proud
            name = f"depth of the {side.board_words} against the measured wall"
            found.append(Measure(name=name, asked=asked, found=depth, tolerance=loose))
    return found


def _box(solids: KitSolids, jambs: Set) -> list[Measure]:
    """The jamb box and its shim space, against the sheet's figures."""
    placement = solids.kit.placement
    shims, frame = placement.shims, placement.opening.frame
    low, high, top = _box_at_frame(jambs, solids.kit.frames[-1].edge)
    sizes = {
        FigureKind.JAMB_BOX_WIDTH: high - low,
        FigureKind.SHIM_SPACE_LEFT: low + shims.left,
        FigureKind.SHIM_SPACE_RIGHT: frame.width + shims.right - high,
        FigureKind.SHIM_SPACE_HEAD: frame.height + shims.head - top,
    }
    if solids.kit.flares:
        sizes[FigureKind.FLARED_BOX_WIDTH] = jambs[Side.RIGHT].high[X] - jambs[Side.LEFT].low[X]
    return [against_figure(solids, kind, found) for kind, found in sizes.items()]


def _box_at_frame(jambs: Set, edge: float) -> tuple[float, float, float]:
    """Backs of the left and the right leg and of the head where they meet the frame: x, x, y [in]."""
    low = min(corner[X] for corner in corners_at(jambs[Side.LEFT], D, edge))
    high = max(corner[X] for corner in corners_at(jambs[Side.RIGHT], D, edge))
    return low, high, max(corner[Y] for corner in corners_at(jambs[Side.HEAD], D, edge))


def against_figure(solids: KitSolids, kind: FigureKind, found: float) -> Measure:
    """Hold a size against a figure of the sheet."""
    asked = next((figure.value for figure in solids.kit.figures if figure.kind is kind), float("nan"))
    return Measure(name=kind.value, asked=asked, found=found)


def _casing(solids: KitSolids, casing: Set) -> list[Measure]:
    legs = (casing[Side.LEFT], casing[Side.RIGHT])
    width = legs[1].high[X] - legs[0].low[X]
    height = casing.high(Y) - casing.low(Y)
    loose = solids.inside_slack.lean
    found = [
        _loosened(against_figure(solids, FigureKind.CASING_OUTSIDE_WIDTH, width), loose),
        _loosened(against_figure(solids, FigureKind.CASING_OUTSIDE_HEIGHT, height), loose),
    ]
    overhang = next((one.value for one in solids.kit.figures if one.kind is FigureKind.HEAD_CASING_OVERHANG), 0.0)
    for name, size in (
        ("left", legs[0].low[X] - casing[Side.HEAD].low[X]),
        ("right", casing[Side.HEAD].high[X] - legs[1].high[X]),
    ):
        found.append(
            Measure(name=f"head casing past the {name} leg", asked=overhang, found=size, tolerance=TIGHT + loose)
        )
    if not hangs_as_read(solids.kit, Where.INTERIOR):
        proud = -max(solid.high[D] for solid in casing.all)
        found.append(Measure(name="casing off the finished wall (proud)", asked=solids.job.shop.proud, found=proud))
    return found


def _loosened(measure: Measure, more: float) -> Measure:
    return Measure(name=measure.name, asked=measure.asked, found=measure.found, tolerance=TIGHT + more)


def _stool(solids: KitSolids, stool: Solid, casing: Set) -> list[Measure]:
    trim, edge = _trim(solids), solids.kit.placement.inside_edge
    assert trim.stool is not None
    side = sill_over_all(solids.kit.run, solids.kit.sides)
    front = edge - stool.low[D] - max(side.start_depth, side.finish_depth)
    out = trim.casing.thickness + trim.stool.nosing
    if has_slanted_feet(solids):
        beside = beside_feet(solids, stool)
    else:
        beside = [*_stool_ends(solids, stool, casing, trim.stool), *_apron(solids, casing)] if casing else []
    return [
        *(
            _horns(stool, edge, side, solids.job.shop.horn_play or 0.0)
            if trim.past_clear + trim.stool.horn > trim.beside_stool
            else []
        ),
        *beside,
        against_figure(solids, FigureKind.STOOL_LENGTH, stool.high[X] - stool.low[X]),
        Measure(name="front of the stool to the finished wall", asked=out, found=front),
        Measure(name="stool under the frame", asked=trim.stool.rabbet, found=stool.high[D] - edge),
    ]


def _stool_ends(solids: KitSolids, stool: Solid, casing: Set, asked: StoolEntry) -> list[Measure]:
    """Between its horns the stool is as wide as the jamb box; past the casing stands the horn."""
    loose = TIGHT + solids.inside_slack.lean
    inner = [corner[X] for corner in corners_at(stool, D, stool.high[D])]
    jambs = jambs_of(solids)[-1][1] if solids.kit.frames else None
    if solids.kit.run:
        jambs = over_all(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB)
    left, right = casing[Side.LEFT].low[X] - stool.low[X], stool.high[X] - casing[Side.RIGHT].high[X]
    found = [
        Measure(name="stool past the casing at the left", asked=asked.horn, found=left, tolerance=loose),
        Measure(name="stool past the casing at the right", asked=asked.horn, found=right, tolerance=loose),
    ]
    if jambs:
        low, high, _ = _box_at_frame(jambs, solids.kit.frames[-1].edge)
        box = high - low - sum(solids.kit.flares.out(leg, asked.rabbet) for leg in LEGS)
        between = max(inner) - min(inner)
        found.append(Measure(name="stool between its horns", asked=box, found=between))
    return found


def _horns(stool: Solid, edge: float, side: FittedSide, play: float) -> list[Measure]:
    """The backs of the horns lie on the finished wall, or its play off it, as deep as it was measured at each end."""
    ends = (("left", stool.low[X], side.start_depth), ("right", stool.high[X], side.finish_depth))
    return [
        Measure(
            name=f"back of the stool's {name} horn to the frame",
            asked=depth + play,
            found=edge - max(corner[D] for corner in corners_at(stool, X, at)),
        )
        for name, at, depth in ends
    ]


def _apron(solids: KitSolids, casing: Set) -> list[Measure]:
    """The apron's face runs from one outer edge of the casing to the other."""
    apron = one_of(solids, Where.INTERIOR, PartKind.APRON)
    if apron is None or apron.part is None:
        return []
    loose = TIGHT + solids.inside_slack.lean_of(apron.part)
    across, through = apron.seat.along, apron.seat.through
    face = next(facet for facet in apron.facets if facet.faces(_turned(through)))
    along = [dot(across, corner) for corner in face.loops[0]]
    asked = casing[Side.RIGHT].high[X] - casing[Side.LEFT].low[X]
    left = min(corner[X] for corner in face.loops[0]) - casing[Side.LEFT].low[X]
    return [
        Measure(name="face of the apron", asked=asked, found=max(along) - min(along), tolerance=loose),
        Measure(name="left end of the apron to the casing's edge", asked=0.0, found=left, tolerance=loose),
    ]


def _turned(way: Vector) -> Vector:
    return (-way[0], -way[1], -way[2])
