"""Whether a job file only came to name its table of measures: what the first reading of a telephone writes into it."""

from __future__ import annotations

from jambs.job.editing.file_text import FileText

MEASURES = "measures"
"""The key of the job file that names its table of measures."""


def names_its_table_since(before: FileText | None, after: FileText | None) -> bool:
    """Say whether one line was put into a job file, which names its table, and all others are as they were."""
    if before is None or after is None:
        return False
    old, new = (file.content.splitlines(keepends=True) for file in (before, after))
    added = [at for at, line in enumerate(new) if line.startswith(f"{MEASURES}:".encode())]
    return len(added) == 1 and new[: added[0]] + new[added[0] + 1 :] == old
