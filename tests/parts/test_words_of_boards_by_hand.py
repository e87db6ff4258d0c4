"""Cuts and touches in words, each on a board of its own: 10 long, 4 wide, 3/4 thick, its start at the left."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from cases import kit_of, placed
from gangs import ganged_kit

from jambs.job.models.outside import ElevationEntry
from jambs.length import FINE, Units
from jambs.parts.board.cuts import (
    BoardSizes,
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    EdgeRabbet,
    End,
    EndBevel,
    EndRabbet,
    Groove,
    Miter,
    Rip,
    Taper,
    compound_miter,
    edge_of,
)
from jambs.parts.board.kinds import Crew, PartKind, Where, member_words, run_words
from jambs.parts.board.marks import NO_MARKS
from jambs.parts.board.part import Part, PartBlank, PartIdentity, Seat
from jambs.parts.board.sawing import CutListError
from jambs.parts.board.touches import BackBevel, BlankBend, Return, Scribe, StripBend, Touch, WoodMoves
from jambs.parts.kit.cautions import Beside, cautions
from jambs.parts.kit.cut_kit import FlatBlank, PlannedForKit, as_cut
from jambs.parts.kit.on_elevation import floors_of, kits_on
from jambs.parts.readings.changed_since_words import Exchanged, Moved, Taken, Thing, Value
from jambs.parts.readings.first_read import digest
from jambs.parts.trim.casing_plane import Slack
from jambs.parts.words.cut_words import board_words, work_words
from jambs.parts.words.end_words import ends_words
from jambs.sides import Side

INCH = FINE[Units.INCH]
ALONG_HEAD = Seat(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0))
STRIP = StripBend(upstand=3.0, top=1.0, drip=0.5, past_casing=0.5, gap_to_cladding=0.375)
BLANK = BlankBend(bends=3, first_at=2.75, end_dam=1.0, past_casing=0.5, gap_to_cladding=0.375)


def board(*steps: Cut | Touch, kind: PartKind = PartKind.CASING, where: Where = Where.INTERIOR, **blank: Any) -> Part:
    cuts = [one for one in steps if isinstance(one, Cut)]
    touches = [one for one in steps if isinstance(one, Touch)]
    return Part(
        mark="W1-1",
        kind=kind,
        side=Side.HEAD,
        where=where,
        blank=PartBlank(**{"stock": "poplar", "thickness": 0.75, **blank}),
        cuts=(Rip(width=4.0), Crosscut(length=10.0), *cuts),
        touches=tuple(touches),
        seat=ALONG_HEAD,
    )


@pytest.mark.parametrize(
    ("step", "said"),
    [
        (Scribe(most=0.1875), 'leave the room edge straight; scribe to the wall, removing up to 3/16"'),
        (BackBevel(angle_deg=2.0), "back bevel the miters 2°"),
        (
            Groove(edge=Edge.FAR, from_edge=0.5, width=0.25, depth=0.125),
            'drip kerf underneath: 1/4" wide, 1/8" deep, 1/2" from the front edge',
        ),
        (
            EdgeRabbet(edge=Edge.NEAR, across=0.5, depth=0.625),
            'rabbet the frame edge 1/2" × 5/8" deep, from the top',
        ),
        (
            STRIP,
            'bend: 3" up behind the membrane, 1" over the casing, 1/2" down; 1/2" past the casing at each end; '
            'cladding stays 3/8" above it',
        ),
        (WoodMoves(winter=-0.09375, summer=0.0), 'seasonal change: -3/32" winter (not a cut)'),
    ],
)
def test_what_is_done_to_a_board(step: Cut | Touch, said: str) -> None:
    assert work_words(board(step), grid=INCH) == (said,)
    assert work_words(board(), grid=INCH) == ()


@pytest.mark.parametrize(
    ("start", "finish", "where", "said"),
    [
        (3.0, 4.0, Where.INTERIOR, 'taper the room edge to 3" at the left'),
        (4.0, 3.5, Where.INTERIOR, 'taper the room edge to 3 1/2" at the right'),
        (4.0, 3.5, Where.EXTERIOR, 'taper the outer edge to 3 1/2" at the right'),
    ],
)
def test_a_taper_is_told_at_its_narrow_end(start: float, finish: float, where: Where, said: str) -> None:
    assert work_words(board(Taper(start_width=start, finish_width=finish), where=where), grid=INCH) == (said,)


def test_returns_are_counted() -> None:
    both = work_words(board(Return(end=End.START), Return(end=End.FINISH)), grid=INCH)
    assert both == ('2 returns, 3/4" long point, mitered from the same board before it is cut to length',)


def test_a_planned_blank_of_metal_names_its_sheet() -> None:
    metal = board(BLANK, kind=PartKind.HEAD_FLASHING, where=Where.EXTERIOR, stock="sheet metal", is_metal=True)
    assert work_words(metal, grid=INCH) == (
        'blank; 3 bends, the first 2 3/4" from the upper edge: see the flashing sheet',
        '1" of each end turned up as end dam; 1/2" past the casing at each end; cladding stays 3/8" above it',
    )
    assert ends_words(metal, grid=INCH) == "square both ends"
    strip = board(STRIP, kind=PartKind.HEAD_FLASHING, where=Where.EXTERIOR, stock="sheet metal", is_metal=True)
    assert ends_words(strip, grid=INCH) == "square both ends; end dams as the cladding needs"


RABBET = 'rabbet 3/4" wide, 3/8" deep in the face'
BEVEL = "bevel 10°, long point at the back"


@pytest.mark.parametrize(
    ("cuts", "said"),
    [
        ((), "square both ends"),
        ([EndRabbet(end=end, along=0.75, depth=0.375) for end in End], f"both ends {RABBET}"),
        ([EndRabbet(end=End.FINISH, along=0.75, depth=0.375)], f"left square; right {RABBET}"),
        ([EndBevel(end=End.START, angle_deg=10.0)], f"left {BEVEL}; right square"),
    ],
)
def test_the_ends_of_a_jamb(cuts: Any, said: str) -> None:
    assert ends_words(board(*cuts, kind=PartKind.EXTENSION_JAMB), grid=INCH) == said


MITERS = [Miter(end=end, angle_deg=45.0, long_edge=Edge.FAR) for end in End]
SIZES = BoardSizes(length=10.0, width=4.0, start_width=4.0, finish_width=4.0, thickness=0.75)


def test_the_ends_of_a_mitered_jamb_have_a_long_and_a_short_point() -> None:
    """At 45° the near edge of a board 4 wide is 4 shorter at each end that is mitered."""
    at = "miter 45° (45°), long point at the upper edge"
    both, one = board(*MITERS, kind=PartKind.EXTENSION_JAMB), board(MITERS[0], kind=PartKind.EXTENSION_JAMB)
    assert ends_words(both, grid=INCH) == f'both ends {at}; long point 10" (upper edge), short point 2" (lower edge)'
    assert (
        ends_words(one, grid=INCH)
        == f'left {at}; right square; long point 10" (upper edge), short point 6" (lower edge)'
    )
    assert ends_words(board(*MITERS), grid=INCH) == 'miter 45° both ends; short point 2"'
    assert ends_words(replace(board(), runs=3), grid=INCH) == "square both ends"


@pytest.mark.parametrize("edge", Edge)
@pytest.mark.parametrize(("face_short", "side"), [(False, "face"), (True, "back")])
def test_a_compound_end_is_told_by_the_saw_and_where_its_long_point_is(edge: Edge, face_short: bool, side: str) -> None:
    """30° across 4 and 20° through 3/4: 4 tan 30° + 3/4 tan 20° / cos 30° = 2.6246 shorter, so 7 3/8.

    On the face the other edge is 4 tan 30° = 2.3094 shorter, or 3/4 tan 20° / cos 30° = 0.3152 where the face is short.
    """
    long, short = ("inner", "outer") if edge is Edge.NEAR else ("outer", "inner")
    turned = {"face": "back", "back": "face"}[side]
    marked = f'{long} edge on the face 9 11/16"' if face_short else f'{short} edge on the face 7 11/16"'
    cut = compound_miter(SIZES, End.FINISH, miter_deg=30.0, bevel_deg=20.0, long_edge=edge, face_short=face_short)
    assert ends_words(board(cut), grid=INCH) == (
        "left square; right miter 30° (60°), blade tilted 20° (70°), "
        f"long point at the {long} edge on the {side}; "
        f'long point 10" ({long} edge on the {side}), short point 7 3/8" ({short} edge on the {turned}), {marked}'
    )


@pytest.mark.parametrize(
    ("cuts", "where", "said"),
    [
        ((), Where.EXTERIOR, "square both ends"),
        (
            [EndBevel(end=End.START, angle_deg=10.0)],
            Where.EXTERIOR,
            "left bevel 10° to the sill, long point on the face; right square",
        ),
        (
            [EndBevel(end=End.FINISH, angle_deg=15.0)],
            Where.INTERIOR,
            "left square; right bevel 15°, long point on the face",
        ),
    ],
)
def test_the_ends_of_a_board_over_a_mull(cuts: Any, where: Where, said: str) -> None:
    assert ends_words(board(*cuts, kind=PartKind.MULL_CASING, where=where), grid=INCH) == said


def test_the_ends_of_aprons_and_of_jambs_on_a_level_sill() -> None:
    both = [EndBevel(end=end, angle_deg=45.0) for end in End]
    assert ends_words(board(*both, kind=PartKind.APRON), grid=INCH) == "bevel 45° both ends, long point on the face"
    assert ends_words(board(kind=PartKind.APRON), grid=INCH) == "square both ends"
    assert ends_words(board(kind=PartKind.EXTERIOR_JAMB, where=Where.EXTERIOR), grid=INCH) == "square both ends"


def test_a_board_is_named_by_what_it_comes_out_of() -> None:
    assert board_words(board(stock="sheet metal", is_metal=True), units=Units.INCH) == "sheet metal"
    tile = board(stock="tile", thickness=0.375, crew=Crew.TILER)
    assert board_words(tile, units=Units.INCH) == "tile, by the tiler"
    assert board_words(board(), units=Units.INCH).startswith('poplar 3/4" thick (')


def test_only_cuts_along_an_edge_leave_another_plane_there() -> None:
    assert edge_of(EdgeBevel(edge=Edge.NEAR, angle_deg=10.0, face_short=True)) is Edge.NEAR
    assert edge_of(Taper(start_width=3.0, finish_width=4.0)) is Edge.FAR
    assert edge_of(Miter(end=End.START, angle_deg=45.0, long_edge=Edge.FAR)) is None


def test_a_list_without_a_rip_or_a_crosscut_makes_no_board() -> None:
    whole = board()
    for cuts in ((Rip(width=4.0),), (Crosscut(length=10.0),)):
        with pytest.raises(CutListError, match=r"^W1-1: the cut list needs a rip and a crosscut; it has"):
            _ = Part(
                mark="W1-1",
                kind=whole.kind,
                side=whole.side,
                where=whole.where,
                blank=whole.blank,
                cuts=cuts,
                seat=whole.seat,
            ).silhouettes


def test_a_board_is_plain_that_is_ripped_and_crosscut() -> None:
    assert board().is_plain
    assert not board(EndBevel(end=End.START, angle_deg=10.0)).is_plain
    assert board(Scribe(most=0.1)).is_scribed and not board().is_scribed


@pytest.mark.parametrize(
    ("kind", "member", "members", "said"),
    [
        (PartKind.CROWN, 1, 3, ""),
        (PartKind.CROWN, 3, 3, ", right return"),
        (PartKind.ROSETTE, 1, 2, " above"),
        (PartKind.ROSETTE, 2, 2, " below"),
        (PartKind.ROSETTE, 1, 1, ""),
        (PartKind.MULL_CASING, 2, 2, ", mull 2"),
        (PartKind.MULL_CASING, 1, 1, ""),
        (PartKind.TRANSOM_BAR_CASING, 2, 2, ", bar 2 from below"),
        (PartKind.EXTENSION_JAMB, 2, 2, " of frame 2"),
        (PartKind.EXTENSION_JAMB, 1, 1, ""),
        (PartKind.CASING, 2, 2, ""),
    ],
)
def test_which_of_several_on_a_side_a_part_is(kind: PartKind, member: int, members: int, said: str) -> None:
    assert member_words(kind, member, members) == said


@pytest.mark.parametrize(
    ("run", "runs", "said"),
    [(1, 1, ""), (2, 2, ", right"), (2, 3, ", middle"), (3, 3, ", right"), (4, 5, ", 4 of 5 from the left")],
)
def test_which_edge_of_a_side_a_board_lies_along(run: int, runs: int, said: str) -> None:
    assert run_words(run, runs) == said


def test_kinds_by_what_they_are() -> None:
    assert [kind for kind in PartKind if kind.is_buck] == [PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK]


@pytest.mark.parametrize(
    ("was", "now", "said"),
    [
        ("fixed", "tall", "the window changed from fixed to tall"),
        (4.5, 4.5625, 'the window changed from 4 1/2" to 4 9/16"'),
        ((35.5, 47.5), (), 'the window changed from 35 1/2" × 47 1/2" to none'),
        (
            (("gypsum board", 0.5), ("membrane", 0.0)),
            (("gypsum board", 0.625),),
            'the window changed from gypsum board 1/2", membrane 0" to gypsum board 5/8"',
        ),
    ],
)
def test_what_changed_since_it_was_measured(was: Value, now: Value, said: str) -> None:
    assert Exchanged(thing=Thing.WINDOW, was=was, now=now).words(Units.INCH) == said


@pytest.mark.parametrize(("outward", "said"), [(0.5, '1/2" outward'), (-0.25, '1/4" inward')])
def test_a_window_that_moved_says_which_way(outward: float, said: str) -> None:
    assert Moved(outward=outward).words(Units.INCH) == f"the window moved {said}"


def test_a_reading_is_another_one_by_its_values_its_day_and_its_finish() -> None:
    def of(**readings: Any) -> str:
        found = placed(openings__0__measured={"date": "2026-06-01", "frame_width": ["35 1/2", "35 1/2"], **readings})
        assert found.opening.readings is not None
        return digest(found.opening.readings, Taken.FRAME)

    others: list[dict[str, Any]] = [
        {"date": "2026-06-02"},
        {"frame_width": ["35 1/2", "35 9/16"]},
        {"wall_finish": "no"},
    ]
    assert len({of(), *(of(**other) for other in others)}) == 4
    # Depths are other readings: they change nothing of the frame's.
    assert of(exterior_depth={"head": ["1 1/2", "1 1/2"]}) == of()


def test_what_is_thicker_than_the_casing_leans_by_more() -> None:
    """By 1/100 over a casing of 3/4 and a block of 1 in."""
    slack = Slack(slope=0.01, thickness=0.75)
    assert [slack.lean_of(board(thickness=one)) for one in (0.5, 0.75, 1.0)] == pytest.approx([0.0075, 0.0075, 0.01])


def test_without_wood_no_saw_is_warned_of() -> None:
    placement = placed()
    metal = board(STRIP, kind=PartKind.HEAD_FLASHING, stock="sheet metal", is_metal=True)
    for parts, is_warned in (((metal,), False), ((board(), metal), True)):
        said = cautions(placement, parts, Units.INCH, year_built=None)
        assert any(one.beside is Beside.SAW for one in said) is is_warned


def test_a_planned_flashing_is_cut_as_its_blank_and_seen_as_it_was() -> None:
    """Girth 5 1/4 by 48; where it is seen, it keeps the strip; a board that moves says so, its neighbor does not."""
    kit = kit_of()
    moves = WoodMoves(winter=-0.0625, summer=0.0625)
    flat = FlatBlank(width=5.25, length=48.0, bend=BLANK)
    first = kit.parts[0].mark
    cut = as_cut(kit, PlannedForKit(flashing=flat, moves={first: moves}))
    (was,), (now,) = ([one for one in each.parts if one.kind is PartKind.HEAD_FLASHING] for each in (kit, cut))
    assert now.cuts == (Rip(width=5.25), Crosscut(length=48.0)) and now.in_place == was.cuts
    assert now.touches == (BLANK,) and now.seat == was.seat
    assert [one.mark for one in cut.parts if moves in one.touches] == [first]
    assert as_cut(kit, PlannedForKit()).parts == kit.parts


def test_openings_go_back_to_the_numbers_of_an_earlier_issue() -> None:
    """W1's head was 1; since then it is gone and another part has 2, which no other part may ever have."""

    def part(side: Side) -> PartIdentity:
        return PartIdentity(opening="W1", kind=PartKind.CASING, where=Where.INTERIOR, side=side, member=1)

    earlier = NO_MARKS.with_parts([part(Side.HEAD)])
    later = NO_MARKS.with_parts([part(Side.LEFT), part(Side.HEAD)])
    back = later.back_at(earlier, ["W1"])
    assert back.numbers[part(Side.HEAD)] == 1
    assert back.with_parts([part(Side.SILL)]).numbers[part(Side.SILL)] == 3
    assert later.back_at(earlier, []).numbers == later.numbers


def test_the_openings_and_floors_of_an_elevation() -> None:
    """One that names an elevation stands there whatever it faces; else it stands where it faces."""
    entry = ElevationEntry.model_validate(
        {
            "start_line": "0",
            "eave": "9'",
            "faces": "north",
            "cladding": {"kind": "boards", "widths": ["8"], "least_lap": "1"},
            "stories": [{"floor": "9'-0", "openings": ["W2"]}],
        }
    )
    assert floors_of(entry) == {"W2": 108.0}
    north, south, nowhere = (kit_of(**({"openings__0__faces": one} if one else {})) for one in ("north", "south", ""))
    assert kits_on("front", entry, [north, south, nowhere]) == (north,)
    assert kits_on("front", entry.model_copy(update={"faces": None}), [north, south, nowhere]) == ()


def test_boards_over_mulls_are_beveled_where_they_end_at_a_flared_jamb() -> None:
    """Legs lean 20°, the head 10°: the bar ends at both legs, the mull on the square bottom jamb and under the bar."""
    flare = {"sides": "20 deg", "head": "10 deg"}
    jamb = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
    kit = ganged_kit(interior_trim__inside__flare=flare, interior_trim__inside__jamb=jamb)
    found = {
        one.kind: [cut.angle_deg for cut in one.cuts if isinstance(cut, EndBevel)]
        for one in kit.parts
        if one.kind.is_between_units and one.where is Where.INTERIOR
    }
    assert found == {PartKind.TRANSOM_BAR_CASING: [20.0, 20.0], PartKind.MULL_CASING: []}
