"""A cladding and its limits as people read them, and what was assumed of it."""

from __future__ import annotations

from jambs.courses.cladding import Cladding, laps_of
from jambs.job.models.openings import Assumed
from jambs.length import Units

PRACTICE = "common practice, no source; the job gives none"


def cladding_words(cladding: Cladding, units: Units) -> str:
    """Name a cladding: ``18" shingles, single course``; ``6" clapboards, lapped 1" to 1 1/2"``."""
    entry, row = cladding.entry, cladding.row
    if row:
        return f"{units.text(row.length)} {row.kind.value}, {row.coursing.value} course"
    widths = ", ".join(units.text(width) for width in sorted(entry.widths))
    laps = " to ".join(dict.fromkeys(units.text(lap) for lap in laps_of(entry)))
    return f"{widths} {entry.kind.value}, lapped {laps}"


def limit_words(cladding: Cladding, units: Units) -> str:
    """Say what a course may show at most, and where that is from."""
    row = cladding.row
    return f"at most {units.text(row.greatest)}: {row.source}" if row else "board widths and laps of the job"


def assumed_of(cladding: Cladding, units: Units) -> tuple[Assumed, ...]:
    """List what the job leaves out."""
    entry = cladding.entry
    rows = (
        ("wanted exposure", entry.wanted_exposure, cladding.wanted, "the greatest allowed: fewest courses"),
        ("greatest change of exposure", entry.greatest_change, cladding.greatest_change, PRACTICE),
        ("unseen change of exposure", entry.unseen_change, cladding.unseen_change, PRACTICE),
    )
    return tuple(
        Assumed(what=what, value=units.text(used), why=why) for what, given, used, why in rows if given is None
    )
