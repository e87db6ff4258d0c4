"""Cut files of stiles, rails and panels of the base window's jambs, sizes by hand.

Boards 3/4 thick; grooves 1/4 wide and 3/8 deep, 1/4 from the face; rails with tenons of 3/8: 1/4 off face and back.
"""

from __future__ import annotations

from io import StringIO

import pytest
from cases import kit_of, strips
from ezdxf.filemanagement import read
from panels import paneled

from jambs.app.cut_file_papers import cut_file_facts, parts_cut
from jambs.drawings.cut_files.figure import CutFigure, part_figures
from jambs.drawings.cut_files.layers import Work
from jambs.drawings.cut_files.write import Release, cut_file
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit


def kit() -> CutKit:
    (made,) = strips([kit_of(**paneled())])
    return made


def member(kind: PartKind) -> Part:
    return next(part for part in parts_cut(kit(), all_parts=False) if part.kind is kind)


def pockets(figure: CutFigure) -> list[tuple[str, float, float]]:
    """Layer of each pocket, and where it begins and ends along the board."""
    found = [one for one in figure.strokes if one.layer.work is Work.POCKET]
    return [(one.layer.size, min(u for u, _ in one.points), max(u for u, _ in one.points)) for one in found]


def test_every_member_has_a_file_after_its_jamb() -> None:
    marks = [part.mark for part in parts_cut(kit(), all_parts=False)]
    jamb = kit().parts[0]
    members = [one.mark for one in jamb.frame_members if not one.is_plain]
    assert members[:3] == ["W1-1a", "W1-1b", "W1-1c"]
    assert marks[: 1 + len(members)] == [jamb.mark, *members]


def test_panels_that_are_plain_have_one_if_all_are_asked_for() -> None:
    plain = {one.mark for part in kit().parts for one in part.frame_members if one.is_plain}
    assert plain
    assert not plain & {part.mark for part in parts_cut(kit(), all_parts=False)}
    assert plain <= {part.mark for part in parts_cut(kit(), all_parts=True)}


def test_facts_know_the_files_of_members() -> None:
    facts = cut_file_facts([kit()])
    assert facts["cut files/W1-1a.dxf"].marks == ("W1",)
    assert "cut files/R12/W1-1c back.dxf" in facts


def test_a_rail_is_thinned_at_both_ends_from_face_and_back() -> None:
    """3/8 along at each end; it is as long as the opening of 3 15/32 and both tenons."""
    rail = member(PartKind.RAIL)
    face, back = part_figures(rail, units=Units.INCH)
    for figure in (face, back):
        sizes, starts, finishes = zip(*pockets(figure), strict=True)
        assert sizes == ('1/4"', '1/4"')
        assert starts == pytest.approx((0.0, rail.length - 0.375))
        assert finishes == pytest.approx((0.375, rail.length))


def test_grooves_are_told_since_no_face_shows_them() -> None:
    (stile,) = part_figures(member(PartKind.STILE), units=Units.INCH)
    told = [one.text for one in stile.words]
    assert 'ON EDGE: groove in the far edge, 1/4" x 3/8" deep, 1/4" from the face' in told
    jamb, *_ = part_figures(kit().parts[0], units=Units.INCH)
    assert not any(one.text.startswith("ON EDGE") for one in jamb.words)


def test_a_middle_rail_is_grooved_on_both_edges() -> None:
    rails = [part for part in parts_cut(kit(), all_parts=False) if part.kind is PartKind.RAIL and part.member == 2]
    words = [one.text for one in part_figures(rails[0], units=Units.INCH)[0].words]
    assert any("groove in both edges" in one for one in words)


@pytest.mark.parametrize("kind", [PartKind.STILE, PartKind.RAIL])
def test_words_stand_within_a_member_and_the_file_is_read_back(kind: PartKind) -> None:
    figure = part_figures(member(kind), units=Units.INCH)[0]
    text = cut_file(figure, units=Units.INCH, release=Release.R2010)
    space = read(StringIO(text)).modelspace()
    assert len(space.query("LWPOLYLINE")) == len(figure.strokes)
    for one in figure.words:
        assert one.at[0] >= 0 and one.at[0] + 0.6 * one.height * len(one.text) <= figure.shown[0]
