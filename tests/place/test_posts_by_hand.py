"""What stands between framing in the rough opening of ganged units, by hand: a shim space of 1/4 on each side."""

from __future__ import annotations

from typing import Any

from cases import placed
from gangs import boxed, ganged

from jambs.job.models.gang import MullKind
from jambs.place.posts import posts_in

POST = {"post": "4", "joint": "1/4"}


def _posts(**paths: Any) -> list[tuple[float, float, float, float]]:
    one = placed(**paths)
    return [(post.low, post.high, post.start, post.finish) for post in posts_in(one.opening, one.shims)]


def test_a_transom_bar_goes_from_side_to_side_of_the_rough_opening() -> None:
    """Frames of 48 below it and 60 1/2 wide."""
    assert _posts(**ganged(openings__0__transom_bar=POST)) == [(48.25, 52.25, -0.25, 60.75)]


def test_a_mull_post_goes_from_the_rough_sill_to_the_head() -> None:
    """A frame of 30 before it, frames of 48."""
    assert _posts(**boxed()) == [(30.25, 34.25, -0.25, 48.25)]


def test_mull_posts_end_at_a_transom_bar() -> None:
    """Frames of 48 under a bar of 4 1/2 in all; over it the transom is one unit, without a mull."""
    wide = [{"window": "fixed", "frame": "64 1/2 x 16"}]
    paths = ganged(openings__0__transom_bar=POST, openings__0__mull=dict(POST), openings__0__transom=wide)
    assert _posts(**paths) == [(30.25, 34.25, -0.25, 48.25), (48.25, 52.25, -0.25, 64.75)]


def test_where_frames_are_joined_nothing_stands_between_framing() -> None:
    assert _posts(**ganged()) == [] and _posts() == []


def test_only_a_post_over_a_bar_stands_on_one() -> None:
    """Of two rows: a bar from side to side, a post under it, one over it."""
    over = [{"window": "fixed", "frame": "30 x 16"}, {"window": "fixed", "frame": "30 x 16"}]
    paths = ganged(openings__0__transom_bar=POST, openings__0__mull=dict(POST), openings__0__transom=over)
    one = placed(**paths)
    found = {
        (post.mull.kind, post.mull.row): (post.on_bar, post.under_bar) for post in posts_in(one.opening, one.shims)
    }
    assert found[MullKind.TRANSOM_BAR, 0] == (False, False)
    assert (found[MullKind.MULL, 0], found[MullKind.MULL, 1]) == ((False, True), (True, False))
    # Frames of 48, a bar of 4 with a joint of 1/4 on each side: it lies from 48 1/4 to 52 1/4; 16 over 52 1/2.
    assert _posts(**paths) == [(30.25, 34.25, -0.25, 48.25), (30.25, 34.25, 52.25, 68.75), (48.25, 52.25, -0.25, 64.75)]
