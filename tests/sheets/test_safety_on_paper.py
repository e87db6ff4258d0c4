"""What keeps people whole, read back from the papers: escape, glass, falls, and cautions beside their work."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import paper
from cases import changed, job_of

from jambs.job.models.openings import Job
from jambs.outside.house import plan_house
from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sheets.house import order_data, write_order_sheet
from jambs.sheets.install_sheet import install_sheets_pdf
from jambs.sheets.record import job_record
from jambs.sheets.rough_openings import write_rough_opening_schedule

HUNG = {
    "windows__fixed__sash": "double hung",
    "windows__fixed__meeting_rail": "1 1/2",
    "openings__0__frame": "37 x 58 1/2",
    "openings__0__rough_opening": None,
}
"""Faces of 2 1/2: 32 wide, (53 1/2 - 1 1/2) / 2 = 26 high: 5.78 sq ft; the sill at 36 and its face is 38 1/2."""
LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
Writer = Callable[[Sequence[CutKit], Job, Path], None]


def house(**paths: Any) -> tuple[list[CutKit], Job]:
    job = job_of(changed(**paths))
    return [as_cut(make_kit(one, job), PlannedForKit()) for one in place_windows(job)], job


def words(write: Writer, folder: Path, **paths: Any) -> str:
    kits, job = house(**paths)
    write(kits, job, folder / "list.pdf")
    return paper.words((folder / "list.pdf").read_bytes())


def install_words(**paths: Any) -> str:
    job = job_of(changed(**paths))
    planned = plan_house([make_kit(one, job) for one in place_windows(job)], job)
    return paper.words(install_sheets_pdf(planned.kits, planned.installing, job))


def test_the_order_says_what_an_escape_opening_has_and_needs(tmp_path: Path) -> None:
    said = words(write_order_sheet, tmp_path, **HUNG, openings__0__escape="yes")
    assert "Escape openings: what each has, and needs" in said
    for pair in ("5.78 sq ft / 5.7 sq ft", '32" / 20"', '26" / 24"', '38 1/2" / at most 44"'):
        assert pair in said
    assert "International Residential Code 2018, R310" in said and "the local code decides" in said
    assert "Escape openings" not in words(write_order_sheet, tmp_path, **HUNG)


def test_limits_of_the_job_are_said_to_be_its_own() -> None:
    paths = {**HUNG, "openings__0__escape": "yes", "limits": {"escape": {"width": "22"}}}
    (opening,) = job_record(*house(**paths))["openings"]
    assert opening["escape"]["limits_of"] == "limits of the job"
    assert opening["escape"]["measures"][1] == {"what": "clear width", "has": '32"', "needs": '22"'}


def test_the_order_has_glass_and_falls_with_their_marks(tmp_path: Path) -> None:
    low = {**HUNG, "openings__0__sill_height": "20", "openings__0__near_door": "yes"}
    glass = order_data(*house(**low))["glass"]
    assert [(one["weight"], one["marks"]) for one in glass] == [("check", ["W1"]), ("check", ["W1"])]
    said = words(write_order_sheet, tmp_path, **low)
    assert "Glass and falls: settle before you order" in said and "give drop_outside" in said
    settled = {"openings__0__safety_glass": "yes", "openings__0__drop_outside": "30"}
    assert "Glass and falls" not in words(write_order_sheet, tmp_path, **low, **settled)


def test_safety_glass_is_a_window_of_its_own_on_the_order() -> None:
    first, second = ({"mark": mark, "room": "Room", "frame": "36 x 48", "sill_height": "36"} for mark in ("W1", "W2"))
    both = house(openings=[first, {**second, "safety_glass": "yes"}])
    kinds = [(one["sash"], one["marks"]) for one in order_data(*both)["kinds"]]
    assert kinds == [("fixed", ["W1"]), ("fixed, safety glass", ["W2"])]


def test_headers_stand_on_the_rough_openings_where_a_liner_widens_them(tmp_path: Path) -> None:
    liner = words(write_rough_opening_schedule, tmp_path, walls__main__buck=LINER)
    assert "Headers: a liner buck widens the hole in the framing" in liner
    assert "Headers:" not in words(write_rough_opening_schedule, tmp_path)


def test_the_install_sheet_says_who_lifts_and_has_no_caution_of_the_saw() -> None:
    said = install_words(openings__0__weight="383 lb")
    assert "Glass: about 383 lb: lifting gear" in said
    assert "riving knife" not in said and "Headers" not in said


def test_a_nail_through_the_service_cavity_says_so() -> None:
    def noted(*inside: Any) -> bool:
        layers = [*inside, {"material": "stud 2x6", "spacing": "16"}, "plywood 1/2", "wood shingles"]
        said = install_words(walls__main__layers=layers, position={"flange_on": "sheathing"}, exterior_trim=None)
        return "through the service cavity" in said

    cavity = {"material": "service battens", "role": "service cavity", "thickness": "1 1/2"}
    assert noted("gypsum board 1/2", cavity) and not noted("gypsum board 1/2")
