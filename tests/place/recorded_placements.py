"""Placements of which everything is on record: planes, depths, how the sash opens, reasons, findings, limits.

Windows of every kind at every rule, each as it is and, as sums, with every size moved by a few steps. What a limit is
and when a finding is said stands in the tables of findings and the tests by hand; the record holds the figures in
between. Renew it where something is meant to be told otherwise, and read the lines that are other ones now. Of a sum,
two listings tell what it is, made before and after:

    python tests/place/recorded_placements.py "awning #2"
    python tests/place/recorded_placements.py                  (renews the record)
"""

from __future__ import annotations

import dataclasses
import json
import sys
from collections.abc import Mapping
from itertools import islice
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from arches import arch_changes
from cases import METRIC, STOOL, changed, job_of
from gangs import ganged, unit
from panels import paneled
from position_cases import CASEMENT, CHOOSE, DOOR, LINER
from rounds import round_changes
from shaken import digest, plain, shaken
from test_swing_outside import OUT
from test_tilt_and_turn import TILT_AND_TURN

from jambs.findings import FindingsError
from jambs.job import Job, JobFaults
from jambs.job.models.openings import Opening
from jambs.length import Units
from jambs.place.choose import within_limits
from jambs.place.falls import fall_of, falls_words
from jambs.place.flares import flares_at
from jambs.place.frame_path import frame_path, path_at, rough_path, rough_size
from jambs.place.glass import glass_places, pane_area
from jambs.place.limits import ranges
from jambs.place.placement import Placement
from jambs.place.posts import posts_in
from jambs.place.sash import daylight, swing_seen, tilt_at, tilt_stay_deg
from jambs.place.shape_words import hole_words, outline_words
from jambs.place.solve import place_windows
from jambs.place.units import mull_frames
from jambs.sides import Side

RECORD = Path(__file__).with_name("recorded_placements.json")
SHAKES, TRIES = 3, 14
LEAST = {"openings__0__escape": "yes", "openings__0__sill_height": "30"}
TALL = {"openings__0__frame": "40 x 60", "openings__0__rough_opening": "40 1/2 x 60 1/2"}
FLARE = {"interior_trim__inside__flare": {"sides": "10 deg", "head": '1 1/2"'}}
SET_BACK = {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce", "set_back": "1/4"}


def _window(sash: str, **keys: str) -> dict[str, Any]:
    base = OUT if sash in ("awning", "casement out", "door out") else CASEMENT
    return {"windows__fixed": {**base, "sash": sash, **keys}}


def _shaped(shape: Any, frame: str, **more: Any) -> dict[str, Any]:
    return {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame, **more}


_DOOR_SASH = {"sash_thickness": "1 3/4", "sash_set_back": "0"}
JOBS: Mapping[str, dict[str, Any]] = {
    "fixed": {},
    "fixed, chosen": {"position": CHOOSE},
    "fixed, chosen for a board": {
        "position": CHOOSE,
        "walls__main__layers__4": {"material": "EPS", "thickness": "4 1/2"},
    },
    "fixed at an interior depth": {"position": {"interior_depth": "4"}},
    "fixed at an exterior depth": {"position": {"exterior_depth": "2"}},
    "fixed at equal depths": {"position": {"equal_depths": "yes"}},
    "fixed on a face": {"position": {"flange_on": "sheathing"}},
    "fixed, proud": {"position": {"share": "1"}},
    "fixed, far out": {"position": {"share": "3/4"}, "limits": {"overhang": "4"}},
    "fixed in a liner": {"walls__main__buck": LINER},
    "fixed, buck set back": {"walls__main__buck": SET_BACK},
    "fixed without a buck": {"walls__main__buck": None, "position": {"flange_on": "sheathing"}},
    "fixed with clips": {"windows__fixed__nailing_flange": "no", "windows__fixed__flange_width": None},
    "fixed, large and low": {**TALL, "openings__0__sill_height": "10", "openings__0__drop_outside": "80"},
    "fixed, wet and near a door": {
        "openings__0__sill_height": "20",
        "openings__0__wet_room": "yes",
        "openings__0__near_door": "yes",
        "openings__0__near_stairs": "yes",
    },
    "fixed, heavy": {"openings__0__weight": "160 lb"},
    "fixed and flared": FLARE,
    "fixed, stacked": {"position": CHOOSE, "interior_trim__inside__stack": "2"},
    "fixed, paneled": paneled(position=CHOOSE),
    "fixed without exterior trim": {"exterior_trim": None},
    "metric": METRIC,
    "metric, chosen": {**METRIC, "position": CHOOSE},
    "casement in": _window("casement in"),
    "casement in, chosen": {**_window("casement in"), "position": CHOOSE, **TALL},
    "casement in, hinged right": {**_window("casement in"), "openings__0__hinge": "right", **FLARE},
    "casement in, on a stool": {**_window("casement in"), "interior_trim__inside": STOOL},
    "casement in, way out": {**_window("casement in"), **LEAST, **TALL},
    "casement in, way out and chosen": {**_window("casement in"), **LEAST, **TALL, "position": CHOOSE},
    "casement out": {**_window("casement out"), "openings__0__hinge": "left"},
    "casement out, far in": {**_window("casement out"), "position": {"share": "1/4"}},
    "casement out, proud": {**_window("casement out"), "position": {"share": "1"}},
    "casement out, bare": {**_window("casement out"), "exterior_trim": None},
    "awning": _window("awning"),
    "awning, bare and far in": {**_window("awning"), "exterior_trim": None, "position": {"share": "1/4"}},
    "hopper": _window("hopper"),
    "tilt and turn": {"windows__fixed": TILT_AND_TURN, "interior_trim__inside__frame_reveal": "5/8"},
    "tilt and turn, chosen": {"windows__fixed": TILT_AND_TURN, "position": CHOOSE},
    "double hung, way out": {**_window("double hung"), **LEAST, **TALL},
    "double hung, stated": {**_window("double hung", meeting_rail="1 1/2"), **LEAST, **TALL},
    "slider, way out": {
        **_window("slider"),
        **LEAST,
        "openings__0__frame": "60 x 48",
        "openings__0__rough_opening": None,
    },
    "door in": {**_window("door in", **_DOOR_SASH), **DOOR, "openings__0__hinge": "left"},
    "door out": {**_window("door out", **_DOOR_SASH), **DOOR, "exterior_trim__outside__sill": None},
    "ganged": ganged(),
    "ganged by posts": ganged(
        openings__0__mull={"post": "4", "joint": "1/4"},
        openings__0__transom=[unit("64 1/2 x 16")],
        openings__0__transom_bar={"post": "3 1/2", "joint": "3/8"},
    ),
    "ganged casements": {**ganged(**_window("casement in")), "openings__0__escape": "yes", "position": CHOOSE},
    "raked": _shaped({"kind": "raked", "left": "30", "right": "48"}, "24 x 48"),
    "gable": _shaped({"kind": "gable", "sides": "30"}, "36 x 48"),
    "gable, peak aside": _shaped({"kind": "gable", "sides": "30", "peak_from_left": "10"}, "36 x 48"),
    "octagon": _shaped("octagon", "30 x 30", exterior_trim__outside__sill=None),
    "full round": round_changes("full round", 36, 36),
    "quarter round": round_changes({"kind": "quarter round", "high_side": "right"}, 36, 36),
    "triangle": round_changes({"kind": "triangle", "peak_from_left": "12"}, 48, 30),
    "ellipse arch": arch_changes({"kind": "ellipse arch", "rise": "14"}, 40, 40),
    "half round": arch_changes({"kind": "half round"}, 36, 60),
    "half round without legs": round_changes("half round", 36, 18),
    "at a position of its own": {"openings__0__position": {"interior_depth": "5"}},
    "fixed, clashing": {"position": CHOOSE, "limits": {"least_interior_depth": "4", "overhang": "1"}},
    "fixed, chosen without a buck": {"position": CHOOSE, "walls__main__buck": None},
    "fixed on a liner and a framing grid": {"walls__main__buck": LINER, "shop__framing_grid": "1/2"},
    "fixed with a framing grid": {"shop__framing_grid": "1/4", "openings__0__rough_opening": None},
    "fixed past the trim plane": {"position": {"interior_depth": "9"}},
    "fixed, too shallow": {"position": {"interior_depth": "1/2"}},
    "fixed, proud inside": {"position": {"interior_depth": "-1"}},
    "fixed, flange not stated": {"windows__fixed__flange_width": None},
    "casement in, cannot open": _window("casement in", sash_face="1 3/4"),
    "casement in, sizes not stated": {"windows__fixed__sash": "casement in"},
    "casement in, handle over the stool": {
        "windows__fixed": {**CASEMENT, "handle": {"projection": "1 1/2", "below_sill_face": "1/4"}},
        "interior_trim__inside": STOOL,
    },
    "casement in, over a fall": {
        **_window("casement in"),
        "openings__0__sill_height": "20",
        "openings__0__drop_outside": "90",
    },
    "casement in, low over the ground": {
        **_window("casement in"),
        "openings__0__sill_height": "20",
        "openings__0__drop_outside": "40",
    },
    "casement in, of no height": {**_window("casement in"), "openings__0__sill_height": None},
    "casement in, too small a way out": {**_window("casement in"), **LEAST},
    "tilt and turn, stops short": {"windows__fixed": TILT_AND_TURN},
    "half round in a liner": {
        **arch_changes("half round", 36, 60),
        "walls__main__buck": LINER,
        "position": {"share": "1/2"},
    },
    "door in a liner": {
        **_window("door in", **_DOOR_SASH),
        **DOOR,
        "walls__main__buck": LINER,
        "shop__framing_grid": "1/2",
    },
    "segment arch": arch_changes({"kind": "segment arch", "rise": "8"}, 36, 60),
}


def job_named(name: str) -> Job:
    """Read a job of the record: ``awning`` as it is, ``awning #3`` with every size moved."""
    of, _, number = name.partition(" #")
    data = changed(**JOBS[of])
    return job_of(shaken(data, int(number)) if number else data)


def told(name: str) -> Any:
    """Return all that is told of a placement, as plain values; of one that cannot be, why."""
    job = job_named(name)
    try:
        (found,) = place_windows(job)
    except FindingsError as error:
        return ["refused", _said(error.findings, job)]
    return [_placed(found, job), _sash(found, job), _limits(found, job), _around(found, job)]


def kept(name: str) -> Any:
    """Return what is kept of it: of one whose sizes were moved, what it comes to."""
    return digest(told(name)) if " #" in name else told(name)


def _said(found: Any, job: Job) -> list[Any]:
    return [[getattr(one, "severity", None), one.code, one.sentence(job.units)] for one in found]


def _placed(found: Placement, job: Job) -> Any:
    weighed = [(*_fields(one, ("against",)), _said(one.against, job)) for one in found.alternatives]
    left_out = ("opening", "planes", "reasons", "findings", "asked", "alternatives", "units", "off_by_grid")
    return plain(
        [
            _fields(found, left_out),
            (found.overhang, found.outside_edge, found.inside_edge, found.tightest and found.tightest[1]),
            [_said(some, job) for some in (found.reasons, found.findings, found.asked)],
            weighed,
            [_fields(one, ("opening",)) for one in found.units],
        ]
    )


def _sash(found: Placement, job: Job) -> Any:
    """Return what the sash of each unit leaves open, and how it is seen open by some angles."""
    openings = [one.opening for one in found.units] or [found.opening]
    return plain(
        [[daylight(one), pane_area(one), glass_places(one), fall_of(one), _swung(one, found)] for one in openings]
    )


def _swung(opening: Opening, found: Placement) -> Any:
    tilted = tilt_at(opening, interior_depth=found.interior_depth)
    stay = tilt_stay_deg(opening) if tilted else None
    if not opening.window.sash.swings:
        return [tilted, stay]
    seen = swing_seen(
        opening,
        interior_depth=found.interior_depth,
        exterior_depth=found.exterior_depth,
        cladding_depth=found.planes.cladding_depth,
        degrees=30.0,
    )
    return [tilted, stay, seen]


def _limits(found: Placement, job: Job) -> Any:
    every = [ranges(found.opening, found.planes, job, proud_outside=proud) for proud in (False, True)]
    missed = [[one.miss(found.flange_plane), one.low_end, one.high_bound] for some in every for one in some]
    try:
        within: Any = within_limits([found.opening], found.planes, job)
    except FindingsError as error:
        within = _said(error.findings, job)
    return plain([every, missed, within])


def _around(found: Placement, job: Job) -> Any:
    flares = flares_at(found.opening.interior, found.interior_depth)
    shape = found.opening.shape
    words: list[Any] = []
    if shape:
        words = [outline_words(frame_path(found.opening), shape.kind, one) for one in Units]
        words.append(hole_words(rough_path(found), shape.kind, job.shop.framers_grid))
        words.append(len(path_at(found.opening, left=1.0, right=30.0, bottom=1.5, top=28.0)))
    angles = [(flares.at(side), flares.out(side, found.interior_depth)) for side in Side]
    posts = [(one, one.is_bar, one.width, one.length) for one in posts_in(found.opening, found.shims)]
    mulls = [mull_frames(found.opening, from_outside=outside) for outside in (False, True)]
    return plain([words, angles, rough_size(found), posts, mulls, falls_words([found.opening])])


def _fields(value: Any, left_out: tuple[str, ...]) -> list[Any]:
    return [getattr(value, one.name) for one in dataclasses.fields(value) if one.name not in left_out]


def _can_be_read(name: str) -> bool:
    try:
        job_named(name)
    except JobFaults:
        return False
    return True


def main() -> None:
    """Renew the record, or list one placement."""
    if len(sys.argv) > 1:
        print(json.dumps(told(sys.argv[1]), indent=1))
        return
    lines = []
    for of in JOBS:
        moved = (name for number in range(1, TRIES) if _can_be_read(name := f"{of} #{number}"))
        lines += [f" {json.dumps(name)}: {json.dumps(kept(name))}" for name in (of, *islice(moved, SHAKES))]
    RECORD.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
