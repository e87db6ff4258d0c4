"""A sash hinged at a mull meets the board that lies there, not the extension jamb."""

from __future__ import annotations

from cases import changed, job_of
from gangs import ganged, unit

from jambs.place.placement import Swing
from jambs.place.solve import place_windows
from jambs.place.swing import Obstacle

CASEMENT = {
    "like": "fixed",
    "sash": "casement in",
    "sash_thickness": "2 1/2",
    "sash_set_back": "-1/2",
    "sash_face": "2 1/2",
}


def swing(hinge: str) -> Swing:
    """The right one of two units, its sash proud of the frame by 1/2; the mull is at its left."""
    paths = ganged(
        windows__casement=CASEMENT,
        openings__0__units=[unit("30 x 48"), {"window": "casement", "frame": "30 x 48", "hinge": hinge}],
        openings__0__transom=None,
        openings__0__transom_bar=None,
    )
    (placement,) = place_windows(job_of(changed(**paths)))
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
