"""Frame-and-panel jambs in words: what a frame is glued up from, its grooves, tenons and tongues."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.length import HALF_64TH, Grid
from jambs.parts.board.cuts import EdgeGroove, End, Tenon, end_of
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.sides import BoardEnd

GLUE = "glue the frame, never a panel"


def frame_words(part: Part, grid: Grid) -> Iterator[str]:
    """Say of a jamb that is a frame with panels what it is made of, where its openings are, and when it is cut."""
    panels = part.blank.panels
    if panels is None:
        return
    first = _first_end(part)
    stiles, rails, sheets = (
        f"{kind.words}s {letters_of(part, kind)}" for kind in (PartKind.STILE, PartKind.RAIL, PartKind.PANEL)
    )
    yield f"frame and panel: {stiles}; {rails} and {sheets}, each from the {first.words}"
    yield f"{GLUE}, which has {room_words(part, grid)}"
    low, high = (grid.text(one) for one in panels.layout.across)
    yield f"openings {_from_words(part, first)}: {_places(part, first, grid)}; from the frame edge {low} to {high}"
    if _are_tenons_full(part):
        yield "groove a hair deeper than the tenons are long, so that the shoulders close"
    yield "when the glue is dry saw off the horns, then rip it and cut its ends as one board"


def _first_end(part: Part) -> BoardEnd:
    """Return the end from which rails, panels and openings count: the bottom of a leg, else the left."""
    return next(end for end in part.seat.ends if end in (BoardEnd.BOTTOM, BoardEnd.LEFT))


def _from_words(part: Part, first: BoardEnd) -> str:
    """Name the end that the tape hooks on to: its long point where it is cut at an angle."""
    end = list(End)[part.seat.ends.index(first)]
    is_angled = any(end_of(cut) is end for cut in part.cuts)
    return f"from the long point at the {first.words}" if is_angled else f"from the {first.words}"


def _places(part: Part, first: BoardEnd, grid: Grid) -> str:
    assert part.blank.panels
    layout = part.blank.panels.layout
    openings = layout.openings
    if part.seat.ends[0] is not first:
        openings = tuple((layout.length - finish, layout.length - start) for start, finish in reversed(openings))
    return ", ".join(f"{grid.text(start)} to {grid.text(finish)}" for start, finish in openings)


def _are_tenons_full(part: Part) -> bool:
    """Say whether stub tenons reach the bottom of the grooves, which would hold the shoulders open."""
    cuts = [cut for one in part.frame_members if one.kind is PartKind.RAIL for cut in one.cuts]
    depths = [cut.depth for cut in cuts if isinstance(cut, EdgeGroove)]
    return any(isinstance(cut, Tenon) and cut.along > min(depths) - HALF_64TH for cut in cuts)


def room_words(part: Part, grid: Grid) -> str:
    """Say what a panel of a jamb has to move: ``1/8 in all to swell across its grain and 1/16 along it``."""
    assert part.blank.panels
    layout = part.blank.panels.layout
    return f"{grid.text(layout.room)} in all to swell across its grain and {grid.text(layout.end_room)} along it"


def letters_of(part: Part, kind: PartKind) -> str:
    """List the members of a kind by the letters that stand after the jamb's mark: ``c, d, e``."""
    return ", ".join(one.mark[-1] for one in part.frame_members if one.kind is kind)


def member_work(part: Part, grid: Grid) -> Iterator[str]:
    """Say how stiles and rails are grooved along the edges at a panel, rails tenoned, panels rabbeted."""
    if grooved := _grooved(part):
        yield f"{grooved}: {_groove_size(part, grid)}"
    if tenoned := _tenoned(part):
        yield f"{tenoned}: {_tenon_size(part, grid)}"


def member_work_in_short(part: Part) -> list[str]:
    """Say what is done to a stile, rail or panel, without its sizes: ``groove both edges``."""
    return [what for what in (_grooved(part), _tenoned(part)) if what]


def member_sizes(part: Part, grid: Grid) -> dict[str, str]:
    """Return the sizes of what is done to the members of a jamb, which are the same for all of them, by what it is."""
    found: dict[str, str] = {}
    for one in part.frame_members:
        if _grooved(one):
            found.setdefault("grooves", _groove_size(one, grid))
        if tenoned := _tenoned(one):
            found.setdefault(tenoned, _tenon_size(one, grid))
    return found


def _grooved(part: Part) -> str:
    edges = [cut for cut in part.cuts if isinstance(cut, EdgeGroove)]
    return ("groove both edges" if len(edges) > 1 else "groove the inner edge") if edges else ""


def _groove_size(part: Part, grid: Grid) -> str:
    one = next(cut for cut in part.cuts if isinstance(cut, EdgeGroove))
    return f"{grid.text(one.width)} wide, {grid.text(one.depth)} deep, {grid.text(one.from_face)} from the face"


def _tenoned(part: Part) -> str:
    if not any(isinstance(cut, Tenon) for cut in part.cuts):
        return ""
    return "rabbet the back all round" if part.kind is PartKind.PANEL else "stub tenons at both ends"


def _tenon_size(part: Part, grid: Grid) -> str:
    one = next(cut for cut in part.cuts if isinstance(cut, Tenon))
    thick = grid.units.text(part.thickness - one.face - one.back)
    if part.kind is PartKind.PANEL:
        return f"{grid.text(one.along)} wide, {grid.text(one.back)} deep, leaves a tongue {thick}"
    shoulders = f"{grid.text(one.face)} off the face, {grid.text(one.back)} off the back"
    return f"{grid.text(one.along)} long, {thick} thick, {shoulders}"
