"""What carries a window at its flange plane: buck, framing opening, weight, overhang, bearing."""

from __future__ import annotations

from jambs.findings import Finding, Subject
from jambs.job.models.fields import Size
from jambs.job.models.layers import BuckKind, Role
from jambs.job.models.openings import Opening
from jambs.job.models.path import area_of, outset, shaped_path, size_over_all
from jambs.job.models.shop import Limits, Shop
from jambs.job.models.straight_round import greatest_off
from jambs.job.models.windows import USUAL_PANE, USUAL_PANES
from jambs.length import TAPE_GRIDS, Grid, Units
from jambs.place.limits import SAME_PLANE
from jambs.place.placement import Buck
from jambs.place.shim_space import shims
from jambs.place.support_findings import (
    FlangeBearsPartly,
    FlangeWidthAssumed,
    HoleOutline,
    LinerStandsOut,
    NeedsEngineer,
    NoRoomForShims,
    OffTheTape,
    OutboardBuckDepth,
    ThresholdStandsOut,
)
from jambs.place.units import unit_openings
from jambs.sides import Side
from jambs.wall.planes import WallPlanes

GLASS_POUNDS_PER_SQUARE_FOOT_INCH = 13.0
"""Weight of glass, 2500 kg/m3 [lb per sq ft and inch of thickness] (density: common handbook value, from memory)."""
FRAME_POUNDS_PER_FOOT = 3.0
"""Weight of frame and sash along the outer edge [lb/ft]; assumed, common practice, no source."""
LEAST_BEARING = 0.5
"""Share of a nailing flange that bears on something solid at the least; common practice, no source."""
LEAST_SHIM = 1 / 8
"""Space round a frame below which shims no longer go in [in]; common practice, no source."""


def carrying_layer(planes: WallPlanes, flange_plane: float) -> str | None:
    """Name what the flange lies on without a buck: the sheathing, a layer that carries; None where nothing does."""
    if abs(flange_plane - planes.sheathing_plane) < SAME_PLANE:
        return "sheathing"
    faces = (one for one in planes.layers if one.layer.carries and abs(one.outer - flange_plane) < SAME_PLANE)
    return next((one.layer.name for one in faces), None)


def buck_at(planes: WallPlanes, flange_plane: float) -> Buck | None:
    """Return the buck a flange plane needs; None where framing or a layer of the wall carries it, or clips do."""
    entry = planes.wall.buck
    if entry is None or entry.kind is BuckKind.NONE or carrying_layer(planes, flange_plane):
        return None
    if flange_plane < planes.sheathing_plane:
        return None
    inner = planes.stud_face if entry.kind is BuckKind.LINER else planes.sheathing_plane
    return Buck(
        kind=entry.kind,
        inner=inner,
        outer=flange_plane,
        thickness=entry.thickness,
        stock=entry.stock,
        set_back=entry.set_back if entry.kind is BuckKind.OUTBOARD else 0.0,
    )


def framing_opening(
    opening: Opening, buck: Buck | None, grid: Grid | None = None, *, sill: float | None = None
) -> Size:
    """The hole in the framing, width × height [in]: the window's rough opening and the liner around it.

    A door's reaches from the finished floor to the head; its buck has no bottom. A liner's is rounded up to the grid of
    the framing, where the shop has one, its sill down and its head up: the rest is shimmed behind it; so is a shape.
    ``sill``: where the bottom of a shape's hole is framed, over the finished floor; its head is no lower for that.
    """
    hole = _hole(opening, buck)
    if grid is None or not (_is_lined(buck) or opening.shape):
        return hole
    if opening.shape:
        exact = framing_sill(opening, buck)
        lowered = 0.0 if exact is None or sill is None else exact - sill
        return Size(width=grid.up(hole.width), height=grid.up(hole.height + lowered))
    framed, rough = framing_sill(opening, buck, grid), _rough_sill(opening, grid)
    below = rough - framed - buck.thickness if buck and framed is not None and rough is not None else 0.0
    return Size(width=grid.up(hole.width), height=grid.up(hole.height + below))


def framing_sill(opening: Opening, buck: Buck | None, grid: Grid | None = None) -> float | None:
    """From the finished floor up to the bottom of the hole in the framing [in]: the rough sill, under a liner.

    None where no sill height is given, and for a door, whose hole begins at the finished floor.
    """
    rough = _rough_sill(opening, grid)
    if rough is None or opening.floor_below_frame is not None:
        return None
    sill = rough - (buck.thickness if buck and _is_lined(buck) else 0.0)
    return grid.down(sill) if grid else sill


def _is_lined(buck: Buck | None) -> bool:
    return buck is not None and buck.kind is BuckKind.LINER


def _rough_sill(opening: Opening, grid: Grid | None) -> float | None:
    return None if opening.sill_height is None else opening.sill_height - shims(opening, grid).sill


def _hole(opening: Opening, buck: Buck | None) -> Size:
    if opening.shape and buck and _is_lined(buck):
        return size_over_all(_outline(opening, buck).path)
    rough, lining = opening.rough_opening, buck.thickness if buck and buck.kind is BuckKind.LINER else 0.0
    if opening.floor_below_frame is not None:
        return Size(width=rough.width + 2 * lining, height=rough.height + opening.floor_below_frame + lining)
    return Size(width=rough.width + 2 * lining, height=rough.height + 2 * lining)


def weight_of(opening: Opening, units: Units) -> tuple[float, bool]:
    """Weight of one unit [lb], and whether it is only estimated from glass and frame.

    ``units``: of the job; where it gives no glass, its usual panes go by them.
    """
    if opening.weight is not None:
        return opening.weight, False
    if opening.window.weight is not None:
        return opening.window.weight, False
    glass = opening.window.glass
    panes = glass.panes if glass else USUAL_PANES
    thickness = glass.pane_thickness if glass else USUAL_PANE[units]
    area = opening.frame.width * opening.frame.height / 144
    around = 2 * (opening.frame.width + opening.frame.height) / 12
    if opening.shape:
        path = shaped_path(opening.frame, opening.shape)
        area, around = area_of(path) / 144, sum(edge.length for edge in path) / 12
    return area * panes * thickness * GLASS_POUNDS_PER_SQUARE_FOOT_INCH + around * FRAME_POUNDS_PER_FOOT, True


def carrying_findings(
    opening: Opening, planes: WallPlanes, flange_plane: float, buck: Buck | None, shop: Shop, limits: Limits
) -> list[Finding]:
    """How the window is carried, where that needs a word; the shop says what it wants round a frame."""
    about, overhang = Subject.opening(opening.mark), flange_plane - planes.sheathing_plane
    pounds = sum(weight_of(one, shop.grid.units)[0] for one in unit_openings(opening))
    found = _engineer(opening, pounds, overhang if buck else 0.0, limits)
    if buck:
        found += [*_bearing(opening, buck, shop.framing_grid), _fasteners(opening, buck, overhang, planes)]
    if opening.floor_below_frame is not None and overhang > SAME_PLANE:
        out = overhang + max(one.window.frame_projection for one in unit_openings(opening))
        found.append(ThresholdStandsOut(subject=about, overhang=out))
    return [*found, *_space(opening, shop), *_off_the_tape(opening, buck, shop)]


def _off_the_tape(opening: Opening, buck: Buck | None, shop: Shop) -> list[Finding]:
    """Find a hole in the framing that no framer can mark, where nothing rounds it to what he saws to."""
    tape, outline = TAPE_GRIDS[shop.grid.units], None
    if shop.framing_grid and opening.shape is None:
        return []
    hole, sill = framing_opening(opening, buck), framing_sill(opening, buck)
    is_held = all(tape.holds(one) for one in (hole.width, hole.height, sill or 0.0))
    if opening.shape:
        tape, outline = shop.framers_grid, _outline(opening, buck)
        is_held = is_held and outline.is_marked_by(tape)
    if is_held:
        return []
    about = Subject.opening(opening.mark)
    return [OffTheTape(subject=about, width=hole.width, height=hole.height, sill=sill, step=tape.step, outline=outline)]


def _outline(opening: Opening, buck: Buck | None) -> HoleOutline:
    assert opening.shape is not None
    path = outset(shaped_path(opening.frame, opening.shape), dict.fromkeys(Side, _lined_shims(opening, buck)))
    return HoleOutline(kind=opening.shape.kind, path=path)


def _lined_shims(opening: Opening, buck: Buck | None) -> float:
    """Frame → framing round a shape, which is the same along every edge [in]."""
    return shims(opening).left + lined_by(opening, buck)


def lined_by(opening: Opening, buck: Buck | None) -> float:
    """How far the framing stands back from the rough opening for a liner buck [in]: round arcs for its corners too.

    Nothing where there is none.
    """
    if buck is None or not _is_lined(buck):
        return 0.0
    return buck.thickness + _off_arcs(opening, buck.thickness)


def _off_arcs(opening: Opening, out: float = 0.0) -> float:
    """How far the corners of straight boards round an arc stand off it, so far outside the rough opening [in]."""
    path = outset(shaped_path(opening.frame, opening.shape), dict.fromkeys(Side, shims(opening).left))
    radii = [edge.circle.radius for edge in path if edge.circle]
    return greatest_off(path) * (1 + out / min(radii)) if radii else 0.0


def _space(opening: Opening, shop: Shop) -> list[Finding]:
    """Find where the frame has less room in its rough opening than the shop wants for shims."""
    around, about, wanted = shims(opening, shop.framing_grid), Subject.opening(opening.mark), shop.shim_space
    sides: dict[Side | None, float] = {None: min(around.left, around.right), Side.HEAD: around.head}
    if opening.floor_below_frame is None:
        sides[Side.SILL] = around.sill
    return [
        NoRoomForShims(subject=about, side=side, gap=gap, wanted=wanted)
        for side, gap in sides.items()
        if gap < min(wanted, LEAST_SHIM) - SAME_PLANE
    ]


def _engineer(opening: Opening, pounds: float, overhang: float, limits: Limits) -> list[Finding]:
    is_far, is_heavy = overhang > limits.overhang + SAME_PLANE, pounds > limits.weight
    if not is_far and not is_heavy:
        return []
    return [
        NeedsEngineer(
            subject=Subject.opening(opening.mark),
            overhang=overhang if is_far else None,
            overhang_limit=limits.overhang,
            pounds=pounds if is_heavy else None,
            pounds_limit=limits.weight,
            units=len(unit_openings(opening)),
        )
    ]


def _bearing(opening: Opening, buck: Buck, grid: Grid | None) -> list[Finding]:
    flange = opening.window.flange_width
    if not opening.window.nailing_flange or flange is None:
        return []
    about = Subject.opening(opening.mark)
    if "flange_width" in opening.unstated:
        return [FlangeWidthAssumed(subject=about, flange=flange)]
    around = shims(opening, grid)
    gap = max(around.left, around.right, around.head, around.sill) + buck.set_back
    if opening.shape:
        gap += _off_arcs(opening)
    past_gap = flange - gap
    bears = max(min(buck.thickness, past_gap), 0.0)
    is_thin = buck.thickness < past_gap - SAME_PLANE
    if bears >= LEAST_BEARING * flange - SAME_PLANE and not is_thin:
        return []
    return [
        FlangeBearsPartly(subject=about, flange=flange, gap=gap, bears=bears, past_gap=past_gap, buck_is_thin=is_thin)
    ]


def _fasteners(opening: Opening, buck: Buck, overhang: float, planes: WallPlanes) -> Finding:
    about = Subject.opening(opening.mark)
    if buck.kind is BuckKind.LINER:
        is_bare = all(one.layer.role is not Role.SHEATHING for one in planes.layers)
        sides = 4 if opening.floor_below_frame is None else 3
        return LinerStandsOut(subject=about, overhang=overhang, sides=sides, is_bare=is_bare)
    return OutboardBuckDepth(subject=about, depth=overhang)
