"""How wide a text is in the font that the package brings along."""

from __future__ import annotations

import re
from functools import lru_cache
from importlib.resources import files

from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

FONT_FOLDER = "jambs.data"
REGULAR = "LiberationSans-Regular.ttf"
BOLD = "LiberationSans-Bold.ttf"


@lru_cache(maxsize=2)
def _advances(name: str) -> tuple[dict[int, float], float]:
    """Return the advance of every character as a share of the capital height, and that of an unknown one."""
    with files(FONT_FOLDER).joinpath("fonts", name).open("rb") as stream:
        font = TTFont(stream, lazy=True)
        capital = font["OS/2"].sCapHeight
        widths = font["hmtx"]
        known = {code: widths[glyph][0] / capital for code, glyph in font.getBestCmap().items()}
        return known, widths[".notdef"][0] / capital


@lru_cache(maxsize=4096)
def _shares(text: str, bold: bool) -> float:
    known, unknown = _advances(BOLD if bold else REGULAR)
    return sum(known.get(ord(letter), unknown) for letter in text)


def text_width(text: str, *, height: float, bold: bool = False) -> float:
    """Return the width of one line whose capitals are ``height`` high; same unit as the height."""
    return _shares(text, bold) * height


def wrapped(text: str, *, width: float, height: float) -> list[str]:
    """Break a text at spaces into lines no wider than ``width``; a word that is wider stands alone.

    A length like ``4 11/16`` is never broken.
    """
    lines: list[str] = []
    for word in re.split(r"(?<!\d) | (?!\d+/\d)", text):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, height=height) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


@lru_cache(maxsize=1)
def _size_share() -> float:
    with files(FONT_FOLDER).joinpath("fonts", REGULAR).open("rb") as stream:
        font = TTFont(stream, lazy=True)
        return float(font["head"].unitsPerEm / font["OS/2"].sCapHeight)


def font_size(height: float) -> float:
    """Return the size of the font whose capitals are ``height`` high; same unit."""
    return height * _size_share()
