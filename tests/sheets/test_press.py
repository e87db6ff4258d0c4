"""The door to typst: its errors, and that nothing of the machine gets in."""

from __future__ import annotations

from pathlib import Path

import pytest

from jambs.sheets import press


def test_template_that_misses_data_is_named() -> None:
    with pytest.raises(press.PressError, match=r'^cut_sheet: dictionary does not contain key "paper"'):
        press.press("cut_sheet", {})


def test_missing_font_says_what_to_do(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "fonts").mkdir()
    monkeypatch.setattr(press, "files", lambda package: tmp_path)
    press.fonts.cache_clear()
    with pytest.raises(press.PressError) as raised:
        press.fonts()
    press.fonts.cache_clear()
    assert str(raised.value) == (
        f"Liberation Sans is not in {tmp_path / 'fonts'}; install the package again, its fonts are part of it"
    )
