"""What keeps the movement of wood from being worked out: on both sides, with its sentence."""

from __future__ import annotations

from collections.abc import Sequence

import finding_rows
from finding_rows import Case, Row, codes_in, each

from jambs.findings import Severity, Statement, Subject
from jambs.job.models.outside import WoodEntry
from jambs.parts.wood import wood_findings
from jambs.parts.wood.woods import WoodError, wood_of, woods

PINES = [one.species for one in woods() if one.species.startswith("Pine, ")]


def wood(stock: str, species: str = "") -> Case:
    """What is said of a stock of which nobody can say what wood it is."""
    entries = {stock: WoodEntry(species=species)} if species else {}

    def said() -> Sequence[Statement]:
        try:
            wood_of(stock, entries)
        except WoodError as error:
            return error.findings
        return ()

    return said


ROWS = [
    Row(
        code="several-woods",
        appears=wood("pine"),
        quiet=wood("larch"),
        inch='woods "pine": yards sell several woods by this name, and they move differently; say which under woods, '
        f'like pine: {{species: "{PINES[0]}"}}. The table has {"; ".join(PINES)}',
        severity=Severity.STOP,
        about=Subject.stock("pine"),
    ),
    Row(  # the species that is stated is no more of an answer than the stock's name
        code="several-woods",
        appears=wood("poplar", "pine"),
        quiet=wood("pine", "Pine, sugar"),
        inch='woods "poplar": yards sell several woods by this name, and they move differently; say which under woods, '
        f'like poplar: {{species: "{PINES[0]}"}}. The table has {"; ".join(PINES)}',
    ),
    Row(
        code="no-such-species",
        appears=wood("poplar", "Yelow-poplar"),
        quiet=wood("poplar", "Yellow-poplar"),
        inch="woods \"poplar\": the table has no species 'Yelow-poplar'; did you mean Yellow-poplar?",
        severity=Severity.STOP,
        about=Subject.stock("poplar"),
    ),
    Row(  # names of species have commas of their own
        code="no-such-species",
        appears=wood("poplar", "granite"),
        quiet=wood("poplar", "maple"),
        inch="woods \"poplar\": the table has no species 'granite'; write one of "
        + "; ".join(one.species for one in woods()),
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(wood_findings) == {row.code for row in ROWS}
