"""Openings trimmed as one: each in a rough opening of its own, framed wall between, head, stool and sill over all.

The opening at the left, as seen from inside, has the boards that lie on the wall and go past all of them; each has its
own window, hole in the framing, jamb boxes, readings and papers.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from pydantic import model_validator

from jambs.job.models.fields import BoardWidth, Mark, ModelOrText, fault


class TrimWithEntry(ModelOrText):
    """The opening at the left, as seen from inside, with which this one is trimmed as one.

    ``wall``: framed wall between them, hole in the framing → hole in the framing, its studs among it [in].
    """

    right_of: Mark
    wall: BoardWidth

    @model_validator(mode="before")
    @classmethod
    def _one_text(cls, value: Any) -> Any:
        """Read ``5 1/2 right of W3``, as a cell of a schedule holds it."""
        if isinstance(value, dict | TrimWithEntry):
            return value
        found = re.fullmatch(r"(.+?)\s+right\s+of\s+(.+)", str(value).strip())
        if not found:
            raise fault(f"{value!r} does not say both; write {{right_of: W3, wall: 5 1/2}}, or 5 1/2 right of W3")
        return {"wall": found[1], "right_of": found[2]}


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimRun:
    """The marks of all openings that are trimmed as one, left to right as seen from inside.

    ``walls``: framed wall between each and the next one, hole → hole [in].
    """

    marks: tuple[str, ...]
    walls: tuple[float, ...]

    @property
    def lead(self) -> str:
        """The mark of the opening that has the boards over all: the leftmost."""
        return self.marks[0]

    def others(self, mark: str) -> tuple[str, ...]:
        """Return the marks of the openings beside one."""
        return tuple(one for one in self.marks if one != mark)
