"""Keys of the job file in sentences for a screen: there each has a field, and is called as its field is."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from jambs.screen.form_keys import key_tables
from jambs.values import Record


def spoken(sentence: str) -> str:
    """Return a sentence with the keys that it says as their fields are named: ``from_left`` is “from left”.

    What only looks like a key, as a name of the user's may, stays as it is.
    """
    return _keys().sub(lambda found: f"“{found[0].replace('_', ' ')}”", sentence)


def spoken_records(records: Iterable[Record]) -> list[Record]:
    """Return findings with the keys in their texts as their fields are named."""
    return [{**one, "text": spoken(one["text"])} for one in records]


@cache
def _keys() -> re.Pattern[str]:
    names = {line["key"] for lines in key_tables().values() for line in lines if "_" in line["key"]}
    return re.compile(rf"(?<![\w./'\"])(?:{'|'.join(sorted(names, key=len, reverse=True))})(?![\w.])")
