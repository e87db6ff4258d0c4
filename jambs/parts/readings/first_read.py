"""Which readings are the same ones: what is read in one go, and what tells two readings apart."""

from __future__ import annotations

import hashlib
import json

from jambs.job.models.readings import Readings
from jambs.parts.readings.changed_since_words import Taken

KEYS: dict[Taken, tuple[str, ...]] = {
    Taken.INSIDE: ("interior_depth", "mull_depths"),
    Taken.OUTSIDE: ("exterior_depth",),
    Taken.FRAME: (
        "frame_width",
        "frame_height",
        "diagonals",
        "frame_face",
        "mull_edges",
        "mull_gaps",
        "finished_opening",
    ),
    Taken.MULLS: ("mull_depths", "mull_edges", "mull_gaps"),
}
"""Where each stands under ``measured`` in a job file. What is read at a mull falls with depths and frame, and by itself
where only the mull is elsewhere.
"""
OF_UNITS = ("mull_depths", "mull_edges", "mull_gaps", "finished_opening")
"""Read at ganged units alone: where there are none, the digest is that of earlier records, which knew no such keys."""


def is_read(readings: Readings, taken: Taken) -> bool:
    """Say whether anything of it was read."""
    return any(getattr(readings, key) is not None for key in KEYS[taken])


def digest(readings: Readings, taken: Taken) -> str:
    """Return what tells a reading from another one: its values, its day, and whether the finish was on."""
    values = readings.model_dump(mode="json", include={*KEYS[taken], "date", "wall_finish"})
    values = {key: value for key, value in values.items() if value is not None or key not in OF_UNITS}
    return hashlib.sha256(json.dumps(values, sort_keys=True).encode()).hexdigest()
