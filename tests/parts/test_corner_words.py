"""How the jambs of a shape meet, in words: what is mitered and which board covers the other, by hand."""

from __future__ import annotations

from typing import Any

import pytest
from arches import arched
from cases import STOOL, kit_of
from rounds import rounded

from jambs.parts.board.kinds import Where
from jambs.parts.words.corner_words import has_no_butt, jamb_corner_words


def words(shape: Any, width: float, height: float, **more: Any) -> str:
    return jamb_corner_words(arched(shape, width, height, **more).kit)


def test_every_corner_of_an_octagon_is_mitered() -> None:
    """Each turns by 45°, which takes 22 1/2° mitered and 45° butted."""
    assert words("octagon", 36, 36, exterior_trim__outside__sill=None) == "mitered, all 8 corners"


def test_a_rake_is_mitered_at_its_low_side_and_covers_its_high_leg() -> None:
    """8 in 12 is 33.7°: the low side turns by 56.3° (28.2° mitered, 33.7° butted), the high one by 123.7°."""
    low_left = {"kind": "raked", "left": "32", "right": "48"}
    assert (
        words(low_left, 24, 48) == "mitered: left leg | head; bottom under left leg and right leg; head over right leg"
    )


@pytest.mark.parametrize(("kind", "wanted"), [("half round", "bottom under left leg and right leg; curved")])
def test_an_arch_says_where_its_boards_end(kind: str, wanted: str) -> None:
    assert words(kind, 32, 54).startswith(wanted)


def test_of_a_rectangle_the_job_says_it_all() -> None:
    assert jamb_corner_words(kit_of()) == ""


def test_a_ring_has_no_corners_and_a_head_without_legs_stands_on_the_bottom() -> None:
    assert jamb_corner_words(rounded("full round").kit) == "none, it is a ring"
    assert jamb_corner_words(rounded("half round", 36, 18).kit) == "the curved head stands on them"


def test_slopes_of_one_side_are_told_apart() -> None:
    """6 in 18 is 18.4°: the legs' corners turn by 71.6° (35.8° mitered, 18.4° butted), the peak by 36.9°."""
    assert words({"kind": "gable", "sides": "30"}, 36, 36, exterior_trim__outside__sill=None) == (
        "mitered: head, left | head, right; bottom under left leg and right leg; "
        "head, left over left leg; head, right over right leg"
    )


CORNER: dict[str, Any] = {"interior_trim__inside__casing__corner": "butt", "exterior_trim__outside__sill": None}


@pytest.mark.parametrize(
    ("shape", "width", "height", "wanted"),
    [
        ("octagon", 36, 36, True),
        ({"kind": "raked", "left": "32", "right": "48"}, 24, 48, False),  # its bottom runs past the legs
    ],
)
def test_butt_corners_have_a_place_only_where_a_corner_is_square(
    shape: Any, width: float, height: float, wanted: bool
) -> None:
    assert has_no_butt(arched(shape, width, height, **CORNER).kit, Where.INTERIOR) is wanted


def test_on_a_stool_the_feet_of_the_legs_are_no_corners() -> None:
    """The head is slanted at both ends; the legs end square on the stool, where no casing is."""
    shape = {"openings__0__shape": {"kind": "raked", "left": "32", "right": "48"}, "openings__0__frame": "24 x 48"}
    kit = kit_of(openings__0__rough_opening=None, interior_trim__inside=STOOL, **shape)
    assert has_no_butt(kit, Where.INTERIOR)


def test_a_rectangle_has_the_corners_of_its_job() -> None:
    assert not has_no_butt(kit_of(), Where.INTERIOR)


@pytest.mark.parametrize(
    ("shape", "height", "wanted"),
    [
        ({"kind": "quarter round", "high_side": "left"}, 36, "the curved head stands on the leg and the stool"),
        ("half round", 18, "the curved head stands on the stool"),
    ],
    ids=["with a leg", "without"],
)
def test_a_curved_head_on_a_stool_stands_on_the_leg_that_is_there(shape: Any, height: float, wanted: str) -> None:
    trim = {f"interior_trim__inside__{key}": STOOL[key] for key in ("style", "stool", "apron")}
    assert jamb_corner_words(rounded(shape, 36, height, **trim).kit) == wanted
