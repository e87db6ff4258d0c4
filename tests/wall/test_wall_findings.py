"""What keeps a stack from being a wall, on both sides of the limit."""

from __future__ import annotations

import finding_rows
from finding_rows import Case, Row, codes_in, each

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.job.models.layers import Layer, Role, Wall
from jambs.length import FINE, Units
from jambs.wall import findings
from jambs.wall.planes import stack_wall

WALL = Subject.wall("w")


def said(layers: tuple[Role, ...]) -> list[Statement]:
    try:
        stack_wall(
            Wall(name="w", layers=tuple(Layer(name=f"{role} layer", role=role, thickness=1.0) for role in layers)),
            grid=FINE[Units.INCH],
        )
    except FindingsError as error:
        return list(error.findings)
    return []


def case(*layers: Role) -> Case:
    return lambda: said(layers)


ROWS = [
    Row(
        code="wall-without-structure",
        appears=case(Role.FINISH, Role.INSULATION),
        quiet=case(Role.FINISH, Role.SHEATHING),
        inch="wall 'w' has neither framing nor sheathing; nothing can carry a window",
        severity=Severity.STOP,
        about=WALL,
    ),
    Row(
        code="wall-without-structure",
        appears=case(Role.INSULATION),
        quiet=case(Role.FRAMING, Role.INSULATION),
        inch="wall 'w' has neither framing nor sheathing; nothing can carry a window",
    ),
    Row(
        code="sheathing-outside-insulation",
        appears=case(Role.FRAMING, Role.INSULATION, Role.SHEATHING),
        quiet=case(Role.FRAMING, Role.SHEATHING, Role.INSULATION, Role.COVER),
        inch="wall 'w': 'sheathing layer' lies outside the insulation and is taken as sheathing; "
        "write role: outer sheathing beside it",
        severity=Severity.STOP,
        about=WALL,
    ),
    Row(
        # Insulation inside the framing, as in a service cavity, is not outboard.
        code="sheathing-outside-insulation",
        appears=case(Role.FRAMING, Role.INSULATION, Role.SHEATHING),
        quiet=case(Role.INSULATION, Role.FRAMING, Role.SHEATHING),
        inch="wall 'w': 'sheathing layer' lies outside the insulation and is taken as sheathing; "
        "write role: outer sheathing beside it",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}
