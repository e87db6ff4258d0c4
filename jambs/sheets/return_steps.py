"""The order of work at an opening without casing: what the drywall crew does before and after the carpenter."""

from __future__ import annotations

from jambs.job.models.returns import ReturnsEntry
from jambs.length import Grid
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.backing import backing_of
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.drywall import Bead, DrywallWork
from jambs.sheets.backing_words import backing_words, place_words
from jambs.sheets.kit_parts import marks_text, parts_of
from jambs.sides import Side


def returns_steps(kit: CutKit, grid: Grid) -> list[str]:
    """Return the order of work where other crews line the opening, a sentence each."""
    work, entry = kit.drywall, kit.placement.opening.interior.returns
    if work is None or entry is None or work.boards is None:
        return []
    return [
        _frame_gap(kit),
        *_furring(kit, work, grid),
        _boards(kit, entry, grid),
        _beads(work.beads, grid),
        f"Coat to the noses and sand: the finished opening is {grid.text(kit.clear_width)} × "
        f"{grid.text(kit.clear_height)}, square and plumb; {_at_frame(entry, grid)}, airtight.",
        *_sill(kit, grid),
    ]


def _frame_gap(kit: CutKit) -> str:
    """Say that the gap round the frame is closed while it can still be reached: furring and boards hide it."""
    where, floor = "all around", ""
    if kit.placement.opening.floor_below_frame is not None:
        where, floor = "at both sides and the head", "; under the door as its maker says"
    return (
        "Before anything hides it: insulate the gap between frame and rough opening and seal the frame to the framing "
        f"airtight {where}, with tape or with backer and sealant{floor}: the air-control line."
    )


def _furring(kit: CutKit, work: DrywallWork, grid: Grid) -> list[str]:
    """Say how thick and how deep every returned side is furred out; nothing where the boards lie on the framing."""
    boards, text, backing = work.boards, grid.text, backing_of(kit)
    assert boards is not None
    if not backing:
        return []
    *others, last = (f"{text(one.width)} {place_words(one)}" for one in backing)
    sides = f"{', '.join(others)} and {last}" if others else last
    deep = text(max(one.depth for one in backing))
    return [
        f"Fur out the framing {sides} over the whole depth ({deep} from the back of the wall board to the frame), "
        f"straight and square, so that bare boards come to {text(boards.width)} × {text(boards.height)}: before the "
        "wall board is hung."
    ]


def _boards(kit: CutKit, entry: ReturnsEntry, grid: Grid) -> str:
    work = kit.drywall
    assert work is not None
    opening = f"{grid.text(work.wall_board.width)} × {grid.text(work.wall_board.height)}"
    boards = parts_of(kit, PartKind.RETURN, Where.INTERIOR)
    has_bottom = any(part.side is Side.SILL for part in boards)
    corners = "the sides between head and bottom" if has_bottom else "the head over the sides"
    return (
        f"Returns ({marks_text(boards)}): {grid.text(entry.gap_at_frame)} off the frame, {corners}; the "
        f"wall board runs {entry.wall_board.value}, cut to {opening}."
    )


def _at_frame(entry: ReturnsEntry, grid: Grid) -> str:
    """Say what the job has where a return meets the frame: its bead, or sealant alone."""
    if entry.frame_bead:
        return "the bead at the frame sealed to it"
    return (
        f"a sealant joint of {grid.text(entry.gap_at_frame)} at the frame"
        if entry.gap_at_frame
        else "sealed to the frame"
    )


def _beads(beads: tuple[Bead, ...], grid: Grid) -> str:
    kinds = dict.fromkeys((bead.kind, bead.leg, bead.nose) for bead in beads)
    told = (
        f"{kind.value}, leg {grid.text(leg)}" + (f", nose {grid.text(nose)}" if nose else "")
        for kind, leg, nose in kinds
    )
    return f"Beads: {'; '.join(told)}; lengths are on the cut sheet, mitered at the corners."


def _sill(kit: CutKit, grid: Grid) -> list[str]:
    stool, tile, apron = (
        parts_of(kit, one, Where.INTERIOR) for one in (PartKind.STOOL, PartKind.TILE_SILL, PartKind.APRON)
    )
    entry, steps = kit.placement.opening.interior.tile_sill, []
    is_furred = any(one.under for one in backing_of(kit))
    if stool:
        under = "on the furring, thin shims where it needs them" if is_furred else "shim under it"
        steps.append(
            f"Scribe the stool ({marks_text(stool)}) between the finished returns, horns to the wall, level, back edge "
            f"tight to the frame; {under}, a thin joint of sealant at the returns."
        )
    if apron:
        steps.append(f"Apron ({marks_text(apron)}) last: tight under the stool.")
    if tile and entry:
        ground = "furring" if is_furred else "rough sill"
        steps += [
            f"Make the {ground} under the tile ready as the maker of the bed says for wood; lay the bed, "
            f"{grid.text(entry.bed)}.",
            f"Tile ({marks_text(tile)}) in the bed between the returns, falling a hair to the room; joints of "
            f"{grid.text(entry.joint)}, soft.",
        ]
    return steps


def nailer_steps(kit: CutKit, grid: Grid) -> list[str]:
    """Return what stands before wooden jambs without casing are set: nailers, and the line that the jambs go to."""
    edge = kit.placement.opening.interior.wall_edge
    if edge is None or kit.drywall is None:
        return []
    finish = grid.text(kit.placement.planes.finish_back)
    backing = backing_words(backing_of(kit), grid)
    line = f"the finished wall is {finish} in front of the framing: set its line out all around, the jambs go to it"
    if not backing:
        return [f"Before the jambs are set: {line}."]
    return [f"Before the jambs are set: {backing}. Then {line}."]


def bare_edge_steps(kit: CutKit, grid: Grid) -> list[str]:
    """Return what the drywall crew does at wooden jambs without casing."""
    edge, work = kit.placement.opening.interior.wall_edge, kit.drywall
    if edge is None or work is None:
        return []
    opening = f"{grid.text(work.wall_board.width)} × {grid.text(work.wall_board.height)}"
    gap = f", a gap of {grid.text(edge.gap)} to the back of the jamb" if edge.gap else ", tight to the back of the jamb"
    behind = "to the nailers" if backing_of(kit) else "to the framing"
    return [
        f"Wall board: cut to {opening}, its {work.beads[0].kind.value} (leg {grid.text(edge.leg)}) fastened {behind}"
        f"{gap}; mask the jambs, coat, sand; no casing follows.",
    ]
