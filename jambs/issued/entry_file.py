"""An entry as it stands in its file: written always alike, read as input that may hold anything."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from functools import lru_cache
from typing import Any, TypeVar

from jambs.issued.durable import is_blank
from jambs.issued.entry import Entry, IssuedSheet, JobIdentity, WrittenPaper
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.findings import FileCutShort, FileEmpty, ItemOfAnotherKind, LaterFormat, NoEntry, NoRecordText
from jambs.issued.paths import safe_path

FORMAT, VERSION = "jambs record", 2
"""Version 1 is the earlier format, one file an issue."""
SHA256 = 64
"""Digits of a sha256."""
MOST_ENTRIES = 100_000
KEPT_ENTRIES, KEPT_PAPERS = 512, 16_384
"""So many entries and papers are kept as they were read, as long as the program runs."""
Kind = TypeVar("Kind")
KINDS = {str: "a text", int: "a whole number", bool: "true or false", dict: "a set of names", list: "a list"}


def entry_bytes(entry: Entry) -> bytes:
    """Return the file of an entry: the same bytes for the same entry."""
    plain = {"format": FORMAT, "version": VERSION, **asdict(entry)}
    for paper in plain["papers"].values():
        if not paper["basis"]:  # as it was written before papers knew what they were made from
            del paper["basis"]
    return (json.dumps(plain, indent=1, ensure_ascii=False) + "\n").encode("utf-8")


@lru_cache(maxsize=KEPT_ENTRIES)
def read_entry(content: bytes) -> Entry:
    """Read the file of an entry; the same bytes are read once, a verb looks at its record several times.

    Raises:
        Unreadable: it is damaged, or holds what no entry holds.
        RecordError: it was written by a later version.
    """
    plain = read_plain(content)
    if plain.get("format") != FORMAT:
        raise Unreadable(NoEntry())
    version = item(plain, "version", int)
    if version > VERSION:
        raise RecordError(LaterFormat(version=version))
    return Entry(
        number=_number(plain),
        previous=item(plain, "previous", str),
        verb=item(plain, "verb", str),
        day=item(plain, "day", str),
        job=_job(item(plain, "job", dict)),
        issue=item(plain, "issue", int),
        is_issue=item(plain, "is_issue", bool),
        lost=items(plain, "lost", int),
        sheets={mark: sheet_of(one) for mark, one in item(plain, "sheets", dict).items()},
        papers={path: _paper(path, one) for path, one in item(plain, "papers", dict).items()},
        documents=sums(plain, "documents"),
        same_as=None if plain.get("same_as") is None else item(plain, "same_as", int),
        changed=items(plain, "changed", str),
        why=texts(plain, "why"),
    )


def read_plain(content: bytes) -> dict[str, Any]:
    """Read a file of the record as far as JSON goes.

    Raises:
        Unreadable: it is empty, full of zeros, cut short or otherwise no set of names.
    """
    if is_blank(content):
        raise Unreadable(FileEmpty(zeros=bool(content)))
    try:
        plain = json.loads(content.decode("utf-8"))
    except (ValueError, RecursionError):
        is_short = content.lstrip()[:1] == b"{" and not content.rstrip().endswith(b"}")
        raise Unreadable(FileCutShort() if is_short else NoRecordText()) from None
    if not isinstance(plain, dict):
        raise Unreadable(NoRecordText())
    return plain


def item(plain: Mapping[str, Any], name: str, kind: type[Kind]) -> Kind:
    """Return one value of an object if it is of the kind.

    Raises:
        Unreadable: it is missing or of another kind.
    """
    found = plain.get(name)
    if not isinstance(found, kind) or (kind is int and isinstance(found, bool)):
        raise Unreadable(ItemOfAnotherKind(name=name, wanted=KINDS[kind]))
    return found


def items(plain: Mapping[str, Any], name: str, kind: type[Kind]) -> tuple[Kind, ...]:
    """Return a list of values of one kind."""
    return tuple(item({name: one}, name, kind) for one in item(plain, name, list))


def texts(plain: Mapping[str, Any], name: str) -> dict[str, str]:
    """Return a set of texts by name."""
    return {key: item({key: one}, key, str) for key, one in item(plain, name, dict).items()}


def sums(plain: Mapping[str, Any], name: str) -> dict[str, str]:
    """Return a set of sha256 by name."""
    return {key: sha256_item({key: one}, key) for key, one in item(plain, name, dict).items()}


def sha256_item(plain: Mapping[str, Any], name: str) -> str:
    """Return a value that names kept content; it can name nothing else, so that it leads nowhere."""
    found = item(plain, name, str)
    if len(found) != SHA256 or not set(found) <= set("0123456789abcdef"):
        raise Unreadable(ItemOfAnotherKind(name=name, wanted="a sha256"))
    return found


def sheet_of(plain: object) -> IssuedSheet:
    """Read the sheets of one opening."""
    one = item({"sheet": plain}, "sheet", dict)
    return IssuedSheet(
        number=item(one, "number", int),
        day=item(one, "day", str),
        code=item(one, "code", str),
        key=item(one, "key", str),
    )


def _number(plain: Mapping[str, Any]) -> int:
    number = item(plain, "number", int)
    if not 0 < number < MOST_ENTRIES:
        raise Unreadable(ItemOfAnotherKind(name=str(number), wanted="a number of an entry"))
    return number


def _job(plain: Mapping[str, Any]) -> JobIdentity:
    return JobIdentity(name=item(plain, "name", str), file=item(plain, "file", str))


def _paper(path: str, plain: object) -> WrittenPaper:
    """Read one paper; most stand alike in many entries and are checked once."""
    one = item({"paper": plain}, "paper", dict)
    marks = one.get("marks")
    try:
        values = (one.get(name) for name in ("sha256", "kind", "verb", "issue", "basis"))
        return _known_paper(path, *values, marks=tuple(marks) if isinstance(marks, list) else marks)
    except TypeError:  # a value that is no text and no number
        raise Unreadable(ItemOfAnotherKind(name=path, wanted="a paper")) from None


@lru_cache(maxsize=KEPT_PAPERS, typed=True)
def _known_paper(path: str, sha256: Any, kind: Any, verb: Any, issue: Any, basis: Any, *, marks: Any) -> WrittenPaper:
    safe_path(path)
    one = {"sha256": sha256, "kind": kind, "verb": verb, "issue": issue}
    one["marks"] = list(marks) if isinstance(marks, tuple) else marks
    return WrittenPaper(
        sha256=sha256_item(one, "sha256"),
        kind=item(one, "kind", str),
        marks=items(one, "marks", str),
        verb=item(one, "verb", str),
        issue=item(one, "issue", int),
        basis="" if basis is None else sha256_item({"basis": basis}, "basis"),
    )
