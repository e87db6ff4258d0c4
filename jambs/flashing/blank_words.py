"""What else is done to a blank, and what was assumed of its bends, as people read it."""

from __future__ import annotations

from jambs.flashing.bending import Bending
from jambs.flashing.blank import Blank, BlankKind
from jambs.job.models.openings import Assumed
from jambs.length import Units, decimal_text

PRACTICE = "common practice, no source; the job gives none"
_WORK = {
    BlankKind.HEAD_FLASHING: "turn the ends of the top up for the end dams; solder or seal the corners",
    BlankKind.SILL_PAN: "turn the ends up the sides of the rough opening; shim the window clear of the pan",
    BlankKind.HEAD_RETURN: "turn the return down over the sides at both ends, the face leg straight on; seal the laps",
    BlankKind.SIDE_RETURN: "one for each side, the second turned end for end; snip its foot to the sill",
    BlankKind.SILL_RETURN: "turn the sill up behind the sides at both ends as dams; seal or solder their corners",
    BlankKind.BOTTOM_RETURN: "lapped by the strips above it at both ends",
    BlankKind.MULL_COVER: "fold both hems back behind the face; bed it on the frames in sealant",
    BlankKind.SILL_FLASHING: "turn the ends up beside the exterior jambs that stand on the sill",
}


def work_on(blank: Blank) -> str:
    """Say what is done to a blank besides its bends."""
    between = "; notch it round the wall between, as the sill is, and seal its corners" if blank.walls else ""
    if blank.is_mitered:
        return (
            "its ends as the cut sheet has them: face legs mitered at half of the turn, the upper strip over the lower"
        )
    return _WORK[blank.kind] + between


def assumed_of(bending: Bending, units: Units) -> tuple[Assumed, ...]:
    """List what the job leaves out."""
    entry = bending.entry
    rows = (
        ("fall of head flashings", entry.fall, f"{decimal_text(bending.fall_deg, 1)}° (10 %)"),
        ("drip of flashings, out", entry.drip_out, units.text(bending.drip_out)),
        ("hem of flashings", entry.hem, units.text(bending.hem)),
        ("end dams of flashings", entry.end_dam, units.text(bending.end_dam)),
    )
    return tuple(Assumed(what=what, value=text, why=PRACTICE) for what, given, text in rows if given is None)
