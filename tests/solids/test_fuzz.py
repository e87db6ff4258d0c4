"""Random kits: no clash, every joint closed, every measure right. The benchmark runs 300 of them."""

from __future__ import annotations

import harbour  # noqa: F401  (skips where the kernel is missing)
from hypothesis import HealthCheck, given, settings
from random_kits import kits

from jambs.job import Job
from jambs.parts.kit import Kit
from jambs.solids import fit_report, model_kit


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(kits())
def test_random_kits_fit(kit_and_job: tuple[Kit, Job]) -> None:
    kit, job = kit_and_job
    assert fit_report(model_kit(kit, job)).faults == ()
