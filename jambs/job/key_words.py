"""What every key of a job file means: from which face to which face, and the picture that shows it."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

TOP = ("JobEntry", "OutsideEntry")
"""Models whose keys stand at the top of the file, beside the sections."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyWords:
    """A key of a model: what it means in words, and the name of the picture it is drawn on (empty: on none)."""

    model: str
    key: str
    words: str
    picture: str

    @property
    def told(self) -> str:
        """The meaning as a sentence goes on with it: ``edge A → edge B (see `jambs keys depths`)``."""
        return f"{self.words} (see `jambs keys {self.picture}`)" if self.picture else self.words


@cache
def key_words() -> Mapping[tuple[str, str], KeyWords]:
    """Return the words of all keys, by model and key, in the order of a job file."""
    text = files("jambs.data").joinpath("keys.csv").read_text(encoding="utf-8")
    rows = (KeyWords(**row) for row in csv.DictReader(text.splitlines()))
    return {(row.model, row.key): row for row in rows}


def words_of(model: str, key: str) -> KeyWords | None:
    """Return the words of a key, if the table has them."""
    return key_words().get(("JobFile" if model in TOP else model, key))


def missing(model: str, key: str, *, name: str = "") -> str:
    """Say that a key is missing and what belongs there; ``name``: what the file calls it, a column perhaps."""
    found = words_of(model, key)
    said = f"{name or key} is missing; add it: {found.told}" if found else f"{name or key} is missing; add it"
    other = words_of(model, INSTEAD.get(key, ""))
    return f"{said}; or {other.key}: {other.words}" if other else said


INSTEAD = {"jamb_depth": "frame_depth", "frame_projection": "flange_set_back"}
"""Keys that say the same in another way, as makers' sheets have it."""


PLACES = {
    "JobFile": "at the top of the job file",
    "SiteEntry": "under site",
    "Shop": "under shop",
    "Limits": "under limits",
    "ElevationEntry": "with an elevation, under elevations",
    "WallEntry": "with a wall, under walls",
    "LayerEntry": "with a layer of a wall",
    "PositionRule": "in a position",
    "WindowType": "with a window, under windows",
    "InteriorTrim": "with a trim, under interior_trim",
    "ExteriorTrim": "with a trim, under exterior_trim",
    "OpeningEntry": "with an opening, under openings",
}
"""Where the keys of a model stand in a job file."""


def elsewhere(model: str, found: str) -> KeyWords | None:
    """Return the key of that very name that stands in another place of the job file; one of two places is none."""
    owners = [row for row in key_words().values() if row.key == "_".join(_parts(found))]
    alone = owners[0] if len(owners) == 1 and owners[0].model != model else None
    return alone if alone and alone.model in PLACES else None


def related(model: str, found: str, keys: Iterable[str]) -> list[KeyWords]:
    """Return the keys of a model that share a word with one it does not know, those that end alike first."""
    words = _parts(found)
    near = [key for key in keys if set(words) & set(_parts(key))]
    near.sort(key=lambda key: _parts(key)[-1] != words[-1])
    return [known for key in near if (known := words_of(model, key))]


def _parts(key: str) -> list[str]:
    return key.lower().replace("-", " ").replace("_", " ").split() or [""]
