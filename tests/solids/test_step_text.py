"""A file's text does not hang on what was written before it."""

from __future__ import annotations

import pytest

from jambs.solids.step_text import reproducible

TEXT = """ISO-10303-21;
FILE_NAME('x','2026-01-01T00:00:00');
DATA;
#1 = NEXT_ASSEMBLY_USAGE_OCCURRENCE('{number}','W02; frame''s','',#5,#75,{fold});
#2 = X('kept
  as it is',
  $);
ENDSEC;
END-ISO-10303-21;
"""


@pytest.mark.parametrize(("number", "fold"), [("1", "$"), ("1207", "\n  $"), ("98765", "\n    $\n  ")])
def test_numbers_and_folds_of_occurrences_are_the_same_in_every_file(number: str, fold: str) -> None:
    """The kernel folds lines at a width, so a longer number folds elsewhere; nothing else is touched."""
    text = reproducible(TEXT.format(number=number, fold=fold), name="W02", colors=[])
    assert "#1 = NEXT_ASSEMBLY_USAGE_OCCURRENCE('1','W02; frame''s','',#5,#75,$);\n" in text
    assert "#2 = X('kept\n  as it is',\n  $);\n" in text
