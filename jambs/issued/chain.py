"""The chain of entries on disk: read, held against its hashes, healed from second copies, gaps found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from jambs.findings import Finding
from jambs.issued.blobs import Blobs
from jambs.issued.durable import sha256_of
from jambs.issued.entry import Entry
from jambs.issued.entry_file import entry_bytes, read_entry
from jambs.issued.errors import Unreadable
from jambs.issued.findings import EntryChanged, EntryMissing, EntryUnreadable
from jambs.issued.witness import Witness

ASIDE = "set aside"
DIGITS = 5
"""Digits in the name of an entry's file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Damage:
    """An entry that is not there, or not as it was written. ``why``: in a few words, like *cut short*."""

    number: int
    why: Finding


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryChain:
    """What was read: entries by number, copies that heal a damaged file, what is damaged beyond that.

    ``known_lost``: numbers of entries that were reported lost before.
    """

    entries: Mapping[int, Entry]
    healed: Mapping[int, bytes]
    damaged: tuple[Damage, ...]
    known_lost: frozenset[int]

    @property
    def last_number(self) -> int:
        """The highest number that any entry had, also a lost one."""
        return max((*self.entries, *(one.number for one in self.damaged), *self.known_lost), default=0)


def entry_file(folder: Path, number: int) -> Path:
    """Return the file of an entry in a folder of entries."""
    return folder / f"{number:0{DIGITS}}.json"


def entry_numbers(folder: Path) -> list[int]:
    """Return the numbers of the entries in a folder, ascending."""
    return sorted(int(file.stem) for file in folder.glob(f"{'[0-9]' * DIGITS}.json"))


def _aside(folder: Path) -> list[int]:
    """Return the numbers of the entries that were set aside."""
    names = (file.name[:DIGITS] for file in (folder.parent / ASIDE).glob(f"{'[0-9]' * DIGITS}*.json"))
    return [int(name) for name in names]


def read_chain(folder: Path, blobs: Blobs, witness: Witness | None) -> EntryChain:
    """Read all entries of a folder, the last one first, so that each is known by the hash in the one after it.

    What was set aside before tells of entries at the end that nothing else remembers.
    """
    wanted: dict[int, str] = {}
    copies: dict[int, bytes] = {}
    if witness:
        copies[witness.entry.number] = entry_bytes(witness.entry)
        wanted[witness.entry.number] = sha256_of(copies[witness.entry.number])
    entries, healed, damaged, lost = {}, {}, [], set[int]()
    numbers = entry_numbers(folder)
    for number in range(max((*numbers, *wanted, *_aside(folder)), default=0), 0, -1):
        if number in lost and number not in numbers:
            continue
        try:
            content = _content(entry_file(folder, number))
            entry = _checked(content, number, wanted.get(number))
        except Unreadable as error:
            content = copies.get(number) or blobs.found(wanted.get(number, "")) or b""
            try:
                entry = _checked(content, number, wanted.get(number))
            except Unreadable:
                if number not in lost:
                    damaged.append(Damage(number=number, why=error.findings[0]))
                continue
            healed[number] = content
        entries[number] = entry
        lost.update(entry.lost)
        before = _before(entry)
        if before and entry.previous:
            wanted.setdefault(before, entry.previous)
    return EntryChain(
        entries=dict(sorted(entries.items())),
        healed=healed,
        damaged=tuple(sorted(damaged, key=lambda one: one.number)),
        known_lost=frozenset(lost),
    )


def _content(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except FileNotFoundError:
        raise Unreadable(EntryMissing()) from None
    except OSError as error:
        raise Unreadable(EntryUnreadable(why=str(error.strerror))) from None


def _checked(content: bytes, number: int, wanted: str | None) -> Entry:
    entry = read_entry(content)
    if entry.number != number or (wanted and sha256_of(content) != wanted):
        raise Unreadable(EntryChanged())
    return entry


def _before(entry: Entry) -> int:
    """Return the number of the entry whose hash an entry names: the nearest one before that was not lost then."""
    number = entry.number - 1
    while number in entry.lost:
        number -= 1
    return number
