"""The drawings of an example, drawn once for all tests of a run that look at them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import jambs
from jambs.drawings.drawing import Drawing

FOLDER = Path(__file__).parents[2] / "examples"
EXAMPLES = sorted(one.parent.name for one in FOLDER.glob("*/job.yaml"))


@cache
def drawings_of(example: str) -> dict[str, Drawing]:
    """Return the drawing of every opening of an example, by its mark."""
    job = jambs.read_job(FOLDER / example)
    return {kit.mark: jambs.draw(kit, job) for kit in jambs.make_kits(job)}
