"""Can solids be made here? If not: what is left out, and how to get it."""

from __future__ import annotations

import importlib

from jambs.interrupts import held_back
from jambs.solids.findings import KernelLacksLibrary, KernelNotInstalled, SolidsLeftOut


def availability() -> SolidsLeftOut | None:
    """Return None where solids can be made, else why they are left out and how to get them."""
    try:
        with held_back():  # stopped while it loads, the kernel would look broken
            importlib.import_module("OCP.gp")
    except ModuleNotFoundError:
        return KernelNotInstalled()
    except ImportError as error:
        return KernelLacksLibrary(reason=str(error).splitlines()[0])
    return None
