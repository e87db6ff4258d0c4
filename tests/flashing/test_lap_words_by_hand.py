"""What laps over what, in words: a membrane laps what lies up to 10 mm in front of it (National Building Code of Canada
9.27.3.8); farther out a strip has to bring it there; a wall that names none leaves it to be settled.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arches import arched
from cases import kit_of
from sills_under_shapes import on_sill
from trimmed_as_one import run_kits

from jambs.flashing.blank import BlankKind
from jambs.flashing.blank_words import work_on
from jambs.flashing.head_lap_words import CladdingLaps, SiteHeadLaps, UpstandLaps
from jambs.flashing.lap_words import (
    SET,
    SLOPE_FIRST,
    FlangePath,
    Foot,
    HeadMembraneLaps,
    HeadTapeLaps,
    PanLaps,
    SideTapeLaps,
    SillLaps,
    TrimLaps,
    WindowLaps,
)
from jambs.flashing.laps import window_laps
from jambs.flashing.make import make_flashings
from jambs.flashing.membrane import air_control_plane, is_behind, weather_membrane
from jambs.job.models.layers import Role
from jambs.job.models.outside import FlashingEntry
from jambs.length import MM_PER_INCH, Units
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.wall.planes import WallPlanes

INCH = Units.INCH
NEAR, FAR = 0.375, 0.5
BED = "sealant behind the head and side flanges, unbroken, as its maker says"


@pytest.mark.parametrize(("mm", "far"), [(9.9, False), (10.0, False), (10.1, True)])
def test_a_membrane_laps_what_lies_up_to_ten_millimeters_out(mm: float, far: bool) -> None:
    assert is_behind(mm / MM_PER_INCH) is far


@pytest.mark.parametrize(
    ("behind", "under", "head", "from_where", "over", "upstand", "cladding"),
    [
        (
            None,
            "the layer that sheds the water under the opening",
            "layer that sheds the water",
            "down over the head flange and its tape",
            "what sheds the water",
            'settle which layer does: the wall names no membrane; bring it over the upstand of 3"',
            "it",
        ),
        (
            NEAR,
            "the membrane under the opening",
            "membrane at the head",
            "down over the head flange and its tape",
            "membrane",
            'over the upstand of 3", taped at its upper edge',
            "the membrane",
        ),
        (
            FAR,
            "a strip under the opening that comes 1/2\" out from the wall's membrane",
            "strip of membrane at the head",
            "from the wall's membrane, 1/2\" farther in, down over the head flange and its tape",
            "strip of membrane",
            'from the membrane, 1/2" behind the trim plane, out over the upstand of 3"; taped at both edges',
            "the strip",
        ),
    ],
)
def test_where_the_membrane_is(
    behind: float | None, under: str, head: str, from_where: str, over: str, upstand: str, cladding: str
) -> None:
    assert PanLaps(front=1.0, behind=behind).over(INCH) == f'front leg 1" down over {under}'
    assert HeadMembraneLaps(behind=behind).what == head
    assert HeadMembraneLaps(behind=behind).over(INCH) == from_where
    assert UpstandLaps(behind=behind, upstand=3.0).what == over
    assert UpstandLaps(behind=behind, upstand=3.0).over(INCH) == upstand
    said = CladdingLaps(behind=behind, gap=0.375).over(INCH)
    assert said == f"over {cladding}, 3/8\" clear of the head casing's upper edge"
    bare = WindowLaps(is_door=False, has_flange=True, has_pan=False, behind=behind)
    drains = "no sealant under the bottom flange, so that water drains out"
    assert bare.over(INCH) == f"over {under}, {SLOPE_FIRST}; {BED}; {drains}; {SET}"


@pytest.mark.parametrize(
    ("is_door", "has_flange", "has_pan", "what", "over"),
    [
        (
            False,
            True,
            True,
            "window, nailing flange",
            f"over the pan; {BED}; no sealant under the bottom flange, so that",
        ),
        (False, False, True, "window on its clips", "over the pan; open at the bottom, so that the pan drains"),
        (True, True, False, "door, nailing flange", f"{BED}; its threshold bedded in sealant over its whole width"),
        (True, False, True, "door on its clips", "over the pan; open at the bottom"),
    ],
)
def test_what_a_window_and_a_door_stand_on(
    is_door: bool, has_flange: bool, has_pan: bool, what: str, over: str
) -> None:
    step = WindowLaps(is_door=is_door, has_flange=has_flange, has_pan=has_pan, behind=None)
    assert step.what == what and step.over(INCH).startswith(over) and step.over(INCH).endswith(SET)
    assert SLOPE_FIRST not in step.over(INCH)  # a pan drains it, a door's threshold is bedded


@pytest.mark.parametrize(
    ("shape", "bed", "bottom", "sides", "head"),
    [
        (None, "the head and side flanges", "under the bottom flange", "", ""),
        ("octagon", "those that slant too", "level flange at the bottom", "along every edge that slants", ""),
        ({"kind": "segment arch", "rise": "6"}, "of sides and curve", "under the bottom flange", "", "round the curve"),
        ("full round", "the flange all around", "a gap in it at the lowest place", "round the curve", ""),
    ],
)
def test_flanges_are_told_as_they_run_round_a_shape(shape: Any, bed: str, bottom: str, sides: str, head: str) -> None:
    """A rectangle's sides and head are no octagon's; tape does not bend in its plane round an arch."""
    made = arched(shape, 36, 36, exterior_trim__outside__sill=None).kit if shape else kit_of()
    window, side, top, *_ = (lap.step.over(INCH) for lap in window_laps(made))
    assert bed in window and bottom in window
    assert (sides in side and head in top) and ("round the curve" in side + top) is (shape not in (None, "octagon"))


@pytest.mark.parametrize(
    ("has_flange", "has_pan", "what", "over"),
    [
        (True, True, "tape at the side flanges", "over the flanges and the pan's end dams"),
        (True, False, "tape at the side flanges", "over the flanges"),
        (
            False,
            True,
            "tape at the sides",
            "from the frame onto what sheds the water beside it, over the pan's end dams",
        ),
        (False, False, "tape at the sides", "from the frame onto what sheds the water beside it"),
    ],
)
def test_the_tape_at_the_sides(has_flange: bool, has_pan: bool, what: str, over: str) -> None:
    step = SideTapeLaps(has_flange=has_flange, has_pan=has_pan)
    assert (step.what, step.over(INCH)) == (what, over)


def test_what_depends_on_a_flange_on_metal_and_on_jambs() -> None:
    tapes = [HeadTapeLaps(has_flange=one).what for one in (True, False)]
    assert tapes == ["tape at the head flange", "tape at the head"]
    sills = [SillLaps(has_flashing=one).over(INCH) for one in (True, False)]
    assert [one.startswith("on the sill flashing, its back") for one in sills] == [True, False]
    assert sills[1].startswith("its back at the frame")
    plain = TrimLaps(has_jambs=True, foot=Foot.SILL, is_butt=True)
    assert (plain.what, plain.over(INCH)) == (
        "exterior jambs and casing",
        "legs on the sill, head casing over the legs",
    )
    mitered = TrimLaps(has_jambs=False, foot=Foot.PAST_FRAME, is_butt=False)
    assert (mitered.what, mitered.over(INCH)) == (
        "exterior casing",
        "legs down past the frame, head casing mitered to them, sealed in the miter",
    )


WRAPPED: list[Any] = [
    "gypsum board 1/2",
    {"material": "stud 2x6", "spacing": "16"},
    "plywood 1/2",
    "housewrap",
    {"material": "EPS", "thickness": "5"},
    {"material": "plywood 1/2", "role": "outer sheathing"},
    "wood shingles",
]
"""The base wall with a membrane on its sheathing plane, 6 1/2 deep."""


def test_how_far_out_of_the_membrane_metal_flange_and_trim_stand() -> None:
    """Membrane 6 1/2 deep; flange plane 9 1/4, where the pan comes down too; trim plane 12."""
    steps = [lap.step for lap in make_flashings(kit_of(walls__main__layers=WRAPPED), FlashingEntry(), INCH).laps]
    assert [type(step) for step in steps if getattr(step, "behind", None) == 2.75] == [
        PanLaps,
        WindowLaps,
        HeadMembraneLaps,
    ]
    assert [type(step) for step in steps if getattr(step, "behind", None) == 5.5] == [UpstandLaps, CladdingLaps]


def test_a_unit_without_trim_outside_stands_on_no_pan() -> None:
    """What the job states no trim for, it makes no metal for."""
    found = window_laps(kit_of(walls__main__layers=WRAPPED))
    assert [lap.number for lap in found] == [1, 2, 3, 4]
    assert [type(lap.step) for lap in found] == [WindowLaps, SideTapeLaps, HeadTapeLaps, HeadMembraneLaps]
    assert not any(lap.step.has_pan for lap in found if isinstance(lap.step, WindowLaps | SideTapeLaps))


def with_membranes(*depths: float) -> WallPlanes:
    """The base wall, sheathing plane 6 1/2, with sheets of no thickness at these depths."""
    found = kit_of(walls__main__layers=WRAPPED).placement.planes
    sheet = next(one for one in found.layers if one.layer.role is Role.MEMBRANE)
    others = (one for one in found.layers if one.layer.role is not Role.MEMBRANE)
    sheets = (replace(sheet, inner=depth, outer=depth) for depth in depths)
    return replace(found, layers=tuple(sorted((*others, *sheets), key=lambda one: one.outer)))


@pytest.mark.parametrize(
    ("depths", "weather", "air"),
    [
        ((), None, 6.5),
        ((0.5,), None, 0.5),
        ((0.5, 6.0), None, 6.0),
        ((0.5, 6.5), 6.5, 6.5),
        ((6.5, 11.5), 11.5, 11.5),
        ((6.5 - 1 / 128,), 6.5 - 1 / 128, 6.5 - 1 / 128),  # half a 64th inside it, and no more
        ((6.5 - 1e-9,), 6.5, 6.5),  # on the sheathing, but for what a sum leaves over
    ],
)
def test_the_outermost_sheet_on_or_outside_the_sheathing_sheds_the_water(
    depths: tuple[float, ...], weather: float | None, air: float
) -> None:
    planes = with_membranes(*depths)
    assert weather_membrane(planes) == (weather if weather is None else pytest.approx(weather))
    assert air_control_plane(planes) == pytest.approx(air)


def shaped(shape: Any, frame: str, **more: Any) -> Kit:
    changes = {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame}
    return kit_of(**{**changes, **more})


def test_over_a_head_that_is_not_level_no_strip_is_made_and_a_pan_lies_on_the_level_bottom() -> None:
    """Shims 1/4: 24 1/2 wide at the foot of a raked frame; the level edge of an octagon of 30, cut 8, is 14.

    Moved out by 1/4 at corners of 45° it is 2 x 1/4 tan 22.5° = 0.2071 longer.
    """
    raked = make_flashings(shaped({"kind": "raked", "left": "30", "right": "48"}, "24 x 48"), FlashingEntry(), INCH)
    assert [one.kind for one in raked.blanks] == [BlankKind.SILL_PAN, BlankKind.SILL_FLASHING]
    assert raked.blanks[0].between == 24.5
    octagon = shaped({"kind": "octagon", "cut": "8"}, "30 x 30", exterior_trim__outside__sill=None)
    (pan,) = make_flashings(octagon, FlashingEntry(), INCH).blanks
    assert pan.between == pytest.approx(14.2071, abs=1e-4)
    # Casing goes round its lower edges too, so that the legs come down on a piece of it.
    steps = [lap.step for lap in make_flashings(octagon, FlashingEntry(), INCH).laps]
    said = [step.over(INCH) for step in steps if isinstance(step, TrimLaps)]
    assert len(said) == 1 and said[0].startswith("legs on the bottom piece, ")


@pytest.mark.parametrize(
    ("shape", "frame", "below", "formed", "from_below"),
    [
        (
            {"kind": "raked", "left": "30", "right": "48"},
            "24 x 48",
            "sill",
            "bent along every edge",
            "from the lowest piece",
        ),
        ({"kind": "octagon", "cut": "8"}, "30 x 30", "all round", "bent along every edge", "from the lowest piece"),
        ("triangle", "48 x 30", "sill", "bent along every edge", "from the lowest piece"),
        ({"kind": "segment arch", "rise": "6"}, "30 x 48", "sill", "soft metal dressed", "from both ends of the curve"),
        ("full round", "30 x 30", "all round", "soft metal dressed", "from the level diameter"),
    ],
)
def test_over_a_shaped_head_metal_is_formed_on_site_after_the_casing(
    shape: Any, frame: str, below: str, formed: str, from_below: str
) -> None:
    """Each piece over the one below: common practice, no source."""
    no_sill: dict[str, Any] = {"exterior_trim__outside__sill": None} if below == "all round" else {}
    if formed.startswith("soft"):
        kit = arched(shape, *map(float, frame.split(" x ")), **no_sill).kit
    else:
        kit = shaped(shape, frame, **no_sill)
    steps = [lap.step for lap in make_flashings(kit, FlashingEntry(), INCH).laps]
    assert [type(step) for step in steps[-4:]] == [TrimLaps, SiteHeadLaps, UpstandLaps, CladdingLaps]
    metal, upstand, cladding = (step.over(INCH) for step in steps[-3:])
    assert metal.startswith(formed) and from_below in metal.partition("; ")[2]
    assert from_below in upstand and cladding.endswith(", cut along it on the wall")


def test_a_level_head_has_its_strip_and_nothing_to_form_on_site() -> None:
    steps = [lap.step for lap in make_flashings(kit_of(), FlashingEntry(), INCH).laps]
    assert not any(isinstance(step, SiteHeadLaps) for step in steps)
    assert not any(word in step.over(INCH) for step in steps for word in ("piece", "cut along"))


def test_over_metal_returns_the_head_flashing_laps_their_face_legs_and_goes_by_them() -> None:
    over = SiteHeadLaps(front=0.5, round=FlangePath.ARCH, is_cased=False).over(INCH)
    assert "by the face legs" in over and 'front leg 1/2" down over the face legs of the returns' in over


def test_without_bent_metal_only_the_laps_of_the_kit_are_told() -> None:
    kit = kit_of()
    found = make_flashings(kit, None, INCH)
    assert (found.blanks, found.bending) == ((), None)
    assert [lap.number for lap in found.laps] == list(range(1, len(found.laps) + 1)) and found.laps


def test_feet_of_a_shape_without_two_legs_are_bedded_on_the_sill() -> None:
    """A quarter round has one leg: the flashing under its sill reaches from notch to notch, which differ."""
    made = on_sill({"kind": "quarter round", "high_side": "left"}, 30, 30)
    flashings = make_flashings(made.kit, FlashingEntry(), INCH)
    (trim,) = (lap.step for lap in flashings.laps if isinstance(lap.step, TrimLaps))
    assert trim.foot is Foot.FEET_ON_SILL
    assert trim.over(INCH) == "every foot cut to the sill's slope and bedded on it in sealant, every joint sealed"
    (sill,) = (part for part in made.kit.parts if part.kind is PartKind.EXTERIOR_SILL)
    left, right = (cut.along for cut in sill.cuts if isinstance(cut, Notch))
    (blank,) = (one for one in flashings.blanks if one.kind is BlankKind.SILL_FLASHING)
    assert left != right and blank.between == pytest.approx(sill.length - left - right)


def test_legs_come_down_on_a_piece_of_exterior_casing_only_where_there_is_one() -> None:
    """Inside, the base window has casing below too; outside its legs stand on the sill, or go past the frame."""

    def foot(**changes: Any) -> list[Foot]:
        laps = make_flashings(kit_of(**changes), None, INCH).laps
        return [lap.step.foot for lap in laps if isinstance(lap.step, TrimLaps)]

    assert foot() == [Foot.SILL]
    assert foot(exterior_trim__outside__sill=None) == [Foot.PAST_FRAME]
    assert foot(exterior_trim__outside__sill=None, position={"flange_on": "trim plane"}) == [Foot.BOTTOM_PIECE]


@pytest.mark.parametrize(
    ("shape", "height", "foot"), [("half round", 18, Foot.HEAD_ON_BOTTOM), ("full round", 36, Foot.RING)]
)
def test_casing_without_legs_goes_on_from_a_straight_piece_below_or_round(shape: str, height: int, foot: Foot) -> None:
    """Under a half round the bottom piece is straight, and the pieces of the curve stand on it."""
    kit = arched(shape, 36, height, exterior_trim__outside__sill=None).kit
    assert [lap.step.foot for lap in make_flashings(kit, None, INCH).laps if isinstance(lap.step, TrimLaps)] == [foot]


@pytest.mark.parametrize(("corner", "overhang", "is_butt"), [("miter", None, False), ("butt", "1/2", True)])
def test_the_head_casing_meets_the_legs_as_the_job_says(corner: str, overhang: str | None, is_butt: bool) -> None:
    casing = {"exterior_trim__outside__casing__corner": corner, "exterior_trim__outside__casing__overhang": overhang}
    laps = make_flashings(kit_of(**casing), None, INCH).laps
    assert [lap.step.is_butt for lap in laps if isinstance(lap.step, TrimLaps)] == [is_butt]


def test_openings_trimmed_as_one_stand_on_the_sill_over_all_though_the_middle_one_has_no_leg() -> None:
    found = [make_flashings(kit, None, INCH).laps for kit in run_kits(3)]
    feet = [lap.step.foot for laps in found for lap in laps if isinstance(lap.step, TrimLaps)]
    assert feet == [Foot.SILL] * 3


def test_the_metal_of_the_first_of_openings_trimmed_as_one_is_lapped_at_all_and_cut_once() -> None:
    one, two, three = (make_flashings(kit, FlashingEntry(), INCH) for kit in run_kits(3))
    over_all = {BlankKind.SILL_FLASHING, BlankKind.HEAD_FLASHING}
    assert over_all < {blank.kind for blank in one.blanks} and one.lent == ()
    for other in (two, three):
        assert not over_all & {blank.kind for blank in other.blanks}
        assert {blank.kind for blank in other.lent} == over_all
        # They lie in one line: each is the same metal.
        own = {blank.kind: (blank.length, blank.start) for blank in one.blanks if blank.kind in over_all}
        assert {blank.kind: (blank.length, blank.start) for blank in other.lent} == own
        assert [lap.step.kind for lap in other.laps] == [lap.step.kind for lap in one.laps]


def test_pans_of_openings_trimmed_as_one_all_end_behind_the_sill_that_runs_under_their_frames() -> None:
    """Frame 4 9/16 + 1 1/4 deep on clips, the sill 1/2 in under it: 5 5/16 of pan."""
    under = {"windows__fixed__nailing_flange": "no", "exterior_trim__outside__sill__under_frame": "1/2"}
    found = [
        blank
        for kit in run_kits(3, **under)
        for blank in make_flashings(kit, FlashingEntry(), INCH).blanks
        if blank.kind is BlankKind.SILL_PAN
    ]
    assert [blank.mark for blank in found] == ["W1", "W2", "W3"]
    assert [blank.legs[1].out for blank in found] == pytest.approx([4 + 9 / 16 + 1 + 1 / 4 - 1 / 2] * 3)


def test_a_sill_flashing_is_notched_round_the_walls_between_and_only_there() -> None:
    words = [
        work_on(blank)
        for kit in run_kits(2) + run_kits(1)
        for blank in make_flashings(kit, FlashingEntry(), INCH).blanks
        if blank.kind is BlankKind.SILL_FLASHING
    ]
    plain = "turn the ends up beside the exterior jambs that stand on the sill"
    assert words == [f"{plain}; notch it round the wall between, as the sill is, and seal its corners", plain]
