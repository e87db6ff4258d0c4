"""How wide the letters of the bundled font are: without kerning, which only moves letters closer."""

from __future__ import annotations

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
def width_in_capitals(text: str, bold: bool) -> float:
    """Return the width of one line as a share of the height of its capitals."""
    known, unknown = _advances(BOLD if bold else REGULAR)
    return sum(known.get(ord(letter), unknown) for letter in text)


@lru_cache(maxsize=1)
def size_in_capitals() -> float:
    """Return the size of the font as a share of the height of its capitals."""
    with files(FONT_FOLDER).joinpath("fonts", REGULAR).open("rb") as stream:
        font = TTFont(stream, lazy=True)
        return float(font["head"].unitsPerEm / font["OS/2"].sCapHeight)
