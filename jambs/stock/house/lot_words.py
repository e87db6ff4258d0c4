"""What a reader of the cutting plan has to know: what was assumed, what the saw demands, where miters might nest.

Nothing is sawn to any of it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from jambs.job.models.openings import Assumed, Job
from jambs.job.models.shop import Shop
from jambs.length import FINE, MM_PER_INCH, OFF_GRID, Grid, Units, length_text
from jambs.outlines import rectangle
from jambs.parts.board.cuts import Miter
from jambs.parts.board.kinds import Where
from jambs.parts.board.listing import marks_listed
from jambs.parts.board.part import Part
from jambs.parts.kit.planned import Waits
from jambs.parts.style_checks import USUAL_LEAST_STRIP
from jambs.parts.words.cut_words import TO_OPENING
from jambs.parts.words.ply_words import resawn_words
from jambs.stock.house.house_pieces import CutPiece, course_letters
from jambs.stock.house.house_plan import PlannedLot
from jambs.stock.house.lots import Lot
from jambs.stock.house.lumber import USUAL_END_TRIM, USUAL_LENGTHS, Lumber
from jambs.stock.house.lumber_words import sold_text
from jambs.stock.problem import LotKind
from jambs.stock.ripped_again import spared_boards

PRACTICE = "common practice, no source; the job gives none"
LEAST_DROP = {Units.INCH: (24.0, 1.5), Units.MM: (600 / MM_PER_INCH, 40 / MM_PER_INCH)}
"""Length and width of the least drop that is kept where the job does not say [in]; nothing is sawn to it."""
SLOPE = 1e-9


def least_drop(shop: Shop, units: Units) -> tuple[float, float]:
    """Length and width of the least drop that is kept [in]."""
    given = shop.least_drop
    return (given.length, given.width) if given else LEAST_DROP[units]


def plan_assumed(lots: Sequence[Lot], job: Job) -> tuple[Assumed, ...]:
    """Return what the plan takes for granted that the job does not say."""
    return (
        *_saw_assumed(job.shop, job.units),
        *_board_assumed(lots, job.units),
        *_habits_assumed(lots, job.shop, job.units),
    )


def _saw_assumed(shop: Shop, units: Units) -> Iterator[Assumed]:
    if shop.end_trim is None:
        yield Assumed(what="end trim", value=f"{_text(USUAL_END_TRIM[units], units)} off each end", why=PRACTICE)
    if shop.least_strip is None:
        yield Assumed(what="narrowest strip", value=_text(USUAL_LEAST_STRIP[units], units), why=PRACTICE)


def _board_assumed(lots: Iterable[Lot], units: Units) -> Iterator[Assumed]:
    kinds = [one for lot in lots for one in lot.lumber if not one.stock.on_hand]
    for words in dict.fromkeys(one.words for one in kinds if one.price_is_assumed):
        why = "the job gives none; the mean of its material by the area of the face, or 1.00 a square foot"
        yield Assumed(what=f"price of {words}", value="by its area", why=why)
    for words in dict.fromkeys(one.words for one in kinds if one.lengths_are_assumed):
        usual = ", ".join(length_text(length, units=units) for length in USUAL_LENGTHS[units])
        yield Assumed(what=f"lengths of {words}", value=usual, why=PRACTICE)


def _habits_assumed(lots: Iterable[Lot], shop: Shop, units: Units) -> Iterator[Assumed]:
    is_planned = any(one.is_planned for lot in lots for one in lot.pieces)
    if shop.planned_allowance is None and is_planned:
        why = (
            "the job gives no planned_allowance; measure before cutting these, or mill ahead as the measure sheet says"
        )
        yield Assumed(what="width left on where a depth is only planned", value="none", why=why)
    if shop.spares is None:
        yield Assumed(what="spare boards", value="none", why="the job gives no spares")
    if shop.least_drop is None:
        length, width = least_drop(shop, units)
        yield Assumed(what="least drop kept", value=f"{_text(length, units)} × {_text(width, units)}", why=PRACTICE)


def saw_cautions(lots: Sequence[Lot], units: Units) -> tuple[str, ...]:
    """Return what to mind at the saw; common practice, no source."""
    saw = next((lot.problem.saw for lot in lots), None)
    if saw is None:
        return ()
    trim, least = (length_text(FINE[units].at(one), units=units) for one in (saw.end_trim, saw.least_strip))
    said = [
        "Look every board over first: the plan knows nothing of knots, checks, crook and color. Set a bad board "
        "aside and re-plan the rest with --spoiled.",
        f"Trim {trim} off both ends: factory ends are not square. Running lengths count from the left end, before it "
        "is trimmed.",
        "Set a stop once, cut everything at that stop, and check the first piece against its cut sheet.",
    ]
    if any(lot.problem.is_ripped for lot in lots):
        said += [
            "Joint one edge straight and run it along the fence. Rip the strips in the order drawn, from the straight "
            "edge: the widest first, while there is wood to hold.",
            f"No strip under {least} between blade and fence: let it fall on the free side, or use a push stick; "
            "keep the riving knife (or splitter) in. If a board pinches or springs as it is ripped: saw off, set it "
            "aside, joint a new straight edge.",
        ]
    if any(lot.problem.kind is LotKind.SHEETS for lot in lots):
        said.append("Sheets: grain along the strips. Break a sheet down with two people or a track saw.")
    if any(one.glued and not one.part.is_laminated for lot in lots for one in lot.pieces):
        said.append(
            "Glued parts: the strips are ripped wider by what jointing takes, and longer. Joint the edges, glue, and "
            "rip the panel to the width on the cut sheet; square its ends and saw its cuts after that."
        )
    return tuple(said)


def lumber_text(lumber: Lumber, *, units: Units) -> str:
    """Print what a board is sold as: its length; of a sheet width × length."""
    if not lumber.is_sheet:
        return sold_text(lumber.length, units=units)
    return f"{length_text(lumber.width, units=units)} × {length_text(lumber.length, units=units)}"


def lot_notes(planned: PlannedLot, grid: Grid) -> tuple[str, ...]:
    """Return what goes with one lot: widths left on, parts to glue up, miters that might nest."""
    return (
        *_allowance_note(planned.lot, grid),
        *_course_notes(planned.lot, grid),
        *opening_note(planned.lot),
        *_glue_notes(planned.lot, grid),
        *(_pairs_note(planned) if planned.plan.problem.pairs else _nesting_note(planned, grid)),
        *_beside_note(planned, grid),
        *_again_note(planned),
    )


def _allowance_note(lot: Lot, grid: Grid) -> Iterator[str]:
    """Say what is left on, in width and in length, and of which pieces no board gives all that may be needed."""
    bare = [one for one in lot.pieces if Waits.WIDTH in one.waits and not one.allowance and not one.glued]
    if bare:
        who = "1 piece has its" if len(bare) == 1 else f"{len(bare)} pieces have their"
        yield f"{who} planned width: measure before ripping to it.{_until_then(bare)}"
    wider, longer = ([one for one in lot.pieces if how(one)] for how in (_wider, _waits_in_length))
    if wider:
        is_one = len(wider) == 1
        hold, its, it = ("1 piece holds", "its", "it") if is_one else (f"{len(wider)} pieces hold", "their", "them")
        yield (
            f"{hold} {_span((_over(one, grid) for one in wider), grid)} more than {its} planned width (marked +): "
            f"rip {it} to size once the opening is measured."
        )
    if longer:
        yield (
            f"In flared openings the length waits for the depth too: {marks_listed(one.piece.mark for one in longer)} "
            f"hold {_span(map(_longer, longer), grid)} more than the planned length (marked +), for the deepest wall "
            "on the measure sheet. Saw no end to size before the opening is measured."
        )
    if feet := _waiting(lot, Waits.FOOT):
        yield (
            f"The foot goes by the depth outside, on a sloping sill: {feet}. Saw it once that is measured, or fit "
            "it on the sill."
        )
    if out := _waiting(lot, Waits.LENGTH, without=longer):
        yield f"The length goes by the depth, where jambs flare: {out}. Saw no end before that is measured."
    if apart := _waiting(lot, Waits.APART):
        yield (
            f"Over a wall or a mull the size goes by how openings or units stand apart: {apart}. Tape that before they "
            "are cut."
        )
    for one in lot.pieces:
        if one.short > OFF_GRID:
            yield (
                f"{one.piece.mark} holds all that a board in stock gives, {grid.text(one.short)} less than may be "
                "needed at worst: measure first."
            )


def _waiting(lot: Lot, what: Waits, without: Sequence[CutPiece] = ()) -> str:
    """Return the marks of the parts of which this may still change, each once."""
    told = {one.part.mark for one in without}
    return marks_listed(
        dict.fromkeys(one.part.mark for one in lot.pieces if what in one.waits and one.part.mark not in told)
    )


def _course_notes(lot: Lot, grid: Grid) -> Iterator[str]:
    """Say of pieces of cladding in courses where they run, how they are cut off, and what their length waits for."""
    pieces = [one for one in lot.pieces if one.is_of_course]
    mitered, square = ([one for one in pieces if one.piece.is_mitered is is_it] for is_it in (True, False))
    told = [
        f"{_course_runs(some)}{how}"
        for some, how in ((square, ""), (mitered, " (mitered there, as long as the face)"))
        if some
    ]
    if told:
        yield (
            f"Cladding in courses from the frame to the corner: {'; '.join(told)}. Cut one to a stop, try it, then the "
            "rest; hold the board, never the short piece. The piece at the foot is cut to the slope of the sill, the "
            "one under the head return to fit, where they are laid."
        )
    waiting = [one for one in pieces if one.is_planned]
    if waiting:
        over = [one.longer for one in waiting if one.longer]
        more = (
            f"hold {_span(over, grid)} more than the planned length (marked +)" if over else "have their planned length"
        )
        whose = f" ({_course_runs(waiting)})" if len(waiting) < len(pieces) else ""
        yield (
            f"Pieces of courses{whose} {more}, which waits for the depth outside: saw none to length before the "
            "opening is measured."
        )


def _course_runs(pieces: Sequence[CutPiece]) -> str:
    """Tell pieces of courses by the first and the last of those that follow each other; other boards have the rest."""
    there = {one.piece.mark for one in pieces}
    runs: list[list[str]] = []
    for leg in {one.part.mark: one.part for one in pieces}.values():
        runs.append([])
        for place in range(len(leg.blank.courses)):
            mark = leg.mark + course_letters(place)
            if mark in there:
                runs[-1].append(mark)
            elif runs[-1]:
                runs.append([])
    return ", ".join(" to ".join(dict.fromkeys((run[0], run[-1]))) for run in runs if run)


def _until_then(bare: Sequence[CutPiece]) -> str:
    """Name the measure sheet for those that it says a width of: inside. Outside nothing is milled ahead."""
    inside = [one.part.where is Where.INTERIOR for one in bare]
    if not any(inside):
        return ""
    which = " " if all(inside) else " those inside "
    return f" Until then rip{which}no narrower than the measure sheet allows for milling ahead."


def _wider(one: CutPiece) -> float:
    return one.allowance


def _over(one: CutPiece, grid: Grid) -> float:
    """What is left on the width as printed: along a slant the difference of two printed widths [in]."""
    return one.allowance if grid.holds(one.allowance) else grid.as_sawn(one.width) - grid.as_sawn(one.part.width)


def _longer(one: CutPiece) -> float:
    return one.longer


def _waits_in_length(one: CutPiece) -> float:
    return 0.0 if one.is_of_course else one.longer


def _span(lengths: Iterable[float], grid: Grid) -> str:
    """Print the least and the greatest length, once where they are alike."""
    printed = [grid.text(length) for length in sorted(lengths)]
    return " to ".join(dict.fromkeys((printed[0], printed[-1])))


def opening_note(lot: Lot) -> Iterator[str]:
    """Say which parts wait for an opening that another crew finishes."""
    marks = dict.fromkeys(one.part.mark for one in lot.pieces if one.part.is_cut_to_opening)
    if marks:
        yield f"{', '.join(marks)}: {TO_OPENING}."


def _glue_notes(lot: Lot, grid: Grid) -> Iterator[str]:
    glued: dict[str, list[CutPiece]] = {}
    for one in lot.pieces:
        if one.glued:
            glued.setdefault(one.part.mark, []).append(one)
    for mark, strips in glued.items():
        if strips[0].part.is_laminated:
            pieces = ", ".join(one.piece.mark for one in strips)
            yield f"{mark} is bent from plies of {pieces}: {resawn_words(strips[0].part, grid.units)}."
            continue
        marks, width = ", ".join(one.piece.mark for one in strips), grid.text(strips[0].part.width)
        waits = Waits.WIDTH in strips[0].waits
        rip = (
            f"rip it to {width}, its planned width, once the opening is measured"
            if waits
            else f"then rip it to {width}"
        )
        yield f"{mark} is glued up from {marks}; {rip}."


def _pairs_note(planned: PlannedLot) -> Iterator[str]:
    """Say which pieces lie head to tail, and how the two of a pair are parted."""
    said = ", ".join(
        f"{_laid(pair.first, pair.is_first_turned)} and {_laid(pair.second, pair.is_second_turned)}"
        for pair in planned.plan.problem.pairs
        if not pair.across
    )
    if not said:
        return
    yield (
        f"Head to tail, as drawn, one slanted cut between the two: {said} (turned: end for end, face up like all). "
        "Saw the first to its length at its long point. The end that is left is an end of the second already, with its "
        "long point on the other edge: measure from there. Hold the strip to the fence, not the piece that comes free, "
        "until the blade stands."
    )


def _beside_note(planned: PlannedLot, grid: Grid) -> Iterator[str]:
    """Say which pieces that taper are ripped side by side, and how the two are parted."""
    at = grid.fine.at
    said = ", ".join(
        f"{pair.first} and {pair.second} {'turned over' if pair.is_second_over else 'turned end for end'} out of "
        f"{grid.text(at(pair.across))}"
        for pair in planned.plan.problem.pairs
        if pair.across
    )
    if said:
        yield (
            f"Side by side, slanted edges toward each other: {said}. Rip and crosscut the strip whole, mark both "
            "widths at both ends, each from its own straight edge, and part them along the taper with a sled. Mark the "
            "faces: one that is turned over lies with its back up until it is free."
        )


def _laid(mark: str, is_turned: bool) -> str:
    return f"{mark} turned" if is_turned else mark


def _nesting_note(planned: PlannedLot, grid: Grid) -> Iterator[str]:
    """Say what nesting would leave over; the plan counts on none of it."""
    flat = {one.piece.mark: one.part for one in planned.lot.pieces if _nests(one.part)}
    pairs = [
        (left.mark, right.mark)
        for board in planned.plan.boards
        for strip in board.strips
        for left, right in zip(strip.pieces, strip.pieces[1:], strict=False)
        if left.mark in flat and right.mark in flat
    ]
    if pairs:
        part = flat[pairs[0][0]]
        yield (
            f"Mitered pieces lie next to each other {len(pairs)} times. Flat stock nests: turn every second piece end "
            f"for end, so that one slanted cut serves both; each time {grid.text(part.width)} more is left at the "
            "end. The plan counts on none of it, and molded stock cannot be turned."
        )


def _again_note(planned: PlannedLot) -> Iterator[str]:
    """Say what ripping a drop again would save: plan and proof are of boards ripped whole, first."""
    spared = spared_boards(planned.plan)
    if not spared:
        return
    name = planned.lot.board_mark
    moved: dict[str, list[str]] = {}
    for mark, giver in (move for one in spared for move in one.moved):
        moved.setdefault(name(giver), []).append(mark)
    out = "; ".join(f"{marks_listed(marks)} out of the drop of {giver}" for giver, marks in moved.items())
    boards = " and ".join(name(one.board) for one in spared)
    yield (
        "Plan and proof are of boards ripped whole, first. A drop that is ripped again after its crosscut can save "
        f"more: {out}; {boards} {'is' if len(spared) == 1 else 'are'} not needed then."
    )


def _nests(part: Part) -> bool:
    miters = [cut for cut in part.cuts if isinstance(cut, Miter)]
    is_flat = part.profile == rectangle(part.width, part.thickness)
    return is_flat and len(miters) == 2 and all(math.isclose(cut.angle_deg, 45, abs_tol=SLOPE) for cut in miters)


def _text(length: float, units: Units) -> str:
    return length_text(length, units=units)
