"""What stands between framing in a rough opening of ganged units: posts of mulls, transom bars; where, how long."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from jambs.job.models.gang import Gang, Mull, MullKind
from jambs.job.models.openings import Opening
from jambs.place.along_mull import AlongMull
from jambs.place.placement import Sides


@dataclass(frozen=True, slots=True, kw_only=True)
class Post(AlongMull):
    """A post of a mull, or a transom bar, from framing to framing. ``on_bar``, ``under_bar``: what its ends meet."""

    on_bar: bool = False
    under_bar: bool = False


def posts_in(opening: Opening, shims: Sides) -> tuple[Post, ...]:
    """Return what has to stand in the rough opening before the units; ``shims``: frames → rough opening [in].

    A bar goes from side to side of the rough opening; a post between from its foot, of doors the floor, to its head.
    """
    gang = opening.gang
    return () if gang is None else tuple(_posts(opening, gang, shims))


def _posts(opening: Opening, gang: Gang, shims: Sides) -> Iterator[Post]:
    frame, below = opening.frame, opening.floor_below_frame
    foot = -shims.sill if below is None else -below
    for mull in gang.mulls:
        if mull.post is None:
            continue
        low = mull.low + mull.joint
        if mull.kind is MullKind.TRANSOM_BAR:
            ends = (-shims.left, frame.width + shims.right)
            yield Post(mull=mull, low=low, high=low + mull.post, start=ends[0], finish=ends[1])
            continue
        under, over = mull.row > 0, mull.row < gang.rows - 1
        yield Post(
            mull=mull,
            low=low,
            high=low + mull.post,
            start=_edge_of(gang.bars[mull.row - 1])[1] if under else foot,
            finish=_edge_of(gang.bars[mull.row])[0] if over else frame.height + shims.head,
            on_bar=under,
            under_bar=over,
        )


def _edge_of(bar: Mull) -> tuple[float, float]:
    """Return bottom and top of what lies in a bar [in]: of a gap the edges of the frames."""
    return bar.low + bar.joint, bar.high - bar.joint
