"""The record of one part in ``parts.json``: sizes as printed, and its shape and seat in the job's units."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from jambs.arcs import Bulged, with_arcs
from jambs.length import Grid, Units
from jambs.parts.board.cuts import Taper
from jambs.parts.board.kinds import Crew
from jambs.parts.board.part import Part, Seat
from jambs.parts.board.sawing import Pocket
from jambs.parts.board.touches import ReturnBend
from jambs.parts.words.bend_words import sheet_text
from jambs.parts.words.cut_words import board_words, work_words
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.glue_words import glue_words
from jambs.values import Record, angle, direction, dump, kind_of, number, sawn_size, size


def part_record(part: Part, *, grid: Grid) -> Record:
    """Return the record of one part; a tapered one carries the width at both ends, said as left, right, top, bottom."""
    units = grid.units
    return {
        "mark": part.mark,
        "name": part.name,
        "position": part.position,
        "where": part.where.value,
        "stock": part.stock,
        "board": board_words(part, units=units),
        "is_wood": part.is_wood,
        "thickness": _thickness_record(part, units=units),
        "width": sawn_size(part.width, grid=grid),
        "length": sawn_size(part.length, grid=grid),
        "taper": _taper_record(part, grid=grid),
        "ends": ends_words(part, grid=grid),
        "work": list(work_words(part, grid=grid)),
        "strips": dump(part.strips, units=units),
        **_glue_record(part, grid=grid),
        **_members_record(part, grid=grid),
        **_courses_record(part, grid=grid),
        **_bends_record(part, grid=grid),
        **({} if part.crew is Crew.CARPENTER else {"crew": part.crew.value}),
        "cuts": [{"kind": kind_of(cut), **dump(cut, units=units)} for cut in part.cuts],
        **_outline_record(part, units=units),
        "profile": _points(part.profile, units=units),
        "pockets": [_pocket_record(one, units=units) for one in part.pockets],
        "seat": _seat_record(part.seat, units=units),
    }


def _glue_record(part: Part, *, grid: Grid) -> Record:
    """Return how a part is glued up, where it is."""
    if not part.strips:
        return {}
    return {
        "glue_up": {
            "strip_length": sawn_size(part.blank.strip_length, grid=grid),
            "jointing": size(part.blank.jointing, units=grid.units),
            **({"plies": dump(part.blank.plies, units=grid.units)} if part.blank.plies else {}),
            "text": glue_words(part, grid=grid),
        }
    }


def _thickness_record(part: Part, *, units: Units) -> Record:
    """Return the thickness of a part, of sheet that lines an opening as it is sold."""
    is_sheet = any(isinstance(touch, ReturnBend) for touch in part.touches)
    found: Record = size(part.thickness, units=units) or {}
    return {**found, "text": sheet_text(part.thickness, units)} if is_sheet else found


def _bends_record(part: Part, *, grid: Grid) -> Record:
    """Return the bend lines of a blank that lines an opening, from the edge at the frame."""
    bends = [
        {"at": sawn_size(line.at, grid=grid), "turn": angle(line.turn_deg)}
        for bend in part.touches
        if isinstance(bend, ReturnBend)
        for line in bend.profile.lines
    ]
    return {"bends": bends} if bends else {}


def _members_record(part: Part, *, grid: Grid) -> Record:
    """Return the stiles, rails and panels of a jamb that is made as a frame."""
    members = part.frame_members
    return {"members": [part_record(one, grid=grid) for one in members]} if members else {}


def _courses_record(part: Part, *, grid: Grid) -> Record:
    """Return the widths of the boards that pieces of cladding in courses come out of, one each."""
    widths = part.blank.courses
    return {"courses": [sawn_size(width, grid=grid) for width in widths]} if widths else {}


def _outline_record(part: Part, *, units: Units) -> Record:
    """Return the face of a part; with ``bulges`` where pieces of it are arcs, and of one sawn on edge that edge too."""
    face = with_arcs(part.outline) if part.arcs else Bulged(points=part.outline)
    found: Record = {"outline": _points(face.points, units=units)}
    if face.has_arcs:
        found["bulges"] = list(face.bulges)
    if part.is_sawn_on_edge:
        edge = with_arcs(part.curved_outline)
        found["edge_outline"] = _points(edge.points, units=units)
        found["edge_bulges"] = list(edge.bulges)
    return found


def _points(points: Iterable[Sequence[float]], *, units: Units) -> list[list[float]]:
    return [[number(value, units=units) for value in point] for point in points]


def _pocket_record(pocket: Pocket, *, units: Units) -> Record:
    low, high = _points([pocket.low, pocket.high], units=units)
    return {"low": low, "high": high}


def _seat_record(seat: Seat, *, units: Units) -> Record:
    return {
        "origin": _points([seat.origin], units=units)[0],
        "along": direction(seat.along),
        "across": direction(seat.across),
        "through": direction(seat.through),
    }


def _taper_record(part: Part, *, grid: Grid) -> Record | None:
    taper = next((cut for cut in part.cuts if isinstance(cut, Taper)), None)
    if taper is None:
        return None
    start, finish = (end.words for end in part.seat.ends)
    return {
        "start": start,
        "start_width": sawn_size(taper.start_width, grid=grid),
        "finish": finish,
        "finish_width": sawn_size(taper.finish_width, grid=grid),
    }
