"""The study aside: one process works out curves, once for each wall and window; until they are there it says so."""

from __future__ import annotations

import hashlib
import threading
from concurrent.futures import Future
from dataclasses import fields
from pathlib import Path
from typing import cast

from jambs.job import Job
from jambs.job.models.openings import Opening
from jambs.screen.process_aside import ProcessAside
from jambs.values import Record

WORKING: Record = {"working": True, "said": "Heat, damp and sun are being worked out …"}
NOT_STUDIED = (
    "mark", "room", "position", "position_is_own", "measured", "readings", "assumed",
    "sill_height", "from_left", "elevation", "head_with", "sill_with",
)  # fmt: skip
"""What no curve depends on."""
FAILED: Record = {"said": "The curves of heat could not be worked out.", "curves": [], "least": None}


def work(file: Path, draft: str, mark: str) -> Record:
    """Work curves out, in the process aside; what loads slowly is loaded there."""
    from jambs.screen.heat_curves import curves_of

    return curves_of(file, draft, mark)


class HeatShelf:
    """The curves that are known, or being worked out, by what they depend on."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._aside = ProcessAside()
        self._found: dict[str, Future[Record]] = {}

    def curves(self, file: Path, draft: str, opening: Opening, job: Job) -> Record:
        """Return the curves of an opening, or that they are being worked out; the first call begins."""
        key = key_of(opening, job)
        with self._lock:
            if key not in self._found:
                self._found[key] = self._aside.submit(work, file, draft, opening.mark)
            found = self._found[key]
        return _result(found) if found.done() else WORKING

    def least(self, opening: Opening, job: Job) -> float | None:
        """Return the flange plane of least heat [in]; nothing where it is not known yet."""
        found = self._found.get(key_of(opening, job))
        return cast("float | None", _result(found)["least"]) if found and found.done() else None

    def close(self) -> None:
        """End the process aside."""
        self._aside.close()


def _result(found: Future[Record]) -> Record:
    try:
        return found.result()
    except Exception:  # the process aside was ended, or met what nobody foresaw: the page does without its curves
        return FAILED


def key_of(opening: Opening, job: Job) -> str:
    """Tell two studies apart: by all that is the opening's own but where it stands, and what the job says for all."""
    own = {one.name: getattr(opening, one.name) for one in fields(opening) if one.name not in NOT_STUDIED}
    plain = repr((own, job.site, job.limits, job.shop, job.boards, job.units))
    return hashlib.sha256(plain.encode()).hexdigest()
