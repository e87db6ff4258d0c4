"""Cut files as DXF: R2010, which tells its units, and R12, which every machine reads.

What stands in a file beside its entities is the same in all files of the same layers; it is made once.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cache
from io import StringIO

from ezdxf.document import Drawing as Document
from ezdxf.lldxf.tagwriter import TagWriter

from jambs.drawings.cut_files.figure import CutFigure
from jambs.drawings.cut_files.layers import CutLayer, Work
from jambs.drawings.dxf.document import INSERT_UNITS, MEASUREMENT, repeatable, unit_factor
from jambs.drawings.dxf.finishing import set_paper
from jambs.length import Units


class Release(Enum):
    """The release of DXF that a cut file is written in."""

    R2010 = "R2010"
    R12 = "R12"


COLORS = {
    Work.CUT: 1,
    Work.POCKET: 5,
    Work.BEVEL: 6,
    Work.ENGRAVE: 3,
    Work.GRAIN: 8,
    Work.NOTE: 8,
    Work.OUTLINE: 9,
    Work.SHEET: 9,
}
"""Color numbers: work in strong ones, what is only to be read in gray."""
FIRST_HANDLE, NEXT_HANDLE = "1000", "FFFF"
"""Where the handles of the entities begin, past all handles of the frame of a file; and where they have all ended."""
WIDE, HIGH, HALF_WIDE, HALF_HIGH = "98765.4321", "87654.3219", "76543.2198", "65432.1987"
"""Stand for the size of the drawing, and for its middle, in the frame of a file until they are known."""
DECIMAL, DIGITS_SHOWN = 2, 6
"""$LUNITS and $LUPREC."""
PLACES = 12
"""Digits of the corners in the head of a file."""


@dataclass(frozen=True, slots=True)
class Frame:
    """A document without entities, and its text before and behind them."""

    document: Document
    head: str
    tail: str


def cut_file(figure: CutFigure, *, units: Units, release: Release) -> str:
    """Return a cut file as the text of a DXF."""
    frame = _frame(figure.layers, units, release)
    with repeatable():
        entities = _entities(figure, frame.document, unit_factor(units), release)
    wide, high = figure.shown
    texts = {WIDE: wide, HIGH: high, HALF_WIDE: wide / 2, HALF_HIGH: high / 2}
    head, tail = frame.head, frame.tail
    for stands_for, size in texts.items():
        text = repr(round(size * unit_factor(units), PLACES))
        head, tail = head.replace(stands_for, text), tail.replace(stands_for, text)
    return head + entities + tail


@cache
def _frame(layers: tuple[CutLayer, ...], units: Units, release: Release) -> Frame:
    with repeatable():
        document = Document.new(release.value)
        if release is Release.R2010:  # the older release has no word for units; the notes in the file say them
            document.header["$INSUNITS"] = INSERT_UNITS[units]
            document.header["$MEASUREMENT"] = MEASUREMENT[units]
        document.header["$LUNITS"] = DECIMAL
        document.header["$LUPREC"] = DIGITS_SHOWN
        for layer in layers:
            made = document.layers.add(_name(layer, release), color=COLORS[layer.work])
            if not layer.is_on:
                made.off()
        corner = (float(WIDE), float(HIGH))
        document.header["$EXTMIN"], document.header["$EXTMAX"] = (0.0, 0.0, 0.0), (*corner, 0.0)
        document.modelspace().reset_extents((0.0, 0.0, 0.0), (*corner, 0.0))
        document.modelspace().reset_limits((0.0, 0.0), corner)
        document.set_modelspace_vport(height=float(WIDE), center=(float(HALF_WIDE), float(HALF_HIGH)))
        set_paper(document, units)
        document.entitydb.handles.reset(NEXT_HANDLE)
        stream = StringIO()
        for name in sorted(document.entitydb.dxf_types_in_use()):  # else in the order of a set, another in every run
            document.classes.add_class(name)
        document.write(stream)
    head, mark, tail = stream.getvalue().partition(_START)
    return Frame(document=document, head=head + mark, tail=tail)


_START = "  2\nENTITIES\n"
"""What entities stand behind."""


def _entities(figure: CutFigure, document: Document, unit: float, release: Release) -> str:
    """Return the text of all entities of a figure."""
    document.entitydb.handles.reset(FIRST_HANDLE)
    space = document.modelspace()
    for stroke in figure.strokes:
        points: list[tuple[float, ...]] = [(x * unit, y * unit) for x, y in stroke.points]
        if stroke.bulges:
            points = [(*point, bulge) for point, bulge in zip(points, stroke.bulges, strict=True)]
        form = "xyb" if stroke.bulges else "xy"
        given = {"layer": _name(stroke.layer, release)}
        if release is Release.R12:
            space.add_polyline2d(points, format=form, close=stroke.is_closed, dxfattribs=given)
        else:
            space.add_lwpolyline(points, format=form, close=stroke.is_closed, dxfattribs=given)
    for words in figure.words:
        at = (words.at[0] * unit, words.at[1] * unit)
        text = space.add_text(words.text, height=words.height * unit, dxfattribs={"layer": _name(words.layer, release)})
        text.set_placement(at)
    stream = StringIO()
    space.entity_space.export_dxf(TagWriter(stream, dxfversion=document.dxfversion))
    space.delete_all_entities()
    document.entitydb.purge()
    return stream.getvalue()


def _name(layer: CutLayer, release: Release) -> str:
    return layer.old_name if release is Release.R12 else layer.name
