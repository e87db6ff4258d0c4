"""Sections of casing that stand in a DXF file beside the job: read into points before the trim is checked.

The file holds the section as one closed polyline, its back level below and its inner edge at the left; arcs are parted
into chords. What it is drawn in stands in its header.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import Location
from jambs.job.reading.tree import TreePiece
from jambs.length import MM_PER_INCH

if TYPE_CHECKING:
    from ezdxf.entities.dxfentity import DXFEntity

CHORD_OFF = 1 / 512
"""A chord is off its arc by no more than this [in]: half of what a 1/256 shows."""
INCHES_PER_UNIT = {1: 1.0, 2: 12.0, 4: 1 / MM_PER_INCH, 5: 10 / MM_PER_INCH, 6: 1000 / MM_PER_INCH}
"""By the number that the header of a DXF file has for its units ($INSUNITS): inch, foot, mm, cm, m."""

MOST_BYTES = 2_000_000
"""A file that holds one section is smaller than this, whatever wrote it."""
MOST_OF_NAME = 40
"""So much of a name that no file can have is said again."""
MOST_BULGE = 3.0
"""Tangent of a quarter of an arc: one of more turns by over 280°, as no molding does."""


class _UnreadableError(Exception):
    """A file that holds no section; the message says what it holds and what to do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedProfiles:
    """A job with the sections of its files in place of their names, and those files."""

    top: TreePiece
    files: tuple[Path, ...]


def with_profiles(top: TreePiece, folder: Path, complaints: Complaints) -> NamedProfiles:
    """Put the points of every named section into the job; one that cannot be read is told and taken away."""
    files = []
    for location, name in [*_named(top.value)]:
        file = folder / name
        try:
            points: Any = _points(file, name)
            files.append(file)
        except _UnreadableError as error:
            complaints.say(top, location, str(error))
            points = None
        top = top.replaced(location, points)
    return NamedProfiles(top=top, files=tuple(dict.fromkeys(files)))


def _named(value: Any) -> Iterator[tuple[Location, str]]:
    """Yield where a job names a section's file: in its trims, and in those that an opening changes for itself."""
    if not isinstance(value, dict):
        return
    trims = value.get("interior_trim")
    openings = value.get("openings")
    places: list[tuple[Location, Any]] = []
    if isinstance(trims, dict):
        places += [(("interior_trim", name), trim) for name, trim in trims.items()]
    if isinstance(openings, list):
        places += [
            (("openings", at, "interior_trim"), one.get("interior_trim"))
            for at, one in enumerate(openings)
            if isinstance(one, dict)
        ]
    for location, trim in places:
        named = trim.get("profile") if isinstance(trim, dict) else None
        if isinstance(named, str) and named != "none":
            yield (*location, "profile"), named


def _points(file: Path, name: str) -> list[list[str]]:
    """Read a section as lengths in inches, its lower left corner at 0, 0."""
    if file.suffix.lower() != ".dxf":
        raise _UnreadableError(
            f"{name!r} is neither points nor a DXF file; write [[0, 0], …], or a name that ends in .dxf"
        )
    from ezdxf.filemanagement import readfile
    from ezdxf.lldxf.const import DXFError
    from ezdxf.path import make_path

    try:
        is_there = file.is_file()
    except OSError:
        raise _UnreadableError(f"{name[:MOST_OF_NAME]} is no name of a file; put the file beside the job") from None
    if not is_there:
        raise _UnreadableError(_not_there(file, name))
    if file.stat().st_size > MOST_BYTES:
        raise _UnreadableError(f"{name} is larger than a section needs; save the section alone, in a file of its own")
    try:
        document = readfile(file)
    except (OSError, DXFError, ValueError):
        raise _UnreadableError(f"{name} is no DXF file that can be read; save it once more") from None
    closed = [one for one in document.modelspace().query("LWPOLYLINE POLYLINE") if _is_closed(one)]
    if len(closed) != 1:
        raise _UnreadableError(
            f"{name} holds {len(closed)} closed polylines; draw the section as one, and nothing else closed"
        )
    factor = INCHES_PER_UNIT.get(document.units)
    if factor is None:
        raise _UnreadableError(f"{name} does not say in what units it is drawn; save it in inches or millimeters")
    if not all(abs(bulge) <= MOST_BULGE for bulge in _bulges(closed[0])):
        raise _UnreadableError(f"{name} has an arc of nearly a whole circle; draw the section with arcs a molding has")
    corners = [(one.x * factor, one.y * factor) for one in make_path(closed[0]).flattening(CHORD_OFF / factor)]
    low, below = min(x for x, _ in corners), min(y for _, y in corners)
    found: list[list[str]] = []
    for x, y in corners:
        point = [_written(x - low), _written(y - below)]
        if point not in (found[-1:] + found[:1]):
            found.append(point)
    return found


def _not_there(file: Path, name: str) -> str:
    """Say what stands in the place of a file."""
    if file.is_dir():
        return f"{name} is a folder; name the DXF file in it"
    if file.is_symlink():
        return f"{name} is a link to a file that is not there; put the file itself beside the job"
    if file.exists():
        return f"{name} is no file that can be read; put a DXF file beside the job"
    return f"{name} is not there; put the file beside the job"


def _is_closed(entity: DXFEntity) -> bool:
    return bool(getattr(entity, "is_closed", False) or getattr(entity, "closed", False))


def _bulges(entity: DXFEntity) -> list[float]:
    """Return the bulges of a polyline, heavy or light."""
    if entity.dxftype() == "LWPOLYLINE":
        return [float(point[-1]) for point in entity.get_points("xyb")]  # type: ignore[attr-defined]
    return [float(vertex.dxf.bulge) for vertex in entity.vertices]  # type: ignore[attr-defined]


def _written(length: float) -> str:
    """Write a length in inches, finer than anybody cuts, so that corners on one line stay on one."""
    return f'{length:.5f}"'
