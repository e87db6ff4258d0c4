"""Ctrl-C at moments when it must wait: while a library loads, while processes start, while finished papers move.

A library that is stopped while it loads reports itself as broken, a process that is stopped while it starts prints a
traceback of its own, and papers stopped while they move would be half old and half new. So the stop is noted, and
comes as soon as the moment is over.
"""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType


class _Noted:
    """Whether Ctrl-C came since it is watched for."""

    came = False


def watch() -> None:
    """Note each Ctrl-C from now on, besides raising ``KeyboardInterrupt``."""
    _Noted.came = False
    signal.signal(signal.SIGINT, _noted)


def _noted(number: int, frame: FrameType | None) -> None:
    _Noted.came = True
    raise KeyboardInterrupt


def is_interrupted() -> bool:
    """Say whether Ctrl-C came since it is watched for."""
    return _Noted.came


def stop_if_interrupted() -> None:
    """Stop before a step that cannot be taken back, also where some library has swallowed the Ctrl-C.

    Raises:
        KeyboardInterrupt: Ctrl-C came.
    """
    if _Noted.came:
        raise KeyboardInterrupt


@contextmanager
def held_back() -> Iterator[None]:
    """Hold Ctrl-C back until the block is done; processes that are started in it never get one.

    Raises:
        KeyboardInterrupt: Ctrl-C came in the meantime.
    """
    before = signal.getsignal(signal.SIGINT)
    if threading.current_thread() is not threading.main_thread() or not callable(before):
        yield
        return
    came: list[int] = []
    signal.signal(signal.SIGINT, lambda number, frame: came.append(number))
    _block(signal.SIG_BLOCK if _CAN_BLOCK else 0)
    try:
        yield
    finally:
        _block(signal.SIG_UNBLOCK if _CAN_BLOCK else 0)
        signal.signal(signal.SIGINT, before)
        if came:
            _Noted.came |= before is _noted
            raise KeyboardInterrupt


_CAN_BLOCK = hasattr(signal, "pthread_sigmask")
"""What is blocked here is blocked in the processes that start meanwhile; not everywhere can it be."""


def _block(how: int) -> None:
    if _CAN_BLOCK:
        signal.pthread_sigmask(how, {signal.SIGINT})
