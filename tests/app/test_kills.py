"""A few kills of each verb at random moments; ``python tests/app/kills.py FOLDER --kills 200`` does many."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest


@pytest.mark.skipif(sys.platform == "win32", reason="processes are made by fork")
def test_killed_at_random_papers_and_record_are_of_one_issue(tmp_path: Path) -> None:
    script = Path(__file__).with_name("kills.py")
    words = [sys.executable, str(script), str(tmp_path / "kills"), "--kills", "6", "--seed", "3"]
    done = subprocess.run(words, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    assert "build 1" in done.stdout or "revisions 1" in done.stdout
