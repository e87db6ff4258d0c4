"""A flared opening in a deep wall, sized by hand: slant, blank, ends, room opening, stool, what stays square."""

from __future__ import annotations

import math

import pytest
from cases import STOOL, figure, kit_of, part_of

from jambs.length import FINE, Units
from jambs.parts.board.arrises import Arris
from jambs.parts.board.cuts import Crosscut, Edge, EdgeBevel, End, PlaneCut, PlaneRabbet, Rip, SlantedNotch, saw_angles
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace, worked_face
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.flare_words import FROM_SQUARE

SIN10, COS10, TAN10 = (way(math.radians(10)) for way in (math.sin, math.cos, math.tan))
SIN15, COS15, TAN15 = (way(math.radians(15)) for way in (math.sin, math.cos, math.tan))
DEPTH = 4 + 11 / 16 + 1 / 32
"""The base job's interior depth of 4 11/16 and 1/32 proud: frame → room edge [in]."""
MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
BUTTED = {"thickness": "3/4", "stock": "poplar", "joint": "head over legs"}


def flared(jamb: dict[str, str] = MITERED, **flare: str) -> Kit:
    flare = flare or {"sides": "10 deg", "head": "15 deg"}
    return kit_of(interior_trim__inside__jamb=jamb, interior_trim__inside__flare=flare)


def head(kit: Kit) -> Part:
    return part_of(kit, "extension jamb", "head")


def test_width_and_bevels_of_a_flared_leg() -> None:
    """Face 4.71875 / cos 10° = 4.7915; the blank is wider by 3/4 tan 10° = 0.1322 for the two bevels."""
    leg = part_of(flared(), "extension jamb", "left leg")
    assert leg.width == pytest.approx(4.7915 + 0.1322, abs=1e-4)
    bevels = [cut for cut in leg.cuts if isinstance(cut, EdgeBevel)]
    assert [(cut.angle_deg, cut.face_short) for cut in bevels] == [(10.0, False), (10.0, True)]
    x, y, d = leg.seat.through
    assert (x, y, d) == pytest.approx((-COS10, 0.0, SIN10))


def test_long_point_of_a_mitered_head() -> None:
    """30.75 clear, and at each end 4.71875 tan 10° + 0.75 / cos 10°: the leg's back at the room edge."""
    part = head(flared())
    assert part.length == pytest.approx(30.75 + 2 * (DEPTH * TAN10 + 0.75 / COS10))


def test_saw_settings_of_a_mitered_head_by_closed_form() -> None:
    """Two faces that stand square on (cos 10, 0, -sin 10) and (0, -cos 15, -sin 15): the joint halves them."""
    planes = [cut.flat for cut in head(flared()).cuts if isinstance(cut, PlaneCut)]
    over = math.sqrt(2 - 2 * SIN10 * SIN15)
    along, across, through = COS10 / over, SIN10 * COS15 / over, (1 - SIN10 * SIN15) / over
    assert len(planes) == 2
    for plane in planes:
        assert saw_angles(plane) == pytest.approx(
            (math.degrees(math.atan(across / along)), math.degrees(math.asin(through)))
        )


def test_a_leg_that_leans_out_under_a_slope_is_longest_at_the_frame() -> None:
    """Under slopes of 6 in 18, square to the wall, a leg gets shorter the farther out it leans.

    Its face stands 2 3/8 in from the frame: there the slope is 30 + 2 3/8 / 3 high, less 2 3/8 √10 / 3 for a clear
    opening as far within it; the leg stands 2 3/8 up.
    """
    shape = {"openings__0__shape": {"kind": "gable", "sides": "30"}, "openings__0__frame": "36 x 36"}
    flare = {"interior_trim__inside__jamb": BUTTED, "interior_trim__inside__flare": {"sides": "15 deg"}}
    kit = kit_of(openings__0__rough_opening=None, **shape, **flare)
    for side in ("left leg", "right leg"):
        long = 30 + 2.375 / 3 - 2.375 * math.sqrt(10) / 3 - 2.375
        assert part_of(kit, "extension jamb", side).length == pytest.approx(long)


def test_the_room_opening_and_what_is_laid_out_by_it() -> None:
    kit = flared()
    wide, high = 30.75 + 2 * DEPTH * TAN10, 42.75 + DEPTH * TAN15
    assert (kit.room.width, kit.room.height) == pytest.approx((wide, high))
    assert figure(kit, "flared opening width") == pytest.approx(wide)
    assert figure(kit, "flared opening height") == pytest.approx(high)
    assert figure(kit, "clear opening width") == 30.75
    assert figure(kit, "jamb box width") == pytest.approx(30.75 + 2 * 0.75 / COS10)
    assert figure(kit, "flared jamb box width") == pytest.approx(wide + 2 * 0.75 / COS10)
    assert figure(kit, "casing outside width") == pytest.approx(wide + 2 * (3 / 16 + 3.5))
    assert figure(kit, "shim space left") == pytest.approx(0.25 + 2.375 - 0.75 / COS10)


def test_a_length_is_met_at_the_finished_face() -> None:
    """1 1/2 in wider over 4 11/16: at the finished face 30.75 + 3, a little more where the jambs stand proud."""
    kit = flared(sides='1 1/2"')
    assert kit.flares.left == kit.flares.right == pytest.approx(math.degrees(math.atan(1.5 / 4.6875)))
    assert kit.room.width == pytest.approx(30.75 + 3.0 * DEPTH / 4.6875)
    assert kit.flares.head == 0.0 and kit.room.height == 42.75


def test_a_leg_flared_under_a_plumb_head_ends_in_a_plain_bevel_and_the_head_in_compound_miters() -> None:
    kit = flared(sides="20 deg")
    leg, across = part_of(kit, "extension jamb", "right leg"), head(kit)
    assert not any(isinstance(cut, PlaneCut) for cut in leg.cuts)
    assert across.cuts[:2] == (Rip(width=DEPTH), Crosscut(length=across.length))
    assert sum(isinstance(cut, PlaneCut) for cut in across.cuts) == 2


def test_a_flared_corner_is_let_in_along_the_leg() -> None:
    kit = flared({"thickness": "3/4", "stock": "poplar", "joint": "rabbet", "rabbet_depth": "3/8"})
    rabbets = [cut for cut in head(kit).cuts if isinstance(cut, PlaneRabbet)]
    assert [(cut.end, cut.depth) for cut in rabbets] == [(End.START, 0.375), (End.FINISH, 0.375)]
    leg = part_of(kit, "extension jamb", "left leg")
    butted = part_of(flared(BUTTED), "extension jamb", "left leg")
    # At the head 3/8 square to a face that leans by 15°, at the bottom 3/8.
    assert leg.length - butted.length == pytest.approx(0.375 / COS15 + 0.375)


def test_a_stool_between_flared_legs_is_notched_along_their_backs() -> None:
    """The horn's notch is longer at the frame by 4 11/16 tan 10° = 0.8265; the legs end square on the stool."""
    kit = kit_of(interior_trim__inside={**STOOL, "flare": {"sides": "10 deg"}})
    stool = part_of(kit, "stool", "sill")
    notches = [cut for cut in stool.cuts if isinstance(cut, SlantedNotch)]
    assert len(notches) == 2
    for notch in notches:
        assert notch.along - notch.along_inside == pytest.approx(4.6875 * TAN10)
    wide = 30.75 + 2 * DEPTH * TAN10
    assert stool.length == pytest.approx(wide + 2 * (3 / 16 + 3.5 + 0.75))
    leg = part_of(kit, "extension jamb", "left leg")
    assert leg.length == 42.75 and not any(isinstance(cut, PlaneCut) for cut in leg.cuts)


def test_a_wall_that_tapers_and_jambs_that_flare() -> None:
    """Left leg 4 5/8 at the bottom, 4 3/4 at the top, 1/32 proud: each over cos 10° on the face."""
    read = {"head_left": "4 3/4", "head_right": "4 7/8", "sill_left": "4 5/8", "sill_right": "4 3/4"}
    kit = kit_of(
        interior_trim__inside__jamb=MITERED,
        interior_trim__inside__flare={"sides": "10 deg"},
        openings__0__measured={"date": "2026-03-20", "interior_depth": read},
    )
    leg = part_of(kit, "extension jamb", "left leg")
    assert leg.width == pytest.approx((4.75 + 1 / 32) / COS10 + 0.75 * TAN10)
    far = {arris: ends for arris, ends in leg.corners.items() if arris.edge.value == "far" and not arris.on_back}
    ((start, finish),) = far.values()
    slope = (finish[1] - start[1]) / (finish[0] - start[0])
    assert start[1] - slope * start[0] == pytest.approx((4.625 + 1 / 32) / COS10)
    assert start[1] + slope * (leg.length - start[0]) == pytest.approx((4.75 + 1 / 32) / COS10)
    assert kit.room.left == pytest.approx(kit.frames[0].clear.left - (4.75 + 1 / 32) * TAN10)
    # 4.65625 and 4.78125 over cos 10°: 4.7281 and 4.8550, on sixty-fourths; 0.1269 in 43 1/2 and more: 0.2°.
    assert work_words(leg, grid=FINE[Units.INCH])[:2] == (
        "rip the frame edge, blade tilted 10° (80°), long on the face",
        "rip the room edge 0.2° off the grain, blade tilted 10° (80°), long on the back: face "
        '4 47/64" wide at the bottom, 4 55/64" at the top',
    )


def test_the_room_opening_reaches_out_by_each_sides_own_lean() -> None:
    """Picture framed, in a wall of one depth: at 45° a side goes as far out as it is deep."""
    found = flared(sides="10 deg", head="15 deg", sill="45 deg")
    clear = found.frames[0].clear
    assert clear.left - found.room.left == pytest.approx(DEPTH * TAN10)
    assert found.room.right - clear.right == pytest.approx(DEPTH * TAN10)
    assert found.room.top - clear.top == pytest.approx(DEPTH * TAN15)
    assert clear.bottom - found.room.bottom == pytest.approx(DEPTH)


def test_words_of_a_flared_leg() -> None:
    """Long: 42 3/4 + 3/4 at the bottom + 4.71875 tan 15° + 0.75 / cos 15° = 45.541; on the face 42 3/4 + 1.264."""
    leg = part_of(flared(), "extension jamb", "left leg")
    assert ends_words(leg, grid=FINE[Units.INCH]) == (
        "bottom blade tilted 45° (45°), long point on the back; top miter 14.8° (75.2°), blade tilted "
        '43.7° (46.3°), long point at the room edge on the back; long point 45 35/64" (room edge on the back), '
        'short point 42 3/4" (frame edge on the face), room edge on the face 44 1/64"'
    )
    assert work_words(leg, grid=FINE[Units.INCH]) == (
        'rip both long edges parallel, blade tilted 10° (80°): face 4 51/64" wide; the frame edge is long on the face, '
        "the room edge on the back",
        FROM_SQUARE,
    )


@pytest.mark.parametrize("flare", [{}, {"sides": "0 deg"}, {"head": "0", "sill": '0"'}])
def test_no_flare_is_the_plain_case(flare: dict[str, str]) -> None:
    plain = kit_of(interior_trim__inside__jamb=MITERED)
    same = kit_of(interior_trim__inside__jamb=MITERED, interior_trim__inside__flare=flare)
    assert same.parts == plain.parts and same.figures == plain.figures and same.findings == plain.findings


def test_rabbets_of_two_unlike_flares_say_their_ends() -> None:
    """Along the board the leg is 3/4 / cos thick: 0.7616 at 10°, 0.7981 at 20°; the blank's end is sawn off by then."""
    kit = flared({**MITERED, "joint": "rabbet", "rabbet_depth": "3/8"}, left="10 deg", right="20 deg", head="15 deg")
    words = [one for one in work_words(head(kit), grid=FINE[Units.INCH]) if one.startswith("rabbet")]
    assert [(one[:21], one.split(", ")[1]) for one in words] == [
        ("rabbet the left end 3", '49/64" wide along the board from the sawn end'),
        ("rabbet the right end ", '51/64" wide along the board from the sawn end'),
    ]


def test_notches_of_two_unlike_flares_say_their_ends() -> None:
    """Horn 3/4, casing 3 1/2, reveal 3/16 from the face at the room edge; a leg's back lies 3/4 / cos behind it.

    At the wall 4.4375 + tan / 32 - 0.75 / cos: 3.6245 at 25°, 3.6874 at 5°; at the frame 4.6875 tan more.
    """
    kit = kit_of(interior_trim__inside={**STOOL, "flare": {"left": "25 deg", "right": "5 deg", "head": "10 deg"}})
    words = [one for one in work_words(part_of(kit, "stool", "sill"), grid=FINE[Units.INCH]) if one.startswith("notch")]
    assert [one[:63] for one in words] == [
        'notch the right end 4 3/32" long at the frame edge, 3 11/16" lo',
        'notch the left end 5 13/16" long at the frame edge, 3 5/8" long',
    ]


@pytest.mark.parametrize("joint", [MITERED, {**MITERED, "joint": "rabbet", "rabbet_depth": "3/8"}])
def test_compound_cuts_are_laid_out_on_the_longer_face(joint: dict[str, str]) -> None:
    """From the line across the board on which it is longest the plane leads inward, toward the middle of the board."""
    kit = flared(joint, left="10 deg", right="50 deg", head="60 deg", sill="5 deg")
    cuts = [cut for part in kit.parts for cut in part.cuts if isinstance(cut, PlaneCut | PlaneRabbet)]
    assert cuts
    for cut in cuts:
        end = cut.at if isinstance(cut, PlaneCut) else cut.end
        if isinstance(end, End):
            assert (cut.flat.way[0] > 0) is (end is End.START)


def test_a_compound_end_is_drawn_on_the_face_from_arris_to_arris() -> None:
    """What the face loses past the plane of each end begins where its near arris ends."""
    part = head(flared(left="10 deg", right="30 deg", head="15 deg"))
    corners = [corner for one in worked_face(part, BoardFace.FACE).bevels for corner in one.outline]
    near = part.corners[Arris(edge=Edge.NEAR, on_back=False)]
    assert [u for u, _, _ in near] == pytest.approx([DEPTH * TAN10 + 0.75 / COS10, part.length - 3.5904], abs=1e-4)
    for u, v, _ in near:
        assert min(math.dist((u, v), corner) for corner in corners) < 1e-6
