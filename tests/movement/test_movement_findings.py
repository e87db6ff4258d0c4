"""Every finding of wood that moves on both sides of its limit, with its sentence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import finding_rows
from finding_rows import Case, Row, codes_in, each
from movement_house import climate, harbour_house

from jambs.findings import Severity, Statement, Subject
from jambs.movement import findings
from jambs.movement.findings import JointMoves
from jambs.movement.joint_words import joint_name
from jambs.movement.plan import plan_movement
from jambs.parts.kit.kit import Kit

W06 = Subject.opening("W06")


def said(kit: Kit, only: str = "", **airs: str) -> Sequence[Statement]:
    """What is said of a kit; of its joints only that one."""
    found = plan_movement(kit, climate(**airs), {}, harbour_house()[0].shop).findings
    return [one for one in found if not isinstance(one, JointMoves) or joint_name(one.joint) == only]


def sealant(width: float) -> Case:
    """W06 with a sealant joint of a width [in], in a wet winter."""
    placement = harbour_house()[1]["W06"].placement
    assert placement.opening.exterior is not None
    trim = placement.opening.exterior.model_copy(update={"sealant_joint": width})
    kit = replace(
        harbour_house()[1]["W06"], placement=replace(placement, opening=replace(placement.opening, exterior=trim))
    )
    return lambda: said(kit, "sealant joint", outside_winter="30 F, 90 %")


def of_stock(stock: str) -> Case:
    """W06 with its casing of another stock."""
    kit = harbour_house()[1]["W06"]
    parts = tuple(
        replace(part, blank=replace(part.blank, stock=stock)) if part.stock == "poplar" else part for part in kit.parts
    )
    return lambda: said(replace(kit, parts=parts))


ROWS = [
    Row(
        code="joint-moves",
        appears=sealant(1 / 4),
        quiet=sealant(1 / 2),
        inch='Wood movement, sealant joint: the joint of 1/4" moves by up to 7/64", ±47 %: take a sealant rated ±50 %, '
        'or make the joint 15/32".',
        mm="Wood movement, sealant joint: the joint of 6.4 mm moves by up to 2.9 mm, ±47 %: take a sealant rated ±50 "
        "%, or make the joint 11.9 mm.",
        severity=Severity.NOTE,
        about=W06,
    ),
    Row(
        code="joint-moves",
        appears=sealant(1 / 8),
        quiet=sealant(15 / 32),
        inch='Wood movement, sealant joint: the joint of 1/8" moves by up to 1/8", ±98 %, more than any sealant is '
        'rated for: write sealant_joint: 1/2" in the job.',
        mm="Wood movement, sealant joint: the joint of 3.2 mm moves by up to 3.1 mm, ±98 %, more than any sealant is "
        "rated for: write sealant_joint: 12.7 mm in the job.",
        severity=Severity.CHECK,
    ),
    Row(
        code="woods-unknown",
        appears=of_stock("driftwood"),
        quiet=of_stock("maple"),
        inch="No movement figures for driftwood; seasonal movement not computed.",
        severity=Severity.NOTE,
        about=W06,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_a_joint_is_told_where_it_does_not_take_it() -> None:
    """Rated ±25 %: a joint is told of while its share is more, as a check where no sealant takes it (past 50 %)."""
    seen = set()
    for sixteenths in range(1, 17):
        told = next((one for one in sealant(sixteenths / 16)() if isinstance(one, JointMoves)), None)
        seen.add(None if told is None else told.severity)
        if told is not None:
            share = told.joint.change / told.joint.size
            assert share > 0.25
            assert told.severity is (Severity.CHECK if share > 0.5 else Severity.NOTE)
            assert told.subject == W06
    assert seen == {None, Severity.NOTE, Severity.CHECK}
