"""Ganged units lined outside with bent metal, worked by hand: two of 30 x 48 and 1/2 between, 60 1/2 x 16 over a bar.

Faces of 2 1/2 less reveals of 1/4: 56 clear, covers of 5 over a gap of 1/2: 2 1/4 on each side. Head, sides and sill
are those of one frame of 60 1/2 x 64 1/2 (``test_metal_returns_by_hand.py``).
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, figure, job_of, kit_of
from gangs import boxed, ganged
from metal import in_metal

from jambs.flashing.blank import BlankKind
from jambs.flashing.laps import lap_order
from jambs.flashing.make import make_flashings, sheet_list
from jambs.job import JobFaults
from jambs.length import Units
from jambs.parts.board.bent_metal import bend_deduction
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.words.bend_words import return_bends
from jambs.section.mull import mull_sections
from jambs.section.region import Stuff

FOLD = bend_deduction(180, 0.03, 0.032)


def kit(**returns: Any) -> Kit:
    return kit_of(**in_metal(ganged(), **returns))


def covers(made: Kit) -> dict[PartKind, Part]:
    return {one.kind: one for one in made.parts if one.where is Where.EXTERIOR and one.kind.is_between_units}


def test_one_head_one_sill_and_two_sides_line_all_units() -> None:
    made = kit()
    returns = [one for one in made.parts if one.kind is PartKind.METAL_RETURN]
    assert [one.position for one in returns] == ["head", "left leg", "right leg", "bottom"]
    assert figure(made, "exterior clear width") == 56
    assert returns[0].length == 58


def test_a_strip_lies_over_every_mull_and_bar_with_both_edges_hemmed() -> None:
    """5 wide and a hem of 1/2 at both edges; each fold takes a share of the sheet."""
    found = covers(kit())
    assert set(found) == {PartKind.MULL_CASING, PartKind.TRANSOM_BAR_CASING}
    for one in found.values():
        assert one.is_bent and not one.is_wood
        assert one.silhouettes.sizes.width == 5
        assert one.width == pytest.approx(5 + 2 * 0.5 - 2 * FOLD)
    assert found[PartKind.TRANSOM_BAR_CASING].length == 56


def test_the_strips_lie_on_the_outside_edges_of_the_frames() -> None:
    """Outside edge 10 1/2, the face of the sheet 0.032 farther out."""
    for one in covers(kit()).values():
        assert one.seat.at(0, 0, 0)[2] == pytest.approx(10.532)


def test_the_words_of_a_strip_tell_its_face_and_its_hems() -> None:
    made = kit()
    grid = job_of(changed(**in_metal(ganged()))).shop.grid
    said = list(return_bends(covers(made)[PartKind.MULL_CASING], grid))
    assert said == [
        'face 5" wide, a hem of 1/2" folded back behind it at both edges',
        'bend from both edges 1/2" (fold)',
    ]


def test_their_blanks_stand_on_the_flashing_sheet_and_in_the_sheet_to_buy() -> None:
    made, grid = kit(), job_of(changed()).shop.grid
    flashings = make_flashings(made, None, Units.INCH)
    kinds = [one.kind for one in flashings.blanks]
    assert kinds.count(BlankKind.MULL_COVER) == 2
    (row,) = sheet_list((flashings,), grid)
    assert row.count == 6


def test_laps_name_the_strips_where_there_are_mulls() -> None:
    said = " ".join(lap.step.over(Units.INCH) for lap in lap_order(kit(), ()))
    assert "strips over the mulls" in said
    alone = kit_of(**{"exterior_trim__outside": in_metal({})["exterior_trim__outside"]})
    assert "strips over the mulls" not in " ".join(lap.step.over(Units.INCH) for lap in lap_order(alone, ()))


def test_the_section_through_a_mull_shows_metal_outside() -> None:
    regions = [one for section in mull_sections(kit()) for one in section.regions if one.where is Where.EXTERIOR]
    assert {one.stuff for one in regions if one.mark} == {Stuff.METAL}


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (in_metal(ganged(), hem=None), "give returns a hem"),
        (in_metal(boxed("both")), "write boxed: inside"),
        (in_metal(boxed("outside")), "write boxed: inside"),
    ],
)
def test_what_cannot_be_bent_over_mulls_is_refused(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(JobFaults, match=said):
        job_of(changed(**changes))


def test_mulls_that_are_boxed_inside_alone_go_with_metal_outside() -> None:
    assert set(covers(kit_of(**in_metal(boxed("inside"))))) == {PartKind.MULL_CASING}
