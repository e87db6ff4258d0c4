"""Readings written and answered in a process aside: telephones that measure take nothing from the hand at the desk."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures.process import BrokenProcessPool
from functools import cache
from pathlib import Path
from typing import Any, Concatenate, ParamSpec, TypeVar, cast

from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.process_aside import ProcessAside

Given = ParamSpec("Given")
Found = TypeVar("Found")


class MeasuringAside:
    """The readings of the job at ``file``, whose papers are in ``target``; asked as ``Measuring`` is."""

    def __init__(self, *, file: Path, target: Path) -> None:
        self._file, self._target = file, target
        self.folder = file.parent
        self._aside = ProcessAside()

    def ask(
        self, work: Callable[Concatenate[Measuring, Given], Found], *given: Given.args, **named: Given.kwargs
    ) -> Found:
        """Return what a function says of the readings, or raise what it raises.

        A process that was ended in the middle is followed by another: a reading that is written already is the same
        reading once more, so nothing is written twice.
        """
        try:
            return self._submitted(work, *given, **named)
        except BrokenProcessPool:
            self._aside.close()
            return self._submitted(work, *given, **named)

    def _submitted(self, work: Callable[..., Found], *given: Any, **named: Any) -> Found:
        found = self._aside.submit(_asked, self._file, self._target, work, *given, **named).result()
        return cast("Found", found)

    def close(self) -> None:
        """End the process aside."""
        self._aside.close()


def _asked(file: Path, target: Path, work: Callable[..., Any], *given: Any, **named: Any) -> Any:
    return work(_measuring(file, target), *given, **named)


@cache
def _measuring(file: Path, target: Path) -> Measuring:
    """Return the readings of a job; they stay in the process that was asked for them."""
    return Measuring(Desk(file=file, target=target))
