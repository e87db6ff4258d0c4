"""What is wrong with a job file: every fault says where, what was found, what is allowed and what to do."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass

Location = tuple[str | int, ...]
"""The way to a value through keys and list places, from the top of the file or of a section."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One fault: file, line (0: the whole file), where in the file's own words, and a sentence."""

    file: str
    line: int
    where: str
    sentence: str

    def __str__(self) -> str:
        """Print the fault as ``job.yaml:14: openings[2] "W03": frame: …``."""
        place = f"{self.file}:{self.line}" if self.line else self.file
        return ": ".join(part for part in (place, self.where, self.sentence) if part)


class JobFaults(Exception):
    """A job that cannot be read; ``faults`` holds everything that is wrong with it, in the order of the lines."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(dict.fromkeys(faults))
        super().__init__("\n".join(str(fault) for fault in self.faults))


def nearest(found: str, names: Iterable[str]) -> list[str]:
    """Return the names that a slip of the pen could have turned into what was found, nearest first."""
    plain = {_plain(name): name for name in names}
    close = difflib.get_close_matches(_plain(found), plain, n=3, cutoff=0.6)
    return [plain[name] for name in close]


def _plain(name: str) -> str:
    return name.lower().replace("-", "_").replace(" ", "_")


def advice(found: str, names: Iterable[str], *, otherwise: str = "") -> str:
    """Say what was probably meant, or else what is allowed: ``did you mean main?``."""
    names = list(names)
    if close := nearest(found, names):
        return f"did you mean {close[0]}?"
    return otherwise or f"write one of {', '.join(names)}"
