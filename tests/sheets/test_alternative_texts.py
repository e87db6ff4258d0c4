"""Every figure on paper has words for those who cannot see it."""

from __future__ import annotations

from pathlib import Path

import pytest

TEMPLATES = sorted((Path(__file__).parents[2] / "jambs" / "sheets" / "templates").glob("*.typ"))


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda path: path.stem)
def test_every_image_of_a_template_has_an_alternative_text(template: Path) -> None:
    for call in template.read_text(encoding="utf-8").split("image(bytes")[1:]:
        assert "alt: " in _arguments(call), call[:80]


def _arguments(call: str) -> str:
    """Return what stands between the brackets of a call that begins with its own open one."""
    depth = 1
    for number, letter in enumerate(call):
        depth += {"(": 1, ")": -1}.get(letter, 0)
        if depth == 0:
            return call[:number]
    return call
