"""Which papers on record hold no longer, in one line for each verb: which, for which parts, and what to run; which
openings have another mark.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from jambs.app.basis import basis_of
from jambs.app.issue_record import issue_record
from jambs.app.paper_names import NAMING_BOARDS
from jambs.app.stale_words import stale_line
from jambs.app.writing import suppress_record_faults
from jambs.issued.basis import stale_papers
from jambs.issued.reasons import MarksExchanged, RenamedFrom
from jambs.issued.record import Record
from jambs.issued.remarked import Moves, Remarked
from jambs.job import Job
from jambs.length import Units
from jambs.outside.house import PlannedHouse


def remarked_lines(moves: Moves, house: PlannedHouse, units: Units) -> list[str]:
    """Return a line for each opening that has another mark since the last issue: the next build says so too."""
    remarked = Remarked.of(moves, {kit.mark for kit in house.kits})
    renamed = {mark: RenamedFrom(mark=old) for mark, old in remarked.renamed.items()}
    exchanged = {mark: MarksExchanged(mark=old) for mark, old in remarked.exchanged.items()}
    return [f"marks  {mark}: {why.sentence(units)}" for mark, why in {**renamed, **exchanged}.items()]


def stale_lines(
    house: PlannedHouse, job: Job, folder: Path, *, job_words: str, parts: Mapping[str, Any] | None = None
) -> list[str]:
    """Return a line for the papers of each verb that are stale; ``job_words``: the job as it is typed.

    ``parts``: the record of the job's parts, where it is made already.
    """
    with suppress_record_faults():
        record = Record.open(folder)
        if record.latest:
            basis = basis_of(house.kits, job, issue_record(house.kits, house.installing, job, parts))
            found = stale_papers(record, basis, naming_boards=NAMING_BOARDS)
            return [stale_line(one, job_words=job_words) for one in found]
    return []
