"""Where the program starts: Ctrl-C is a sentence from the first moment, before anything else is loaded."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable
from typing import TYPE_CHECKING

from jambs.commands.stopped import INTERRUPTED, STOPPED

if TYPE_CHECKING:
    import click


def run(program: Callable[[], click.Group], called: str = "jambs") -> None:
    """Run with the words of the command line; ``program``: loads the verbs; ``called``: its name in the help."""
    signal.signal(signal.SIGINT, _stop)
    program()(prog_name=called)


def _stop(number: int, frame: object) -> None:
    os.write(2, f"{STOPPED}\n".encode())
    os._exit(INTERRUPTED)
