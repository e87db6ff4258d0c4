"""Where the papers of a job go if nothing else is said."""

from __future__ import annotations

from pathlib import Path

from jambs.job.read import job_file


def output_folder(path: str | Path) -> Path:
    """Return where the papers of a job go if nothing else is said: ``output/<job>`` under the current folder."""
    file = job_file(path).resolve()
    return Path("output") / (file.parent.name if file.stem == "job" else file.stem)
