"""What a cutting plan leaves on in a flared opening: as much as the measure sheet says, in width and in length."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of

from jambs.job import Job
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.mill_ahead import rips_ahead
from jambs.parts.make import make_kit
from jambs.parts.readings.tolerance import depth_range
from jambs.place.solve import place_windows
from jambs.stock.house.house_pieces import CutPiece, house_pieces

ALLOWANCE = {"shop__planned_allowance": "1/4"}
POPLAR = [{"nominal": one, "stock": "poplar"} for one in ("1x6", "1x8", "1x10")]
FLARE = {"sides": "20 deg", "head": "15 deg"}


def made(**paths: Any) -> tuple[Kit, Job]:
    job = job_of(changed(**{"shop__boards": POPLAR, **paths}))
    return make_kit(place_windows(job)[0], job), job


def pieces(kit: Kit, job: Job) -> dict[str, CutPiece]:
    return {one.part.told: one for one in house_pieces([kit], job)}


def spare(kit: Kit, job: Job) -> float:
    return depth_range(kit.placement).width_to_leave(job.shop.grid)


def test_sheet_and_plan_rip_a_flared_jamb_to_one_width() -> None:
    kit, job = made(interior_trim__inside__flare=FLARE, **ALLOWANCE)
    said = {one.part.told: one.width for one in rips_ahead(kit, job, spare(kit, job))}
    sawn = pieces(kit, job)
    assert {told: round(sawn[told].width, 6) for told in said} == {
        told: round(width, 6) for told, width in said.items()
    }
    # 11/32 at worst along 20°: 0.366, more than the 1/4 that the shop leaves on.
    assert sawn["extension jamb, left leg"].allowance >= 11 / 32 / 0.9397


@pytest.mark.parametrize("allowance", ["1/16", "1/4", "1/2"])
@pytest.mark.parametrize("boards", [POPLAR, [{"nominal": "1x4", "stock": "poplar"}]])
def test_sheet_and_plan_rip_a_square_jamb_to_one_width(allowance: str, boards: list[dict[str, str]]) -> None:
    """Out of one board, and glued up, where the strips add up to the panel and what jointing takes."""
    kit, job = made(shop__planned_allowance=allowance, shop__boards=boards)
    said = {one.part.told: one.width for one in rips_ahead(kit, job, spare(kit, job))}
    assert len(said) == 4
    for told, width in said.items():
        (part,) = (one for one in kit.parts if one.told == told)
        strips = [one for one in house_pieces([kit], job) if one.part.mark == part.mark]
        if part.strips:
            assert sum(one.width for one in strips) >= width > part.width
        else:
            assert [one.width for one in strips] == [pytest.approx(width)]


def test_what_ends_at_the_room_edge_is_left_longer_by_the_worst_depth() -> None:
    """11/32 tan 20° = 0.1251 at both ends of the head: 0.2502, on 1/32 9/32; 11/32 tan 15° = 0.0921 at one of a leg."""
    kit, job = made(interior_trim__inside__flare=FLARE, **ALLOWANCE)
    sawn = pieces(kit, job)
    for told in ("extension jamb, head", "interior casing, head"):
        assert (sawn[told].longer, sawn[told].length - sawn[told].part.length) == (9 / 32, 9 / 32)
    assert sawn["interior casing, left leg"].longer == 3 / 32


def test_nothing_is_left_longer_where_no_depth_moves_it() -> None:
    square, by_length = made(**ALLOWANCE), made(interior_trim__inside__flare={"sides": "1 in"}, **ALLOWANCE)
    none_left_on = made(interior_trim__inside__flare=FLARE)
    for kit, job in (square, by_length, none_left_on):
        assert {one.longer for one in house_pieces([kit], job)} == {0.0}
    # A square jamb keeps what the shop leaves on.
    assert {one.allowance for one in house_pieces(list(square[:1]), square[1])} == {0.0, 0.25}


def test_where_no_board_gives_the_worst_it_is_said_how_much_is_short() -> None:
    # Legs, 4 23/32 / cos 20° + 3/4 tan 20° = 5.2947: 1x6 gives 5 3/8, a 1/4 more comes out of none.
    kit, job = made(
        interior_trim__inside__flare={"sides": "20 deg"},
        shop__planned_allowance="1/16",
        shop__boards=POPLAR[:1],
    )
    leg = pieces(kit, job)["extension jamb, left leg"]
    assert (leg.width, round(leg.short, 6)) == (5.375, 0.3125)
