"""An escape opening as it is printed: what it needs, what it has, and who says so."""

from __future__ import annotations

from jambs.length import Units, length_text
from jambs.place.escape import SQUARE_INCHES_PER_FOOT
from jambs.place.escape_findings import area_text
from jambs.place.placement import EscapeCheck
from jambs.values import Record, sized

OF_THE_CODE = "International Residential Code 2018, R310"
OF_THE_JOB = "limits of the job"


def escape_record(check: EscapeCheck | None, *, units: Units) -> Record | None:
    """Return the clear opening and its four measures, each with what is needed; nothing where no escape is asked."""
    if check is None:
        return None
    clear, needed = check.clear, check.needed
    area = clear.width * clear.height / SQUARE_INCHES_PER_FOOT
    sill = "not given" if check.sill is None else length_text(check.sill, units=units)
    most = length_text(needed.greatest_sill_height, units=units)
    rows = [
        ("clear area", area_text(area, units), area_text(needed.area_square_feet, units)),
        ("clear width", length_text(clear.width, units=units), length_text(needed.width, units=units)),
        ("clear height", length_text(clear.height, units=units), length_text(needed.height, units=units)),
        ("sill over the floor", sill, f"at most {most}"),
    ]
    return {
        "clear": sized(clear.width, clear.height, units=units),
        "limits_of": OF_THE_JOB if check.is_of_the_job else OF_THE_CODE,
        "measures": [{"what": what, "has": has, "needs": needs} for what, has, needs in rows],
    }


def escape_line(record: Record | None) -> str:
    """Return an escape opening in one line: each measure with what it has and, after a stroke, what it needs."""
    if record is None:
        return ""
    measures = " · ".join(f"{one['what']} {one['has']} / {one['needs']}" for one in record["measures"])
    return f"{measures} ({record['limits_of']}; the local code decides)"
