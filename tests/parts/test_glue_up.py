"""Glue-ups: enough wood for jointing, the last rip and both ends, on the saw's grid, in the fewest strips."""

from __future__ import annotations

from typing import Any

import pytest
from cases import METRIC, changed, job_of, kit_of
from finding_rows import codes_in

from jambs.length import FINE, MM_PER_INCH, Units
from jambs.parts.board.glue_up import GlueSettings, glue_settings
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.findings import kit_findings
from jambs.parts.kit.kit import Kit
from jambs.parts.words.glue_words import glue_words

NARROW: dict[str, Any] = {"shop__boards": [{"nominal": "1x4", "stock": "poplar"}]}
NARROW_MM: dict[str, Any] = {
    **METRIC,
    "shop__boards": [{"stock": "pine", "thickness": "20", "width": "95"}],
    "position": {"interior_depth": "100 mm"},
}


def head(kit: Kit) -> Part:
    return next(part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB)


@pytest.mark.parametrize("depth", ["4", "5 1/32", "6 15/32", "6 1/2", "7 7/32"])
def test_the_panel_is_wide_enough_for_jointing_and_the_last_rip(depth: str) -> None:
    """Two strips have two glued edges, three have four; the last rip takes a kerf; one strip less would not do."""
    part = head(kit_of(position={"interior_depth": depth}, **NARROW))
    count, each = len(part.strips), part.strips[0]
    assert set(part.strips) == {each} and each <= 3.5 - 1 / 8
    assert each * 32 == int(each * 32)
    assert count * each - 2 * (count - 1) / 16 >= part.width + 1 / 8
    assert count == 2 or (count - 1) * 3.375 - 2 * (count - 2) / 16 < part.width + 1 / 8


def test_strips_of_a_metric_shop_are_whole_millimeters() -> None:
    """101 + 3 for the saw + 2 x 2 for jointing = 108: two strips of 54; 900 - 2 x 57 + 2 x 20 + 25 long."""
    part = head(kit_of(**NARROW_MM))
    assert [round(strip * MM_PER_INCH, 6) for strip in part.strips] == [54, 54]
    assert round(part.blank.strip_length * MM_PER_INCH, 6) == 900 - 2 * 57 + 2 * 20 + 25
    assert glue_words(part, grid=FINE[Units.MM]) == (
        "glue up from 2 strips 54 mm × 851 mm: joint 2 mm off each glued edge, glue, then rip to 101 mm"
    )


def test_the_shop_says_what_jointing_takes_and_how_long_the_strips_are() -> None:
    """4 23/32 + 1/8 + 2 x 1/8 = 5 3/32: two strips of 2 35/64, up to 2 9/16; 32 1/4 + 2 long."""
    part = head(kit_of(shop__jointing_allowance="1/8", shop__glue_up_over="2", **NARROW))
    assert part.strips == (2.5625, 2.5625) and part.blank.strip_length == 34.25


def test_what_is_left_on_a_planned_depth_is_in_the_strips() -> None:
    """4 23/32 + 1/2 left on + 1/8 + 2 x 1/16 = 5 15/32: two strips of 2 47/64, up to 2 3/4."""
    assert head(kit_of(shop__planned_allowance="1/2", **NARROW)).strips == (2.75, 2.75)
    depth = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 11/16")
    measured = {"date": "2026-05-18", "interior_depth": depth}
    kit = kit_of(shop__planned_allowance="1/2", openings__0__measured=measured, **NARROW)
    assert head(kit).strips == (2.5, 2.5)


def assumed(kit: Kit) -> dict[str, str]:
    return {one.what: one.value for one in kit.assumed if one.what in ("jointing allowance", "length of glued strips")}


def test_usual_settings_are_listed_as_assumed_where_something_is_glued() -> None:
    usual = {"jointing allowance": '1/16" off each glued edge', "length of glued strips": '1" over the part'}
    assert assumed(kit_of(**NARROW)) == usual
    assert assumed(kit_of(shop__jointing_allowance="1/16", shop__glue_up_over="1", **NARROW)) == {}
    assert assumed(kit_of()) == {}
    assert assumed(kit_of(**NARROW_MM)) == {
        "jointing allowance": "2 mm off each glued edge",
        "length of glued strips": "25 mm over the part",
    }


def test_the_usual_settings_are_those_that_are_told() -> None:
    """To the last bit: where a grid rounds strips, less of a jointing would not show."""
    inch, metric = (glue_settings(job_of(changed(**paths)).shop) for paths in ({}, METRIC))
    assert inch == GlueSettings(jointing=1 / 16, length_over=1.0, rip_kerf=1 / 8)
    assert metric == GlueSettings(jointing=2 / 25.4, length_over=25 / 25.4, rip_kerf=3 / 25.4)


def test_one_board_says_nothing_of_glue() -> None:
    assert glue_words(head(kit_of()), grid=FINE[Units.INCH]) == ""
    assert "glued-from-strips" in codes_in(kit_findings)
    assert not [one for one in kit_of().findings if one.code == "glued-from-strips"]


def test_a_board_no_wider_than_jointing_takes_ends_the_search() -> None:
    boards = [{"stock": "poplar", "thickness": "3/4", "width": "1"}]
    part = head(kit_of(shop__boards=boards, shop__jointing_allowance="1/2"))
    assert part.strips


def test_strips_of_which_jointing_takes_all_are_not_multiplied() -> None:
    """1 5/32 less 1/8 is 1 1/32; 2 x 1/2 for jointing and 1/32 leave nothing: (4 23/32 + 1/8 + 1) / 2 = 2 15/16."""
    boards = [{"stock": "poplar", "thickness": "3/4", "width": "1 5/32"}]
    part = head(kit_of(shop__jointing_allowance="1/2", shop__boards=boards))
    assert part.strips == (2.9375, 2.9375)
