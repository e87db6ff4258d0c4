"""psychrolib in SI units and in plain Python: with numba it would compile every function for a handful of calls."""

from __future__ import annotations

import sys

import pytest

with pytest.MonkeyPatch.context() as patch:
    patch.setitem(sys.modules, "numba", None)  # says that there is none
    import psychrolib

psychrolib.SetUnitSystem(psychrolib.SI)

__all__ = ["psychrolib"]
