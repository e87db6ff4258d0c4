"""The list of all keys of a job file, with pictures of what they measure, as PDF."""

from __future__ import annotations

from dataclasses import asdict

from jambs.job.key_list import key_sections
from jambs.length import Units
from jambs.sheets.key_pictures import PICTURES
from jambs.sheets.press import press

LENGTHS = {Units.INCH: '5 1/2, 4-9/16", 2\'-11 1/2", 7.5 or 902 mm', Units.MM: '902, 12.5, 90.2 cm or 5 1/2"'}
NAMES = {
    "depths": "depths: a side of the window, seen from above",
    "faces": "faces: the same, larger",
    "heights": "heights, seen from inside",
    "bent": "bent: returns of bent metal outside",
    "clad": "clad: cladding returned to the frame",
    "between": "between openings trimmed as one",
}


def keys_pdf(units: Units) -> bytes:
    """Print the list on letter or A4 paper, by the units."""
    return press(
        "keys",
        {
            "paper": "A4" if units is Units.MM else "letter",
            "lengths": LENGTHS[units],
            "pictures": [{"name": NAMES[name], "svg": draw()} for name, draw in PICTURES.items()],
            "sections": [asdict(section) for section in key_sections()],
        },
    )
