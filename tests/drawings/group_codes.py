"""A small reader of DXF as text: pairs of group code and value. It shares no code with the library that writes.

Form of the file: DXF reference, "DXF file structure": each group is two lines, the code and the value.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path


@dataclass
class Entity:
    kind: str
    groups: list[tuple[int, str]] = field(default_factory=list)

    def text(self, code: int) -> str:
        return next(value for found, value in self.groups if found == code)

    def number(self, code: int) -> float:
        return float(self.text(code))

    def has(self, code: int) -> bool:
        return any(found == code for found, _ in self.groups)

    @property
    def in_paper(self) -> bool:
        return self.has(67) and self.text(67).strip() == "1"


def pairs(path: Path) -> list[tuple[int, str]]:
    lines = path.read_text(encoding="utf-8").split("\n")
    return [(int(code), value) for code, value in zip(lines[0::2], lines[1::2], strict=False) if code.strip()]


def sections(path: Path) -> dict[str, list[Entity]]:
    """The entities of each section; groups before the first entity belong to none."""
    found: dict[str, list[Entity]] = {}
    name = ""
    groups = pairs(path)
    for index, (code, value) in enumerate(groups):
        if code == 0 and value == "SECTION":
            name = groups[index + 1][1]
            found[name] = []
        elif code == 0 and value not in ("ENDSEC", "EOF"):
            found[name].append(Entity(value))
        elif name and code != 0 and found.get(name):
            found[name][-1].groups.append((code, value))
    return found


def header(path: Path) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    name = ""
    for code, value in pairs(path):
        if code == 9:
            name = value
            found[name] = []
        elif code == 0 and value == "ENDSEC":
            return found
        elif name:
            found[name].append(value)
    return found
