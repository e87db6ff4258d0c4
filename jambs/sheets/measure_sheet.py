"""Measure sheets: where the tape is held at each opening, with room for a pencil; and a compact list for the house."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.measured.measures import reading_text
from jambs.job.measured.measuring_points import (
    DEPTHS,
    FINISHED,
    LEANS,
    Kind,
    Place,
    measure_places,
    place_words,
    reading_at,
)
from jambs.job.models.openings import Job, Opening
from jambs.job.models.path import has_collapsed, outset, points_of
from jambs.length import TAPE_GRIDS, Units, length_text
from jambs.parts.jambs.flare_checks import flared_framing
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.mill_ahead import rips_ahead
from jambs.parts.make import PartsError, make_kit
from jambs.parts.mulls.mull import cut_to_finished
from jambs.parts.readings.as_built import planned_value, without_odd_readings
from jambs.parts.readings.tolerance import DepthRange, depth_range
from jambs.parts.shapes.clear import interior_clear
from jambs.parts.words.mill_ahead_words import milling_lines
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.label_codes import NOT_ISSUED, code_text, label_code
from jambs.sheets.opening_words import wall_words
from jambs.sheets.press import press
from jambs.sides import Side
from jambs.values import Record

OF_FACE = 0.07
"""Width of a frame's face in the picture of a shape, of its lesser side; it is not to scale."""
FRAME = (Kind.FRAME_WIDTH, Kind.FRAME_HEIGHT, Kind.DIAGONAL)


def measure_sheets_pdf(placements: Sequence[Placement], job: Job, *, stamp: str = "") -> bytes:
    """Return the measure sheets of some openings as PDF bytes, one page each."""
    sheets = [measure_data(one, job) | _code_data(one, job, stamp) for one in placements]
    return press("measure_sheet", {**stamped(page_data(job), stamp), "sheets": sheets})


def measure_list_pdf(placements: Sequence[Placement], job: Job, *, stamp: str = "") -> bytes:
    """Return the compact list of depths to measure for the house as PDF bytes."""
    rows = [measure_data(one, job) for one in placements]
    return press("measure_list", {**stamped(page_data(job), stamp), "rows": rows})


def _code_data(placement: Placement, job: Job, stamp: str) -> Record:
    """Return the code by which a telephone finds the opening: it says what the code of a label says."""
    return {"code": label_code(code_text(placement.opening.mark, stamp or NOT_ISSUED, job.name)).svg}


def planned_texts(placement: Placement, job: Job) -> dict[int, str]:
    """Return the planned value of each numbered place as printed; of plumb and level nothing, they are to be 0."""
    return {place.number: _planned(place, placement, job) for place in measure_places(placement.opening)}


def _planned(place: Place, placement: Placement, job: Job) -> str:
    value, units = planned_value(place, placement), job.units
    if value is None or place.kind in LEANS:
        return ""
    if place.kind in FINISHED:
        clear = interior_clear(placement.opening, job.shop.grid)
        return job.shop.grid.text(clear.width if place.kind is Kind.FINISHED_WIDTH else clear.height)
    # No tape has a finer mark; the other planned values are sizes of the job, which are printed as it states them.
    return length_text(TAPE_GRIDS[units].round(value) if place.kind is Kind.DIAGONAL else value, units=units)


def measure_data(placement: Placement, job: Job) -> Record:
    """Return what the measure sheet of one opening prints."""
    opening = placement.opening
    planned = planned_texts(placement, job)
    places = [(place, _place(place, placement, planned, job.units)) for place in measure_places(opening)]
    readings = opening.readings
    return {
        "mark": opening.mark,
        "room": opening.room,
        "window": opening.window_name,
        "wall": wall_words(opening.wall.name),
        "date": readings.date.isoformat() if readings else "",
        "by": (readings.by or "") if readings else "",
        "inside": [data for place, data in places if place.kind is Kind.INTERIOR_DEPTH],
        "outside": [data for place, data in places if place.kind is Kind.EXTERIOR_DEPTH],
        "frame": [data for place, data in places if place.kind in FRAME],
        "single": [data for place, data in places if place.kind not in (*FRAME, *DEPTHS, *FINISHED)],
        "range": None if opening.measured else _range_data(depth_range(placement), placement, job),
        "units": _units_data(opening),
        "outline": _outline_data(opening),
        "foot": "SILL" if opening.floor_below_frame is None else "FLOOR",
        "finished": [data for place, data in places if place.kind in FINISHED],
        "waiting": _waiting(placement, job),
        "flare": _flare_words(placement, job),
        "burn": "do not burn 100 mm" if job.units is Units.MM else "do not burn an inch",
        "unit": "millimeters" if job.units is Units.MM else "inches",
        "finest": job.shop.grid.text(job.shop.grid.step),
    }


def _place(place: Place, placement: Placement, planned: dict[int, str], units: Units) -> Record:
    reading = reading_at(place, placement.opening.readings)
    return {
        "number": place.number,
        "kind": place.kind.value,
        "words": place_words(place) if place.kind in DEPTHS else place.words,
        "short": place.words,
        "planned": planned[place.number],
        "read": reading_text(place, reading, units=units),
        "x": place.x,
        "y": place.y,
    }


def _outline_data(opening: Opening) -> Record | None:
    """Return the outline of a shape and of its glass as shares of width and height; nothing of a rectangle."""
    if opening.shape is None:
        return None
    path, (wide, high) = frame_path(opening), (opening.frame.width, opening.frame.height)
    face = OF_FACE * min(wide, high)
    glass = outset(path, dict.fromkeys(Side, -face))
    paths = [path] if has_collapsed(glass, path) else [path, glass]
    return {
        "kind": opening.shape.kind.value,
        "is_arched": opening.shape.is_arched,
        "tall": high / wide,
        "paths": [[[x / wide, y / high] for x, y in points_of(one)] for one in paths],
    }


def _units_data(opening: Opening) -> list[Record]:
    """Return where each of ganged units stands in the frame, as shares from its left and its bottom."""
    whole = opening.frame
    return [
        {
            "number": unit.number,
            "x": unit.x / whole.width,
            "y": unit.y / whole.height,
            "width": unit.frame.width / whole.width,
            "height": unit.frame.height / whole.height,
        }
        for unit in (opening.gang.units if opening.gang else ())
    ]


def _waiting(placement: Placement, job: Job) -> str:
    """Name the boards that are cut to the finished opening, read or not."""
    kit = _kit_of(placement, job) if placement.opening.interior.returns else None
    return ", ".join(part.mark for part in cut_to_finished(kit.parts, placement.opening)) if kit else ""


def _kit_of(placement: Placement, job: Job) -> Kit | None:
    """Return the parts of an opening; nothing where it has none, which a build tells."""
    try:
        return make_kit(without_odd_readings(placement, units=job.units), job)
    except PartsError:
        return None


def _flare_words(placement: Placement, job: Job) -> str:
    """Say what to look at where jambs flare: the hole they need, and that depths are read square to the wall."""
    found = flared_framing(placement, job.shop.framers_grid)
    if found is None:
        return ""
    room = " × ".join(length_text(side, units=job.units) for side in (found.room_width, found.room_height))
    return (
        f"Flared jambs: depths are read square to the wall, not along the slant. Is the rough opening at least {room} "
        f"at the inside face of the framing, and straight from there to the frame? "
        f"{found.where(job.units).capitalize()}."
    )


def _range_data(found: DepthRange, placement: Placement, job: Job) -> Record:
    """Return what the planned depth may turn out to be, and what may be milled before that is known."""
    grid = job.shop.grid
    return {
        "planned": grid.text(found.planned),
        "least": grid.text(grid.down(found.planned - found.worst)),
        "greatest": grid.text(grid.up(found.planned + found.worst)),
        "likely": grid.text(grid.up(found.likely)),
        "milling": _milling(placement, job, found.width_to_leave(grid)),
    }


def _milling(placement: Placement, job: Job, spare: float) -> list[Record]:
    """Return what may be ripped ahead."""
    kit = _kit_of(placement, job)
    if kit is None:
        return []
    lines = milling_lines(rips_ahead(kit, job, spare), kit, job.units)
    return [{"who": who, "width": width, "rest": rest} for who, width, rest in lines]
