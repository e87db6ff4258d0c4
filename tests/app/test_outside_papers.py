"""The outside of a job from its sections to its papers: what is written, what the cut sheets say, what is told."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from outside_houses import EXAMPLES, house
from pypdf import PdfReader
from shops import Shop, shop, undrawn

from jambs.app.chain import make_kits
from jambs.flashing.blank import BlankKind
from jambs.job import Job, read_job
from jambs.length import Units
from jambs.neighbors.findings import NotCompared
from jambs.outside.plan import OutsideError, PlannedOutside, plan_outside, with_outside
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.touches import WoodMoves

pytestmark = pytest.mark.usefixtures("undrawn")
SECTIONS = """
elevations:
  north:
    start_line: -8
    eave: 9'
    width: 24'
    cladding: {kind: shingles, length: 18, least_exposure: 5}
exterior_trim:
  cedar:
    jamb: {thickness: 3/4, stock: cedar}
    frame_reveal: 1/4
    sealant_joint: 1/4
    casing_reveal: 1/4
    casing: {width: 4 1/2, thickness: 1, stock: cedar, corner: butt}
    sill: {thickness: 1 1/2, stock: cedar, slope: 10 deg, nosing: 1 1/4, horn: 1, drip_kerf: {width: 1/4, depth: 1/4, set_back: 1/2}}
    head_flashing: {past_casing: 1/2, upstand: 3, drip: 1/2, gap_to_cladding: 3/8}
flashing: {end_dam: 1}
fasteners:
  outer sheathing: {fastener: long wood screw, penetration: 1 1/2, spacing: 16}
  casing: {fastener: long wood screw, penetration: 1 1/2, spacing: 16}
climate: {shop: "65 F, 45 %", inside_winter: "70 F, 30 %", inside_summer: "76 F, 60 %", outside_winter: "30 F, 80 %", outside_summer: "70 F, 75 %"}
"""  # noqa: E501

WRITTEN = [
    "courses and story poles.pdf",
    "elevation north.dxf",
    "fasteners.csv",
    "fasteners.pdf",
    "flashing blanks.csv",
    "flashing.pdf",
    "story pole north.dxf",
    "wood movement.pdf",
]


def with_sections(shop: Shop, more: str = SECTIONS) -> None:
    text = shop.job.read_text(encoding="utf-8")
    assert "  - mark: W01\n" in text
    text = text.replace("  - mark: W01\n", "  - mark: W01\n    elevation: north\n", 1)
    shop.job.write_text(text + more, encoding="utf-8")


def test_a_job_with_sections_gets_a_folder_of_the_outside(shop: Shop) -> None:
    with_sections(shop)
    result = shop.run("build", "house")
    assert result.exit_code == 0, result.output
    assert sorted(path.name for path in (shop.output / "outside").iterdir()) == WRITTEN
    assert "north: " in result.output and "fall on a course line" in result.output


def test_one_opening_alone_leaves_the_outside_as_it_is(shop: Shop) -> None:
    with_sections(shop)
    result = shop.run("build", "house", "--only", "W01")
    assert result.exit_code == 0 and not (shop.output / "outside").exists()
    assert "fall on a course line" not in result.output


def test_two_builds_give_the_same_bytes(shop: Shop) -> None:
    with_sections(shop)
    for out in ("one", "two"):
        assert shop.run("build", "house", "--out", out).exit_code == 0
    for name in WRITTEN:
        one, two = (shop.folder / out / "outside" / name for out in ("one", "two"))
        if not name.endswith(("courses and story poles.pdf", "flashing.pdf")):  # hatch lines come in another order
            assert one.read_bytes() == two.read_bytes(), name


@pytest.mark.parametrize("verb", ["check", "build"])
@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            "least_exposure: 5",
            "least_exposure: 9",
            'elevations "north": least_exposure is 9", past the greatest of 8 1/2"; write less',
        ),
        (
            "length: 18",
            "length: 20",
            'elevations "north": the table of exposures has no 20 in shingles laid single; it has 16 in single; 16 in '
            "double no. 1; 16 in double no. 2; 18 in single; 18 in double no. 1; 18 in double no. 2; 24 in single; "
            "24 in double no. 1; 24 in double no. 2",
        ),
        (
            "climate:",
            "woods: {poplar: {species: Yellow-popler}}\nclimate:",
            "woods \"poplar\": the table has no species 'Yellow-popler'; did you mean Yellow-poplar?",
        ),
    ],
)
def test_what_cannot_be_planned_is_told_before_anything_is_written(
    verb: str, old: str, new: str, said: str, shop: Shop
) -> None:
    with_sections(shop, SECTIONS.replace(old, new))
    result = shop.run(verb, "house")
    assert result.exit_code == 1
    assert result.stderr.splitlines() == [said]
    assert shop.files() == []


def bare(job: Job) -> Job:
    return replace(job, outside=type(job.outside)())


def test_a_job_without_sections_has_nothing_outside_and_keeps_its_kits() -> None:
    job, kits, _ = house("harbour-house")
    outside = plan_outside(kits, bare(job))
    assert replace(outside, fittings=(), neighbors={}, findings=()) == PlannedOutside() and outside.is_empty
    assert {type(one) for one in outside.findings} == {NotCompared}  # without elevations nothing says where they stand
    assert not any(outside.neighbors.values())
    assert [kit.parts for kit in with_outside(kits, outside, bare(job))] == [kit.parts for kit in kits]


def test_the_cut_sheet_says_how_sill_and_stool_move_and_not_the_casing() -> None:
    job, kits, outside = house("harbour-house")
    noted = with_outside(kits, outside, job)
    parts = [part for kit in noted for part in kit.parts]
    said = {part.kind for part in parts if any(isinstance(touch, WoodMoves) for touch in part.touches)}
    assert PartKind.EXTERIOR_SILL in said and PartKind.CASING not in said
    for before, after in zip(kits, noted, strict=True):
        assert [part.mark for part in before.parts] == [part.mark for part in after.parts]
        assert set(before.findings) <= set(after.findings)


def test_the_head_flashing_on_the_cut_sheet_is_the_blank_of_the_cut_list() -> None:
    """As wide as its legs are marked out, never shorter than it, never a grid step more; in place, drawn as it was."""
    job, kits, outside = house("harbour-house")
    blanks = {
        one.mark: blank for one in outside.flashings for blank in one.blanks if blank.kind is BlankKind.HEAD_FLASHING
    }
    for before, kit in zip(kits, with_outside(kits, outside, job), strict=True):
        part = next(part for part in kit.parts if part.kind is PartKind.HEAD_FLASHING)
        plain = next(part for part in before.parts if part.kind is PartKind.HEAD_FLASHING)
        blank = blanks[kit.mark]
        assert part.width == blank.on(job.shop.grid).girth
        assert -1e-9 <= part.length - blank.length < job.shop.grid.step
        assert part.width > plain.width and part.length > plain.length
        assert (part.outline, part.profile, part.seat) == (plain.outline, plain.profile, plain.seat)


def test_every_example_builds_its_outside() -> None:
    """The two houses with sections have all of the papers; the studio, without, has none."""
    outside = house("hillside-house")[2]
    assert outside.courses and outside.flashings and outside.fasteners and outside.movements
    studio = read_job(EXAMPLES / "garden-studio")
    assert plan_outside(make_kits(studio), studio).is_empty


def test_faults_of_every_elevation_are_told_in_one_go(shop: Shop) -> None:
    more = SECTIONS.replace("least_exposure: 5", "least_exposure: 9").replace(
        "exterior_trim:",
        "  south: {start_line: 0, eave: 9', cladding: {kind: clapboards, widths: [6], least_lap: 1/2}}\nexterior_trim:",
    )
    with_sections(shop, more)
    with pytest.raises(OutsideError) as error:
        job = read_job(shop.job)
        plan_outside(make_kits(job), job)
    assert error.value.sentences(Units.INCH) == (
        'elevations "north": least_exposure is 9", past the greatest of 8 1/2"; write less',
        'elevations "south": least_lap is 1/2"; clapboards lap at least 1"; write it, or call them boards',
    )
