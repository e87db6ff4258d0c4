"""Jambs as frames with panels: stiles, rails and panels in place of one deep board, glued up and then cut as one.

A jamb keeps its outline, its edges, its ends and its seat, whatever it is made of: so casing, stool and wall never
know. Its members are parts of their own, each with the jamb's mark and a letter: they are sawn, labeled and bought.
The stile at the room holds what a leaned or tapered edge takes of it, and what is left on until the depth is measured;
stiles are longer than the jamb by what the shop leaves on a glue-up, and end rails reach as far as the long points.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from string import ascii_lowercase

from jambs.findings import Finding, Subject
from jambs.geometry import Vector, minus
from jambs.job.models.openings import Job
from jambs.job.models.panels import MOST_PANELS, PanelsEntry
from jambs.job.models.trim import InteriorTrim
from jambs.length import MM_PER_INCH, ROUND_OFF, Grid, Units
from jambs.parts.board.boards import blank_from_boards
from jambs.parts.board.cuts import CannotBeCut, Crosscut, Cut, Edge, EdgeGroove, EdgeRabbet, End, Rip, Tenon
from jambs.parts.board.glue_up import glue_settings
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.panel_layout import JambFace, PanelLayout, lay_out, opening_between, opening_width, panel_count
from jambs.parts.board.part import PanelFrame, Part, PartBlank, Seat
from jambs.parts.findings.panel_findings import NoRoomForPanels, TooManyPanels
from jambs.parts.jambs.interior_jamb import jamb_path
from jambs.parts.jambs.panel_checks import movement_findings
from jambs.parts.jambs.panel_room import panel_movement, panel_room
from jambs.parts.kit.kit import JambFrame
from jambs.parts.kit.left_on import left_on
from jambs.parts.shapes.opening_path import BoardPlanes, CornerJoint, EndPlane, path_boards
from jambs.parts.shapes.path_cuts import sawn_board
from jambs.place.flares import flares_at
from jambs.place.placement import Placement
from jambs.sides import LEGS, BoardEnd, Side

LEAST_OPENING = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""A panel shows at least so much of itself each way [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paneled:
    """The parts of an opening, its jambs made as frames with panels where the trim says so, and what is to be known."""

    parts: tuple[Part, ...]
    findings: tuple[Finding, ...] = ()


def paneled(parts: Sequence[Part], frames: Sequence[JambFrame], placement: Placement, job: Job) -> Paneled:
    """Make the interior jambs of an opening as frames with panels, marked as they are; nothing without panels.

    Raises:
        CannotBeCut: no panel has room in a jamb, or nobody knows how much room a panel needs.
    """
    trim = placement.opening.interior
    if trim.panels is None or not frames:
        return Paneled(parts=tuple(parts))
    faces = jamb_faces(frames[0], trim, placement)
    made = [
        _paneled(part, faces[part.side], trim.panels, placement, job)
        if part.kind is PartKind.EXTENSION_JAMB and part.where is Where.INTERIOR
        else part
        for part in parts
    ]
    framed = [part for part in made if part.frame_members]
    return Paneled(parts=tuple(made), findings=movement_findings(framed, trim.panels, job))


def jamb_faces(frame: JambFrame, trim: InteriorTrim, placement: Placement) -> dict[Side, JambFace]:
    """Return the face of every jamb of a frame, as far as it is seen between its neighbors.

    Legs that lean alike are laid out by the narrower: their panels face each other, and where the wall is deeper at one
    of them its stile at the room is the wider.
    """
    flares = flares_at(trim, placement.interior_depth)
    boards = path_boards(jamb_path(frame.clear, frame.sides, trim, frame.proud, flares))
    faces = {board.edge.side: _face(board, frame.edge) for board in boards}
    if abs(flares.at(Side.LEFT) - flares.at(Side.RIGHT)) > ROUND_OFF:
        return faces
    narrow = min(faces[side].slant for side in LEGS)
    return {side: replace(face, slant=narrow) if side.is_leg else face for side, face in faces.items()}


def _face(board: BoardPlanes, inside_edge: float) -> JambFace:
    sawn = sawn_board(board, inside_edge)
    corner = sawn.seat.board_point((*board.edge.corner, inside_edge))[0]
    start, finish = _face_plane(board, End.START), _face_plane(board, End.FINISH)
    starts = [corner + start.at(v, 0.0) for v in (0.0, sawn.slant[0])]
    finishes = [corner + board.span + finish.at(v, 0.0) for v in (0.0, sawn.slant[1])]
    return JambFace(length=sawn.length, seen=(max(starts), min(finishes)), width=sawn.width, slant=min(sawn.slant))


def _face_plane(board: BoardPlanes, end: End) -> EndPlane:
    """Return the plane in which the face of a board meets its neighbor's: short of an end that is hidden."""
    plane, corner = (board.start, board.start_corner) if end is End.START else (board.finish, board.finish_corner)
    return plane if corner.joint is CornerJoint.MITER else replace(plane, past=0.0)


def _paneled(part: Part, face: JambFace, entry: PanelsEntry, placement: Placement, job: Job) -> Part:
    grid, count = job.shop.grid, _count(part.side, face, entry)
    across = opening_width(face, entry, grid)
    along = grid.down(opening_between(face.seen[1] - face.seen[0], entry.rails, count))
    least = LEAST_OPENING[grid.units]
    if min(across, along) < least - ROUND_OFF:
        about = Subject.opening(part.opening)
        raise CannotBeCut(NoRoomForPanels(subject=about, side=part.side, across=across, along=along, least=least))
    room = panel_room(entry, across, panel_movement(entry.panel.stock, job), job)
    layout = lay_out(face, entry, count, room, grid)
    members = _members(part, layout, entry, placement, job)
    blank = PartBlank(
        stock=part.blank.stock, thickness=part.blank.thickness, panels=PanelFrame(layout=layout, members=members)
    )
    return replace(part, blank=blank)


def _count(side: Side, face: JambFace, entry: PanelsEntry) -> int:
    stated = entry.on_legs if side.is_leg else entry.on_level
    if entry.longest is None:
        assert stated is not None
        return stated
    count = panel_count(face.seen[1] - face.seen[0], entry.rails, entry.longest)
    if count is None:
        about = Subject.opening("")
        raise CannotBeCut(TooManyPanels(subject=about, side=side, longest=entry.longest, most=MOST_PANELS))
    return count


# ---- the members as parts


def _members(jamb: Part, layout: PanelLayout, entry: PanelsEntry, placement: Placement, job: Job) -> tuple[Part, ...]:
    """Make stiles, rails and panels of a jamb, lettered in this order, each out of the narrowest board at hand."""
    left = left_on(jamb, placement, job.shop, job.boards)
    over = glue_settings(job.shop).length_over + left.length
    members = [
        *_stiles(jamb, layout, entry, over, left.width, job.shop.grid),
        *_counted(jamb, _rails(jamb, layout, entry, left.length, job.shop.grid)),
        *_counted(jamb, _panels(jamb, layout, entry)),
    ]
    marked = (
        replace(one, opening=jamb.opening, mark=jamb.mark + letter)
        for one, letter in zip(members, ascii_lowercase, strict=False)
    )
    return tuple(replace(one, blank=blank_from_boards(one, job.boards, job.shop, allowance=0.0)) for one in marked)


def _counted(jamb: Part, members: list[Part]) -> list[Part]:
    """Count rails or panels from the bottom of a leg, else from the left: legs that mirror each other count alike."""
    if jamb.seat.ends[0] in (BoardEnd.BOTTOM, BoardEnd.LEFT):
        return members
    return [replace(one, member=number) for number, one in enumerate(reversed(members), start=1)]


def _member(jamb: Part, kind: PartKind, cuts: tuple[Cut, ...], seat: Seat, *, member: int, members: int) -> Part:
    blank = PartBlank(stock=jamb.blank.stock, thickness=jamb.blank.thickness)
    return replace(jamb, kind=kind, blank=blank, cuts=cuts, touches=(), seat=seat, member=member, members=members)


def _stiles(jamb: Part, layout: PanelLayout, entry: PanelsEntry, over: float, wider: float, grid: Grid) -> list[Part]:
    """Make the stiles at the frame and at the room, longer than the jamb by ``over``, half of it at each end [in]."""
    length, at = grid.up(layout.length + over), -over / 2
    far = grid.up(layout.width - layout.across[1] + wider)
    sides = ((entry.stiles, 0.0, Edge.FAR), (far, layout.across[1], Edge.NEAR))
    return [
        _member(
            jamb,
            PartKind.STILE,
            (Rip(width=width), Crosscut(length=length), _groove(entry, edge)),
            replace(jamb.seat, origin=jamb.seat.at(at, v, 0.0)),
            member=number,
            members=len(sides),
        )
        for number, (width, v, edge) in enumerate(sides, start=1)
    ]


def _rails(jamb: Part, layout: PanelLayout, entry: PanelsEntry, longer: float, grid: Grid) -> list[Part]:
    """Make the rails, across the jamb; those at its ends are wider by half of what it may get longer [in]."""
    found = []
    for number, (start, finish) in enumerate(layout.rails, start=1):
        is_first, is_last = number == 1, number == len(layout.rails)
        width = grid.up(finish - start + (longer / 2 if is_first or is_last else 0.0))
        at = start if is_last else finish - width
        grooves = [
            _groove(entry, edge) for edge, is_there in ((Edge.NEAR, not is_last), (Edge.FAR, not is_first)) if is_there
        ]
        back = jamb.blank.thickness - entry.groove.from_face - entry.groove.width
        tenons = [Tenon(end=end, along=entry.tenon, face=entry.groove.from_face, back=back) for end in End]
        found.append(
            _member(
                jamb,
                PartKind.RAIL,
                (Rip(width=width), Crosscut(length=layout.rail_length), *grooves, *tenons),
                _turned(jamb.seat, at + width, layout.across[0] - entry.tenon),
                member=number,
                members=len(layout.rails),
            )
        )
    return found


def _panels(jamb: Part, layout: PanelLayout, entry: PanelsEntry) -> list[Part]:
    """Make the panels, each in the middle of its opening, its grain along the stiles."""
    panel = entry.panel
    back = panel.thickness - entry.groove.width
    across = (layout.opening_width - layout.panel_width) / 2
    along = (layout.opening_length - layout.panel_length) / 2
    cuts: tuple[Cut, ...] = (Rip(width=layout.panel_width), Crosscut(length=layout.panel_length))
    if entry.is_rabbeted:
        assert panel.tongue
        edges = [EdgeRabbet(edge=edge, across=panel.tongue, depth=back, from_back=True) for edge in Edge]
        cuts = (*cuts, *edges, *(Tenon(end=end, along=panel.tongue, face=0.0, back=back) for end in End))
    return [
        replace(
            _member(
                jamb,
                PartKind.PANEL,
                cuts,
                replace(
                    jamb.seat, origin=jamb.seat.at(start + along, layout.across[0] + across, entry.groove.from_face)
                ),
                member=number,
                members=len(layout.openings),
            ),
            blank=PartBlank(stock=panel.stock, thickness=panel.thickness),
        )
        for number, (start, _) in enumerate(layout.openings, start=1)
    ]


def _groove(entry: PanelsEntry, edge: Edge) -> EdgeGroove:
    groove = entry.groove
    return EdgeGroove(edge=edge, from_face=groove.from_face, width=groove.width, depth=groove.depth)


def _turned(seat: Seat, u: float, v: float) -> Seat:
    """Turn a seat so that the grain runs across the jamb, its near edge toward the jamb's finish."""
    back: Vector = minus((0.0, 0.0, 0.0), seat.along)
    return Seat(origin=seat.at(u, v, 0.0), along=seat.across, across=back, through=seat.through)
