"""A file that stands alone is there whole, and a new one never takes the place of another."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from jambs.app.whole_file import write_new


def test_a_new_file_is_written_once(tmp_path: Path) -> None:
    path = tmp_path / "measures.csv"
    assert write_new(path, b"one") and not write_new(path, b"two")
    assert path.read_bytes() == b"one" and list(tmp_path.iterdir()) == [path]


def test_a_new_file_is_written_on_a_disk_without_links_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(1, "no links here")

    monkeypatch.setattr(os, "link", refuse)
    test_a_new_file_is_written_once(tmp_path)


def test_where_nothing_can_be_written_the_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(OSError, match=r"measures\.csv"):
        write_new(tmp_path / "nowhere" / "measures.csv", b"one")
