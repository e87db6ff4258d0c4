"""What is done to a part beside its ends, in words, and the board it comes out of; sizes on the shop's grid."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from jambs.arcs import arc_chords
from jambs.geometry import rise_of, tangent
from jambs.length import FINE, Grid, Units, length_text
from jambs.parts.board.angle_words import angle_text, both_ways
from jambs.parts.board.cuts import (
    CurvedSide,
    Edge,
    EdgeBevel,
    EdgeRabbet,
    End,
    Groove,
    MidNotch,
    Molded,
    Notch,
    PlaneCut,
    SlantedNotch,
    Taper,
)
from jambs.parts.board.kinds import Crew, PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.touches import BackBevel, Return, Scribe, WoodMoves
from jambs.parts.words.bend_words import blank_bends, return_bends, sheet_text, strip_bends
from jambs.parts.words.clad_words import clad_work
from jambs.parts.words.edge_names import edge_name, edge_names
from jambs.parts.words.flare_words import leaned_edges, plane_rabbets, saw_notes, slanted_notches
from jambs.parts.words.panel_words import frame_words, member_work
from jambs.parts.words.ply_words import lamination_words
from jambs.parts.words.steps import steps_of
from jambs.sides import BoardEnd

NOT_LISTED = "no such board listed"


def board_words(part: Part, *, units: Units) -> str:
    """Say what board a part comes out of: ``1x6 poplar``, its stock and thickness where none is listed, or its crew."""
    blank = part.blank
    if blank.is_metal:
        return f"{blank.stock} {sheet_text(blank.thickness, units)}" if part.is_lining else blank.stock
    if part.crew is not Crew.CARPENTER:
        return f"{blank.board.words if blank.board else part.stock}, by the {part.crew.value}"
    if part.frame_members:
        return f"{part.stock}, frame and panel"
    return blank.board.words if blank.board else f"{unlisted_words(part, units=units)} ({NOT_LISTED})"


def unlisted_words(part: Part, *, units: Units) -> str:
    """Name stock and thickness of a board that is not listed."""
    return f"{part.stock} {units.text(part.thickness)} thick"


# ---- work


def work_words(part: Part, *, grid: Grid) -> tuple[str, ...]:
    """Say everything that is done to a part beyond its ends, one line each."""
    return tuple(line for words in _WORK for line in words(part, grid))


_LIES = {Edge.NEAR: "to lie on the frieze", Edge.FAR: "to lie under the cap"}


def _bevels(part: Part, grid: Grid) -> Iterator[str]:
    bevel = next(iter(steps_of(part, EdgeBevel)), None)
    if part.kind is PartKind.CROWN:
        yield from (
            f"bevel the {edge_name(part, one.edge)} {angle_text(one.angle_deg)}, the back short, {_LIES[one.edge]}"
            for one in steps_of(part, EdgeBevel)
        )
        return
    if bevel and not part.is_leaned and part.kind is not PartKind.CLADDING_RETURN:
        face = grid.text(part.width - part.thickness * tangent(bevel.angle_deg))
        yield (
            f"bevel both long edges {angle_text(bevel.angle_deg)}, parallel, to stand plumb: face {face} wide, "
            f"{grid.text(part.width)} is the blank before the bevels"
        )


def _plane_edges(part: Part, grid: Grid) -> Iterator[str]:
    for cut in steps_of(part, PlaneCut):
        if isinstance(cut.at, Edge) and not part.is_leaned:
            along, across, through = cut.flat.normal
            off = math.degrees(math.atan2(abs(along), abs(across)))
            tilt = math.degrees(math.asin(min(abs(through), 1.0)))
            yield f"rip the {edge_name(part, cut.at)} {angle_text(off)} off the grain, blade tilted {both_ways(tilt)}"


def _curves(part: Part, grid: Grid) -> Iterator[str]:
    """Say how a board is sawn to its curves: the chord of each, its rise over it, and its radius."""
    yield from lamination_words(part, grid=grid)
    if not part.arcs or part.is_laminated:
        return
    near, far = edge_names(part)
    names = {CurvedSide.NEAR: near, CurvedSide.FAR: far, CurvedSide.FACE: "face", CurvedSide.BACK: "back"}
    lies = "the board on its edge" if part.is_sawn_on_edge else "the board face up"
    for arc, chord in zip(part.arcs, arc_chords(part.curved_outline), strict=True):
        across, rise, radius = (grid.text(one) for one in (chord, rise_of(arc.radius, chord), arc.radius))
        how = "hollow" if arc.side.is_hollow else "round"
        yield f"saw the {names[arc.side]} {how} by the template, {lies}: radius {radius}, rise {rise} over {across}"


def _notches(part: Part, grid: Grid) -> Iterator[str]:
    if part.is_lining and part.runs:
        return  # its corners say where leg and return end
    start, finish = part.seat.ends
    notches = {start if notch.end is End.START else finish: notch for notch in steps_of(part, Notch)}
    if not notches:
        return
    if steps_of(part, SlantedNotch):
        yield from slanted_notches(part, grid)
        return
    along, between = (grid.text(size) for size in _notch_lengths(part))
    across = {name: grid.text(notch.across) for name, notch in notches.items()}
    if part.kind is PartKind.EXTERIOR_SILL:
        deep = across[BoardEnd.LEFT]
        in_from = "the upper edge at the frame, square to the face"
        yield f"notch both ends {along} long × {deep} in from {in_from}; {between} between"
        return
    left, right = across[BoardEnd.LEFT], across[BoardEnd.RIGHT]
    ends = f"both ends {along} long × {right}"
    if left != right:
        ends = f"left end {along} long × {left}, right end {along} long × {right}"
    yield f"notch {ends} in from the frame edge; {between} between"


def _mid_notches(part: Part, grid: Grid) -> Iterator[str]:
    """Say where a board is notched round the walls between openings, taped from its left end."""
    cuts, from_left = steps_of(part, MidNotch), part.seat.ends[0] is BoardEnd.LEFT
    places = [(cut.start if from_left else part.length - cut.start - cut.along, cut) for cut in cuts]
    edge = "upper edge at the frame, square to the face" if part.kind is PartKind.EXTERIOR_SILL else "frame edge"
    for start, cut in sorted(places, key=lambda one: one[0]):
        low, high, across = (grid.text(one) for one in (start, start + cut.along, cut.across))
        yield f"notch round the wall between, from {low} to {high} from the left end, {across} in from the {edge}"


def _notch_lengths(part: Part) -> tuple[float, float]:
    along = steps_of(part, Notch)[0].along
    return along, part.length - 2 * along


def _tapers(part: Part, grid: Grid) -> Iterator[str]:
    for taper in steps_of(part, Taper):
        at_start = taper.start_width < taper.finish_width
        narrow = taper.start_width if at_start else taper.finish_width
        edge = "outer edge" if part.where is Where.EXTERIOR else "room edge"
        yield f"taper the {edge} to {grid.text(narrow)} at the {part.seat.ends[0 if at_start else 1].words}"


def _rabbets(part: Part, grid: Grid) -> Iterator[str]:
    for rabbet in steps_of(part, EdgeRabbet) if part.kind is not PartKind.PANEL else ():
        yield f"rabbet the frame edge {grid.text(rabbet.across)} × {grid.text(rabbet.depth)} deep, from the top"


def _grooves(part: Part, grid: Grid) -> Iterator[str]:
    for groove in steps_of(part, Groove):
        size = f"{grid.text(groove.width)} wide, {grid.text(groove.depth)} deep"
        yield f"drip kerf underneath: {size}, {grid.text(groove.from_edge)} from the front edge"


TO_OPENING = "cut to length to the finished opening"
NOTCHED_TO_OPENING = "cut length and notches to the finished opening"


def _scribes(part: Part, grid: Grid) -> Iterator[str]:
    for scribe in steps_of(part, Scribe):
        yield f"leave the room edge straight; scribe to the wall, removing up to {grid.text(scribe.most)}"


def _to_openings(part: Part, grid: Grid) -> Iterator[str]:
    if part.is_cut_to_opening:
        yield NOTCHED_TO_OPENING if part.kind is PartKind.STOOL else TO_OPENING


def _back_bevels(part: Part, grid: Grid) -> Iterator[str]:
    for bevel in steps_of(part, BackBevel):
        yield f"back bevel the miters {angle_text(bevel.angle_deg)}"


def _moldings(part: Part, grid: Grid) -> Iterator[str]:
    if steps_of(part, Molded):
        yield "molded to the section of the trim: template at full scale; the back flat"


def _returns(part: Part, grid: Grid) -> Iterator[str]:
    if count := len(steps_of(part, Return)):
        thick = grid.text(part.thickness)
        yield f"{count} returns, {thick} long point, mitered from the same board before it is cut to length"


def _moves(part: Part, grid: Grid) -> Iterator[str]:
    for moves in steps_of(part, WoodMoves):
        yield moves_words(moves, units=grid.units)


def asides(part: Part, *, grid: Grid) -> list[str]:
    """Return the lines of a part's work that set no saw: how its board moves."""
    return [*_moves(part, grid)]


def moves_words(moves: WoodMoves, *, units: Units) -> str:
    """Say how a board moves: ``seasonal change: -3/32" winter, +1/16" summer (not a cut)``.

    *About* where its moisture leaves the range in which the coefficients hold.
    """
    halves = [
        f"{'+' if change > 0 else '-'}{length_text(abs(change), units=units)} {season}"
        for change, season in ((moves.winter, "winter"), (moves.summer, "summer"))
        if FINE[units].count(abs(change))
    ]
    return f"seasonal change{', about' if moves.is_about else ''}: {', '.join(halves)} (not a cut)"


_WORK: tuple[Callable[[Part, Grid], Iterator[str]], ...] = (
    frame_words,
    member_work,
    _bevels,
    clad_work,
    leaned_edges,
    _plane_edges,
    _curves,
    plane_rabbets,
    saw_notes,
    _notches,
    _mid_notches,
    _tapers,
    _rabbets,
    _grooves,
    _scribes,
    _to_openings,
    _back_bevels,
    _moldings,
    _returns,
    strip_bends,
    blank_bends,
    return_bends,
    _moves,
)
