"""An ellipse arch bent as one lamination, by a triangle of 3, 4, 5.

Half span 20, rise 15: ends of 12 1/2, the crown of 25 (``test_rounds_by_hand``); they meet 53.13° up from the springs,
so that the crown takes twice 36.87°. The clear opening lies 2 1/2 of frame less 1/8 of reveal in: 10 1/8 and 22 5/8.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arch_changes
from random_kits import RandomKit, kit_from
from rounds import inside_only

from jambs.length import FINE, Units
from jambs.parts.board.arch_outline import arch_corners
from jambs.parts.board.bending_form import PAST_SPRING, bending_form
from jambs.parts.board.part import Part
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words

END, CROWN = math.atan2(4, 3), 2 * math.atan2(3, 4)


def bent(curved: str = "bent in one", **more: Any) -> RandomKit:
    shape = {"kind": "ellipse arch", "rise": "15"}
    return kit_from(inside_only(arch_changes(shape, 40, 60, curved=curved, **more)))


def heads(made: RandomKit) -> list[Part]:
    return [part for part in made.kit.parts if part.is_laminated]


def test_three_arcs_are_one_lamination_as_thin_as_the_tightest_asks() -> None:
    """A ply may be 1/125 of 10 1/8: 3/4 takes 9.26 of them, ten of 0.075; 1/10² of their curvature springs back."""
    (head,) = heads(bent())
    plies = head.blank.plies
    assert plies is not None and (plies.count, plies.thickness) == (10, 0.075)
    assert plies.sprung == pytest.approx(0.01)
    # Every arc of the form is tighter by a hundredth, to 1/32: 10.024 and 22.399.
    assert [radius for radius, _ in plies.pieces] == [10 + 1 / 32, 22 + 13 / 32, 10 + 1 / 32]
    assert [long for _, long in plies.pieces] == pytest.approx([10.125 * END, 22.625 * CROWN, 10.125 * END])
    assert plies.inner_length == pytest.approx(2 * 10.125 * END + 22.625 * CROWN)
    assert head.length == pytest.approx(2 * 10.875 * END + 23.375 * CROWN)
    assert plies.sweep_deg == pytest.approx(180)


def test_in_pieces_each_arc_has_plies_of_its_own() -> None:
    counts = [part.blank.plies.count for part in heads(bent("bent laminations")) if part.blank.plies]
    assert counts == [10, 5, 10]


def test_a_springback_of_the_shop_goes_for_the_one_in_formulas() -> None:
    (head,) = heads(bent(shop__springback="0.04"))
    assert head.blank.plies is not None
    assert [radius for radius, _ in head.blank.plies.pieces] == pytest.approx([9.72, 21.72, 9.72], abs=1 / 64)


def test_its_arcs_go_on_from_each_other_on_the_form_too() -> None:
    """Along the form from spring to spring it is as long as the jamb's face; past both there are 2 in more."""
    (head,) = heads(bent())
    form = bending_form(head)
    (x, y), middle = form.crown, form.size[0] / 2
    assert x == pytest.approx(middle) and y == pytest.approx(form.size[1])
    assert form.radius == 22 + 13 / 32 and math.dist(form.crown, form.center) == pytest.approx(form.radius)
    ring = zip(form.outline[1:], (*form.outline[2:], form.outline[0]), strict=True)
    plies = head.blank.plies
    assert plies is not None
    along = plies.inner_length + 2 * PAST_SPRING
    assert sum(math.dist(one, two) for one, two in ring) == pytest.approx(along, abs=0.01)
    for spring, center in form.spring_lines:
        assert math.dist(spring, center) == pytest.approx(10 + 1 / 32, abs=1e-9)
    left, right = form.springs
    # Each arc turns a little more than the jamb's, so that the springs stand closer than it does.
    assert right[0] - left[0] < 40 - 2 * 2.375


def test_its_corners_lie_on_the_springs_and_its_crowns_over_the_middle() -> None:
    """Clear 40 - 2 x 2 3/8 wide and 15 - 2 3/8 high over the springs; the jamb of 3/4 lies round that."""
    (head,) = heads(bent())
    found = arch_corners(head)
    assert (found.inner, found.outer) == (((0.75, 0.0), (36.0, 0.0)), ((0.0, 0.0), (36.75, 0.0)))
    for crown, high in zip(found.crowns, (12.625, 13.375), strict=True):
        assert crown == pytest.approx((18.375, high))


def test_of_five_arcs_that_over_the_middle_is_the_crown_of_the_form() -> None:
    """An arch of 72, 24 high: three radii, the flattest in the middle; the form is as long as the jamb's face."""
    shape = {"kind": "ellipse arch", "rise": "24", "centers": "5"}
    (head,) = heads(kit_from(inside_only(arch_changes(shape, 72, 80, curved="bent in one"))))
    form, plies = bending_form(head), head.blank.plies
    assert plies is not None
    radii = [radius for radius, _ in plies.pieces]
    assert radii == radii[::-1] and radii[0] < radii[1] < radii[2]
    assert math.dist(form.crown, form.center) == pytest.approx(radii[2])
    ring = zip(form.outline[1:], (*form.outline[2:], form.outline[0]), strict=True)
    along = plies.inner_length + 2 * PAST_SPRING
    assert sum(math.dist(one, two) for one, two in ring) == pytest.approx(along, abs=0.01)


def test_its_words_give_each_arc() -> None:
    (head,) = heads(bent())
    assert ends_words(head, grid=FINE[Units.INCH]) == "saw both ends on the spring lines after bending"
    said = work_words(head, grid=FINE[Units.INCH])[0]
    arcs = ('10 1/32" along 9 25/64"', '22 13/32" along 29 1/8"', '10 1/32" along 9 25/64"')
    assert f"glue over the form of several radii, from the left {', '.join(arcs)} (1 % of the curvature" in said


def test_an_arch_of_one_arc_is_bent_as_ever() -> None:
    shape = {"kind": "segment arch", "rise": "8"}
    one, two = (
        kit_from(inside_only(arch_changes(shape, 36, 60, curved=curved)))
        for curved in ("bent in one", "bent laminations")
    )
    assert one.kit.parts == two.kit.parts
