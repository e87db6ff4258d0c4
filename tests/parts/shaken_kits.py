"""Kits with every size moved by a few steps: what all boards and all that is told of them comes to is on record.

One line for each, as sums: they tell that something is another figure now. What it is, two listings tell, made before
and after:

    python tests/parts/shaken_kits.py "flared, 2"
    python tests/parts/shaken_kits.py                 (renews the record, if every kit that can be built closes)
"""

from __future__ import annotations

import json
import sys
from itertools import islice
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from cases import changed, job_of
from recorded_kits import recorded
from recorded_words import TOLD, told_of
from shaken import digest, shaken

from jambs.findings import FindingsError, Severity
from jambs.job import JobFaults
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

RECORD = Path(__file__).with_name("shaken_kits.json")
EACH = 2
"""How many kits are made of every kit on record."""
TRIES = 12


def whole(name: str) -> dict[str, Any]:
    """Return everything of a shaken kit, ``flared, 2``, as plain values."""
    of, _, number = name.rpartition(", ")
    data = shaken(changed(**TOLD[of]), int(number))
    job = job_of(data)
    kit = make_kit(place_windows(job)[0], job)
    return {"codes": [one.code for one in kit.findings], "boards": recorded(kit), "told": told_of(data)}


def summed(name: str) -> list[Any]:
    """Return what is kept of it: the codes of its findings, and what boards and words come to."""
    found = whole(name)
    return [found["codes"], digest(found["boards"]), digest(found["told"])]


def _closes(name: str) -> bool:
    """Say whether a shaken kit can be made, and whether its boards close in the solid where nothing stops it."""
    from jambs.solids import fit_report, model_kit

    of, _, number = name.rpartition(", ")
    try:
        job = job_of(shaken(changed(**TOLD[of]), int(number)))
        kit = make_kit(place_windows(job)[0], job)
    except (JobFaults, FindingsError):
        return False
    if any(one.severity is Severity.STOP for one in kit.findings):
        return True
    if faults := fit_report(model_kit(kit, job)).faults:
        raise SystemExit(f"{name} does not close, the record stays as it was: {faults}")
    return True


def main() -> None:
    """Renew the record, or list one kit."""
    if len(sys.argv) > 1:
        print(json.dumps(whole(sys.argv[1]), indent=1))
        return
    lines = []
    for of in TOLD:
        made = (name for number in range(1, TRIES) if _closes(name := f"{of}, {number}"))
        names = list(islice(made, EACH))
        lines += [f" {json.dumps(name)}: {json.dumps(summed(name))}" for name in names]
        print(of, names)
    RECORD.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
