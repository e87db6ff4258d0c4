"""The mutator changes arithmetic and nothing else, one thing at a time, and where it says it does."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from mutants import mutants
from run import equivalents

ROOT = Path(__file__).parents[2]
SOURCE = """
from __future__ import annotations
Point = tuple[float, float]
LEAST = 0.5

@dataclass(frozen=True)
class Board:
    \"\"\"Ä board of 1 in.\"\"\"
    width: Literal[1] | None = None

def fits(board: Board, width: float) -> bool:
    return board.width - LEAST >= width and f"{width:.2f}"
""".encode()


def test_each_mutant_is_one_change_by_hand() -> None:
    """0.5; `and`; `>=` both ways; `-`: five changes, none in a type, a decorator, a text or a format."""
    changes = {(one.line, one.before, one.after) for one in mutants("boards.py", SOURCE)}
    assert changes == {
        (4, "0.5", "1.5"),
        (12, "board.width - LEAST", "board.width + LEAST"),
        (12, "board.width - LEAST >= width", "board.width - LEAST > width"),
        (12, "board.width - LEAST >= width", "board.width - LEAST < width"),
        (12, "board.width - LEAST >= width and f'{width:.2f}'", "board.width - LEAST >= width or f'{width:.2f}'"),
    }


def test_the_rest_of_the_source_stays() -> None:
    one = next(one for one in mutants("boards.py", SOURCE) if one.after == "board.width + LEAST")
    assert one.applied(SOURCE) == SOURCE.replace(b"board.width - LEAST", b"(board.width + LEAST)")


def test_that_two_lists_are_equally_long_is_an_assertion() -> None:
    assert mutants("pairs.py", b"pairs = zip(one, two, strict=True)") == []
    assert [one.after for one in mutants("pairs.py", b"pairs = sorted(one, reverse=True)")] == ["False"]


def test_a_limit_with_a_tolerance_is_not_asked_for_itself() -> None:
    found = mutants("limits.py", b"ok = gap < least - ROUND_OFF")
    assert {one.after for one in found} == {"gap >= least - ROUND_OFF", "least + ROUND_OFF"}


def test_every_mutant_that_is_named_as_changing_nothing_can_be_made() -> None:
    """A line that was rewritten since names nothing any more."""
    made = {
        (path, source.split("\n")[one.line - 1].strip(), one.before, one.after)
        for path in {path for path, *_ in equivalents()}
        for source in [(ROOT / path).read_text(encoding="utf-8")]
        for one in mutants(path, source.encode())
    }
    assert set(equivalents()) - made == set()
