"""Random kits: no clash, every joint closed, every measure right. The benchmark runs 300 of them, a long run 500."""

from __future__ import annotations

import harbour  # noqa: F401  (skips where the kernel is missing)
from cases import examples
from hypothesis import HealthCheck, Phase, find, given, settings
from random_kits import RandomKit, kits

from jambs.solids import fit_report, model_kit

SLOW = [HealthCheck.too_slow, HealthCheck.filter_too_much]


@settings(examples(25), suppress_health_check=SLOW)
@given(kits())
def test_random_kits_fit(random: RandomKit) -> None:
    assert fit_report(model_kit(random.kit, random.job)).faults == ()


def test_an_example_that_fails_can_be_read() -> None:
    """Hypothesis prints an example by its repr, and warns (an error here) where that is overly large.

    The first that is found, however long it is: making it shorter would take thousands of kits.
    """
    first = settings(suppress_health_check=SLOW, phases=[Phase.generate])
    shown = repr(find(kits(), lambda random: random.kit.is_measured, settings=first))
    assert shown.startswith("kit_of(") and "measured" in shown and len(shown) < 4000
