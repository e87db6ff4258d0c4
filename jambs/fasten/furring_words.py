"""What the furring table says, as people read it."""

from __future__ import annotations

from jambs.fasten.furring import Answer, FurringCase, Verdict, furring_table
from jambs.length import Units, decimal_text

EDITION = (
    "International Building Code 2018 Table 2603.13.2 (as International Residential Code 2018 Table R703.15.2); "
    "editions and local amendments differ, the local code decides"
)
CONDITIONS = "holds for foam of at least 15 psi and wood of specific gravity at least 0.42"
SILENT = (Answer.NOT_STRAPPING, Answer.NOT_FOAM, Answer.NO_SPACING, Answer.NO_CLADDING_WEIGHT)
"""The table was not asked."""


def verdict_words(verdict: Verdict, units: Units) -> str:
    """Say that it is in the table, or that it needs design and why."""
    if verdict.is_allowed:
        return f"in the table: up to {_foam(verdict.limit)} of foam; {CONDITIONS}. {EDITION}."
    if verdict.answer in SILENT:
        return f"needs design: {_why_silent(verdict)}; the local code decides."
    return f"needs design: {_why(verdict, units)}. {EDITION}."


def _foam(thickness: float) -> str:
    return f"{thickness:g} in"


def _why_silent(verdict: Verdict) -> str:
    fixed = verdict.fixed.value if verdict.fixed else ""
    return {
        Answer.NOT_STRAPPING: f"the published table is for furring over foam, not for {fixed} over insulation",
        Answer.NOT_FOAM: f"the published table is for foam plastic, not for {verdict.name}",
        Answer.NO_SPACING: "neither the strapping nor the framing has a spacing in the job",
        Answer.NO_CLADDING_WEIGHT: "the job gives no cladding_weight",
    }[verdict.answer]


def _why(verdict: Verdict, units: Units) -> str:
    if verdict.answer is Answer.NO_SUCH_FASTENER:
        had = ", ".join(dict.fromkeys(row.fastener for row in furring_table()))
        return f"the table has no {verdict.name} (it has {had})"
    if verdict.answer is Answer.PENETRATION_SHORT:
        return f"{units.text(verdict.size)} of penetration, the table asks for {units.text(verdict.limit)}"
    if verdict.answer is Answer.FOAM_TOO_THICK:
        return f"{units.text(verdict.size)} of foam, the table goes to {_foam(verdict.limit)}"
    case = _case_words(verdict.case, units) if verdict.case else ""
    ends = verdict.answer is Answer.PAST_THE_TABLE
    return f"the table ends before this case: {case}" if ends else f"the table asks for design: {case}"


def _case_words(case: FurringCase, units: Units) -> str:
    along, apart = units.text(case.fastener_spacing), units.text(case.furring_spacing)
    return f"fasteners {along} along furring {apart} apart, {decimal_text(case.cladding_psf, 1)} lb per sq ft"
