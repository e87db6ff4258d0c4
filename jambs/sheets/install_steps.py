"""The order of work on an install sheet, from the parts of a kit: no step names another, and each is in a step."""

from __future__ import annotations

import math
from dataclasses import replace

from jambs.flashing.laps import PARTS_OF, Lap
from jambs.job.models.path import corners_of, is_arched
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.shape import ShapeKind
from jambs.job.models.shop import Shop
from jambs.job.models.trim import Corner, Joint
from jambs.length import Grid
from jambs.outside.trim_fasteners import shim_places
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.jambs.stack import steps_back
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import JambFrame
from jambs.parts.shapes.shape_checks import is_framed_square
from jambs.parts.words.proud_words import proud_words, width_words
from jambs.place.frame_path import frame_path
from jambs.sheets.arch_steps import arched_box, at_blocks, curved_casing
from jambs.sheets.kit_parts import frame_reveal_of, legs_reach_the_floor, marks_text, parts_of
from jambs.sheets.panel_steps import behind_frames, panel_steps
from jambs.sheets.return_steps import bare_edge_steps, nailer_steps, returns_steps
from jambs.sheets.run_steps import apart_step, stool_of_another
from jambs.sheets.unit_steps import mull_casing_steps, units_steps
from jambs.sides import LEGS, Side

CORNER_WORDS = {
    Joint.RABBET: "glue and screw the rabbeted corners",
    Joint.MITER: "glue and screw the mitered corners",
}


def buck_steps(kit: CutKit, grid: Grid) -> list[str]:
    """Return the work before the window is put in, a sentence each; none without a buck."""
    boards = [part for part in kit.parts if part.where is Where.BUCK]
    buck = kit.placement.buck
    if buck is None or not boards:
        return []
    depth = grid.text(buck.outer - buck.inner)
    if boards[0].kind is PartKind.LINER_BUCK:
        how = f"line the framing opening with it, {depth} deep, plumb, square and straight; its joints sealed"
    else:
        how = f"set it on the sheathing around the opening, {depth} deep, square and in one plane; its joints sealed"
    if is_arched(frame_path(kit.placement.opening)):
        how += "; joined first over the curve of the rough opening drawn full size, the middles of its boards on it"
    if legs_reach_the_floor(kit):
        how += "; its legs are sawn to the finished floor, add what of it is not laid yet"
    return [f"{boards[0].kind.words.capitalize()} ({marks_text(boards)}): {how}. Fasteners are in the table below."]


def lap_parts(lap: Lap, kit: CutKit) -> tuple[Part, ...]:
    """Return the exterior parts that a lap puts on."""
    here = replace(kit, parts=kit.as_trimmed.parts)
    return tuple(part for kind in PARTS_OF.get(lap.step.kind, ()) for part in parts_of(here, kind, Where.EXTERIOR))


def inside_steps(kit: CutKit, shop: Shop) -> list[str]:
    """Return the order of work inside, a sentence each."""
    opening = kit.placement.opening
    stand = "all frames are" if opening.gang else "the frame is"
    how = "plumb and level" if opening.shape else "plumb, level, square"
    steps = [f"Lay out all parts and check their marks against this sheet; check that {stand} {how}."]
    steps += [*units_steps(kit, shop.grid), *apart_step(kit, shop.grid)]
    if kit.placement.opening.interior.returns:
        return [*steps, *returns_steps(kit, shop.grid), *mull_casing_steps(kit, Where.INTERIOR, shop.grid)]
    jambs = parts_of(kit, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    stool = parts_of(kit, PartKind.STOOL, Where.INTERIOR)
    steps += nailer_steps(kit, shop.grid)
    if jambs:
        steps.append(_depth_again(kit, shop))
        steps += panel_steps(jambs, shop.grid)
        steps += [_box(frame, jambs, kit, shop.grid) for frame in kit.frames]
    if stool:
        horns = f"horns {shop.grid.text(shop.horn_play)} off the wall" if shop.horn_play else "horns to the wall"
        walls = ", notched round the wall between, under all openings" if kit.run else ""
        steps.append(
            f"Fit the stool ({marks_text(stool)}) first: {horns}{walls}, level, back edge tight to the frame; "
            "shim under it."
        )
    steps += stool_of_another(kit)
    if jambs:
        steps += _setting(kit, shop)
    steps += mull_casing_steps(kit, Where.INTERIOR, shop.grid)
    return [*steps, *bare_edge_steps(kit, shop.grid), *_casing(kit, shop.grid), *_apron(kit)]


def _depth_again(kit: CutKit, shop: Shop) -> str:
    """Say how the depths are checked: the width of a square jamb is one, that of a flared one a slant."""
    width = width_words(shop.proud, shop.grid.units)
    shape = kit.placement.opening.shape
    corners = "at every corner" if shape else "at the four corners"
    if shape and shape.kind is ShapeKind.FULL_ROUND:
        corners = "at top and bottom and at both sides"
    if kit.flares:
        return (
            f"Check the depth again {corners}, square to the wall: faces of flared jambs are cut to the slant "
            f"of {width}. Check that the rough opening gives way to the backs of the jambs."
        )
    return f"Check the depth again {corners}: part width = {width}."


def _shaped_box(boards: tuple[Part, ...], kit: CutKit, grid: Grid) -> str:
    """Build a box that is no rectangle over its outline, drawn full size; what its diagonals check its corners tell."""
    path = clear_path(kit.placement.opening, kit.frames[0].clear)
    if is_arched(path):
        return arched_box(boards, path, grid, clear_path(kit.placement.opening, kit.room) if kit.flares else None)
    first, corners = path[0].start, corners_of(path)
    across = [grid.text(math.dist(first, corner)) for corner in corners[2:-1]]
    onward = "the corners that come after the next, in the same order" if len(across) > 1 else "the opposite corner"
    check = f"from the left leg's lower inside corner to {onward}, {', '.join(across)}"
    box = (
        f"Build the jamb box ({marks_text(boards)}) on the bench over its clear outline drawn full size: inside edges "
        f"{_edges(path, boards, grid)}, clockwise seen from the room; "
        f"{check if across else 'all three right, so are its corners'}. Glue and screw the corners; mitered ones "
        "clamped with blocks."
    )
    if kit.flares:
        room = _edges(clear_path(kit.placement.opening, kit.room), boards, grid)
        box = f"{box} All of this at the frame edge; at the room edge the inside edges are {room}: the box opens out."
    has_bottom = any(part.side is Side.SILL for part in boards)
    return box if has_bottom else f"{box} Tack a spreader across the open end."


def _edges(path: FramePath, boards: tuple[Part, ...], grid: Grid) -> str:
    """List the inside edges, each by the mark of its board; once where all are alike."""
    lengths = {grid.text(edge.length) for edge in path}
    if len(lengths) == 1:
        return f"all {len(path)} of {lengths.pop()}"
    marks = {edge_of(part, path): part.mark for part in boards}
    return ", ".join(f"{marks.get(edge, edge.side.board_words)} {grid.text(edge.length)}" for edge in path)


def _box(frame: JambFrame, boards: tuple[Part, ...], kit: CutKit, grid: Grid) -> str:
    if kit.placement.opening.shape:
        return _shaped_box(boards, kit, grid)
    trim, text, clear = kit.placement.opening.interior, grid.text, frame.clear
    jambs = tuple(part for part in boards if part.member == frame.member)
    corners = CORNER_WORDS.get(trim.jamb.joint, f"glue and screw the corners, {trim.jamb.joint.value}")
    diagonal = text(math.hypot(clear.width, clear.height))
    which = f" {frame.member} of {len(kit.frames)}" if len(kit.frames) > 1 else ""
    box = (
        f"Build the jamb box{which} ({marks_text(jambs)}) on the bench: {corners}; clear inside {text(clear.width)} × "
        f"{text(clear.height)}, both diagonals {diagonal}."
    )
    if kit.flares:
        room, at = kit.room, "All of this at the frame edge; at the room edge"
        box = f"{box} {at} {text(room.width)} × {text(room.height)}: the box opens toward the room."
    has_bottom = any(part.side is Side.SILL for part in jambs)
    return box if has_bottom else f"{box} Tack a spreader across the open end."


def _setting(kit: CutKit, shop: Shop) -> list[str]:
    trim, text = kit.placement.opening.interior, shop.grid.text
    stand = "at their flare, the backs shimmed over their whole slant" if kit.flares else "square to the frame"
    wall = "the line of the finished wall" if trim.wall_edge else "the wall"
    proud = proud_words(shop.proud, wall, shop.grid.units)
    straight = f"Check with a straightedge before it is fastened: jambs stand {proud}, nowhere shy."
    return [
        f"Set the box against the frame with the frame reveal of {text(frame_reveal_of(kit))} all around; wedge it.",
        *behind_frames(parts_of(kit, PartKind.EXTENSION_JAMB, Where.INTERIOR)),
        f"Shim in pairs at {_shimmed(kit, shop.grid)}, jambs straight and {stand}; no shim past {wall}.",
        *([straight] if len(kit.frames) == 1 else []),
        "Fasten through jamb and shims into the framing; check the reveals after every pair.",
        *_stacking(kit, straight, shop.grid),
        *_scribe(kit),
        "Close the gap between jamb and rough opening airtight: backer and sealant, or low-expansion foam.",
    ]


def _shimmed(kit: CutKit, grid: Grid) -> str:
    """Say where shims go: where the sketch marks them, or, round a shape, along each jamb from its first corner."""
    if not kit.placement.opening.shape:
        return "the marked places"
    parts = parts_of(kit, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    path = clear_path(kit.placement.opening, kit.frames[0].clear)
    boards: dict[FrameEdge, list[Part]] = {edge: [] for edge in path}
    for part in parts:
        boards[edge_of(part, path)].append(part)
    places = [
        f"{marks_text(own)}{' along the curve' if edge.center else ''} "
        f"{', '.join(grid.text(at) for at in _places(edge, kit, grid))}"
        for edge, own in boards.items()
        if own
    ]
    return f"these places, clockwise seen from the room, from each jamb's first inside corner: {'; '.join(places)}"


def _places(edge: FrameEdge, kit: CutKit, grid: Grid) -> tuple[float, ...]:
    """Return where shims go along an edge, from its first end [in]: along a curve in square framing at its blocks."""
    places = shim_places(edge.length, grid)
    return at_blocks(edge, places) if edge.center and is_framed_square(kit.placement.opening) else places


def _stacking(kit: CutKit, straight: str, grid: Grid) -> list[str]:
    """Return how each stacked frame is set on the one before; the last of them is the one at the wall."""
    text, last = grid.text, len(kit.frames)
    return [
        f"Set box {frame.member} on the room edge of box {frame.member - 1}: thin glue on the edge, the reveal of "
        f"{text(step)} held with a gauge block, wedged, shimmed and fastened like the first; no glue on the faces."
        f"{f' {straight}' if frame.member == last else ''}"
        for frame, step in zip(kit.frames[1:], steps_back(kit.frames), strict=True)
    ]


def _scribe(kit: CutKit) -> list[str]:
    scribed = [part for part in kit.parts if part.is_scribed]
    return [f"Scribe to the wall and plane down: {marks_text(scribed)}."] if scribed else []


def _casing(kit: CutKit, grid: Grid) -> list[str]:
    casing = parts_of(kit, PartKind.CASING, Where.INTERIOR)
    if not casing:
        return []
    reveal = grid.text(kit.placement.opening.interior.casing_reveal)
    if any(part.arcs for part in casing) and not {*LEGS} <= {part.side for part in casing}:
        return [curved_casing(casing, reveal)]
    return [
        f"Case ({marks_text(casing)}): mark the casing reveal of {reveal} at the corners{_casing_order(kit, casing)}.",
        *_members(kit),
    ]


def _casing_order(kit: CutKit, casing: tuple[Part, ...]) -> str:
    """Say which board goes on first: a mitered head, to which legs are fitted; legs, where they carry the head."""
    opening = kit.placement.opening
    sides = {part.side for part in casing}
    carries = opening.shape is None and opening.interior.casing.corner is Corner.BUTT
    last = ", the bottom last" if Side.SILL in sides else ""
    if not sides & {*LEGS}:
        return f"; both slopes first{last}"
    if Side.HEAD not in sides:
        return last  # a head of members: each has its own step
    return f"; {'legs first, then the head' if carries else 'head first, then legs'}{last}"


MEMBER_WORDS = {
    PartKind.PLINTH: "Plinth blocks ({}) before the legs: on the floor, inner edges in line with the casing.",
    PartKind.ROSETTE: "Rosettes ({}) between legs and head, centered on both; the boards end square against them.",
    PartKind.FILLET: "Fillets ({}) level on what lies below, overhangs alike at both ends.",
    PartKind.FRIEZE: "Frieze ({}) on the fillet or the legs, its ends plumb.",
    PartKind.CAP: "Cap ({}) on top, overhangs alike; glue and pin down into the member below.",
    PartKind.CROWN: "Crown ({}): glue the returns to their miters first, then the whole to frieze and cap.",
    PartKind.BACKBAND: "Backband ({}) around the outer edges last, tight to the casing.",
}
"""How members of a built-up casing go on, in the order of the work."""


def _members(kit: CutKit) -> list[str]:
    found = ((words, parts_of(kit, kind, Where.INTERIOR)) for kind, words in MEMBER_WORDS.items())
    return [words.format(marks_text(parts)) for words, parts in found if parts]


def _apron(kit: CutKit) -> list[str]:
    apron = parts_of(kit, PartKind.APRON, Where.INTERIOR)
    return (
        [f"Apron ({marks_text(apron)}) last: tight under the stool, its ends under the casing's outer edges."]
        if apron
        else []
    )
