"""A small sound job, and ways to spoil it."""

from __future__ import annotations

from pathlib import Path

from jambs.job import Job, JobFaults, read_job

HOUSE = Path(__file__).with_name("house.yaml").read_text(encoding="utf-8")
METRIC = Path(__file__).with_name("metric_house.yaml").read_text(encoding="utf-8")


def spoiled(*edits: tuple[str, str], text: str = HOUSE) -> str:
    """Return the job with texts replaced once each; every text must stand in it."""
    for old, new in edits:
        assert old in text, f"{old!r} is not in the job"
        text = text.replace(old, new, 1)
    return text


def read_text(text: str, folder: Path) -> Job:
    """Read a job from its text."""
    path = folder / "job.yaml"
    path.write_text(text, encoding="utf-8")
    return read_job(path)


def faults_of(text: str, folder: Path) -> list[str]:
    """Return what is wrong with a job, as it is printed."""
    try:
        read_text(text, folder)
    except JobFaults as error:
        return [str(fault) for fault in error.faults]
    return []
