"""Cut files as ezdxf reads them: the document, its closed outlines by layer."""

from __future__ import annotations

from io import StringIO

from ezdxf.document import Drawing as Document
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.polyline import Polyline
from ezdxf.filemanagement import read

Points = list[tuple[float, float]]


def opened(text: str) -> Document:
    return read(StringIO(text))


def outlines(document: Document) -> dict[str, list[Points]]:
    """Return the closed outlines by layer."""
    found: dict[str, list[Points]] = {}
    for one in document.modelspace():
        if isinstance(one, LWPolyline) and one.closed:
            found.setdefault(one.dxf.layer, []).append([(float(x), float(y)) for x, y in one.get_points("xy")])
        elif isinstance(one, Polyline) and one.is_closed:
            found.setdefault(one.dxf.layer, []).append([(point.x, point.y) for point in one.points()])
    return found
