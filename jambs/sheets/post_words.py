"""What the framer leaves in the rough opening of ganged units, in words: posts of mulls and transom bars."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.length import Grid
from jambs.parts.kit.kit import Kit
from jambs.place.placement import Placement
from jambs.place.posts import Post, posts_in

WHO = "Bearing, depth and fastening: as an engineer or the maker of the windows says"

WHO_BETWEEN = "Studs and headers: as an engineer or the code says"


def posts_words(placement: Placement, grid: Grid) -> str:
    """Say which posts and bars stand in the rough opening, where, how wide and how long; nothing where none does."""
    posts = posts_in(placement.opening, placement.shims)
    told = "; ".join(_words(post, placement, grid) for post in posts)
    return f"{told}. {WHO}" if told else ""


def walls_words(kit: Kit, grid: Grid) -> str:
    """Say of the leftmost of openings that are trimmed as one how wide the framed walls between are."""
    run, planned = kit.run, kit.placement.opening.run
    if run is None or planned is None or not run.is_lead:
        return ""
    pairs = zip(run.members, run.members[1:], planned.walls, strict=False)
    told = "; ".join(f"wall between {one.mark} and {other.mark} {grid.text(wall)} wide" for one, other, wall in pairs)
    return f"{told}; rough sills and heads in one line, all in one plane: they are trimmed as one. {WHO_BETWEEN}"


def _words(post: Post, placement: Placement, grid: Grid) -> str:
    return ", ".join(_bar(post, placement, grid) if post.is_bar else _upright(post, placement, grid))


def _bar(post: Post, placement: Placement, grid: Grid) -> Iterator[str]:
    opening, text = placement.opening, grid.text
    below, datum = opening.floor_below_frame, "the finished floor"
    if below is None:
        below = opening.sill_height
    if below is None:
        below, datum = 0.0, "the bottom of the frames"
    yield f"transom bar {text(post.width)} high"
    yield f"its bottom {text(post.low + below)} and its top {text(post.high + below)} above {datum}"
    yield f"{text(post.length)} long, from side to side of the rough opening for the window"


def _upright(post: Post, placement: Placement, grid: Grid) -> Iterator[str]:
    text, left = grid.text, placement.shims.left
    is_door = placement.opening.floor_below_frame is not None
    foot = "the transom bar" if post.on_bar else "the floor" if is_door else "the rough sill"
    head = "the transom bar" if post.under_bar else "the head"
    before, after = (", ".join(map(str, numbers)) for numbers in (post.mull.before, post.mull.after))
    yield f"mull post of units {before} | {after} {text(post.width)} wide"
    yield f"its sides {text(post.low + left)} and {text(post.high + left)} from the left of the rough opening"
    yield f"{text(post.length)} long, from {foot} to {head}"
