"""What is told of an opening whose figures changed: lists in words."""

from __future__ import annotations

import pytest

from jambs.issued.opening_figures import following_rows


@pytest.mark.parametrize(
    ("now", "told"),
    [
        (["The local code decides.", "Asbestos: stop."], "The local code decides. Asbestos: stop."),
        (["1x6 poplar", "1x8 poplar"], "1x6 poplar; 1x8 poplar"),
        (["1x6 poplar"], "1x6 poplar"),
        ([], "none"),
    ],
)
def test_sentences_follow_one_another_and_other_things_stand_in_a_row(now: list[str], told: str) -> None:
    (row,) = following_rows({"cautions": ["Wear goggles."]}, {"cautions": now})
    assert row[1:] == ("Wear goggles.", told)


def test_a_key_of_the_record_is_told_in_words() -> None:
    (row,) = following_rows({"rough_outline": {"text": "raked"}}, {"rough_outline": {"text": "octagon"}})
    assert row == ("rough outline", "raked", "octagon")
