"""The opening seen square on, from inside and from outside."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.drawings.elements.boxes import Box, Segment, box_around, boxes_joined, segments_of
from jambs.drawings.elements.cover import Polygon, nearby, visible_area, visible_edges
from jambs.drawings.elements.view import CallOut, Chain, Ink, Interval, Mark, Shape, View, ViewKind, ViewSide
from jambs.drawings.views.beside import beside, frames_across, moved_box
from jambs.drawings.views.curved_seen import hollow_seen, middle_seen, room_on
from jambs.drawings.views.radii_seen import radii_seen
from jambs.drawings.views.sash import (
    corners,
    frame_box,
    glass_boxes,
    opening_lines,
    sash_words,
    unit_boxes,
)
from jambs.drawings.views.seen import Seen, is_hidden, seen
from jambs.drawings.views.shaped_window import (
    outlines_seen,
    rise_words,
    rough_outline_seen,
    side_heights,
    with_its_arcs,
)
from jambs.drawings.views.unit_dimensions import unit_chains
from jambs.job.models.openings import Opening
from jambs.job.models.path import points_of
from jambs.length import HALF_64TH, OFF_GRID, Units, length_text
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.findings.flare_findings import RoughOpeningFlares
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import frame_over_floor
from jambs.place.frame_path import rough_size
from jambs.sides import Side

INKS = {Where.INTERIOR: Ink.SEEN_INSIDE, Where.EXTERIOR: Ink.SEEN_OUTSIDE, Where.BUCK: Ink.BUCK}
IN_FROM_END = 3.0
"""How far from its right end a leader meets a long part [in]."""
LOW_ON_LEG = 0.3
"""Where a leader meets a leg: as a share of its height."""
WIDEST = 5.0
"""Greatest measure of an elevation on paper, so that two stand side by side on the larger page [in]."""


def interior_elevation(kit: Kit, units: Units) -> View:
    """Make the view from the room: heights at the left, call-outs at the right."""
    return _elevation(kit, units, Where.INTERIOR, name="interior elevation", title="Interior elevation")


def exterior_elevation(kit: Kit, units: Units) -> View:
    """Make the view from outside: left and right change places."""
    return _elevation(kit, units, Where.EXTERIOR, name="exterior elevation", title="Exterior elevation")


def _elevation(kit: Kit, units: Units, where: Where, *, name: str, title: str) -> View:
    opening, from_outside = kit.placement.opening, where is Where.EXTERIOR
    kit = kit.whole
    pieces = [
        seen(part, from_outside=from_outside, width=opening.frame.width)
        for part in kit.parts
        if part.where is where and not is_hidden(part, kit)
    ]
    pieces.sort(key=lambda one: (-one.nearness, one.part.mark))
    drawn = [_visible(one, pieces[:number]) for number, one in enumerate(pieces)]
    covers = [one.polygon for one in pieces if not one.part.is_bent]
    shapes = (
        *_window(kit, covers, from_outside=from_outside),
        *_rough_opening(kit, from_outside=from_outside),
        *(shape for shapes in drawn for shape in shapes),
    )
    return View(
        name=name,
        title=title,
        kind=ViewKind.EXTERIOR if from_outside else ViewKind.INTERIOR,
        shapes=tuple(map(with_its_arcs, shapes)) if opening.shape and opening.shape.is_arched else shapes,
        chains=tuple(_chains(kit, pieces, from_outside=from_outside)),
        call_outs=radii_seen(kit, from_outside=from_outside),
        marks=tuple(
            _mark(pieces[number], pieces[:number], drawn[number], opening.frame.width)
            for number in _jambs_first(pieces)
        ),
        remarks=(
            f"{sash_words(opening)}; {'seen from outside' if from_outside else 'seen from the room'}",
            *_over_floor(opening, units),
            *rise_words(opening, units),
            *(() if from_outside else _at_the_framing(kit, units)),
        ),
        largest=2,
        widest=WIDEST,
        share=(0.5, 1.0),
    )


def _over_floor(opening: Opening, units: Units) -> tuple[str, ...]:
    """Say how high the frame stands over the finished floor, where the job says it."""
    bottom = frame_over_floor(opening)
    if bottom is None:
        return ()
    low, high = (length_text(level, units=units) for level in (bottom, bottom + opening.frame.height))
    return (f"over the finished floor: bottom of the frame {low}, top {high}",)


def _jambs_first(pieces: Sequence[Seen]) -> list[int]:
    """Return the order in which marks are placed: jambs have the glass to themselves, the rest may stand elsewhere."""
    return sorted(range(len(pieces)), key=lambda number: not pieces[number].part.kind.is_jamb)


def _visible(one: Seen, nearer: Sequence[Seen]) -> list[Shape]:
    """Draw what nearer parts leave of a part's outline; metal goes up behind the cladding."""
    if one.part.is_bent:
        return [Shape(points=one.polygon, ink=Ink.HIDDEN)]
    nearer = [other for other in nearer if not other.part.is_bent]
    return _uncovered(one.polygon, [other.polygon for other in nearer], INKS[one.part.where])


def _uncovered(polygon: Polygon, covers: Sequence[Polygon], ink: Ink) -> list[Shape]:
    edges = segments_of(polygon, closed=True)
    pieces = visible_edges(edges, nearby(polygon, covers))
    if all(some == [edge] for some, edge in zip(pieces, edges, strict=True)):
        return [Shape(points=polygon, ink=ink)]
    return [Shape(points=piece, ink=ink, closed=False) for some in pieces for piece in some]


def _window(kit: Kit, covers: Sequence[Polygon], *, from_outside: bool) -> list[Shape]:
    opening = kit.placement.opening
    if opening.shape:
        return _shaped_window(opening, covers, from_outside=from_outside)
    units = unit_boxes(opening, from_outside=from_outside)
    for fellow, off in beside(kit, from_outside=from_outside):
        for one, *boxes in unit_boxes(fellow.placement.opening, from_outside=from_outside):
            frame, sight = (moved_box(box, off) for box in boxes)
            units.append((one, frame, sight))
    return [
        shape for unit, frame, sight in units for shape in _unit(unit, frame, sight, covers, from_outside=from_outside)
    ]


def _unit(unit: Opening, frame: Box, sight: Box, covers: Sequence[Polygon], *, from_outside: bool) -> list[Shape]:
    """Draw one window: its frame, panes, and how it opens."""
    shapes = _uncovered(corners(frame), covers, Ink.SEEN_WINDOW) + _uncovered(corners(sight), covers, Ink.SEEN_WINDOW)
    for pane in glass_boxes(unit, sight):
        shapes += _uncovered(corners(pane), covers, Ink.GLASS)
    return shapes + opening_lines(unit, sight, from_outside=from_outside)


def _shaped_window(opening: Opening, covers: Sequence[Polygon], *, from_outside: bool) -> list[Shape]:
    """Draw the outline of a frame that is no rectangle, and its sight line; its glass is fixed."""
    frame, sight = outlines_seen(opening, from_outside=from_outside)
    return [
        *_uncovered(frame, covers, Ink.SEEN_WINDOW),
        *_uncovered(sight, covers, Ink.SEEN_WINDOW),
        *_uncovered(sight, covers, Ink.GLASS),
    ]


def _rough_opening(kit: Kit, *, from_outside: bool) -> list[Shape]:
    """Draw the rough opening behind the trim."""
    if kit.placement.opening.shape:
        return [Shape(points=rough_outline_seen(kit.placement, from_outside=from_outside), ink=Ink.HIDDEN)]
    box = _rough_box(kit, from_outside=from_outside)
    holes = [box] if from_outside or (flared := _hole_at_framing(kit)) is None else [box, _larger(box, flared)]
    return [Shape(points=corners(hole), ink=Ink.HIDDEN) for hole in holes]


def _hole_at_framing(kit: Kit) -> RoughOpeningFlares | None:
    return next((one for one in kit.findings if isinstance(one, RoughOpeningFlares)), None)


def _larger(box: Box, found: RoughOpeningFlares) -> Box:
    """Return the hole that flared jambs need at the inside face of the framing, seen from the room."""
    out = found.out
    return Box(
        box.left - out[Side.LEFT], box.bottom - out[Side.SILL], box.right + out[Side.RIGHT], box.top + out[Side.HEAD]
    )


def _at_the_framing(kit: Kit, units: Units) -> tuple[str, ...]:
    """Say of the larger hole how large it is, how far it stands out and how high it lies."""
    found = _hole_at_framing(kit)
    if found is None:
        return ()
    room = " × ".join(units.text(side) for side in (found.room_width, found.room_height))
    return (f"rough opening at the inside face of the framing {room}: {found.where(units)}",)


def _rough_box(kit: Kit, *, from_outside: bool) -> Box:
    shims, frame = kit.placement.shims, kit.placement.opening.frame
    left, right = (shims.right, shims.left) if from_outside else (shims.left, shims.right)
    return Box(-left, -shims.sill, frame.width + right, frame.height + shims.head)


def _mark(one: Seen, nearer: Sequence[Seen], shapes: Sequence[Shape], width: float) -> Mark:
    """Ask for the part's mark inside its outline, in the glass beside a jamb, low beside a leg, or beside the view.

    ``width``: of the frame [in].
    """
    part, room, middle = one.part, box_around(one.polygon), width / 2
    if part.arcs:
        return _mark_on_curve(one, width)
    lines = (part.mark,)
    is_at_side = _is_leg(part) or part.runs is not None
    side = ViewSide.LEFT if is_at_side and room.center[0] < middle - OFF_GRID else ViewSide.RIGHT
    if not part.kind.is_jamb:
        call_out = CallOut(target=_seen_point(one, nearer), lines=lines, side=side)
        if not _is_leg(part):
            return Mark(text=part.mark, room=room, call_out=call_out)
        x = room.center[0]
        inward = (1.0 if x < middle else -1.0, 0.0)
        low = ((x, room.bottom), (x, room.bottom + 1.5 * LOW_ON_LEG * room.height))
        return Mark(text=part.mark, room=room, call_out=call_out, edge=low, inward=inward)
    edges = [edge for shape in shapes for edge in segments_of(shape.points, closed=shape.closed)]
    inward = _inward(part, from_outside=part.where is Where.EXTERIOR)
    edge = _furthest(edges or segments_of(one.polygon, closed=True), inward)
    call_out = CallOut(target=_middle(edge), lines=lines, side=side, on_edge=True)
    return Mark(text=part.mark, room=room, call_out=call_out, edge=edge, inward=inward)


def _mark_on_curve(one: Seen, width: float) -> Mark:
    """Ask for the mark of a curved piece on it, of a jamb in the glass under its middle, or beside the view."""
    part, jamb = one.part, one.part.kind.is_jamb
    target = hollow_seen(one, width=width) if jamb else middle_seen(one, width=width)
    side = ViewSide.LEFT if target[0] < width / 2 - OFF_GRID else ViewSide.RIGHT
    call_out = CallOut(target=target, lines=(part.mark,), side=side, on_edge=jamb)
    if not jamb:
        return Mark(text=part.mark, room=room_on(one, width=width), call_out=call_out)
    inward = _inward(part, from_outside=part.where is Where.EXTERIOR)
    return Mark(text=part.mark, room=Box(*target, *target), call_out=call_out, edge=(target, target), inward=inward)


def _is_leg(part: Part) -> bool:
    return part.side.is_leg


def _seen_point(one: Seen, nearer: Sequence[Seen]) -> tuple[float, float]:
    """Return a point of what is seen of a part: toward its right end, low on a leg, where no jamb is marked."""
    pieces = visible_area(one.polygon, [other.polygon for other in nearer if not other.part.is_bent])
    boxes = [box_around(piece) for piece in pieces] or [box_around(one.polygon)]
    box = max(boxes, key=lambda box: box.width * box.height)
    if _is_leg(one.part):
        return (box.center[0], box.bottom + LOW_ON_LEG * box.height)
    return (box.right - min(0.25 * box.width, IN_FROM_END), box.center[1])


def _furthest(edges: Sequence[Segment], way: tuple[float, float]) -> Segment:
    """Return, of the long edges, the one furthest along a way."""
    longest = max(_length(edge) for edge in edges)
    long = [edge for edge in edges if _length(edge) > 0.7 * longest]
    return max(long, key=lambda edge: _middle(edge)[0] * way[0] + _middle(edge)[1] * way[1])


def _inward(part: Part, *, from_outside: bool) -> tuple[float, float]:
    """Return the way from a jamb's opening face into the opening, as it is seen."""
    x, y, _ = part.seat.outward
    return (x * (1.0 if from_outside else -1.0), -y)


def _middle(edge: Segment) -> tuple[float, float]:
    (x0, y0), (x1, y1) = edge
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def _length(edge: Segment) -> float:
    (x0, y0), (x1, y1) = edge
    return float(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5)


def _chains(kit: Kit, pieces: Sequence[Seen], *, from_outside: bool) -> list[Chain]:
    """Dimension clear opening and trim below and at the left, frame and rough opening above and at the right."""
    frame = frame_box(kit.placement.opening)
    is_shaped = kit.placement.opening.shape is not None
    rough = _rough_box(kit, from_outside=from_outside)
    if is_shaped:
        rough = _as_framed(box_around(rough_outline_seen(kit.placement, from_outside=from_outside)), kit)
    trim = [box_around(one.polygon) for one in pieces if not one.part.is_bent]
    named = [] if from_outside else [("clear opening", _clear_box(kit)), *_flared(kit)]
    all_trim = [("all trim", boxes_joined(trim))] if trim else []
    window = [("frame", frame), ("rough opening", rough)]
    return [
        *_widths([*named, *_casing_widths(pieces), *all_trim], ViewSide.BOTTOM),
        *_heights([*named, *_casing_heights(pieces), *all_trim], ViewSide.LEFT),
        *(side_heights(kit.placement, from_outside=from_outside) if is_shaped else ()),
        *unit_chains(kit.placement.opening, from_outside=from_outside),
        *frames_across(kit, from_outside=from_outside),
        *_first_as_stated(_widths(window, ViewSide.TOP)),
        *_first_as_stated(_heights(window, ViewSide.RIGHT)),
    ]


def _casing_widths(pieces: Sequence[Seen]) -> list[Named]:
    """Return the casing across its legs, as the cut sheet gives it, and the board over or under them that is longer."""
    casing = [one for one in pieces if one.part.kind is PartKind.CASING]
    legs = [box_around(one.polygon) for one in casing if one.part.side.is_leg]
    others = [(one.part.position, box_around(one.polygon)) for one in casing if not one.part.side.is_leg]
    whole = _casing_heights(pieces)
    if not legs or not whole or _same(boxes_joined(legs), whole[0][1], 0):
        return whole
    longest = max(others, key=lambda one: one[1].width)
    return [("casing, legs", boxes_joined(legs)), (f"casing, {longest[0]}", boxes_joined([one for _, one in others]))]


def _casing_heights(pieces: Sequence[Seen]) -> list[Named]:
    boxes = [box_around(one.polygon) for one in pieces if one.part.kind is PartKind.CASING]
    return [("casing", boxes_joined(boxes))] if boxes else []


def _as_framed(rough: Box, kit: Kit) -> Box:
    """The hole round a shape as all papers give it, to the next mark out: its dimensions are not those of its path."""
    width, height = rough_size(kit.placement)
    beside, above = (width - rough.width) / 2, height - rough.height
    return Box(rough.left - beside, rough.bottom, rough.right + beside, rough.top + above)


def _clear_box(kit: Kit) -> Box:
    """Return the clear opening between the extension jambs, measured from the jambs themselves."""
    if kit.placement.opening.shape:
        at_frame = kit.frames[0].clear if kit.frames else kit.room
        return box_around(points_of(clear_path(kit.placement.opening, at_frame)))
    opening = kit.placement.opening
    face, reveal = opening.window.frame_face, opening.interior.frame_reveal
    middle = (face.left + opening.frame.width - face.right) / 2
    top = opening.frame.height - face.head + reveal
    return Box(middle - kit.clear_width / 2, top - kit.clear_height, middle + kit.clear_width / 2, top)


def _flared(kit: Kit) -> list[Named]:
    """Return the opening between the room edges of flared jambs; of a shape it stands with the figures alone."""
    room = kit.room
    if not kit.flares or kit.placement.opening.shape:
        return []
    return [("flared opening", Box(room.left, room.bottom, room.right, room.top))]


Named = tuple[str, Box]
"""A box of an elevation and what its dimensions are called."""


def _first_as_stated(chains: Sequence[Chain]) -> list[Chain]:
    """Print the frame as its maker and all other papers give it, finer than the shop's grid too."""
    return [replace(chain, is_stated=not number) for number, chain in enumerate(chains)]


def _widths(boxes: Sequence[Named], side: ViewSide) -> list[Chain]:
    chains = []
    for name, box in _different(boxes, 0):
        level = box.top if side is ViewSide.TOP else box.bottom
        interval = Interval(start=(box.left, level), finish=(box.right, level))
        chains.append(Chain(side=side, intervals=(interval,), after=name))
    return chains


def _heights(boxes: Sequence[Named], side: ViewSide) -> list[Chain]:
    chains = []
    for name, box in _different(boxes, 1):
        x = box.left if side is ViewSide.LEFT else box.right
        interval = Interval(start=(x, box.bottom), finish=(x, box.top))
        chains.append(Chain(side=side, intervals=(interval,), after=name))
    return chains


def _different(boxes: Sequence[Named], axis: int) -> list[Named]:
    """Leave out boxes whose two ends are those of one before."""
    kept: list[Named] = []
    for name, box in boxes:
        if not any(_same(box, other, axis) for _, other in kept):
            kept.append((name, box))
    return kept


def _same(one: Box, two: Box, axis: int) -> bool:
    ends = (
        ((one.left, two.left), (one.right, two.right)) if axis == 0 else ((one.bottom, two.bottom), (one.top, two.top))
    )
    return all(abs(first - second) < HALF_64TH for first, second in ends)
