"""Where a pen puts plain entities: as objects of ezdxf, which its pictures need, or at once as the text of the file.

An object of ezdxf is asked for some twenty properties that none of ours has, when it is made and again when it is
saved. A drawing that is only saved has its plain entities as text from the start: a tenth of the time, the same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol, Self

from ezdxf.document import Drawing as Document
from ezdxf.entities.dxfentity import DXFEntity
from ezdxf.entities.mtext import export_mtext_content
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts.base import BaseLayout
from ezdxf.lldxf.tagwriter import AbstractTagWriter, TagCollector

from jambs.drawings.elements.paper import LINE_PITCH
from jambs.geometry import Point

MTEXT_PITCH = 5 / 3
"""From line to line of an MTEXT at line spacing factor 1, as a share of the text height (DXF reference, MTEXT)."""
SPACING = LINE_PITCH / MTEXT_PITCH
UPRIGHT_DEG = 90.0

ALIGN_CODES = {
    TextEntityAlignment.LEFT: "",
    TextEntityAlignment.CENTER: " 72\n1\n",
    TextEntityAlignment.RIGHT: " 72\n2\n",
}
"""Group 72 of a TEXT, left out where it is 0 (DXF reference, TEXT)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Type:
    """How letters are set: layer, text style, height [drawing units], upright or level."""

    layer: str
    style: str
    height: float
    upright: bool


class Space(Protocol):
    """A layout or a block that takes plain entities, all in drawing units."""

    @property
    def layout(self) -> BaseLayout:
        """The layout or block of ezdxf, for entities that are not plain."""

    def within(self, block: BaseLayout) -> Self:
        """Return the same kind of space for a block."""

    def line(self, start: Point, end: Point, layer: str) -> None:
        """Put a LINE."""

    def point(self, at: Point, layer: str) -> None:
        """Put a POINT."""

    def polyline(
        self, points: Sequence[Point], bulges: Sequence[float], layer: str, *, closed: bool = False, dash: float = 1.0
    ) -> None:
        """Put an LWPOLYLINE with a bulge at each point; ``dash`` scales its line type."""

    def solid(self, corners: Sequence[Point], layer: str) -> None:
        """Put a SOLID of three or four corners."""

    def mtext(self, lines: str, at: Point, attachment: int, set_in: Type) -> None:
        """Put an MTEXT, its lines parted by ``\\P``."""


@dataclass(frozen=True, slots=True)
class ObjectSpace:
    """Takes entities as objects of ezdxf: for pictures."""

    layout: BaseLayout

    def within(self, block: BaseLayout) -> ObjectSpace:
        """Return the same kind of space for a block."""
        return ObjectSpace(block)

    def line(self, start: Point, end: Point, layer: str) -> None:
        """Put a LINE."""
        self.layout.add_line(start, end, dxfattribs={"layer": layer})

    def point(self, at: Point, layer: str) -> None:
        """Put a POINT."""
        self.layout.add_point(at, dxfattribs={"layer": layer})

    def polyline(
        self, points: Sequence[Point], bulges: Sequence[float], layer: str, *, closed: bool = False, dash: float = 1.0
    ) -> None:
        """Put an LWPOLYLINE."""
        bulged = [(*point, bulge) for point, bulge in zip(points, bulges, strict=True)]
        self.layout.add_lwpolyline(bulged, format="xyb", close=closed, dxfattribs={"layer": layer, "ltscale": dash})

    def solid(self, corners: Sequence[Point], layer: str) -> None:
        """Put a SOLID."""
        self.layout.add_solid(corners, dxfattribs={"layer": layer})

    def mtext(self, lines: str, at: Point, attachment: int, set_in: Type) -> None:
        """Put an MTEXT."""
        attributes = {
            "layer": set_in.layer,
            "style": set_in.style,
            "char_height": set_in.height,
            "attachment_point": attachment,
            "insert": at,
            "rotation": UPRIGHT_DEG if set_in.upright else 0.0,
            "line_spacing_factor": SPACING,
        }
        self.layout.add_mtext(lines, dxfattribs=attributes)


class Written(DXFEntity):
    """Stands in a layout for entities that are written already, one after the other."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []

    def export_dxf(self, tagwriter: AbstractTagWriter) -> None:
        """Write the texts as they are."""
        tagwriter.write_str("".join(self.texts))


@dataclass(frozen=True, slots=True)
class TextSpace:
    """Takes entities as the text of a DXF file (DXF reference, ENTITIES section): for drawings that are only saved."""

    layout: BaseLayout

    def within(self, block: BaseLayout) -> TextSpace:
        """Return the same kind of space for a block."""
        return TextSpace(block)

    def line(self, start: Point, end: Point, layer: str) -> None:
        """Put a LINE."""
        self._put("LINE", layer, f"100\nAcDbLine\n{_at(10, start)}{_at(11, end)}")

    def point(self, at: Point, layer: str) -> None:
        """Put a POINT."""
        self._put("POINT", layer, f"100\nAcDbPoint\n{_at(10, at)}")

    def polyline(
        self, points: Sequence[Point], bulges: Sequence[float], layer: str, *, closed: bool = False, dash: float = 1.0
    ) -> None:
        """Put an LWPOLYLINE."""
        scaled = "" if dash == 1.0 else f" 48\n{float(dash)}\n"
        corners = "".join(
            f" 10\n{x}\n 20\n{y}\n" + (f" 42\n{float(bulge)}\n" if bulge else "")
            for (x, y), bulge in zip(points, bulges, strict=True)
        )
        count = f" 90\n{len(points)}\n 70\n{int(closed)}\n"
        self._put("LWPOLYLINE", layer, f"{scaled}100\nAcDbPolyline\n{count}{corners}")

    def solid(self, corners: Sequence[Point], layer: str) -> None:
        """Put a SOLID; of three corners the last stands twice."""
        four = (*corners, corners[-1])[:4]
        self._put("SOLID", layer, "100\nAcDbTrace\n" + "".join(_at(10 + n, one) for n, one in enumerate(four)))

    def mtext(self, lines: str, at: Point, attachment: int, set_in: Type) -> None:
        """Put an MTEXT."""
        head = f"100\nAcDbMText\n{_at(10, at)} 40\n{set_in.height}\n 71\n{attachment}\n"
        foot = f"  7\n{set_in.style}\n{_turned(set_in)} 44\n{SPACING}\n"
        self._put("MTEXT", set_in.layer, f"{head}{_mtext_content(lines)}{foot}")

    def text(self, line: str, at: Point, align: TextEntityAlignment, set_in: Type) -> None:
        """Put a TEXT of one line; one that ends in ``^`` would take the line end with it."""
        words = line.replace("\n", "").replace("\r", "").rstrip("^")
        body = f"100\nAcDbText\n{_at(10, at)} 40\n{set_in.height}\n  1\n{words}\n{_turned(set_in)}  7\n{set_in.style}\n"
        self._put("TEXT", set_in.layer, f"{body}{ALIGN_CODES[align]}{_at(11, at)}100\nAcDbText\n")

    def _put(self, kind: str, layer: str, body: str) -> None:
        document: Document = self.layout.doc
        head = f"  0\n{kind}\n  5\n{document.entitydb.next_handle()}\n330\n{self.layout.layout_key}\n"
        self._written().texts.append(f"{head}100\nAcDbEntity\n  8\n{layer}\n{body}")

    def _written(self) -> Written:
        entities = self.layout.entity_space.entities
        if not entities or not isinstance(entities[-1], Written):
            self.layout.entity_space.add(Written())
        last = entities[-1]
        assert isinstance(last, Written)
        return last


def _at(code: int, point: Point) -> str:
    return f" {code}\n{point[0]}\n {code + 10}\n{point[1]}\n {code + 20}\n0.0\n"


def _turned(set_in: Type) -> str:
    return f" 50\n{UPRIGHT_DEG}\n" if set_in.upright else ""


def _mtext_content(lines: str) -> str:
    """Return the text in pieces of the length that DXF allows."""
    if len(lines) < 250 and "\n" not in lines and "\r" not in lines:
        return f"  1\n{lines}\n"
    collected = TagCollector()
    export_mtext_content(lines, collected)
    return "".join(tag.dxfstr() for tag in collected.tags)
