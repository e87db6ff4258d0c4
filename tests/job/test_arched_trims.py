"""Trims that no arch is made with: each is refused with what would do."""

from __future__ import annotations

from typing import Any

import pytest
from arches import arch_changes
from cases import STOOL, changed, job_of
from gangs import ganged
from rounds import round_changes

from jambs.job import JobFaults
from jambs.place.frame_path import frame_path


def faults(**more: Any) -> str:
    with pytest.raises(JobFaults) as found:
        job_of(changed(**arch_changes("half round", 36, 60, **more)))
    return str(found.value)


FLAT = {"thickness": "3/4", "stock": "poplar", "joint": "miter", "curved": "flat segments"}
ONE = {"sides": "10 deg", "head": "10 deg"}


def test_a_flared_jamb_round_an_arch_is_neither_bent_nor_sawn_hollow() -> None:
    for curved in ("sawn segments", "bent laminations"):
        said = faults(interior_trim__inside__flare=ONE, curved=curved)
        assert (
            "flares (left 10°, head 10°, right 10°), and round the half round its jamb is part of a cone: plies "
            "ripped straight do not bend to it, rings of ply cut from sheet break where their grain runs out, and "
            "segments sawn square to the wall do not follow it; write "
            "jamb: {…, curved: flat segments}, straight boards with compound miters, or flare: none"
        ) in said
    unsaid = {key: one for key, one in FLAT.items() if key != "curved"}
    assert "curved: flat segments}" in faults(interior_trim__inside__flare=ONE, interior_trim__inside__jamb=unsaid)


@pytest.mark.parametrize(
    ("flare", "told"),
    [
        ({"sides": "10 deg", "head": "15 deg"}, "left 10°, head 15°, right 10°"),
        ({"head": "15 deg"}, "left square, head 15°, right square"),
        ({"sill": "15 deg"}, "left square, head square, right square"),
        ({"left": '1"', "right": '1 1/2"', "head": '1"'}, 'left 1" wider, head 1" wider, right 1 1/2" wider'),
    ],
)
def test_a_cone_has_one_flare_all_round(flare: dict[str, str], told: str) -> None:
    assert (
        f"flares round the half round ({told}), where its jamb is part of a cone, which has one flare all round; write "
        "the same flare for left and head and right, or flare: none"
    ) in faults(interior_trim__inside__flare=flare, interior_trim__inside__jamb=FLAT)


def test_one_flare_in_flat_segments_is_read() -> None:
    more: dict[str, Any] = {"interior_trim__inside__flare": {**ONE, "sill": "5 deg"}}
    job_of(changed(**arch_changes("half round", 36, 60, curved="flat segments", **more)))
    ring: dict[str, Any] = {"interior_trim__inside__flare": {"head": "10 deg", "sill": "10 deg"}}
    job_of(changed(**round_changes("full round", 36, 36, curved="flat segments", **ring)))
    assert "write the same flare for head and sill" in round_faults(
        "full round", curved="flat segments", interior_trim__inside__flare={"head": "10 deg"}
    )
    # Without legs theirs is of no account.
    legless: dict[str, Any] = {"interior_trim__inside__flare": {"head": "10 deg", "sides": "30 deg"}}
    job_of(changed(**round_changes("half round", 36, 18, curved="flat segments", **legless)))


def test_flat_segments_follow_a_flare_inside() -> None:
    assert (
        "makes its jamb in flat segments, which follow a flare, and round the half round it stands square; write "
        "curved: bent laminations or curved: sawn segments, or give it a flare"
    ) in faults(curved="flat segments")
    outside = {"thickness": "3/4", "stock": "cedar", "curved": "flat segments"}
    said = faults(exterior_trim__outside__jamb=outside)
    assert (
        "makes its jamb in flat segments, which follow a flare, and round the half round it stands square; write "
        "curved: sawn segments, or give it a flare"
    ) in said


def test_a_jamb_that_does_not_say_how_it_goes_round_is_asked() -> None:
    assert ("does not say how its jamb goes round the half round; write jamb: {…, curved: sawn segments}") in faults(
        exterior_trim__outside__jamb={"thickness": "3/4", "stock": "cedar"}
    )


def test_a_jamb_outside_is_not_bent() -> None:
    said = faults(exterior_trim__outside__jamb={"thickness": "3/4", "stock": "cedar", "curved": "bent laminations"})
    assert "bends its jamb, which is made inside only; write curved: sawn segments" in said


def test_a_lamination_does_not_lose_all_its_curve() -> None:
    with pytest.raises(JobFaults) as raised:
        job_of(changed(shop__springback="100 %"))
    assert "is more than a lamination springs back; 0 % to 25 % is allowed" in str(raised.value)


def round_faults(shape: Any, size: float = 36, **more: Any) -> str:
    with pytest.raises(JobFaults) as found:
        job_of(changed(**round_changes(shape, size, size, **more)))
    return str(found.value)


def test_a_ring_stands_on_no_stool_and_no_sill() -> None:
    assert "but the full round has no sill to stand on; give picture framed" in round_faults(
        "full round", interior_trim__inside=STOOL | {"jamb": {**STOOL["jamb"], "curved": "sawn segments"}}
    )
    sill = changed()["exterior_trim"]["outside"]["sill"]
    assert "gives a sill, which the full round has no room for" in round_faults(
        "full round", exterior_trim__outside__sill=sill
    )


def test_the_frame_of_a_ring_shows_alike_all_round() -> None:
    face = {"left": "2", "right": "2", "head": "2", "sill": "2 1/2"}
    assert "shows unlike faces in the full round frame; write frame_face: one width for all sides" in round_faults(
        "full round", windows__fixed__frame_face=face
    )
    job_of(changed(**round_changes("full round", 36, 36, windows__fixed__frame_face={**face, "sill": "2"})))


@pytest.mark.parametrize("centers", [{}, {"centers": 3}, {"centers": "5"}])
def test_an_ellipse_arch_may_be_bent(centers: dict[str, Any]) -> None:
    shape = {"kind": "ellipse arch", "rise": "14", **centers}
    job = job_of(changed(**arch_changes(shape, 40, 54, curved="bent laminations")))
    assert len([edge for edge in frame_path(job.openings[0]) if edge.center]) == int(centers.get("centers", 3))


def test_an_arch_has_three_centers_or_five() -> None:
    with pytest.raises(JobFaults) as found:
        job_of(changed(**arch_changes({"kind": "ellipse arch", "rise": "14", "centers": "4"}, 40, 54)))
    assert "centers: '4' is not allowed; write 3 or 5" in str(found.value)


def test_a_shape_of_ganged_units_is_sent_to_an_opening_of_its_own() -> None:
    units = [{"window": "fixed", "frame": "18 x 36"}] * 2
    with pytest.raises(JobFaults) as found:
        job_of(changed(**ganged(openings__0__units=units, openings__0__shape="half round")))
    assert (
        "gives units and shape, but units are rectangles; give the shaped window an opening of its own, without units"
    ) in str(found.value)
