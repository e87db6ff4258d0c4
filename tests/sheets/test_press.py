"""The door to typst: its errors, and that nothing of the machine gets in."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from jambs.length import Units
from jambs.sheets import joining, press
from jambs.sheets.key_sheet import keys_pdf


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


@pytest.mark.skipif(not shutil.which("pdfinfo"), reason="no pdfinfo here: a second reader of PDF, poppler-utils")
def test_a_second_reader_finds_nothing_wrong_with_tags(tmp_path: Path) -> None:
    """Alone and joined: that no tags are suspect is what holds where nothing is said (ISO 32000-1, table 321)."""
    one, joined = tmp_path / "keys.pdf", tmp_path / "all.pdf"
    one.write_bytes(keys_pdf(Units.INCH))
    joining.join_pdfs([one, one], joined)
    for path in (one, joined):
        found = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True)
        assert found.stderr == ""
        assert re.search(r"Tagged: +yes", found.stdout) and re.search(r"Suspects: +no", found.stdout)
