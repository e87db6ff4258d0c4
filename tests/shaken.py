"""Jobs in which every size is a little another one, so that no two sizes of a kit are alike and no term cancels.

Sizes of the tests' jobs are round and often the same: a jamb and a casing of 3/4, shims of 1/4 all round. What is added
in place of another size, or left out, is then not seen. Here each size of a job is moved by a few steps of its own, the
same ones in every run.
"""

from __future__ import annotations

import copy
import dataclasses
import random
import re
import zlib
from collections.abc import Iterator, Mapping
from enum import Enum
from fractions import Fraction
from typing import Any

LEFT = {
    "spacing",
    "share",
    "frames",
    "stack",
    "year_built",
    "panes",
    "longest",
    "grid",
    "framing_grid",
    "site",
    "glass",
}
LEFT |= {"shape", "units", "mull", "transom", "transoms", "profile", "tenon", "groove", "panel", "lengths"}
LEFT |= {"taper_tolerance"}
"""Keys whose values are no sizes of boards, or have to go with others: units in a row, the sides of a shape."""
LENGTH = re.compile(r"(?:(\d+) )?(\d+)(?:/(\d+))?(\.\d+)?")
ANGLE = re.compile(r"(\d+) deg")
STEPS = (-3, -2, -1, 0, 1, 2, 3)


def shaken(data: Mapping[str, Any], number: int) -> dict[str, Any]:
    """Return a job with every size moved by up to three steps, of a 32nd of an inch or a millimeter."""
    step = Fraction(1) if data["units"] == "mm" else Fraction(1, 32)
    chance = random.Random(number)
    moved = {key: _moved(copy.deepcopy(value), key, step, chance) for key, value in data.items()}
    return {**moved, "openings": _in_line(moved["openings"])}


def _in_line(openings: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Give openings that are trimmed as one height and sill of the first: one head and one stool lie over all."""
    if not any("trim_with" in one for one in openings):
        return openings
    _, height = openings[0]["frame"].split(" x ")
    level = {"sill_height": openings[0]["sill_height"]}
    return [{**one, **level, "frame": f"{one['frame'].split(' x ')[0]} x {height}"} for one in openings]


def _as_one(flare: dict[str, str], key: str, step: Fraction, chance: random.Random) -> dict[str, str]:
    """Move a flare that is the same all round by one step: an arc's jambs lie on one cone."""
    moved = _moved(next(iter(flare.values())), key, step, chance)
    return dict.fromkeys(flare, moved)


def _moved(value: Any, key: str, step: Fraction, chance: random.Random) -> Any:
    if key in LEFT or (isinstance(value, list) and key in ("head", "sill", "left", "right")):
        return value  # readings of two sides share a corner
    if isinstance(value, dict):
        if key == "flare" and len(value) > 1 and len(set(value.values())) == 1:
            return _as_one(value, key, step, chance)
        stay = ("frame",) if "shape" in value else ("casing",) if "profile" in value else ()
        return {name: one if name in stay else _moved(one, name, step, chance) for name, one in value.items()}
    if isinstance(value, list):
        return [_moved(one, key, step, chance) for one in value]
    if not isinstance(value, str):
        return value
    by = STEPS[int(chance.random() * len(STEPS))]
    if " x " in value:
        return " x ".join(_longer(one, by * step) for one in value.split(" x "))
    if angle := ANGLE.fullmatch(value):
        return f"{max(1, int(angle[1]) + by)} deg"
    return _longer(value, by * step)


def _longer(text: str, by: Fraction) -> str:
    """Move a length; what is none, or would be nothing, stays."""
    found = LENGTH.fullmatch(text)
    if not found:
        return text
    whole, over, under, rest = found.groups()
    size = Fraction(int(whole or 0)) + Fraction(int(over), int(under or 1)) + Fraction(rest or 0)
    return f"{float(size + by):.6f}" if size + by > 0 and size else text


def plain(value: Any) -> Any:
    """Return a value as JSON has it, to a hundred-thousandth."""
    if isinstance(value, Enum):
        return value.name
    if isinstance(value, float):
        return round(float(value), 5) + 0.0
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return [type(value).__name__, *(plain(getattr(value, one.name)) for one in dataclasses.fields(value))]
    if isinstance(value, Mapping):
        return [[plain(key), plain(one)] for key, one in value.items()]
    if isinstance(value, list | tuple):
        return [plain(one) for one in value]
    return value if value is None or isinstance(value, str | int) else str(value)


def digest(told: Any) -> list[float]:
    """Return what plain values come to: how many figures, two sums of them, and a check sum of all words."""
    numbers, texts = list[float](), list[str]()
    for one in _leaves(told):
        (texts if isinstance(one, str) else numbers).append(one)
    weighed = sum(one * (1 + place % 89 / 89) for place, one in enumerate(numbers))
    words = zlib.crc32("\n".join(texts).encode())
    return [len(numbers), round(sum(numbers), 4) + 0.0, round(weighed, 4) + 0.0, words]


def _leaves(value: Any) -> Iterator[Any]:
    if isinstance(value, Mapping):
        for key, one in value.items():
            yield str(key)
            yield from _leaves(one)
    elif isinstance(value, list | tuple):
        yield f"{len(value)}"
        for one in value:
            yield from _leaves(one)
    elif value is None or isinstance(value, bool):
        yield str(value)
    else:
        yield value


def differences(was: Any, now: Any, close: float, where: str = "") -> list[str]:
    """Name every value that is another one now."""
    if isinstance(was, list) and isinstance(now, list) and len(was) == len(now):
        pairs = enumerate(zip(was, now, strict=True))
        return [text for number, pair in pairs for text in differences(*pair, close, f"{where}[{number}]")]
    if isinstance(was, float) and isinstance(now, float) and abs(was - now) <= close:
        return []
    return [] if was == now else [f"{where}: {was} is {now} now"]
