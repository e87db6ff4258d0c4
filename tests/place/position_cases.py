"""Windows placed on one side of a limit and on the other.

The base wall, by hand: gypsum 1/2, stud 5 1/2, plywood 1/2: sheathing plane 6 1/2; boards 2 and 3, cover 1/2: trim
plane 12. Share 1/2: flange plane 9 1/4. Jamb depth 4 9/16: inside 4 11/16. Projection 1 1/4: outside 1 1/2. Overhang
2 3/4. The shop's grid is 1/32, so that a limit is missed by 1/32 in at the least.
"""

from __future__ import annotations

from typing import Any

from cases import STOOL, changed, job_of
from finding_rows import Case

from jambs.findings import FindingsError, Statement, Subject
from jambs.place.solve import place_windows

W1, MAIN = Subject.opening("W1"), Subject.wall("main")
CHOOSE = {"choose": "yes"}
LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
CASEMENT = {
    "jamb_depth": "4 9/16",
    "frame_projection": "1 1/4",
    "frame_face": "2",
    "nailing_flange": "yes",
    "flange_width": "1 1/4",
    "sash": "casement in",
    "sash_thickness": "2 1/2",
    "sash_set_back": "-1/2",
}
"""A sash that opens in and stands 1/2 proud: it meets the jamb where its outer corner lies."""
DOOR = {
    "interior_trim__inside": {
        **{key: value for key, value in STOOL.items() if key not in ("stool", "apron")},
        "style": "three-sided",
    },
    "openings__0__frame": "37 1/2 x 82 1/2",
    "openings__0__rough_opening": "38 x 83",
    "openings__0__sill_height": None,
    "openings__0__floor_below_frame": "1/4",
}


def said(**paths: Any) -> list[Statement]:
    """All that is said of the first opening of a changed base job, or what keeps it from standing there."""
    try:
        one = place_windows(job_of(changed(**paths)))[0]
    except FindingsError as error:
        return list(error.findings)
    return [*one.findings, *one.reasons, *(limit for other in one.alternatives for limit in other.against)]


def case(**paths: Any) -> Case:
    return lambda: said(**paths)


def inside(depth: str, **paths: Any) -> Case:
    return case(position={"interior_depth": depth}, **paths)


def clear_of(width: str, height: str, sill: str = "30") -> Case:
    """A casement whose clear opening is a width × height: two faces of 2 in more, and the sash 2 1/2 thick across."""
    return case(
        windows__fixed={**CASEMENT, "frame_face": "2"},
        openings__0__frame=f"{width} x {height}",
        openings__0__rough_opening=None,
        openings__0__sill_height=sill,
        openings__0__escape="yes",
        exterior_trim=None,
    )
