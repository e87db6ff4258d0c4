"""What stands past a surface, and what stands flush with it."""

from __future__ import annotations

import pytest

from jambs.length import Units
from jambs.parts.words.proud_words import proud_words, width_words


@pytest.mark.parametrize(
    ("proud", "stands", "width"),
    [
        (1 / 32, '1/32" proud of the wall', 'depth + 1/32" proud'),
        (0.0, "flush with the wall", "depth"),
    ],
)
def test_nothing_stands_proud_by_nothing(proud: float, stands: str, width: str) -> None:
    assert proud_words(proud, "the wall", Units.INCH) == stands
    assert width_words(proud, Units.INCH) == width
