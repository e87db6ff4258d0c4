"""Scripts that call the house without asking for ``__name__``: what draws beside them does not run them again.

In an own process each: here ``__main__`` is the test's.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from jambs.app.without_script import without_script

OPENINGS = """
from jambs.app.papers import FEW, _openings
print("began")
print(sorted(_openings(list(range(FEW + 1)), str)))
"""
ASIDE = """
from jambs.screen.process_aside import ProcessAside
print("began")
aside = ProcessAside()
print([aside.submit(str, 7).result()])
aside.close()
"""


@pytest.mark.parametrize(
    ("script", "found"), [(OPENINGS, "['0', '1', '2', '3']"), (ASIDE, "['7']")], ids=["openings", "aside"]
)
def test_a_script_is_run_once(script: str, found: str, tmp_path: Path) -> None:
    file = tmp_path / "script.py"
    file.write_text(script, encoding="utf-8")
    done = subprocess.run([sys.executable, str(file)], capture_output=True, text=True, timeout=120, check=False)
    assert (done.returncode, done.stdout.split("\n")) == (0, ["began", found, ""]), done.stderr


def test_the_script_is_back_afterwards_whatever_came() -> None:
    main = sys.modules["__main__"]
    with pytest.raises(ValueError), without_script():
        assert sys.modules["__main__"] is not main
        raise ValueError
    assert sys.modules["__main__"] is main
