"""Where the program starts: Ctrl-C is a sentence from the first moment, before anything else is loaded."""

from __future__ import annotations

import os
import signal

from jambs.app.stopped import INTERRUPTED, STOPPED


def run(called: str = "jambs") -> None:
    """Run with the words of the command line; ``called``: what the program is called in its help."""
    signal.signal(signal.SIGINT, _stop)
    from jambs.app.command_line import main

    main(prog_name=called)


def _stop(number: int, frame: object) -> None:
    os.write(2, f"{STOPPED}\n".encode())
    os._exit(INTERRUPTED)
