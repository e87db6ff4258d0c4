"""A process aside: it works beside the program that answers the hand, after it where both want the processor."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable
from concurrent.futures import Future, ProcessPoolExecutor
from typing import ParamSpec, TypeVar

from jambs.app.without_script import without_script

Given = ParamSpec("Given")
Found = TypeVar("Found")
AFTER_THE_HAND = 5
"""So much nicer the process aside is than the program, where the system knows of it."""


def _begin() -> None:
    """Leave Ctrl-C to the program that started this process, and the processor to it first."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(AFTER_THE_HAND)


class ProcessAside:
    """One process, started by the first work that is given to it."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._pool: ProcessPoolExecutor | None = None

    def submit(self, work: Callable[Given, Found], *given: Given.args, **named: Given.kwargs) -> Future[Found]:
        """Give work to it; work, what is given and what is found travel between the two."""
        with self._lock:
            if self._pool is None:
                context = multiprocessing.get_context("spawn")
                self._pool = ProcessPoolExecutor(max_workers=1, mp_context=context, initializer=_begin)
            with without_script():
                return self._pool.submit(work, *given, **named)

    def close(self) -> None:
        """End the process; work that is given afterwards starts another."""
        with self._lock:
            pool, self._pool = self._pool, None
        if pool is not None:
            for process in list((pool._processes or {}).values()):
                process.terminate()
            pool.shutdown(wait=False, cancel_futures=True)
