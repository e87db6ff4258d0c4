"""Studies of which every figure is on record: walls, windows in them, the cuts that were computed, heat, damp and sun.

What the solver is worth, its tests against closed forms, ISO 10211 and scikit-fem say; what is cut, and with which
films, the tests by hand. The record holds the figures of a dozen walls and windows between them. Renew it where one is
meant to be another, and read the lines that are other ones now. Of a sum, two listings tell what it is, made before
and after:

    python tests/study/recorded_studies.py "strapped #1"
    python tests/study/recorded_studies.py                  (renews the record)
"""

from __future__ import annotations

import dataclasses
import json
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from arches import arch_changes
from cases import METRIC, STOOL, changed, job_of
from gangs import RETURNS, ganged
from metal import lined
from shaken import digest, plain, shaken
from test_wall_report import FILLED, MONTHS

from jambs.findings import FindingsError
from jambs.job.models.site import Site, site_of
from jambs.place.placement import Placement
from jambs.place.solve import place_windows
from jambs.study.at_position import DrawnSide, WindowInWall, edge_lengths, sill_corner_estimate, study_at, subject_of
from jambs.study.candidates import effects_of
from jambs.study.placement_study import study_placements
from jambs.study.record.comparison_record import comparison_record
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion, Block
from jambs.study.resistance_rule import rule_position
from jambs.study.sun.sun_at import reveal_at
from jambs.study.wall.indoor_air import mold_limit
from jambs.study.wall.wall_report import wall_report

RECORD = Path(__file__).with_name("recorded_studies.json")
COARSE = Fineness(first=0.008, growth=1.9, largest=0.08)
"""What is on record is which figures come of a cut: the solver itself has its own tests, on finer grids."""
SITE = {"latitude_deg": "43", "degree_days": "3500 C", "design_outdoor_temperature": "-18 C"}
GLAZED = {"windows__fixed__u_frame": "1.6", "windows__fixed__glass": {"panes": "2", "pane_thickness": "1/8"}}
SASH = {
    "windows__fixed__sash": "casement in",
    "windows__fixed__sash_thickness": "2 1/2",
    "windows__fixed__sash_set_back": "1/4",
    "windows__fixed__exterior_frame_face": "2",
}
LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
BATTENS = {"material": "service battens", "role": "service cavity", "thickness": "1 1/2"}
STRAPPED: list[Any] = [
    "gypsum board 1/2",
    {"material": "stud 2x6", "spacing": "16", "cavity": "cellulose"},
    "OSB 7/16",
    {"material": "wood-fiber board", "thickness": "2 3/8"},
    {"material": "strapping 1x4", "spacing": "16"},
    {"material": "vertical boards", "thickness": "3/4", "role": "cladding"},
]
RETURNED = {key: value for key, value in RETURNS.items() if key != "mull_casing"}
STUDIES: Mapping[str, dict[str, Any]] = {
    "plain": {},
    "glazed, with a site": {**GLAZED, "site": SITE, "openings__0__faces": "south"},
    "sash set back, facing west": {
        **GLAZED,
        **SASH,
        "site": {**SITE, "latitude_deg": "-35"},
        "openings__0__faces": "west",
    },
    "a year of vapor": {**FILLED, "site": {**SITE, **MONTHS, "humidity_class": "3"}, "openings__0__faces": "200 deg"},
    "in a liner": {"walls__main__buck": LINER, "position": {"share": "1/4"}},
    "on the sheathing": {"position": {"flange_on": "sheathing"}},
    "proud": {"position": {"share": "1"}},
    "on a stool": {"interior_trim__inside": STOOL},
    "behind returns": {"interior_trim__inside": RETURNED},
    "flared": {
        "interior_trim__inside__flare": {"sides": "10 deg", "head": "15 deg"},
        "interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
    },
    "lined with metal": {"exterior_trim__outside": lined()},
    "without exterior trim": {"exterior_trim": None},
    "behind battens": {"walls__main__layers__0": BATTENS},
    "strapped": {"walls__main__layers": STRAPPED, "walls__main__buck": None, "position": {"flange_on": "sheathing"}},
    "metric": {**METRIC, "windows__fixed__u_frame": "1.3"},
    "ganged": ganged(),
    "half round": arch_changes({"kind": "half round"}, 36, 60),
}
COMPARED: Mapping[str, dict[str, Any]] = {
    "metric": {**METRIC, "openings__0__faces": "south", "site": {**SITE, **MONTHS}},
}
"""Walls and windows that are studied at every position, with changes of the detail; these take seconds."""


NAMES = (*STUDIES, *(f"{name} #1" for name in STUDIES), *(f"compared: {name}" for name in COMPARED))


def told(name: str) -> Any:
    """Return what a study of a window where it stands gives; ``plain #2`` has every size moved."""
    of, _, number = name.partition(" #")
    data = changed(**STUDIES[of])
    job = job_of(shaken(data, int(number)) if number else data)
    (placement,) = place_windows(job)
    site = site_of(job.site, units=job.units)
    subject = subject_of(placement.opening, placement.planes, job)
    try:
        wall: Any = wall_report(placement.planes, site, units=job.units)
        window: Any = _window(subject, placement, site)
    except FindingsError as error:
        return plain([(one.code, one.sentence(job.units)) for one in error.findings])
    return plain([_fields(wall, ("planes",)), subject.window.blocks, subject.window.assumed, mold_limit(site), window])


def _window(subject: WindowInWall, placement: Placement, site: Site) -> Any:
    found = study_at(subject, placement.flange_plane, fineness=COARSE)
    effects = effects_of(subject, found, site, (180.0, 270.0))
    frame_depth = subject.window.blocks[found.sides[0].side].depth
    return [
        (found.heat, found.heat_half_width, found.length, found.mean_transmittance, len(found.stops)),
        _fields(effects, ("at",)),
        (reveal_at(subject, found), sill_corner_estimate(subject, found)),
        edge_lengths(subject.opening) if subject.opening.shape else None,
        rule_position(subject.wall.stack, frame_depth),
        [_side(one) for one in found.sides],
    ]


def _side(side: DrawnSide) -> Any:
    cut = side.cut
    return [
        (side.side, side.length, cut.corner, cut.glazing),
        [*map(_rectangle, cut.blocks), *map(_rectangle, cut.airs)],
        (side.transmittance, side.transmittance.value, side.transmittance.half_width, side.transmittance.is_usual),
        side.factors,
    ]


def _rectangle(one: Block | AirRegion) -> Any:
    """Return a rectangle in millimeters, with what it is worth."""
    edges = [1000 * edge for edge in (one.x0, one.x1, one.y0, one.y1)]
    return [one.name, *edges, *((one.conductivity,) if isinstance(one, Block) else (one.resistance, one.films))]


def compared(name: str) -> Any:
    """Return the record of a whole comparison."""
    job = job_of(changed(**COMPARED[name]))
    return plain(comparison_record(study_placements(place_windows(job), job)))


def _fields(value: Any, left_out: tuple[str, ...]) -> list[Any]:
    return [getattr(value, one.name) for one in dataclasses.fields(value) if one.name not in left_out]


def recorded() -> dict[str, Any]:
    """Return what is kept, by name."""
    return {name: kept(name) for name in NAMES}


def kept(name: str) -> Any:
    """Return what is kept of a study: of one whose sizes were moved what it comes to."""
    if name.startswith("compared: "):
        return compared(name.removeprefix("compared: "))
    return digest(told(name)) if " #" in name else told(name)


def main() -> None:
    """Renew the record, or list one study."""
    if len(sys.argv) > 1:
        print(json.dumps(told(sys.argv[1]), indent=1))
        return
    lines = [f" {json.dumps(name)}: {json.dumps(value)}" for name, value in recorded().items()]
    RECORD.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
