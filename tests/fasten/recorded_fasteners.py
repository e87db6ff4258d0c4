"""Fasteners of the examples, all on record: ways, lengths, counts, verdicts, what is said of them.

Lengths and counts stand by hand in the tests beside it, the furring table against its source. Renew it where something
is meant to come out otherwise, and read the lines that are other ones now:

    python tests/fasten/recorded_fasteners.py
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from shaken import plain

from jambs.fasten.elevation import elevation_fasteners
from jambs.fasten.fastener_words import assumed_lengths, count_words, way_words
from jambs.fasten.furring_words import verdict_words
from jambs.fasten.plan import FastenerLine, house_fasteners, opening_fasteners, verdict_findings
from jambs.findings import Subject
from jambs.job import read_job
from jambs.length import Units
from jambs.parts.kit.on_elevation import kits_on
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

RECORD = Path(__file__).with_name("recorded_fasteners.json")
EXAMPLES = Path(__file__).parents[2] / "examples"
HOUSES = ("harbour-house", "hillside-house")


def told(name: str) -> dict[str, Any]:
    """Return all that is planned to be fastened at an example, as plain values."""
    job = read_job(EXAMPLES / name)
    kits = [make_kit(placement, job) for placement in place_windows(job)]
    entries, units = job.outside.fasteners, job.units
    lines = [line for kit in kits for line in opening_fasteners(kit, entries, units)]
    for place, entry in job.outside.elevations.items():
        lines += elevation_fasteners(place, entry, kits_on(place, entry, kits), kits, entries, units)
    found = {f"{number} {one.where}, {one.fixed.value}": _line(one, units) for number, one in enumerate(lines)}
    verdicts = verdict_findings(lines, Subject.house(job.name))
    rest = {
        "house": house_fasteners(lines),
        "verdicts": [(one, one.sentence(units)) for one in verdicts],
        "assumed": assumed_lengths(lines, units),
    }
    return {key: plain(one) for key, one in {**found, **rest}.items()}


def _line(line: FastenerLine, units: Units) -> Any:
    way = way_words(line.through, line.penetration or 0.0, units)
    verdict = verdict_words(line.furring, units) if line.furring else ""
    return [line, way, count_words(line), verdict, [one.sentence(units) for one in line.findings]]


def main() -> None:
    """Renew the record."""
    lines = [f" {json.dumps(name)}: {json.dumps(told(name))}" for name in HOUSES]
    RECORD.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
