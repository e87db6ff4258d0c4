"""Details of jambs whose face and back differ in length, and the gaps behind jambs in sections, by hand.

The base window with jambs 4 23/32 wide, mitered: clear 30 3/4 x 42 3/4.
"""

from __future__ import annotations

from typing import Any

import pytest
from arches import arched
from cases import changed, job_of, kit_of, part_of
from panels import PANELS, paneled
from sills_under_shapes import on_sill

from jambs.drawings.elements.view import Chain, Ink, View, ViewKind, ViewSide
from jambs.drawings.views.corner_details import corner_details
from jambs.drawings.views.details import details
from jambs.drawings.views.leaned_details import has_two_faces, leaned_chains
from jambs.drawings.views.sections import section_view
from jambs.length import FINE, Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.section.cut import cut_sections
from jambs.section.region import Region, SectionCut

MITERED: dict[str, Any] = {"interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"}}
FLARED = {**MITERED, "interior_trim__inside__flare": {"sides": "20 deg", "head": "15 deg", "sill": "10 deg"}}


def told(chains: list[Chain]) -> dict[str, float]:
    return {chain.after: abs(chain.intervals[0].finish[0] - chain.intervals[0].start[0]) for chain in chains}


def test_a_flared_jamb_is_dimensioned_where_a_tape_hooks() -> None:
    """The frame edge on the face is the clear opening, 30 3/4; the room edge reaches out by 4 23/32 tan 20° twice."""
    found = told(leaned_chains(part_of(kit_of(**FLARED), "extension jamb", "head")))
    assert found["frame edge on the face, short point"] == pytest.approx(30.75)
    assert found["room edge on the face"] == pytest.approx(30.75 + 2 * 4.71875 * 0.36397, abs=1e-3)
    assert "room edge on the back, long point" in found and len(found) == 3


def test_face_and_back_are_both_drawn_and_a_plain_miter_as_before() -> None:
    kit = kit_of(**FLARED)
    mark = part_of(kit, "extension jamb", "head").mark
    (view,) = (one for one in details(kit, grid=FINE[Units.INCH]) if one.name == f"detail {mark}")
    assert [shape.ink for shape in view.shapes] == [Ink.HIDDEN, Ink.TRIM_INSIDE]
    assert not any(has_two_faces(part) for part in kit_of().parts)


def test_a_jamb_of_an_octagon_tells_face_and_back() -> None:
    """Each end is tilted by half of the 45° that the path turns: the back is longer by 3/4 tan 22 1/2° twice."""
    kit = arched("octagon", 36, 36, exterior_trim__outside__sill=None).kit
    part = next(one for one in kit.parts if has_two_faces(one))
    face, back = sorted({round(size, 3) for size in told(leaned_chains(part)).values()})
    assert back - face == pytest.approx(2 * 0.75 * 0.41421, abs=4e-3)


def test_an_exterior_jamb_on_a_sill_under_a_triangle_tells_face_and_back_too() -> None:
    """Its foot is cut to slant and slope at once: the outline of face and back together measures no edge."""
    part = next(one for one in on_sill("triangle", 48, 30).kit.parts if one.kind is PartKind.EXTERIOR_JAMB)
    assert not part.is_leaned and has_two_faces(part)
    names = told(leaned_chains(part))
    ends = {arris: (one[0][0], one[1][0]) for arris, one in part.corners.items()}
    lengths = {arris: finish - start for arris, (start, finish) in ends.items()}
    assert max(names.values()) == pytest.approx(max(lengths.values()))
    assert min(names.values()) == pytest.approx(min(lengths.values()))
    plain = next(one for one in kit_of().parts if one.kind is PartKind.EXTERIOR_JAMB)
    assert not has_two_faces(plain)


def gaps(cut: SectionCut, **paths: Any) -> dict[str, float]:
    job = job_of(changed(**paths))
    kit = kit_of(**paths)
    (section,) = (one for one in cut_sections(kit) if one.cut is cut)
    view: View = section_view(section, kit, job)
    return {
        one.name: one.finish[1] - one.start[1]
        for chain in view.chains if chain.side is ViewSide.LEFT
        for one in chain.intervals if one.name
    }  # fmt: skip


def test_the_gap_behind_a_flared_jamb_is_named_and_measured_across_however_far_it_leans() -> None:
    """1 7/8 behind a square jamb, where its call-out names it; flared by 15° less by 3/4 (1/cos 15° - 1)."""
    assert gaps(SectionCut.HEAD) == {}
    flared = gaps(SectionCut.HEAD, **FLARED)
    assert flared["shim space"] == pytest.approx(1.875 - 0.75 * (1 / 0.965926 - 1), abs=1e-3)


def test_a_flared_head_tells_how_far_its_room_edge_moved_out_apart_from_the_casing_reveal() -> None:
    """4 23/32 tan 15° = 1.264."""
    assert gaps(SectionCut.HEAD, **FLARED)["flare"] == pytest.approx(4.71875 * 0.267949, abs=1e-3)


def steps(view: View) -> list[tuple[str, float]]:
    """Names and sizes of the dimensions at the left of a view, from below up [in]."""
    left = [one for chain in view.chains if chain.side is ViewSide.LEFT for one in chain.intervals]
    return [(one.name, round(one.finish[1] - one.start[1], 3)) for one in sorted(left, key=lambda one: one.start[1])]


@pytest.mark.parametrize("cut", [SectionCut.HEAD, SectionCut.JAMB])
def test_a_panel_in_a_jamb_is_no_edge_that_a_reveal_is_measured_from(cut: SectionCut) -> None:
    """Flare, casing reveal and shim space are those of the jamb of one board, the same depth and the same flare."""
    found = []
    for panels in (PANELS, None):
        paths = paneled(**FLARED, interior_trim__inside__panels=panels)
        kit, job = kit_of(**paths), job_of(changed(**paths))
        section = next(one for one in cut_sections(kit) if one.cut is cut)
        views = [section_view(section, kit, job), *corner_details(kit, (section,), job)]
        found.append([steps(view) for view in views])
    assert found[0] == found[1]
    assert "flare" in dict(found[0][0])


def test_a_section_has_a_nailer_and_only_where_there_is_one() -> None:
    """Rough opening 36 x 48, wall board cut to 33 x 45 round a shadow gap: 1 1/2 at the head as at the sides.

    As deep as a stud is thick.
    """
    bare = {
        "style": "returns",
        "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
        "frame_reveal": "1/8",
        "wall_edge": {"kind": "shadow gap", "gap": "3/8", "leg": "1"},
    }
    said = 'nailer 1 1/2" from the rough opening in and 1 1/2" deep, behind the edge of the wall board'
    assert said in remarks(interior_trim__inside=bare)
    assert not any("nailer" in one for one in remarks())
    (drawn,) = (one for one in head_regions(interior_trim__inside=bare) if one.name == "nailer")
    # The frame is 47 1/2 high, the rough opening ends 1/4 over it; the wall board is 1/2 thick.
    assert sorted(set(drawn.outline)) == [(46.25, 0.5), (46.25, 2.0), (47.75, 0.5), (47.75, 2.0)]
    assert not [one for one in head_regions() if one.name == "nailer"]


def head_regions(**paths: Any) -> tuple[Region, ...]:
    return next(one for one in cut_sections(kit_of(**paths)) if one.cut is SectionCut.HEAD).regions


def remarks(**paths: Any) -> tuple[str, ...]:
    kit = kit_of(**paths)
    (section,) = (one for one in cut_sections(kit) if one.cut is SectionCut.HEAD)
    return section_view(section, kit, job_of(changed(**paths))).remarks


def end_of(kit: Kit, side: str) -> View:
    mark = part_of(kit, "extension jamb", side).mark
    (view,) = (one for one in details(kit, grid=FINE[Units.INCH]) if one.name == f"profile {mark}")
    return view


def test_the_end_of_a_flared_leg_that_tapers_has_the_widths_of_the_end_that_it_names() -> None:
    """The right leg is 4 25/32 deep at the bottom, where it is drawn: over cos 20° on the face 5.088.

    The arris of the face ends a little above or below the board, where the taper is some thousandths on.
    """
    read = {"head_left": "4 3/4", "head_right": "4 7/8", "sill_left": "4 5/8", "sill_right": "4 3/4"}
    flare = {"interior_trim__inside__flare": {"sides": "20 deg"}}
    kit = kit_of(**MITERED, **flare, openings__0__measured={"date": "2026-03-20", "interior_depth": read})
    end = end_of(kit, "right leg")
    face = [
        one.finish[0] - one.start[0] for chain in end.chains if chain.side is ViewSide.TOP for one in chain.intervals
    ]
    assert end.remarks[0].startswith("bottom end") and max(face) == pytest.approx(4.78125 / 0.939693, abs=4e-3)
    assert end.remarks[1] == "bevels: frame edge 20°, room edge 20°"


def test_the_end_of_a_flared_leg_of_one_width_is_as_wide_as_the_leg() -> None:
    kit = kit_of(**FLARED)
    end, leg = end_of(kit, "left leg"), part_of(kit, "extension jamb", "left leg")
    across = [x for shape in end.shapes for x, _ in shape.points]
    assert max(across) - min(across) == pytest.approx(leg.width)
    assert end.remarks[1] == "bevels: frame edge 20°, room edge 20°"


def test_a_mirror_image_is_told_how_it_lies_and_a_part_by_itself_as_before() -> None:
    """Its bottom at the left, a left-hand leg has its room edge on one side and a right-hand leg on the other."""
    kit = kit_of(**FLARED)
    left, right, head = (part_of(kit, "extension jamb", one).mark for one in ("left leg", "right leg", "head"))
    views = {one.name: one for one in details(kit, grid=FINE[Units.INCH])}
    legs = views[f"detail {left}"]
    assert legs.title.startswith(f"{left}; mirror image {right}")
    assert legs.remarks[:2] == (
        f"{left}: face up, room edge above, frame edge below",
        f"{right}: face up, frame edge above, room edge below",
    )
    assert views[f"detail {head}"].remarks[0] == "face up, room edge above, frame edge below"


def ends_of(**flare: Any) -> list[tuple[str, tuple[str, ...]]]:
    trim = {**MITERED, "interior_trim__inside__flare": flare}
    kit = kit_of(**trim)
    return [(one.title, one.remarks) for one in details(kit, grid=FINE[Units.INCH]) if one.kind is ViewKind.PROFILE]


def test_boards_whose_ends_are_alike_share_the_picture_of_them() -> None:
    """Flared 20° all round all jambs are as wide and as beveled, head and bottom one detail; a head at 15° is apart."""
    bevels = "bevels: frame edge 20°, room edge 20°"
    seen = ("face up, frame edge at the left", "W1-1: right end", "W1-2: top end", bevels)
    assert ends_of(sides="20 deg", head="20 deg", sill="20 deg") == [("W1-1, W1-2  ends", seen)]
    apart = ends_of(sides="20 deg", head="15 deg", sill="20 deg")
    assert [title for title, _ in apart] == ["W1-1  end", "W1-2, W1-4  ends"]
    assert apart[0][1][0] == "right end, face up, frame edge at the left"
