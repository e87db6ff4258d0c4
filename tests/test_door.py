"""The public doors are small, and what stands behind them is there."""

from __future__ import annotations

import importlib
import pkgutil
import subprocess
import sys

import pytest

import jambs

MOST = 8
"""Names in one door: more are a sign of two rooms in one."""
MOST_OF_THE_FACE = 24
"""The face for scripts has one name for each stage and each verb."""
OPEN = {"jambs": MOST_OF_THE_FACE, "jambs.face": 80}
"""And behind it everything that the command line is made of."""

DOORS = ["jambs", *(f"jambs.{room.name}" for room in pkgutil.iter_modules(jambs.__path__) if room.ispkg)]


@pytest.mark.parametrize("name", DOORS)
def test_a_door_is_small_and_leads_somewhere(name: str) -> None:
    door = importlib.import_module(name)
    names = list(getattr(door, "__all__", []))
    assert len(names) <= OPEN.get(name, MOST)
    assert names == sorted(set(names))
    assert [one for one in names if not hasattr(door, one)] == []


def test_the_door_of_the_job() -> None:
    job = importlib.import_module("jambs.job")
    assert job.__all__ == ["Fault", "Job", "JobFaults", "read_job"]


def test_the_face_costs_nothing_until_it_is_used() -> None:
    code = "import sys, jambs; idle = set(sys.modules); jambs.make_kits; print({'jambs.face', 'ezdxf'} & {*idle})"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "set()"


def test_the_face_says_what_it_has() -> None:
    with pytest.raises(AttributeError, match=r"^jambs has no 'make_kit'; it has InTheWay, Job, JobFaults, Kit, "):
        _ = jambs.make_kit
    assert set(jambs.__all__) <= set(dir(jambs))


def test_the_job_is_read_without_anything_that_draws() -> None:
    """Reading and checking loads no drawing, no printing, no number crunching."""
    heavy = "{'ezdxf', 'typst', 'numpy', 'scipy', 'PIL', 'openpyxl'}"
    code = f"import sys, jambs.job; print(sorted({heavy} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
