"""Trims that no arch is made with: each is refused with what would do."""

from __future__ import annotations

from typing import Any

import pytest
from arches import arch_changes
from cases import changed, job_of

from jambs.job import JobFaults


def faults(**more: Any) -> str:
    with pytest.raises(JobFaults) as found:
        job_of(changed(**arch_changes("half round", 36, 60, **more)))
    return str(found.value)


def test_a_flared_arch_is_refused() -> None:
    assert (
        "flares, and a jamb that leans round the half round would be a piece of a cone, which is not made here; write "
        "interior_trim: {like: …, flare: none} for this opening, or leave shape out"
    ) in faults(interior_trim__inside__flare={"sides": "10 deg"})


def test_a_jamb_that_does_not_say_how_it_goes_round_is_asked() -> None:
    assert (
        "does not say how its jamb goes round the half round; write jamb: {…, curved: bent laminations} or curved: "
        "sawn segments"
    ) in faults(exterior_trim__outside__jamb={"thickness": "3/4", "stock": "cedar"})


def test_a_jamb_outside_is_not_bent() -> None:
    said = faults(exterior_trim__outside__jamb={"thickness": "3/4", "stock": "cedar", "curved": "bent laminations"})
    assert "bends its jamb, which is made inside only; write curved: sawn segments" in said


def test_a_lamination_does_not_lose_all_its_curve() -> None:
    with pytest.raises(JobFaults) as raised:
        job_of(changed(shop__springback="100 %"))
    assert "is more than a lamination springs back; 0 % to 25 % is allowed" in str(raised.value)
