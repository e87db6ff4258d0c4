"""Ganged units as a job lists them: where each stands, and what cannot be one opening, in whole sentences."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of
from gangs import OVER, boxed, ganged, unit
from panels import PANELS

from jambs.job.reading.faults import JobFaults
from jambs.sides import Side


def test_units_stand_in_rows_from_the_lower_left() -> None:
    opening = job_of(changed(**ganged())).openings[0]
    assert opening.gang is not None
    # 30 + 1/2 = 30 1/2; 48 + 1/2 = 48 1/2; 60 1/2 wide, 64 1/2 high.
    assert [(one.number, one.x, one.y) for one in opening.gang.units] == [(1, 0.0, 0.0), (2, 30.5, 0.0), (3, 0.0, 48.5)]
    assert (opening.frame.width, opening.frame.height) == (60.5, 64.5)
    assert opening.gang.unit(1).at_mull == (Side.RIGHT, Side.HEAD)
    assert opening.gang.unit(3).at_mull == (Side.SILL,)


LIGHTS: dict[str, Any] = {
    "openings__0__transom": None,
    "openings__0__transoms": [[unit("30 x 16"), unit("30 x 16")], [unit("60 1/2 x 12")]],
}


def test_transoms_stand_in_rows_one_over_the_other() -> None:
    opening = job_of(changed(**ganged(**LIGHTS))).openings[0]
    assert opening.gang is not None
    # 48 + 1/2 = 48 1/2; 16 more and another bar of 1/2: 65; 12 more: 77.
    assert [(one.number, one.row, one.x, one.y) for one in opening.gang.units] == [
        (1, 0, 0.0, 0.0),
        (2, 0, 30.5, 0.0),
        (3, 1, 0.0, 48.5),
        (4, 1, 30.5, 48.5),
        (5, 2, 0.0, 65.0),
    ]
    assert (opening.frame.width, opening.frame.height) == (60.5, 77.0)
    assert [(bar.member, bar.low, bar.high) for bar in opening.gang.bars] == [(1, 48.0, 48.5), (2, 64.5, 65.0)]
    assert opening.gang.unit(3).at_mull == (Side.RIGHT, Side.HEAD, Side.SILL)


def test_a_post_has_a_joint_on_each_side() -> None:
    paths = ganged(openings__0__transom=None, openings__0__transom_bar=None)
    opening = job_of(changed(**paths, openings__0__mull={"post": "3 1/2", "joint": "1/4"})).openings[0]
    # 30 + 1/4 + 3 1/2 + 1/4 + 30.
    assert opening.frame.width == 64.0


def faults(**paths: Any) -> list[str]:
    with pytest.raises(JobFaults) as raised:
        job_of(changed(**ganged(**paths)))
    return [f"{fault.where}: {fault.sentence}" for fault in raised.value.faults]


W1 = 'openings[0] "W1"'
DEEP = {"like": "fixed", "jamb_depth": "5"}
PROUD = {"like": "fixed", "frame_projection": "1"}
WIDE = {"like": "fixed", "frame_face": "3"}
DOOR = {"like": "fixed", "sash": "door in", "sash_thickness": "1 3/4", "sash_set_back": "0", "sash_face": "4"}
LEAF = {"window": "leaf", "frame": "60 1/2 x 80"}
CASES: dict[str, tuple[dict[str, Any], str]] = {
    "sills that do not line up": (
        {"openings__0__units": [unit("30 x 48"), unit("30 x 40")]},
        f'{W1}: units: frames are 40" to 48" high, so with their heads in line their sills are not; one stool and one '
        "sill lie under all: give them one height, or make the lower one an opening of its own with head_with",
    ),
    "a transom of another width": (
        {"openings__0__transom": [unit("60 x 16")]},
        f'{W1}: transom: is 60" wide with its mulls and the units under it are 60 1/2"; the legs go past both, so '
        "make them one width",
    ),
    "a second transom of another width": (
        {**LIGHTS, "openings__0__transoms": [[unit("60 1/2 x 16")], [unit("60 x 12")]]},
        f'{W1}: transoms[1]: is 60" wide with its mulls and the units under it are 60 1/2"; the legs go past both, so '
        "make them one width",
    ),
    "transom and transoms": (
        {"openings__0__transoms": [[unit("60 1/2 x 16")]]},
        f"{W1}: gives transom and transoms; list every row over the units in transoms, from below",
    ),
    "a door in the second row over others": (
        {**LIGHTS, "windows__leaf": DOOR, "openings__0__transoms": [[unit("60 1/2 x 16")], [LEAF]]},
        f"{W1}: transoms[1][0].window: is a door over other units; put doors into the lower row",
    ),
    "a negative gap": (
        {"openings__0__mull": {"gap": "-1/2"}},
        f'{W1}: mull.gap: is -1/2"; write a length from 0" to 2"',
    ),
    "a gap and a post": (
        {"openings__0__mull": {"gap": "1/2", "post": "3", "joint": "1/4"}},
        f"{W1}: mull: is neither a gap nor a post, or both; write {{gap: 1/2 in}} or {{post: 90 mm, joint: 6 mm}}",
    ),
    "a post without a joint": (
        {"openings__0__mull": {"post": "3"}},
        f"{W1}: mull: post and joint go together: the width of the post, and what is left between it and each frame",
    ),
    "no mull": (
        {"openings__0__mull": None},
        f"{W1}: mull is missing between the units; write mull: {{gap: 1/2 in}} or {{post: 90 mm, joint: 6 mm}}",
    ),
    "no bar": (
        {"openings__0__transom_bar": None},
        f"{W1}: transom_bar is missing under the transom; write transom_bar: {{gap: 1/2 in}} or "
        "{post: 90 mm, joint: 6 mm}",
    ),
    "a unit that the job does not define": (
        {"openings__0__units": [unit("30 x 48"), {"window": "bay", "frame": "30 x 48"}]},
        f"{W1}: units[1].window: no window is called 'bay'; write one of fixed",
    ),
    "another depth": (
        {"windows__deep": DEEP, "openings__0__units": [unit("30 x 48"), {"window": "deep", "frame": "30 x 48"}]},
        f'{W1}: units[1].window: has a jamb depth of 5" and fixed one of 4 9/16"; in one rough opening all frames '
        "stand in one plane, so choose windows with the same depths and flange",
    ),
    "another flange plane": (
        {"windows__proud": PROUD, "openings__0__units": [unit("30 x 48"), {"window": "proud", "frame": "30 x 48"}]},
        f'{W1}: units[1].window: has a frame projection of 1" and fixed one of 1 1/4"; in one rough opening all frames '
        "stand in one plane, so choose windows with the same depths and flange",
    ),
    "another face under one stool": (
        {"windows__wide": WIDE, "openings__0__transom": [{"window": "wide", "frame": "60 1/2 x 16"}]},
        f'{W1}: units: have faces of 2 1/2" to 3" along the left jamb, where one straight board covers them; choose '
        "windows with one face there",
    ),
    "one unit alone": (
        {"openings__0__units": [unit("30 x 48")], "openings__0__transom": None, "openings__0__transom_bar": None},
        f"{W1}: units: is one unit alone; write window and frame for it, or list the others",
    ),
    "units and a frame": (
        {"openings__0__frame": "60 1/2 x 64 1/2"},
        f"{W1}: gives units and frame, which each unit says for itself; keep it in the units",
    ),
    "nobody gets out": (
        {"openings__0__escape": "yes"},
        f"{W1}: escape: is yes and all its units are fixed: nobody gets out; give it a unit that opens, or write no",
    ),
}


@pytest.mark.parametrize(("paths", "sentence"), CASES.values(), ids=list(CASES))
def test_what_cannot_be_one_opening_is_told(paths: dict[str, Any], sentence: str) -> None:
    assert sentence in faults(**paths)


def test_a_trim_without_a_board_over_the_mull_is_told() -> None:
    data = changed(**ganged())
    del data["interior_trim"]["inside"]["mull_casing"]
    sentence = "has no mull_casing and its units have mulls to cover; give it mull_casing: {thickness: …, stock: …}"
    with pytest.raises(JobFaults) as raised:
        job_of(data)
    assert [fault.sentence for fault in raised.value.faults] == [sentence]


RETURNED = {
    "style": "returns",
    "frame_reveal": "1/8",
    "returns": {
        "material": "gypsum board",
        "thickness": "1/2",
        "corner_bead": {"nose": "1/16", "leg": "1 1/4"},
        "gap_at_frame": "1/4",
        "wall_board": "over the return",
    },
    "mull_casing": dict(OVER),
}
BOXED = {
    "a transom over boxed mulls": (
        {"openings__0__mull": {"post": "4", "joint": "1/4", "boxed": "inside"}},
        f"{W1}: mull.boxed: and a transom: boxes stand from the foot of the opening to its head, where the transom bar "
        "would cross them; remove boxed, or make the transom an opening of its own",
    ),
    "a boxed transom bar": (
        {"openings__0__transom_bar": {"gap": "1/2", "boxed": "inside"}},
        f"{W1}: transom_bar.boxed: is of mulls, and a transom bar lies on the frames; remove boxed",
    ),
    "flared jambs beside a box": (
        boxed(interior_trim__inside__flare={"sides": "10 deg"}),
        f"{W1}: mull.boxed: is both, and the interior trim has a flare, and mull jambs stand square; remove one "
        "of both",
    ),
    "stacked jambs beside a box": (
        boxed(interior_trim__inside__stack=2),
        f"{W1}: mull.boxed: is both, and the interior trim has a stack, and mull jambs are one board deep; remove one "
        "of both",
    ),
    "jambs of panels beside a box": (
        boxed(interior_trim__inside__panels=PANELS),
        f"{W1}: mull.boxed: is both, and the interior trim has panels, and mull jambs are plain boards; remove one "
        "of both",
    ),
    "no casing to close the box": (
        boxed(interior_trim__inside=RETURNED),
        f"{W1}: mull.boxed: is both, and the interior trim has no casing to close the box on the wall; write boxed: "
        "outside, or give it",
    ),
    "nothing outside to box": (
        boxed("outside", openings__0__exterior_trim="none"),
        f"{W1}: mull.boxed: is outside, and there is no exterior trim; write boxed: inside",
    ),
}


@pytest.mark.parametrize(("paths", "sentence"), BOXED.values(), ids=list(BOXED))
def test_mulls_that_cannot_be_boxed_are_told(paths: dict[str, Any], sentence: str) -> None:
    assert sentence in faults(**paths)


def test_a_mull_without_units_is_told() -> None:
    with pytest.raises(JobFaults, match=r"gives mull and no units; list the units, or remove mull"):
        job_of(changed(openings__0__mull={"gap": "1/2"}))


def test_a_trim_may_have_a_mull_casing_that_a_plain_opening_does_not_need() -> None:
    assert job_of(changed(interior_trim__inside__mull_casing=dict(OVER))).openings[0].gang is None


def test_an_empty_row_of_transoms_is_told() -> None:
    rows = {**LIGHTS, "openings__0__transoms": [[unit("60 1/2 x 12")], []]}
    with pytest.raises(JobFaults) as raised:
        job_of(changed(**ganged(**rows)))
    assert "is empty; list its units, or leave it out" in str(raised.value)
