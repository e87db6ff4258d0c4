"""What is left on flared jambs before the tape: as much as may be needed at worst, as far as a board gives it."""

from __future__ import annotations

import pytest
from cases import changed, job_of

from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.left_on import left_on
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sides import Side

CASING, EXTENSION_JAMB = PartKind.CASING, PartKind.EXTENSION_JAMB
FLARED = {
    "interior_trim__inside__flare": {"sides": "10 deg", "head": "15 deg"},
    "interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
    "shop__planned_allowance": "1/8",
    "shop__boards": [{"nominal": name, "stock": "poplar"} for name in ("1x4", "1x6")],
}


def test_no_more_is_left_on_than_the_widest_board_gives() -> None:
    """The depth may turn out 11/32 more. The head is 5.08617 wide (4 23/32 over cos 15° and 3/4 by its tangent).

    11/32 over cos 15° is 0.35587, in all 5.44204: up to 5 15/32, and a 1x6 less 1/8 gives 5 3/8. The legs are 4.92379,
    11/32 over cos 10° is 0.34906, in all 5.27285: up to 5 9/32, which it gives.
    """
    job = job_of(changed(**FLARED))
    (placement,) = place_windows(job)
    found = {part.side: left_on(part, placement, job.shop, job.boards) for part in make_kit(placement, job).parts[:4]}
    assert found[Side.HEAD].width == pytest.approx(5.375 - 5.08617, abs=1e-5)
    assert found[Side.HEAD].short == pytest.approx(3 / 32)
    assert found[Side.LEFT].width == pytest.approx(5 + 9 / 32 - 4.92379, abs=1e-5)
    assert (found[Side.LEFT].short, found[Side.SILL].width) == (0.0, 11 / 32)


def test_a_square_jamb_gets_what_the_shop_leaves_on_and_no_length() -> None:
    """1/8 across for a depth that is planned; the casing stands where it is measured to and gets nothing."""
    job = job_of(changed(shop__planned_allowance="1/8"))
    (placement,) = place_windows(job)
    parts = make_kit(placement, job).parts
    leg, casing = (next(one for one in parts if one.kind is kind) for kind in (EXTENSION_JAMB, CASING))
    found = [left_on(part, placement, job.shop, job.boards) for part in (leg, casing)]
    assert [(one.width, one.length, one.short) for one in found] == [(0.125, 0.0, 0.0), (0.0, 0.0, 0.0)]


def test_a_flared_casing_gets_length_and_no_width() -> None:
    """Its ends go out with the room edges of the jambs, which a deeper wall moves; its own width is stated."""
    job = job_of(changed(**FLARED))
    (placement,) = place_windows(job)
    casing = next(one for one in make_kit(placement, job).parts if one.kind is CASING)
    found = left_on(casing, placement, job.shop, job.boards)
    assert (found.width, found.short) == (0.0, 0.0) and found.length > 0.0
