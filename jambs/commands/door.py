"""The outer door of the command line: whatever comes out of a command, people read a sentence.

Ctrl-C ends every command with one sentence and exit code 130. What nobody foresaw is a fault of the program: the
traceback goes into a file to send, not onto the screen.
"""

from __future__ import annotations

import datetime
import errno
import os
import platform
import sys
import threading
from _thread import interrupt_main
from collections.abc import Callable
from contextlib import suppress
from io import TextIOWrapper
from pathlib import Path
from typing import Any, NoReturn

import click

from jambs import __version__
from jambs.commands.stopped import INTERRUPTED, STOPPED
from jambs.commands.verbs import Verbs
from jambs.interrupts import is_interrupted, watch

AGAIN = 0.05
"""After so long a Ctrl-C that was lost is sent once more [s]."""


class Door(Verbs):
    """The verbs, as a group that lets nothing out but sentences and exit codes."""

    def __call__(self, *words: Any, **options: Any) -> NoReturn:
        """Run as a program: take Ctrl-C, print what the screen can print, leave with the exit code."""
        watch()
        sys.unraisablehook = _again
        _take_any_letter()
        try:
            self.main(*words, **options)
        except SystemExit as end:
            _leave(end.code)
        except KeyboardInterrupt:  # before or after the command itself
            click.echo(STOPPED, err=True)
            _leave(INTERRUPTED)
        _leave(0)

    def invoke(self, ctx: click.Context) -> Any:
        """Run a command, and turn what remains into a sentence."""
        try:
            return super().invoke(ctx)
        except (KeyboardInterrupt, click.Abort):
            click.echo(f"\n{STOPPED}", err=True)
            ctx.exit(INTERRUPTED)
        except (click.ClickException, click.exceptions.Exit):
            raise
        except (Exception, SystemExit) as error:
            has_said_so = isinstance(error, SystemExit) and error.code == INTERRUPTED
            if is_interrupted() and not has_said_so:  # some library made an error of its own of it
                click.echo(f"\n{STOPPED}", err=True)
                ctx.exit(INTERRUPTED)
            if isinstance(error, SystemExit):
                raise
            if isinstance(error, OSError) and error.errno == errno.EPIPE:
                raise  # whoever read what is printed here has enough
            click.echo(_report(error, ctx), err=True)
            ctx.exit(1)


def _again(lost: sys.UnraisableHookArgs) -> None:
    """Send a Ctrl-C once more that came where it could only be lost: in a finalizer, or while a module is locked."""
    if issubclass(lost.exc_type, KeyboardInterrupt):
        again = threading.Timer(AGAIN, interrupt_main)  # here and now it would be lost once more
        again.daemon = True
        again.start()
    else:
        sys.__unraisablehook__(lost)


def _take_any_letter() -> None:
    """Print ? for letters that the screen or the file behind it does not know."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            with suppress(ValueError, OSError):
                stream.reconfigure(errors="replace")


def _leave(code: Any) -> NoReturn:
    """Leave; at once where Ctrl-C was taken or a search is still running aside, whose threads would end badly."""
    aside = any(one is not threading.main_thread() and one.daemon for one in threading.enumerate())
    if code != INTERRUPTED and not aside:
        sys.exit(code)
    for stream in (sys.stdout, sys.stderr):
        with suppress(ValueError, OSError):
            stream.flush()
    os._exit(code if isinstance(code, int) else 0 if code is None else 1)


# ---- what nobody foresaw


def _report(error: Exception, ctx: click.Context) -> str:
    """Write down what happened, and say in a sentence or two where."""
    command = f"jambs {ctx.invoked_subcommand or ''}".strip()
    happened = " ".join(str(error).split())[:200]
    said = f"`{command}` stopped on something unexpected ({type(error).__name__}: {happened})."
    file = _written(_report_text(error))
    if file is None:
        return (
            f"{said} This is a fault of jambs. No report could be written; repeat it where there is room on the disk."
        )
    return (
        f"{said} The fault is in jambs, not in your job; what it had not finished was not written.\n"
        f"{file} says what happened: the command, the versions, the place in the program; of your job only what the "
        "message quotes. Send it, with the job file if you may, to whoever gave you jambs."
    )


def _report_text(error: Exception) -> str:
    import traceback  # not needed for ``--help``

    words = " ".join(repr(word) if " " in word else word for word in sys.argv[1:])
    head = [
        "A fault of jambs. This file holds the command, the versions and the place in the program, and nothing of the",
        "job but names of files and what the message quotes.",
        "",
        f"command   jambs {words}",
        f"jambs     {__version__}",
        f"Python    {platform.python_version()} on {platform.platform()}",
        "",
    ]
    return "\n".join([*head, "".join(traceback.format_exception(error))])


def _temporary_folder() -> Path:
    import tempfile  # not needed for ``--help``

    return Path(tempfile.gettempdir())


def _written(text: str) -> Path | None:
    """Write a report into the current folder, or else among the temporary files; nothing where neither takes it."""
    name = f"jambs-report-{datetime.datetime.now():%Y-%m-%d-%H%M%S}-{os.getpid()}.txt"
    folders: tuple[Callable[[], Path], ...] = (Path.cwd, _temporary_folder)
    for folder in folders:
        with suppress(OSError):
            file = folder() / name
            file.write_text(text, encoding="utf-8", errors="backslashreplace")
            return file
    return None
