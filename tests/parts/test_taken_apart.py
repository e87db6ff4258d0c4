"""The picture of a kit pulled apart, by hand: what lies before something else moves farther."""

from __future__ import annotations

import pytest
from cases import STOOL, kit_of
from gangs import boxed, ganged_kit

from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.taken_apart import APART, DEEP, taken_apart
from jambs.parts.kit.kit import Kit
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
    check(kit_of(interior_trim__inside=STOOL), kind, side, where, moved)


def check(kit: Kit, kind: PartKind, side: Side, where: Where, moved: tuple[float, float, float]) -> None:
    part = next(one for one in kit.parts if (one.kind, one.side, one.where) == (kind, side, where))
    x, y, depth = moved
    assert taken_apart(part, size=48.0) == pytest.approx((x * APART * 48, y * APART * 48, depth * DEEP * 48))


def test_what_lies_between_ganged_units_comes_before_their_jambs_and_behind_the_casing() -> None:
    """Six tenths of a step, and to no side: they stay in the middle, behind the jambs round the box."""
    kit = ganged_kit()
    check(kit, PartKind.MULL_CASING, Side.LEFT, Where.INTERIOR, (0.0, 0.0, -0.6))
    check(kit, PartKind.TRANSOM_BAR_CASING, Side.HEAD, Where.EXTERIOR, (0.0, 0.0, 0.6))


def test_the_jambs_that_box_a_post_stay_in_its_place() -> None:
    """As far from the window as the jambs round it, and to no side: they stand in the middle of the opening."""
    check(kit_of(**boxed()), PartKind.MULL_JAMB, Side.LEFT, Where.INTERIOR, (0.0, 0.0, -1.0))


def test_a_liner_buck_stays_in_the_plane_of_the_window_and_a_band_goes_with_its_casing() -> None:
    lined = kit_of(walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"})
    check(lined, PartKind.LINER_BUCK, Side.LEFT, Where.BUCK, (-2.4, 0.0, 0.0))
    band = {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}
    cased = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
    banded = kit_of(interior_trim__inside={**STOOL, "casing": cased, "built_up": {"backband": band}})
    check(banded, PartKind.BACKBAND, Side.HEAD, Where.INTERIOR, (0.0, 1.0, -2.0))
