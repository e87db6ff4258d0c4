"""The section of molded casing as points or as a DXF file; what cannot be run, in whole sentences."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed, job_of
from ezdxf.document import Drawing
from moldings import POINTS, molded_trim

from jambs.job import read_job
from jambs.job.reading.faults import JobFaults
from jambs.outlines import area


def faults(**trim: Any) -> list[str]:
    with pytest.raises(JobFaults) as raised:
        job_of(changed(interior_trim__inside=molded_trim(**trim)))
    return [fault.sentence for fault in raised.value.faults]


CROSSED = [["0", "0"], ["3 1/2", "0"], ["0", "3/4"], ["3 1/2", "3/4"]]
WRONG = {
    "no points": (
        {"profile": "12"},
        "'12' is neither points nor a DXF file; write [[0, 0], …], or a name that ends in .dxf",
    ),
    "three points": ({"profile": POINTS[:3]}, "has 3 points; give 4 to 400, round the section"),
    "crossed": ({"profile": CROSSED}, "crosses itself; give its points in order, once round the section"),
    "a hollow back": (
        {"profile": [["0", "0"], ["1", "1/8"], ["3 1/2", "0"], ["3 1/2", "3/4"], ["0", "3/4"]]},
        "has no flat back from its inner edge to its outer one; begin at [0, 0] and let one edge run to the full width "
        "at 0 out",
    ),
    "a feather at the reveal": (
        {"profile": [["0", "0"], ["3 1/2", "0"], ["3 1/2", "3/4"], ["0", "3/32"]]},
        'has no inner edge to show at the reveal; let it come down to [0, 0] from 1/8" out or more',
    ),
    "a slot down to the back": (
        {
            "profile": [
                ["0", "0"],
                ["3 1/2", "0"],
                ["3 1/2", "3/4"],
                ["2", "3/4"],
                ["2", "1/32"],
                ["1", "1/32"],
                ["1", "3/4"],
                ["0", "3/4"],
            ]
        },
        'leaves wood too thin to run at [2", 1/32"]: keep 1/16" between two of its edges, and no corner '
        "sharper than 20°",
    ),
    "two halves that touch at a point": (
        {
            "profile": [
                ["0", "0"],
                ["3 1/2", "0"],
                ["3 1/2", "3/4"],
                ["2", "3/4"],
                ["1 3/4", "0"],
                ["1 1/2", "3/4"],
                ["0", "3/4"],
            ]
        },
        'leaves wood too thin to run at [1 3/4", 0"]: keep 1/16" between two of its edges, and no corner '
        "sharper than 20°",
    ),
    "a feather at the wall": (
        {"profile": [["0", "0"], ["3 1/2", "0"], ["1 1/2", "1/2"], ["1 1/2", "3/4"], ["0", "3/4"]]},
        'leaves wood too thin to run at [3 1/2", 0"]: keep 1/16" between two of its edges, and no corner '
        "sharper than 20°",
    ),
    "another size": (
        {"profile": [["0", "0"], ["3 1/4", "0"], ["3 1/4", "3/4"], ["0", "3/4"]]},
        "profile is not as wide and as thick as the casing; correct its points, or the casing's sizes",
    ),
    "butted": (
        {"casing": {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}},
        "gives profile and corner: butt, where an end would show against the molding; write corner: miter, or give "
        "rosettes or a head of members in built_up",
    ),
    "a backband on it": (
        {"built_up": {"backband": {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}}},
        "gives profile and a backband, which lies against a square outer edge; keep one of both",
    ),
}


@pytest.mark.parametrize(("trim", "sentence"), WRONG.values(), ids=list(WRONG))
def test_a_section_that_cannot_be_run_is_told(trim: dict[str, Any], sentence: str) -> None:
    assert faults(**trim) == [sentence]


FINE = {
    "a quirk, a kerf wide, beside a bead": [["1 1/2", "3/4"], ["1 1/2", "1/2"], ["1 7/16", "1/2"], ["1 7/16", "3/4"]],
    "a fillet 1/32 high": [["1 1/2", "3/4"], ["1 1/2", "23/32"]],
    "a groove that leaves 1/8": [["2", "3/4"], ["2", "1/8"], ["1", "1/8"], ["1", "3/4"]],
}


@pytest.mark.parametrize("top", FINE.values(), ids=list(FINE))
def test_what_a_cutter_runs_is_let_be(top: list[list[str]]) -> None:
    """Air may be narrow where wood may not: a quirk is 1/16 wide and less (common practice, no source)."""
    inner = [["0", top[-1][1]]]
    points = [["0", "0"], ["3 1/2", "0"], ["3 1/2", "3/4"], *top, *inner]
    section = job_of(changed(interior_trim__inside=molded_trim(profile=points))).openings[0].interior.profile
    assert section is not None and len(section) == len(points)


def test_points_may_run_either_way_and_begin_anywhere() -> None:
    turned = [*POINTS[3:], *POINTS[:3]]
    found = [job_of(changed(interior_trim__inside=molded_trim(profile=one))) for one in (POINTS, POINTS[::-1], turned)]
    sections = {job.openings[0].interior.profile for job in found}
    assert len(sections) == 1
    (section,) = sections
    assert section is not None
    assert (section[0], section[1]) == ((0.0, 0.0), (3.5, 0.0))


def a_round(folder: Path, *, units: int = 4, closed: bool = True, bulge: float = math.tan(math.pi / 8)) -> Path:
    """Draw casing of 88.9 x 19.05 mm away from the origin: a half round of 19.05 in its outer upper corner."""
    document = Drawing.new()
    document.units = units
    x, y, r = 100.0, 50.0, 19.05
    points = [(x, y, 0.0), (x + 88.9, y, bulge), (x + 88.9 - r, y + r, 0.0), (x, y + r, 0.0)]
    document.modelspace().add_lwpolyline(points, format="xyb", close=closed)
    document.modelspace().add_line((0, 0), (10, 0))
    document.saveas(folder / "round.dxf")
    return folder / "round.dxf"


def house(folder: Path, name: str = "round.dxf") -> Path:
    data = changed(interior_trim__inside=molded_trim(profile=name))
    (folder / "job.yaml").write_text(yaml.safe_dump(data, sort_keys=False), encoding="utf-8")
    return folder / "job.yaml"


def test_a_section_is_read_from_a_drawing_in_its_own_units(tmp_path: Path) -> None:
    drawing = a_round(tmp_path)
    job = read_job(house(tmp_path))
    section = job.openings[0].interior.profile
    assert section is not None
    # 88.9 mm = 3 1/2 in, 19.05 = 3/4; a quarter round of 3/4 instead of a square: 3 1/2 x 3/4 - (1 - pi/4) (3/4)^2.
    assert area(section) == pytest.approx(3.5 * 0.75 - (1 - math.pi / 4) * 0.75**2, abs=0.002)
    assert drawing in job.sources


def test_drawings_that_hold_no_section_are_told(tmp_path: Path) -> None:
    def told() -> list[str]:
        with pytest.raises(JobFaults) as raised:
            read_job(house(tmp_path))
        return [fault.sentence for fault in raised.value.faults]

    assert told() == ["round.dxf is not there; put the file beside the job"]
    a_round(tmp_path, closed=False)
    assert told() == ["round.dxf holds 0 closed polylines; draw the section as one, and nothing else closed"]
    a_round(tmp_path, units=0)
    assert told() == ["round.dxf does not say in what units it is drawn; save it in inches or millimeters"]
    a_round(tmp_path, bulge=1e12)  # parting it into chords would not end
    assert told() == ["round.dxf has an arc of nearly a whole circle; draw the section with arcs a molding has"]
    (tmp_path / "round.dxf").write_text("9" * 2_000_001, encoding="utf-8")
    assert told() == ["round.dxf is larger than a section needs; save the section alone, in a file of its own"]
    (tmp_path / "round.dxf").write_text("no drawing", encoding="utf-8")
    assert told() == ["round.dxf is no DXF file that can be read; save it once more"]


def test_what_stands_in_the_place_of_a_drawing_is_told(tmp_path: Path) -> None:
    def told() -> list[str]:
        with pytest.raises(JobFaults) as raised:
            read_job(house(tmp_path))
        return [fault.sentence for fault in raised.value.faults]

    (tmp_path / "round.dxf").mkdir()
    assert told() == ["round.dxf is a folder; name the DXF file in it"]
    (tmp_path / "round.dxf").rmdir()
    (tmp_path / "round.dxf").symlink_to(tmp_path / "gone.dxf")
    assert told() == ["round.dxf is a link to a file that is not there; put the file itself beside the job"]
    (tmp_path / "round.dxf").unlink()
    (tmp_path / "gone").mkdir()
    a_round(tmp_path / "gone")
    (tmp_path / "round.dxf").symlink_to(tmp_path / "gone" / "round.dxf")
    read_job(house(tmp_path))  # a link to a drawing is as good as the drawing


def test_a_name_that_no_file_can_have_is_told_short(tmp_path: Path) -> None:
    with pytest.raises(JobFaults) as raised:
        read_job(house(tmp_path, "x" * 5000 + ".dxf"))
    assert [fault.sentence for fault in raised.value.faults] == [
        "x" * 40 + " is no name of a file; put the file beside the job"
    ]
