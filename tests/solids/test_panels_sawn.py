"""Frames with panels sawn from their cut lists: members go together without a clash and measure as laid out."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest
from cases import STOOL, changed, job_of, kit_of, part_of
from panels import PANEL, PANELS, paneled

from jambs.solids import availability

if availability() is not None:
    pytest.skip("the solid kernel is not installed", allow_module_level=True)

from jambs.parts.board.kinds import PartKind
from jambs.solids import kernel
from jambs.solids.model import Solid, model_kit
from jambs.solids.panel_measures import frame_measures, members_of
from jambs.solids.shown import as_shown

THICK = {**PANELS, "panel": {**PANEL, "thickness": "1/2", "tongue": "1/2"}}
FLARED = {**STOOL, "panels": PANELS, "flare": {"sides": "20 deg", "head": "10 deg"}}
CASES: dict[str, dict[str, Any]] = {
    "thick panel": {"interior_trim__inside__panels": THICK},
    "flared": {"interior_trim__inside": FLARED},
}


def test_no_two_members_of_a_leg_are_in_one_place() -> None:
    leg = part_of(kit_of(**paneled(**CASES["thick panel"])), "extension jamb", "left leg")
    solids = [one.solid for one in members_of(leg) if one.part.member < 3]
    near = [(one, two) for one, two in combinations(solids, 2) if _boxes_meet(one, two)]
    assert len(near) > 5
    assert max(kernel.volume(kernel.common(one.standing, two.standing)) for one, two in near) < 1e-6


def _boxes_meet(one: Solid, two: Solid) -> bool:
    return all(one.low[axis] < two.high[axis] and two.low[axis] < one.high[axis] for axis in range(3))


def test_files_show_the_members_cut_as_one_board_and_the_fit_report_that_board() -> None:
    # Members fill the jamb but for the openings, 3 15/32 wide, where a panel of 1/4 stands in 3/4; in grooves is room.
    whole = paneled()
    solids = model_kit(kit_of(**whole), job_of(changed(**whole)))
    shown = [one for one in as_shown(solids).parts if one.name.startswith("W1-2")]
    assert [one.name for one in shown] == [f"W1-2{letter}" for letter in "abcdefg"]
    jamb = next(one for one in solids.parts if one.name == "W1-2")
    sunk = 2 * 17.625 * 3.46875 * (0.75 - 0.25)
    # Round each panel: both grooves less 1/16 across, less 1/16 along, all 1/4 wide.
    room = 2 * 0.25 * ((3.46875 + 0.75) * (17.625 + 0.75) - 4.15625 * 18.3125)
    # The grooves of the stiles run through: in them the tenons are, 3/8 long as they are deep, and fill them.
    assert sum(kernel.volume(one.bench) for one in shown) == pytest.approx(kernel.volume(jamb.bench) - sunk - room)
    assert all(one.low[axis] >= jamb.low[axis] - 1e-6 for one in shown for axis in range(3))
    assert all(one.high[axis] <= jamb.high[axis] + 1e-6 for one in shown for axis in range(3))


def test_a_sawn_panel_is_a_tongue_all_round_and_the_rest() -> None:
    # 4 5/32 x 18 5/16 x 1/2 less a rabbet 1/4 deep, 1/2 wide all round: 1/4 (4 5/32 x 18 5/16 + 3 5/32 x 17 5/16).
    leg = part_of(kit_of(**paneled(**CASES["thick panel"])), "extension jamb", "left leg")
    panel = next(one for one in members_of(leg) if one.part.kind is PartKind.PANEL)
    asked = (4.15625 * 18.3125 + 3.15625 * 17.3125) / 4
    assert kernel.volume(panel.solid.bench) == pytest.approx(asked)


@pytest.mark.parametrize("paths", CASES.values(), ids=CASES.keys())
def test_a_frame_measures_as_it_is_laid_out(paths: dict[str, Any]) -> None:
    kit = kit_of(**paneled(**paths))
    entry = kit.placement.opening.interior.panels
    assert entry
    found = frame_measures(part_of(kit, "extension jamb", "left leg"), entry, 1 / 32)
    # Between the stiles, at the frame, three rails and their tenons, two panels.
    assert len(found) == 2 + 3 * 3 + 2
    assert [one.name for one in found if abs(one.found - one.asked) > one.tolerance] == []
