"""The boards over mulls and transom bars, on the solids: what they bear on, what they meet, the reveals they leave."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.gang import MullKind
from jambs.parts.board.kinds import PartKind, Where
from jambs.place.units import mull_frames
from jambs.solids.joints import joint
from jambs.solids.lookup import X, Y
from jambs.solids.model import KitSolids, Solid
from jambs.solids.mull_box_checks import box_joints, box_measures, boxes_of, inner_edge
from jambs.solids.report import TIGHT, JointCheck, Measure


def mull_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure how the covers lie on the frames at the mulls, and that uprights and bar end on each other."""
    found = box_joints(solids)
    if solids.kit.run:
        return found
    for where in (Where.INTERIOR, Where.EXTERIOR):
        covers = [] if boxes_of(solids, where) else _covers(solids, where)
        edges = [edge for _, edge in _frames(solids, where)]
        for cover in covers:
            asked = sum(_shared(cover, edge) for edge in edges)
            between = "transom bar" if _is_bar(cover) else "mull"
            found.append(joint(f"{cover.words} and the frames at the {between}", [cover], solids.between, asked=asked))
        bars = [one for one in covers if _is_bar(one)]
        for cover in (one for one in covers if one not in bars) if bars else ():
            assert cover.part is not None
            ends = _ends_on(cover, bars)
            asked = ends * cover.part.silhouettes.sizes.width * cover.part.thickness
            found.append(joint(f"{cover.words} and the transom bar casing", [cover], bars, asked=asked))
    return found


def _ends_on(cover: Solid, bars: Sequence[Solid]) -> int:
    """How many ends of an upright meet a bar: one in the lowest and the highest row, two between."""
    assert cover.part is not None
    return sum(
        abs(end - edge) < TIGHT
        for bar in bars
        for end, edge in ((cover.low[Y], bar.high[Y]), (cover.high[Y], bar.low[Y]))
    )


def _is_bar(cover: Solid) -> bool:
    return cover.part is not None and cover.part.kind is PartKind.TRANSOM_BAR_CASING


def _frames(solids: KitSolids, where: Where) -> Sequence[tuple[int, tuple[float, float, float, float]]]:
    return mull_frames(solids.kit.placement.opening, from_outside=where is Where.EXTERIOR)


def _covers(solids: KitSolids, where: Where) -> list[Solid]:
    return [one for one in solids.parts if one.part and one.part.where is where and one.part.kind.is_between_units]


def _shared(cover: Solid, edge: tuple[float, float, float, float]) -> float:
    """Area that the back of a cover and the edge of a frame share [sq in].

    A beveled end is longer at the face than at the back, which is what lies on the frame.
    """
    part = cover.part
    assert part is not None
    left, bottom, right, top = edge
    low, high = list(cover.low[:2]), list(cover.high[:2])
    ends = part.silhouettes.edge
    along = X if part.kind is PartKind.TRANSOM_BAR_CASING else Y
    at_back = [u for u, w in ends if abs(w - part.thickness) < TIGHT]
    start = low[along]
    low[along], high[along] = start + min(at_back), start + max(at_back)
    across = min(high[X], right) - max(low[X], left)
    up = min(high[Y], top) - max(low[Y], bottom)
    return max(across, 0.0) * max(up, 0.0)


def mull_measures(solids: KitSolids) -> list[Measure]:
    """Measure the reveal that every cover leaves on every frame that it lies on, from the frame's inner edge."""
    opening = solids.kit.placement.opening
    gang = opening.gang
    if gang is None:
        return []
    found = box_measures(solids)
    trims = ((Where.INTERIOR, opening.interior), (Where.EXTERIOR, opening.exterior))
    for where, trim in trims:
        if boxes_of(solids, where):
            continue
        for cover in _covers(solids, where) if trim else ():
            assert cover.part is not None and trim is not None
            kind = MullKind.TRANSOM_BAR if cover.part.kind is PartKind.TRANSOM_BAR_CASING else MullKind.MULL
            mull = next(one for one in gang.mulls if one.kind is kind and one.member == cover.part.member)
            before, after = gang.unit(mull.before[0]), gang.unit(mull.after[0])
            axis = Y if kind is MullKind.TRANSOM_BAR else X
            at_low = cover.low[axis] - inner_edge(before, axis, where)
            at_high = inner_edge(after, axis, where, far=False) - cover.high[axis]
            name, loose = f"reveal at {cover.words}, unit", solids.job.shop.grid.step + TIGHT
            found += [  # place and width are put on the grid, each once
                Measure(name=f"{name} {unit.number}", asked=trim.frame_reveal, found=reveal, tolerance=loose)
                for unit, reveal in ((before, at_low), (after, at_high))
            ]
    return found
