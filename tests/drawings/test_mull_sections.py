"""Sections through mulls and transom bars: what is dimensioned and named, by hand, and where the elevations show them.

Frames of 2 1/2 on all sides, 5 13/16 deep (4 9/16 + 1 1/4), a frame reveal of 1/8 inside.
"""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest
from cases import changed, job_of, kit_of
from gangs import boxed, ganged, ganged_kit, unit

from jambs.drawings.elements.paper import PAGES
from jambs.drawings.elements.view import View, ViewSide
from jambs.drawings.view_scales import at_best_scale
from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.drawings.views.mull_sections import mull_view, with_mull_tags
from jambs.drawings.views.unit_dimensions import unit_chains
from jambs.job import Job
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.mull import mull_sections

Told = list[tuple[str, Any]]


def views_of(**paths: object) -> tuple[Kit, list[View]]:
    job: Job = job_of(changed(**paths))
    kit = make_kit(place_windows(job)[0], job)
    return kit, [mull_view(one, kit, job) for one in mull_sections(kit)]


def row(view: View, side: ViewSide, number: int = 0) -> Told:
    axis = 1 if side in (ViewSide.LEFT, ViewSide.RIGHT) else 0
    chain = [one for one in view.chains if one.side is side][number]
    return [(one.name, abs(one.finish[axis] - one.start[axis])) for one in chain.intervals]


def near(*told: tuple[str, float]) -> Told:
    return [(name, pytest.approx(size)) for name, size in told]


def test_a_cover_on_the_frames_is_drawn_with_its_reveals_and_the_gap() -> None:
    """Face 2 1/2 + gap 1/2 + face 2 1/2 = 5 1/2 between the inner edges; 1/8 of each is seen, the casing is 5 1/4."""
    _, views = views_of(**ganged())
    mull, bar = views
    assert mull.title == "Plan section through mull" and bar.title == "Section through transom bar"
    for view in views:
        assert row(view, ViewSide.LEFT)[1][1] == pytest.approx(5.25)
        assert [name for name, _ in row(view, ViewSide.LEFT)][::2] == ["frame reveal", "frame reveal"]
        assert row(view, ViewSide.LEFT)[0][1] == pytest.approx(0.125)
        assert row(view, ViewSide.RIGHT, -1) == near(("frame", 2.5), ("gap", 0.5), ("frame", 2.5))
        assert row(view, ViewSide.BOTTOM) == near(("", 0.75), ("", 5.8125), ("", 0.75))
    assert mull.remarks == ("between units 1 and 2; seen from above, inside at the left, unit 1 above",)
    assert bar.remarks == ("between units 1, 2 below and 3 above",)


def test_boards_of_mull_and_bar_are_named_by_mark_and_size() -> None:
    kit, (mull, bar) = views_of(**ganged())
    inside, outside = (part.mark for part in kit.parts if part.kind is PartKind.MULL_CASING)
    over_bar = [part.mark for part in kit.parts if part.kind is PartKind.TRANSOM_BAR_CASING]
    assert [one.lines for one in mull.call_outs if one.short] == [
        (f"{inside}  mull casing", '3/4" × 5 1/4"'),
        (f"{outside}  mull casing", '3/4" × 5"'),  # 1/4 of each frame is seen outside
    ]
    assert [one.short for one in bar.call_outs if one.short] == over_bar
    assert {"gap between frames", "window frame"} <= {one.lines[0] for one in (*mull.call_outs, *bar.call_outs)}


def test_a_boxed_mull_shows_its_jambs_and_the_post_with_its_joints() -> None:
    """Post 4, joints 1/4: 2 1/2 + 4 1/2 + 2 1/2 between the inner edges; less 1/8 twice from jamb face to jamb face."""
    kit, (mull,) = views_of(**boxed("inside"))
    across, jambs = row(mull, ViewSide.LEFT), row(mull, ViewSide.LEFT, 1)
    assert jambs == near(("between jamb faces", 9.25))
    assert [name for name, _ in across] == [
        "frame reveal", "casing reveal", "", "casing reveal", "frame reveal",
    ]  # fmt: skip
    assert sum(size for _, size in across[1:-1]) == pytest.approx(9.25)
    assert sum(size for _, size in across) == pytest.approx(9.5)
    assert row(mull, ViewSide.RIGHT, -1) == near(
        ("frame", 2.5), ("joint", 0.25), ("post", 4.0), ("joint", 0.25), ("frame", 2.5)
    )
    named = {part.mark for part in kit.parts if part.kind.is_between_units}
    assert named and named <= {one.short for one in mull.call_outs}
    assert "post drawn as deep as the frames; whoever frames it says how deep" in mull.remarks


def test_a_bar_is_named_as_what_it_is_and_as_long_as_the_rough_opening() -> None:
    """60 1/2 and two shim spaces of 1/4; up at the right a frame of 48, joints and bar of 4 1/2, a frame of 16."""
    kit, (mull, bar) = views_of(**ganged(openings__0__transom_bar={"post": "4", "joint": "1/4"}))
    assert ("transom bar", pytest.approx(4.0)) in row(bar, ViewSide.RIGHT, -1)
    assert 'transom bar 61" long between framing' in bar.remarks
    assert not [one for one in mull.remarks if "between framing" in one]
    up = unit_chains(kit.placement.opening, from_outside=False)[-1]
    assert [(one.name, one.finish[1] - one.start[1]) for one in up.intervals] == [
        ("", 48.0), ("transom bar and joints", 4.5), ("", 16.0)
    ]  # fmt: skip


def test_mulls_that_are_alike_are_one_section_and_one_that_is_not_has_its_own() -> None:
    bare = {"openings__0__transom": None, "openings__0__transom_bar": None}
    kit, views = views_of(**ganged(openings__0__units=[unit("30 x 48") for _ in range(3)], **bare))
    other = ", ".join(part.mark for part in kit.parts if part.kind is PartKind.MULL_CASING and part.member == 2)
    assert len(views) == 1 and views[0].remarks[-1] == f"the same between units 2 and 3: {other}"
    faces = {"left": "3", "right": "2 1/2", "head": "2 1/2", "sill": "2 1/2"}
    wide = {"windows__other": {**changed()["windows"]["fixed"], "frame_face": faces}}
    units = [unit("30 x 48"), unit("30 x 48"), {**unit("30 x 48"), "window": "other"}]
    _, unlike = views_of(**ganged(**bare, **wide, openings__0__units=units))
    assert len(unlike) == 2


def test_both_elevations_show_where_every_mull_is_cut_and_how_wide_the_units_are() -> None:
    """The right edge of unit 1 is at 30, its inner edge at 27 1/2; from outside that is 60 1/2 - 27 1/2 = 33."""
    kit = ganged_kit()
    cut = mull_sections(kit)
    inside, outside = (
        with_mull_tags(view(kit, Units.INCH), kit, cut) for view in (interior_elevation, exterior_elevation)
    )
    assert [tag.of for tag in inside.tags] == ["section mull 1", "section transom bar 1"]
    assert [tag.edge[0][0] for tag in (inside.tags[0], outside.tags[0])] == pytest.approx([27.5, 33.0])
    assert (inside.tags[0].inward, outside.tags[0].inward) == ((-1.0, 0.0), (1.0, 0.0))
    assert inside.tags[1].edge[0][1] == pytest.approx(48 - 2.5)
    across, up = (
        [one.finish[axis] - one.start[axis] for chain in inside.chains if chain.after == "units"
         and chain.side is side for one in chain.intervals]
        for side, axis in ((ViewSide.TOP, 0), (ViewSide.RIGHT, 1))
    )  # fmt: skip
    assert across == pytest.approx([30, 0.5, 30]) and up == pytest.approx([48, 0.5, 16])


def test_an_opening_of_one_unit_has_no_such_section_and_no_such_dimension() -> None:
    kit = kit_of()
    assert mull_sections(kit) == ()
    view = with_mull_tags(interior_elevation(kit, Units.INCH), kit, ())
    assert view.tags == () and "units" not in {chain.after for chain in view.chains}


@pytest.mark.parametrize("paths", [ganged(), boxed("both")], ids=["on the frames", "boxed"])
def test_no_two_texts_of_a_section_lie_over_each_other(paths: dict[str, Any]) -> None:
    _, views = views_of(**paths)
    for view in views:
        _, placed = at_best_scale(view, Units.INCH, PAGES[Units.INCH][0])
        boxes = [text.box for text in placed.lettering]
        assert not [1 for one, two in combinations(boxes, 2) if one.overlaps(two)]
