"""Processes that are started beside this one do not run its script again.

A process that is spawned imports the main module of the one that started it. Of a script that calls ``jambs.build``
without asking for ``__name__`` it would begin anew, and wait for ever for the folder that this one holds.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from types import ModuleType


@contextmanager
def without_script() -> Iterator[None]:
    """Hide the script that runs here from processes that are started in the block; what they do is imported by name."""
    main = sys.modules["__main__"]
    sys.modules["__main__"] = ModuleType("__main__")
    try:
        yield
    finally:
        sys.modules["__main__"] = main
