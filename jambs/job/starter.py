"""The commented job file that ``jambs new`` writes: a whole job to change."""

from __future__ import annotations

from importlib.resources import files

from jambs.length import Units


def new_job_text(units: Units) -> str:
    """Return a commented job file that reads without faults, in the units asked for."""
    return files("jambs.data").joinpath(f"starter_{units.value}.yaml").read_text(encoding="utf-8")
