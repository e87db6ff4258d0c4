"""What is wrong with a job file: every fault says where, what was found, what is allowed and what to do."""

from __future__ import annotations

import difflib
import re
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
        """Print the fault as ``job.yaml:14: openings[2] "W03": frame: …``; what it quotes is cut to a few words."""
        place = f"{self.file}:{self.line}" if self.line else self.file
        return ": ".join(part for part in (place, shortened(self.where), shortened(self.sentence)) if part)


MOST_QUOTED = 60
"""Letters that a fault quotes of what it found."""


def shortened(sentence: str) -> str:
    """Return a sentence on one line, what it quotes and words without an end cut short."""
    line = " ".join(sentence.split("\n")).replace("\r", " ").replace("\t", " ")
    return LONG.sub(lambda found: f"{found[0][: MOST_QUOTED // 2]} … {found[0][-8:]}", line)


END = r"(?=[\s;,.):?]|$)"
LONG = re.compile(rf"(?<![^\s(])(['\"])(?:(?!\1{END}).){{{MOST_QUOTED},}}\1{END}|\S{{{MOST_QUOTED},}}")
"""A quoted text, from a quote before it to one behind it (inch marks stand elsewhere), or a word without an end."""


def half_letters(text: str) -> bool:
    """Say whether a text holds a lone surrogate: half of a letter, which no file and no screen takes."""
    return not text.isascii() and any("\ud800" <= letter <= "\udfff" for letter in text)


class JobFaults(Exception):
    """A job that cannot be read; ``faults`` holds everything that is wrong with it, in the order of the lines."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(dict.fromkeys(faults))
        super().__init__("\n".join(str(fault) for fault in self.faults))

    def __reduce__(self) -> tuple[type[JobFaults], tuple[tuple[Fault, ...]]]:
        """Let the faults travel when another process raised it."""
        return JobFaults, (self.faults,)


ALIKE = 0.65
"""Two words more alike than this may be one with a typing mistake in it."""


def nearest(found: str, names: Iterable[str]) -> list[str]:
    """Return the names that mean what was found, nearest first: a typing mistake, never another word or number."""
    names = list(dict.fromkeys(names))
    vocabulary = {word for name in names for word in _parts(name)}
    meant = [name for name in names if _is_misspelled(_parts(found), _parts(name), vocabulary)]
    return sorted(meant, key=lambda name: -_likeness(_plain(found), _plain(name)))


def _is_misspelled(found: list[str], name: list[str], vocabulary: set[str]) -> bool:
    """Say whether two names are one, but for letters, the order of the words or the spaces between them."""
    if _numbers(found) != _numbers(name):
        return False
    if "".join(found) == "".join(name) or sorted(found) == sorted(name):
        return True
    if len(found) != len(name):
        return not set(found) <= vocabulary and _likeness("".join(found), "".join(name)) > ONE_LETTER
    return all(
        one == other or (one not in vocabulary and _likeness(one, other) > ALIKE)
        for one, other in zip(found, name, strict=True)
    )


ONE_LETTER = 0.9
"""How alike two long names are that differ in a letter or two."""


def _numbers(words: list[str]) -> list[str]:
    return sorted(number.lstrip("0") for number in re.findall(r"\d+", " ".join(words)))


def _likeness(one: str, other: str) -> float:
    return difflib.SequenceMatcher(None, one, other).ratio()


def _parts(name: str) -> list[str]:
    return _plain(name).split("_")


def _plain(name: str) -> str:
    return "_".join(name.lower().replace("-", " ").replace("_", " ").split())


RENAMED = {"cover sheet": "outer sheathing"}
"""Words that job files had once, and what is written now."""


def advice(found: str, names: Iterable[str], *, otherwise: str = "") -> str:
    """Say what was probably meant, or else what is allowed: ``did you mean main?``."""
    names = list(names)
    if (now := RENAMED.get(found)) in names:
        return f"it is called {now} now, write that"
    if close := nearest(found, names):
        return f"did you mean {close[0]}?"
    return otherwise or f"write one of {', '.join(names)}"
