"""Lengths, counts and verdicts of fasteners, by hand from the layers of the example house."""

from __future__ import annotations

from dataclasses import replace

import pytest
from fasten_house import elevation, entries, entry, harbour_house

from jambs.fasten.fastener_words import assumed_lengths, count_words, way_words
from jambs.fasten.furring_words import verdict_words
from jambs.fasten.plan import (
    FastenerLine,
    board_count,
    field_fasteners,
    house_fasteners,
    opening_fasteners,
    verdict_findings,
)
from jambs.fasten.reach import Through, find_sold, framing_face, next_length
from jambs.findings import Subject
from jambs.job.models.layers import MadeOf
from jambs.job.models.outside import Fixed
from jambs.length import Units
from jambs.wall.planes import WallPlanes, stack_wall

HOUSE = Subject.house("house")


def only(lines: tuple[FastenerLine, ...]) -> FastenerLine:
    assert len(lines) == 1
    return lines[0]


def of_opening(mark: str, fixed: Fixed, **keys: object) -> FastenerLine:
    _, kits = harbour_house()
    return only(opening_fasteners(kits[mark], entries(fixed, **keys), Units.INCH))


def test_a_layer_that_is_named_with_its_thickness_has_it_once() -> None:
    through = (Through(name="gypsum board 1/2", thickness=0.5), Through(name="EPS", thickness=3.0))
    assert way_words(through, 1.5, Units.INCH) == 'gypsum board (1/2") + EPS (3") + 1 1/2" into the framing'


def test_casing_reaches_the_studs_through_every_layer() -> None:
    """W01: casing 1, outer sheathing 1/2, boards 3 and 2, sheathing 1/2 and 1 1/2 into the stud: 8 1/2, next is 9."""
    line = of_opening("W01", Fixed.CASING)
    assert [one.thickness for one in line.through] == [1.0, 0.5, 3.0, 2.0, 0.5]
    assert (line.needed, line.length, line.penetration) == (8.5, 9.0, 2.0)
    job, _ = harbour_house()
    words = 'casing (1") + plywood (1/2") + EPS (3") + EPS (2") + plywood (1/2") + 2" into the framing'
    assert way_words(line.through, line.penetration, job.units) == words


def test_an_outboard_buck_by_hand() -> None:
    """W01: buck 2 3/4 deep on 1/2 of sheathing, 2 into the stud: 5 1/4, lag screws come 6 long."""
    line = of_opening("W01", Fixed.BUCK, fastener="1/4 lag screw", penetration="2", spacing="12")
    assert (line.needed, line.length) == (5.25, 6.0)


def test_a_liner_buck_is_screwed_sideways() -> None:
    """W07: 3/4 of plywood and 2 into the stud beside it."""
    line = of_opening("W07", Fixed.BUCK, fastener="#10 wood screw", penetration="2")
    assert (line.fastener, line.needed, line.length) == ("No. 10 wood screw", 2.75, 2.75)


@pytest.mark.parametrize(("units", "penetration"), [(Units.INCH, "1 1/2"), (Units.MM, "38 mm")])
def test_a_screw_through_a_thin_liner_stays_in_the_studs(units: Units, penetration: str) -> None:
    """Studs beside an opening are 1 1/2 thick: a screw far past them comes out where cables lie (common practice)."""
    _, kits = harbour_house()
    liner = entries(Fixed.BUCK, penetration=penetration)
    line = only(opening_fasteners(kits["W07"], liner, units))
    assert line.length is not None
    assert line.penetration < 2.0


def test_layers_add_up_to_the_way_from_trim_plane_to_framing() -> None:
    _, kits = harbour_house()
    for kit in kits.values():
        line = only(opening_fasteners(kit, entries(Fixed.CASING), Units.INCH))
        trim, planes = kit.placement.opening.exterior, kit.placement.planes
        assert trim is not None
        way = trim.casing.thickness + planes.trim_plane - framing_face(planes)
        assert line.needed == pytest.approx(way + 1.5, abs=1e-9)


def test_how_many_along_a_board_by_hand() -> None:
    """40 long, 2 from each end, 16 apart at most: 36 between, three spaces, four screws; two rows, eight."""
    assert board_count(40, entry()) == 4
    assert board_count(40, entry(rows="2")) == 8
    assert board_count(36, entry()) == 3
    assert [board_count(length, entry()) for length in (3, 4, 4.5)] == [1, 1, 2]  # 2 from each end


def test_casing_of_an_opening_by_hand() -> None:
    """W01: head 54 1/2, legs 40.69: spaces of 50 1/2 and 36.69 at 16 at most, so 5 and 4 and 4."""
    assert of_opening("W01", Fixed.CASING).count == 5 + 4 + 4


def test_a_field_by_hand() -> None:
    """Garden side, studs and strapping at 16, 32 ft wide, 8 ft high, no openings: 25 lines of 8 screws at 16."""
    job, kits = harbour_house()
    planes = kits["D01"].placement.planes
    keys: dict[str, object] = {"penetration": "1", "spacing": "16", "from_end": "2"}
    line = only(field_fasteners("south", elevation(), 384.0, [], planes, entries(Fixed.STRAPPING, **keys), job.units))
    assert line.count == 25 * 7
    assert count_words(line) == "about 175"
    with_door = field_fasteners("south", elevation(), 384.0, [kits["D01"]], planes, entries(Fixed.STRAPPING), job.units)
    assert only(with_door).count == 25 * 7 - 2 * 5
    unknown = only(field_fasteners("south", elevation(), None, [], planes, entries(Fixed.STRAPPING), job.units))
    assert unknown.count is None
    assert count_words(unknown) == "count: give the elevation's width"


def foam_planes(name: str, thickness: float) -> WallPlanes:
    """The garden side with its boards changed to one of another kind."""
    job, kits = harbour_house()
    wall = kits["D01"].placement.planes.wall
    boards = [layer for layer in wall.layers if layer.name == "mineral wool board"]
    layers = [layer for layer in wall.layers if layer is not boards[0]]
    place = layers.index(boards[1])
    made_of = MadeOf.FOAM if name == "XPS" else MadeOf.FIBER
    layers[place] = replace(boards[1], name=name, thickness=thickness, made_of=made_of)
    return stack_wall(replace(wall, layers=tuple(layers)), grid=job.shop.grid)


@pytest.mark.parametrize(
    ("name", "thickness", "keys", "words"),
    [
        ("XPS", 2.0, {"cladding_weight": "3 psf"}, "in the table: up to 4 in of foam"),
        ("XPS", 2.0, {"cladding_weight": "25 psf"}, 'needs design: 2" of foam, the table goes to 0.9 in'),
        ("XPS", 2.0, {}, "needs design: the job gives no cladding_weight"),
        ("mineral wool board", 2.0, {"cladding_weight": "3 psf"}, "needs design: the published table is for foam"),
    ],
)
def test_strapping_over_boards(name: str, thickness: float, keys: dict[str, object], words: str) -> None:
    job, _ = harbour_house()
    strapping = entries(Fixed.STRAPPING, fastener="1/4 lag screw", spacing="12", **keys)
    line = only(field_fasteners("south", elevation(), None, [], foam_planes(name, thickness), strapping, job.units))
    assert line.furring is not None
    assert verdict_words(line.furring, Units.INCH).startswith(words)
    assert verdict_words(line.furring, Units.INCH) in verdict_findings([line], HOUSE)[-1].sentence(Units.INCH)


def test_an_outer_sheathing_is_not_in_the_table() -> None:
    job, kits = harbour_house()
    planes = kits["W01"].placement.planes
    line = only(field_fasteners("north", elevation(), 240.0, [], planes, entries(Fixed.COVER), job.units))
    assert line.furring is not None and not line.furring.is_allowed
    assert verdict_words(line.furring, Units.INCH).startswith(
        "needs design: the published table is for furring over foam, not for outer"
    )


def test_no_length_reaches() -> None:
    line = of_opening("W01", Fixed.CASING, fastener="0.162 nail")
    assert line.length is None
    assert line.findings[0].sentence(Units.INCH) == (
        'Casing: no 0.162 nail is long enough: 8 1/2" is needed to reach the framing, and the longest is 3 1/2"; '
        "use a longer kind."
    )


def test_own_lengths_and_unknown_kinds() -> None:
    assert of_opening("W01", Fixed.CASING, fastener="ring nail", lengths=["8", "8 5/8", "10"]).length == 8.625
    unknown = of_opening("W01", Fixed.CASING, fastener="ring nail")
    assert 'order them at least 8 1/2" long' in unknown.findings[0].sentence(Units.INCH)


def test_the_house_adds_up() -> None:
    job, kits = harbour_house()
    both = {**entries(Fixed.CASING), **entries(Fixed.BUCK, fastener="1/4 lag screw", penetration="2")}
    lines = [line for kit in kits.values() for line in opening_fasteners(kit, both, Units.INCH)]
    rows = house_fasteners(lines)
    assert sum(row.count for row in rows) == sum(line.count or 0 for line in lines)
    assert len({(row.fastener, row.length) for row in rows}) == len(rows)
    assert [one.what for one in assumed_lengths(lines, job.units)] == [
        "lengths of long wood screw",
        "lengths of 1/4 lag screw",
    ]


def test_next_length_sold() -> None:
    sold = find_sold("#10 Wood Screw")
    assert sold is not None
    assert next_length(2.3, sold.lengths) == 2.5
    assert next_length(2.5, sold.lengths) == 2.5
    assert next_length(4.1, sold.lengths) is None
