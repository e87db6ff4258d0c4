"""The larger hole of flared jambs, drawn and told where it lies."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import changed, job_of

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import Ink
from jambs.drawings.views.details import details
from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.length import FINE, Units
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

FLARE = {"interior_trim__inside__flare": {"sides": "45 deg", "head": "10 deg"}}


def kit_of(**paths: Any) -> Kit:
    job = job_of(changed(**paths))
    return make_kit(place_windows(job)[0], job)


def holes(kit: Kit) -> list[float]:
    view = interior_elevation(kit, Units.INCH)
    return [box_around(shape.points).width for shape in view.shapes if shape.ink is Ink.HIDDEN]


def test_the_larger_hole_is_drawn_and_said_from_inside_only() -> None:
    """4 3/16 from the studs' face to the frame: at 45° as much wider on each side than 36."""
    kit = kit_of(**FLARE)
    assert [width for width in holes(kit) if width > 36] == [44.375]
    (said,) = (one for one in interior_elevation(kit, Units.INCH).remarks if "framing" in one)
    assert said.startswith('rough opening at the inside face of the framing 44 3/8" × 48 3/4": there it stands out')
    assert not [one for one in exterior_elevation(kit, Units.INCH).remarks if "framing" in one]


def test_square_jambs_have_one_hole() -> None:
    kit = kit_of()
    assert holes(kit) == [36.0]
    assert not [one for one in interior_elevation(kit, Units.INCH).remarks if "framing" in one]


RABBETED = {"thickness": "3/4", "stock": "poplar", "joint": "rabbet", "rabbet_depth": "3/8"}


def test_a_rabbet_that_leans_is_drawn_on_the_face_of_the_head_and_none_on_a_leg() -> None:
    """Both ends of the head: 3/4 / cos 20° wide along the board, and 4 23/32 tan 20° for the slant."""
    kit = kit_of(interior_trim__inside__jamb=RABBETED, interior_trim__inside__flare={"sides": "20 deg"})
    outline, *rabbets = drawn("detail W1-1", kit)
    wide = [max(u for u, _ in one) - min(u for u, _ in one) for one in rabbets]
    assert wide == pytest.approx([0.75 / math.cos(math.radians(20)) + 4.71875 * math.tan(math.radians(20))] * 2)
    assert max(u for u, _ in outline) > 30.75
    legs = [max(u for u, _ in one) - min(u for u, _ in one) for one in drawn("detail W1-2", kit)]
    assert min(legs) > 40


def drawn(name: str, kit: Kit) -> list[tuple[tuple[float, float], ...]]:
    """The lines of a detail."""
    (view,) = (one for one in details(kit, grid=FINE[Units.INCH]) if one.name == name)
    return [tuple(shape.points) for shape in view.shapes]
