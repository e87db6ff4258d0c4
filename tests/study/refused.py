"""What the study says of input that it cannot compute."""

from __future__ import annotations

from collections.abc import Callable

from jambs.findings import Finding
from jambs.study.regions.region import StudyError


def refused(make: Callable[[], object]) -> Callable[[], tuple[Finding, ...]]:
    """Give the findings of a refusal as a case of a row; none where nothing is refused."""

    def case() -> tuple[Finding, ...]:
        try:
            make()
        except StudyError as error:
            return error.findings
        return ()

    return case
