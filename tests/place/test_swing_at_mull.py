"""A sash hinged at a mull meets the board that lies there, not the extension jamb."""

from __future__ import annotations

from typing import Any

from cases import changed, job_of, placed
from gangs import boxed, ganged, unit

from jambs.place.placement import Placement, Swing
from jambs.place.solve import place_windows
from jambs.place.swing import Obstacle
from jambs.sides import Side

PROUD = {"sash": "casement in", "sash_thickness": "2 1/2", "sash_set_back": "-1/2", "sash_face": "2 1/2"}
CASEMENT = {"like": "fixed", **PROUD}
FRAME = changed()["windows"]["fixed"]


def hinged(*hinges: str | None, **more: Any) -> Placement:
    """Two units, each a casement where a side for its hinges is named, else fixed; the mull is between them."""
    units: list[dict[str, str]] = [
        unit("30 x 48") if hinge is None else {"window": "casement", "frame": "30 x 48", "hinge": hinge}
        for hinge in hinges
    ]
    paths = ganged(
        openings__0__units=units,
        openings__0__transom=None,
        openings__0__transom_bar=None,
        **{"windows__casement": CASEMENT, **more},
    )
    return place_windows(job_of(changed(**paths)))[0]


def test_the_sash_that_opens_the_least_counts() -> None:
    """At the mull a sash opens further than at the outer jamb, whichever unit it is in."""
    for hinges, place in ((("left", "left"), 0), (("right", "right"), 1)):
        found = hinged(*hinges)
        assert found.tightest == (found.units[place].opening, found.units[place].swing)
    assert hinged(None, None).tightest is None
    (one,) = place_windows(job_of(changed(windows__fixed={**FRAME, **PROUD})))
    assert one.swing is not None and one.tightest == (one.opening, one.swing)
    assert place_windows(job_of(changed()))[0].tightest is None


def swing(hinge: str) -> Swing:
    """The right one of two units, its sash proud of the frame by 1/2; the mull is at its left."""
    placement = hinged(None, hinge)
    assert placement.swing is None
    found = placement.units[1].swing
    assert found is not None
    return found


def test_at_the_outer_jamb_the_jamb_or_its_casing_stops_it() -> None:
    assert swing("right").stopped_by in (Obstacle.JAMB, Obstacle.CASING)


def test_at_the_mull_only_the_mull_casing_is_in_its_way() -> None:
    # The mull casing is 3/4 thick where the extension jamb is 4 11/16 deep.
    assert swing("left").stopped_by in (Obstacle.MULL_CASING, Obstacle.NOTHING)
    assert swing("left").greatest_deg > swing("right").greatest_deg


def test_outside_without_trim_nothing_lies_on_the_mull() -> None:
    """Its sash stands 1/2 proud of a frame that is in no one's way: it opens as far as a sash can."""
    out = {**CASEMENT, "sash": "casement out"}
    found = hinged(None, "left", windows__casement=out, exterior_trim=None).units[1].swing
    assert found is not None
    assert (found.greatest_deg, found.stopped_by) == (180.0, Obstacle.NOTHING)


def test_beside_a_boxed_mull_a_sash_meets_a_jamb_as_on_every_other_side() -> None:
    """Two casements in, the left unit and the right one: bare frames and a board on them, then a box of jambs."""
    units = [{"window": "casement", "frame": "30 x 48", "hinge": side} for side in ("left", "right")]
    for mull, sides in (({"gap": "1/2"}, [(Side.RIGHT,), (Side.LEFT,)]), (None, [(), ()])):
        paths: dict[str, Any] = {"openings__0__units": units, "windows__casement": CASEMENT}
        found = placed(**boxed(**paths) if mull is None else boxed(**paths, openings__0__mull=mull))
        assert [one.opening.at_mull for one in found.units] == sides
