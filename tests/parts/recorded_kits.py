"""Kits whose boards are on record, one of everything that is made: sizes, cuts, seats and figures.

A record proves nothing of itself. It is written only when the boards of every kit close on each other in the solid,
sawn again from their cut lists with nothing shared but these (``fit_report``):

    python tests/parts/recorded_kits.py

and it then holds what was proved where no solid is made. Renew it where a size is meant to change, and read the lines
that are other ones now.
"""

from __future__ import annotations

import dataclasses
import json
import sys
from collections.abc import Iterable, Mapping
from enum import Enum
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from arches import arch_changes
from cases import BASE, METRIC, STOOL, changed, job_of
from clad import DEEP as REVEAL
from clad import clad, mitered
from flared_triangles import flared_triangle_changes
from flat_segments import SEGMENT as ON_LEGS
from flat_segments import all_round, flat_changes
from gangs import boxed, ganged, unit
from metal import in_metal, lined
from moldings import molded_trim
from part_cases import THREE_SIDED
from rarer_kits import RARER
from rounds import inside_only, round_changes
from sills_under_shapes import SILL
from test_built_up_by_hand import BAND, DOOR, HEAD, ON_STOOL, ROSETTES
from test_crown_by_hand import CROWN, trim
from test_returns_by_hand import BARE, BOARDS, RETURNS, WITH_STOOL, WITH_TILE
from trimmed_as_one import side_by_side

from jambs.geometry import Point
from jambs.job import Job
from jambs.job.models.shop import Board
from jambs.parts.board.arrises import arris_lengths
from jambs.parts.board.part import Part
from jambs.parts.board.touches import ReturnBend
from jambs.parts.board.worked_faces import BoardFace, WorkedFace, worked_face
from jambs.parts.kit.kit import FittedSide, Kit
from jambs.parts.make import make_kit
from jambs.parts.trim.casing_plane import hung
from jambs.place.solve import place_windows

RECORD = Path(__file__).with_name("recorded_kits.json")
DIGITS = 6
"""Sizes are kept to a millionth of an inch: less than that is rounding."""
MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
RAKED = {"kind": "raked", "left": "30", "right": "48"}
GABLE = {"kind": "gable", "sides": "30"}
PLINTHS = {"width": "4", "height": "8", "thickness": "1", "stock": "poplar"}


def _shaped(shape: Any, frame: str, **more: Any) -> dict[str, Any]:
    return {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame, **more}


def _flared(**flare: str) -> dict[str, Any]:
    return {"interior_trim__inside__flare": flare, "interior_trim__inside__jamb": MITERED}


def _read(**depths: Any) -> dict[str, Any]:
    return {"openings__0__measured": {"date": "2026-06-01", **depths}}


def _corners(*depths: str) -> dict[str, str]:
    return dict(zip(("head_left", "head_right", "sill_left", "sill_right"), depths, strict=True))


DEEP = {"position": {"share": "1"}}
TAPERED = {"interior_depth": _corners("4 3/4", "4 5/8", "4 1/2", "4 11/16")}
FRAME = {"frame_width": ["35 9/16", "35 1/2"], "frame_height": ["47 1/2", "47 7/16"]}
OUTSIDE = {"exterior_depth": _corners("1 1/2", "1 5/8", "1 7/16", "1 1/2")}
FLARED_OUT = {"exterior_trim__outside__flare": {"sides": "15 deg", "head": "10 deg"}}

BUILT_ON_STOOL: dict[str, Any] = {"head": HEAD, "backband": BAND}
NEARLY_LEVEL = {"interior_depth": _corners("4 3/4", "4 11/16", "4 5/8", "4 5/8")}
LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
PLASTER = {**BOARDS, "wall_board": "behind the return", "frame_bead": {"leg": "3/4", "nose": "1/8"}}
BUTTED = {**BASE["interior_trim"]["inside"]["casing"], "corner": "butt", "overhang": "3/8", "back_bevel_deg": "3"}
MITERED_OUTSIDE = {**BASE["exterior_trim"]["outside"]["casing"], "corner": "miter", "back_bevel_deg": "2"}
del MITERED_OUTSIDE["overhang"]
CLIPPED = {"nailing_flange": "no", "jamb_depth": "4 9/16", "frame_face": "2 1/2", "sash": "fixed"}
METRIC_BOARDS = [{"stock": "pine", "thickness": thick, "width": "195", "lengths": ["3000"]} for thick in ("20", "45")]
OUTSIDE_IN_MM: dict[str, Any] = {
    "jamb": {"thickness": "20", "stock": "larch"},
    "frame_reveal": "6",
    "sealant_joint": "6",
    "casing_reveal": "5",
    "casing": {"width": "95", "thickness": "22", "stock": "larch", "corner": "butt", "overhang": "12"},
    "sill": {
        "thickness": "40",
        "stock": "larch",
        "slope": "8 deg",
        "nosing": "30",
        "horn": "25",
        "drip_kerf": {"width": "6", "depth": "6", "set_back": "12"},
    },
    "head_flashing": {"past_casing": "12", "upstand": "75", "drip": "12", "gap_to_cladding": "10"},
}


def jointed(joint: str, **more: Any) -> dict[str, Any]:
    return {"interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": joint}, **more}


def _metric_arch(shape: Any, frame: str, curved: str) -> dict[str, Any]:
    jamb = {"thickness": "20", "stock": "pine", "joint": "miter", "curved": curved}
    more = {"shop__boards": METRIC_BOARDS, "position": "on the sheathing", "interior_trim__inside__jamb": jamb}
    return {**METRIC, **_shaped(shape, frame, **more)}


def _trimmed_as_one(count: int, wall: str) -> dict[str, Any]:
    """Return the changes of a row of windows; its kit is that of the leftmost, which has the boards over all."""
    data = side_by_side(count, wall)
    return {key: data[key] for key in ("openings", "interior_trim", "exterior_trim")}


OVER_MULLS = {"thickness": "3/4", "stock": "poplar"}
ON_STOOL_WITH_MULLS: dict[str, Any] = {"interior_trim__inside": {**STOOL, "mull_casing": OVER_MULLS}}
DEEPER_OUTSIDE = _corners("4 1/4", "4 3/8", "4 1/4", "4 7/16")
KITS: Mapping[str, dict[str, Any]] = {
    "picture framed": {},
    "mitered, legs through": {
        "interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "legs through"}
    },
    "on a stool": {"interior_trim__inside": STOOL},
    "without exterior trim": {"exterior_trim": None},
    "without exterior sill": {"exterior_trim__outside__sill": None},
    "metal returns on the cladding": {"exterior_trim__outside": lined()},
    "metal returns behind the cladding, read": {
        "exterior_trim__outside": lined(cladding="over the leg", hem=None),
        **_read(**OUTSIDE),
    },
    "flared outside": {"exterior_trim__outside__flare": {"sides": "15 deg", "head": "10 deg"}},
    "flared outside, read": {"exterior_trim__outside__flare": {"left": "1 in", "head": "10 deg"}, **_read(**OUTSIDE)},
    "in a liner": {"walls__main__buck": {"kind": "liner", "thickness": "3/4", "stock": "plywood"}},
    "proud outside": DEEP,
    "door": {**DOOR, "interior_trim__inside": THREE_SIDED},
    "metric": {**METRIC, "position": {"share": "0.4"}},
    "tapered wall": _read(**TAPERED),
    "tapered wall, frame and both sides read": _read(**TAPERED, **FRAME, **OUTSIDE),
    "tapered wall on a stool": {"interior_trim__inside": STOOL, **_read(**TAPERED)},
    "glued up": {"shop__boards": [{"nominal": "1x4", "stock": "poplar"}]},
    "molded": {"interior_trim__inside": molded_trim()},
    "stacked": {**DEEP, "interior_trim__inside__stack": "3"},
    "stacked in a tapered wall": {
        **DEEP,
        "interior_trim__inside__stack": "2",
        **_read(interior_depth=_corners("7 3/4", "7 5/8", "7 1/2", "7 11/16")),
    },
    "flared": _flared(left="5 deg", right="10 deg", head="15 deg", sill="20 deg"),
    "flared in a tapered wall": {**_flared(sides="10 deg", head="15 deg"), **_read(**TAPERED)},
    "flared on a stool": {
        "interior_trim__inside": {**STOOL, "jamb": MITERED, "flare": {"sides": "10 deg", "head": "15 deg"}}
    },
    "returns": {"interior_trim__inside": RETURNS},
    "returns and stool": {"interior_trim__inside": WITH_STOOL},
    "returns and tile": {"interior_trim__inside": WITH_TILE},
    "bare jambs": {"interior_trim__inside": BARE},
    "built up": {"interior_trim__inside": {**ON_STOOL, "built_up": BUILT_ON_STOOL}},
    "crown": {"interior_trim__inside": trim(CROWN)},
    "rosettes": {"interior_trim__inside": {**ON_STOOL, "built_up": {"rosettes": ROSETTES}}},
    "plinths": {
        **DOOR,
        "interior_trim__inside": {**THREE_SIDED, "casing": ON_STOOL["casing"], "built_up": {"plinths": PLINTHS}},
    },
    "octagon": _shaped("octagon", "30 x 30", exterior_trim__outside__sill=None),
    "raked": _shaped(RAKED, "24 x 48"),
    "raked on a stool": _shaped(RAKED, "24 x 48", interior_trim__inside=STOOL),
    "raked and flared": _shaped(RAKED, "24 x 48", **_flared(sides="10 deg", head="15 deg")),
    "gable": _shaped(GABLE, "36 x 48"),
    "full round": round_changes({"kind": "full round"}, 36, 36),
    "quarter round": round_changes({"kind": "quarter round", "high_side": "right"}, 36, 36),
    "triangle": round_changes({"kind": "triangle", "peak_from_left": "12"}, 48, 30),
    "ellipse arch": arch_changes({"kind": "ellipse arch", "rise": "14"}, 40, 40),
    "half round": arch_changes({"kind": "half round"}, 36, 60),
    "segment arch, bent": arch_changes({"kind": "segment arch", "rise": "8"}, 36, 60, curved="bent laminations"),
    "half round on a sill": round_changes({"kind": "half round"}, 36, 18, exterior_trim__outside__sill=SILL),
    "triangle on a sill": round_changes({"kind": "triangle"}, 48, 30, exterior_trim__outside__sill=SILL),
    "full round on a buck": round_changes({"kind": "full round"}, 36, 36, position={"share": "1/2"}),
    "triangle, flared on a stool": flared_triangle_changes("16", head="15 deg"),
    "ganged": ganged(),
    "ganged and flared": {**ganged(), **_flared(sides="10 deg", head="15 deg", sill="5 deg")},
    "ganged in three rows": ganged(
        openings__0__transom=None,
        openings__0__transoms=[[unit("30 x 16"), unit("30 x 16")], [unit("60 1/2 x 12")]],
    ),
    "boxed": boxed(),
    "boxed in a tapered wall": boxed(**_read(**TAPERED)),
    "ellipse arch, bent in one": arch_changes({"kind": "ellipse arch", "rise": "14"}, 40, 40, curved="bent in one"),
    "full round, bent": round_changes({"kind": "full round"}, 36, 36, curved="bent laminations"),
    "quarter round, bent": round_changes(
        {"kind": "quarter round", "high_side": "left"}, 36, 36, curved="bent laminations"
    ),
    "metric segment arch, bent": _metric_arch(
        {"kind": "segment arch", "rise": "200"}, "900 x 1500", "bent laminations"
    ),
    "metric ellipse arch, bent in one": _metric_arch(
        {"kind": "ellipse arch", "rise": "350"}, "1000 x 1100", "bent in one"
    ),
    "metric half round": _metric_arch({"kind": "half round"}, "900 x 1500", "sawn segments"),
    "half round, read": {
        **arch_changes({"kind": "half round"}, 36, 60),
        **_read(
            interior_depth={
                "head": ["1 15/16", "2", "2 1/16"],
                "left": ["1 7/8", "1 15/16"],
                "right": ["1 15/16", "2 1/16"],
            },
            exterior_depth={"head": ["3 1/2", "3 5/8", "3 9/16"], "left": ["3 1/2"] * 2, "right": ["3 7/16", "3 9/16"]},
        ),
    },
    "mitered outside, butted inside": {
        "exterior_trim__outside__casing": MITERED_OUTSIDE,
        "exterior_trim__outside__sill__under_frame": "1/2",
        "interior_trim__inside__casing": BUTTED,
    },
    "on clips in a liner": {"windows__fixed": {**CLIPPED, "frame_projection": "1 1/4"}, "walls__main__buck": LINER},
    "rabbeted stool, returned apron": {
        "windows__fixed__frame_face": {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "3/4"},
        "openings__0__rough_opening": None,
        "shop__horn_play": "1/16",
        "interior_trim__inside": {
            **STOOL,
            "stool": {**STOOL["stool"], "rabbet": "1/4"},
            "apron": {**STOOL["apron"], "ends": "returned"},
        },
    },
    "flared by lengths, legs through": jointed(
        "legs through", interior_trim__inside__flare={"left": "1 in", "right": "3/4 in", "head": "1 1/2 in"}
    ),
    "flared, head over legs": jointed(
        "head over legs", interior_trim__inside__flare={"sides": "12 deg", "head": "8 deg", "sill": "6 deg"}
    ),
    "flared, rabbeted": {"interior_trim__inside__flare": {"sides": "10 deg", "head": "5 deg", "sill": "5 deg"}},
    "flared in a liner": {**_flared(sides="3 deg", head="2 deg"), "walls__main__buck": LINER},
    "plaster returns": {"interior_trim__inside": {**RETURNS, "returns": PLASTER}},
    "plaster returns and stool, read": {
        "interior_trim__inside": {**WITH_STOOL, "returns": PLASTER},
        **_read(**NEARLY_LEVEL),
    },
    "returns and stool, read": {"interior_trim__inside": WITH_STOOL, **_read(**NEARLY_LEVEL)},
    "returns and tile, read": {"interior_trim__inside": WITH_TILE, **_read(**NEARLY_LEVEL)},
    "trimless bead": {"interior_trim__inside": {**BARE, "wall_edge": {"kind": "trimless bead", "leg": "1"}}},
    "gable, read": _shaped(
        GABLE,
        "36 x 48",
        **_read(
            interior_depth={
                "head": ["4 13/16", "4 27/32", "4 7/8", "4 27/32", "4 13/16"],
                "left": ["4 11/16", "4 3/4", "4 13/16"],
                "right": ["4 11/16", "4 3/4", "4 13/16"],
                "sill": ["4 11/16", "-", "4 11/16"],
            },
            exterior_depth={
                "head": ["1 5/8", "1 3/4", "1 9/16"],
                "left": ["1 1/2", "1 5/8"],
                "right": ["1 7/16", "1 9/16"],
                "sill": ["1 1/2", "1 7/16"],
            },
        ),
    ),
    "gable in a liner": _shaped(GABLE, "36 x 48", walls__main__buck=LINER),
    "gable, flared": _shaped(GABLE, "36 x 48", **_flared(sides="10 deg", head="15 deg")),
    "raked, legs through": _shaped(RAKED, "24 x 48", **jointed("legs through")),
    "raked, butted": _shaped(RAKED, "24 x 48", **jointed("head over legs")),
    "raked and flared, read": _shaped(
        RAKED,
        "24 x 48",
        **_flared(sides="10 deg", head="15 deg"),
        **_read(
            interior_depth={
                "head": ["4 3/4", "4 13/16"],
                "left": ["4 11/16", "4 3/4"],
                "right": ["4 11/16", "4 13/16"],
                "sill": ["4 11/16", "4 11/16"],
            }
        ),
    ),
    "octagon, butted": _shaped("octagon", "30 x 30", **jointed("legs through", exterior_trim__outside__sill=None)),
    "triangle, read": {
        **round_changes({"kind": "triangle", "peak_from_left": "12"}, 48, 30),
        **_read(interior_depth={"head": ["1 15/16", "2", "1 7/8"], "sill": ["1 15/16", "1 7/8"]}),
    },
    "boxed outside": boxed("outside"),
    "boxed, read outside": boxed(**_read(exterior_depth=_corners("1 1/2", "1 5/8", "1 7/16", "1 9/16"))),
    "boxed on a stool": boxed(**ON_STOOL_WITH_MULLS),
    "ganged on a stool, read": ganged(
        **ON_STOOL_WITH_MULLS,
        **_read(**NEARLY_LEVEL, exterior_depth=_corners("1 1/2", "1 9/16", "1 7/16", "1 1/2")),
    ),
    "metric, trimmed outside": {**METRIC, "exterior_trim": {"outside": OUTSIDE_IN_MM}},
    "metric, stacked": {**METRIC, **DEEP, "interior_trim__inside__stack": "2"},
    "built up and flared": {
        "interior_trim__inside": {
            **ON_STOOL,
            "jamb": MITERED,
            "flare": {"sides": "10 deg"},
            "built_up": BUILT_ON_STOOL,
        }
    },
    "built up, read": {"interior_trim__inside": {**ON_STOOL, "built_up": BUILT_ON_STOOL}, **_read(**NEARLY_LEVEL)},
    "backband all round": {"interior_trim__inside__built_up": {"backband": BAND}},
    "octagon, casing beveled": _shaped(
        "octagon", "30 x 30", exterior_trim__outside__sill=None, interior_trim__inside__casing__back_bevel_deg="3"
    ),
    "glued up by settings of its own": {
        "shop__boards": [{"nominal": "1x4", "stock": "poplar"}],
        "shop__rip_kerf": "5/32",
        "shop__far_edge_allowance": "1/16",
        "shop__jointing_allowance": "3/64",
        "shop__glue_up_over": "1 1/2",
    },
    "door, read": {**DOOR, "interior_trim__inside": THREE_SIDED, **_read(**NEARLY_LEVEL)},
    "two trimmed as one": _trimmed_as_one(2, "5 1/2"),
    "three trimmed as one": _trimmed_as_one(3, "7"),
    "raked, flared outside": _shaped(RAKED, "24 x 48", **FLARED_OUT),
    "gable, flared outside": _shaped(GABLE, "36 x 48", **FLARED_OUT),
    "octagon, flared outside": _shaped("octagon", "30 x 30", exterior_trim__outside__sill=None, **FLARED_OUT),
    "triangle on a sill, flared outside": round_changes(
        {"kind": "triangle"}, 48, 30, exterior_trim__outside__sill=SILL, **FLARED_OUT
    ),
    "ganged, flared outside, read": {**ganged(), **FLARED_OUT, **_read(**OUTSIDE)},
    "boxed, flared outside": {**boxed(), **FLARED_OUT},
    "ganged in metal": in_metal(ganged()),
    "raked in metal": _shaped(RAKED, "24 x 48", exterior_trim__outside=lined()),
    "gable in metal": _shaped(GABLE, "36 x 48", exterior_trim__outside=lined()),
    "octagon in metal": _shaped("octagon", "30 x 30", exterior_trim__outside=lined(sill=None)),
    **RARER,
    "flared round an arch in flat segments": inside_only(flat_changes("segment arch")),
    "flared outside round an arch on a sill": {
        **round_changes(
            ON_LEGS, 36, 60, exterior_trim__outside__sill=SILL, exterior_trim__outside__flare=all_round("15 deg")
        ),
        "interior_trim__inside__jamb__curved": "sawn segments",
        "exterior_trim__outside__jamb__curved": "flat segments",
    },
    "metal returns round an arch": {
        **{key: one for key, one in round_changes(ON_LEGS, 36, 60).items() if not key.startswith("exterior_trim")},
        "exterior_trim__outside": lined(curved="flat segments"),
    },
    "cladding returned to corner boards": {**REVEAL, "exterior_trim__outside": clad()},
    "cladding returned to corner boards in courses, read": {
        **REVEAL,
        "exterior_trim__outside": clad(laid="in courses"),
        **_read(exterior_depth=DEEPER_OUTSIDE),
    },
    "cladding returned and mitered": {**REVEAL, "exterior_trim__outside": mitered()},
    "cladding returned and mitered, read": {
        **REVEAL,
        "exterior_trim__outside": mitered(),
        **_read(exterior_depth=DEEPER_OUTSIDE),
    },
    "cladding returned over one strip": {
        **REVEAL,
        "exterior_trim__outside": clad(furring={"thickness": "3/4", "width": "3 1/2", "stock": "spruce"}),
    },
    "ganged, cladding returned": {
        **{key: one for key, one in ganged().items() if not key.startswith("exterior_trim")},
        **REVEAL,
        "exterior_trim__outside": {**clad(), "mull_casing": OVER_MULLS},
    },
    "door, cladding returned": {
        **DOOR,
        "interior_trim__inside": THREE_SIDED,
        **REVEAL,
        "exterior_trim": {"outside": {key: one for key, one in clad().items() if key != "sill"}},
    },
}


def made(name: str) -> tuple[Kit, Job]:
    """Make a kit of the record."""
    job = job_of(changed(**KITS[name]))
    return make_kit(place_windows(job)[0], job), job


def recorded(kit: Kit) -> dict[str, Any]:
    """Return what is kept of a kit, as plain values: of each board a line, and what is said of all of them."""
    plane = hung(kit)
    rest = {
        "figures": {one.kind.name: plain(one.value) for one in kit.figures},
        "clear": plain((kit.clear_width, kit.clear_height, kit.room)),
        "sides": plain(kit.sides),
        "frames": plain([(one.clear, one.edge, one.proud, one.width, one.least_depth) for one in kit.frames]),
        "drywall": plain(kit.drywall),
        "hung": plain(plane.seats),
        "slack": plain((plane.inside, plane.outside)),
    }
    return {**{f"{one.where.value} {one.name}, {one.position}": _board(one) for one in kit.parts}, **rest}


def _board(part: Part) -> Any:
    """Return its sizes and what it comes out of, its cuts, its seat, and what follows from the cuts."""
    blank, faces = part.blank, (worked_face(part, face) for face in BoardFace) if part.is_wood else ()
    lengths = arris_lengths(part.silhouettes.sizes, part.cuts) if part.is_wood else {}
    return plain(
        [
            (part.length, part.width, part.thickness, part.member, part.members, part.runs, part.in_place_rise),
            (blank.stock, blank.thickness, blank.board, blank.strips, blank.strip_length, blank.plies, blank.crew),
            part.cuts,
            part.touches,
            part.in_place,
            part.seat,
            [_sums(part.outline), _sums(part.profile), part.pockets, tuple(lengths.values())],
            [_worked(face) for face in faces],
        ]
    )


def _worked(face: WorkedFace) -> list[Any]:
    pockets = [(_sums(one.outline), one.depth) for one in face.pockets]
    return [_sums(face.outline), pockets, [(_sums(one.outline), one.angle_deg) for one in face.bevels]]


def _sums(points: Iterable[Point]) -> list[float]:
    """Return sums over an outline in the place of its points: how many, and how far they lie from both ends."""
    found = list(points)
    return [len(found), *(sum(point[axis] for point in found) for axis in (0, 1)), sum(x * y for x, y in found)]


def plain(value: Any) -> Any:
    """Return a value as JSON has it, to a millionth."""
    if isinstance(value, Board):
        return value.nominal
    if isinstance(value, Enum):
        return value.name
    if isinstance(value, float):
        return round(value, DIGITS) + 0.0
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        shown = [plain(getattr(value, one.name)) for one in dataclasses.fields(value) if not _is_bare(value, one.name)]
        return [type(value).__name__, *shown]
    if isinstance(value, Mapping):
        return [[plain(key), plain(one)] for key, one in value.items()]
    if isinstance(value, list | tuple):
        return [plain(one) for one in value]
    return value


def _is_bare(value: Any, name: str) -> bool:
    """Say whether a side that is one edge would be told as parted into none, or metal at a square corner as slanted."""
    if isinstance(value, ReturnBend):
        return name == "corners" and value.corners is None
    return isinstance(value, FittedSide) and name == "runs" and not value.runs


def as_text(record: Mapping[str, Mapping[str, Any]]) -> str:
    """Write a line for every board, so that a change shows in it."""
    kits = []
    for name, lines in record.items():
        rows = ",\n".join(f"  {json.dumps(key)}: {json.dumps(value)}" for key, value in lines.items())
        kits.append(f" {json.dumps(name)}: {{\n{rows}\n }}")
    return "{\n" + ",\n".join(kits) + "\n}\n"


def main() -> None:
    """Renew the record, if every kit closes."""
    from jambs.solids import fit_report, model_kit

    record = {}
    for name in KITS:
        kit, job = made(name)
        faults = fit_report(model_kit(kit, job)).faults
        if faults:
            raise SystemExit(f"{name} does not close, the record stays as it was: {faults}")
        record[name] = recorded(kit)
        print(f"{name}: {len(kit.parts)} parts close")
    RECORD.write_text(as_text(record), encoding="utf-8")


if __name__ == "__main__":
    main()
