"""Frames with panels from one issue to the next: every member is told, and no rail is changed in a glued frame."""

from __future__ import annotations

from typing import Any

from issued_records import opening_of
from panels import PANELS, paneled

from jambs.issued.compare import Change, compare_openings
from jambs.issued.verdict_reasons import CutIt, NoLongerNeeded, Recut, RecutWhy

WIDER_RAILS = paneled(interior_trim__inside__panels={**PANELS, "rails": "3"})


def changes(old: dict[str, Any], new: dict[str, Any]) -> list[Change]:
    found = compare_openings(opening_of(**old), opening_of(**new), tolerance=1 / 32 + 1e-9)
    return [one for one in found.changes if one.mark.startswith("W1-2")]


def test_the_same_frame_is_no_change() -> None:
    assert changes(paneled(), paneled()) == []


def test_wider_rails_make_shorter_panels_and_another_jamb() -> None:
    # Rails of 3: (42 3/4 - 9) / 2 = 16 7/8, panels 16 7/8 + 3/4 - 1/16 = 17 9/16 in place of 18 5/16.
    found = changes(paneled(), WIDER_RAILS)
    rail = next(one for one in found if one.mark == "W1-2d" and one.what.endswith("width"))
    assert (rail.what, rail.old, rail.new) == ("rail, left leg, 2 of 3, width", '2 1/2"', '3"')
    assert rail.verdict == Recut(why=RecutWhy.NARROW)
    panel = next(one for one in found if one.mark == "W1-2f")
    assert (panel.old, panel.new) == ('18 5/16"', '17 9/16"')
    jamb = next(one for one in found if one.mark == "W1-2")
    assert jamb.verdict == Recut(why=RecutWhy.SHAPE)


def test_a_jamb_of_one_board_is_no_frame() -> None:
    plain = {"position": {"share": "1"}}
    found = changes(plain, paneled())
    assert next(one for one in found if one.mark == "W1-2").verdict == Recut(why=RecutWhy.SHAPE)
    assert {one.mark: one.verdict for one in found}["W1-2c"] == CutIt()
    assert {one.mark: one.verdict for one in changes(paneled(), plain)}["W1-2c"] == NoLongerNeeded()
