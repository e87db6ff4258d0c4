"""The placement comparison on paper: candidates side by side, curves, details, the walls. Never one score.

Every text is one of the record that ``placement.json`` holds.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from jambs.job.models.openings import Job
from jambs.length import MM_PER_INCH, Units
from jambs.section.region import Section
from jambs.sheets.comparison_charts import charts
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.opening_words import wall_words
from jambs.sheets.press import press
from jambs.sheets.section_picture import empty_picture, section_picture, window_of
from jambs.values import Record
from jambs.wall.planes import WallPlanes

NONE = "–"
LABEL_WIDTH = 104.0
"""Of the column of names [pt]."""
PAGE_WIDTH = {"letter": 11 * 72 - 72, "A4": 297 / MM_PER_INCH * 72 - 72}
"""Between the margins of a page on its side. [pt]"""
PICTURE_HEIGHT = 100.0

Drawn = Mapping[str, Section]
"""Section at the jamb of a candidate, by its letter; a candidate that cannot be built has none."""


def write_comparison(
    record: Record, job: Job, drawn: Sequence[Drawn], planes: Mapping[str, WallPlanes], path: Path, *, stamp: str = ""
) -> None:
    """Write the comparison as PDF; ``drawn`` holds the sections of each window of the record, ``planes`` by wall."""
    path.write_bytes(press("comparison", stamped(comparison_data(record, job, drawn, planes), stamp)))


def comparison_data(record: Record, job: Job, drawn: Sequence[Drawn], planes: Mapping[str, WallPlanes]) -> Record:
    """Return what the pages print."""
    return {
        **page_data(job),
        "site": record["site"],
        "site_line": _site_line(record["site"]),
        "conventions": record["conventions"],
        "cautions": record["cautions"],
        "left_out": record["left_out"],
        "walls": [_wall(wall) for wall in record["walls"]],
        "windows": [
            _window(window, job.shop.paper, job.units, sections, planes[window["wall"]])
            for window, sections in zip(record["windows"], drawn, strict=True)
        ],
    }


def _site_line(site: Sequence[Record]) -> str:
    return ", ".join(f"{fact['what']} {fact['text']}{' (assumed)' if fact['assumed'] else ''}" for fact in site)


def _window(window: Record, paper: str, units: Units, sections: Drawn, planes: WallPlanes) -> Record:
    candidates = window["candidates"]
    return {
        "title": f'Window type "{window["window"]}", {wall_words(window["wall"])}',
        "marks": window["marks"],
        "computed_for": window["computed_for"],
        "convention": window["convention"],
        "label_width": LABEL_WIDTH,
        "heads": [{"letter": one["letter"], "names": one["names"]} for one in candidates],
        "pictures": _pictures(candidates, sections, planes, paper),
        "groups": _groups(candidates, is_metric=units == "mm"),
        "charts": charts(window, planes, units, width=(PAGE_WIDTH[paper] - 24) / 3),
        "least": _least_words(window),
        "details": [_detail(one) for one in window["details"]],
        "own": next((one["letter"] for one in candidates if "the job's own" in one["names"]), ""),
        "assumed": window["assumed"],
    }


def _pictures(candidates: Sequence[Record], sections: Drawn, planes: WallPlanes, paper: str) -> list[str]:
    width = (PAGE_WIDTH[paper] - LABEL_WIDTH) / len(candidates) - 8
    window = window_of(sections.values(), width=width, height=PICTURE_HEIGHT)
    lines = (0.0, planes.sheathing_plane, planes.trim_plane)
    return [
        section_picture(sections[one["letter"]], window, planes=lines)
        if one["letter"] in sections
        else empty_picture(window, planes=lines)
        for one in candidates
    ]


def _text(value: Record | None) -> str:
    return str(value["text"]) if value else NONE


def _row(label: str, cells: Sequence[str], *, strong: bool = False) -> Record:
    return {"label": label, "cells": list(cells), "strong": strong}


def _groups(candidates: Sequence[Record], *, is_metric: bool) -> list[Record]:
    return [
        {"title": "Depths", "rows": _depth_rows(candidates)},
        {"title": "To build", "rows": _built_rows(candidates)},
        {"title": "Heat through the joint of window and wall", "rows": _heat_rows(candidates, is_metric=is_metric)},
        {"title": "Coldest place inside, glass left out", "rows": _cold_rows(candidates)},
        {"title": "Sun and sky on the glass, by the way it faces", "rows": _sun_rows(candidates)},
        {"title": "Limits of the job", "rows": [_row("", [_limits(one) for one in candidates])]},
    ]


def _depth_rows(candidates: Sequence[Record]) -> list[Record]:
    names = (
        ("inside face to flange", "flange_plane"),
        ("interior depth", "interior_depth"),
        ("exterior depth (- proud)", "exterior_depth"),
    )
    return [_row(label, [one[key]["text"] for one in candidates], strong=True) for label, key in names]


def _built_rows(candidates: Sequence[Record]) -> list[Record]:
    built = [one["built"] or {} for one in candidates]
    rows = [
        _row("interior jamb from", [one.get("interior_board", NONE) for one in built]),
        _row("exterior jamb from", [one.get("exterior_board", NONE) for one in built]),
        _row("buck", [one.get("buck", NONE) for one in built]),
        _row("past the sheathing", [_text(one.get("overhang")) for one in built]),
    ]
    if any(one.get("sash") for one in built):
        rows.append(_row("sash opens", [_text(one.get("sash")) for one in built]))
    return rows


def _heat_rows(candidates: Sequence[Record], *, is_metric: bool) -> list[Record]:
    sides = next((list(one["heat"]["sides"]) for one in candidates if "heat" in one), [])
    rows = [
        _row(f"{side}, W/mK", [_bounded(one["heat"]["sides"][side]) if "heat" in one else NONE for one in candidates])
        for side in sides
    ]
    names = (
        ("whole window, W/K", "whole"),
        ("whole window, Btu/h °F", "whole_us"),
        ("a season, kWh", "per_season"),
        ("over the least, kWh", "over_least"),
    )
    rows += [
        _row(label, [_text(one.get("heat", {}).get(key)) for one in candidates], strong=key == "whole")
        for label, key in names
        if key != "whole_us" or not is_metric
    ]
    return rows


def _bounded(value: Record) -> str:
    return f"{value['text']} ±{value['half_width']['text']}"


def _cold_rows(candidates: Sequence[Record]) -> list[Record]:
    cold = [one.get("cold", {}) for one in candidates]
    corner = next((one["estimate_side"] for one in cold if one), NONE)
    names = (
        ("temperature factor, 2-D", "coldest"),
        ("at design temperature", "temperature"),
        ("condensation above humidity", "sweats_above"),
        (f"corner of {corner}: estimate", "estimate_sweats_above"),
        ("mold: factor needed", "mold"),
    )
    place = [f"{one['place']}, at the {one['side']}" if one else NONE for one in cold]
    rows = [_row(label, [_text(one.get(key)) for one in cold], strong=key == "sweats_above") for label, key in names]
    return [_row("where", place), *rows]


def _sun_rows(candidates: Sequence[Record]) -> list[Record]:
    facings = next(([one["faces"] for one in each["sun"]] for each in candidates if "sun" in each), [])
    rows = []
    for place, faces in enumerate(facings):
        both = [
            f"{_text(one['sun'][place]['winter'])} / {_text(one['sun'][place]['summer'])}" if "sun" in one else NONE
            for one in candidates
        ]
        rows.append(_row(f"{faces}: winter / summer", both))
    if not facings:
        rows.append(_row("sun", [NONE for _ in candidates]))
    return [*rows, _row("overcast sky", [_text(one.get("sky")) for one in candidates])]


def _limits(candidate: Record) -> str:
    if candidate["why_not"]:
        return f"CANNOT BE BUILT: {candidate['why_not']}"
    if candidate["refused"]:
        return f"NO FIGURES: {candidate['refused']}"
    stops = [f"STOP: {text}" for text in candidate["stops"]]
    return "; ".join([*stops, *candidate["against"]]) or "all met"


def _least_words(window: Record) -> list[str]:
    least = window["least"]
    if len(window["curve"]) < 2:
        return [
            f"The flange fits in one place of this wall, {least['flange_plane']['text']} from the inside face "
            f"(interior depth {least['interior_depth']['text']}): there is nothing to compare, and no curve."
        ]
    low, high = (one["text"] for one in least["band"])
    words = [
        f"Least heat with the flange {least['flange_plane']['text']} from the inside face (interior depth "
        f"{least['interior_depth']['text']}). From {low} to {high} (hatched) it is at most 0.005 W/mK more: less than "
        "the input is uncertain by."
    ]
    excess = least["rule_excess"]
    if excess:
        words.append(
            f"Cross-check: 60 % of the wall's resistance inside of the frame's middle would be a flange at "
            f"{least['rule_plane']['text']}, {excess['text']} W/mK over the least."
        )
    return words


def _detail(detail: Record) -> Record:
    return {
        "words": detail["words"],
        "why_not": detail["why_not"] or "",
        **{key: _text(detail[key]) for key in ("heat", "change", "season", "coldest")},
    }


def _wall(wall: Record) -> Record:
    return {
        **wall,
        "error": _text(wall["greatest_error"]),
        "outboard_text": _text(wall["outboard"]),
        "dew_words": wall["dew_check"]["words"] if wall["dew_check"] else NONE,
        "blocked": [one["name"] for one in wall["layers"] if one["is_blocked_both_ways"]],
        "layer_rows": [
            {
                **one,
                **{
                    key: _text(one[key])
                    for key in ("thickness", "resistance", "us_resistance", "permeance", "inner_face")
                },
            }
            for one in wall["layers"]
        ],
    }
