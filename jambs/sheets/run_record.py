"""The record of openings that are trimmed as one; nothing of one that is trimmed alone."""

from __future__ import annotations

from jambs.job.models.fields import Size
from jambs.length import Units
from jambs.parts.kit.kit import Kit
from jambs.parts.run import walls_between
from jambs.values import Record, size, stated, stated_size


def run_record(kit: Kit, *, units: Units) -> Record:
    """Return which openings, the one that has the boards over all, the walls between, and the boards that it lends.

    Whatever the sheets of an opening show of the others stands in it, so that they change with it.
    """
    run, planned = kit.run, kit.placement.opening.run
    if run is None or planned is None:
        return {}
    pairs = zip(run.members, run.members[1:], planned.walls, walls_between(run), strict=False)
    return {
        "trimmed_as_one": {
            "openings": [
                {"mark": one.mark, "frame": stated_size(*_frame(one.placement.opening.frame), units=units)}
                for one in run.members
            ],
            "lead": run.lead,
            "walls": [
                {
                    "openings": [one.mark, other.mark],
                    "wall": stated(wall, units=units),
                    "between_frames": stated(other.x - one.x - one.placement.opening.frame.width, units=units),
                    "between_jambs": size(between.width, units=units),
                }
                for one, other, wall, between in pairs
            ],
            "parts_of_lead": [
                {"mark": part.mark, "width": size(part.width, units=units), "length": size(part.length, units=units)}
                for part in kit.lent
            ],
        }
    }


def _frame(frame: Size) -> tuple[float, float]:
    return frame.width, frame.height
