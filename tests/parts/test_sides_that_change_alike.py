"""Sides whose depths change alike within the shop's tolerance are told of in one finding, others in their own."""

from __future__ import annotations

import pytest
from cases import changed, job_of

from jambs.findings import Subject
from jambs.job.models.openings import SideDepths
from jambs.length import Units
from jambs.parts.trim.sides import wall_findings

AT = 4.6875


def along(depths: SideDepths, *, is_outside: bool = False) -> list[str]:
    """Return what is told of the sides, up to what is done about it."""
    job = job_of(changed())
    found = wall_findings(depths, job.shop, job.limits, about=Subject.opening("W1"), is_outside=is_outside)
    return [one.sentence(Units.INCH).split(", within")[0] for one in found]


def sides(*deeper: float) -> SideDepths:
    """Head, sill, left and right leg, each deeper at its far end by so much [in]."""
    head, sill, left, right = ((AT, AT + one) for one in deeper)
    return SideDepths(head=head, sill=sill, left=left, right=right)


@pytest.mark.parametrize(
    ("deeper", "told"),
    [
        ((1 / 32, 1 / 32, 1 / 32, 0.0), ['The depth along the head, left leg and sill changes 1/32"']),
        ((0.0, 1 / 32, 0.0, 1 / 32), ['The depth along the right leg and sill changes 1/32"']),
        ((0.0, 0.0, 1 / 32, 0.0), ['The depth along the left leg changes 1/32"']),
        (
            (1 / 64, 0.0, 1 / 32, 1 / 64),
            ['The depth along the head and right leg changes 1/64"', 'The depth along the left leg changes 1/32"'],
        ),
        ((0.0, 0.0, 0.0, 0.0), []),
    ],
)
def test_sides_that_change_alike_are_told_once(deeper: tuple[float, ...], told: list[str]) -> None:
    assert along(sides(*deeper)) == told


def test_outside_it_is_one_sentence_too() -> None:
    assert along(sides(1 / 32, 1 / 32, 0.0, 0.0), is_outside=True) == [
        'Outside: the depth along the head and sill changes 1/32"'
    ]
