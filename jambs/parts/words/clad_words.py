"""What is done to cladding that returns to the frame, in words: its miter at the corner, its courses."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from jambs.length import Grid
from jambs.parts.board.angle_words import angle_text
from jambs.parts.board.cuts import EdgeBevel
from jambs.parts.board.kinds import Crew, PartKind
from jambs.parts.board.part import Part
from jambs.parts.words.edge_names import edge_name


def clad_work(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a return is mitered to the wall's cladding, and how the siding crew lays it in courses."""
    if part.kind is not PartKind.CLADDING_RETURN:
        return
    for cut in part.cuts:
        if isinstance(cut, EdgeBevel):
            how = f"{edge_name(part, cut.edge)} {angle_text(cut.angle_deg)}"
            yield f"bevel the {how}, the face long: mitered to the wall's cladding"
    if part.crew is Crew.SIDING:
        across = grid.text(part.width)
        pieces = f"{_pieces_words(part, grid)} {across} long from frame to corner"
        yield f"in courses: {pieces}, butts on the lines of the wall, to this outline"


def _pieces_words(leg: Part, grid: Grid) -> str:
    """Count the pieces by the width of their boards; where no courses are planned nobody knows how many they are."""
    counts = Counter(leg.blank.courses)
    if not counts:
        return "pieces"
    said = " and ".join(f"{count} of {grid.text(width)}" for width, count in counts.items())
    return f"{said} board," if len(leg.blank.courses) == 1 else f"{said} boards, each"
