"""Letters that the font of all papers lacks: they would print as boxes without a word."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from importlib.resources import files

from pydantic import BaseModel

from jambs.findings import Subject
from jambs.job.models.openings import Job
from jambs.sheets.letter_findings import LettersLacking

FILES = ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf")
ALWAYS = "\u0180"
"""The font has every printable letter before this one: Latin with its accents."""


def unprintable(job: Job) -> list[LettersLacking]:
    """Find each text of a job that the papers cannot print, with the letters that they lack."""
    found = {text: lacking for text in dict.fromkeys(_texts(job)) if (lacking := letters_lacking(text))}
    return [
        LettersLacking(subject=Subject.house(job.name), text=text, letters=lacking) for text, lacking in found.items()
    ]


def letters_lacking(text: str) -> tuple[str, ...]:
    """Return the letters of a text that the font of the papers lacks, each once."""
    rare = dict.fromkeys(letter for letter in text if letter >= ALWAYS)
    return tuple(letter for letter in rare if ord(letter) not in _known()) if rare else ()


@cache
def _known() -> frozenset[int]:
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # heavy, and rare letters are few

    known: list[frozenset[int]] = []
    for name in FILES:
        with files("jambs.data").joinpath("fonts", name).open("rb") as file, TTFont(file, lazy=True) as font:
            known.append(frozenset(font.getBestCmap()))
    return frozenset.intersection(*known)


def _texts(value: object) -> Iterator[str]:
    """Yield every text within a value."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, one in value.items():
            yield from _texts(key)
            yield from _texts(one)
    elif isinstance(value, tuple | list):
        for one in value:
            yield from _texts(one)
    elif isinstance(value, BaseModel):
        for key in type(value).model_fields:
            yield from _texts(getattr(value, key))
    elif is_dataclass(value):
        for field in fields(value):
            yield from _texts(getattr(value, field.name))
