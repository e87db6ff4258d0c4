"""A length on the page stands on one line: 5 1/2 read as 5 is a board too short."""

from __future__ import annotations

import pytest
from markupsafe import Markup

from jambs.length import Units, read_length
from jambs.page.answers import unbroken

TIED = "\N{NO-BREAK SPACE}"


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ('4 11/16" to 4 13/16"', f'4{TIED}11/16" to 4{TIED}13/16"'),
        ("2'-11 1/2\"", f"2'-11{TIED}1/2\""),
        ("W04 1/2", f"W04{TIED}1/2"),
        ("2 boards", "2 boards"),
        ("sheet 1 of 2", "sheet 1 of 2"),
        ("902 mm", f"902{TIED}mm"),
        ("1678 mm × 2614 mm", f"1678{TIED}mm × 2614{TIED}mm"),
        ("20x190 oak, 8 ft", f"20x190 oak, 8{TIED}ft"),
        ("3 members", "3 members"),
        (3, 3),
        (None, None),
    ],
)
def test_whole_inches_stay_with_their_fraction_and_a_number_with_its_unit(written: object, shown: object) -> None:
    assert unbroken(written) == shown


def test_what_is_markup_already_is_left() -> None:
    """A record for the modules is JSON in the page: what it holds goes back into fields, letter by letter."""
    assert unbroken(Markup("4 1/2")) == "4 1/2"


def test_a_length_that_was_copied_from_the_page_is_read() -> None:
    assert read_length(f'4{TIED}11/16"', units=Units.INCH) == 4 + 11 / 16
    assert read_length(f"254{TIED}mm", units=Units.INCH) == pytest.approx(10)
