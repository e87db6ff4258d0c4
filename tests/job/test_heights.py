"""Heads and sills in line, and rough openings a framer can saw; sums by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from houses import HOUSE, faults_of, read_text, spoiled

from jambs.job import Job

LAST = "    exterior_trim: none\n"
SILL = "    sill_height: 36\n"


def house(*edits: tuple[str, str], second: str = "", folder: Path) -> Job:
    """W01 is 47 1/2 high with faces of 2 1/2 and 3 (sill); W02 is 24 high with faces of 2; reveals of 1/8."""
    return read_text(spoiled(*edits, (LAST, LAST + second)), folder)


def sills(*edits: tuple[str, str], second: str = "", folder: Path) -> list[float | None]:
    return [one.sill_height for one in house(*edits, second=second, folder=folder).openings]


def test_a_head_height_is_a_sill_height_and_the_frame(tmp_path: Path) -> None:
    """83 1/2 less 47 1/2 is 36."""
    assert sills((SILL, "    head_height: 83 1/2\n"), folder=tmp_path) == [36, None]


@pytest.mark.parametrize(
    ("said", "sill"),
    [
        ("head_with: W01", 36 + 47.5 - 24),
        ("sill_with: W01", 36),
        # Faces of the jambs at the head: 83 1/2 - 2 1/2 + 1/8 there, 24 - 2 + 1/8 over the sill here.
        ("head_with: reveal of W01", 83.5 - 2.5 - (24 - 2)),
        ("head_with: {mark: W01, line: reveal}", 83.5 - 2.5 - (24 - 2)),
        # At the sill: 36 + 3 - 1/8 there, 2 - 1/8 here.
        ("sill_with: reveal of W01", 36 + 3 - 2),
        ("head_with: frame of W01", 36 + 47.5 - 24),
    ],
)
def test_one_opening_in_line_with_another(said: str, sill: float, tmp_path: Path) -> None:
    assert sills(second=f"    {said}\n", folder=tmp_path) == [36, pytest.approx(sill)]


@pytest.mark.parametrize(
    ("said", "sill"),
    [("head_with", 83.5 - 2.5 + 0.125 - (24 - 2 + 0.5)), ("sill_with", 36 + 3 - 0.125 - (2 - 0.5))],
)
def test_reveals_of_two_widths_in_line(said: str, sill: float, tmp_path: Path) -> None:
    """1/8 there and 1/2 here: a jamb's face stands its reveal outside the inner edge of the frame, up or down."""
    trim = "    interior_trim: {like: picture, frame_reveal: 1/2}\n"
    assert sills(second=f"    {said}: reveal of W01\n{trim}", folder=tmp_path)[1] == pytest.approx(sill)


def test_the_order_of_the_file_and_the_length_of_the_chain_do_not_matter(tmp_path: Path) -> None:
    third = "    sill_height: 40\n  - mark: W03\n    room: Hall\n    wall: garage\n    window: fixed\n"
    third += "    frame: 24 x 36\n"
    found = sills((SILL, "    head_with: W03\n"), second=third + LAST + "    sill_with: W02\n", folder=tmp_path)
    assert found == [40 + 36 - 47.5, 40, 40]


def test_in_line_with_a_door(tmp_path: Path) -> None:
    """The floor lies 3/4 below the frame of a door 47 1/2 high: its head is 48 1/4 over the floor."""
    door = "    floor_below_frame: 3/4\n    interior_trim: {like: picture, style: three-sided}\n"
    found = sills((SILL, door), second="    head_with: W01\n", folder=tmp_path)
    assert found == [None, 48.25 - 24]


@pytest.mark.parametrize(
    ("edits", "second", "says"),
    [
        ((), "    head_with: W09\n", "head_with: no opening has the mark 'W09'; write one of W01"),
        (((SILL, ""),), "    head_with: W01\n", "head_with: W01 has no height; give it sill_height or head_height"),
        (
            ((SILL, "    sill_with: W02\n"),),
            "    head_with: W01\n",
            "head_with: W02 is in line with itself, by way of W01; give one a height",
        ),
        ((), "    head_with: W02\n", "head_with: W02 is in line with itself, by way of W02; give one a height"),
        (
            ((SILL, "    sill_height: 36\n    head_height: 83 1/2\n"),),
            "",
            "gives sill_height and head_height; each says how high it stands, keep one",
        ),
        (
            ((SILL, "    floor_below_frame: 3/4\n    head_height: 80\n"),),
            "",
            "gives head_height and floor_below_frame; a door stands on the floor, keep floor_below_frame",
        ),
    ],
)
def test_heights_that_lead_nowhere(edits: tuple[tuple[str, str], ...], second: str, says: str, tmp_path: Path) -> None:
    said = faults_of(spoiled(*edits, (LAST, LAST + second)), tmp_path)
    assert len(said) == 1 and says in said[0]


def test_rough_openings_are_rounded_up_to_the_framing(tmp_path: Path) -> None:
    """24 and two shim spaces of 9/32 is 24 9/16: 24 5/8 on eighths. What the job gives stays as it is."""
    edits = (("  shim_space: 1/4", "  shim_space: 9/32\n  framing_grid: 1/8"),)
    first, second = house(*edits, folder=tmp_path).openings
    assert (second.rough_opening.width, second.rough_opening.height) == (24.625, 24.625)
    assert (first.rough_opening.width, first.rough_opening.height) == (36, 48)
    assumed = next(one for one in second.assumed if one.what == "rough opening")
    assert (assumed.value, assumed.why.split(", ")[-1]) == ('24 5/8" x 24 5/8"', 'rounded up to 1/8"')


def test_without_a_grid_they_are_the_sum(tmp_path: Path) -> None:
    second = house(("  shim_space: 1/4", "  shim_space: 9/32"), folder=tmp_path).openings[1]
    assert second.rough_opening.width == 24.5625
    assert "rounded" not in next(one.why for one in second.assumed if one.what == "rough opening")


def test_what_is_on_the_grid_stays(tmp_path: Path) -> None:
    second = house(("  shim_space: 1/4", "  shim_space: 1/4\n  framing_grid: 1/8"), folder=tmp_path).openings[1]
    assert second.rough_opening.width == 24.5


def test_a_framing_grid_that_is_none(tmp_path: Path) -> None:
    said = faults_of(spoiled(("  kerf: 1/8", "  kerf: 1/8\n  framing_grid: 1/3")), tmp_path)
    assert said == [
        "job.yaml:6: shop: framing_grid: '1/3' is not a grid of framing; "
        "write one of 1/16, 1/8, 1/4, 1/2, 1 mm, 5 mm, 10 mm"
    ]


def test_the_house_itself_has_its_heights(tmp_path: Path) -> None:
    assert [one.sill_height for one in read_text(HOUSE, tmp_path).openings] == [36, None]
