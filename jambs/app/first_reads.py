"""What each reading was first read against: kept in the record with every issue, looked up by every verb."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Any

from jambs.app.chain import placed_each
from jambs.app.output_folder import output_folder
from jambs.app.writing import identity
from jambs.issued.entry import Entry
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.moves import walked_back
from jambs.issued.record import Record
from jambs.issued.remarked import Moves
from jambs.issued.writing import Commit, refuse_other_job
from jambs.job import Job
from jambs.length import GRIDS, MM_PER_INCH, Grid, Units
from jambs.parts.readings.changed_since_words import Layers, Taken
from jambs.parts.readings.first_read import digest, is_read
from jambs.parts.readings.measured_against import MeasuredAgainst, without_void_readings
from jambs.place.placement import Placement

DOCUMENT = "readings.json"
"""The document of an issue that holds them, sizes in inches."""
Key = tuple[str, Taken, str]
"""Mark of the opening, what was read in one go, and what tells that reading from another one."""
NAME_OF: Mapping[Grid | None, str] = {grid: name for name, grid in GRIDS.items()}
"""Grids of a shop as a job file writes them."""
STAY: Moves = {}
"""No opening has another mark."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstReads:
    """What readings were taken of, by mark, kind and digest.

    ``now_under``: the mark that the opening has now at which one was read, where that is another one.
    """

    known: Mapping[Key, MeasuredAgainst] = field(default_factory=dict)
    now_under: Mapping[Key, str] = field(default_factory=dict)

    def held(self, placements: Sequence[Placement], job: Job) -> tuple[Placement, ...]:
        """Return the openings without the readings that are void; ``job``: of which they are placed."""
        held = _held(placements)
        taken_of = [self._taken_of(one, held) for one in placements]
        on_grids = _on_grids({was.grid for each in taken_of for was in each.values()}, job)
        return tuple(
            without_void_readings(
                one,
                taken,
                placements,
                self._now_under(one),
                {
                    kind: on_grids[key]
                    for kind, was in taken.items()
                    if (key := (was.grid, one.opening.mark)) in on_grids
                },
            )
            for one, taken in zip(placements, taken_of, strict=True)
        )

    def with_new(self, placements: Sequence[Placement], grid: Grid) -> FirstReads:
        """Note what the readings that are read now for the first time are taken of; ``grid``: the shop's now."""
        found = dict(self.known)
        held = _held(placements)
        for one in placements:
            if one.opening.readings:
                before = self._taken_of(one, held)
                against = MeasuredAgainst.of(one, placements, grid=grid)
                for taken, sum_ in _digests(one):
                    found.setdefault((one.opening.mark, taken, sum_), before.get(taken, against))
        return replace(self, known=found)

    def and_those_of(self, other: FirstReads) -> FirstReads:
        """Add what others were taken of; what is known here was first."""
        others = {key: mark for key, mark in other.now_under.items() if key not in self.known}
        return FirstReads(known={**other.known, **self.known}, now_under={**others, **self.now_under})

    def _now_under(self, placement: Placement) -> dict[Taken, str]:
        """Return under which marks the openings are now at which the readings of this one were taken."""
        keys = {taken: (placement.opening.mark, taken, sum_) for taken, sum_ in _digests(placement)}
        return {taken: self.now_under[key] for taken, key in keys.items() if key in self.now_under}

    def _taken_of(self, placement: Placement, held: set[Key]) -> dict[Taken, MeasuredAgainst]:
        """Look the readings of an opening up; an opening that was renamed brings its readings along."""
        mark = placement.opening.mark
        found = {}
        for taken, sum_ in _digests(placement):
            against = self.known.get((mark, taken, sum_)) or self._of_renamed(taken, sum_, held)
            if against:
                found[taken] = against
        return found

    def _of_renamed(self, taken: Taken, sum_: str, held: set[Key]) -> MeasuredAgainst | None:
        """Find a reading that moved with its opening, which tells that one from openings that are alike."""
        keys = (key for key in self.known if key not in held and key[1:] == (taken, sum_))
        return next((replace(self.known[key], alike=()) for key in keys), None)


def _on_grids(grids: Iterable[Grid | None], job: Job) -> dict[tuple[Grid | None, str], Placement]:
    """Return the openings of a job as they would stand on other grids of the shop, by grid and mark."""
    found: dict[tuple[Grid | None, str], Placement] = {}
    for grid in grids:
        if grid and grid != job.shop.grid:
            there, _ = placed_each(replace(job, shop=job.shop.model_copy(update={"grid": grid})))
            found |= {(grid, one.opening.mark): one for one in there}
    return found


def _held(placements: Sequence[Placement]) -> set[Key]:
    """Return the readings that stand under each mark now; what another mark had is of an opening that moved."""
    return {(one.opening.mark, taken, sum_) for one in placements for taken, sum_ in _digests(one)}


def _digests(placement: Placement) -> Iterator[tuple[Taken, str]]:
    readings = placement.opening.readings
    for taken in Taken:
        if readings and is_read(readings, taken):
            yield taken, digest(readings, taken)


def first_reads(job: Job, folder: Path | None = None, moves: Moves = STAY) -> FirstReads:
    """Return what the readings of a job were taken of, by the record of a folder and by that of its usual one.

    ``moves``: of openings that have another mark since the last issue of the folder.
    """
    if not any(opening.readings for opening in job.openings):
        return FirstReads()
    usual = output_folder(job.sources[0]) if job.sources else None
    today = [opening.mark for opening in job.openings]
    found = FirstReads()
    for place in dict.fromkeys(one for one in (folder, usual) if one is not None):
        try:
            record = Record.open(place)
            refuse_other_job(record, identity(job, place))
        except RecordError:
            continue
        found = found.and_those_of(recorded(record, today, moves if place == folder else STAY))
    return found


def recorded(record: Record, today: Iterable[str] = (), moves: Moves = STAY) -> FirstReads:
    """Return what readings were taken of by all entries of a record, the first of each; ``today``: all marks of now."""
    found: dict[Key, MeasuredAgainst] = {}
    now_under: dict[Key, str] = {}
    now = {issue.number: here for issue, here in walked_back(record, today, moves)}
    here: Mapping[str, str] = {}
    seen: set[str] = set()
    for entry in record.entries:
        here = now.get(entry.number, here)
        for key, against in _new_rows(record, entry, seen):
            if key not in found:
                found[key] = against
                mark = here.get(key[0], key[0])
                now_under |= {key: mark} if mark != key[0] else {}
    return FirstReads(known=found, now_under=now_under)


def _new_rows(record: Record, entry: Entry, seen: set[str]) -> Iterable[tuple[Key, MeasuredAgainst]]:
    """Read what an entry keeps, unless one before it keeps the same."""
    sum_ = entry.documents.get(DOCUMENT, "")
    if not sum_ or sum_ in seen:
        return ()
    seen.add(sum_)
    rows = [*_rows(record.blobs.found(sum_) or b"")]
    if all(against.grid for _, against in rows):
        return rows
    grid = _grid_of(record, entry)  # of before it was kept beside what was read
    return [(key, against if against.grid else replace(against, grid=grid)) for key, against in rows]


def _grid_of(record: Record, entry: Entry) -> Grid | None:
    """Return the shop's grid by what an entry printed, None where it printed nothing that can be read."""
    try:
        printed = record.printed(entry)
        step = _size(printed["grid"]["value"]) / (MM_PER_INCH if Units(printed["units"]) is Units.MM else 1)
    except (Unreadable, ValueError, KeyError, TypeError):
        return None
    return next((grid for grid in GRIDS.values() if math.isclose(grid.step, step)), None)


def with_readings(work: Commit, reads: FirstReads, record: Record) -> Commit:
    """Return what a verb hands in together with what the readings it went by were taken of."""
    return replace(work, documents={**work.documents, **document(recorded(record).and_those_of(reads))})


def document(reads: FirstReads) -> dict[str, bytes]:
    """Return the document to keep with an issue, nothing where nothing was ever read."""
    if not reads.known:
        return {}
    rows = [
        {"mark": mark, "taken": taken.name.lower(), "digest": sum_, "against": _as_kept(against)}
        for (mark, taken, sum_), against in sorted(reads.known.items(), key=lambda one: one[0])
    ]
    return {DOCUMENT: json.dumps({"readings": rows}, ensure_ascii=False, indent=1).encode()}


def _as_kept(against: MeasuredAgainst) -> dict[str, Any]:
    """Return what is kept of it: without mulls, and without a grid that is not known, as earlier records have it."""
    kept = {**asdict(against), "grid": NAME_OF.get(against.grid, "")}
    return {key: value for key, value in kept.items() if value or key not in ("mulls", "grid")}


def _rows(content: bytes) -> Iterable[tuple[Key, MeasuredAgainst]]:
    """Read what is whole of a document; a row that is not says nothing."""
    try:
        rows = json.loads(content)["readings"]
    except (ValueError, KeyError, TypeError):
        return
    for row in rows if isinstance(rows, list) else ():
        try:
            yield (_text(row["mark"]), Taken[_text(row["taken"]).upper()], _text(row["digest"])), _against(row)
        except (ValueError, KeyError, TypeError, AttributeError):
            continue


def _against(row: Any) -> MeasuredAgainst:
    read = row["against"]
    width, height = read["frame"]
    return MeasuredAgainst(
        window=_text(read["window"]),
        frame=(_size(width), _size(height)),
        jamb_depth=_size(read["jamb_depth"]),
        frame_projection=_size(read["frame_projection"]),
        overhang=_size(read["overhang"]),
        structure=_size(read["structure"]),
        inner_layers=_layers(read["inner_layers"]),
        outer_layers=_layers(read["outer_layers"]),
        room=_text(read.get("room", "")),
        elevation=_text(read.get("elevation", "")),
        from_left=None if read.get("from_left") is None else _size(read["from_left"]),
        alike=tuple(_text(mark) for mark in read.get("alike", ())),
        shape=_layers(read.get("shape", ())),
        mulls=_layers(read.get("mulls", ())),
        grid=GRIDS.get(_text(read.get("grid", ""))),
    )


def _layers(read: Any) -> Layers:
    return tuple((_text(name), _size(thickness)) for name, thickness in read)


def _text(read: Any) -> str:
    if not isinstance(read, str):
        raise TypeError
    return read


def _size(read: Any) -> float:
    if isinstance(read, bool) or not isinstance(read, int | float) or not math.isfinite(read):
        raise TypeError
    return float(read)
