"""Cladding returned to the frame: every finding on both sides of its limit, with its sentence.

The base window on its sheathing, 4 1/4 behind the trim plane. Least bearings, least returns, what holds furring: common
practice, no source.
"""

from __future__ import annotations

from typing import Any

import finding_rows
import pytest
from cases import BASE, changed, job_of
from clad import CORNER_BOARD, DEEP, RETURNS, SILL, clad, mitered
from finding_rows import Case, Row, codes_in, each
from trimmed_as_one import side_by_side

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.job import JobFaults
from jambs.parts.findings import cladding_findings
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

W1 = Subject.opening("W1")
CHECK, STOP = Severity.CHECK, Severity.STOP
LAYERS: list[Any] = BASE["walls"]["main"]["layers"]


def case(trim: dict[str, Any], **paths: Any) -> Case:
    """All that is said of the window with a trim outside."""

    def said() -> tuple[Statement, ...]:
        try:
            job = job_of(changed(**{**DEEP, "exterior_trim__outside": trim, **paths}))
            return make_kit(place_windows(job)[0], job).findings
        except FindingsError as error:
            return error.findings

    return said


def board(width: str) -> dict[str, Any]:
    return clad(corner_board={**CORNER_BOARD, "width": width})


def layers(*names: Any) -> dict[str, Any]:
    """The wall with other layers between sheathing and cladding."""
    return {"walls__main__layers": [*LAYERS[:3], *names, LAYERS[-1]], "walls__main__buck": None}


def mixed(fiber: str, foam: str) -> tuple[Any, ...]:
    return {**FIBER, "thickness": fiber}, {"material": "EPS", "thickness": foam}, LAYERS[5]


FIBER = {"material": "wood-fiber board", "thickness": "5"}
SOLID = {"material": "plywood 1/2", "thickness": "5 1/2", "role": "outer sheathing"}
FOAM_SAID = (
    " Foam plastic lies open to the cavity there: whether it is to be covered or fire blocked round the opening the "
    "local code decides."
)


def on_insulation(layer: str, deep: str, more: str = "") -> str:
    return (
        f"The furring behind the returns lies on the cut edge of {layer}, {deep} deep, which holds no fastener: line "
        "the hole there with plywood, bring the buck out to the trim plane, or fix the strips through it into framing "
        f"or buck with screws that are sized for it.{more}"
    )


def too_shallow(stands: str, least: str) -> str:
    return (
        f"W1: no cladding is left to return: the frame stands {stands} the trim plane, and sealant joint, corner board "
        f"with its gap and the narrowest return take {least}; set the window farther in, write a narrower "
        "corner_board, or give exterior trim with a jamb or casing alone."
    )


def unbacked(bearing: str, least: str) -> str:
    return (
        f"The cladding's end at the corner board bears {bearing} on the furring behind the corner; {least} is the "
        "least to nail it to: write wider furring, or a narrower corner_board."
    )


def thinner(casing: str, cladding: str) -> str:
    return (
        f"The corner's leg on the wall (casing) is {casing} thick and the cladding {cladding}: its cut ends stand out "
        "past the corner and take water; write thicker casing."
    )


def cased(width: str) -> dict[str, Any]:
    return {**clad(), "casing": {**clad()["casing"], "width": width}}


def laps(how: str, least: str) -> str:
    return f"The corner's leg on the wall (casing) {how}; {least} is the least: write wider casing, or thinner furring."


ROWS = [
    Row(
        # 4 1/4 - 1/4 - 1/8 - 2 7/8 leaves 1, the least; 1/32 more of corner board leaves less.
        code="reveal-too-shallow",
        appears=case(board("2 29/32")),
        quiet=case(board("2 7/8")),
        inch=too_shallow('4 1/4" behind', '4 9/32"'),
        mm=too_shallow("108 mm behind", "108.7 mm"),
        severity=STOP,
        about=W1,
    ),
    Row(
        code="sill-short-of-returns",
        appears=case({**mitered(), "sill": {**SILL, "horn": "1 1/8"}}),
        quiet=case({**mitered(), "sill": {**SILL, "horn": "1 1/4"}}),
        inch='W1: the sill ends 1/8" short of the back of the furring, so that water runs past its ends into the wall; '
        "write a longer horn of the sill, or wider casing.",
        mm="W1: the sill ends 3.2 mm short of the back of the furring, so that water runs past its ends into the wall; "
        "write a longer horn of the sill, or wider casing.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # The strip of 2 at the corner, less 1/8 of gap and the corner board.
        code="return-end-unbacked",
        appears=case(board("1 5/32")),
        quiet=case(board("1 1/8")),
        inch=unbacked('23/32"', '3/4"'),
        mm=unbacked("18.3 mm", "19.1 mm"),
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="corner-thinner-than-cladding",
        appears=case({**clad(), "casing": {**clad()["casing"], "thickness": "23/32"}}),
        quiet=case({**clad(), "casing": {**clad()["casing"], "thickness": "3/4"}}),
        inch=thinner('23/32"', '3/4"'),
        mm=thinner("18.3 mm", "19.1 mm"),
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Casing less 1/4 of corner board past the return, 3/4 of cladding and 1/2 of furring.
        code="corner-laps-short",
        appears=case(cased("1 31/32")),
        quiet=case({**cased("1 7/8"), "casing_reveal": "1/8"}),
        inch=laps('covers the wall past the furring of the reveal by 15/32"', '1/2"'),
        mm=laps("covers the wall past the furring of the reveal by 11.9 mm", "12.7 mm"),
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="corner-laps-short",
        appears=case(cased("1 1/4")),
        quiet=case(mitered()),
        inch=laps('misses the wall past the furring of the reveal by 1/4"', '1/2"'),
        mm=laps("misses the wall past the furring of the reveal by 6.4 mm", "12.7 mm"),
    ),
    Row(
        # Frame at 7 3/4, foam to 11 1/2, plywood to 12.
        code="furring-on-insulation",
        appears=case(clad()),
        quiet=case(clad(), **layers(SOLID)),
        inch=on_insulation("EPS", '3 3/4"', FOAM_SAID),
        mm=on_insulation("EPS", "95.3 mm", FOAM_SAID),
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="furring-on-insulation",
        appears=case(clad(), **layers(FIBER)),
        quiet=None,
        inch=on_insulation("wood-fiber board", '3 3/4"'),
        mm=on_insulation("wood-fiber board", "95.3 mm"),
        severity=CHECK,
        about=W1,
    ),
    Row(
        # The fiber ends at 7 1/2, behind the frame's outside edge: the foam over it is all that is open.
        code="furring-on-insulation",
        appears=case(clad(), **layers(*mixed("1", "4"))),
        quiet=None,
        inch=on_insulation("EPS", '3 3/4"', FOAM_SAID),
        mm=on_insulation("EPS", "95.3 mm", FOAM_SAID),
    ),
    Row(
        # 3/4 of the fiber from the frame on; one of the two burns.
        code="furring-on-insulation",
        appears=case(clad(), **layers(*mixed("2", "3"))),
        quiet=None,
        inch=on_insulation("wood-fiber board and EPS", '3 3/4"', FOAM_SAID),
        mm=on_insulation("wood-fiber board and EPS", "95.3 mm", FOAM_SAID),
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(cladding_findings) == {row.code for row in ROWS}


def test_a_frame_proud_of_the_trim_plane_has_nothing_to_return() -> None:
    said = [one.sentence(job_of(changed()).units) for one in case(clad(), position={"flange_on": "trim plane"})()]
    assert said == [too_shallow('1 1/4" proud of', '2 3/8"')]


def test_a_frame_flush_with_the_trim_plane_is_not_proud_of_it() -> None:
    """4 1/4 behind it with the flange on the sheathing; 4 1/4 farther out there is no reveal at all."""
    said = [one.sentence(job_of(changed()).units) for one in case(clad(), position={"exterior_depth": "0"})()]
    assert said == [too_shallow('0" behind', '2 3/8"')]


def test_a_missed_strip_is_told_as_missed() -> None:
    """A corner board of 2 and its gap reach 1/8 past the strip of 2."""
    found = [one for one in case(board("2"))() if one.code == "return-end-unbacked"]
    assert [one.sentence(job_of(changed()).units)[:71] for one in found] == [
        "The cladding's end at the corner board misses the furring behind the co"
    ]


# ---- what the job file is told


def told(trim: dict[str, Any], **paths: Any) -> str:
    with pytest.raises(JobFaults) as error:
        job_of(changed(**{**DEEP, "exterior_trim__outside": trim, **paths}))
    return str(error.value)


def without(trim: dict[str, Any], *keys: str) -> dict[str, Any]:
    return {key: value for key, value in trim.items() if key not in keys}


def test_a_wall_without_cladding_has_none_to_return() -> None:
    assert "the wall 'main' names no cladding that could turn the corner" in told(
        clad(), walls__main__layers=LAYERS[:-1]
    )


def test_a_miter_closes_between_boards_of_one_thickness() -> None:
    said = told(mitered(thickness="5/8"))
    assert 'miters cladding_returns 5/8" thick to cladding of 3/4" in the wall' in said
    job_of(changed(**DEEP, exterior_trim__outside=clad(thickness="5/8")))


def test_a_window_needs_a_sill_under_returned_cladding() -> None:
    assert "gives cladding_returns and no sill" in told(without(clad(), "sill"))


JAMB = {"thickness": "3/4", "stock": "cedar"}


@pytest.mark.parametrize(
    ("trim", "words"),
    [
        ({**clad(), "jamb": JAMB}, "gives cladding_returns and also jamb"),
        ({**mitered(), "casing": clad()["casing"], "casing_reveal": "0"}, "with a mitered corner and also casing"),
        (without(clad(), "casing"), "casing is missing"),
        ({**clad(), "casing_reveal": "1"}, "casing_reveal is as wide as corner_board is thick"),
        ({**clad(), "flare": {"sides": "10 deg"}}, "gives flare and cladding_returns"),
        (clad(corner_board=None), "has corner boards and gives no corner_board"),
        (clad(corner="mitered"), "is mitered and also gives corner_board"),
        (clad(corner_board={**CORNER_BOARD, "thickness": "11/16"}), "corner_board is thinner than the cladding"),
        (clad(furring=None), "furring is missing"),
        (clad(gap_at_sill=None), "gap_at_sill is missing"),
        (clad(laid="shingled"), "along the side"),
    ],
)
def test_what_does_not_go_together_is_said(trim: dict[str, Any], words: str) -> None:
    assert words in told(trim)


def test_a_shape_is_refused_with_what_goes_round_it() -> None:
    shaped = {"openings__0__shape": {"kind": "gable", "sides": "30"}, "openings__0__rough_opening": None}
    assert "gives cladding_returns, whose courses, furring and corners are laid round rectangles" in told(
        clad(), **shaped
    )


def test_no_wall_between_is_returned() -> None:
    """Two windows on a stool, 5 1/2 between them; each alone is made."""
    row = side_by_side(2, "5 1/2")
    paths = {key: row[key] for key in ("openings", "interior_trim")}
    said = told({**clad(), "mull_casing": JAMB}, **paths)
    assert "has cladding_returns, and W1 is trimmed as one with a neighbor" in said


def test_furring_and_stocks_are_as_the_job_says() -> None:
    made = job_of(changed(**DEEP, exterior_trim__outside=clad()))
    trim = made.openings[0].exterior
    assert trim and trim.cladding_returns and trim.cladding_returns.back == 1.25
    assert trim.cladding_returns.furring.stock == RETURNS["furring"]["stock"]
