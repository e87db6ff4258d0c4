"""Every finding of neighbors and room on both sides of its limit, with its sentence.

The base window, by hand, seen from inside, origin at the lower left corner of its frame of 35 1/2 x 47 1/2. Its hole in
the framing: 1/4 past the frame. Inside: clear opening 2 1/2 - 1/8 = 2 3/8 in from the frame's edge, casing 3/16 + 3 1/2
past it, so its outer edge 3 11/16 - 2 3/8 = 1 5/16 past the frame. Outside: clear opening 2 1/4 in, casing 1/4 + 4 1/2,
outer edge 2 1/2 past the frame; the head casing 1/2 farther, the horns of the sill 1. The wall is 12 3/4 thick.
"""

from __future__ import annotations

import copy
from typing import Any

import finding_rows
from cases import BASE, STOOL, changed, job_of
from finding_rows import Case, Row, codes_in, each
from metal import lined

from jambs.app.chain import kits_as_cut
from jambs.findings import Finding, Severity, Subject
from jambs.job import Job
from jambs.length import Units
from jambs.neighbors import findings
from jambs.neighbors.compare import neighbor_findings
from jambs.neighbors.unsaid import not_compared
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

CHECK, STOP = Severity.CHECK, Severity.STOP
W1 = Subject.opening("W1")
WINDOW = BASE["openings"][0]


def window(mark: str, **keys: Any) -> dict[str, Any]:
    """The base window, facing south."""
    return {**WINDOW, "faces": "south", "mark": mark, **keys}


def house(*windows: dict[str, Any], south: dict[str, Any] | None = None, **paths: Any) -> Job:
    """A house with one elevation, to the south."""
    elevation = {"start_line": "-10", "eave": "200", "faces": "south", **(south or {})}
    return job_of(changed(elevations={"south": elevation}, openings=list(windows), **paths))


def said_of(mark: str, job: Job) -> tuple[Finding, ...]:
    kits = [make_kit(one, job) for one in place_windows(job)]
    return neighbor_findings(kits, job)[mark]


def case(*windows: dict[str, Any], south: dict[str, Any] | None = None, **paths: Any) -> Case:
    return lambda: said_of("W1", house(*windows, south=south, **paths))


def beside(from_left: str, **paths: Any) -> Case:
    """The base window 100 from the corner, and a second one like it."""
    return case(window("W1", from_left="100"), window("W2", from_left=from_left), **paths)


def alone(from_left: str, **paths: Any) -> Case:
    """The base window on a wall 200 wide."""
    return case(window("W1", from_left=from_left), south={"width": "200"}, **paths)


def high(sill_height: str, **paths: Any) -> Case:
    return case(window("W1", sill_height=sill_height), **paths)


def asked_of(*windows: dict[str, Any], south: dict[str, Any] | None = None, **paths: Any) -> Case:
    """What is asked once for an elevation or the house."""

    def found() -> tuple[Finding, ...]:
        job = house(*windows, south=south, **paths)
        return tuple(not_compared([make_kit(one, job) for one in place_windows(job)], job))

    return found


BARE = {"exterior_trim": None}
METAL = {"exterior_trim__outside": lined(face_leg="4"), "interior_trim__inside__casing__width": "1"}
NO_HORN = {"exterior_trim__outside__sill__horn": "0"}
WITH_STOOL = {"interior_trim__inside": STOOL}

AS_ONE = {
    "interior_trim__inside__mull_casing": {"thickness": "3/4", "stock": "poplar"},
    "exterior_trim__outside__mull_casing": {"thickness": "1", "stock": "cedar"},
}


def as_one(from_left: str) -> Case:
    """W2 at the right of W1 as seen from inside, 5 1/2 of wall between; from outside it stands at the left of it."""
    second = window("W2", from_left=from_left, trim_with={"right_of": "W1", "wall": "5 1/2"})
    return lambda: said_of("W2", house(window("W1", from_left="100"), second, **AS_ONE))


ROWS = [
    Row(  # 100 less 35 1/2 and 6 between the frames: 58 1/2; 1/8 is what framers leave.
        code="stands-otherwise-apart", about=Subject.opening("W2"), severity=STOP,
        appears=as_one("58 23/64"), quiet=as_one("58 3/8"),
        inch=(
            'By from_left the frames of W2 and W1 stand 6 9/64" apart, and with the wall between them they stand 6" '
            "apart, W2 at the right of W1 as seen from inside: correct from_left, which is from the left corner seen "
            "from outside, or the wall of trim_with."
        ),
        mm=(
            "By from_left the frames of W2 and W1 stand 156 mm apart, and with the wall between them they stand "
            "152.4 mm apart, W2 at the right of W1 as seen from inside: correct from_left, which is from the left "
            "corner seen from outside, or the wall of trim_with."
        ),
    ),
    Row(
        code="holes-overlap", about=W1, severity=STOP,
        appears=beside("120"), quiet=beside("136"),
        inch=(
            'The frame of W1 and that of W2 overlap by 15 1/2" across and 47 1/2" in height; correct from_left or'
            " the heights."
        ),
        mm=(
            "The frame of W1 and that of W2 overlap by 393.7 mm across and 1206.5 mm in height; correct from_left"
            " or the heights."
        ),
    ),
    Row(  # 100 + 35 1/2 + 1/4 = 136 - 1/4
        code="holes-overlap", about=W1, severity=STOP,
        appears=beside("135 63/64"), quiet=beside("136"),
        inch=(
            'The hole in the framing of W1 and that of W2 overlap by 1/64" across and 48" in height; leave room '
            "for studs between them, or enter units that are joined as one opening."
        ),
        mm=(
            "The hole in the framing of W1 and that of W2 overlap by 0.4 mm across and 1219.2 mm in height; leave"
            " room for studs between them, or enter units that are joined as one opening."
        ),
    ),
    Row(
        # Between metal the clear opening is 2 1/4 in from the frame's edge, a leg of 4 on the wall ends 1 3/4 past it:
        # 3 1/2 for both, so frames stand 135 1/2 + 3 1/2 from the corner.
        code="trim-meets-neighbor", about=W1, severity=STOP,
        appears=beside("138 15/16", **METAL), quiet=beside("139", **METAL),
        inch=(
            "The left leg of the metal return runs into the right leg of the metal return of W2: they overlap by "
            '1/16" across and 46 55/64" in height; move an opening, or make the trim narrower.'
        ),
        mm=(
            "The left leg of the metal return runs into the right leg of the metal return of W2: they overlap by "
            "1.6 mm across and 1190.3 mm in height; move an opening, or make the trim narrower."
        ),
    ),
    Row(  # head casings: 100 + 35 1/2 + 3 = 141 1/2 - 3
        code="trim-meets-neighbor", about=W1, severity=STOP,
        appears=beside("141 31/64", **NO_HORN), quiet=beside("141 1/2", **NO_HORN),
        inch=(
            "The head of the exterior casing runs into the head of the exterior casing of W2: they overlap by "
            '1/64" across and 4 1/2" in height; move an opening, or make the trim narrower.'
        ),
        mm=(
            "The head of the exterior casing runs into the head of the exterior casing of W2: they overlap by 0.4"
            " mm across and 114.3 mm in height; move an opening, or make the trim narrower."
        ),
    ),
    Row(  # inside, W2 stands left of W1: 100 + 35 1/2 + 1 5/16 = 138 1/8 - 1 5/16; legs 42 3/4 + 2 x 3 11/16 long
        code="trim-meets-neighbor", about=W1, severity=STOP,
        appears=beside("138 7/64", **BARE), quiet=beside("138 1/8", **BARE),
        inch=(
            "The left leg of the interior casing runs into the right leg of the interior casing of W2: they "
            'overlap by 1/64" across and 50 1/8" in height; move an opening, or make the trim narrower.'
        ),
        mm=(
            "The left leg of the interior casing runs into the right leg of the interior casing of W2: they "
            "overlap by 0.4 mm across and 1273.2 mm in height; move an opening, or make the trim narrower."
        ),
    ),
    Row(
        code="past-end-of-wall", about=W1, severity=STOP,
        appears=alone("180"), quiet=alone("164 1/4"),
        inch=(
            'The frame ends 15 1/2" past the right end of the wall, seen from outside, 200" wide; correct '
            "from_left or the width."
        ),
        mm=(
            "The frame ends 393.7 mm past the right end of the wall, seen from outside, 5080 mm wide; correct "
            "from_left or the width."
        ),
    ),
    Row(  # 164 1/4 + 35 1/2 + 1/4 = 200
        code="past-end-of-wall", about=W1, severity=STOP,
        appears=alone("164 17/64"), quiet=alone("164 1/4"),
        inch=(
            'The hole in the framing ends 1/64" past the right end of the wall, seen from outside, 200" wide; '
            "correct from_left or the width."
        ),
        mm=(
            "The hole in the framing ends 0.4 mm past the right end of the wall, seen from outside, 5080 mm wide;"
            " correct from_left or the width."
        ),
    ),
    Row(  # the left corner is known without a width
        code="past-end-of-wall", about=W1, severity=STOP,
        appears=case(window("W1", from_left="15/64")), quiet=case(window("W1", from_left="1/4")),
        inch=(
            'The hole in the framing ends 1/64" past the left end of the wall, seen from outside; correct '
            "from_left or the width."
        ),
        mm=(
            "The hole in the framing ends 0.4 mm past the left end of the wall, seen from outside; correct "
            "from_left or the width."
        ),
    ),
    Row(  # horns: 161 + 35 1/2 + 3 1/2 = 200
        code="trim-past-corner", about=W1, severity=STOP,
        appears=alone("161 1/64"), quiet=alone("161"),
        inch=(
            'The exterior sill ends 1/64" past the right corner of the wall, seen from outside; move the opening,'
            " or make the trim narrower."
        ),
        mm=(
            "The exterior sill ends 0.4 mm past the right corner of the wall, seen from outside; move the "
            "opening, or make the trim narrower."
        ),
    ),
    Row(
        code="trim-past-corner", about=W1, severity=STOP,
        appears=alone("3 31/64"), quiet=alone("3 1/2"),
        inch=(
            'The exterior sill ends 1/64" past the left corner of the wall, seen from outside; move the opening, '
            "or make the trim narrower."
        ),
        mm=(
            "The exterior sill ends 0.4 mm past the left corner of the wall, seen from outside; move the opening,"
            " or make the trim narrower."
        ),
    ),
    Row(  # 12 3/4 + 1 5/16 = 14 1/16
        code="trim-in-corner", about=W1, severity=CHECK,
        appears=alone("14 3/64"), quiet=alone("14 1/16"),
        inch=(
            'The head of the interior casing runs 1/64" into the wall at the right corner of the room, if that '
            'wall is 12 3/4" thick like this one; measure it, then cut the trim to the corner or move the '
            "opening."
        ),
        mm=(
            "The head of the interior casing runs 0.4 mm into the wall at the right corner of the room, if that "
            "wall is 323.9 mm thick like this one; measure it, then cut the trim to the corner or move the "
            "opening."
        ),
    ),
    Row(  # horns of the stool: 3/4 past the casing; 200 - 12 3/4 - 2 1/16 - 35 1/2 = 149 11/16
        code="trim-in-corner", about=W1, severity=CHECK,
        appears=alone("149 45/64", **WITH_STOOL), quiet=alone("149 11/16", **WITH_STOOL),
        inch=(
            'The stool runs 1/64" into the wall at the left corner of the room, if that wall is 12 3/4" thick '
            "like this one; measure it, then cut the trim to the corner or move the opening."
        ),
        mm=(
            "The stool runs 0.4 mm into the wall at the left corner of the room, if that wall is 323.9 mm thick "
            "like this one; measure it, then cut the trim to the corner or move the opening."
        ),
    ),
    Row(  # apron: 2 3/8 - 1 - 3 1/2 = 2 1/8 below the frame
        code="below-floor", about=W1, severity=STOP,
        appears=high("1/2", **WITH_STOOL), quiet=high("2 1/8", **WITH_STOOL),
        inch=(
            'The apron reaches 1 5/8" below the finished floor; set the window higher, or make the trim under it '
            "narrower."
        ),
        mm=(
            "The apron reaches 41.3 mm below the finished floor; set the window higher, or make the trim under it"
            " narrower."
        ),
    ),
    Row(  # bottom casing: 1 5/16 below the frame
        code="below-floor", about=W1, severity=STOP,
        appears=high("1 19/64"), quiet=high("1 5/16"),
        inch=(
            'The left leg of the interior casing reaches 1/64" below the finished floor; set the window higher, '
            "or make the trim under it narrower."
        ),
        mm=(
            "The left leg of the interior casing reaches 0.4 mm below the finished floor; set the window higher, "
            "or make the trim under it narrower."
        ),
    ),
    Row(  # 36 + 47 1/2 + 1 5/16 = 84 13/16
        code="above-ceiling", about=W1, severity=STOP,
        appears=high("36", ceiling="84 51/64"), quiet=high("36", ceiling="84 13/16"),
        inch=(
            'The head of the interior casing reaches 1/64" above the ceiling, which is 84 51/64" over the '
            "finished floor; set the window lower, or make the trim over it narrower."
        ),
        mm=(
            "The head of the interior casing reaches 0.4 mm above the ceiling, which is 2153.8 mm over the "
            "finished floor; set the window lower, or make the trim over it narrower."
        ),
    ),
    Row(  # the story's own ceiling holds, not the job's
        code="above-ceiling", about=W1, severity=STOP,
        appears=high("36", ceiling="90", south={"stories": [{"floor": "0", "ceiling": "84", "openings": ["W1"]}]}),
        quiet=high("36", ceiling="84", south={"stories": [{"floor": "0", "ceiling": "90", "openings": ["W1"]}]}),
        inch=(
            'The head of the interior casing reaches 13/16" above the ceiling, which is 84" over the finished '
            "floor; set the window lower, or make the trim over it narrower."
        ),
        mm=(
            "The head of the interior casing reaches 20.6 mm above the ceiling, which is 2133.6 mm over the "
            "finished floor; set the window lower, or make the trim over it narrower."
        ),
    ),
    Row(  # frame: 100 + 36 + 47 1/2 - 64
        code="above-eave", about=W1, severity=STOP,
        appears=high("36", south={"eave": "119 1/2", "stories": [{"floor": "100", "openings": ["W1"]}]}),
        quiet=high("36", south={"eave": "186", "stories": [{"floor": "100", "openings": ["W1"]}]}),
        inch=(
            'The frame reaches 64" above the eave of elevation \'south\'; check eave, the story and the height of '
            "the opening."
        ),
        mm=(
            "The frame reaches 1625.6 mm above the eave of elevation 'south'; check eave, the story and the "
            "height of the opening."
        ),
    ),
    Row(  # head casing: 36 + 47 1/2 + 2 1/2 = 86
        code="above-eave", about=W1, severity=STOP,
        appears=high("36", south={"eave": "85 63/64"}), quiet=high("36", south={"eave": "86"}),
        inch=(
            'The head of the exterior casing reaches 1/64" above the eave of elevation \'south\'; check eave, the '
            "story and the height of the opening."
        ),
        mm=(
            "The head of the exterior casing reaches 0.4 mm above the eave of elevation 'south'; check eave, the "
            "story and the height of the opening."
        ),
    ),
    Row(
        code="not-compared", about=Subject.elevation("south"), severity=Severity.NOTE,
        appears=asked_of(window("W1", from_left="100"), window("W2")),
        quiet=asked_of(window("W1", from_left="100"), window("W2", from_left="142 1/2")),
        inch=(
            "W2: no from_left in the job, so not compared with neighbors and the corners of the wall; from_left runs "
            "from the left corner of the wall, seen from outside, to the left edge of the frame."
        ),
    ),
    Row(  # on no elevation, and facing one way
        code="not-compared", about=Subject.house("test"), severity=Severity.NOTE,
        appears=asked_of(window("W1", faces="north"), window("W2", faces="north")),
        quiet=asked_of(window("W1", faces="north"), window("W2", faces="east")),
        inch=(
            "W1, W2: no elevation and no from_left in the job, so not compared with neighbors and the corners of the "
            "wall; from_left runs from the left corner of the wall, seen from outside, to the left edge of the frame."
        ),
    ),
]  # fmt: skip


@each(ROWS)
def test_a_finding_appears_and_just_does_not(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def codes(job: Job, mark: str = "W1") -> list[str]:
    return [one.code for one in said_of(mark, job)]


def test_two_windows_with_room_between_say_nothing() -> None:
    """Horns end 3 1/2 past the frames: 100 + 35 1/2 + 7 = 142 1/2."""
    job = house(window("W1", from_left="100"), window("W2", from_left="142 1/2"), south={"width": "200"}, ceiling="90")
    assert codes(job) == codes(job, "W2") == []


def test_both_openings_say_that_they_collide() -> None:
    job = house(window("W1", from_left="100"), window("W2", from_left="120"))
    assert codes(job) == codes(job, "W2") == ["holes-overlap"]


def test_frames_that_only_touch_still_have_no_studs_between() -> None:
    job = house(window("W1", from_left="100"), window("W2", from_left="135 1/2"))
    (first, *_) = said_of("W1", job)
    assert isinstance(first, findings.HolesOverlap)
    assert first.hole is findings.Hole.ROUGH_OPENING


def test_openings_trimmed_as_one_have_their_boards_over_both() -> None:
    second = window("W2", from_left="58 1/2", trim_with={"right_of": "W1", "wall": "5 1/2"})
    job = house(window("W1", from_left="100"), second, **AS_ONE)
    assert codes(job) == codes(job, "W2") == []
    # By themselves their casings would lie over each other: 2 1/2 past each frame, and 1/2 more at the heads.
    alone = house(window("W1", from_left="100"), window("W2", from_left="58 1/2"), **AS_ONE)
    assert "trim-meets-neighbor" in codes(alone, "W2")


def test_the_other_way_round_is_told() -> None:
    second = window("W2", from_left="141 1/2", trim_with={"right_of": "W1", "wall": "5 1/2"})
    (found,) = said_of("W2", house(window("W1", from_left="100"), second, **AS_ONE))
    assert "stand in another order, or over each other, and" in found.sentence(Units.INCH)


def test_the_cut_sheet_says_it() -> None:
    first, _ = kits_as_cut(house(window("W1", from_left="100"), window("W2", from_left="120")))
    assert [one.code for one in first.findings if one.severity is STOP] == ["holes-overlap"]


def test_an_opening_that_the_job_does_not_place_is_compared_with_none() -> None:
    job = house(window("W1", from_left="100"), window("W2"), window("W3", from_left="100", faces="north"))
    assert codes(job) == []


def test_a_single_opening_and_an_elevation_that_draws_courses_are_not_asked() -> None:
    """Nothing can run into one window; courses say themselves what they draw side by side."""
    alone_there = asked_of(window("W1"))
    shingles = {"kind": "shingles", "length": "18", "coursing": "single", "least_exposure": "5", "wanted_exposure": "7"}
    drawn = asked_of(window("W1"), window("W2"), south={"cladding": shingles})
    assert [*alone_there(), *drawn()] == []


def test_openings_over_each_other_keep_clear_by_their_heights() -> None:
    """W2 a story up: bottom casing outside, horns and all, lies far above W1's head."""
    upstairs = {"stories": [{"floor": "110", "openings": ["W2"]}]}
    apart = house(window("W1", from_left="100"), window("W2", from_left="100"), south={"eave": "300", **upstairs})
    assert codes(apart) == []
    below = house(window("W1", from_left="100"), window("W2", from_left="100"), south={"eave": "300"})
    assert codes(below) == ["holes-overlap"]


def test_openings_of_two_walls_of_one_elevation_are_not_compared() -> None:
    """Each wall of an elevation that has several has its own left corner."""
    walls = {name: copy.deepcopy(BASE["walls"]["main"]) for name in ("main", "wing")}
    pair = (window("W1", wall="main", from_left="50"), window("W2", wall="wing", from_left="50"))
    assert codes(house(*pair, walls=walls)) == ["holes-overlap"]
    assert codes(house(*pair, walls=walls, south={"walls": {"main": "200", "wing": "100"}})) == []


def test_a_door_stands_on_its_floor() -> None:
    """Its legs end on the floor, neither below it nor in the air."""
    three = {**{key: value for key, value in STOOL.items() if key not in ("stool", "apron")}, "style": "three-sided"}
    door = {key: value for key, value in window("W1", from_left="100").items() if key != "sill_height"}
    job = house({**door, "floor_below_frame": "3/4"}, interior_trim__inside=three, exterior_trim=None)
    assert codes(job) == []
