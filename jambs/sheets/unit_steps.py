"""The steps of an install sheet that only ganged units have: checking how they stand, and covering their mulls."""

from __future__ import annotations

from jambs.job.models.gang import Mull, MullKind
from jambs.length import Grid
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.kit_parts import marks_text, parts_of
from jambs.sheets.run_steps import on_wall_step


def units_steps(kit: CutKit, grid: Grid) -> list[str]:
    """Return how the units are checked before anything is trimmed; none where there is but one."""
    gang = kit.placement.opening.gang
    if gang is None:
        return []
    gaps = "; ".join(_gap_words(mull, grid) for mull in gang.mulls)
    return [
        "Heads of the units of a row in one line, all frames in one plane: check with a straightedge across every "
        f"mull{' and bar' * bool(gang.bars)}, inside and outside. Between frames: {gaps}.",
    ]


def _gap_words(mull: Mull, grid: Grid) -> str:
    post = "" if mull.post is None else f", {_post_words(mull)} of {grid.text(mull.post)} in it"
    before, after = (" and ".join(str(one) for one in numbers) for numbers in (mull.before, mull.after))
    return f"units {before} | {after}: {grid.text(mull.between)}{post}"


def _post_words(mull: Mull) -> str:
    return "the transom bar" if mull.kind is MullKind.TRANSOM_BAR else "a post"


def mull_casing_steps(kit: CutKit, where: Where, grid: Grid) -> list[str]:
    """Return how the boards over mulls and bars go on, on one side of the wall; none where there are none."""
    bar = parts_of(kit, PartKind.TRANSOM_BAR_CASING, where)
    mulls = parts_of(kit, PartKind.MULL_CASING, where)
    jambs = parts_of(kit, PartKind.MULL_JAMB, where)
    if jambs:
        return [_box_step(jambs, mulls, kit, where, grid)]
    if not bar and not mulls:
        return []
    if kit.run:
        return [on_wall_step(mulls, kit, where, grid)]
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    reveal = grid.text(trim.frame_reveal) if trim else ""
    bed = "in a bed of sealant, " if where is Where.EXTERIOR else ""
    level = f"the transom bar casing{'s' * (len(bar) > 1)} ({marks_text(bar)})"
    first = f"{level} first, from leg to leg; then " if bar else ""
    upright = f"those of the mulls ({marks_text(mulls)}), tight at head and foot" if mulls else ""
    order = f"{first}{upright}" if upright else f"{level}, from leg to leg"
    return [
        f"Mull casings on the frames, {bed}{reveal} back from the inner edges of the frames on both sides: "
        f"{order}. Fasten into post or transom bar, else as the maker allows; no screw into a sash, a drain or a seal."
    ]


def _box_step(jambs: tuple[Part, ...], over: tuple[Part, ...], kit: CutKit, where: Where, grid: Grid) -> str:
    """Say how mulls are boxed: their jambs as legs of the units beside them, the casing over both edges."""
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    assert trim is not None
    stand = "plumb between head and foot, tight to the frames"
    if where is Where.EXTERIOR:
        stand = "plumb on the sill, sealed to the frames like the outer legs"
    return (
        f"Box the mulls: jambs ({marks_text(jambs)}) {stand}, faces {grid.text(trim.frame_reveal)} back from the "
        f"frames, blocked apart behind; casing ({marks_text(over)}) over both edges, {grid.text(trim.casing_reveal)} "
        "back from the faces, with the other casing."
    )
