"""What a telephone shows: the list of openings, and one opening with its places and what is answered."""

from __future__ import annotations

from jambs.length import Units
from jambs.screen.measuring import Measuring
from jambs.screen.places_picture import places_picture
from jambs.sheets.reading_answer import fractions, place_rows, reading_answer
from jambs.values import Record


def list_data(measuring: Measuring) -> Record:
    """Return what the list of openings shows."""
    return {"job": measuring.job_name(), "rows": measuring.rows()}


def measured_opening_data(measuring: Measuring, mark: str) -> Record | None:
    """Return what the page of one opening shows; nothing where there is no such opening, capitals or not."""
    known = measuring.mark(mark)
    if known is None:
        return None
    placement, job = measuring.placement(known)
    opening, places = placement.opening, place_rows(placement, job)
    return {
        "job": job.name,
        "mark": opening.mark,
        "room": opening.room,
        "places": places,
        "answer": reading_answer(placement, job),
        "fractions": fractions(job.shop.grid),
        "is_metric": job.units is Units.MM,
        "stated": measuring.stated(opening.mark),
        "picture": places_picture(places, opening),
    }
