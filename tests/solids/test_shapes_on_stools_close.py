"""Half and quarter rounds and triangles that stand on a stool: sawn from their cut lists alone they close."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from cases import STOOL
from measured_kits import measured
from random_kits import RandomKit, kit_from
from rounds import inside_only, round_changes

from jambs.length import Units
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind
from jambs.parts.words.corner_words import jamb_corner_words
from jambs.solids.fit import fit_report
from jambs.solids.model import model_kit


def on_stool(shape: Any, width: float, height: float, curved: str = "bent laminations") -> RandomKit:
    changes = inside_only(round_changes(shape, width, height))
    kept = {key: one for key, one in changes.items() if not key.startswith("interior")}
    return kit_from({**kept, "interior_trim__inside": {**STOOL, "jamb": {**STOOL["jamb"], "curved": curved}}})


QUARTER = {"kind": "quarter round", "high_side": "left"}


@pytest.mark.parametrize(
    ("made", "feet"),
    [
        (("half round", 36, 18), "the curved head stands on the stool"),
        ((QUARTER, 30, 30, "sawn segments"), "the curved head stands on the leg and the stool"),
        (({"kind": "triangle", "peak_from_left": "14"}, 48, 30), ""),
        (({"kind": "segment arch", "rise": "10"}, 36, 10), "the curved head stands on the stool"),
    ],
    ids=["half round", "quarter round", "triangle", "segment arch"],
)
def test_what_stands_on_a_stool_closes(made: tuple[Any, ...], feet: str) -> None:
    kit = on_stool(*made)
    report = fit_report(model_kit(kit.kit, kit.job))
    assert report.faults == ()
    assert {"the feet of the jambs and the stool", "the feet of the casing and the stool"} <= {
        one.name for one in report.joints
    }
    assert jamb_corner_words(kit.kit).endswith(feet)


def test_a_triangle_on_a_stool_closes_in_a_leaning_wall() -> None:
    made = measured(on_stool("triangle", 48, 30), (1 / 32, 1 / 16, 1 / 8))
    assert made.kit.is_measured
    assert fit_report(model_kit(made.kit, made.job)).faults == ()


def test_a_stool_that_is_notched_short_is_told() -> None:
    """The witness sees: horns that begin 1/16 too far in are under the jamb's foot, and its notch is off the back."""
    made = on_stool("triangle", 48, 30)
    bad = [
        replace(
            part,
            cuts=tuple(replace(cut, along=cut.along + 1 / 16) if isinstance(cut, Notch) else cut for cut in part.cuts),
        )
        if part.kind is PartKind.STOOL
        else part
        for part in made.kit.parts
    ]
    faults = fit_report(model_kit(replace(made.kit, parts=tuple(bad)), made.job)).faults
    told = [one.sentence(Units.INCH) for one in faults]
    assert any("left notch of the stool" in one for one in told) and any("feet of the jambs" in one for one in told)


def test_the_stool_of_a_half_round_by_hand() -> None:
    """Frame 36, faces 2 1/2, reveal 1/8: the jamb's radius is 15 5/8 and the stool lies 2 3/8 over its center.

    Casing 3/16 off and 3 1/2 wide ends at a radius of 19 5/16, ``√(19.3125² - 2.375²)`` from the middle, and the horns
    go 3/4 past it; between the notches are the backs of the jamb, 3/4 thick.
    """
    kit = on_stool("half round", 36, 18).kit
    stool, apron = (next(p for p in kit.parts if p.kind is kind) for kind in (PartKind.STOOL, PartKind.APRON))
    casing, back = (math.sqrt(radius**2 - 2.375**2) for radius in (15.625 + 3.6875, 15.625 + 0.75))
    assert stool.length == pytest.approx(2 * (casing + 0.75)) and apron.length == pytest.approx(2 * casing)
    ends = [stool.seat.at(u, 0.0, 0.0) for u in (0.0, stool.length)]
    assert [one[0] for one in ends] == pytest.approx([18 + casing + 0.75, 18 - casing - 0.75])
    assert [one[1] for one in ends] == pytest.approx([2.375, 2.375])
    notches = [cut.along for cut in stool.cuts if isinstance(cut, Notch)]
    assert notches == pytest.approx([casing + 0.75 - back] * 2)


def test_the_stool_of_a_triangle_by_hand() -> None:
    """48 wide and 30 high it slopes 1 1/4 in 1: what lies ``t`` off a slope takes ``t √(1 + 1/1.25²)`` of a level."""
    kit = on_stool("triangle", 48, 30).kit
    stool = next(part for part in kit.parts if part.kind is PartKind.STOOL)
    level = math.sqrt(1 + 1 / 1.25**2)
    # Half the clear opening at the stool: half the frame less faces of 2 1/2 but for 1/8, narrowed 2 3/8 higher up.
    half = 24 - 2.375 * level - 2.375 / 1.25
    assert stool.length == pytest.approx(2 * (half + 3.6875 * level + 0.75))
