"""How wide a text is in the font that the package brings along."""

from __future__ import annotations

import re

from jambs.letter_widths import size_in_capitals, width_in_capitals

UNITS = r"(?:(?:mm|m|kg)\b|%)"
"""What stands after a number and a space, and goes with it."""


def text_width(text: str, *, height: float, bold: bool = False) -> float:
    """Return the width of one line whose capitals are ``height`` high; same unit as the height."""
    return width_in_capitals(text, bold) * height


def wrapped(text: str, *, width: float, height: float) -> list[str]:
    """Break a text at spaces into lines no wider than ``width``; a word that is wider stands alone.

    A length like ``4 11/16`` is never broken, nor is a number from its unit.
    """
    lines: list[str] = []
    for word in re.split(rf"(?<!\d) | (?!\d+/\d|{UNITS})", text):
        is_empty = len(lines) > 1 and not lines[-1]
        longer = f"{lines[-1]} {word}" if lines and not is_empty else word
        if lines and text_width(longer, height=height) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def font_size(height: float) -> float:
    """Return the size of the font whose capitals are ``height`` high; same unit."""
    return height * size_in_capitals()
