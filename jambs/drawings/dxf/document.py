"""An empty DXF document with our layers, line types, text and dimension styles."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from ezdxf._options import options
from ezdxf.document import Drawing as Document
from ezdxf.filemanagement import new

from jambs.drawings.dxf.finishing import drop_idle_layers, write_suffixes
from jambs.drawings.dxf.fonts import use_bundled_fonts
from jambs.drawings.elements.paper import Scale
from jambs.drawings.elements.view import Ink
from jambs.issue_stamp import IssueStamp
from jambs.length import MM_PER_INCH, Units

VERSION = "R2010"
STYLE, BOLD_STYLE = "SHOP", "SHOP-BOLD"
BORDER, VIEWPORTS = "BORDER", "VIEWPORTS"

LAYERS: dict[str, tuple[int, int]] = {
    Ink.FRAMING: (8, 35),
    Ink.LAYERS: (8, 35),
    Ink.INSULATION: (8, 35),
    Ink.BUCK: (7, 35),
    Ink.WINDOW: (5, 50),
    Ink.GLASS: (140, 25),
    Ink.SYMBOL: (8, 13),
    Ink.SEEN_WINDOW: (5, 25),
    Ink.SEEN_INSIDE: (7, 25),
    Ink.SEEN_OUTSIDE: (7, 25),
    Ink.TRIM_INSIDE: (7, 50),
    Ink.TRIM_OUTSIDE: (7, 50),
    Ink.FLASHING: (7, 50),
    Ink.SHIM: (8, 25),
    Ink.SEALANT: (8, 25),
    Ink.HATCH_WALL: (9, 13),
    Ink.HATCH_TRIM: (8, 13),
    Ink.HIDDEN: (8, 20),
    Ink.DIMENSION: (7, 15),
    Ink.NOTE: (7, 15),
    Ink.TEXT: (7, 25),
    Ink.TITLE: (7, 25),
    Ink.COURSE: (8, 18),
    Ink.MISSED: (1, 35),
    Ink.MEMBRANE: (7, 50),
    Ink.AIR_CONTROL: (1, 50),
    Ink.FASTENER: (8, 25),
    BORDER: (7, 70),
    VIEWPORTS: (9, 9),
}
"""Color number and line weight [1/100 mm] of every layer.

The order of weights tells what is what where all is plotted in black: what is cut (0.5 wood and frame, 0.35 wall),
edges that are seen (0.25), hidden ones (0.2), dimensions (0.15), hatches (0.13 mm).
"""
BROKEN = {Ink.HIDDEN: "HIDDEN", Ink.MISSED: "HIDDEN", Ink.MEMBRANE: "HIDDEN", Ink.AIR_CONTROL: "AIR"}
LINE_TYPES = {
    "HIDDEN": ("hidden _ _ _ _", [0.15, 0.1, -0.05]),
    "AIR": ("air control __ . __ .", [0.22, 0.12, -0.04, 0.02, -0.04]),
    "CENTER": ("center ____ _ ____", [0.7, 0.45, -0.08, 0.09, -0.08]),
    "PHANTOM": ("phantom ____ _ _ ____", [0.85, 0.45, -0.08, 0.08, -0.08, 0.08, -0.08]),
}
"""Dashes in paper inches; every broken line carries the factor of its view as its own line type scale."""


def tell_issue(document: Document, issue: IssueStamp) -> None:
    """Put what a drawing says of its issue among the properties of its file (DXF reference, $CUSTOMPROPERTY)."""
    for name, value in issue.fields.items():
        document.header.custom_vars.append(name, value)


def unit_factor(units: Units) -> float:
    """Return drawing units per inch."""
    return 1.0 if units is Units.INCH else MM_PER_INCH


def new_document(units: Units, scales: Iterable[Scale]) -> Document:
    """Make an empty document in a job's units with a dimension style for every scale; the first is the main one."""
    use_bundled_fonts()
    document = new(VERSION)
    _set_units(document, units)
    for name, (words, pattern) in LINE_TYPES.items():
        sized = [dash * unit_factor(units) for dash in pattern]
        document.linetypes.add(name, pattern=sized, description=words)
    document.styles.add(STYLE, font="arial.ttf")
    document.styles.add(BOLD_STYLE, font="arialbd.ttf")
    for layer, (color, weight) in LAYERS.items():
        made = document.layers.add(str(layer), color=color, lineweight=weight)
        made.dxf.linetype = BROKEN.get(Ink(layer), "CONTINUOUS") if layer in BROKEN else "CONTINUOUS"
    document.layers.get(VIEWPORTS).dxf.plot = 0
    document.layers.get("Defpoints").dxf.plot = 0
    for number, scale in enumerate(scales):
        _add_dimension_style(document, scale, units)
        if number == 0:
            _copy_to_header(document, dimension_style(scale))
    return document


INSERT_UNITS = {Units.INCH: 1, Units.MM: 4}
MEASUREMENT = {Units.INCH: 0, Units.MM: 1}
"""$INSUNITS and $MEASUREMENT (DXF reference, header)."""


def _set_units(document: Document, units: Units) -> None:
    is_inch = units is Units.INCH
    header = document.header
    header["$MEASUREMENT"] = MEASUREMENT[units]
    header["$INSUNITS"] = INSERT_UNITS[units]
    header["$LUNITS"] = 5 if is_inch else 2
    header["$LUPREC"] = 6 if is_inch else 1
    header["$LWDISPLAY"] = 1
    header["$PSLTSCALE"] = 0
    header["$DIMASSOC"] = 1


def dimension_style(scale: Scale) -> str:
    """Return the name of the dimension style of a scale."""
    return f"SHOP-{scale.factor:g}"


def _add_dimension_style(document: Document, scale: Scale, units: Units) -> None:
    unit, is_inch = unit_factor(units), units is Units.INCH
    document.dimstyles.new(
        dimension_style(scale),
        dxfattribs={
            "dimscale": scale.factor,
            "dimtxt": scale.text * unit,
            "dimasz": 0.09 * unit,
            "dimtsz": 0.05 * unit,
            "dimexe": 0.05 * unit,
            "dimexo": 0.05 * unit,
            "dimgap": 0.045 * unit,
            "dimlunit": 5 if is_inch else 2,
            "dimdec": 6 if is_inch else 1,
            "dimfrac": 2,
            "dimzin": 0 if is_inch else 8,
            "dimpost": '<>"' if is_inch else "<>",
            "dimdsep": 46,
            "dimtad": 1,
            "dimtih": 1,
            "dimtoh": 1,
            "dimtmove": 2,
            "dimtxsty": STYLE,
            "dimlfac": 1.0,
        },
    )


def radius_style(document: Document, scale: Scale) -> str:
    """Return the name of the style of radii at a scale; the first that asks for it makes it.

    The crosses on centers are ours, so that none stands at a center that is far off the paper.
    """
    name, plain = f"SHOP-R-{scale.factor:g}", dimension_style(scale)
    if name not in document.dimstyles:
        made = document.dimstyles.duplicate_entry(plain, name)
        made.dxf.dimcen = 0.0
        made.dxf.dimtsz = 0.0  # a radius has an arrow, no stroke
    return name


def _copy_to_header(document: Document, name: str) -> None:
    """Copy a style to the header: simple readers know no other."""
    style = document.dimstyles.get(name)
    copied = [
        "scale",
        "txt",
        "asz",
        "tsz",
        "exe",
        "exo",
        "gap",
        "lunit",
        "dec",
        "frac",
        "zin",
        "tad",
        "tih",
        "toh",
        "txsty",
        "post",
        "dsep",
    ]
    for key in copied:
        document.header[f"$DIM{key.upper()}"] = style.get_dxf_attrib(f"dim{key}")
    document.header["$DIMSTYLE"] = name


@contextmanager
def repeatable() -> Iterator[None]:
    """Let ezdxf give the same bytes in every run: fixed dates and numbers, chance that starts anew, whole styles.

    Its patterns start at a place that is moved by chance.
    """
    write_suffixes()  # for good and for all: whichever file of a run is the first, all are written alike
    before, chance = options.write_fixed_meta_data_for_testing, random.getstate()
    options.write_fixed_meta_data_for_testing = True
    random.seed(0)
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before
        random.setstate(chance)


def save(document: Document, path: Path) -> None:
    """Write a document with its classes in order and no layer that nothing is on."""
    drop_idle_layers(document)
    for name in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(name)
    document.saveas(path)
