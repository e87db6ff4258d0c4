"""Sections at the crown of an arch by hand: what lies behind its jambs and round its casing is as at a straight head.

Faces of 2 1/2, a reveal of 1/8 inside and 1/4 outside, jambs of 3/4: backs 1 5/8 and 1 1/2 inside the frame's edge.
"""

from __future__ import annotations

from typing import Any

import pytest
from arches import arch_changes
from cases import changed, job_of

from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import WALL_SHOWN, cut_section
from jambs.section.edges import edges_at
from jambs.section.region import SectionCut, Stuff

ELLIPSE = {"kind": "ellipse arch", "rise": "15"}


def kit_of(shape: Any, curved: str) -> Kit:
    job = job_of(changed(**arch_changes(shape, 40, 60, curved=curved)))
    return make_kit(place_windows(job)[0], job)


@pytest.mark.parametrize("curved", ["sawn segments", "bent laminations", "bent in one"])
def test_the_shim_space_over_an_arch_begins_at_the_back_of_its_jamb(curved: str) -> None:
    kit = kit_of(ELLIPSE, curved)
    section = cut_section(kit, SectionCut.HEAD, wall_length=WALL_SHOWN)
    depth = kit.placement.inside_edge
    (gap,) = (
        region.outline
        for region in section.regions
        if region.stuff is Stuff.SHIM and max(at for _, at in region.outline) <= depth + 1e-9
    )
    assert min(out for out, _ in gap) == pytest.approx(60 - (2.5 - 0.125 - 0.75), abs=1e-6)


@pytest.mark.parametrize("shape", [ELLIPSE, {"kind": "half round"}, {"kind": "segment arch", "rise": "8"}])
def test_cladding_and_layers_stop_where_jamb_and_casing_lie_at_the_crown(shape: Any) -> None:
    """Outside: reveal of 1/4, casing 1/4 farther back from the jamb's face, 4 1/2 wide, cladding 3/8 over it."""
    kit = kit_of(shape, "sawn segments")
    trim = kit.placement.opening.exterior
    assert trim is not None
    edges = edges_at(kit, SectionCut.HEAD)
    face = -(2.5 - trim.frame_reveal)
    assert edges.before_flange(8.0) == pytest.approx(face + trim.jamb.thickness, abs=1e-6)
    over = trim.casing_reveal + trim.casing.width + trim.head_flashing.gap_to_cladding
    assert edges.cladding(8.0) == pytest.approx(face + over, abs=1e-6)
