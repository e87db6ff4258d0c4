"""Details of the parts that are no plain boards: the outline of the face, and the profile of the end."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import CallOut, Chain, Fill, Hatch, Ink, Interval, Shape, View, ViewKind, ViewSide
from jambs.drawings.views.alike import Alike, grouped, listed, told_of
from jambs.drawings.views.arced_details import (
    arced_chains,
    arced_shapes,
    edge_words,
    radii,
)
from jambs.drawings.views.leaned_details import (
    across_chains,
    has_two_faces,
    leaned_chains,
    leaned_end,
    leaned_shapes,
)
from jambs.drawings.views.named_ends import face_words, with_left_at_left
from jambs.drawings.views.panel_details import panel_chains, panel_shapes
from jambs.drawings.views.walls_between import is_at_wall_between, round_walls
from jambs.geometry import Outline, Point
from jambs.length import HALF_64TH, ROUND_OFF, Grid, decimal_text
from jambs.parts.board.cuts import Crosscut, Edge, EdgeBevel, End, EndBevel, Miter, Molded, Rip
from jambs.parts.board.kinds import PartKind, Where, told_name
from jambs.parts.board.part import Part
from jambs.parts.board.sawing import Pocket
from jambs.parts.board.worked_faces import BoardFace, worked_face
from jambs.parts.kit.kit import Kit
from jambs.parts.words.edge_names import edge_names
from jambs.sides import BoardEnd

WIDEST = 4.0
"""Greatest length of a board on paper, so that details stand in two columns [in]."""
INKS = {Where.INTERIOR: Ink.TRIM_INSIDE, Where.EXTERIOR: Ink.TRIM_OUTSIDE, Where.BUCK: Ink.BUCK}


def details(kit: Kit, *, grid: Grid) -> list[View]:
    """Make the views of every part whose shape words do not tell; like parts and mirror images share one.

    So do ends that are alike, of boards of any length.
    """
    views = []
    drawn = grouped([part for part in kit.parts if not is_told_in_words(part)], grid)
    ends = _like_ends([alike.part for alike in drawn if _needs_profile(alike.part)], grid)
    for alike in drawn:
        views.append(_face_view(alike, grid))
        views += [_profile_view(parts) for parts in ends if parts[0] is alike.part]
    return views


def _like_ends(parts: Iterable[Part], grid: Grid) -> list[list[Part]]:
    """Put parts together whose ends look alike and read alike on a grid, in the order of the first of each."""
    found: dict[object, list[Part]] = {}
    for part in parts:
        view = _profile_view([part])
        points = [tuple((round(v * 128), round(w * 128)) for v, w in shape.points) for shape in view.shapes]
        # A hair apart two may look alike and read 68 and 69.
        said = [grid.text(math.dist(one.start, one.finish)) for chain in view.chains for one in chain.intervals]
        found.setdefault((part.where, edge_names(part), *points, *said, _bevels(part)), []).append(part)
    return list(found.values())


def is_told_in_words(part: Part) -> bool:
    """Say whether the parts table tells all of a part: a board of one width, its ends cut off at one angle each.

    Along the edge of a shape it tells those alone whose ends are square: whether a joint there is a miter or a cut
    across the thickness is seen on the detail.
    """
    if part.frame_members:
        return False
    if part.is_plain:
        return True
    return part.runs is None and all(isinstance(cut, Rip | Crosscut | Miter | EndBevel) for cut in part.cuts)


def _lies(alike: Alike) -> tuple[str, ...]:
    """Say how the face of each part lies with its ends as named: a mirror image has its edges the other way up."""
    lies: dict[str, list[Part]] = {}
    for part in (*alike.same, *alike.mirrored):
        lies.setdefault(face_words(part), []).append(part)
    if len(lies) == 1:
        return tuple(lies)
    return tuple(f"{listed(parts)}: {words}" for words, parts in lies.items())


def _face_view(alike: Alike, grid: Grid) -> View:
    """Draw the face: left end at the left, bottom of a leg at the left."""
    part = alike.part
    if part.arcs:
        return _arced_view(alike, grid)
    is_two = has_two_faces(part)
    along = leaned_chains(part) if is_two else _edge_chains(part)
    across = across_chains(part) if is_two or part.is_leaned else _end_chains(part, grid)
    outline = leaned_shapes(part, INKS[part.where]) if is_two else (Shape(points=part.outline, ink=INKS[part.where]),)
    view = View(
        name=f"detail {part.mark}",
        kind=ViewKind.DETAIL,
        title=f"{alike.marks}  {told_name(part.name, part.where.value)}",
        shapes=(*outline, *_pockets(part), *_slanted_rabbets(part), *panel_shapes(part, INKS[part.where])),
        chains=(*along, *across, *panel_chains(part)),
        call_outs=tuple(_angles(part)),
        remarks=(*_lies(alike), *(_seen_words(part) if alike.names_ends else ()), *told_of(part, grid)),
        largest=1,
        widest=WIDEST,
        share=(0.5, 1.0),
    )
    return with_left_at_left(view, part, names_ends=alike.names_ends)


def _arced_view(alike: Alike, grid: Grid) -> View:
    """Draw a piece that is sawn to arcs: face up, or on its edge; its start at the left."""
    part = alike.part
    name = f"{alike.marks}  {told_name(part.name, part.where.value)}"
    return View(
        name=f"detail {part.mark}",
        kind=ViewKind.DETAIL,
        title=name,
        shapes=arced_shapes(part, INKS[part.where]),
        chains=arced_chains(part),
        call_outs=radii(part),
        remarks=(edge_words(part), *_seen_words(part), *told_of(part, grid)),
        largest=1,
        widest=WIDEST,
        share=(0.5, 1.0),
    )


def _seen_words(part: Part) -> tuple[str, ...]:
    says_left = part.where is Where.EXTERIOR and BoardEnd.LEFT in part.seat.ends
    return ("left and right as seen from inside",) if says_left else ()


def _pockets(part: Part) -> list[Shape]:
    """Draw rabbets of the face in full lines, grooves of the back in broken ones."""
    shapes = []
    for pocket in part.pockets:
        (u0, v0, w0), (u1, v1, _) = pocket.low, pocket.high
        ink = INKS[part.where] if w0 <= 0 else Ink.HIDDEN
        corners = ((u0, v0), (u1, v0), (u1, min(v1, _far(part, u1))), (u0, min(v1, _far(part, u0))))
        shapes.append(Shape(points=corners, ink=ink))
    return shapes


def _slanted_rabbets(part: Part) -> list[Shape]:
    """Draw the rabbets for the ends of flared jambs: from the sawn end to a shoulder that leans as it does."""
    if not part.silhouettes.rabbets:
        return []
    return [Shape(points=one.outline, ink=INKS[part.where]) for one in worked_face(part, BoardFace.FACE).pockets]


def _far(part: Part, along: float) -> float:
    """Return the level of the far edge at a place along the grain."""
    levels = [v for u, v in part.outline if abs(u - along) < HALF_64TH]
    for (u0, v0), (u1, v1) in zip(part.outline, (*part.outline[1:], part.outline[0]), strict=True):
        if min(u0, u1) < along < max(u0, u1):
            levels.append(v0 + (along - u0) / (u1 - u0) * (v1 - v0))
    return max(levels)


def _stops(points: Iterable[Point], axis: int) -> list[Point]:
    """Return points apart from each other along one axis, in order."""
    stops: list[Point] = []
    for point in sorted(points, key=lambda point: (point[axis], point[1 - axis])):
        if not stops or point[axis] - stops[-1][axis] > HALF_64TH:
            stops.append(point)
    return stops


def _chain(stops: Sequence[Point], side: ViewSide) -> list[Chain]:
    intervals = tuple(Interval(start=one, finish=two) for one, two in itertools.pairwise(stops))
    return [Chain(side=side, intervals=intervals)] if intervals else []


def _edge_chains(part: Part) -> list[Chain]:
    """Dimension the corners of the far edge above, those of the near edge below, then the whole length."""
    box = box_around(part.outline)
    far = _stops([point for point in part.outline if _is_on_edge(point, part, 1)], 0)
    near = _stops([point for point in part.outline if _is_on_edge(point, part, -1)], 0)
    for pocket in part.pockets:
        if pocket.low[2] <= 0:
            near = _stops([*near, (pocket.low[0], 0.0), (pocket.high[0], 0.0)], 0)
    whole = [(box.left, _at(part, box.left)), (box.right, _at(part, box.right))]
    is_same = [round(u * 128) for u, _ in far] == [round(u * 128) for u, _ in near]
    chains = ([] if is_same else _chain(far, ViewSide.TOP)) + _chain(near, ViewSide.BOTTOM)
    spans = [(stops[0][0], stops[-1][0]) for stops in (far, near) if len(stops) == 2]
    if not any(abs(low - box.left) < HALF_64TH and abs(high - box.right) < HALF_64TH for low, high in spans):
        chains += _chain(whole, ViewSide.BOTTOM)
    return chains


def _is_on_edge(point: Point, part: Part, way: int) -> bool:
    """Say whether a corner counts with the far (way 1) or the near edge (-1); the tip of a pointed end with one."""
    if not _is_outermost(point, part.outline, way):
        return False
    is_tip = _is_outermost(point, part.outline, -way)
    return not is_tip or (point[1] - part.width / 2) * way >= 0


def _is_outermost(point: Point, outline: Sequence[Point], way: int) -> bool:
    """Say whether nothing of the board lies above (way 1) or below (-1) a corner."""
    u, v = point
    levels = [
        a[1] + (u - a[0]) / (b[0] - a[0]) * (b[1] - a[1])
        for a, b in zip(outline, (*outline[1:], outline[0]), strict=True)
        if min(a[0], b[0]) < u - HALF_64TH and u + HALF_64TH < max(a[0], b[0])
    ]
    return not any(level * way > v * way + HALF_64TH for level in levels) and not any(
        one[1] * way > v * way + HALF_64TH for one in outline if abs(one[0] - u) < HALF_64TH
    )


def _at(part: Part, end: float) -> float:
    """Return the lowest corner at one end."""
    return min(v for u, v in part.outline if abs(u - end) < HALF_64TH)


def _end_chains(part: Part, grid: Grid) -> list[Chain]:
    """Dimension the corners of each half at its own end; once where both ends are alike."""
    box = box_around(part.outline)
    middle = box.center[0]
    corners = [point for point in part.outline if not is_at_wall_between(point, part)]
    start = _stops([(u, v) for u, v in corners if u <= middle], 1)
    finish = _stops([(u, v) for u, v in corners if u > middle], 1)
    chains = _chain(start, ViewSide.LEFT)
    levels = [[round(v * 128) for _, v in stops] for stops in (start, finish)]
    if levels[0] != levels[1]:
        chains += _chain(finish, ViewSide.RIGHT)
    chains += round_walls(part, [v for _, v in corners], grid)
    if len(start) > 2:
        edges = [(box.left, 0.0), (box.left, box.top)]
        chains += _chain(edges, ViewSide.LEFT)
    return chains


def _angles(part: Part) -> list[CallOut]:
    """Name the angles of mitered ends at the middle of their edge."""
    found = []
    for cut in part.cuts:
        if isinstance(cut, Miter | EndBevel):
            kind = "miter" if isinstance(cut, Miter) else "bevel"
            is_start = cut.end is End.START
            point = _end_middle(part, is_start)
            words = f"{kind} {decimal_text(cut.angle_deg, 1)}°"
            side = ViewSide.LEFT if is_start else ViewSide.RIGHT
            found.append(CallOut(target=point, lines=(words,), side=side, on_edge=True))
    return found


def _end_middle(part: Part, is_start: bool) -> Point:
    box = box_around(part.outline)
    middle = box.center[0]
    points = [point for point in part.outline if (point[0] <= middle) == is_start]
    low = min(points, key=lambda point: (point[1], abs(point[0] - middle)))
    high = max(points, key=lambda point: (point[1], -abs(point[0] - middle)))
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)


def _needs_profile(part: Part) -> bool:
    """Say whether the end of the board shows more than a rectangle; that of a sill is drawn in the detail outside."""
    if part.kind is PartKind.EXTERIOR_SILL:
        return False
    has_groove = any(_runs_through(part, pocket) for pocket in part.pockets)
    return len(part.profile) != 4 or has_groove or any(isinstance(cut, EdgeBevel) for cut in part.cuts)


def _profile_view(parts: Sequence[Part]) -> View:
    """Draw the finish end of boards that are alike there: face up, near edge at the left, kerfs and grooves cut in."""
    part = parts[0]
    outline = tuple((v, part.thickness - w) for v, w in _finish_end(part))
    is_molded = any(isinstance(cut, Molded) for cut in part.cuts)
    grooves = [_groove(part, pocket) for pocket in part.pockets if _runs_through(part, pocket)]
    fill = Fill(pieces=(outline,), hatch=Hatch.TRIM, ink=Ink.HATCH_TRIM)
    return View(
        name=f"profile {part.mark}",
        kind=ViewKind.PROFILE,
        title=f"{listed(parts)}  end{'s' if len(parts) > 1 else ''}",
        shapes=(Shape(points=_notched(outline, grooves), ink=INKS[part.where]),),
        fills=() if grooves else (fill,),
        chains=tuple(_profile_chains(outline, grooves, is_molded=is_molded)),
        remarks=(
            *_seen_from(parts),
            *_bevels(part),
            *(["section at full scale: see the templates"] if is_molded else []),
        ),
    )


def _finish_end(part: Part) -> Outline:
    """The end that is drawn (v, w): of a leaned jamb that is tapered not as wide as the other, its bevels the same."""
    return leaned_end(part) if part.is_leaned else part.profile


def _runs_through(part: Part, pocket: Pocket) -> bool:
    return pocket.low[0] <= 0 and pocket.high[0] >= part.length and pocket.high[2] >= part.thickness


def _groove(part: Part, pocket: Pocket) -> tuple[Point, ...]:
    """Return a groove of the back from its open corner round to the other."""
    (_, near, bottom), (_, far, _) = pocket.low, pocket.high
    top = part.thickness - bottom
    return ((near, 0.0), (near, top), (far, top), (far, 0.0))


def _notched(outline: tuple[Point, ...], grooves: Sequence[tuple[Point, ...]]) -> tuple[Point, ...]:
    """Cut grooves into the lower edge of a profile."""
    points: list[Point] = []
    for one, two in zip(outline, (*outline[1:], outline[0]), strict=True):
        points.append(one)
        if abs(one[1]) < ROUND_OFF and abs(two[1]) < ROUND_OFF:
            inside = [groove for groove in grooves if min(one[0], two[0]) < groove[0][0] < max(one[0], two[0])]
            for groove in sorted(inside, reverse=one[0] > two[0]):
                points += groove[::-1] if one[0] > two[0] else groove
    return tuple(points)


def _profile_chains(
    outline: tuple[Point, ...], grooves: Sequence[tuple[Point, ...]], *, is_molded: bool
) -> list[Chain]:
    """Dimension what the end shows; of a molded section its size over all, its curves are on the template."""
    box = box_around(outline)
    if is_molded:
        return [
            *_chain([(box.left, 0.0), (box.right, 0.0)], ViewSide.BOTTOM),
            *_chain(_ends_up(outline), ViewSide.RIGHT),
        ]
    top = _stops([point for point in outline if point[1] > box.center[1]], 0)
    edges = [corner for groove in grooves for corner in (groove[0], groove[3])]
    low = _stops([*(point for point in outline if point[1] <= box.center[1]), *edges], 0)
    right = max(outline, key=lambda point: (point[0], point[1]))
    bottom = min(outline, key=lambda point: (point[1], -point[0]))
    high = max(outline, key=lambda point: (point[1], point[0]))
    is_same = [round(v * 128) for v, _ in top] == [round(v * 128) for v, _ in low]
    chains = ([] if is_same else _chain(top, ViewSide.TOP)) + _chain(low, ViewSide.BOTTOM)
    if abs(top[0][0] - box.left) > HALF_64TH or abs(top[-1][0] - box.right) > HALF_64TH:
        chains += _chain([(box.left, bottom[1]), (right[0], right[1])], ViewSide.BOTTOM)
    chains += _chain([bottom, high], ViewSide.RIGHT)
    for groove in grooves:
        chains += _chain([groove[0], groove[1]], ViewSide.LEFT)
    return chains


def _ends_up(outline: Sequence[Point]) -> list[Point]:
    """Return the lowest and the highest corner at the far edge of a section."""
    high = max(outline, key=lambda point: (point[1], point[0]))
    low = min(outline, key=lambda point: (point[1], -point[0]))
    return [low, high]


def _seen_from(parts: Sequence[Part]) -> tuple[str, ...]:
    """Say which end of each part is seen, and how it lies."""
    seen: dict[str, list[Part]] = {}
    for part in parts:
        seen.setdefault(f"{part.seat.ends[1].words} end", []).append(part)
    lies = f"face up, {edge_names(parts[0])[0]} at the left"
    if len(seen) == 1:
        return (f"{next(iter(seen))}, {lies}",)
    return (lies, *(f"{listed(some)}: {end}" for end, some in seen.items()))


def _bevels(part: Part) -> tuple[str, ...]:
    names = dict(zip(Edge, edge_names(part), strict=True))
    found = [f"{names[edge]} {decimal_text(angle, 1)}°" for edge, angle in _edge_angles(part).items()]
    return ("bevels: " + ", ".join(found),) if found else ()


def _edge_angles(part: Part) -> dict[Edge, float]:
    """How far each long edge is off square [degrees]; both edges of a leaned jamb by as much, tapered or not."""
    angles = {cut.edge: cut.angle_deg for cut in part.cuts if isinstance(cut, EdgeBevel)}
    if part.is_leaned:
        return dict.fromkeys(Edge, max(angles.values()))
    return angles
