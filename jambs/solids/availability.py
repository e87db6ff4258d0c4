"""Can solids be made here? If not: what is left out, and how to get it, in one line."""

from __future__ import annotations

import importlib

from jambs.interrupts import held_back

LEFT_OUT = "Left out: solids, STEP, GLB, 3D pictures and the fit report"
NO_PACKAGE = f"{LEFT_OUT}; cadquery is not installed. To have them: pip install -e '.[solids]'."
NO_LIBRARY = (
    f"{LEFT_OUT}; cadquery is installed and a system library is missing ({{reason}}). "
    "To have them on Debian or Ubuntu: apt-get install --no-install-recommends libgl1."
)


def availability() -> str | None:
    """Return None where solids can be made, else one line that says what is left out and how to get it."""
    try:
        with held_back():  # stopped while it loads, the kernel would look broken
            importlib.import_module("OCP.gp")
    except ModuleNotFoundError:
        return NO_PACKAGE
    except ImportError as error:
        return NO_LIBRARY.format(reason=str(error).splitlines()[0])
    return None
