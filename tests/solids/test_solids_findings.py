"""What solids tell: each finding appears, stays away just beside its limit, reads well in both units."""

from __future__ import annotations

import importlib
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

import finding_rows
from cases import STOOL, changed, job_of
from finding_rows import Case, Row, codes_in, each
from harbour import harbour_kits, harbour_solids
from metal import lined
from test_step import openings

from jambs.findings import Severity, Statement, Subject, SubjectKind
from jambs.parts.board.cuts import Crosscut, Cut, Miter
from jambs.parts.board.part import Part, Seat
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids import availability, findings
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import KitSolids, Solid, board_shape, model_kit
from jambs.solids.step import ElevationError, write_elevation_step

JUST = 0.0008
"""Less than the thousandth that measures are held to [in]."""
HEAD, LEG, HEAD_CASING = "W11-1", "W11-2", "W11-5"


def report(**paths: Any) -> FitReport:
    job = job_of(changed(**paths))
    return fit_report(model_kit(make_kit(place_windows(job)[0], job), job))


def with_solid(name: str, change: Callable[[Solid], Solid]) -> Case:
    """The report of a harbour house kit with one of its solids changed after it was sawn."""

    def case() -> tuple[Statement, ...]:
        solids = harbour_solids("W11")
        parts = tuple(change(one) if one.name == name else one for one in solids.parts)
        return fit_report(replace(solids, parts=parts)).faults

    return case


def seated(change: Callable[[Seat], Seat], name: str = HEAD_CASING) -> Case:
    return with_solid(name, lambda one: replace(one, seat=change(one.seat)))


def planted(name: str, change: Callable[[Part], Part]) -> Case:
    """The report of a kit of which one part is sawn otherwise."""

    def case() -> tuple[Statement, ...]:
        kit, job = harbour_kits()["W11"], harbour_solids("W11").job
        parts = tuple(change(part) if part.mark == name else part for part in kit.parts)
        return fit_report(model_kit(replace(kit, parts=parts), job)).faults

    return case


def longer(by: float) -> Callable[[Part], Part]:
    def change(part: Part) -> Part:
        cuts = (replace(one, length=one.length + by) if isinstance(one, Crosscut) else one for one in part.cuts)
        return replace(part, cuts=tuple[Cut, ...](cuts))

    return change


def moved(by: float) -> Callable[[Part], Part]:
    def change(part: Part) -> Part:
        x, y, d = part.seat.origin
        return replace(part, seat=replace(part.seat, origin=(x - by, y, d)))

    return change


def skewed(by: float) -> Callable[[Seat], Seat]:
    """Lean the way across of a seat along its grain; its length stays 1 to the square of what it leans."""

    def change(seat: Seat) -> Seat:
        x, y, d = seat.across
        u, v, w = seat.along
        return replace(seat, across=(x + by * u, y + by * v, d + by * w))

    return change


def mirrored(seat: Seat) -> Seat:
    x, y, d = seat.across
    return replace(seat, across=(-x, -y, -d))


def without_miters(solid: Solid) -> Solid:
    assert solid.part is not None
    plain = replace(solid.part, cuts=tuple(cut for cut in solid.part.cuts if not isinstance(cut, Miter)))
    return replace(solid, bench=board_shape(plain.silhouettes))


def thicker(by: float) -> Callable[[Part], Part]:
    return lambda part: replace(part, blank=replace(part.blank, thickness=part.thickness + by))


def other_list(by: float) -> Callable[[Solid], Solid]:
    """The part of the list so much longer than what was sawn."""

    def change(solid: Solid) -> Solid:
        assert solid.part is not None
        return replace(solid, part=longer(by)(solid.part))

    return change


def first(code: str, case: Case) -> Case:
    """The first finding of a code alone, where one fault is told at several places."""
    return lambda: [one for one in case() if one.code == code][:1]


def notes(**paths: Any) -> Case:
    return lambda: report(**paths).notes


def loaded(error: ImportError | None) -> Case:
    def case() -> tuple[Statement, ...]:
        with patch.object(importlib, "import_module", side_effect=error):
            found = availability()
        return () if found is None else (found,)

    return case


def apron(ends: str) -> dict[str, Any]:
    return {"interior_trim__inside": {**STOOL, "apron": {**STOOL["apron"], "ends": ends}}}


@cache
def pair(*second: tuple[str, Any]) -> list[KitSolids]:
    """W1 on the north elevation, and W2, which is changed."""
    return openings(**dict(second))


def elevation(name: str = "north", **second: Any) -> Case:
    def case() -> tuple[Statement, ...]:
        with patch("jambs.solids.step._write"):
            try:
                write_elevation_step(pair(*second.items()), Path("north.step"), elevation=name)
            except ElevationError as error:
                return error.findings
        return ()

    return case


def no_openings() -> tuple[Statement, ...]:
    try:
        write_elevation_step([], Path("north.step"), elevation="north")
    except ElevationError as error:
        return error.findings
    return ()


TWISTED = {
    "date": "2026-05-18",
    "interior_depth": {"head_left": "4 11/16", "head_right": "4 3/4", "sill_left": "4 5/8", "sill_right": "4 13/16"},
}
EVEN = {
    "date": "2026-05-18",
    "interior_depth": dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 3/4"),
}


ABOUT = Subject.opening("W11")
OF_LEG, OF_CASING = (Subject(kind=SubjectKind.PART, name=name) for name in (LEG, HEAD_CASING))
ROWS = [
    Row(  # 1/16 x 3/4 x 4-23/32 = 0.2212 cu in; in mm 1.59 x 19.05 x 119.86 = 3625
        code="parts-take-same-room",
        appears=planted(LEG, longer(1 / 16)),
        quiet=planted(LEG, longer(JUST)),
        inch=(
            "W11-1 (extension jamb, head) and W11-2 (extension jamb, left leg) take the same room: 0.2212 cu in in "
            "a box of 0.062 in × 0.750 in × 4.719 in."
        ),
        mm=(
            "W11-1 (extension jamb, head) and W11-2 (extension jamb, left leg) take the same room: 3625 mm³ in a "
            "box of 1.59 mm × 19.05 mm × 119.86 mm."
        ),
        severity=Severity.STOP,
        about=ABOUT,
    ),
    Row(
        code="joint-does-not-close",
        appears=first("joint-does-not-close", planted(LEG, longer(1 / 16))),
        quiet=planted(LEG, longer(JUST)),
        inch="the jamb's head and left leg, W11-1 and W11-2, should touch over 5.309 sq in but touch over 1.770 sq in.",
        mm="the jamb's head and left leg, W11-1 and W11-2, should touch over 3425 mm² but touch over 1142 mm².",
        severity=Severity.STOP,
        about=ABOUT,
    ),
    Row(
        code="measure-is-off",
        appears=first("measure-is-off", planted(LEG, moved(1 / 16))),
        quiet=planted(LEG, moved(JUST)),
        inch="clear opening width near one end is 26.312 in on the solids, it should be 26.250 in: 0.062 in more.",
        mm="clear opening width near one end is 668.34 mm on the solids, it should be 666.75 mm: 1.59 mm more.",
        severity=Severity.STOP,
        about=ABOUT,
    ),
    Row(
        code="seat-not-square",
        appears=seated(skewed(1e-8)),
        quiet=seated(skewed(1e-10)),
        inch="W11-5 (casing, head): the directions of its seat are not square to each other.",
        about=OF_CASING,
        severity=Severity.STOP,
    ),
    Row(
        code="seat-mirrors",
        appears=seated(mirrored),
        quiet=seated(lambda seat: seat),
        inch="W11-5 (casing, head): its seat mirrors it; a board cannot be turned to lie like that.",
        about=OF_CASING,
    ),
    Row(
        code="grain-runs-wrong",
        appears=seated(lambda seat: replace(seat, along=(0.0, 0.0, 1.0), across=(0.0, 1.0, 0.0)), LEG),
        quiet=seated(lambda seat: seat, LEG),
        inch="W11-2 (extension jamb, left leg): its grain runs level, it should run upright.",
        about=OF_LEG,
    ),
    Row(
        code="grain-runs-wrong",
        appears=seated(lambda seat: replace(seat, along=(0.0, 1.0, 0.0), across=(0.0, 0.0, 1.0)), HEAD),
        quiet=seated(lambda seat: seat, HEAD),
        inch="W11-1 (extension jamb, head): its grain runs upright, it should run level.",
    ),
    Row(
        code="solid-size-off",
        appears=with_solid(LEG, other_list(1 / 16)),
        quiet=with_solid(LEG, other_list(JUST)),
        inch=(
            "W11-2 (extension jamb, left leg): the solid's length along the grain is 50.750 in, the parts list has "
            "50.812 in: 0.062 in off."
        ),
        mm=(
            "W11-2 (extension jamb, left leg): the solid's length along the grain is 1289.05 mm, the parts list has "
            "1290.64 mm: 1.59 mm off."
        ),
        about=OF_LEG,
    ),
    Row(  # a miter takes 3.5² / 2 x 3/4 = 4.5938 cu in at each end
        code="solid-volume-off",
        appears=with_solid(HEAD_CASING, without_miters),
        quiet=with_solid(HEAD_CASING, lambda one: one),
        inch=(
            "W11-5 (casing, head): the solid has 88.2656 cu in, the board less its cuts 79.0781 cu in: 9.1875 cu in "
            "off."
        ),
        mm="W11-5 (casing, head): the solid has 1446414 mm³, the board less its cuts 1295858 mm³: 150556 mm³ off.",
        about=OF_CASING,
    ),
    Row(
        code="flashing-drawn-bent",
        appears=notes(),
        quiet=notes(exterior_trim=None),
        inch="The head flashing is shown as bent sheet of drawn thickness; its volume is not checked.",
        severity=Severity.NOTE,
        about=Subject.opening("W1"),
    ),
    Row(
        code="metal-legs-not-shown",
        appears=notes(exterior_trim__outside=lined()),
        quiet=notes(),
        inch=(
            "Metal returns are shown as flat strips of their thickness, as wide as what lines the opening; their legs, "
            "hems and laps are on the flashing sheet and are not checked here."
        ),
        severity=Severity.NOTE,
        about=Subject.opening("W1"),
    ),
    Row(
        code="apron-returns-not-shown",
        appears=notes(**apron("returned"), exterior_trim=None),
        quiet=notes(**apron("square"), exterior_trim=None),
        inch="The apron's returns are cut from its own board and are not shown.",
        severity=Severity.NOTE,
    ),
    Row(
        code="back-bevel-not-sawn",
        appears=notes(interior_trim__inside__casing__back_bevel_deg="2", exterior_trim=None),
        quiet=notes(exterior_trim=None),
        inch="The back bevel of the casing miters is a touch with the plane: it is not sawn here.",
        severity=Severity.NOTE,
    ),
    Row(
        code="casing-joints-loose",
        appears=notes(openings__0__measured=TWISTED, exterior_trim=None),
        quiet=notes(openings__0__measured=EVEN, exterior_trim=None),
        inch=(
            "The measured wall is out of plane inside: casing joints are held to 0.071 in, not to a thousandth; the "
            "casing is flat and lies on the highest edges, plane or shim the rest."
        ),
        mm=(
            "The measured wall is out of plane inside: casing joints are held to 1.80 mm, not to a thousandth; the "
            "casing is flat and lies on the highest edges, plane or shim the rest."
        ),
        severity=Severity.NOTE,
    ),
    Row(
        code="kernel-not-installed",
        appears=loaded(ModuleNotFoundError("No module named 'OCP'")),
        quiet=loaded(None),
        inch=(
            "Left out: solids, STEP, GLB, 3D pictures and the fit report; cadquery is not installed. To have them: "
            "pip install -e '.[solids]'."
        ),
        severity=Severity.NOTE,
    ),
    Row(
        code="kernel-lacks-library",
        appears=loaded(ImportError("libGL.so.1: cannot open shared object file\nmore")),
        quiet=loaded(None),
        inch=(
            "Left out: solids, STEP, GLB, 3D pictures and the fit report; cadquery is installed and a system "
            "library is missing (libGL.so.1: cannot open shared object file). To have them on Debian or Ubuntu: "
            "apt-get install --no-install-recommends libgl1."
        ),
        severity=Severity.NOTE,
    ),
    Row(
        code="no-openings-to-write",
        appears=no_openings,
        quiet=elevation(),
        inch="elevation 'north': there are no openings to write; give at least one",
    ),
    Row(
        code="no-such-elevation",
        appears=elevation("west"),
        quiet=elevation(),
        inch="no elevation is called 'west'; the job has north, south",
    ),
    Row(
        code="place-not-given",
        appears=elevation(from_left=None),
        quiet=elevation(),
        inch="W2: from_left is not given; elevation 'north' needs it for every opening",
    ),
    Row(
        code="place-not-given",
        appears=elevation(sill_height=None),
        quiet=elevation(),
        inch="W2: sill_height is not given; elevation 'north' needs it for every opening",
    ),
    Row(
        code="not-on-elevation",
        appears=elevation(elevation="south"),
        quiet=elevation(),
        inch="W2 is not on elevation 'north'; leave it out or name that elevation in its entry",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}
