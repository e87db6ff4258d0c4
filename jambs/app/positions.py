"""``jambs compare``: the placement comparison of a job as pages, as JSON and as a table."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from jambs.app.basis import placed_basis
from jambs.app.chain import Unbuildable, placed
from jambs.app.house_issue import paper_stamp
from jambs.app.writing import PaperFolder, check_place, hand_in, today, writing_turn
from jambs.csv_text import csv_text
from jambs.interrupts import stop_if_interrupted
from jambs.issued.basis import basis_bytes
from jambs.issued.writing import Commit, PaperFacts
from jambs.job import Job
from jambs.section.cut import WALL_SHOWN, cut_section
from jambs.section.region import Section, SectionCut
from jambs.sheets.comparison import write_comparison
from jambs.sheets.press import PressError
from jambs.study.placement_study import PlacementStudy, least_heat_loss, study_placements
from jambs.study.record.comparison_record import comparison_record
from jambs.values import Record

PAGES, DATA, TABLE = "placement comparison.pdf", "placement.json", "placement.csv"
VERB = "compare"
COLUMNS = (
    ("wall", ()),
    ("window", ()),
    ("letter", ()),
    ("names", ()),
    ("flange_plane", ("flange_plane",)),
    ("interior_depth", ("interior_depth",)),
    ("exterior_depth", ("exterior_depth",)),
    ("overhang", ("built", "overhang")),
    ("sash_opens_deg", ("built", "sash")),
    ("jamb_W_mK", ("heat", "sides", "jamb")),
    ("head_W_mK", ("heat", "sides", "head")),
    ("sill_W_mK", ("heat", "sides", "sill")),
    ("whole_window_W_K", ("heat", "whole")),
    ("limits_within_W_K", ("heat", "half_width")),
    ("season_kWh", ("heat", "per_season")),
    ("coldest_factor", ("cold", "coldest")),
    ("corner_factor", ("cold", "corner")),
    ("sill_corner_factor_estimate", ("cold", "estimate")),
    ("sweats_above_humidity", ("cold", "sweats_above")),
    ("sky", ("sky",)),
)
"""Columns of the table and the way to their figures in a candidate's record; lengths in the job's units."""


def compare(job: Job, place: PaperFolder, *, overwrite: bool) -> Record:
    """Compare the positions of a job's windows and write pages, JSON and table; return the record.

    Raises:
        Unbuildable: a window cannot be placed, or a page cannot be printed.
        InTheWay: files of the user's would be overwritten.
    """
    check_place(place, job)
    placements = placed(job, least_heat_loss(job))
    study = study_placements(placements, job)
    record = comparison_record(study)
    facts = dict.fromkeys((PAGES, DATA, TABLE), PaperFacts(kind="placement comparison"))
    basis = placed_basis(placements, job)
    with writing_turn(place, job, verb=VERB) as writing, writing.fresh_folder() as folder:
        _write(record, study, folder, paper_stamp(writing.record, VERB, basis, day=today()))
        stop_if_interrupted()
        hand_in(writing, Commit(staged=folder, day=today(), facts=facts, basis=basis_bytes(basis)), overwrite=overwrite)
    return record


def _write(record: Record, study: PlacementStudy, folder: Path, stamp: str) -> None:
    planes = {wall.planes.wall.name: wall.planes for wall in study.walls}
    try:
        write_comparison(record, study.job, drawn_sections(study), planes, folder / PAGES, stamp=stamp)
    except PressError as error:
        raise Unbuildable(str(error)) from error
    text = json.dumps(record, indent=1, ensure_ascii=False) + "\n"
    (folder / DATA).write_text(text, encoding="utf-8")
    (folder / TABLE).write_text(table_text(record), encoding="utf-8")


def drawn_sections(study: PlacementStudy) -> list[dict[str, Section]]:
    """Return the section at the jamb of every candidate that can be built, by its letter, window by window."""
    return [
        {
            letter: cut_section(candidate.kit, SectionCut.JAMB, wall_length=WALL_SHOWN)
            for letter, candidate in zip("ABCDEFGHIJKLMNOP", window.candidates, strict=False)
            if candidate.kit
        }
        for window in study.windows
    ]


def table_text(record: Record) -> str:
    """Return the candidates as CSV, one a row; exact values, nothing where a window cannot be built."""
    rows: list[list[str]] = [[name for name, _ in COLUMNS]]
    rows += [list(_cells(window, one)) for window in record["windows"] for one in window["candidates"]]
    return csv_text(rows)


def _cells(window: Record, candidate: Record) -> Iterator[str]:
    yield from (window["wall"], window["window"], candidate["letter"], ", ".join(candidate["names"]))
    for _, path in COLUMNS[4:]:
        value: Record | None = candidate
        for key in path:
            value = value.get(key) if value else None
        yield "" if value is None else f"{value['value']:.6g}"


def comparison_text(record: Record) -> str:
    """Return the comparison in a few lines for a terminal."""
    lines = []
    for window in record["windows"]:
        lines.append(f"{window['window']} in wall {window['wall']} ({', '.join(window['marks'])})")
        lines += [_line(candidate) for candidate in window["candidates"]]
    lines += [f"not studied: {words}" for words in record["left_out"]]
    return "\n".join([*lines, *record["cautions"]])


def _line(candidate: Record) -> str:
    head = f"  {candidate['letter']}  {', '.join(candidate['names'])}: interior {candidate['interior_depth']['text']}"
    exterior = candidate["exterior_depth"]
    proud = " proud" if exterior["value"] < 0 else ""
    head += f", exterior {exterior['text'].removeprefix('-')}{proud}"
    if "heat" not in candidate:
        return f"{head}; {'no figures' if candidate['refused'] else 'cannot be built'}"
    kept = "" if not candidate["against"] else f"; past {len(candidate['against'])} of the limits"
    heat, cold = candidate["heat"]["whole"]["text"], candidate["cold"]["sweats_above"]["text"]
    return f"{head}; {heat} W/K through the joint, condensation above {cold}{kept}"
