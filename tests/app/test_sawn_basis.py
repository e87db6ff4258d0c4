"""A cutting plan holds as long as what it saws does: a size that moved by less than the shop can read is no change."""

from __future__ import annotations

from typing import Any

from cases import changed, job_of

from jambs.app.basis import bought_basis, parts_basis
from jambs.app.chain import make_kits
from jambs.issued.basis import PARTS
from jambs.job.models.openings import Job
from jambs.length import GRIDS
from jambs.sheets.cutting_lot import _slants
from jambs.stock.house.house_pieces import CutPiece, house_pieces
from jambs.values import angle, sawn_size, size

MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
HEAD, LEGS, BOTTOM = {"W1-1"}, {"W1-2", "W1-3"}, {"W1-4"}
"""The jambs of the opening; casings follow."""


def flared(sides: str, head: str = "15 deg") -> Job:
    return job_of(
        changed(interior_trim__inside__flare={"sides": sides, "head": head}, interior_trim__inside__jamb=MITERED)
    )


def pieces(job: Job) -> dict[str, CutPiece]:
    return {one.piece.mark: one for one in house_pieces(make_kits(job), job)}


def named(old: Job, new: Job) -> set[str]:
    was, now = (bought_basis(make_kits(job), job)[PARTS] for job in (old, new))
    assert was.keys() == now.keys()
    return {mark for mark in was if was[mark] != now[mark]}


def test_a_part_that_moved_by_less_than_the_grid_is_not_named() -> None:
    """The legs lean 0.02° more: 0.0006" wider, the head 0.0035" longer; no paper prints another figure."""
    old, new = flared("10 deg"), flared("10.02 deg")
    was, now = pieces(old), pieces(new)
    assert {mark: one.piece for mark, one in was.items()} == {mark: one.piece for mark, one in now.items()}
    assert was["W1-2"].part.width < now["W1-2"].part.width < was["W1-2"].part.width + 0.001
    assert was["W1-1"].part.length < now["W1-1"].part.length < was["W1-1"].part.length + 0.004
    assert named(old, new) == set()


def test_of_parts_that_moved_those_are_named_that_are_sawn_otherwise() -> None:
    """A steeper head: it is wider, and it ends otherwise where it meets the legs, and they at it; the bottom stays."""
    found = named(flared("10 deg"), flared("10 deg", head="20 deg"))
    assert found >= HEAD | LEGS and not found & BOTTOM


def test_an_angle_that_the_saw_is_set_to_otherwise_is_named() -> None:
    """0.1° is what a saw is set to, though no length or width is printed otherwise."""
    old, new = flared("10 deg"), flared("10.1 deg")
    was, now = pieces(old), pieces(new)
    assert was["W1-2"].piece == now["W1-2"].piece
    assert named(old, new) >= LEGS


def test_every_part_that_the_plan_saws_or_draws_otherwise_is_named() -> None:
    """Slants are drawn to the shop's grid, as far as an eye sees them."""
    old, new = flared("10 deg"), flared("10 deg", head="20 deg")
    was, now, grid = pieces(old), pieces(new), old.shop.grid

    def told(one: CutPiece) -> Any:
        return one.piece, [[grid.count(inset) for inset in end] for end in _slants(one, grid.units)]

    assert {mark for mark in was if told(was[mark]) != told(now[mark])} <= named(old, new)


def part(**more: Any) -> dict[str, Any]:
    grid = GRIDS["1/32"]
    sizes = {name: sawn_size(4.5, grid=grid) for name in ("width", "length")}
    return {"mark": "W1-1", "is_wood": True, "stock": "poplar", "cuts": [], **sizes, **more}


def of_parts(one: dict[str, Any]) -> str:
    return parts_basis([{"parts": [one]}], (), grid=GRIDS["1/32"])["W1-1"]


def test_stated_sizes_finer_than_the_grid_count() -> None:
    """1/64" on a grid of 1/32" was stated, and is sawn as it was; 1/300" was not."""
    units = GRIDS["1/32"].units

    def rip(width: float) -> str:
        return of_parts(part(cuts=[{"kind": "rip", "width": size(width, units=units)}]))

    assert rip(4.5) != rip(4.5 + 1 / 64)
    assert rip(4.5) == rip(4.5 + 1 / 300)


def test_angles_count_to_a_tenth_of_a_degree() -> None:
    def bevel(degrees: float) -> str:
        return of_parts(part(cuts=[{"kind": "end bevel", "angle_deg": angle(degrees)}]))

    assert bevel(10.0) == bevel(10.04)
    assert bevel(10.0) != bevel(10.1)


def test_a_thickness_that_is_not_sawn_counts_as_it_is_stated() -> None:
    """19 mm is no 3/4", though both print so: they are other boards."""
    units = GRIDS["1/32"].units
    assert size(0.75, units=units)["text"] == size(19 / 25.4, units=units)["text"]  # type: ignore[index]
    thick = [of_parts(part(thickness=size(one, units=units))) for one in (0.75, 19 / 25.4)]
    assert thick[0] != thick[1]
