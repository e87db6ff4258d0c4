"""Tables by kind of part know every kind: one that is missing would end a build."""

from __future__ import annotations

import pytest

from jambs.parts.board.kinds import PartKind, told_position
from jambs.section.part_regions import STUFF_OF

UNCUT = {PartKind.HEAD_FLASHING, PartKind.METAL_RETURN, *(kind for kind in PartKind if kind.is_at_corner)}
"""Bent metal has a region of its own, and no section through the middle of a side meets a block in a corner."""


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        (PartKind.STOOL, ""),
        (PartKind.APRON, ""),
        (PartKind.HEAD_FLASHING, ""),
        (PartKind.CASING, "left leg"),
        (PartKind.EXTENSION_JAMB, "left leg"),
    ],
)
def test_where_a_part_is_is_told_unless_its_name_says_it(kind: PartKind, words: str) -> None:
    assert told_position(kind.words, "left leg") == words


@pytest.mark.parametrize("kind", PartKind, ids=lambda kind: kind.name)
def test_it_is_known_of_what_stuff_it_is(kind: PartKind) -> None:
    assert (kind in STUFF_OF) or kind in UNCUT
