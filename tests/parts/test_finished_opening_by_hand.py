"""The opening that another crew finished, read once it is coated: what is sawn to it, and what is asked about."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from cases import changed, job_of
from gangs import RETURNS, ganged, lined, unit
from part_cases import level

from jambs.job.measured.measuring_points import FINISHED, measure_places
from jambs.length import Units
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import FigureKind, Kit
from jambs.parts.make import make_kit
from jambs.parts.readings.as_built import planned_value, questions
from jambs.parts.readings.changed_since_words import Taken
from jambs.parts.readings.first_read import digest
from jambs.parts.readings.measured_against import MeasuredAgainst, without_void_readings
from jambs.place.placement import Placement
from jambs.place.solve import place_windows

BAR, UPRIGHT = "transom bar casing", "mull casing"


def placed(**paths: Any) -> Placement:
    (placement,) = place_windows(job_of(changed(**paths)))
    return placement


def kit(**paths: Any) -> Kit:
    return make_kit(placed(**paths), job_of(changed(**paths)))


def inside(kit: Kit) -> list[Part]:
    return [part for part in kit.parts if part.where is Where.INTERIOR]


def sizes(kit: Kit) -> dict[str, tuple[float, bool]]:
    """How long each board between units is, and whether it waits for the finished opening."""
    return {part.name: (part.length, part.is_cut_to_opening) for part in inside(kit) if part.name in (BAR, UPRIGHT)}


def test_boards_are_sawn_to_what_was_read_and_wait_for_what_was_not() -> None:
    """The bar goes by the width. The mull stands under it, and waits for the height with the whole opening."""
    planned = sizes(kit(**lined()))
    assert planned[BAR] == (55.75, True) and planned[UPRIGHT][1]
    assert sizes(kit(**lined(["55 5/8", "59 7/8"]))) == {BAR: (55.625, False), UPRIGHT: (planned[UPRIGHT][0], False)}
    assert sizes(kit(**lined(["55 5/8", "-"]))) == {BAR: (55.625, False), UPRIGHT: planned[UPRIGHT]}
    assert sizes(kit(**lined(["-", "59 7/8"])))[BAR] == (55.75, True)


def test_an_upright_in_the_upper_row_ends_at_the_head_that_was_read() -> None:
    upper = {"openings__0__transom": [unit("30 x 16"), unit("30 x 16")]}
    one, two = (
        next(part for part in inside(kit(**{**lined(read), **upper})) if part.name == UPRIGHT and part.member == 2)
        for read in (None, ["-", "60"])
    )
    assert two.length - one.length == pytest.approx(60 - 59.75)


def test_where_the_tape_starts_moves_with_the_face_that_was_read() -> None:
    """1/8 narrower is 1/16 on the left: the mull is taped from that face."""
    planned, read = (
        next(one.value for one in kit(**paths).figures if one.kind is FigureKind.MULL_ACROSS)
        for paths in (lined(), lined(["55 5/8", "59 3/4"]))
    )
    assert planned - read == 0.0625


def test_one_opening_has_one_set_of_figures() -> None:
    """What is 1/4 wider by the tape is wider for the whole kit, or a board would stand in the coat."""
    one, two = kit(**lined()), kit(**lined(["56", "-"]))
    assert (two.clear_width - one.clear_width, two.clear_height - one.clear_height) == (0.25, 0.0)
    reveals = [next(f.value for f in k.figures if f.kind is FigureKind.FRAME_REVEAL) for k in (one, two)]
    assert reveals == [0.125, 0.25]
    # Nothing was rounded: the drywall crew made it so.
    assert {f.code for f in two.findings} - {f.code for f in one.findings} == {
        "finished-read-otherwise",
        "nothing-measured",
    }
    cased = kit(**ganged(openings__0__measured={"date": "2026-06-01", "finished_opening": ["56", "-"]}))
    assert cased.clear_width == one.clear_width


@pytest.mark.parametrize(
    ("width", "asked"),
    [
        ("55 5/8", ""),  # an eighth narrower: coats do that
        ("56", ""),
        ("56 3/4", "an inch too much"),
        ("54 3/4", "an inch too little"),
        ("57 3/8", "is it right"),
    ],
)
def test_a_slip_is_asked_about_and_a_coat_is_not(width: str, asked: str) -> None:
    found = questions(placed(**lined([width, "59 3/4"])), units=Units.INCH)
    assert [one.misreading for one in found] == ([asked] if asked else [])


def test_one_that_is_sure_is_believed() -> None:
    number = next(place.number for place in measure_places(placed(**lined()).opening) if place.kind in FINISHED)
    assert questions(placed(**lined(["57 3/8", "59 3/4"], sure=[number])), units=Units.INCH) == ()


def test_nobody_is_asked_where_no_board_is_cut_to_it() -> None:
    """Wooden jambs round the same units; one window in returns."""
    alone = {key: value for key, value in RETURNS.items() if key != "mull_casing"}
    for paths in (ganged(), {"interior_trim__inside": alone}, {}):
        assert not [place for place in measure_places(placed(**paths).opening) if place.kind in FINISHED]
    places = [place for place in measure_places(placed(**lined()).opening) if place.kind in FINISHED]
    assert [planned_value(place, placed(**lined())) for place in places] == [55.75, 59.75]


@pytest.mark.parametrize(("bar", "is_void"), [({"gap": "1/2"}, False), ({"gap": "3/4"}, True)])
def test_what_was_read_of_units_falls_with_the_frame(bar: dict[str, str], is_void: bool) -> None:
    """A bar that is 1/4 higher makes the whole 64 3/4 high: another opening was coated."""
    read = lined(["55 5/8", "59 3/4"], mull_edges=["30", "48"])
    taken_of = dict.fromkeys(Taken, MeasuredAgainst.of(placed(**read)))
    after = without_void_readings(placed(**read, openings__0__transom_bar=bar), taken_of)
    assert (after.opening.readings is None) is is_void


def test_the_digest_of_a_plain_opening_is_that_of_earlier_records() -> None:
    """Of these keys and values alone, as records had it before units were read: a new key makes no reading new."""
    read = {"date": "2026-06-01", "frame_width": ["35 1/2", "35 1/2"]}
    readings = placed(openings__0__measured=read).opening.readings
    assert readings is not None
    assert digest(readings, Taken.FRAME) == "37f0578d06bab62edd3c41315cfcce5847ba99ef1ee40e95b52b3e267785baa5"
    units = placed(**lined(["55 5/8", "59 3/4"])).opening.readings
    other = placed(**lined(["55 3/4", "59 3/4"])).opening.readings
    assert units and other and digest(units, Taken.FRAME) != digest(other, Taken.FRAME)


AT_MULLS = ("mull_depths", "mull_edges", "mull_gaps")


def _narrower(at_mulls: dict[str, Any], **more: Any) -> Placement:
    """Units of 28 and 32 in place of two of 30: the same frame of 60 1/2, its mull 2 to the left."""
    read = {"date": "2026-06-01", "interior_depth": level("5"), **at_mulls}
    one = ganged(openings__0__measured=read)
    taken_of = dict.fromkeys(Taken, MeasuredAgainst.of(placed(**one)))
    units = [unit("28 x 48"), unit("32 x 48")]
    return without_void_readings(placed(**{**one, "openings__0__units": units, **more}), taken_of)


def test_what_was_read_at_a_mull_falls_when_the_mull_is_elsewhere_and_the_rest_stays() -> None:
    found = _narrower({"mull_depths": ["5", "5"], "mull_edges": ["30", "48"], "frame_width": ["60 1/2", "60 1/2"]})
    left = found.opening.readings
    assert left is not None and [getattr(left, key) for key in AT_MULLS] == [None, None, None]
    assert left.interior_depth is not None and left.frame_width == (60.5, 60.5)
    assert [one.sentence(Units.INCH) for one in found.findings if one.code == "readings-set-aside"] == [
        "The sizes and depths at the mulls read on 2026-06-01 are set aside: since then the place of the mulls changed "
        'from units 1 | 2 at 30", wide 1/2", units 1 | 3 at 48", wide 1/2" to units 1 | 2 at 28", wide 1/2", units 1 | '
        '3 at 48", wide 1/2". Planned sizes hold: measure again, and write the new readings with their date.'
    ]


def test_where_nothing_was_read_at_a_mull_nothing_falls_with_it() -> None:
    found = _narrower({"frame_width": ["60 1/2", "60 1/2"]})
    assert not [one for one in found.findings if one.code == "readings-set-aside"]


def test_another_frame_is_told_once_of_all_that_was_read() -> None:
    wider = {"openings__0__units": [unit("30 x 48"), unit("31 x 48")], "openings__0__transom": [unit("61 1/2 x 16")]}
    found = _narrower({"mull_edges": ["30", "48"]}, **wider)
    assert found.opening.readings is None
    (told,) = (one.sentence(Units.INCH) for one in found.findings if one.code == "readings-set-aside")
    assert told.endswith(
        'since then the frame changed from 60 1/2" × 64 1/2" to 61 1/2" × 64 1/2". Planned sizes hold: measure '
        "again, and write the new readings with their date."
    )


def test_a_record_that_knew_no_mulls_sets_nothing_aside() -> None:
    one = ganged(openings__0__measured={"date": "2026-06-01", "mull_edges": ["30", "48"]})
    earlier = replace(MeasuredAgainst.of(placed(**one)), mulls=())
    now = placed(**{**one, "openings__0__units": [unit("28 x 48"), unit("32 x 48")]})
    assert without_void_readings(now, dict.fromkeys(Taken, earlier)) is now
