"""Every finding of how a sash opens on both sides of its limit, with its sentence."""

from __future__ import annotations

import finding_rows
import pytest
from cases import STOOL
from finding_rows import Row, codes_in, each
from position_cases import CASEMENT, W1, case, said

from jambs.findings import Severity
from jambs.place import sash_findings

CHECK = Severity.CHECK

CANNOT = [
    Row(  # the jamb stands 1 7/8 in from the frame's edge, the sash reaches 1/8 behind it
        code="sash-cannot-open", about=W1, severity=Severity.STOP,
        appears=case(windows__fixed={**CASEMENT, "sash_face": "1 3/4"}),
        quiet=case(windows__fixed={**CASEMENT, "sash_face": "1 7/8"}),
        inch=(
            "The sash cannot open: it meets the extension jamb at once; write a greater frame_reveal or "
            "casing_reveal, or set the window nearer to the side it opens to."
        ),
        mm=(
            "The sash cannot open: it meets the extension jamb at once; write a greater frame_reveal or "
            "casing_reveal, or set the window nearer to the side it opens to."
        ),
    ),
    Row(  # 32 1/2 in wide, it comes out to the jamb at asin(2 3/4 / 32 1/2) = 4.9 degrees; at 2 7/8 it would be 5.1
        code="sash-cannot-open", about=W1, severity=Severity.STOP,
        appears=case(windows__fixed={**CASEMENT, "sash_face": "1 1/2", "sash_set_back": "2 3/4"}),
        quiet=case(windows__fixed={**CASEMENT, "sash_face": "1 1/2", "sash_set_back": "2 7/8"}),
        inch=(
            "The sash cannot open: it meets the extension jamb at 5°; write a greater frame_reveal or "
            "casing_reveal, or set the window nearer to the side it opens to."
        ),
    ),
]  # fmt: skip

SASH = [
    Row(
        # Closed form (test_swing.py): 90 + atan(1/8 beside the pivot / (4 11/16 - 1/2)) = 91.71 degrees.
        code="sash-stops-short",
        appears=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "91.9"}),
        quiet=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "91.5"}),
        inch="The sash opens 92° and meets the extension jamb; 92° is required.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="sash-stops-short",
        appears=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "120"}),
        quiet=case(),
        inch="The sash opens 92° and meets the extension jamb; 120° is required.",
    ),
    Row(
        # The same outside: 90 + atan(1/4 beside the pivot / (1 1/2 - 1/2)) = 104.04 degrees; no jamb, nothing to meet.
        code="sash-stops-short",
        appears=case(windows__fixed={**CASEMENT, "sash": "casement out"}, limits={"sash_opening_deg": "120"}),
        quiet=case(
            windows__fixed={**CASEMENT, "sash": "casement out"}, limits={"sash_opening_deg": "120"}, exterior_trim=None
        ),
        inch="The sash opens 104° and meets the extension jamb; 120° is required.",
    ),
    Row(
        # The interior jamb stops a sash that opens in, whether there is trim outside or not.
        code="sash-stops-short",
        appears=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "120"}, exterior_trim=None),
        quiet=case(windows__fixed=CASEMENT, exterior_trim=None),
        inch="The sash opens 92° and meets the extension jamb; 120° is required.",
    ),
    Row(
        # Set back behind the frame's edge it stops square at its frame: 90 degrees are as many as are asked.
        code="sash-stops-short",
        appears=case(windows__fixed={**CASEMENT, "sash_set_back": "1/4"}, limits={"sash_opening_deg": "91"}),
        quiet=case(windows__fixed={**CASEMENT, "sash_set_back": "1/4"}, limits={"sash_opening_deg": "90"}),
        inch="The sash opens 90° and meets the frame; 91° is required.",
    ),
    Row(
        # The handle reaches up to 27/32 over the sill's face, the stool stands 1/8 below that: 31/32.
        code="handle-over-stool",
        appears=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "-27/32"}},
            interior_trim__inside=STOOL,
        ),
        quiet=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "-7/8"}},
            interior_trim__inside=STOOL,
        ),
        inch='The handle ends 31/32" over the top of the stool; 1" is needed to turn it.',
        mm="The handle ends 24.6 mm over the top of the stool; 25.4 mm is needed to turn it.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="handle-over-stool",
        appears=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "1/8"}},
            interior_trim__inside=STOOL,
        ),
        quiet=None,
        inch='The handle ends 0" over the top of the stool; 1" is needed to turn it.',
        mm="The handle ends 0 mm over the top of the stool; 25.4 mm is needed to turn it.",
    ),
    Row(
        code="handle-over-stool",
        appears=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "1/2"}},
            interior_trim__inside=STOOL,
        ),
        quiet=case(windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "1/2"}}),
        inch='The handle ends 3/8" below the top of the stool; 1" is needed to turn it.',
        mm="The handle ends 9.5 mm below the top of the stool; 25.4 mm is needed to turn it.",
    ),
    Row(
        code="no-hinge-side",
        appears=case(windows__fixed=CASEMENT),
        quiet=case(windows__fixed=CASEMENT, openings__0__hinge="left"),
        inch="No hinge side is stated: give hinge: left or right, as seen from inside, before you order.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="no-hinge-side",
        appears=case(windows__fixed=CASEMENT),
        quiet=case(windows__fixed={**CASEMENT, "sash": "awning"}),
        inch="No hinge side is stated: give hinge: left or right, as seen from inside, before you order.",
    ),
]

TILT = {
    "frame_depth": "2 3/4",
    "flange_set_back": "1 1/4",
    "frame_face": "2 1/2",
    "nailing_flange": "no",
    "sash": "tilt and turn",
    "sash_thickness": "2 3/4",
    "sash_set_back": "-1/2",
    "sash_overlap": "1/2",
}
UNSTATED = {key: value for key, value in TILT.items() if key not in ("sash_thickness", "sash_set_back")}

UNSTATED_SIZES = [
    Row(
        # The sash laps the frame by 1/2: the jamb clears it from a reveal of 1/2 on. Tilt: asin(6 / 47 1/2) = 7.3.
        code="tilt-stops-short",
        appears=case(windows__fixed=TILT, interior_trim__inside__frame_reveal="1/4"),
        quiet=case(windows__fixed=TILT, interior_trim__inside__frame_reveal="5/8"),
        inch="Tilted, the sash meets the extension jamb at 0°; its stay lets it in by about 7°.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="sash-sizes-assumed",
        appears=case(windows__fixed=UNSTATED, interior_trim__inside__frame_reveal="1/4"),
        quiet=case(windows__fixed=TILT, interior_trim__inside__frame_reveal="1/4"),
        inch="How far the sash opens rests on sizes that are assumed: give sash_thickness and sash_set_back.",
        severity=CHECK,
        about=W1,
    ),
]

ROWS = [*CANNOT, *SASH, *UNSTATED_SIZES]


@each(ROWS)
def test_it_appears_and_just_does_not(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(sash_findings) == {row.code for row in ROWS}


def test_it_is_said_once() -> None:
    """Not as a sash that stops short as well."""
    codes = [one.code for one in case(windows__fixed={**CASEMENT, "sash_face": "1 3/4"})()]
    assert codes.count("sash-cannot-open") == 1 and "sash-stops-short" not in codes


@pytest.mark.parametrize("sash", ["casement out", "casement in", "awning", "hopper"])
def test_a_sash_that_opens_as_far_as_it_is_asked_is_not_told(sash: str) -> None:
    quiet = said(windows__fixed={**CASEMENT, "sash": sash}, openings__0__hinge="left", limits={"sash_opening_deg": "0"})
    assert [one.code for one in quiet if one.code.startswith("sash")] == []
