"""Trim whose parts could not be cut or would bear on nothing is refused with the way out."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from cases import STOOL, changed, job_of
from panels import PANELS

from jambs.job import JobFaults

BOARDS: dict[str, Any] = {
    "material": "gypsum board",
    "thickness": "1/2",
    "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
    "wall_board": "over the return",
    "gap_at_frame": "1/4",
}
RETURNS: dict[str, Any] = {"style": "returns", "frame_reveal": "1/2", "returns": BOARDS}
BARE: dict[str, Any] = {
    "style": "returns",
    "jamb": STOOL["jamb"],
    "frame_reveal": "1/8",
    "wall_edge": {"kind": "shadow gap", "gap": "3/8", "leg": "1"},
}
MITERED = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "miter"}
BUTTED: dict[str, Any] = {**STOOL, "casing": {**MITERED, "corner": "butt"}}
ON_NOTHING = {key: value for key, value in BUTTED.items() if key not in ("stool", "apron")}
FOUR_SIDED = {**ON_NOTHING, "style": "picture framed"}
TO_FLOOR = {**FOUR_SIDED, "style": "three-sided"}
ROSETTES = {"size": "3 3/4", "thickness": "1", "stock": "poplar"}
BAND = {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}
PLINTHS = {"width": "4", "height": "8", "thickness": "1", "stock": "poplar"}
CROWN = {"width": "4", "thickness": "1/2", "spring_deg": "45", "stock": "poplar"}
CAP = {"kind": "cap", "height": "3/4", "projection": "2", "overhang": "1", "stock": "poplar"}
TILE = {"thickness": "3/8", "bed": "1/4", "joint": "1/8", "nosing": "1/4"}


def panels(**changes: Any) -> dict[str, Any]:
    """Panels in the interior trim of the base job; a groove or a panel by its own keys."""
    whole = copy.deepcopy(PANELS)
    for key, value in changes.items():
        section, _, inner = key.partition("__")
        if inner:
            whole[section][inner] = value
        else:
            whole[section] = value
    return {"interior_trim__inside__panels": {key: value for key, value in whole.items() if value is not None}}


CASES: dict[str, tuple[dict[str, Any], str]] = {
    "short stool": (
        {
            "interior_trim__inside": {
                **STOOL,
                "casing": {**STOOL["casing"], "width": "1/2"},
                "stool": {**STOOL["stool"], "horn": "0"},
            }
        },
        "the stool would be shorter than the jamb box is wide; write a wider casing or a longer horn",
    ),
    "casing outside on nothing": (
        {"exterior_trim__outside__casing_reveal": "3/4"},
        "casing_reveal is as wide as the jamb is thick, so the casing bears on nothing; write less",
    ),
    "panels of no number": (
        panels(longest=None),
        "says nothing, or two things, of how many panels there are; write longest: 30 in (the longest panel), or both "
        "on_legs and on_level",
    ),
    "panels of two numbers": (
        panels(on_legs="2", on_level="1"),
        "says nothing, or two things, of how many panels there are; write longest: 30 in (the longest panel), or both "
        "on_legs and on_level",
    ),
    "groove in the face": (
        panels(groove__from_face="0"),
        "gives a groove without depth, or one that opens in the face; write both above 0",
    ),
    "tenon past the groove": (
        panels(tenon="1/2"),
        "gives a tenon that is longer than the groove is deep, or none; write at most its depth",
    ),
    "rail grooved through": (
        panels(rails="3/4"),
        "gives stiles or rails that the grooves cut through; a stile is wider than the groove is deep, a rail wider "
        "than two of them",
    ),
    "panel that rattles": (
        panels(groove__width="3/8"),
        "gives a panel thinner than its groove is wide, which rattles; write a groove of its thickness",
    ),
    "thick panel without tongue": (
        panels(panel__thickness="3/8"),
        "gives a panel thicker than its groove is wide and no tongue that goes into it; write tongue in panel, at "
        "least as wide as the groove is deep",
    ),
    "tongue of a thin panel": (
        panels(panel__tongue="1/2"),
        "gives tongue for a panel that is as thick as its groove is wide and needs none; remove it",
    ),
    "room to fall out": (
        panels(panel__room="3/8"),
        "leaves the panel as much room as the groove is deep, so that it can fall out at one side; write a deeper "
        "groove, or less room or end_room",
    ),
    "groove through the back": (
        panels(groove__from_face="1/2"),
        "panels gives a groove that opens in the back of the jamb; write a thicker jamb, or less",
    ),
    "panel past the back": (
        panels(panel__thickness="5/8", panel__tongue="1/2"),
        "the panels stand out past the back of the jamb; write a thinner panel, or a thicker jamb",
    ),
    "panels in stacked frames": (
        {**panels(), "interior_trim__inside__stack": "2"},
        "gives panels and returns or stack; panels are of one deep wooden jamb, keep one of them",
    ),
    "frames stacked with no step": (
        {"interior_trim__inside__frame_reveal": "0", "interior_trim__inside__stack": "2"},
        "stack gives no reveal and frame_reveal is 0; write stack: {frames: 2, reveal: 1/8}",
    ),
    "frames stacked flush": (
        {"interior_trim__inside__stack": {"frames": "2", "reveal": "0"}},
        "reveal is 0, so the joint of two frames shows as one that did not close; write a step that is seen, like "
        "1/8 in or 3 mm",
    ),
    "frames stacked side by side": (
        {"interior_trim__inside__stack": {"frames": "2", "reveal": "3/4"}},
        "the reveal of the stack is as wide as the jamb is thick, so the frames do not meet; write less",
    ),
    "four frames": (
        {"interior_trim__inside__stack": "4"},
        "is 4; write a whole number from 2 to 3",
    ),
    "returns with casing": (
        {"interior_trim__inside__returns": BOARDS, "interior_trim__inside__jamb": None},
        "gives casing over returns or a bare edge of the wall, which have none; write casing: none",
    ),
    "returns with jambs": (
        {"interior_trim__inside": {**RETURNS, "jamb": STOOL["jamb"]}},
        "gives returns and also jamb, wall_edge or stack, which are of wooden jambs; keep one of both",
    ),
    "returns in a style with casing": (
        {"interior_trim__inside": {**RETURNS, "style": "picture framed"}},
        "style 'picture framed' has casing; write style: returns, returns and stool, returns and tile sill or "
        "three-sided",
    ),
    "returns of nothing": (
        {"interior_trim__inside__style": "returns"},
        "style is 'returns' and nothing says what is returned; give returns, or jamb and wall_edge",
    ),
    "stool left out": (
        {"interior_trim__inside": {**RETURNS, "style": "returns and stool"}},
        "style is 'returns and stool' and stool is missing; give it",
    ),
    "tile left out": (
        {"interior_trim__inside": {**RETURNS, "style": "returns and tile sill"}},
        "style: returns and tile sill goes with tile_sill; give both, or neither",
    ),
    "tile between jambs": (
        {"interior_trim__inside": {**BARE, "style": "returns and tile sill", "tile_sill": TILE}},
        "gives tile_sill between wooden jambs; give returns, or a stool",
    ),
    "shadow of no width": (
        {"interior_trim__inside": {**BARE, "wall_edge": {"kind": "shadow gap", "leg": "1"}}},
        "kind is shadow gap and gap is missing; write how wide it is, like 3/8 in or 10 mm",
    ),
    "bead that stands off": (
        {"interior_trim__inside": {**BARE, "wall_edge": {"kind": "trimless bead", "leg": "1", "gap": "1/4"}}},
        "kind is trimless bead, which butts to the jamb; remove gap or write kind: shadow gap",
    ),
    "a return over a threshold": (
        {"interior_trim__inside": RETURNS, "openings__0__floor_below_frame": "0", "openings__0__sill_height": None},
        "is returns, which puts a return across the threshold of a door; give it a trim of style: three-sided",
    ),
    "a flare over the greatest": (
        {"interior_trim__inside__flare": {"sides": "61 deg"}},
        "is 61°; write a flare from 0 deg to 60 deg, off square to the window",
    ),
    "a flare that closes": (
        {"interior_trim__inside__flare": {"sides": "-20 deg"}},
        "is -20°; write a flare from 0 deg to 60 deg, off square to the window",
    ),
    "a flare of no unit": (
        {"interior_trim__inside__flare": {"head": "10"}},
        "is 10: degrees or a length? Write 10 deg, or the length with its unit (10 in, 10 mm)",
    ),
    "a flare of both legs and of one": (
        {"interior_trim__inside__flare": {"sides": "10 deg", "left": "5 deg"}},
        "gives sides and left or right; keep sides for both legs, or left and right for each",
    ),
    "a stool that leans": (
        {"interior_trim__inside": {**STOOL, "flare": {"sill": "5 deg"}}},
        "flare leans the sill, but the legs stand on a stool, which lies level; write sill: 0",
    ),
    "stacked frames that flare": (
        {"interior_trim__inside__flare": {"head": "5 deg"}, "interior_trim__inside__stack": "2"},
        "gives flare and stack; stacked frames stand square, keep one of them",
    ),
    "rosettes and a backband": (
        {"interior_trim__inside": {**BUTTED, "built_up": {"rosettes": ROSETTES, "backband": BAND}}},
        "rosettes stand in the corners, where backband or head would cross them; keep one of both",
    ),
    "built up of nothing": (
        {"interior_trim__inside": {**BUTTED, "built_up": {}}},
        "built_up names no member; give backband, rosettes, plinths or head, or remove it",
    ),
    "members without casing": (
        {"interior_trim__inside": {**BARE, "built_up": {"backband": BAND}}},
        "gives built_up without casing, whose members stand with it; remove it, or give casing",
    ),
    "members across an overhang": (
        {"interior_trim__inside": {**STOOL, "built_up": {"backband": BAND}}},
        "gives built_up and an overhang of the head casing, which would cross it; remove overhang",
    ),
    "rosettes in miters": (
        {"interior_trim__inside": {**BUTTED, "casing": MITERED, "built_up": {"rosettes": ROSETTES}}},
        "gives rosettes or head over mitered casing; write corner: butt",
    ),
    "a head round four sides": (
        {"interior_trim__inside": {**FOUR_SIDED, "built_up": {"head": [CAP]}}},
        "gives a head of members round four sides; write style: stool and apron, or three-sided",
    ),
    "a crown without a cap": (
        {"interior_trim__inside": {**BUTTED, "built_up": {"head": [CAP], "crown": CROWN}}},
        "crown stands on a frieze under a cap, and head has none on the other; give both in head",
    ),
    "plinths on a stool": (
        {"interior_trim__inside": {**BUTTED, "built_up": {"plinths": PLINTHS}}},
        "gives plinths, which stand on a floor; write style: three-sided, or remove them",
    ),
    "rosettes over the jamb": (
        {"interior_trim__inside": {**BUTTED, "built_up": {"rosettes": {**ROSETTES, "size": "4"}}}},
        "rosettes are narrower than the casing, or reach past its reveal over the jamb; write a size from the width of "
        "the casing to that and two reveals",
    ),
    "plinths too narrow": (
        {"interior_trim__inside": {**TO_FLOOR, "built_up": {"plinths": {**PLINTHS, "width": "3"}}}},
        "plinths are narrower than the casing that stands on them; write at least its width",
    ),
    "overhang over miters": (
        {"exterior_trim__outside__casing__corner": "miter"},
        "gives overhang for mitered corners, which have none; remove it or write corner: butt",
    ),
    "flashing that stands up nowhere": (
        {"exterior_trim__outside__head_flashing__upstand": "0"},
        "upstand is 0, so water runs in behind the metal; write how far it goes up behind the membrane, like 3 in or "
        "80 mm",
    ),
    "liner set back": (
        {"walls__main__buck": {"kind": "liner", "thickness": "3/4", "stock": "plywood", "set_back": "1/4"}},
        "gives set_back for a liner, which lies in the rough opening itself; remove set_back, or write a larger "
        "rough_opening",
    ),
    "kerf through the front": (
        {"exterior_trim__outside__sill__slope": "45 deg", "exterior_trim__outside__sill__drip_kerf__set_back": "1/8"},
        "drip_kerf breaks out of the sloping front edge; write a larger set_back or a smaller depth",
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_it_is_refused(name: str) -> None:
    paths, sentence = CASES[name]
    with pytest.raises(JobFaults) as found:
        job_of(changed(**paths))
    (fault,) = found.value.faults
    assert fault.sentence == sentence
