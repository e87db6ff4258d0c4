"""What is printed of each opening in an issue: what its key and its stamp are made of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from jambs.job import Job
from jambs.outside.house import Installing
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.install_sheet import install_data
from jambs.sheets.record import job_record


def issue_record(
    kits: Sequence[CutKit], installing: Mapping[str, Installing], job: Job, record: Mapping[str, Any] | None = None
) -> Mapping[str, Any]:
    """Return what is printed of each opening: the record of ``parts.json`` and what the install sheet adds.

    ``record``: the former, where it is made already.
    """
    record = record or job_record(kits, job)
    install = {kit.mark: install_data(kit, installing[kit.mark], job) for kit in kits}
    return {**record, "openings": [{**one, "install": install[one["mark"]]} for one in record["openings"]]}
