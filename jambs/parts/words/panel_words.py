"""Frame-and-panel jambs in words: what a frame is glued up from, its grooves, tenons and tongues."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.length import Grid
from jambs.parts.board.cuts import EdgeGroove, Tenon
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part

GLUE = "glue the frame, never a panel"


def frame_words(part: Part, grid: Grid) -> Iterator[str]:
    """Say of a jamb that is a frame with panels what it is made of, where its openings are, and when it is cut."""
    panels = part.blank.panels
    if panels is None:
        return
    made_of = "; ".join(
        f"{kind.words}s {letters_of(part, kind)}" for kind in (PartKind.STILE, PartKind.RAIL, PartKind.PANEL)
    )
    layout = panels.layout
    yield f"frame and panel: {made_of}; {GLUE}, which has {room_words(part, grid)}"
    places = ", ".join(f"{grid.text(start)} to {grid.text(finish)}" for start, finish in layout.openings)
    low, high = (grid.text(one) for one in layout.across)
    start = part.seat.ends[0].words
    yield f"openings from the long point at the {start}: {places}; from the frame edge {low} to {high}"
    yield "when the glue is dry saw off the horns, then rip it and cut its ends as one board"


def room_words(part: Part, grid: Grid) -> str:
    """Say what a panel of a jamb has to move: ``1/8 to swell across its grain and 1/16 along it``."""
    assert part.blank.panels
    layout = part.blank.panels.layout
    return f"{grid.text(layout.room)} to swell across its grain and {grid.text(layout.end_room)} along it"


def letters_of(part: Part, kind: PartKind) -> str:
    """List the members of a kind by the letters that stand after the jamb's mark: ``c, d, e``."""
    return ", ".join(one.mark[-1] for one in part.frame_members if one.kind is kind)


def member_work(part: Part, grid: Grid) -> Iterator[str]:
    """Say how stiles and rails are grooved along the edges at a panel, rails tenoned, panels rabbeted."""
    yield from _grooves(part, grid)
    yield from _tenons(part, grid)


def _grooves(part: Part, grid: Grid) -> Iterator[str]:
    grooves = [cut for cut in part.cuts if isinstance(cut, EdgeGroove)]
    if not grooves:
        return
    one = grooves[0]
    where = "both edges" if len(grooves) > 1 else "the inner edge"
    size = f"{grid.text(one.width)} wide, {grid.text(one.depth)} deep, {grid.text(one.from_face)} from the face"
    yield f"groove {where}: {size}"


def _tenons(part: Part, grid: Grid) -> Iterator[str]:
    tenons = [cut for cut in part.cuts if isinstance(cut, Tenon)]
    if not tenons:
        return
    one, thick = tenons[0], grid.units.text(part.thickness - tenons[0].face - tenons[0].back)
    if part.kind is PartKind.PANEL:
        size = f"{grid.text(one.along)} wide, {grid.text(one.back)} deep"
        yield f"rabbet the back all round: {size}, leaves a tongue {thick}"
        return
    shoulders = f"{grid.text(one.face)} off the face, {grid.text(one.back)} off the back"
    yield f"stub tenons at both ends: {grid.text(one.along)} long, {thick} thick, {shoulders}"
