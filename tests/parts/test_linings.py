"""What is said of a measured wall where nobody rips a jamb: returns of the drywall crew, a sill of tile, a stool."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of, kit_of
from part_cases import bent, corners, deeper_above
from test_returns_by_hand import RETURNS, WITH_STOOL, WITH_TILE

from jambs.length import Units
from jambs.parts.board.touches import Scribe
from jambs.parts.kit.kit import Kit
from jambs.sheets.wall_picture import wall_data

COAT = "the return is cut parallel at the wider width, and the coat at the corner bead takes the rest"
RIP = "rip parallel at the wider width, plane or shim the rest"
TILE = "the tile is cut parallel at the wider width, and its nosing takes the rest"


def measured(trim: dict[str, Any], depths: dict[str, Any]) -> Kit:
    return kit_of(interior_trim__inside=trim, openings__0__measured={"date": "2026-06-01", "interior_depth": depths})


def said(kit: Kit, code: str) -> dict[str, str]:
    """The sentences of a finding by the edge that they are of."""
    found = [one for one in kit.findings if one.code == code]
    return {getattr(one, "along", ""): one.sentence(Units.INCH) for one in found}


@pytest.mark.parametrize(("trim", "sill"), [(RETURNS, COAT), (WITH_TILE, TILE), (WITH_STOOL, RIP)])
def test_a_return_is_not_ripped(trim: dict[str, Any], sill: str) -> None:
    """1/32 along every side. The stool between returns is the carpenter's, and is."""
    found = said(measured(trim, corners("4 11/16", "4 23/32", "4 11/16", "4 23/32")), "side-ripped-parallel")
    told = {"head and sill": f"{COAT}."} if sill == COAT else {"head": f"{COAT}.", "sill": f"{sill}."}
    assert {along: text.split("tolerance: ")[1] for along, text in found.items()} == told


def test_nobody_scribes_a_return() -> None:
    """A bulge of 1/16 all round: the bead is set straight; boards between wooden jambs are scribed as ever."""
    kit = measured(RETURNS, bent("4 3/4"))
    for text in said(kit, "wall-bends").values():
        assert text.endswith('1/16" off a straight edge; set the corner bead straight and float the wall to it.')
    assert said(kit, "wall-bends") and not [
        one for part in kit.parts for one in part.touches if isinstance(one, Scribe)
    ]
    assert [one for part in kit_of(**_bent_at_jambs()).parts for one in part.touches if isinstance(one, Scribe)]


def _bent_at_jambs() -> dict[str, Any]:
    return {"openings__0__measured": {"date": "2026-06-01", "interior_depth": bent("4 3/4")}}


def test_a_twist_is_floated_out_where_there_is_no_casing() -> None:
    kit = measured(RETURNS, corners("4 25/32", "4 11/16", "4 11/16", "4 11/16"))
    assert said(kit, "wall-twists")[""].endswith("(twist): set the corner beads true and float the wall to them.")


def test_the_picture_of_the_wall_says_the_same() -> None:
    data = wall_data(measured(RETURNS, deeper_above("4 23/32")), job_of(changed()))
    assert data and "rip" not in str(data).replace("stripe", "")
    assert {edge["what"] for edge in data["edges"]} >= {"straight: return cut parallel"}
