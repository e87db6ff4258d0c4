"""Furring over foam sheathing: the published table, row by row. The local code and its edition decide."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.findings import Severity
from jambs.length import HALF_64TH, ROUND_OFF, Units, decimal_text, length_text

EDITION = (
    "International Building Code 2018 Table 2603.13.2 (as International Residential Code 2018 Table R703.15.2); "
    "editions and local amendments differ, the local code decides"
)
CONDITIONS = "holds for foam of at least 15 psi and wood of specific gravity at least 0.42"
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What the table says of a case: allowed by a row, or *needs design* and why."""

    is_allowed: bool
    words: str
    row: FurringRow | None = None

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


def furring_verdict(case: FurringCase, *, units: Units) -> Verdict:
    """Look a case up; between two rows the one that asks for more holds."""
    rows = [row for row in furring_table() if row.fastener == case.fastener]
    if not rows:
        had = ", ".join(dict.fromkeys(row.fastener for row in furring_table()))
        return _needs_design(f"the table has no {case.fastener} (it has {had})")
    covering = [row for row in rows if _covers(row, case)]
    if not covering:
        return _needs_design(f"the table ends before this case: {_words(case, units)}")
    row = min(covering, key=lambda row: (row.fastener_spacing, row.furring_spacing, row.cladding_psf))
    if case.penetration < row.least_penetration - HALF_64TH:
        least, found = (length_text(one, units=units) for one in (row.least_penetration, case.penetration))
        return _needs_design(f"{found} of penetration, the table asks for {least}", row)
    if row.greatest_foam is None:
        return _needs_design(f"the table asks for design: {_words(case, units)}", row)
    most = f"{decimal_text(row.greatest_foam, 2)} in"
    if case.foam > row.greatest_foam + ROUND_OFF:
        return _needs_design(f"{length_text(case.foam, units=units)} of foam, the table goes to {most}", row)
    return Verdict(is_allowed=True, words=f"in the table: up to {most} of foam; {CONDITIONS}. {EDITION}.", row=row)


def _covers(row: FurringRow, case: FurringCase) -> bool:
    return (
        row.fastener_spacing >= case.fastener_spacing - HALF_64TH
        and row.furring_spacing >= case.furring_spacing - HALF_64TH
        and row.cladding_psf >= case.cladding_psf - ROUND_OFF
    )


def _needs_design(why: str, row: FurringRow | None = None) -> Verdict:
    return Verdict(is_allowed=False, words=f"needs design: {why}. {EDITION}.", row=row)


def _words(case: FurringCase, units: Units) -> str:
    along, apart = (length_text(one, units=units) for one in (case.fastener_spacing, case.furring_spacing))
    return f"fasteners {along} along furring {apart} apart, {decimal_text(case.cladding_psf, 1)} lb per sq ft"
