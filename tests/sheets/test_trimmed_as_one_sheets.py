"""Openings trimmed as one on paper: what each says of the boards over all; nothing of an opening alone."""

from __future__ import annotations

from typing import Any

import jsonschema
from cases import strips
from trimmed_as_one import run_job, run_kits

from jambs.fasten.plan import opening_fasteners
from jambs.flashing.lap_words import LapKind
from jambs.flashing.laps import lap_order
from jambs.job.models.outside import FastenerEntry, Fixed
from jambs.length import Units
from jambs.outside.fastener_line import Fastened
from jambs.outside.plan import plan_outside, with_outside
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.install_steps import inside_steps, lap_parts
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.record import job_record
from jambs.sheets.rough_openings import rough_opening_data
from jambs.sides import Side


def kits(count: int = 2, **paths: Any) -> tuple[CutKit, ...]:
    return strips(run_kits(count, **paths))


def steps(kit: CutKit) -> str:
    return "\n".join(inside_steps(kit, run_job().shop))


def test_the_record_says_with_whom_and_keeps_to_its_schema() -> None:
    found = job_record(kits(), run_job())
    jsonschema.validate(found, parts_schema())
    one, two = (opening["trimmed_as_one"] for opening in found["openings"])
    assert one["openings"] == two["openings"]
    assert [(each["mark"], each["frame"]["text"]) for each in one["openings"]] == [
        ("W1", '35 1/2" × 47 1/2"'),
        ("W2", '35 1/2" × 47 1/2"'),
    ]
    assert (one["lead"], two["lead"]) == ("W1", "W1")
    (wall,) = one["walls"]
    # 5 1/2 of wall, 1/4 of shims at both sides; the jambs' faces 2 3/8 in from both frames.
    assert [wall[key]["text"] for key in ("wall", "between_frames", "between_jambs")] == ['5 1/2"', '6"', '10 3/4"']
    assert one["parts_of_lead"] == []
    # The stool as it is cut: 79 5/8 over the casings and two horns of 3/4.
    assert [each["length"]["text"] for each in two["parts_of_lead"] if each["mark"] == "W1-4"] == ['81 1/8"']
    notches = [cut for part in found["openings"][0]["parts"] for cut in part["cuts"] if cut["kind"] == "mid notch"]
    assert [(cut["start"]["text"], cut["along"]["text"]) for cut in notches] == [
        ('35 15/16"', '9 1/4"'),
        ('37 1/2"', '9"'),
    ]


def test_a_lap_names_the_boards_that_lie_at_its_opening() -> None:
    """The outer legs stand at the first and the last, each mull casing at the two openings beside it."""
    one, two, three = kits(3)
    legs = {part.side: part.mark for part in one.parts if part.kind is PartKind.CASING and part.where is Where.EXTERIOR}
    mulls = [part.mark for part in one.parts if part.kind is PartKind.MULL_CASING and part.where is Where.EXTERIOR]
    wanted = (
        {legs[Side.HEAD], legs[Side.LEFT], mulls[0]},
        {legs[Side.HEAD], *mulls},
        {legs[Side.HEAD], legs[Side.RIGHT], mulls[1]},
    )
    for kit, boards in zip((one, two, three), wanted, strict=True):
        (trim,) = (lap for lap in lap_order(kit, ()) if lap.step.kind is LapKind.TRIM)
        named = {part.mark for part in lap_parts(trim, kit) if part.kind in (PartKind.CASING, PartKind.MULL_CASING)}
        assert named == boards


def test_an_opening_alone_says_nothing_of_others() -> None:
    (alone,) = kits(1)
    assert "trimmed_as_one" not in job_record([alone], run_job(1))["openings"][0]
    assert "Trimmed as one" not in steps(alone)
    assert rough_opening_data([alone], run_job(1))["walls"] == []


def test_the_sheets_of_both_change_with_what_lies_at_both() -> None:
    def told(**paths: Any) -> list[Any]:
        found = job_record(kits(3, **paths), run_job(3, **paths))["openings"]
        return [opening["trimmed_as_one"] for opening in found]

    wider = {"openings__2__frame": "37 1/2 x 47 1/2", "openings__2__rough_opening": "38 x 48"}
    assert [one != other for one, other in zip(told(), told(**wider), strict=True)] == [True] * 3


def test_every_board_is_in_the_record_once() -> None:
    found = job_record(kits(3), run_job(3))
    marks = [part["mark"] for opening in found["openings"] for part in opening["parts"]]
    assert len(marks) == len(set(marks))


def test_the_steps_say_what_is_set_first_and_how_far_apart() -> None:
    one, two = (steps(kit) for kit in kits())
    apart = 'the jambs face to face: W1 | W2: frames 6", jambs 10 3/4".'
    assert apart in one
    assert apart in two
    assert "Fit the stool (W1-4) first: horns to the wall, notched round the wall between, under all openings" in one
    assert "The stool (W1-4) is that of W1 and lies under all openings: it is fitted first." in two
    assert 'Mull casings (W1-8) on the wall between, with the legs: 3/16" back from the faces' in one
    assert "Mull casings" not in two
    assert "Case (" not in two


def test_the_framer_reads_how_wide_the_wall_is() -> None:
    (wall,) = rough_opening_data(kits(), run_job())["walls"]
    assert wall["mark"] == "W1"
    assert wall["text"] == (
        'wall between W1 and W2 5 1/2" wide; rough sills and heads in one line, all in one plane: they are trimmed as '
        "one. Studs and headers: as an engineer or the code says"
    )


def test_boards_on_the_wall_between_are_nailed_into_its_studs() -> None:
    one, two = kits()
    (line,) = (line for line in trim_fasteners(one, run_job()) if line.kind is Fastened.MULL_CASING)
    # Casing 3/4, wall board 1/2 and 1 into the stud: 2 1/4.
    assert (line.where, line.needed, line.is_inside) == ("interior, W1-8", 2.25, True)
    own = {line.kind for line in trim_fasteners(two, run_job())}
    assert not own & {Fastened.MULL_CASING, Fastened.INTERIOR_CASING, Fastened.STOOL, Fastened.APRON}


def test_outside_they_count_as_casing() -> None:
    one, _ = kits()
    entry = FastenerEntry.model_validate(
        {"fastener": "long wood screw", "penetration": "1 1/2", "spacing": "16"}, context={"units": Units.INCH}
    )
    (line,) = (line for line in opening_fasteners(one, {Fixed.CASING: entry}, Units.INCH) if line.fixed is Fixed.CASING)
    boards = [part.length for part in one.parts if part.mark in ("W1-14", "W1-15", "W1-16", "W1-17")]
    assert len(boards) == 4  # head, two legs, and the board between
    assert line.count == sum(_count(length, entry) for length in boards)


def _count(length: float, entry: FastenerEntry) -> int:
    """One near each end, between them at most the spacing apart."""
    steps_between = -(-(length - 2 * entry.from_end) // entry.spacing)
    return int(steps_between + 1) * entry.rows


def test_the_blank_over_all_heads_is_of_one_size_in_every_record() -> None:
    job, made = run_job(flashing={}), run_kits(flashing={})
    one, two = job_record(with_outside(made, plan_outside(made, job), job), job)["openings"]
    (own,) = (part for part in one["parts"] if part["name"] == "head flashing")
    (lent,) = (part for part in two["trimmed_as_one"]["parts_of_lead"] if part["mark"] == own["mark"])
    assert (lent["width"], lent["length"]) == (own["width"], own["length"])
