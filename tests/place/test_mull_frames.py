"""Where the frames of ganged units meet, by hand: which edge runs through, which stands between.

Fixed units with a face of 2 1/2 all round (the sill's 3): two of 30 x 48 with a gap of 1/2, a transom of 60 1/2 x 16
over a bar of 1/2. Frame of the whole 60 1/2 x 64 1/2.
"""

from __future__ import annotations

from cases import changed, job_of
from gangs import ganged, unit

from jambs.job.models.openings import Opening
from jambs.place.units import Rectangle, mull_frames

FACES = {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "3"}


def opening_of(**paths: object) -> Opening:
    (one,) = job_of(changed(**ganged(windows__fixed__frame_face=FACES, **paths))).openings
    return one


def edges(opening: Opening, *, from_outside: bool = False) -> dict[int, list[Rectangle]]:
    found: dict[int, list[Rectangle]] = {}
    for number, edge in mull_frames(opening, from_outside=from_outside):
        found.setdefault(number, []).append(edge)
    return found


def test_level_edges_run_through_and_upright_ones_stand_between() -> None:
    """The lower heads lie from 45 1/2 to 48, inside the outer stiles; the transom's sill from 48 1/2 to 51 1/2.

    Below the transom the uprights stand from the sill's 3 to the head's 45 1/2, beside the gap from 30 to 30 1/2.
    """
    assert edges(opening_of()) == {
        1: [(27.5, 3.0, 30.0, 45.5), (2.5, 45.5, 30.0, 48.0)],
        2: [(30.5, 3.0, 33.0, 45.5), (30.5, 45.5, 58.0, 48.0)],
        3: [(2.5, 48.5, 58.0, 51.5)],
    }


def test_without_a_transom_the_uprights_end_under_the_head() -> None:
    beside = opening_of(openings__0__transom=None, openings__0__transom_bar=None)
    assert edges(beside) == {1: [(27.5, 3.0, 30.0, 45.5)], 2: [(30.5, 3.0, 33.0, 45.5)]}


def test_uprights_between_two_transoms_stand_on_their_sills() -> None:
    """Transoms of 30 x 16 over each unit, 48 1/2 to 64 1/2: their uprights from 51 1/2 to 62."""
    paned = opening_of(openings__0__transom=[unit("30 x 16"), unit("30 x 16")])
    assert edges(paned)[3] == [(27.5, 51.5, 30.0, 62.0), (2.5, 48.5, 30.0, 51.5)]
    assert edges(paned)[4] == [(30.5, 51.5, 33.0, 62.0), (30.5, 48.5, 58.0, 51.5)]


def test_from_outside_the_faces_that_are_seen_there_count() -> None:
    seen = opening_of(windows__fixed__exterior_frame_face="1 1/2")
    assert edges(seen, from_outside=True)[2] == [(30.5, 1.5, 32.0, 46.5), (30.5, 46.5, 59.0, 48.0)]
    assert edges(seen)[2] == [(30.5, 3.0, 33.0, 45.5), (30.5, 45.5, 58.0, 48.0)]


def test_a_single_window_has_no_edges_at_mulls() -> None:
    assert mull_frames(job_of(changed()).openings[0], from_outside=False) == ()
