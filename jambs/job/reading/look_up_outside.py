"""What the outside sections name: elevations by the openings, openings by the stories, stocks by the woods."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from jambs.job.models.file_names import file_name_fault
from jambs.job.models.openings import Opening
from jambs.job.models.outside import ElevationEntry, OutsideEntry
from jambs.job.models.shop import Board
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import advice
from jambs.job.reading.tree import TextSource

FILE_NAME = r"[\w][\w .-]{0,29}"
"""Papers are called by the names of elevations."""


def name_elevations(top: TextSource, openings: Sequence[TextSource], complaints: Complaints) -> None:
    """Complain of elevations that papers cannot be called by, and of openings on elevations that are not there."""
    written = top.value.get("elevations")
    names = list(written) if isinstance(written, dict) else []
    first: dict[str, str] = {}
    for name in names:
        if sentence := file_name_fault(name):
            complaints.say(top, ("elevations", name), sentence)
        elif not re.fullmatch(FILE_NAME, name):
            message = f"{name!r} cannot be a file's name; use up to 30 letters, digits, spaces and dashes, like north"
            complaints.say(top, ("elevations", name), message)
        elif name.lower() in first:
            message = f"{name!r} and {first[name.lower()]!r} would be one file; give each its own name"
            complaints.say(top, ("elevations", name), message)
        first.setdefault(name.lower(), name)
    for source in openings:
        named = source.value.get("elevation") if isinstance(source.value, dict) else None
        if isinstance(named, str) and named not in names:
            near = advice(named, names) if names else "define it under elevations"
            complaints.say(source, ("elevation",), f"no elevation is called {named!r}; {near}")


def look_up_outside(
    entry: OutsideEntry, top: TextSource, openings: Sequence[Opening], boards: Iterable[Board], complaints: Complaints
) -> None:
    """Complain of marks and stocks that the outside sections name and the job does not have."""
    marks = [opening.mark for opening in openings]
    for name, elevation in entry.elevations.items():
        _check_stories(elevation, top.within(("elevations", name)), marks, complaints)
        _check_walls(elevation, top.within(("elevations", name)), openings, complaints)
    stocks = sorted({board.stock for board in boards} | {stock for one in openings for stock in _stocks(one)})
    for stock in entry.woods:
        if stock not in stocks:
            complaints.say(top, ("woods", stock), f"no board and no trim is of {stock!r}; {advice(stock, stocks)}")


def _check_walls(
    entry: ElevationEntry, source: TextSource, openings: Sequence[Opening], complaints: Complaints
) -> None:
    names = sorted({opening.wall.name for opening in openings})
    for wall in entry.walls:
        if wall not in names:
            complaints.say(source, ("walls", wall), f"no opening stands in a wall {wall!r}; {advice(wall, names)}")


def _check_stories(entry: ElevationEntry, source: TextSource, marks: Sequence[str], complaints: Complaints) -> None:
    seen: dict[str, int] = {}
    for number, story in enumerate(entry.stories):
        for place, mark in enumerate(story.openings):
            location = ("stories", number, "openings", place)
            if mark not in marks:
                complaints.say(source, location, f"no opening has the mark {mark!r}; {advice(mark, marks)}")
            elif mark in seen:
                complaints.say(source, location, f"{mark} stands on two floors; leave it on one of them")
            seen.setdefault(mark, number)


def _stocks(thing: Any) -> Iterator[str]:
    """Yield every stock that an opening's trim is made of."""
    for trim in (thing.interior, thing.exterior):
        clad = getattr(trim, "cladding_returns", None)
        own = [getattr(trim, key) for key in type(trim).model_fields] if trim else []
        for one in (*own, *((clad.furring, clad.corner_board) if clad else ())):
            stock = getattr(one, "stock", None)
            if isinstance(stock, str) and stock:
                yield stock
