"""The witness: the last entry once more, outside the record's folder, and which issue somebody has been told of.

It is what is left when the record is gone, and what the record's last entry is held against.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from jambs.issued.durable import write_durably
from jambs.issued.entry import Entry
from jambs.issued.entry_file import entry_bytes, item, read_entry, read_plain
from jambs.issued.errors import Unreadable
from jambs.issued.paths import FOLDER, WITNESS

FORMAT = "jambs witness"


@dataclass(frozen=True, slots=True, kw_only=True)
class Witness:
    """The last entry; ``told``: the last issue whose changes were shown."""

    entry: Entry
    told: int


def read_witness(folder: Path) -> Witness | None:
    """Return the witness of a folder; None where there is none, or a damaged one: it is written anew by and by."""
    try:
        plain = read_plain((folder / WITNESS).read_bytes())
        if plain.get("format") != FORMAT:
            return None
        return Witness(entry=read_entry(item(plain, "entry", str).encode("utf-8")), told=item(plain, "told", int))
    except (OSError, Unreadable):
        return None


def write_witness(folder: Path, witness: Witness) -> None:
    """Write the witness of a folder."""
    plain = {"format": FORMAT, "told": witness.told, "entry": entry_bytes(witness.entry).decode("utf-8")}
    content = (json.dumps(plain, indent=1, ensure_ascii=False) + "\n").encode("utf-8")
    write_durably(folder / WITNESS, content, by=folder / FOLDER)
