"""What is told of an opening whose figures changed: lists in words."""

from __future__ import annotations

from typing import Any

import pytest

from jambs.issued.opening_figures import _window_why, following_rows, opening_rows
from jambs.issued.reasons import WindowDetailChanged


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


def test_numbers_without_words_of_their_own_are_told_with_their_units_and_without_noise() -> None:
    assert list(opening_rows({"faces_deg": 0.0}, {"faces_deg": 112.5})) == [
        ("compass direction it faces", "0°", "112.5°")
    ]
    assert list(opening_rows({"faces_deg": 0.0}, {"faces_deg": None})) == [("compass direction it faces", "0°", "none")]
    shares = [{"depths": {"share": one}} for one in (0.27999999999999986, 0.5)]
    assert list(following_rows(*shares)) == [("depths, share", "28 %", "50 %")]


def wall(*layers: tuple[str, float]) -> dict[str, Any]:
    """A wall of layers by name and thickness, each beginning where the one inside it ends."""
    found, inner = [], 0.0
    for name, thick in layers:
        faces = {
            "inner": {"value": inner, "text": f"{inner:g}"},
            "outer": {"value": inner + thick, "text": f"{inner + thick:g}"},
        }
        found.append({"name": name, "role": "layer", **faces})
        inner += thick
    return {"wall": {"name": "main", "layers": found}}


def test_of_a_wall_the_layers_that_are_others_are_told_and_not_those_that_lie_farther_out_for_them() -> None:
    old = wall(("gypsum", 12.5), ("stud", 140.1), ("OSB", 15))
    assert list(opening_rows(old, wall(("gypsum", 15), ("stud", 140.1), ("OSB", 15)))) == [
        ("wall, layers", "gypsum: layer, 0, 12.5", "gypsum: layer, 0, 15")
    ]
    assert list(opening_rows(old, wall(("plaster", 5), ("gypsum", 12.5), ("stud", 140.1), ("OSB", 15)))) == [
        ("wall, layers", "none", "plaster: layer, 0, 5")
    ]
    (exchanged,) = opening_rows(old, wall(("stud", 140.1), ("gypsum", 12.5), ("OSB", 15)))
    assert exchanged[1:] == (
        "gypsum: layer, 0, 12.5; stud: layer, 12.5, 152.6",
        "stud: layer, 0, 140.1; gypsum: layer, 140.1, 152.6",
    )
    assert list(opening_rows(old, old)) == []


def test_what_an_earlier_issue_did_not_record_of_a_window_is_no_change_and_what_it_did_is() -> None:
    before, now = {"window": {"name": "fixed"}}, {"window": {"name": "fixed", "frame_depth": {"text": "92 mm"}}}
    assert list(opening_rows(before, now)) == []
    assert list(_window_why(before["window"], now["window"])) == []
    later = {"window": {"name": "fixed", "frame_depth": {"text": "93 mm"}}}
    assert [row[1:] for row in opening_rows(now, later)] == [("92 mm", "93 mm")]
    assert [type(one) for one in _window_why(now["window"], {"name": "other"})] == [WindowDetailChanged]


def test_the_sketch_of_an_install_sheet_is_told_by_the_figures_it_is_drawn_from_and_never_point_by_point() -> None:
    old: dict[str, Any] = {"install": {"shape": {"outline": [[0.0, 0.0], [1.0, 0.86]], "left": 0.0}, "has_pan": True}}
    new: dict[str, Any] = {"install": {"shape": {"outline": [[0.0, 0.0], [1.0, 0.87]], "left": 0.1}, "has_pan": False}}
    assert list(following_rows(old, new)) == [("install sheet, has pan", "yes", "no")]
