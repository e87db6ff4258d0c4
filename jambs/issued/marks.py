"""The book of marks as the record keeps it: a document of every entry whose verb printed marks."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import product
from typing import Any

from jambs.issued.entry import PRINTED, Entry
from jambs.issued.entry_file import item, read_plain
from jambs.issued.errors import Unreadable
from jambs.issued.moves import moves_back
from jambs.issued.record import Record
from jambs.parts.board.kinds import PartKind, Where, is_one_of_several, member_words, position_words, run_words
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.board.part import PartIdentity
from jambs.sides import Side

MARKS = "marks.json"
"""The document that holds the book."""
PASSED_OVER = 100
"""Numbers of each opening that are passed over for each entry that is lost: what it gave is not known; no kit has as
many parts."""


def recorded_marks(record: Record) -> MarkBook:
    """Return every mark that was given in a folder of papers: from the last book that can be read, or from what was
    printed where an earlier version kept none.

    Numbers that a lost entry may have given are passed over.
    """
    entries = record.entries
    for entry in reversed(entries):
        book = _read(record, entry)
        if book is not None:
            return _past_lost(book, record, after=entry.number)
    book = NO_MARKS
    for entry in reversed([one for one in entries if one.is_issue]):  # what is on the newest boards holds
        book = _with_printed(book, record, entry)
    return _past_lost(book, record, after=0)


def book_back_in(earlier: Entry, record: Record) -> MarkBook:
    """Return the book as it is once an earlier issue holds again: openings have the marks, and parts the numbers, that
    they had then; what was given since is never given again.
    """
    book = recorded_marks(record).moved(moves_back(record, earlier))
    then = _read(record, earlier) or _with_printed(NO_MARKS, record, earlier)
    return book.back_at(then, earlier.sheets)


def _past_lost(book: MarkBook, record: Record, *, after: int) -> MarkBook:
    lost = sum(1 for one in record.chain.damaged if one.number > after)
    return replace(book, highest={mark: number + lost * PASSED_OVER for mark, number in book.highest.items()})


def marks_document(book: MarkBook) -> bytes:
    """Return the book as it is kept."""
    parts = [
        {
            "opening": part.opening,
            "kind": part.kind.value,
            "where": part.where.value,
            "side": part.side.value,
            "member": part.member,
            **({"is_one_of_several": True} if part.is_one_of_several else {}),
            "number": number,
            "under": dict(book.under.get(part, {})),
        }
        for part, number in book.numbers.items()
    ]
    plain = {"highest": dict(book.highest), "parts": parts}
    return json.dumps(plain, ensure_ascii=False, indent=1).encode("utf-8")


def _read(record: Record, entry: Entry) -> MarkBook | None:
    try:
        plain = read_plain(record.document(entry, MARKS))
        parts = {_identity(one): one for one in item(plain, "parts", list)}
        return MarkBook(
            numbers={part: item(one, "number", int) for part, one in parts.items()},
            highest=_numbers(plain, "highest"),
            under={part: _numbers(one, "under") for part, one in parts.items() if one["under"]},
        )
    except (Unreadable, KeyError, TypeError, ValueError, AttributeError):
        return None


def _numbers(plain: Mapping[str, Any], name: str) -> dict[str, int]:
    return {key: item({key: one}, key, int) for key, one in item(plain, name, dict).items()}


def _identity(plain: Mapping[str, Any]) -> PartIdentity:
    return PartIdentity(
        opening=item(plain, "opening", str),
        kind=PartKind(plain["kind"]),
        where=Where(plain["where"]),
        side=Side(plain["side"]),
        member=item(plain, "member", int),
        is_one_of_several=item({"is_one_of_several": False, **plain}, "is_one_of_several", bool),
    )


def _with_printed(book: MarkBook, record: Record, entry: Entry) -> MarkBook:
    """Add the marks that an issue printed, those that are known already as they are."""
    numbers, highest = dict(book.numbers), dict(book.highest)
    given = {book.mark(part) for part in numbers}
    for part, number in _printed_marks(record, entry):
        highest[part.opening] = max(highest.get(part.opening, 0), number)
        if part not in numbers and f"{part.opening}-{number}" not in given:
            numbers[part] = number
    return replace(book, numbers=numbers, highest=highest)


def _printed_marks(record: Record, entry: Entry) -> Iterator[tuple[PartIdentity, int]]:
    if PRINTED not in entry.documents:
        return
    try:
        for opening in record.printed(entry)["openings"]:
            yield from _opening_marks(opening)
    except (Unreadable, LookupError, TypeError, ValueError, AttributeError):
        return


def _opening_marks(opening: Mapping[str, Any]) -> Iterator[tuple[PartIdentity, int]]:
    seen: Counter[tuple[str, str, str]] = Counter()
    for part in opening["parts"]:
        kind, place = PartKind(part["name"]), (part["name"], part["where"], part["position"])
        seen[place] += 1
        like = [one["position"] for one in opening["parts"] if all(one[key] == part[key] for key in ("name", "where"))]
        side, member, is_one_of_several = _place(kind, part["position"], like)
        yield (
            PartIdentity(
                opening=opening["mark"],
                kind=kind,
                where=Where(part["where"]),
                side=side,
                member=member or seen[place],
                is_one_of_several=is_one_of_several,
            ),
            int(part["mark"].removeprefix(f"{opening['mark']}-")),
        )


def _place(kind: PartKind, position: str, like: Sequence[str]) -> tuple[Side, int | None, bool]:
    """Read where a part is from its words: its side; which one of several, where they say so.

    ``like``: the places of all parts of its kind.

    Raises:
        ValueError: no part of this kind is told to be there.
    """
    for side, is_on_wall in product(Side, (False, True)):
        said = position_words(kind, side, is_on_wall=is_on_wall)
        if position == said:
            return side, None, False
        count = sum(one.startswith(said) for one in like)
        for member in range(1, count + 1):
            if position == said + run_words(member, count):
                return side, member, is_one_of_several(kind, 1, count)
            if position == said + member_words(kind, member, count, is_on_wall=is_on_wall):
                return side, member, is_one_of_several(kind, count, None)
    raise ValueError(position)
