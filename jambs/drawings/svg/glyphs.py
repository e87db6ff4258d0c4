"""Texts of a picture as outlines of letters, so that it looks the same wherever it is shown."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from importlib.resources import files

from fontTools.pens.svgPathPen import SVGPathPen  # type: ignore[import-untyped]
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from jambs.letter_widths import BOLD, FONT_FOLDER, REGULAR
from jambs.vector_page import PageText


class _Face:
    """A font of the package: outlines and advances of its letters, in its own units."""

    def __init__(self, name: str) -> None:
        with files(FONT_FOLDER).joinpath("fonts", name).open("rb") as stream:
            self._font = TTFont(stream)
        self._glyphs, self._names = self._font.getGlyphSet(), self._font.getBestCmap()
        self.em = float(self._font["head"].unitsPerEm)
        self._letters: dict[str, tuple[str, float]] = {}

    def letter(self, letter: str) -> tuple[str, float]:
        """Return outline and advance of a letter, those of the font's sign for what it lacks else."""
        found = self._letters.get(letter)
        if found is None:
            glyph = self._glyphs[self._names.get(ord(letter), ".notdef")]
            pen = SVGPathPen(self._glyphs)
            glyph.draw(pen)
            found = self._letters[letter] = (pen.getCommands(), float(glyph.width))
        return found


@cache
def _face(*, bold: bool) -> _Face:
    return _Face(BOLD if bold else REGULAR)


def letters_svg(texts: Iterable[PageText]) -> str:
    """Return texts as SVG: each letter is told once, in units of its font, and set wherever it stands."""
    used: dict[tuple[bool, str], str] = {}
    lines = "".join(_line(text, used) for text in texts)
    told = "".join(f'<path id="{_name(bold, letter)}" d="{path}"/>' for (bold, letter), path in sorted(used.items()))
    return f"<defs>{told}</defs>{lines}" if lines else ""


def _line(text: PageText, used: dict[tuple[bool, str], str]) -> str:
    face, place, letters = _face(bold=text.bold), 0.0, []
    for letter in text.words:
        path, advance = face.letter(letter)
        if path:
            used[text.bold, letter] = path
            letters.append(f'<use href="#{_name(text.bold, letter)}" x="{place:g}"/>')
        place += advance
    if not letters:
        return ""
    size, turn = text.size / face.em, " rotate(-90)" if text.upright else ""
    way = f"translate({text.x:.3f} {text.y:.3f}){turn} scale({size:.6f} {-size:.6f})"
    return f'<g transform="{way}">{"".join(letters)}</g>'


def _name(bold: bool, letter: str) -> str:
    return f"{'bold' if bold else 'plain'}-{ord(letter):x}"
