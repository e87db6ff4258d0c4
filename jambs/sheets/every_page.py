"""What stands on every page of a job: paper, name, date, units, and the issue before the words at its foot."""

from __future__ import annotations

import datetime

from jambs.job.models.openings import Job
from jambs.values import Record


def page_data(job: Job) -> Record:
    """Return what stands on every page of a job: paper, job, date, and how its sizes are to be read."""
    step = job.shop.grid.text(job.shop.grid.step)
    unit = "millimeters" if job.units == "mm" else "inches"
    return {
        "paper": job.shop.paper,
        "job": job.name,
        "date": date_text(job.date),
        "stamp": "",
        "foot": f"sizes in {unit}, shop grid {step} · left and right as seen from inside",
    }


def stamped(data: Record, stamp: str) -> Record:
    """Return what a list prints with its issue before the words at its foot; as it is where nothing is issued."""
    return {**data, "stamp": stamp, "foot": f"{stamp} · {data['foot']}"} if stamp else data


def date_text(date: datetime.date | None) -> str:
    """Return the job's date as printed, or nothing."""
    return f"job of {date.isoformat()}" if date else ""
