"""Every finding of openings that are trimmed as one on both sides of its limit; the openings: ``trimmed_as_one.py``."""

from __future__ import annotations

from typing import Any

import finding_rows
import pytest
from cases import BASE
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, W1
from random_kits import CORNERS
from test_trimmed_as_one_by_hand import read
from trimmed_as_one import OVER, run_job, run_kits

from jambs.findings import Subject
from jambs.length import Units
from jambs.parts.findings import run_findings
from jambs.parts.findings.run_findings import GoesPastNeighbors
from jambs.parts.make import PartsError, make_kit
from jambs.place.solve import place_windows


def case(at: int = 0, count: int = 2, wall: str = "5 1/2", **paths: Any) -> Case:
    """All findings of one opening of a run."""
    return lambda: run_kits(count, wall=wall, **paths)[at].findings


def stops(**paths: Any) -> Case:
    """What keeps the first opening from being made; nothing where it is."""

    def found() -> Any:
        job = run_job(**paths)
        try:
            make_kit(place_windows(job)[0], job)
        except PartsError as error:
            return error.findings
        return ()

    return found


BEHIND = (
    "Outside, the walls of openings trimmed as one do not lie in one plane: casing over all bears on the farthest "
    "jambs, and one of W1 ends {} behind it, where nails draw it down by {} at most. Before the boards are nailed "
    "glue tapered strips on that edge and plane them to a straight edge over all, or true up the wall and read it "
    "again."
)


def outer(depth: str) -> dict[str, Any]:
    """All corners read outside at one depth."""
    return {"date": "2026-06-01", "exterior_depth": dict.fromkeys(CORNERS, depth)}


def frames(first: str, second: str) -> Case:
    """All corners of both openings read, the sill of the third as that of the first."""
    return case(
        count=3,
        openings__0__measured=read("4 11/16"),
        openings__1__measured=read(second),
        openings__2__measured=read(first),
    )


# Faces of 1/2 beside a wall of 1/2: 1/2 + 1/4 + 1/4 + 2 · (1/2 - 1/8) = 1 3/4, and two reveals of 7/8 take all of it.
THICK = {"thickness": "1", "stock": "poplar", "joint": "butt, head over legs"}
NARROW_FACES = {"wall": "1/2", "windows__fixed__frame_face": "1/2", "interior_trim__inside__jamb": THICK}

ROWS = [
    Row(
        code="goes-past-neighbors",
        appears=case(),
        quiet=case(at=1),
        inch="Trimmed as one with W2: W1-4, W1-5, W1-8, W1-9, W1-13, W1-14, W1-17 lie over all of them and the wall "
        'between. Before they are cut, tape from frame to frame over that wall: they are made for 6", and no reading '
        "tells it.",
        mm="Trimmed as one with W2: W1-4, W1-5, W1-8, W1-9, W1-13, W1-14, W1-17 lie over all of them and the wall "
        "between. Before they are cut, tape from frame to frame over that wall: they are made for 152.4 mm, and no "
        "reading tells it.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="trimmed-by-another",
        appears=case(at=1),
        quiet=case(),
        inch="Trimmed as one with W1: W1-4, W1-5, W1-6, W1-7, W1-8, W1-9, W1-13, W1-14, W1-15, W1-16, W1-17 are on the "
        "sheets of W1. Its stool lies under the jambs: it is set before them.",
        severity=NOTE,
        about=Subject.opening("W2"),
    ),
    Row(
        code="no-room-for-mull-casing",
        appears=stops(**NARROW_FACES, interior_trim__inside__casing_reveal="7/8"),
        quiet=stops(**NARROW_FACES, interior_trim__inside__casing_reveal="27/32"),
        inch='W1: the jambs of two openings that are trimmed as one stand 1 3/4" apart, face to face, and a casing '
        'reveal of 7/8" at each leaves nothing for the mull casing; write a smaller casing_reveal, or a wider wall.',
        mm="W1: the jambs of two openings that are trimmed as one stand 44.5 mm apart, face to face, and a casing "
        "reveal of 22.2 mm at each leaves nothing for the mull casing; write a smaller casing_reveal, or a wider wall.",
        severity=STOP,
        about=W1,
    ),
    # Frames 2 1/2 apart, faces of 2 1/2 less reveals of 1/4: 7 face to face. Each jamb takes 1 1/4 · tan f and
    # 3/4 / cos f of it: 3.416 at 58°, 3.537 at 59°.
    Row(
        code="flares-meet-between",
        appears=stops(wall="2", exterior_trim__outside__flare={"sides": "59 deg"}),
        quiet=stops(
            wall="2", exterior_trim__outside__flare={"sides": "58 deg"}, exterior_trim__outside__mull_casing=OVER
        ),
        inch='W1: the exterior jambs of two openings that are trimmed as one stand 5 1/2" apart at the frame, back to '
        'back, and flare until they overlap by 5/64" where they end; write a smaller flare at the sides, or a wider '
        "wall.",
        mm="W1: the exterior jambs of two openings that are trimmed as one stand 139.7 mm apart at the frame, back to "
        "back, and flare until they overlap by 1.9 mm where they end; write a smaller flare at the sides, or a wider "
        "wall.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="wall-holds-no-trimmers",
        appears=case(wall="2 31/32"),
        quiet=case(wall="3"),
        inch='The wall between two openings is 2 31/32", and the studs that carry the headers at both sides of it take '
        '3": ask whoever designs the framing, or enter the windows as units of one opening.',
        mm="The wall between two openings is 75.4 mm, and the studs that carry the headers at both sides of it take "
        "76.2 mm: ask whoever designs the framing, or enter the windows as units of one opening.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Bucks of 1 1/2 round both holes, set back by 1/2: 4 together.
        code="bucks-meet-between",
        appears=case(wall="3 31/32", walls__main__buck__set_back="1/2"),
        quiet=case(wall="4", walls__main__buck__set_back="1/2"),
        inch='The bucks at both sides of a wall between are 4" together, and the wall is 3 31/32": they take the same '
        "room; write a wider wall or a thinner buck.",
        mm="The bucks at both sides of a wall between are 101.6 mm together, and the wall is 100.8 mm: they take the "
        "same room; write a wider wall or a thinner buck.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # The first and the last 4 11/16: that in the middle 3/32 more, or just 1/16.
        code="frames-off-stool",
        appears=frames("4 11/16", "4 25/32"),
        quiet=frames("4 11/16", "4 3/4"),
        inch='At the sill of W2 the interior depth is 3/32" more than along a straight line over all openings that are '
        "trimmed with it: set the frames in one plane, or scribe the stool to them before it is fixed.",
        mm="At the sill of W2 the interior depth is 2.4 mm more than along a straight line over all openings that are "
        "trimmed with it: set the frames in one plane, or scribe the stool to them before it is fixed.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Both walls flat, the second farther out: a plane over all legs leans and leaves inner edges 0.864 of it off.
        code="jambs-behind-boards",
        appears=case(openings__0__measured=outer("1 1/2"), openings__1__measured=outer("1 21/32")),
        quiet=case(openings__0__measured=outer("1 1/2"), openings__1__measured=outer("1 5/8")),
        inch=BEHIND.format('9/64"', '1/8"'),
        mm=BEHIND.format("3.4 mm", "3.2 mm"),
        severity=CHECK,
        about=W1,
    ),
]


@pytest.mark.parametrize(("depth", "is_said"), [("1 1/2", False), ("1 15/32", True)])
def test_nails_draw_casing_down_by_just_an_eighth(depth: str, is_said: bool) -> None:
    """Both neighbors 1 5/8 out and alike, without a sill: the plane over all is theirs, and does not lean."""
    out: dict[str, Any] = {"openings__0__measured": outer("1 5/8"), "openings__2__measured": outer("1 5/8")}
    said = case(count=3, exterior_trim__outside__sill=None, openings__1__measured=outer(depth), **out)()
    assert ("jambs-behind-boards" in [one.code for one in said]) is is_said


def told(**paths: Any) -> str:
    """What is said of the boards over all, behind what is always said."""
    (said,) = (one.sentence(Units.INCH) for one in case(**paths)() if one.code == "goes-past-neighbors")
    return said.partition("tells it.")[2]


def test_depths_that_were_read_at_some_of_them_alone_are_named() -> None:
    """The stool follows the depth inside, the sill that outside; where none is read, or all are, nothing is said."""

    def both() -> dict[str, Any]:
        return {**read("4 11/16"), **outer("1 1/2")}

    waiting = " W1-4, W1-13 follow the depths at {} too, which nobody has measured: read them first."
    assert told() == told(openings__0__measured=both(), openings__1__measured=both()) == ""
    assert told(openings__0__measured=both()) == waiting.format("W2")
    assert told(openings__1__measured=both()) == waiting.format("W1")
    inside = told(openings__0__measured=read("4 11/16"))
    assert inside == " W1-4 follows the depths at W2 too, which nobody has measured: read them first."


@each(ROWS)
def test_it_appears_with_its_sentence_and_just_does_not(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert {row.code for row in ROWS} == codes_in(run_findings)


def test_a_run_framed_as_pictures_says_nothing_of_a_stool() -> None:
    picture = {**BASE["interior_trim"]["inside"], "mull_casing": OVER}
    said = [one for one in run_kits(interior_trim__inside=picture)[1].findings if one.code == "trimmed-by-another"]
    assert [one.has_stool for one in said if isinstance(one, run_findings.TrimmedByAnother)] == [False]


@pytest.mark.parametrize("code", ["casing-laps-short", "outer-casing-laps-short", "stool-has-no-depth"])
def test_what_a_neighbor_has_is_not_missed(code: str) -> None:
    # A casing of 2 1/4 does not reach over the wall by itself, but the board on the wall between does.
    for kit in run_kits():
        assert [one.code for one in kit.findings if one.code == code] == []


@pytest.mark.parametrize(
    ("apart", "told"),
    [
        ((6.0,), 'from frame to frame over that wall: they are made for 6",'),
        ((6.0, 6.0), 'over each wall: they are made for 6" each,'),
        ((6.0, 8.0), 'from frame to frame over each wall: they are made for 6" and 8",'),
    ],
)
def test_of_several_walls_between_each_is_taped(apart: tuple[float, ...], told: str) -> None:
    one = GoesPastNeighbors(subject=W1, marks=("W1-4",), others=("W2",), apart=apart)
    assert f"{told} and no reading tells it." in one.sentence(Units.INCH)
