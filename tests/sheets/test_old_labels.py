"""The page of old labels: a label is known by its mark and the issue it carries."""

from __future__ import annotations

from dataclasses import replace

import pytest
from cases import changed, job_of
from paper import runs

from jambs.issued.old_labels import OldLabel, OpeningLabels
from jambs.issued.verdict_reasons import Recut, RecutWhy, StillGood
from jambs.sheets.old_labels import old_labels_data
from jambs.sheets.press import press


def label(mark: str, *issues: int, old: str = "a", is_good: bool = True) -> OldLabel:
    told = StillGood() if is_good else Recut(why=RecutWhy.NARROW)
    return OldLabel(mark=mark, issues=issues, what="head", old=old, now=mark, new="a", verdict=told)


def test_a_label_that_holds_is_named_with_its_issue_where_an_earlier_one_of_its_mark_does_not() -> None:
    """W1-1 was printed in three issues, and that of the first is too narrow; W1-2 was always the same."""
    labels = (label("W1-1", 1, old="b", is_good=False), label("W1-1", 2, 3), label("W1-2", 1, 2, 3), label("W1-3", 3))
    one = OpeningLabels(mark="W1", room="Bath", now=4, labels=labels, new=(), unread=())
    (told,) = old_labels_data([one], job_of(changed()), number=4, day="2026-06-01")["openings"]
    assert told["hold"] == ["W1-1 (issues 2, 3)", "W1-2", "W1-3"]
    assert [row["mark"] for row in told["labels"]] == ["W1-1"]


def test_a_label_that_holds_is_named_once_though_an_issue_told_its_part_by_other_words() -> None:
    labels = (label("M1-8", 3), replace(label("M1-8", 1, 2), what="mull casing"), label("M1-9", 1))
    opening = OpeningLabels(mark="M1", room="", now=4, labels=labels, new=(), unread=())
    data = old_labels_data([opening], job_of(changed()), number=4, day="2026-08-03")
    assert data["openings"][0]["hold"] == ["M1-8", "M1-9"]
    bad = label("M1-8", 0, old="c", is_good=False)
    told = OpeningLabels(mark="M1", room="", now=4, labels=(*labels, bad), new=(), unread=())
    data = old_labels_data([told], job_of(changed()), number=4, day="2026-08-03")
    assert data["openings"][0]["hold"] == ["M1-8 (issues 1, 2, 3)", "M1-9"]


@pytest.mark.parametrize("length", ["398 mm", "2048.5 mm"])
@pytest.mark.parametrize("width", ["64 mm", "127.5 mm"])
def test_no_line_ends_between_a_number_and_its_unit(width: str, length: str) -> None:
    size = f"110 mm × {width} × {length}"
    old = replace(
        label("W1-1", 1, old=size, is_good=False), new=size, what="interior casing, head, 1 of 5 from the left"
    )
    one = OpeningLabels(mark="W1", room="Bath", now=4, labels=(old,), new=(), unread=())
    data = old_labels_data([one], job_of(changed()), number=4, day="2026-06-01")
    texts = [run.text.strip() for run in runs(press("old_labels", data))]
    assert any(text.endswith(length) for text in texts) and not any(text.startswith("mm") for text in texts)
