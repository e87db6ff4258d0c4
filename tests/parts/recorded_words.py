"""Kits of which all that is told is on record: findings, figures, cautions, and of every board its words.

The boards themselves are in ``recorded_kits.json``, which is written only when they close in the solid. This one holds
what is made of the same boards in words and figures, so that a figure that moves, a line that falls out or a finding
that turns up somewhere else is seen. The sentences of each kind are held by the tables of findings and the tests by
hand; a record proves nothing of itself. Renew it where something is meant to be told otherwise, and read the lines that
are other ones now:

    python tests/parts/recorded_words.py
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from arches import arch_changes
from cases import METRIC, STOOL, changed, job_of
from gangs import RETURNS as LINED
from gangs import boxed, ganged, unit
from panels import PANEL, PANELS, paneled
from recorded_kits import KITS, MITERED, as_text, jointed, plain
from rounds import inside_only
from said import sentences

from jambs.findings import FindingsError
from jambs.job import Job
from jambs.job.models.openings import SideDepths
from jambs.length import Units
from jambs.parts.board.arch_outline import arch_corners
from jambs.parts.board.arrises import OnePlane, edge_section
from jambs.parts.board.bending_form import bending_form
from jambs.parts.board.board_faces import board_faces
from jambs.parts.board.cuts import saw_angles
from jambs.parts.board.end_slants import end_slants
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.board.taken_apart import taken_apart
from jambs.parts.jambs.box import box_gaps
from jambs.parts.jambs.flare_checks import flared_framing
from jambs.parts.jambs.stack import steps_back
from jambs.parts.kit.backing import backing_of
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.left_on import left_on
from jambs.parts.kit.mill_ahead import rips_ahead
from jambs.parts.kit.on_elevation import seen_box
from jambs.parts.kit.planned import is_planned
from jambs.parts.make import make_kit
from jambs.parts.mulls.mull import cut_to_finished
from jambs.parts.readings.as_built import held_readings, questions
from jambs.parts.readings.edge import remedy
from jambs.parts.readings.lining import lining_of
from jambs.parts.readings.tolerance import depth_range
from jambs.parts.shapes.clear import interior_clear
from jambs.parts.shapes.shape_checks import is_framed_square
from jambs.parts.trim.casing_plane import nailed_on
from jambs.parts.trim.molding import end_area, inner_edge
from jambs.parts.trim.returns import wall_board_lap
from jambs.parts.trim.sides import fitted_edges, twist
from jambs.parts.words.corner_words import jamb_corner_words
from jambs.parts.words.cut_words import asides, board_words, unlisted_words, work_words
from jambs.parts.words.edge_names import edge_names, is_turned
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.flare_words import saw_notes
from jambs.parts.words.glue_words import glue_words
from jambs.parts.words.mill_ahead_words import milling_lines
from jambs.parts.words.panel_words import room_words
from jambs.parts.words.ply_words import resawn_words, strips_first
from jambs.place.solve import place_windows
from jambs.sides import Side

RECORD = Path(__file__).with_name("recorded_words.json")
READ = {"date": "2026-06-01"}
KEPT = {"shop__planned_allowance": "1/4"}


def _read(**readings: Any) -> dict[str, Any]:
    return {"openings__0__measured": {**READ, **readings}}


def _bent(*left: str) -> dict[str, list[str]]:
    return {**{side: ["4 11/16"] * 3 for side in ("head", "sill", "right")}, "left": list(left)}


def _all(depth: str, count: int) -> dict[str, list[str]]:
    return {side: [depth] * count for side in ("head", "sill", "left", "right")}


FLARED = {"interior_trim__inside__flare": {"sides": "10 deg", "head": "15 deg"}, "interior_trim__inside__jamb": MITERED}
TOLD: Mapping[str, dict[str, Any]] = {
    **KITS,
    "left on": KEPT,
    "left on, flared": {**KEPT, **FLARED},
    "left on, on a stool": {**KEPT, "interior_trim__inside": STOOL},
    "left on, paneled": paneled(**KEPT),
    "left on, ganged": {**ganged(), **KEPT},
    "left on, half round bent": {
        **inside_only(arch_changes({"kind": "half round"}, 36, 60, curved="bent laminations")),
        **KEPT,
        "shop__springback": "5 %",
    },
    "left on, a shape that flares": {**KITS["raked and flared"], **KEPT},
    "paneled": paneled(),
    "paneled, legs through": paneled(**jointed("legs through")),
    "paneled on a stool": paneled(
        interior_trim__inside={**STOOL, "panels": PANELS}, interior_trim__inside__panels=None
    ),
    "paneled, panels rabbeted": paneled(
        interior_trim__inside__panels={**PANELS, "panel": {**PANEL, "thickness": "1/2", "tongue": "1/2"}}
    ),
    "paneled in a tapered wall": paneled(
        openings__0__measured={
            **READ,
            "interior_depth": {"left": ["7 1/2"] * 2, "right": ["7 7/16"] * 2, "head": ["7 1/2", "7 7/16"]},
        }
    ),
    "paneled and flared": paneled(**FLARED),
    "paneled, flared by two angles": paneled(
        interior_trim__inside__flare={"left": "10 deg", "right": "5 deg", "head": "15 deg"},
        interior_trim__inside__jamb=MITERED,
    ),
    "without boards": {"shop__boards": [{"nominal": "1x4", "stock": "oak"}]},
    "in narrow boards": {"shop__boards": [{"stock": "poplar", "thickness": "3/4", "width": "2"}]},
    "bowed wall": _read(interior_depth=_bent("4 11/16", "4 15/16", "4 11/16")),
    "hollow wall": _read(interior_depth=_bent("4 11/16", "4 1/2", "4 11/16")),
    "bowed wall on a stool": {
        "interior_trim__inside": STOOL,
        **_read(interior_depth=_bent("4 11/16", "4 15/16", "4 11/16")),
    },
    "deeper than planned": _read(interior_depth=_all("5 1/16", 2)),
    "shallower than planned": _read(interior_depth=_all("4 1/4", 2), exterior_depth=_all("1 3/4", 2)),
    "half read": _read(interior_depth={"left": ["4 5/8", "4 3/4"]}),
    "frame read out of square": _read(
        frame_width=["35 1/2", "35 5/8"], frame_height=["47 1/2", "47 11/16"], diagonals=["59 1/4", "59 7/16"]
    ),
    "faces read": _read(frame_face={"left": "2 7/16", "right": "2 9/16", "head": "2 1/2", "sill": "2 3/8"}),
    "without finish on": _read(interior_depth=_all("4 3/16", 2), wall_finish="no"),
    "metric, read": {
        **METRIC,
        **_read(interior_depth=_all("119", 2)),
    },
    "metric, glued up and left on": {
        **METRIC,
        "shop__planned_allowance": "6",
        "shop__boards": [{"stock": "pine", "thickness": "20", "width": "95"}],
    },
    "arch in a tapered wall": {
        **arch_changes({"kind": "segment arch", "rise": "8"}, 36, 60, curved="bent laminations"),
        **_read(
            interior_depth={
                "head": ["1 15/16", "2", "2 1/16"],
                "left": ["1 7/8", "1 15/16"],
                "right": ["1 15/16", "2 1/16"],
            }
        ),
    },
    "half round, bent": arch_changes({"kind": "half round"}, 36, 60, curved="bent laminations"),
    "returns between units": ganged(interior_trim__inside=LINED),
    "ganged, joined by a post": ganged(
        openings__0__mull={"post": "4", "joint": "1/4"}, openings__0__transom=[unit("64 1/2 x 16")]
    ),
    "ganged, read": ganged(
        openings__0__measured={**READ, "mull_edges": ["30 1/16", "48"], "mull_gaps": ["1/2", "9/16"]}
    ),
    "ganged heavily": ganged(
        openings__0__units=[unit("60 x 60"), unit("60 x 60")], openings__0__transom=[unit("120 1/2 x 16")]
    ),
    "boxed inside": boxed("inside"),
    "an old house": {"year_built": "1960"},
}


def told(name: str) -> dict[str, Any]:
    """Return all that is told of a kit of the record, as plain values."""
    return told_of(changed(**TOLD[name]))


def told_of(data: dict[str, Any]) -> dict[str, Any]:
    """Return all that is told of the kit of a job; of what cannot be made, why."""
    job = job_of(data)
    try:
        kit = make_kit(place_windows(job)[0], job)
    except FindingsError as error:
        return {"refused": plain([(one.code, one.sentence(job.units)) for one in error.findings])}
    lines = {f"{one.where.value} {one.name}, {one.position}": _of_part(one, kit, job) for one in kit.parts}
    members = {one.mark: _of_member(one, job) for part in kit.parts for one in part.frame_members}
    return {**_of_kit(kit, job), **_of_readings(kit, job), **lines, **members}


def _of_kit(kit: Kit, job: Job) -> dict[str, Any]:
    placement, spare = kit.placement, depth_range(kit.placement)
    clear = interior_clear(placement.opening, job.shop.grid)
    ahead = rips_ahead(kit, job, spare.worst)
    return {
        "findings": plain([(one.severity, one.subject, one.sentence(job.units)) for one in kit.findings]),
        "in the other units": sentences(kit.findings, Units.MM if job.units is Units.INCH else Units.INCH),
        "notes": plain([(one.kind, one.value, one.note) for one in kit.figures]),
        "assumed": plain(kit.assumed),
        "cautions": plain(kit.cautions),
        "corners": jamb_corner_words(kit),
        "backing": plain(backing_of(kit)),
        "milled ahead": plain(milling_lines(ahead, kit, job.units)),
        "ripped ahead": plain([(one.part.mark, one.width, one.leaves, one.wanted, one.short) for one in ahead]),
        "tolerance": plain((spare.planned, spare.pieces, spare.worst, spare.likely)),
        "box": plain((clear, box_gaps(clear, placement), steps_back(kit.frames))),
        "framing": plain(flared_framing(placement, job.shop.framers_grid)),
        "lined": plain((sorted(one.name for one in nailed_on(kit, Where.INTERIOR)), _lined(kit))),
        "shims": plain((placement.shims, placement.interior_depth, placement.exterior_depth)),
    }


def _lined(kit: Kit) -> Any:
    """Return what lines each side, which boards are cut to a finished opening, and what the casing's end covers."""
    trim, opening = kit.placement.opening.interior, kit.placement.opening
    casing = [inner_edge(trim), end_area(trim, 0.5), end_area(trim, 2.0)] if trim.is_cased else []
    to_finished = [one.mark for one in cut_to_finished(kit.parts, opening)]
    lap = wall_board_lap(kit.placement, trim.returns) if trim.returns else None
    return [[lining_of(trim, side) for side in Side], to_finished, casing, lap, is_framed_square(opening)]


def _of_readings(kit: Kit, job: Job) -> dict[str, Any]:
    measured = kit.placement.opening.measured
    sides = [one for one in (measured.interior_depth, measured.exterior_depth) if one] if measured else []
    return {
        "held": plain([(one.place, one.value, one.planned) for one in held_readings(kit.placement)]),
        "asked": plain(questions(kit.placement, units=job.units)),
        "edges": plain([(fitted_edges(one, job.shop), twist(one), one.origins) for one in sides]),
        "bends": plain([_bends(one, job) for one in sides]),
    }


def _bends(depths: SideDepths, job: Job) -> Any:
    """Return how the wall leaves the edges that are laid over it, and what to do."""
    edges = [(one, one.edge) for one in fitted_edges(depths, job.shop)]
    return [
        (one.words, edge.hollow, edge.deepest, edge.taper, edge.bend, edge.worst, remedy(edge)) for one, edge in edges
    ]


def _of_part(part: Part, kit: Kit, job: Job) -> Any:
    """Return the words of a board, where it is seen and where it goes in a picture, what is left on it."""
    opening = kit.placement.opening
    over = left_on(part, kit.placement, job.shop, job.boards)
    apart = taken_apart(part, size=max(opening.frame.width, opening.frame.height))
    form = bending_form(part) if part.is_laminated else None
    return plain(
        [
            (part.mark, part.told, part.identity, part.seat.ends, part.seat.outward, is_planned(part, opening)),
            _words(part, job),
            (seen_box(part), apart, over, list(end_slants(part).values()) if part.is_wood else ()),
            (form.size, form.center, form.springs, form.crown, form.spring_lines) if form else (),
            (_faces(part), _drawn(part)) if part.is_wood else (),
        ]
    )


def _drawn(part: Part) -> Any:
    """Return what drawings ask of a board: its section in three places, of a curved one its corners."""
    if len(part.arcs) == 2 or part.is_bent_in_one:
        return arch_corners(part)
    sizes, cuts = part.silhouettes.sizes, part.cuts
    sections = [edge_section(sizes, cuts, share * sizes.length) for share in (0.0, 0.5, 1.0)]
    planes = [one.plane(sizes) for one in cuts if isinstance(one, OnePlane)]
    return [sections, list(part.corners.values()), [saw_angles(one) for one in planes], part.is_plain, part.is_leaned]


def _of_member(part: Part, job: Job) -> Any:
    """Return the words of a stile, a rail or a panel, its cuts and its seat."""
    return plain([_words(part, job), part.cuts, part.seat, (part.blank.stock, part.blank.thickness, part.blank.board)])


def _words(part: Part, job: Job) -> list[Any]:
    """Return the words of a board."""
    grid, units = job.shop.grid, job.units
    wood = [ends_words(part, grid=grid), *edge_names(part), is_turned(part)] if part.is_wood else []
    plies = [resawn_words(part, units), strips_first(part, grid)] if part.is_laminated else []
    paneled = [room_words(part, grid)] if part.blank.panels else []
    texts = [board_words(part, units=units), unlisted_words(part, units=units), glue_words(part, grid=grid)]
    return [
        *texts,
        *work_words(part, grid=grid),
        *asides(part, grid=grid),
        *saw_notes(part, grid),
        *wood,
        *plies,
        *paneled,
    ]


def _faces(part: Part) -> list[float]:
    """Return sums over the flat faces of a board: how many, their corners, and how far these lie off three ways."""
    faces: list[Iterable[Any]] = list(board_faces(part))
    corners = [corner for face in faces for corner in face]
    return [len(faces), len(corners), *(sum(one[axis] for one in corners) for axis in range(3))]


def main() -> None:
    """Renew the record; a line that an earlier kit has too is given by the name of that one."""
    record = {name: told(name) for name in TOLD}
    first: dict[str, str] = {}
    for name, lines in record.items():
        for key, value in lines.items():
            known = first.setdefault(f"{key} {json.dumps(value)}", name)
            lines[key] = value if known == name else {"as": known}
    RECORD.write_text(as_text(record), encoding="utf-8")


def read_record() -> dict[str, dict[str, Any]]:
    """Read the record, every line as it is."""
    record: dict[str, dict[str, Any]] = json.loads(RECORD.read_text(encoding="utf-8"))
    for lines in record.values():
        for key, value in lines.items():
            lines[key] = record[value["as"]][key] if isinstance(value, dict) else value
    return record


if __name__ == "__main__":
    main()
