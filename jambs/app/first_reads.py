"""What each reading was first read against: kept in the record with every issue, looked up by every verb."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Any

from jambs.app.output_folder import output_folder
from jambs.app.writing import identity
from jambs.issued.errors import RecordError
from jambs.issued.record import Record
from jambs.issued.writing import Commit, refuse_other_job
from jambs.job import Job
from jambs.parts.changed_since_words import Layers, Taken
from jambs.parts.first_read import digest, is_read
from jambs.parts.measured_against import MeasuredAgainst, without_void_readings
from jambs.place.placement import Placement

DOCUMENT = "readings.json"
"""The document of an issue that holds them, sizes in inches."""
Key = tuple[str, Taken, str]
"""Mark of the opening, what was read in one go, and what tells that reading from another one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstReads:
    """What readings were taken of, by mark, kind and digest."""

    known: Mapping[Key, MeasuredAgainst] = field(default_factory=dict)

    def held(self, placements: Sequence[Placement]) -> tuple[Placement, ...]:
        """Return the openings without the readings that are void."""
        held = _held(placements)
        return tuple(without_void_readings(one, self._taken_of(one, held), placements) for one in placements)

    def with_new(self, placements: Sequence[Placement]) -> FirstReads:
        """Note what the readings that are read now for the first time are taken of."""
        found = dict(self.known)
        held = _held(placements)
        for one in placements:
            before, against = self._taken_of(one, held), MeasuredAgainst.of(one)
            for taken, sum_ in _digests(one):
                found.setdefault((one.opening.mark, taken, sum_), before.get(taken, against))
        return FirstReads(known=found)

    def and_those_of(self, other: FirstReads) -> FirstReads:
        """Add what others were taken of; what is known here was first."""
        return FirstReads(known={**other.known, **self.known})

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
        keys = (key for key in self.known if key not in held and key[1:] == (taken, sum_))
        return next((self.known[key] for key in keys), None)


def _held(placements: Sequence[Placement]) -> set[Key]:
    """Return the readings that stand under each mark now; what another mark had is of an opening that moved."""
    return {(one.opening.mark, taken, sum_) for one in placements for taken, sum_ in _digests(one)}


def _digests(placement: Placement) -> Iterator[tuple[Taken, str]]:
    readings = placement.opening.readings
    for taken in Taken:
        if readings and is_read(readings, taken):
            yield taken, digest(readings, taken)


def first_reads(job: Job, folder: Path | None = None) -> FirstReads:
    """Return what the readings of a job were taken of, by the record of a folder and by that of its usual one."""
    if not any(opening.readings for opening in job.openings):
        return FirstReads()
    usual = output_folder(job.sources[0]) if job.sources else None
    found = FirstReads()
    for place in dict.fromkeys(one for one in (folder, usual) if one is not None):
        try:
            record = Record.open(place)
            refuse_other_job(record, identity(job, place))
        except RecordError:
            continue
        found = found.and_those_of(recorded(record))
    return found


def recorded(record: Record) -> FirstReads:
    """Return what readings were taken of by all entries of a record, the first of each."""
    found: dict[Key, MeasuredAgainst] = {}
    sums = dict.fromkeys(entry.documents[DOCUMENT] for entry in record.entries if DOCUMENT in entry.documents)
    for sum_ in sums:
        for key, against in _rows(record.blobs.found(sum_) or b""):
            found.setdefault(key, against)
    return FirstReads(known=found)


def with_readings(work: Commit, reads: FirstReads, record: Record) -> Commit:
    """Return what a verb hands in together with what the readings it went by were taken of."""
    return replace(work, documents={**work.documents, **document(recorded(record).and_those_of(reads))})


def document(reads: FirstReads) -> dict[str, bytes]:
    """Return the document to keep with an issue, nothing where nothing was ever read."""
    if not reads.known:
        return {}
    rows = [
        {"mark": mark, "taken": taken.name.lower(), "digest": sum_, "against": asdict(against)}
        for (mark, taken, sum_), against in sorted(reads.known.items(), key=lambda one: one[0])
    ]
    return {DOCUMENT: json.dumps({"readings": rows}, ensure_ascii=False, indent=1).encode()}


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
