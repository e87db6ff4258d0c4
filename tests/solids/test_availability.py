"""Where the kernel is missing: one line says what is left out and how to get it; unasked, the room costs nothing."""

from __future__ import annotations

import importlib
import subprocess
import sys
from typing import Any

import pytest

from jambs.length import Units
from jambs.solids import availability


def refuse(monkeypatch: pytest.MonkeyPatch, error: Exception) -> None:
    """Make the import of the kernel fail."""

    def refused(name: str, *rest: Any) -> Any:
        assert name == "OCP.gp"
        raise error

    monkeypatch.setattr(importlib, "import_module", refused)


def said() -> str:
    found = availability()
    assert found is not None
    return found.sentence(Units.INCH)


def test_nothing_is_left_out_here() -> None:
    assert availability() is None


def test_without_the_package_one_line_says_how_to_get_it(monkeypatch: pytest.MonkeyPatch) -> None:
    refuse(monkeypatch, ModuleNotFoundError("No module named 'OCP'"))
    assert said() == (
        "Left out: solids, STEP, GLB, 3D pictures and the fit report; cadquery is not installed. "
        "To have them: pip install -e '.[solids]'."
    )


def test_without_a_system_library_one_line_names_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """The text is the loader's, as a bare Debian 12 gives it (study of drawing, section 5)."""
    loader = "libGL.so.1: cannot open shared object file: No such file or directory\nmore"
    refuse(monkeypatch, ImportError(loader))
    assert said() == (
        "Left out: solids, STEP, GLB, 3D pictures and the fit report; cadquery is installed and a system library is "
        "missing (libGL.so.1: cannot open shared object file: No such file or directory). "
        "To have them on Debian or Ubuntu: apt-get install --no-install-recommends libgl1."
    )


def test_the_room_opens_without_the_kernel() -> None:
    """Importing the room loads neither kernel nor number crunching."""
    code = "import sys, jambs.solids; print(sorted({'OCP', 'cadquery', 'numpy', 'vtkmodules'} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_kit_is_modeled_without_a_drawing_library() -> None:
    """No cadquery, no VTK: only the kernel's own modules."""
    code = (
        "import sys; sys.path[:0] = ['tests']; from cases import changed, job_of; "
        "from jambs.parts.make import make_kit; from jambs.place.solve import place_windows; "
        "from jambs.solids import fit_report, model_kit; job = job_of(changed()); "
        "report = fit_report(model_kit(make_kit(place_windows(job)[0], job), job)); "
        "print(report.fits, sorted({'cadquery', 'vtkmodules'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "True []"
