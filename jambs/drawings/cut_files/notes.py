"""What has to be known at the machine, in lines of plain letters, which every reader has."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.length import Grid, Units, length_text
from jambs.parts.board.cuts import EdgeGroove, MidNotch, Notch
from jambs.parts.board.kinds import told_name, told_position
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace, WorkedFace

_PLAIN = str.maketrans({"–": "-", "·": "-", "×": "x"})


def plain_letters(text: str) -> str:
    """Return a text in letters that every reader has."""
    return text.translate(_PLAIN)


def file_name(mark: str, face: BoardFace) -> str:
    """Return the name of a cut file without its ending: ``W02-1``, ``W02-1 back``."""
    return mark if face is BoardFace.FACE else f"{mark} {face.value}"


def note_lines(part: Part, worked: WorkedFace, units: Units, back: WorkedFace, grid: Grid | None = None) -> list[str]:
    """Return what has to be known at the machine."""
    lines = own_lines(part, units, grid)
    if worked.face is BoardFace.BACK:
        lines.append("BACK UP: turned over about its length, start end still at 0; OUTLINE is cut from the face")
    else:
        lines += _face_lines(part, back, units)
    return lines


def size_told(length: float, units: Units, grid: Grid | None) -> str:
    """Print a size of a part as its cut sheet does, on the shop's grid."""
    return grid.text(length) if grid else length_text(length, units=units)


def own_lines(part: Part, units: Units, grid: Grid | None) -> list[str]:
    """Say what part it is, of what sizes, and how it is drawn."""
    name, where = told_name(part.name, part.where.value), told_position(part.name, part.position)
    sizes = " x ".join(size_told(one, units, grid) for one in (part.thickness, part.width, part.length))
    return [
        ", ".join(one for one in (part.mark, name, where, part.stock) if one),
        f"{sizes}, {drawn_in(units)}",
    ]


def drawn_in(units: Units) -> str:
    """Say the units and the scale of a cut file."""
    return f"drawn in {'inches' if units is Units.INCH else 'millimeters'}, 1:1"


def _face_lines(part: Part, back: WorkedFace, units: Units) -> Iterator[str]:
    if back.is_worked:
        yield f"FACE UP; there is work in the back: {file_name(part.mark, BoardFace.BACK)}"
    grooves = [cut for cut in part.cuts if isinstance(cut, EdgeGroove)]
    if grooves:  # it is seen on no face
        where = "both edges" if len(grooves) > 1 else f"the {grooves[0].edge.value} edge"
        wide, deep, off = (
            length_text(one, units=units) for one in (grooves[0].width, grooves[0].depth, grooves[0].from_face)
        )
        yield f"ON EDGE: groove in {where}, {wide} x {deep} deep, {off} from the face"
    if any(isinstance(cut, Notch | MidNotch) for cut in part.cuts):
        yield "square the inside corners of the notches by hand"
    if not part.kind.is_buck:
        yield "FACE UP, a face that is seen: ENGRAVE is off, write the mark on the back"
