"""Fasteners of furring behind returned cladding: how many, through what, and what is said over insulation.

The base window on its sheathing, its frame 35 1/2 x 47 1/2, shim space 1/4. Returns stand in 2 1/4 from the frame's
edge (reveal 1/4, face 2); with boards of 3/4 and furring of 1/2 behind them the back of the furring is 1 in from it.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of
from clad import DEEP, clad, mitered

from jambs.fasten.fastener_words import line_way
from jambs.fasten.furring import Answer
from jambs.fasten.plan import FastenerLine, house_fasteners
from jambs.job import Job
from jambs.job.models.outside import Fixed
from jambs.length import Units
from jambs.outside.fastener_line import Fastened, InstallFastener
from jambs.outside.plan import plan_outside
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

STATED = {"return furring": {"fastener": "No. 10 wood screw", "penetration": "1", "spacing": "12"}}
SOLID = ["gypsum board 1/2", "stud 2x6", "plywood 1/2", {"material": "plywood 1/2", "role": "outer sheathing"}]
PLY = [
    *SOLID,
    {"material": "strapping 1x4", "thickness": "5"},
    {"material": "boards", "thickness": "3/4", "role": "cladding"},
]


def made(trim: dict[str, Any], **changes: Any) -> tuple[Kit, Job]:
    job = job_of(changed(**{**DEEP, "exterior_trim__outside": trim, **changes}))
    return make_kit(place_windows(job)[0], job), job


def line(trim: dict[str, Any], **changes: Any) -> FastenerLine | None:
    kit, job = made(trim, **changes)
    return next((one for one in plan_outside([kit], job).fasteners if one.fixed is Fixed.RETURN_FURRING), None)


def told(trim: dict[str, Any], kind: Fastened, **changes: Any) -> InstallFastener | None:
    found = [one for one in trim_fasteners(*made(trim, **changes)) if one.kind is kind]
    assert len(found) < 2
    return found[0] if found else None


def test_a_line_for_the_strips_that_counts_every_board() -> None:
    """Strips 33 1/2 and 46 + long at head and legs, two of each: 29 1/2 in steps of 12: 4; 42: 5; 2 x 14."""
    found = line(clad(), fasteners=STATED)
    assert found and (found.count, found.spacing, found.is_about) == (28, 12.0, False)
    assert [(one.name, one.thickness) for one in found.through] == [("furring", 0.5), ("shims or layers", 1.25)]
    assert (found.needed, found.length) == (2.75, 2.75)
    assert line_way(found, Units.INCH) == 'furring (1/2") + shims or layers (1 1/4") + 1" into the wood behind it'


def test_they_are_added_up_for_the_house() -> None:
    kit, job = made(clad(), fasteners=STATED)
    (row,) = house_fasteners(plan_outside([kit], job).fasteners)
    assert (row.fastener, row.length, row.count, row.fixed) == ("No. 10 wood screw", 2.75, 28, (Fixed.RETURN_FURRING,))


def test_furring_that_reaches_the_rough_opening_needs_no_shims() -> None:
    """2 thick its back is 2 1/2 farther out, 3 in past the frame's edge, and so past the rough opening."""
    thick = {"thickness": "2 1/2", "width": "2", "stock": "spruce"}
    trim = clad(furring=thick)
    found = line({**trim, "sill": {**trim["sill"], "horn": "3"}}, fasteners=STATED)
    assert found and [one.name for one in found.through] == ["furring"]


def test_the_widest_side_counts_the_head_too() -> None:
    """A rough opening 1 1/2 higher than the frame leaves 3/4 over the head: 1 + 3/4 behind its strip."""
    found = line(clad(), fasteners=STATED, windows__fixed__jamb_depth="4 9/16", openings__0__rough_opening="36 x 49")
    assert found and [one.thickness for one in found.through] == [0.5, 1.75]


def test_insulation_that_the_buck_covers_is_not_behind_it() -> None:
    """Foam of 1 on the sheathing, the frame 4 1/2 behind the strapping of 5: 1/2 past the foam."""
    foam = [*PLY[:4], {"material": "EPS", "thickness": "1"}, *PLY[4:]]
    changes = {"walls__main__layers": foam, "position__share": None, "position__exterior_depth": "4 1/2"}
    found = line(clad(), fasteners=STATED, **changes)
    assert found and found.furring is None
    assumed = told(clad(), Fastened.RETURN_FURRING, **changes)
    assert assumed and assumed.is_assumed


def test_over_insulation_it_needs_design_and_over_wood_not() -> None:
    over = line(clad(), fasteners=STATED)
    assert over and over.furring and over.furring.answer is Answer.NOT_STRAPPING
    wood = line(clad(), fasteners=STATED, walls__main__layers=PLY)
    assert wood and wood.furring is None


def test_what_is_not_stated_is_assumed_over_wood_and_left_to_the_check_over_insulation() -> None:
    wood = told(clad(), Fastened.RETURN_FURRING, walls__main__layers=PLY)
    assert wood and wood.is_assumed and wood.fastener == "framing screw" and not wood.is_inside
    assert wood.penetration == 1.5 and wood.target == "the wood behind it"
    over = told(clad(), Fastened.RETURN_FURRING)
    assert over and over.says == "screws sized for it" and over.length is None and over.through == ()
    stated = told(clad(), Fastened.RETURN_FURRING, fasteners=STATED)
    assert stated and not stated.is_assumed and stated.length == 2.75


def test_the_boards_before_it_are_held_as_the_cladding_is() -> None:
    assert told(clad(), Fastened.CLADDING_RETURN) and not told(clad(), Fastened.CLADDING_RETURN_ALONE)
    assert told(mitered(), Fastened.CLADDING_RETURN_ALONE) and not told(mitered(), Fastened.CLADDING_RETURN)


@pytest.mark.parametrize("keys", [{}, {"fasteners": STATED}])
def test_no_line_where_no_cladding_returns(keys: dict[str, Any]) -> None:
    job = job_of(changed(**keys))
    kit = make_kit(place_windows(job)[0], job)
    assert not [one for one in plan_outside([kit], job).fasteners if one.fixed is Fixed.RETURN_FURRING]
    kinds = {one.kind for one in trim_fasteners(kit, job)}
    assert not kinds & {Fastened.RETURN_FURRING, Fastened.CLADDING_RETURN, Fastened.CLADDING_RETURN_ALONE}


def test_none_is_listed_for_the_house_that_the_job_does_not_state() -> None:
    assert line(clad()) is None
