"""The picture of a kit pulled apart, by hand: what lies before something else moves farther."""

from __future__ import annotations

import pytest
from cases import STOOL, kit_of

from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.taken_apart import APART, DEEP, taken_apart
from jambs.sides import Side


@pytest.mark.parametrize(
    ("kind", "side", "where", "moved"),
    [
        (PartKind.EXTENSION_JAMB, Side.LEFT, Where.INTERIOR, (-1.0, 0.0, -1.0)),
        (PartKind.CASING, Side.HEAD, Where.INTERIOR, (0.0, 1.0, -2.0)),
        (PartKind.STOOL, Side.SILL, Where.INTERIOR, (0.0, -1.0, -1.0)),
        # Below the stool, in the layer of the casing.
        (PartKind.APRON, Side.SILL, Where.INTERIOR, (0.0, -1.8, -2.0)),
        (PartKind.EXTERIOR_JAMB, Side.RIGHT, Where.EXTERIOR, (1.0, 0.0, 1.0)),
        # Over the head casing, and before it.
        (PartKind.HEAD_FLASHING, Side.HEAD, Where.EXTERIOR, (0.0, 1.6, 2.6)),
        # Around the window, in its own plane.
        (PartKind.OUTBOARD_BUCK, Side.LEFT, Where.BUCK, (-2.4, 0.0, 0.0)),
    ],
)
def test_each_part_has_a_layer_and_a_way_out(
    kind: PartKind, side: Side, where: Where, moved: tuple[float, float, float]
) -> None:
    kit = kit_of(interior_trim__inside=STOOL)
    part = next(one for one in kit.parts if (one.kind, one.side, one.where) == (kind, side, where))
    x, y, depth = moved
    assert taken_apart(part, size=48.0) == pytest.approx((x * APART * 48, y * APART * 48, depth * DEEP * 48))
