"""Each corner and middle was read, is planned, or lies between: kit, findings, tables and banner ask that alone.

The base window by hand: interior depth 4 11/16, exterior depth 1 1/2, flange plane 9 1/4, trim plane 12,
overhang 2 3/4.
"""

from __future__ import annotations

from typing import Any

from cases import changed, figure, job_of, kit_of, part_of, texts

from jambs.drawings.views.measured import caution_of, depth_words, state_of, warning_of
from jambs.job.models.openings import Origin
from jambs.length import FINE, Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.cut_kit import PlannedForKit, as_cut
from jambs.parts.kit.kit import Kit
from jambs.sheets.record import opening_record
from jambs.sheets.wall_picture import wall_data
from jambs.sides import Side

INSIDE = "4 11/16"
CORNERS = ("head_left", "head_right", "sill_left", "sill_right")
READ, PLANNED, BETWEEN = Origin.READ, Origin.PLANNED, Origin.BETWEEN


def measured(**readings: Any) -> dict[str, Any]:
    return {"openings__0__measured": {"date": "2026-06-01", **readings}}


def around(depth: str) -> dict[str, str]:
    return dict.fromkeys(CORNERS, depth)


def record(kit: Kit) -> dict[str, Any]:
    return opening_record(as_cut(kit, PlannedForKit()), grid=FINE[Units.INCH])


def banner(kit: Kit) -> list[str]:
    return [one["text"] for one in record(kit)["state"]["banner"]]


def test_two_of_four_corners_outside() -> None:
    kit = kit_of(**measured(interior_depth=around(INSIDE), exterior_depth={"head": ["1 5/8", "1 3/4"]}))
    outside = kit.placement.opening.measured.exterior_depth  # type: ignore[union-attr]
    assert outside is not None and not outside.is_read
    assert outside.origins == {
        Side.HEAD: (READ, READ),
        Side.SILL: (PLANNED, PLANNED),
        Side.LEFT: (PLANNED, READ),
        Side.RIGHT: (PLANNED, READ),
    }
    assert banner(kit) == ["INSIDE MEASURED 2026-06-01", "OUTSIDE PLANNED – MEASURE BEFORE CUTTING"]
    assert state_of(kit) == "INSIDE MEASURED 2026-06-01"
    read = record(kit)["depths"]["measured"]["exterior"]
    assert [one["text"] for one in read["head"]] == ['1 5/8"', '1 3/4"']
    assert read["sill"] == [None, None]
    assert "twist" not in texts(kit)
    assert "taper" not in texts(kit) and "changes by" not in texts(kit)
    assert not any("sill" in words for words in depth_words(kit, job_of(changed())) if "Exterior" in words)


def test_all_four_corners_outside_have_their_twist() -> None:
    corners = {**around("1 1/2"), "head_right": "1 5/8"}
    kit = kit_of(**measured(interior_depth=around(INSIDE), exterior_depth=corners))
    assert 'Outside: the four corners are 1/8" out of one plane (twist)' in texts(kit)
    assert banner(kit) == ["MEASURED 2026-06-01"]


def test_the_outside_is_read_before_the_inside() -> None:
    kit = kit_of(**measured(exterior_depth=around("1 1/8")))
    assert not kit.is_measured and kit.outside_is_measured
    # Sealant joint 1/4: boards 1 1/8 - 1/4 = 7/8 wide, not 1 1/4 as planned.
    jambs = [part for part in kit.parts if part.kind is PartKind.EXTERIOR_JAMB]
    assert {part.width for part in jambs} == {1.125 - 0.25}
    planned = kit_of()
    assert [part.width for part in kit.parts if part.where is Where.INTERIOR] == [
        part.width for part in planned.parts if part.where is Where.INTERIOR
    ]
    assert banner(kit) == ["INSIDE PLANNED – MEASURE BEFORE CUTTING", "OUTSIDE MEASURED 2026-06-01"]
    assert state_of(kit) == "OUTSIDE MEASURED 2026-06-01"
    assert caution_of(kit) == "INSIDE PLANNED: measure before cutting"
    assert warning_of(kit) == "INSIDE PLANNED - MEASURE BEFORE CUTTING"
    assert "No interior depth is measured yet" in texts(kit)


def test_a_reading_that_was_skipped_is_no_value() -> None:
    sides = {"head": [INSIDE, "-", "4 3/4"], "sill": [INSIDE, INSIDE], "left": [INSIDE] * 2, "right": [INSIDE, "4 3/4"]}
    kit = kit_of(**measured(interior_depth=sides))
    inside = kit.placement.opening.measured.interior_depth  # type: ignore[union-attr]
    assert inside is not None and inside.origins[Side.HEAD] == (READ, BETWEEN, READ) and kit.is_measured
    head = record(kit)["depths"]["measured"]["interior"]["head"]
    assert [one and one["text"] for one in head] == ['4 11/16"', None, '4 3/4"']
    job = job_of(changed())
    assert any('head 4 11/16", -, 4 3/4"' in words for words in depth_words(kit, job))
    data = wall_data(kit, job)
    assert data is not None
    assert [one["text"] for one in data["edges"][0]["points"]] == ['4 11/16"', "–", '4 3/4"']


def test_half_read_inside_is_planned_and_draws_no_wall() -> None:
    kit = kit_of(**measured(interior_depth={"left": [INSIDE, "5"]}))
    assert banner(kit) == ["PLANNED – MEASURE BEFORE CUTTING"]
    data = wall_data(kit, job_of(changed()))
    assert data is not None and [one["words"] for one in data["edges"]] == [Side.LEFT.wall_words]
    assert data["twist"] == ""
    half = kit_of(**measured(interior_depth={"head": [INSIDE, "-"]}))
    assert wall_data(half, job_of(changed())) is None
    assert "than planned" not in texts(half)


def test_findings_of_the_outside_are_of_the_kit_that_is_made() -> None:
    """Planned 1/4 proud: no jambs; read 1 deep they are made, and nothing says that there are none."""
    # Exterior depth -1/4: flange plane 12 + 1/4 - 1 1/4 = 11, interior depth 11 - 4 9/16.
    proud = {"position": {"exterior_depth": "-1/4"}}
    plan = kit_of(**proud)
    assert "proud of the trim plane" in texts(plan)
    assert not any(part.kind is PartKind.EXTERIOR_JAMB for part in plan.parts)
    deep = kit_of(**proud, **measured(exterior_depth=around("1")))
    assert any(part.kind is PartKind.EXTERIOR_JAMB for part in deep.parts)
    assert "proud of the trim plane" not in texts(deep)


def test_nothing_is_made_where_the_readings_leave_no_depth() -> None:
    plan, shallow = kit_of(), kit_of(**measured(exterior_depth=around("5/8")))
    assert any(part.kind is PartKind.EXTERIOR_JAMB for part in plan.parts) and "none are made" not in texts(plan)
    assert not any(part.kind is PartKind.EXTERIOR_JAMB for part in shallow.parts)
    assert "none are made" in texts(shallow)


def test_a_sure_reading_that_no_wall_explains_moves_the_whole_opening() -> None:
    """Planned 4 11/16, read 7 7/16 and sure: the window stands 2 3/4 further out, on an overhang of 5 1/2."""
    depths = {side: ["7 7/16"] * 3 for side in ("head", "sill", "left", "right")}
    limits = {"overhang": "4"}
    plan = kit_of(limits=limits)
    kit = kit_of(limits=limits, **measured(interior_depth=depths, sure=[str(one) for one in range(1, 9)]))
    assert plan.placement.buck and kit.placement.buck
    assert kit.placement.stands_as_measured and not plan.placement.stands_as_measured
    assert kit.placement.flange_plane == 12.0 and kit.placement.interior_depth == 7.4375
    assert figure(kit, "flange plane") == 12.0 and figure(kit, "interior depth") == 7.4375
    assert kit.placement.buck.outer - plan.placement.buck.outer == 2.75
    told = texts(kit)
    assert "Needs an engineer" in told and "Needs an engineer" not in texts(plan)
    assert 'Measured 2 3/4" deeper than planned' in told
    # Exterior depth 1 1/2 - 2 3/4 = -1 1/4: the frame stands proud of the trim plane.
    assert kit.placement.exterior_depth == -1.25 and "proud of the trim plane" in told
    assert "rip of 4" not in told and part_of(kit, "extension jamb", "head").width == 7.4375 + 1 / 32
    assert depth_words(kit, job_of(changed()))[0].startswith('As it stands: interior depth 7 7/16"')


def test_a_window_whose_place_cannot_be_is_a_stop_and_keeps_its_kit() -> None:
    """Read 9 deep: the flange would lie at 13 9/16, past the trim plane."""
    kit = kit_of(**measured(interior_depth=around("9"), sure=["1", "3", "5", "7"]))
    assert not kit.placement.stands_as_measured
    assert any(one.severity.value == "stop" for one in kit.findings)


def test_a_wall_that_is_a_little_off_moves_nothing() -> None:
    kit = kit_of(**measured(interior_depth=around("5 3/16")))
    assert kit.placement.flange_plane == 9.25 and not kit.placement.stands_as_measured
    assert kit.placement.alternatives == kit_of().placement.alternatives


def test_inside_and_outside_short_make_a_thin_wall() -> None:
    kit = kit_of(**measured(interior_depth=around("4 5/16"), exterior_depth=around("1 1/8")))
    assert 'the wall measures 3/4" thinner than its layers add up to' in texts(kit)
    moved = kit_of(**measured(interior_depth=around("4 5/16"), exterior_depth=around("1 7/8")))
    assert "than its layers add up to" not in texts(moved)
