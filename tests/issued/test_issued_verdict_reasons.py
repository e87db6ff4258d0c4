"""What is said of a part that is cut already: each verdict where it holds, not just beside it, and how it reads."""

from __future__ import annotations

import copy
from collections.abc import Callable
from functools import cache
from typing import Any

import finding_rows
from finding_rows import Case, Row, codes_in, each
from issued_records import opening_of

from jambs.findings import Statement
from jambs.issued import verdict_reasons
from jambs.issued.compare import compare_openings, verdict
from jambs.issued.old_labels import _rows, to_do

TOLERANCE = 1 / 32
Part = dict[str, Any]


@cache
def openings() -> tuple[dict[str, Any], dict[str, Any]]:
    """An opening, and the same without its exterior trim."""
    return opening_of(), opening_of(openings__0__exterior_trim="none")


def part(name: str, where: str = "interior", at: int = 0) -> Part:
    found = [one for one in openings()[0]["parts"] if (one["name"], one["where"]) == (name, where)]
    return copy.deepcopy(found[at])


def board(**by: float) -> Part:
    """A board of the exterior casing, which is only ripped and crosscut, larger by so much."""
    new = part("casing", "exterior")
    for name, more in by.items():
        new[name]["value"] += more
    return new


def of(new: Part, old: Part | None = None, *, label: bool = False) -> Case:
    told = verdict(old or part("casing", "exterior"), new, tolerance=TOLERANCE)
    return lambda: (to_do(told) if label else told,)


def with_stock(stock: str) -> Part:
    return part("casing", "exterior") | {"stock": stock}


def head(change: Callable[[Part], None]) -> Part:
    """The head of the interior jamb, which has a rabbet at both ends."""
    new = part("extension jamb")
    change(new)
    return new


def lose_a_cut(one: Part) -> None:
    one["cuts"] = one["cuts"][:-1]


def shorter(by: float) -> Callable[[Part], None]:
    def change(one: Part) -> None:
        one["length"]["value"] -= by

    return change


def pieces(count: int) -> Part:
    """A board of the exterior casing as it were in courses."""
    return part("casing", "exterior") | {"courses": [{"value": 5.0, "text": '5"'}] * count}


def all_of(*, come: bool) -> Case:
    def case() -> list[Statement]:
        whole, bare = openings()
        old, new = (bare, whole) if come else (whole, bare)
        changes = compare_openings(old, new, tolerance=TOLERANCE).changes
        return list(dict.fromkeys(one.verdict for one in changes if one.verdict))

    return case


def labels_of(*, come: bool) -> Case:
    """What is told of old labels once the exterior trim has come, or gone."""

    def case() -> list[Statement]:
        whole, bare = openings()
        old, new = (bare, whole) if come else (whole, bare)
        return list(dict.fromkeys(told for *_, told in _rows(old, new, TOLERANCE)))

    return case


HEAD = part("extension jamb")
ROWS = [
    Row(code="recut", appears=of(with_stock("oak")), quiet=of(with_stock("cedar")), inch="recut: other stock"),
    Row(
        code="recut",
        appears=of(board(thickness=3 / 64)),
        quiet=of(board(thickness=1 / 32)),
        inch="recut: other thickness",
    ),
    Row(code="recut", appears=of(head(lose_a_cut), HEAD), quiet=of(HEAD, HEAD), inch="recut: cut otherwise"),
    Row(code="recut", appears=of(board(width=3 / 64)), quiet=of(board(width=1 / 32)), inch="recut: too narrow"),
    Row(code="recut", appears=of(board(length=3 / 64)), quiet=of(board(length=1 / 32)), inch="recut: too short"),
    Row(
        code="recut",
        appears=of(head(shorter(3 / 64)), HEAD),
        quiet=of(head(shorter(1 / 32)), HEAD),
        inch="recut: its ends are cut for another length",
    ),
    Row(
        code="recut",
        appears=of(pieces(12), pieces(11)),
        quiet=of(pieces(12), pieces(12)),
        inch="recut: other courses pass it",
    ),
    Row(code="still-good", appears=of(board(width=1 / 32)), quiet=of(board(width=3 / 64)), inch="still good"),
    Row(
        code="still-good",
        appears=of(board(width=-3 / 64)),
        quiet=of(board(width=-3 / 64, length=3 / 64)),
        inch="still good: rip to the new size",
    ),
    Row(
        code="still-good",
        appears=of(board(width=-1, length=-1)),
        quiet=of(board(width=1, length=-1)),
        inch="still good: rip and crosscut to the new size",
    ),
    Row(
        code="trim-it",
        appears=of(board(length=-3 / 64), label=True),
        quiet=of(board(length=-1 / 32), label=True),
        inch="crosscut to the new size",
    ),
    Row(code="no-longer-needed", appears=all_of(come=False), quiet=all_of(come=True), inch="no longer needed"),
    Row(code="cut-it", appears=all_of(come=True), quiet=all_of(come=False), inch="cut it"),
    Row(code="throw-away", appears=labels_of(come=False), quiet=labels_of(come=True), inch="throw away"),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(verdict_reasons) == {row.code for row in ROWS}
