"""Openings to draw: of the inch and the metric base job, picture framed, with a stool, measured, a door."""

from __future__ import annotations

from functools import cache
from typing import Any

from cases import METRIC, STOOL, changed, job_of, strips

from jambs.drawings import Drawing, draw_opening
from jambs.issue_stamp import IssueStamp
from jambs.job import Job
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import sections_to_draw
from jambs.section.region import Section

THIN_LAYERS = [
    {"material": "gypsum board 1/2", "thickness": "1/8"},
    {"material": "gypsum board 1/2", "thickness": "1/4"},
    {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
    "plywood 1/2",
    "housewrap",
    {"material": "EPS", "thickness": "1/2"},
    {"material": "EPS", "thickness": "1/4"},
    {"material": "EPS", "thickness": "2"},
    {"material": "plywood 1/2", "role": "outer sheathing", "thickness": "1/4"},
    {"material": "wood shingles", "thickness": "3/8"},
]
CASEMENT = {
    "jamb_depth": "70 mm",
    "frame_projection": "3 mm",
    "frame_face": "45 mm",
    "exterior_frame_face": "48 mm",
    "nailing_flange": "no",
    "sash": "casement in",
    "sash_thickness": "68 mm",
    "sash_set_back": "0",
    "sash_face": "45 mm",
}
MEASURED = {
    "date": "2026-05-18",
    "interior_depth": {"head_left": "4 11/16", "head_right": "4 3/4", "sill_left": "4 5/8", "sill_right": "4 13/16"},
}
TAPERED = {
    "date": "2026-05-18",
    "interior_depth": {"head_left": "4 11/16", "head_right": "4 11/16", "sill_left": "4 7/8", "sill_right": "4 7/8"},
}
SAMPLES: dict[str, dict[str, Any]] = {
    "picture framed": {},
    "stool": {"interior_trim__inside": STOOL},
    "mitered jambs": {"interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"}},
    "thin layers": {"walls__main__layers": THIN_LAYERS, "walls__main__buck__thickness": "3/4"},
    "clad frame": {"windows__fixed": CASEMENT, "openings__0__hinge": "left"},
    "tiny reveals": {"interior_trim__inside__frame_reveal": "1/64", "interior_trim__inside__casing_reveal": "1/32"},
    "no reveals": {"interior_trim__inside__frame_reveal": "0", "interior_trim__inside__casing_reveal": "0"},
    "measured": {"openings__0__measured": MEASURED},
    "flange on sheathing": {"position": {"share": "0"}},
    "metric": METRIC,
    "small": {
        "openings__0__frame": "15 1/2 x 15 1/2",
        "openings__0__rough_opening": "16 x 16",
    },
    "wide": {"openings__0__frame": "119 1/2 x 71 1/2", "openings__0__rough_opening": "120 x 72"},
}
FURTHER = {"legs tapered alike": {"openings__0__measured": TAPERED}}
"""Drawn for single questions only."""
DATE = "2026-06-03"
ISSUE = IssueStamp(number=4, day=DATE, code="7F3A", measured="2026-05-18", replaces=2)


@cache
def made(name: str) -> tuple[CutKit, tuple[Section, ...], Job]:
    job = job_of(changed(**(SAMPLES | FURTHER)[name]))
    (kit,) = strips([make_kit(place_windows(job)[0], job)])
    return kit, sections_to_draw(kit), job


@cache
def drawn(name: str) -> Drawing:
    kit, sections, job = made(name)
    return draw_opening(kit, sections, job, issue=ISSUE)
