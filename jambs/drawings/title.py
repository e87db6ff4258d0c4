"""What the title block of a drawing says: made from the kit and the job once, told by tag on every sheet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.drawings.views.key_plan import KeyPlan, key_plan, side_of_house
from jambs.drawings.views.measured import caution_of, state_of
from jambs.issue_stamp import IssueStamp, Revision
from jambs.job.models.openings import Job
from jambs.length import Units, length_text
from jambs.parts.kit.cut_kit import CutKit

UNIT_WORDS = {Units.INCH: "inches", Units.MM: "dimensions in millimeters"}
"""What the title block says of the units."""

PLACE_UNKNOWN = "place along\nthe wall\nnot stated"
"""What stands in the room of the key of an opening without one: an order along the wall would be made up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TitleBlock:
    """What the title block says besides the number of the sheet.

    ``sizes``: what the shop rounds them to; ``taper``: up to this a taper is ripped parallel.
    """

    job: str
    address: tuple[str, ...]
    opening: str
    room: str
    wall: str
    side: str
    state: str
    caution: str
    sizes: str
    taper: str
    units: Units
    issue: IssueStamp
    revisions: tuple[Revision, ...]
    key: KeyPlan | None


def title_block(kit: CutKit, job: Job, issue: IssueStamp, revisions: Sequence[Revision] = ()) -> TitleBlock:
    """Return what the title block of an opening says."""
    opening = kit.placement.opening
    return TitleBlock(
        job=job.name,
        address=job.address,
        opening=opening.mark,
        room=opening.room,
        wall=kit.placement.planes.wall.name,
        side=side_of_house(opening, job),
        state=state_of(kit),
        caution=caution_of(kit),
        sizes=job.shop.grid.text(job.shop.grid.step),
        taper=length_text(job.shop.taper_tolerance, units=job.units),
        units=job.units,
        issue=issue if issue.number else replace(issue, measured=_read_on(kit)),
        revisions=tuple(revisions),
        key=key_plan(opening, job, kit.run),
    )


def _read_on(kit: CutKit) -> str:
    """Return the day of the readings that a kit is made from, empty where it is planned; an issue keeps its own."""
    measured, is_read = kit.placement.opening.measured, kit.is_measured or kit.outside_is_measured
    return measured.date.isoformat() if measured and is_read else ""


def values_of(title: TitleBlock, *, sheet: str) -> dict[str, str]:
    """Return what the title block of a sheet says, by tag; ``sheet``: its number and how many there are."""
    return {
        "JOB": title.job,
        "ADDRESS": "\n".join(title.address),
        "OPENING": title.opening,
        "ROOM": title.room,
        "WALL": title.wall,
        "SIDE": title.side,
        "STATE": title.state,
        "CAUTION": title.caution.replace(": ", ":\n"),
        "SCALE": "as noted",
        "UNITS": UNIT_WORDS[title.units],
        "TOLERANCE": f"to {title.sizes}, tapers {title.taper}",
        "SHEET": sheet,
        "DRAWN": "" if title.issue.number else title.issue.day,
        "CHECKED": "",
        "PLACE": "" if title.key else PLACE_UNKNOWN,
        **_issue_values(title.issue),
    }


def _issue_values(issue: IssueStamp) -> dict[str, str]:
    return {
        "ISSUE": str(issue.number) if issue.number else "none",
        "REPLACES": issue.replaced,
        "CODE": issue.code,
        "DATE": issue.day if issue.number else "",
        "MEASURED": f"measured {issue.measured}" if issue.measured else "planned",
    }
