"""Let the tests share ``cases.py`` and, in the tests of the page, a browser; say how hypothesis looks for examples.

``ci``, as usual: the same examples in every run, so that what fails is the fault of a change. ``long``: new examples in
every run and twenty times as many, on a machine of one's own: ``pytest --hypothesis-profile=long tests/solids``.
"""

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, settings

if TYPE_CHECKING:
    from playwright.sync_api import Browser

sys.path.insert(0, str(Path(__file__).parent))

BUSY = [HealthCheck.too_slow]  # a busy machine is no fault of a test
settings.register_profile("ci", derandomize=True, database=None, deadline=None, suppress_health_check=BUSY)
settings.register_profile("long", deadline=None, print_blob=True, max_examples=2000, suppress_health_check=BUSY)
settings.load_profile("ci")


@pytest.fixture(scope="module")
def browser() -> "Iterator[Browser]":
    """Start Chromium, or skip with a sentence."""
    from browser import chromium

    with chromium() as started:
        yield started
