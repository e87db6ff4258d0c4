"""Furring over foam sheathing: the published table, row by row. The local code and its edition decide."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from enum import Enum, auto
from functools import cache
from importlib.resources import files

from jambs.findings import Severity
from jambs.job.models.outside import Fixed
from jambs.length import HALF_64TH, ROUND_OFF

DESIGN_REQUIRED = "design required"


@dataclass(frozen=True, slots=True, kw_only=True)
class FurringRow:
    """A row of the table [in]: up to ``greatest_foam`` of foam sheathing, None where the table asks for design."""

    fastener: str
    least_penetration: float
    fastener_spacing: float
    furring_spacing: float
    cladding_psf: float
    greatest_foam: float | None
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FurringCase:
    """Furring as it will be built [in]; ``cladding_psf``: what hangs on it with the furring [lb per sq ft]."""

    fastener: str
    penetration: float
    fastener_spacing: float
    furring_spacing: float
    cladding_psf: float
    foam: float


class Answer(Enum):
    """What the table says of a case, or why it says nothing."""

    ALLOWED = auto()
    NO_SUCH_FASTENER = auto()
    PAST_THE_TABLE = auto()
    ROW_ASKS_DESIGN = auto()
    PENETRATION_SHORT = auto()
    FOAM_TOO_THICK = auto()
    NOT_STRAPPING = auto()
    NOT_FOAM = auto()
    NO_SPACING = auto()
    NO_CLADDING_WEIGHT = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What the table says of fasteners: allowed by a row, or *needs design*; with no more values than the answer has.

    ``name``: of the fastener the table has not, or of the layer that is no foam; ``fixed``: what is no strapping.
    ``size``, ``limit``: the penetration or the foam there is, and the table's [in].
    """

    answer: Answer
    case: FurringCase | None = None
    fixed: Fixed | None = None
    name: str = ""
    size: float = 0.0
    limit: float = 0.0
    row: FurringRow | None = None

    @property
    def is_allowed(self) -> bool:
        """Whether a row of the table allows it."""
        return self.answer is Answer.ALLOWED

    @property
    def severity(self) -> Severity:
        """How much it matters: what the table does not allow has to be settled by design."""
        return Severity.NOTE if self.is_allowed else Severity.CHECK


@cache
def furring_table() -> tuple[FurringRow, ...]:
    """Return the rows of the published table."""
    text = files("jambs.data").joinpath("furring_over_foam.csv").read_text(encoding="utf-8")
    return tuple(
        FurringRow(
            fastener=row["fastener"],
            least_penetration=float(row["least_penetration_in"]),
            fastener_spacing=float(row["fastener_spacing_in"]),
            furring_spacing=float(row["furring_spacing_in"]),
            cladding_psf=float(row["cladding_psf"]),
            greatest_foam=None if row["greatest_foam_in"] == DESIGN_REQUIRED else float(row["greatest_foam_in"]),
            source=row["source"],
        )
        for row in csv.DictReader(text.splitlines())
    )


def furring_verdict(case: FurringCase) -> Verdict:
    """Look a case up; between two rows the one that asks for more holds."""
    rows = [row for row in furring_table() if row.fastener == case.fastener]
    if not rows:
        return Verdict(answer=Answer.NO_SUCH_FASTENER, name=case.fastener)
    covering = [row for row in rows if _covers(row, case)]
    if not covering:
        return Verdict(answer=Answer.PAST_THE_TABLE, case=case)
    row = min(covering, key=lambda row: (row.fastener_spacing, row.furring_spacing, row.cladding_psf))
    if case.penetration < row.least_penetration - HALF_64TH:
        size, limit = case.penetration, row.least_penetration
        return Verdict(answer=Answer.PENETRATION_SHORT, size=size, limit=limit, row=row)
    if row.greatest_foam is None:
        return Verdict(answer=Answer.ROW_ASKS_DESIGN, case=case, row=row)
    if case.foam > row.greatest_foam + ROUND_OFF:
        return Verdict(answer=Answer.FOAM_TOO_THICK, size=case.foam, limit=row.greatest_foam, row=row)
    return Verdict(answer=Answer.ALLOWED, limit=row.greatest_foam, row=row)


def _covers(row: FurringRow, case: FurringCase) -> bool:
    return (
        row.fastener_spacing >= case.fastener_spacing - HALF_64TH
        and row.furring_spacing >= case.furring_spacing - HALF_64TH
        and row.cladding_psf >= case.cladding_psf - ROUND_OFF
    )
