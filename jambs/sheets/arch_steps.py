"""How a jamb box with curved boards is built, a sentence or two: over an outline drawn full size."""

from __future__ import annotations

import math
from collections.abc import Sequence

from jambs.geometry import FULL_TURN
from jambs.job.models.path import has_two_legs, size_over_all
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import Grid
from jambs.parts.board.part import Part
from jambs.sheets.kit_parts import marks_text
from jambs.sides import Side


def arched_box(boards: tuple[Part, ...], path: FramePath, grid: Grid, room: FramePath | None = None) -> str:
    """Say how to build a box round arcs, and what its sizes are checked by; ``room``: of a flared one, at the room."""
    box = _box(boards, path, grid)
    return f"{box} {_at_room(room, grid)}" if room else box


def _at_room(room: FramePath, grid: Grid) -> str:
    """Say what a flared box measures at its room edge: across, up to its crown, and the radii of its arcs."""
    size = size_over_all(room)
    radii = dict.fromkeys(grid.text(edge.circle.radius) for edge in room if edge.circle)
    return (
        f"All of this at the frame edge; at the room edge it is {grid.text(size.width)} wide and "
        f"{grid.text(size.height)} high, the corners of its segments on a radius of {' and '.join(radii)}: draw that "
        "curve too, the box opens out to it."
    )


def _box(boards: tuple[Part, ...], path: FramePath, grid: Grid) -> str:
    if all(edge.center for edge in path):
        return _ring(boards, path, grid)
    sides = {edge.side for edge in path if edge.center}
    curved = tuple(part for part in boards if part.side in sides)
    straight = tuple(part for part in boards if part.side not in sides)
    first = f"Make the curved head ({marks_text(curved)}), {_made(curved)}."
    if has_two_legs(path):
        return _over_legs(first, straight, path, grid)
    return _on_its_boards(first, straight, path, grid)


def _made(curved: tuple[Part, ...]) -> str:
    if not curved[0].arcs:
        return "its flat segments joined with splines or biscuits and glue, their corners on the curve"
    if not curved[0].is_laminated:
        return "its segments glued up and fair"
    if len(curved) == 1:
        return "bent over its form"
    how = "joined where arcs meet with splines or dowels and glue, over the outline drawn full size"
    return f"each piece bent over a form of its own, {how}"


def _ring(boards: tuple[Part, ...], path: FramePath, grid: Grid) -> str:
    """A full round: two halves of one form, or segments, drawn full size and taped across."""
    across = grid.text(size_over_all(path).width)
    box = f"Make the ring ({marks_text(boards)}) on the bench over its clear circle drawn full size, {across} across: "
    taped = f"tape {across} level, upright and on both slants"
    if boards[0].is_laminated:
        return (
            f"{box}bend both halves over the one form, saw their ends on its diameter, join them there with splines or "
            f"dowels and glue, in a band clamp; {taped} before the glue sets."
        )
    if not boards[0].arcs:
        return (
            f"{box}join its flat segments with splines or biscuits and glue, their corners on the circle, true the two "
            f"ends of each half on one line, then join the halves; tape {across} level."
        )
    return (
        f"{box}glue each half up from its segments with splines or dowels, true the two ends of each half on one line, "
        f"then join the halves; {taped}, and fair the face."
    )


def _over_legs(first: str, straight: tuple[Part, ...], path: FramePath, grid: Grid) -> str:
    """An arch: first the curved head, then the legs, checked by diagonals to the spring line."""
    left, right = (next(edge for edge in path if edge.side is side) for side in (Side.LEFT, Side.RIGHT))
    crown_up = max(edge.crown[1] for edge in path if edge.center) - left.start[1]
    wide, leg = (grid.text(one) for one in (right.start[0] - left.start[0], left.length))
    across, crown = grid.text(math.dist(left.start, right.start)), grid.text(crown_up)
    box = (
        f"{first} Build the jamb box with {marks_text(straight)} on the "
        f"bench over its clear outline drawn full size: {wide} wide, legs {leg} to the spring line, crown {crown} up; "
        f"both diagonals from the foot of a leg to the far end of the spring line {across}. Join head and legs at the "
        "spring line with splines or dowels and glue; glue and screw the corners below."
    )
    has_bottom = any(part.side is Side.SILL for part in straight)
    return box if has_bottom else f"{box} Tack a spreader across the open end."


def _on_its_boards(first: str, straight: tuple[Part, ...], path: FramePath, grid: Grid) -> str:
    """A half or a quarter round: the curved head stands on boards that run through under its ends."""
    edges = [edge for edge in path if not edge.center]
    lengths = ", ".join(f"{grid.text(edge.length)} at the {edge.side.board_words}" for edge in edges)
    crown = grid.text(size_over_all(path).height)
    if not any(part.side is Side.SILL for part in straight):
        return f"{first} {_to_stand_on_a_stool(straight, lengths, crown)}"
    return (
        f"{first} Build the jamb box with {marks_text(straight)} on the bench over its clear outline drawn full size: "
        f"inside {lengths}, {crown} high. The head stands on them with both its ends, sawn along their faces: glue and "
        "screw through their backs; glue and screw a corner where two of them meet."
    )


def _to_stand_on_a_stool(straight: tuple[Part, ...], lengths: str, crown: str) -> str:
    """A half round is one piece; a quarter has a leg, on which its upper end stands."""
    over = f"over its clear outline drawn full size: inside {lengths}, {crown} high"
    if not straight:
        return f"Its ends are sawn level and stand on the stool: tack a spreader across them, {over}."
    return (
        f"Build the jamb box with {marks_text(straight)} on the bench {over}. The head stands on the leg with its "
        "upper end: glue and screw through the leg's back; its lower end, sawn level, and the leg stand on the stool: "
        "tack a spreader across the open end."
    )


def at_blocks(edge: FrameEdge, places: tuple[float, ...]) -> tuple[float, ...]:
    """Return where shims go along an arc [in from its start]: near its ends, and where square framing touches it.

    Studs, header and sill touch it level and upright of its center, blocks across the corners halfway between.
    """
    circle = edge.circle
    assert circle is not None
    touching = (circle.at(eighth * FULL_TURN / 8) for eighth in range(8))
    along = [circle.radius * circle.sweep(edge.start, point, clockwise=True) for point in touching]
    first, last = places[0], places[-1]
    return tuple(sorted({first, last, *(at for at in along if first < at < last)}))


def curved_casing(casing: Sequence[Part], reveal: str) -> str:
    """Say how casing without two legs goes on: a ring in two halves, or a head on its straight boards."""
    made = f"Case ({marks_text(casing)}): glue the segments up over the outline drawn full size and fair them"
    if not any(part.side is Side.SILL for part in casing):
        standing = "leg first, then the head, its lower end" if any(not part.arcs for part in casing) else "its ends"
        return f"{made}; mark the casing reveal of {reveal} all around; {standing} on the stool."
    if all(part.arcs for part in casing):
        return f"{made}, each half by itself; mark the casing reveal of {reveal} all around; the lower half first."
    on_them = "the straight boards first, then the head standing on them"
    return f"{made}; mark the casing reveal of {reveal} all around; {on_them}."
