"""What stands on a stool under a shape without two legs, measured on the solids: slants and arcs that end level."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from jambs.geometry import Point, Vector
from jambs.job.models.trim import InteriorTrim
from jambs.parts.board.kinds import PartKind, Where
from jambs.place.frame_path import frame_path
from jambs.sides import Side
from jambs.solids.depths_round import interior_depths
from jambs.solids.joints import joint
from jambs.solids.lookup import D, X, Y, one_of
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure


def has_slanted_feet(solids: KitSolids) -> bool:
    """Say whether no two upright legs stand on the stool."""
    opening = solids.kit.placement.opening
    return opening.shape is not None and opening.shape.is_cut_below(opening.frame)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Feet:
    """Where boards end on a stool, from left to right, at the left and at the right of it (x) [in]."""

    left: Point
    right: Point

    @property
    def length(self) -> float:
        """How much of the stool both take [in]."""
        return self.left[1] - self.left[0] + self.right[1] - self.right[0]


def _corners(boards: Sequence[Solid], stool: Solid, near: float) -> tuple[list[Vector], list[Vector]]:
    """Return the corners of boards on a stool, at its left and at its right; ``near``: least distance off its top."""
    corners = [corner for board in boards for facet in board.facets for loop in facet.loops for corner in loop]
    feet, middle = [one for one in corners if abs(one[Y] - stool.high[Y]) < near], (stool.low[X] + stool.high[X]) / 2
    return [one for one in feet if one[X] < middle], [one for one in feet if one[X] > middle]


def _ends(corners: Sequence[Vector]) -> Point:
    """Return how far corners reach from left to right (x) [in]."""
    xs = [corner[X] for corner in corners]
    return min(xs), max(xs)


def _feet(boards: Sequence[Solid], stool: Solid, near: float) -> _Feet:
    """Find where boards end on a stool, by their corners there; ``near``: how far those may lie off its top [in]."""
    left, right = _corners(boards, stool, near)
    return _Feet(left=_ends(left), right=_ends(right))


def _boards(solids: KitSolids, kind: PartKind) -> list[Solid]:
    parts = [one for one in solids.parts if one.part]
    return [one for one in parts if one.part and one.part.where is Where.INTERIOR and one.part.kind is kind]


def _jambs_on(solids: KitSolids, stool: Solid) -> _Feet:
    """Return the feet of the jambs over all: of flared ones from the frame edge to the room edge."""
    return _feet(_boards(solids, PartKind.EXTENSION_JAMB), stool, TIGHT)


def _jambs_at_frame(solids: KitSolids, stool: Solid) -> _Feet:
    """Return them at the frame edge alone."""
    boards = _boards(solids, PartKind.EXTENSION_JAMB)
    at, sides = max(board.high[D] for board in boards), _corners(boards, stool, TIGHT)
    left, right = (_ends([corner for corner in side if corner[D] > at - TIGHT]) for side in sides)
    return _Feet(left=left, right=right)


def _casing_on(solids: KitSolids, stool: Solid) -> _Feet:
    return _feet(_boards(solids, PartKind.CASING), stool, TIGHT + solids.inside_slack.lean)


def casing_over_stool(trim: InteriorTrim, proud: float) -> float:
    """How much of the casing's thickness the stool carries: it stands proud, the nosing may be less [in]."""
    assert trim.stool is not None
    return min(trim.casing.thickness, trim.casing.thickness + trim.stool.nosing - proud)


def feet_on_stool(solids: KitSolids, stool: Solid) -> list[JointCheck]:
    """Measure the feet of jambs and casing on the stool: they bear with all of their ends."""
    pieces = _boards(solids, PartKind.CASING)
    return [_jamb_feet(solids, stool), *([_casing_feet(solids, stool, pieces)] if pieces else [])]


def _jamb_feet(solids: KitSolids, stool: Solid) -> JointCheck:
    path, depths = frame_path(solids.kit.placement.opening), interior_depths(solids)
    feet = _jambs_at_frame(solids, stool)
    i = next(i for i, edge in enumerate(path) if edge.side is Side.SILL)
    before, after = path[i - 1], path[(i + 1) % len(path)]
    right, left = depths.along(before)[1], depths.along(after)[0]
    return joint(
        "the feet of the jambs and the stool",
        _boards(solids, PartKind.EXTENSION_JAMB),
        [stool],
        asked=(feet.left[1] - feet.left[0]) * left + (feet.right[1] - feet.right[0]) * right,
        tolerance=TIGHT + feet.length * depths.loose(before, after, feet.length),
    )


def _casing_feet(solids: KitSolids, stool: Solid, pieces: Sequence[Solid]) -> JointCheck:
    shop, slack, feet = solids.job.shop, solids.inside_slack, _casing_on(solids, stool)
    bare = past_horns(solids, stool) * max((shop.horn_play or 0.0) - shop.proud, 0.0)
    return joint(
        "the feet of the casing and the stool",
        pieces,
        [stool],
        asked=feet.length * casing_over_stool(solids.kit.placement.opening.interior, shop.proud) - bare,
        slack=slack.lean,
        tolerance=TIGHT + feet.length * (slack.gap + slack.slope * feet.length),
    )


def past_horns(solids: KitSolids, stool: Solid) -> float:
    """How far the outer edges of the casing lie past the notches of the stool, both ends together [in]."""
    jambs, casing = _jambs_on(solids, stool), _casing_on(solids, stool)
    return jambs.left[0] - casing.left[0] + casing.right[1] - jambs.right[1]


def _backs(solids: KitSolids, stool: Solid) -> Point:
    """Return where the backs of the jambs, drawn out, cross the stool's edge under the frame, left and right (x)."""
    boards = _boards(solids, PartKind.EXTENSION_JAMB)
    frame, (left, right) = max(board.high[D] for board in boards), _corners(boards, stool, TIGHT)
    return _back(left, min, frame, stool.high[D]), _back(right, max, frame, stool.high[D])


def _back(corners: Sequence[Vector], outer: Callable[[list[float]], float], frame: float, edge: float) -> float:
    """Draw the back of one jamb out from the frame to the stool's edge; ``outer``: least or greatest of its corners."""
    room = min(corner[D] for corner in corners)
    near, far = (outer([one[X] for one in corners if abs(one[D] - at) < TIGHT]) for at in (frame, room))
    return near + (near - far) * (edge - frame) / (frame - room)


def beside_feet(solids: KitSolids, stool: Solid) -> list[Measure]:
    """Measure horns past the casing, the stool's notches on the backs of the jambs, the apron under the casing."""
    trim, loose = solids.kit.placement.opening.interior, TIGHT + solids.inside_slack.lean
    assert trim.stool is not None
    casing, horn = _casing_on(solids, stool), trim.stool.horn
    corners = (corner for facet in stool.facets for loop in facet.loops for corner in loop)
    at_frame = [x for x, _, d in corners if abs(d - stool.high[D]) < TIGHT]
    left, right = casing.left[0] - stool.low[X], stool.high[X] - casing.right[1]
    backs = _backs(solids, stool)
    found = [
        Measure(name="stool past the casing at the left", asked=horn, found=left, tolerance=loose),
        Measure(name="stool past the casing at the right", asked=horn, found=right, tolerance=loose),
        Measure(name="left notch of the stool to the jamb's back", asked=0.0, found=min(at_frame) - backs[0]),
        Measure(name="right notch of the stool to the jamb's back", asked=0.0, found=max(at_frame) - backs[1]),
    ]
    apron = one_of(solids, Where.INTERIOR, PartKind.APRON)
    if apron and apron.part:
        asked, name = casing.right[1] - casing.left[0], "apron from edge to edge of the casing"
        found.append(Measure(name=name, asked=asked, found=apron.part.length, tolerance=2 * loose))
    return found
