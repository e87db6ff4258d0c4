"""Small jobs for the tests: one base job as plain data, changed by each test, read as the user's would be."""

from __future__ import annotations

import copy
import tempfile
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml
from hypothesis import settings
from said import sentences

from jambs.job import Job, read_job
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.placement import Placement
from jambs.place.solve import place_windows

BASE: dict[str, Any] = {
    "job": "test",
    "units": "inch",
    "shop": {
        "grid": "1/32",
        "kerf": "1/8",
        "proud": "1/32",
        "shim_space": "1/4",
        "edge_allowance": "1/8",
        "taper_tolerance": "1/32",
        "boards": [
            {"nominal": "1x4", "stock": "poplar"},
            {"nominal": "1x6", "stock": "poplar"},
            {"nominal": "1x8", "stock": "poplar"},
        ],
    },
    "walls": {
        "main": {
            "layers": [
                "gypsum board 1/2",
                {"material": "stud 2x6", "spacing": "16"},
                "plywood 1/2",
                {"material": "EPS", "thickness": "2"},
                {"material": "EPS", "thickness": "3"},
                {"material": "plywood 1/2", "role": "outer sheathing"},
                {"material": "wood shingles", "thickness": "3/4"},
            ],
            "buck": {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce"},
        }
    },
    "windows": {
        "fixed": {
            "jamb_depth": "4 9/16",
            "frame_projection": "1 1/4",
            "frame_face": "2 1/2",
            "nailing_flange": "yes",
            "flange_width": "1 1/4",
            "sash": "fixed",
        }
    },
    "interior_trim": {
        "inside": {
            "style": "picture framed",
            "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "rabbet", "rabbet_depth": "3/8"},
            "frame_reveal": "1/8",
            "casing_reveal": "3/16",
            "casing": {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "miter"},
        }
    },
    "exterior_trim": {
        "outside": {
            "jamb": {"thickness": "3/4", "stock": "cedar"},
            "frame_reveal": "1/4",
            "sealant_joint": "1/4",
            "casing_reveal": "1/4",
            "casing": {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "butt", "overhang": "1/2"},
            "sill": {
                "thickness": "1 1/2",
                "stock": "cedar",
                "slope": "10 deg",
                "nosing": "1 1/4",
                "horn": "1",
                "drip_kerf": {"width": "1/4", "depth": "1/4", "set_back": "1/2"},
            },
            "head_flashing": {"past_casing": "1/2", "upstand": "3", "drip": "1/2", "gap_to_cladding": "3/8"},
        }
    },
    "position": {"share": "1/2"},
    "openings": [
        {
            "mark": "W1",
            "room": "Room",
            "frame": "35 1/2 x 47 1/2",
            "rough_opening": "36 x 48",
            "sill_height": "36",
        }
    ],
}
DOOR: dict[str, Any] = {
    "windows__fixed__sash": "door in",
    "openings__0__sill_height": None,
    "openings__0__floor_below_frame": "1/2",
    "openings__0__hinge": "left",
    "interior_trim__inside__style": "three-sided",
    "exterior_trim__outside__sill": None,
}
"""What makes a door of the base job's window."""

STOOL: dict[str, Any] = {
    "style": "stool and apron",
    "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "butt, head over legs"},
    "frame_reveal": "1/8",
    "casing_reveal": "3/16",
    "casing": {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt", "overhang": "1/2"},
    "stool": {"thickness": "1", "stock": "poplar", "horn": "3/4", "nosing": "3/4"},
    "apron": {"width": "3 1/2", "thickness": "3/4", "stock": "poplar"},
}

METRIC: dict[str, Any] = {
    "units": "mm",
    "shop__grid": "1 mm",
    "shop__kerf": "3",
    "shop__proud": "1",
    "shop__shim_space": "8",
    "shop__edge_allowance": "3",
    "shop__taper_tolerance": "1",
    "shop__boards": [{"stock": "pine", "thickness": "20", "width": "195"}],
    "walls__main__layers": [
        "gypsum board 12.5 mm",
        {"material": "stud 45x145", "spacing": "600"},
        "OSB 12 mm",
        {"material": "wood-fiber board", "thickness": "60"},
        {"material": "wood-fiber board", "thickness": "100"},
        {"material": "strapping 25 mm", "spacing": "600"},
        {"material": "vertical boards", "thickness": "20", "role": "cladding"},
    ],
    "walls__main__buck": {"kind": "outboard", "thickness": "45", "stock": "spruce"},
    "windows__fixed__jamb_depth": "70",
    "windows__fixed__frame_projection": "20",
    "windows__fixed__frame_face": "60",
    "windows__fixed__flange_width": "35",
    "interior_trim__inside__jamb": {"thickness": "20", "stock": "pine", "joint": "butt, head over legs"},
    "interior_trim__inside__frame_reveal": "3",
    "interior_trim__inside__casing_reveal": "5",
    "interior_trim__inside__casing": {"width": "95", "thickness": "18", "stock": "pine", "corner": "miter"},
    "exterior_trim": None,
    "openings__0__frame": "900 x 1200",
    "openings__0__rough_opening": "920 x 1220",
    "openings__0__sill_height": "800",
}
"""Changes that make the base job a metric one."""


def changed(**paths: Any) -> dict[str, Any]:
    """Copy the base job and set values by path, ``walls__main__buck=None``; numbers in a path index a list."""
    data = copy.deepcopy(BASE)
    for path, value in copy.deepcopy(paths).items():
        *way, last = path.split("__")
        place: Any = data
        for step in way:
            place = place[int(step)] if isinstance(place, list) else place[step]
        if value is None:
            del place[last]
        elif isinstance(place, list):
            place[int(last)] = value
        else:
            place[last] = value
    return data


def job_of(data: dict[str, Any]) -> Job:
    """Read a job from plain data, as a file."""
    return _read(yaml.dump(data, Dumper=DUMPER, sort_keys=False, allow_unicode=True))


DUMPER = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


@lru_cache(maxsize=500)
def _read(text: str) -> Job:
    """Read a job; the same text is read once, as many tests ask for the base job and reading is most of their time."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.yaml"
        path.write_text(text, encoding="utf-8")
        return read_job(path)


def placed(**paths: Any) -> Placement:
    """Place the first window of a changed base job."""
    return place_windows(job_of(changed(**paths)))[0]


def kit_of(**paths: Any) -> Kit:
    """Make the kit of the first opening of a changed base job."""
    job = job_of(changed(**paths))
    return make_kit(place_windows(job)[0], job)


def part_of(kit: Kit, name: str, position: str, where: Where = Where.INTERIOR) -> Part:
    """Find one part of a kit."""
    (found,) = (p for p in kit.parts if (p.name, p.position, p.where) == (name, position, where))
    return found


def figure(kit: Kit, name: str) -> float:
    """Find one figure of a kit [in]."""
    (found,) = (one.value for one in kit.figures if one.name == name)
    return found


def texts(kit: Kit) -> str:
    """All findings of a kit, one a line."""
    return "\n".join(sentences(kit.findings))


def examples(count: int) -> settings:
    """Say how many examples a test wants of hypothesis; the profile ``long`` takes twenty times as many."""
    return settings(max_examples=count * settings().max_examples // 100)


def strips(kits: Iterable[Kit]) -> tuple[CutKit, ...]:
    """Cut kits with nothing planned outside: their head flashings are plain strips."""
    return tuple(as_cut(kit, PlannedForKit()) for kit in kits)
