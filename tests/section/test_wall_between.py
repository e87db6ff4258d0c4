"""The plan section through the wall between two openings that are trimmed as one: both jambs, and the boards on it."""

from __future__ import annotations

from trimmed_as_one import run_kits

from jambs.section.cut import cut_section, sections_to_draw
from jambs.section.region import Section, SectionCut, Stuff
from jambs.section.wall_between import on_this_side


def section(at: int, cut: SectionCut, count: int = 2) -> Section:
    kit = run_kits(count)[at]
    return next(one for one in sections_to_draw(kit) if one.cut is cut)


def reach(found: Section, mark: str) -> tuple[float, float]:
    """How far a part reaches, from the edge of the frame on [in]."""
    across = [s for region in found.regions if region.mark == mark for s, _ in region.outline]
    return min(across), max(across)


def test_it_goes_on_to_the_other_frame() -> None:
    found = section(0, SectionCut.JAMB)
    # The faces of the jambs are 2 3/8 in from the frames, which stand 6 apart; the casing is 3/16 off both.
    assert reach(found, "W1-8") == (-2.375 + 3 / 16, 6 + 2.375 - 3 / 16)
    assert reach(found, "W1-3") == (-2.375, -2.375 + 0.75)
    assert reach(found, "W2-2") == (6 + 2.375 - 0.75, 6 + 2.375)
    frames = [region for region in found.regions if region.stuff is Stuff.FRAME]
    assert max(s for region in frames for s, _ in region.outline) == 6 + 2.5
    # The wall ends where the framing of the other hole does.
    framing = [region for region in found.regions if region.stuff is Stuff.FRAMING]
    assert max(s for region in framing for s, _ in region.outline) == 5.75


def test_the_same_wall_is_seen_from_the_other_opening() -> None:
    found = section(1, SectionCut.LEFT_JAMB)
    assert reach(found, "W1-8") == (-2.375 + 3 / 16, 6 + 2.375 - 3 / 16)
    assert reach(found, "W1-3") == (6 + 2.375 - 0.75, 6 + 2.375)


def test_at_the_outer_legs_it_is_cut_as_alone() -> None:
    one, two = run_kits()
    left = next(found for found in sections_to_draw(one) if found.cut is SectionCut.LEFT_JAMB)
    assert {region.mark for region in left.regions} & {"W1-8", "W2-2"} == set()
    right = next(found for found in sections_to_draw(two) if found.cut is SectionCut.JAMB)
    assert "W1-7" in {region.mark for region in right.regions}


def test_one_in_the_middle_whose_neighbors_are_alike_is_drawn_once() -> None:
    kit = run_kits(3)[1]
    assert [one.cut for one in sections_to_draw(kit)] == [SectionCut.HEAD, SectionCut.JAMB, SectionCut.SILL]
    assert {"W1-9", "W3-2"} <= {region.mark for region in section(1, SectionCut.JAMB, 3).regions}


def test_what_heat_goes_through_is_cut_at_one_opening() -> None:
    (kit, _) = run_kits()
    found = cut_section(kit, SectionCut.JAMB, wall_length=40.0)
    assert not [region for region in found.regions if region.mark.startswith("W2")]
    assert "W1-8" in {region.mark for region in found.regions}


def test_head_and_sill_are_cut_in_the_middle_of_their_own_opening() -> None:
    for kit in run_kits():
        found = cut_section(kit, SectionCut.SILL, wall_length=7.5)
        stool = next(region for region in found.regions if region.mark == "W1-4")
        # Not in a notch: 4 11/16 deep, casing 3/4 and nosing 3/4 before it.
        depths = [depth for _, depth in stool.outline]
        assert (min(depths), max(depths)) == (-1.5, 4.6875)


def test_what_lies_beyond_the_middle_has_no_reveal_here() -> None:
    (kit, _) = run_kits()
    near = on_this_side(section(0, SectionCut.JAMB), kit)
    assert "W2-2" not in {region.mark for region in near.regions}
    assert {"W1-3", "W1-8"} <= {region.mark for region in near.regions}
    alone = run_kits(1)[0]
    head = sections_to_draw(alone)[0]
    assert on_this_side(head, alone) is head
