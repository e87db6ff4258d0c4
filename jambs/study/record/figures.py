"""Figures of the placement comparison: the exact value, its unit, and the text that stands on paper."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from jambs.findings import Finding
from jambs.job.models.openings import Assumed
from jambs.length import Units, share_text
from jambs.values import Record


def figure(value: float, unit: str, digits: int) -> Record:
    """Return a value with its unit and its printed text."""
    text = f"{value:.{digits}f}"
    return {"value": value, "unit": unit, "text": text.removeprefix("-") if float(text) == 0 else text}


def share(value: float | None) -> Record | None:
    """Return a share of one, printed in percent; nothing stays nothing."""
    return None if value is None else {"value": value, "unit": "1", "text": share_text(value)}


def assumed_record(assumed: Sequence[Assumed]) -> list[Record]:
    """Return what nobody stated, each once: of two rows of studs the same is taken."""
    return [{"what": one.what, "value": one.value, "why": one.why} for one in dict.fromkeys(assumed)]


def signed(value: float, unit: str, digits: int) -> Record:
    """Return a difference with its sign."""
    text = f"{value:+.{digits}f}"
    return {"value": value, "unit": unit, "text": "0" if float(text) == 0 else text.replace("-", "−")}


def sentences(findings: Iterable[Finding], units: Units, *, between: str = " ") -> str:
    """Return what some findings say, one after the other."""
    return between.join(one.sentence(units) for one in findings)
