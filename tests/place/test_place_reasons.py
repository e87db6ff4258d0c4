"""Every reason of a position where it holds and where another does; the base wall: ``position_cases.py``."""

from __future__ import annotations

from typing import Any

import finding_rows
from cases import changed, job_of
from finding_rows import Row, codes_in, each
from position_cases import CHOOSE, case, inside

from jambs.findings import Statement
from jambs.length import Units
from jambs.place import reasons
from jambs.place.limit_kinds import LimitKind
from jambs.place.reasons import BindingLimit
from jambs.place.solve import place_windows

TRIM_PLANE = 12.0


def broken_at_trim_plane(**paths: Any) -> list[Statement]:
    """What speaks against a flange on the trim plane, by the overhang alone."""
    (found,) = [
        one for one in place_windows(job_of(changed(**paths)))[0].alternatives if one.flange_plane == TRIM_PLANE
    ]
    return [one for one in found.against if one.limit is LimitKind.OVERHANG]


ROWS = [
    Row(
        code="shared-equally",
        appears=case(position=CHOOSE),
        quiet=case(position=CHOOSE, limits={"overhang": "2 11/16"}),
        inch="The added depth is shared equally inside and outside; no limit stands in the way.",
    ),
    Row(
        code="bound-by-limit",
        appears=case(position=CHOOSE, limits={"overhang": "2 11/16"}),
        quiet=case(position=CHOOSE, limits={"overhang": "2 23/32"}),
        inch="Nearest to an equal share: the limit 'greatest overhang' needs a flange plane at 9 3/16\" or "
        'farther in, 1/16" in from the equal share.',
        mm="Nearest to an equal share: the limit 'greatest overhang' needs a flange plane at 233.4 mm or "
        "farther in, 1.6 mm in from the equal share.",
    ),
    Row(
        code="bound-by-limit",
        appears=case(position=CHOOSE, limits={"least_interior_depth": "4 3/4"}),
        quiet=case(position=CHOOSE, limits={"least_interior_depth": "4 23/32"}),
        inch="Nearest to an equal share: the limit 'least interior depth' needs a flange plane at 9 5/16\" or "
        'farther out, 1/16" out from the equal share.',
        mm="Nearest to an equal share: the limit 'least interior depth' needs a flange plane at 236.5 mm or "
        "farther out, 1.6 mm out from the equal share.",
    ),
    Row(
        # Overhang 2: depth 3 15/16 out of a 1x6; out of a 1x4 (3 1/2 - 1/8 - 1/32) 3 11/32, which is 19/32 further in.
        code="moved-for-board",
        appears=case(position=CHOOSE, limits={"overhang": "2", "shift_for_board": "19/32"}),
        quiet=case(position=CHOOSE, limits={"overhang": "2", "shift_for_board": "9/16"}),
        inch='Moved in by 19/32" so that the interior jamb comes out of a board 3 1/2" wide instead of a wider one.',
        mm="Moved in by 15.1 mm so that the interior jamb comes out of a board 88.9 mm wide instead of a wider one.",
    ),
    Row(
        code="moved-for-board",
        appears=case(position=CHOOSE, limits={"overhang": "2", "least_interior_depth": "3 11/32"}),
        quiet=case(position=CHOOSE, limits={"overhang": "2", "least_interior_depth": "3 3/8"}),
        inch='Moved in by 19/32" so that the interior jamb comes out of a board 3 1/2" wide instead of a wider one.',
        mm="Moved in by 15.1 mm so that the interior jamb comes out of a board 88.9 mm wide instead of a wider one.",
    ),
    Row(
        code="share-taken-inside",
        appears=case(position={"share": "0.4"}),
        quiet=case(position="equal depths"),
        inch='40 % of the added depth of 5 1/2" is taken inside.',
        mm="40 % of the added depth of 139.7 mm is taken inside.",
    ),
    Row(
        code="asked-interior-depth",
        appears=inside("4"),
        quiet=case(position={"exterior_depth": "4"}),
        inch='The job asks for an interior depth of 4".',
        mm="The job asks for an interior depth of 101.6 mm.",
    ),
    Row(
        code="asked-exterior-depth",
        appears=case(position={"exterior_depth": "2"}),
        quiet=inside("2"),
        inch='The job asks for an exterior depth of 2".',
        mm="The job asks for an exterior depth of 50.8 mm.",
    ),
    Row(
        code="depths-made-equal",
        appears=case(position="equal depths"),
        quiet=inside("3 3/32"),
        inch="Interior and exterior depth are made equal.",
    ),
    Row(
        code="on-face",
        appears=case(position={"flange_on": "outer sheathing"}),
        quiet=case(position={"share": "1"}),
        inch="The job puts the flange on the face of the outer sheathing.",
    ),
    Row(
        code="on-face",
        appears=case(position={"flange_on": "outer sheathing"}, windows__fixed__nailing_flange="no"),
        quiet=case(position={"share": "1"}, windows__fixed__nailing_flange="no"),
        inch="The job puts the bearing face of the clips on the face of the outer sheathing.",
    ),
    Row(
        code="own-position",
        appears=case(openings__0__position={"share": "1/2"}),
        quiet=case(),
        inch="This opening has a position of its own.",
    ),
    Row(
        code="shared-position",
        appears=case(),
        quiet=case(openings__0__position={"share": "1/2"}),
        inch="One position for all openings of wall 'main'.",
    ),
    Row(
        # A 1x4 is 3 1/2 wide: flange at 4 9/16 + 3 1/2 - 1/8 - 1/32 = 7 29/32, the nearest that breaks no limit.
        code="next-best",
        appears=case(),
        quiet=None,
        inch='Next best: deepest interior jamb out of a board 3 1/2" wide.',
        mm="Next best: deepest interior jamb out of a board 88.9 mm wide.",
    ),
    Row(
        # An overhang of nothing leaves the sheathing alone, and that is taken.
        code="next-best",
        appears=case(position={"flange_on": "sheathing"}, limits={"overhang": "0"}),
        quiet=None,
        inch="No other candidate respects all limits.",
    ),
    Row(
        code="next-best",
        appears=case(position={"flange_on": "sheathing"}, limits={"overhang": "1 5/32"}),
        quiet=None,
        inch="Next best: interior and exterior depth equal.",
    ),
    Row(
        code="limit-missed",
        appears=lambda: broken_at_trim_plane(limits={"overhang": "5 15/32"}),
        quiet=lambda: broken_at_trim_plane(limits={"overhang": "5 1/2"}),
        inch='greatest overhang: missed by 1/32"',
        mm="greatest overhang: missed by 0.8 mm",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(reasons) - {row.code for row in ROWS} == {"least-heat"}, "least-heat has a test of its own"


def test_a_position_of_least_heat_says_what_the_limits_leave() -> None:
    """The study is given: here one that takes the innermost plane. Sheathing plane 6 1/2, overhang of 3: 9 1/2."""
    job = job_of(changed(position={"least_heat_loss": "yes"}))
    (placement,) = place_windows(job, least_heat_loss=lambda opening, planes, low, high: low)
    assert placement.flange_plane == 6.5
    low = reasons.BindingLimit(limit=LimitKind.WALL, plane=6.5)
    high = reasons.BindingLimit(limit=LimitKind.OVERHANG, plane=9.5)
    (why, *_) = placement.reasons
    assert why == reasons.LeastHeat(interior_depth=1.9375, low=low, high=high)
    assert why.sentence(job.units) == (
        'Least heat through the joint of window and wall: interior depth 1 15/16". Limits leave the flange plane '
        'from 6 1/2" (between sheathing and trim plane) to 9 1/2" (greatest overhang).'
    )


def test_a_limit_of_another_opening_is_told_without_its_mark_and_figure() -> None:
    """A's deep frame must not stand less than 4 3/4 into the wall, at 8 3/4; B's shallow one would allow 9 5/16."""
    data = changed(position=CHOOSE, limits={"least_interior_depth": "4 3/4"})
    data["windows"]["shallow"] = {**data["windows"]["fixed"], "jamb_depth": "4"}
    data["openings"] = [
        {**data["openings"][0], "mark": mark, "window": window} for mark, window in (("A", "fixed"), ("B", "shallow"))
    ]
    own, told = (next(iter(one.reasons)).sentence(Units.INCH) for one in place_windows(job_of(data)))
    assert own.startswith("Nearest to an equal share: the limit 'least interior depth' needs a flange plane at 9 5/16")
    assert told == (
        "Nearest to an equal share: the limit 'least interior depth' of another opening of this wall needs "
        'a flange plane farther out, 1/16" out from the equal share.'
    )
    data["openings"][0]["mark"] = "Z"
    assert next(iter(place_windows(job_of(data))[1].reasons)).sentence(Units.INCH) == told


def test_a_limit_of_another_opening_is_told_without_its_figure_where_a_board_was_saved_too() -> None:
    """B's shallow frame may have 4 1/2 inside at the most, so 8 1/2; A's 3 15/16 then goes in to 3 11/32 for a 1x4."""
    data = changed(position=CHOOSE, limits={"greatest_interior_depth": "4 1/2"})
    data["windows"]["shallow"] = {**data["windows"]["fixed"], "jamb_depth": "4"}
    data["openings"] = [
        {**data["openings"][0], "mark": mark, "window": window} for mark, window in (("A", "fixed"), ("B", "shallow"))
    ]
    other, own = place_windows(job_of(data))
    saved = reasons.MovedForBoard(moved=19 / 32, board=3.5)
    for found, plane in ((other, None), (own, 8.5)):
        bound = BindingLimit(limit=LimitKind.GREATEST_INTERIOR_DEPTH, plane=plane)
        assert found.reasons[:2] == (reasons.BoundByLimit(bound=bound, moved=0.75, is_moved_out=False), saved)


def test_openings_that_are_alike_are_each_bound_by_a_limit_of_their_own() -> None:
    data = changed(position=CHOOSE, limits={"least_interior_depth": "4 3/4"})
    data["openings"] = [{**data["openings"][0], "mark": mark} for mark in "AB"]
    first, second = place_windows(job_of(data))
    assert first.reasons[0] == second.reasons[0]


def test_the_other_window_is_named_where_a_position_was_worked_out_for_it() -> None:
    data = changed()
    data["windows"]["deep"] = {**data["windows"]["fixed"], "jamb_depth": "4"}
    data["openings"] = [
        {**data["openings"][0], "mark": mark, "window": window}
        for mark, window in (("A", "deep"), ("B", "fixed"), ("C", "fixed"))
    ]
    first, second, _ = place_windows(job_of(data))
    assert reasons.SharedPosition(wall="main", window="fixed") in first.reasons
    assert reasons.SharedPosition(wall="main", window=None) in second.reasons


def test_what_binds_a_wall_is_told_by_the_opening_whose_limit_it_is() -> None:
    """The sheet of another opening does not change with it."""
    own, other = (BindingLimit(limit=LimitKind.OVERHANG, plane=plane) for plane in (9.5, None))
    assert own.words(Units.INCH) == '9 1/2" (greatest overhang)'
    assert other.words(Units.INCH) == "what another opening of this wall allows (greatest overhang)"
