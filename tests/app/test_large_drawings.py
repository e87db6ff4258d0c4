"""What shop drawings are printed on: letter or A4, tabloid or A3 where the job asks for it."""

from __future__ import annotations

from typing import Any

import pytest
from cases import METRIC, changed, job_of

from jambs.app.papers import printed_on


@pytest.mark.parametrize(
    ("base", "asked", "name", "long", "high"),
    [
        ({}, None, "LETTER", 11.0, 8.5),  # ANSI Y14.1, sizes A and B
        ({}, "no", "LETTER", 11.0, 8.5),
        ({}, "yes", "TABLOID", 17.0, 11.0),
        (METRIC, None, "A4", 297 / 25.4, 210 / 25.4),  # ISO 216
        (METRIC, "yes", "A3", 420 / 25.4, 297 / 25.4),
    ],
)
def test_drawings_are_printed_on_the_paper_that_the_job_asks_for(
    base: dict[str, Any], asked: str | None, name: str, long: float, high: float
) -> None:
    shop = {"shop__large_drawings": asked} if asked else {}
    page = printed_on(job_of(changed(**base, **shop)))
    assert page.name == name
    assert (page.width, page.height) == pytest.approx((long, high))
