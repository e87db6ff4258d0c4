"""What a cut file is drawn with: layers by the work they ask for, strokes and words on them; inches."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum

from jambs.geometry import Point


class Work(Enum):
    """What a machine does along the outlines of a layer."""

    CUT = "CUT"
    POCKET = "POCKET"
    BEVEL = "BEVEL"
    ENGRAVE = "ENGRAVE"
    GRAIN = "GRAIN"
    NOTE = "NOTE"
    OUTLINE = "OUTLINE"
    SHEET = "SHEET"


_BEHIND = {Work.POCKET: "DEEP"}


@dataclass(frozen=True, slots=True, kw_only=True)
class CutLayer:
    """A layer of a cut file: the work, the size that goes with it, and whether it is shown when the file is opened.

    ``size``: how deep or how many degrees, as words.
    """

    work: Work
    size: str = ""
    is_on: bool = True

    @property
    def name(self) -> str:
        """The layer's name: ``POCKET 3-8 DEEP``. No name of a layer may hold a slash or an inch mark."""
        words = (self.work.value, self.size.replace("/", "-").replace('"', "").upper(), _BEHIND.get(self.work, ""))
        return " ".join(word for word in words if word)

    @property
    def old_name(self) -> str:
        """The name in the oldest files, where it holds no space and no point either: ``POCKET_3-8_DEEP``."""
        return self.name.replace(" ", "_").replace(".", "_")


ENGRAVED = CutLayer(work=Work.ENGRAVE)
CUT, GRAIN, NOTE = CutLayer(work=Work.CUT), CutLayer(work=Work.GRAIN), CutLayer(work=Work.NOTE)
OUTLINE, SHEET = CutLayer(work=Work.OUTLINE), CutLayer(work=Work.SHEET)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A line on a layer [in]; what is closed is an outline, counter-clockwise.

    ``bulges``: tangent of a quarter of the arc from each point on, where pieces are arcs; 0 of a straight piece.
    """

    layer: CutLayer
    points: tuple[Point, ...]
    is_closed: bool = True
    bulges: tuple[float, ...] = ()

    def moved(self, u: float, v: float) -> Stroke:
        """Return the stroke moved along and across [in]."""
        return replace(self, points=tuple((x + u, y + v) for x, y in self.points))


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """A line of words on a layer: its lower left corner and the height of its letters [in]."""

    layer: CutLayer
    text: str
    at: Point
    height: float
