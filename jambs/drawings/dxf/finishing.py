"""What a document needs before it is saved: extents, first view, paper in its own units, no idle layers."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from ezdxf.document import Drawing as Document
from ezdxf.entities import dimstyle

from jambs.drawings.dxf.space import Written
from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import PAGES
from jambs.length import MM_PER_INCH, Units

AROUND = 1.05
"""The first view of a drawing over what is drawn."""
SCREEN = 16 / 9
"""Width over height of a common screen; a wide drawing is seen whole."""
UNTOUCHED = "Layout1"
"""The layout that every new document has."""
KEPT_LAYERS = ("0", "Defpoints")
SUFFIX_AFTER = dimstyle.EXPORT_MAP_R2007.index("flags") + 1
LAYER_LINE = re.compile(r"^  8\n(.+)$", re.MULTILINE)


def write_suffixes() -> None:
    """Let dimension styles be written with their suffix (DIMPOST, group 3): the library leaves it out.

    A reader that draws dimensions anew by their style then shows ``38"`` and not ``38``.
    """
    if "dimpost" not in dimstyle.EXPORT_MAP_R2007:
        dimstyle.EXPORT_MAP_R2007.insert(SUFFIX_AFTER, "dimpost")


def finish(document: Document, units: Units, box: Box) -> None:
    """Tell where model space is drawn on, and open it there; give every space paper. ``box`` in drawing units."""
    low, high = (box.left, box.bottom), (box.right, box.top)
    space = document.modelspace()
    space.reset_extents((*low, 0.0), (*high, 0.0))
    space.reset_limits(low, high)
    document.set_modelspace_vport(AROUND * max(box.height, box.width / SCREEN), box.center)
    set_paper(document, units)


def set_paper(document: Document, units: Units) -> None:
    """Give model space, and the layout of a file that has no others, the smaller paper of the job in its own units."""
    page = PAGES[units][0]
    is_inch = units is Units.INCH
    unit = 1.0 if is_inch else MM_PER_INCH
    if UNTOUCHED in document.layouts:
        layout = document.paperspace(UNTOUCHED)
        layout.page_setup(
            size=(page.width * unit, page.height * unit), margins=(0, 0, 0, 0), units="inch" if is_inch else "mm"
        )
    model = document.modelspace().dxf_layout.dxf
    model.paper_width, model.paper_height = page.width * MM_PER_INCH, page.height * MM_PER_INCH
    model.plot_paper_units = 0 if is_inch else 1


def drop_idle_layers(document: Document) -> None:
    """Leave out layers that nothing is on."""
    used = {*KEPT_LAYERS, *_layers_in(document)}
    for name in [layer.dxf.name for layer in document.layers]:
        if name not in used:
            document.layers.remove(name)


def _layers_in(document: Document) -> Iterator[str]:
    for entity in document.entitydb.values():
        if entity.dxf.hasattr("layer"):
            yield entity.dxf.layer
    for written in _written_in(document):
        for text in written.texts:
            yield from LAYER_LINE.findall(text)


def _written_in(document: Document) -> Iterable[Written]:
    spaces = [document.modelspace(), *document.blocks]
    return (one for space in spaces for one in space.entity_space.entities if isinstance(one, Written))
