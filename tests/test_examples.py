"""Every example is built outside the repository, as its user would; one size of each is worked by hand."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from example_papers import example_papers

from jambs.app.paper_names import FIT_REPORT
from jambs.job import read_job
from jambs.solids import availability

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = sorted(path.parent.name for path in EXAMPLES.glob("*/job.yaml"))
BY_HAND = {
    # Frame 1180, faces 58, reveal 4: 1180 - 116 + 8 = 1072 mm. Trim plane at 12.5 + 145 + 15 + 100 + 25 = 297.5 and two
    # membranes, 298 on the grid; 70 outside, 20 of frame, jamb depth 72: 136 mm.
    "creamery": ("M2", 1072.0, 136.0),
    # Frame 30, faces 1-1/2, reveal 1/8: 30 - 3 + 1/4 = 27-1/4 at the frame. Flange on the sheathing at
    # 1/2 + 3-1/2 + 3 + 3-1/2 + 1/2 = 11, jamb depth 3-1/4: interior depth 7-3/4.
    "gable-house": ("G1", 27.25, 7.75),
    # Frame 24, faces 1-1/4, reveal 1/8: 24 - 2-1/2 + 1/4 = 21-3/4. Flange on the trim plane at
    # 1/2 + 3-1/2 + 1/2 + 1-1/2 + 3/4 = 6-3/4, jamb depth 3-1/4: interior depth 3-1/2.
    "garden-studio": ("W1", 21.75, 3.5),
    # Frame 47-1/2, faces 1-3/4, reveal 1/8: 47-1/2 - 3-1/2 + 1/4 = 44-1/4. Sheathing at 6-1/2, half of 5-1/2 further,
    # jamb depth 4-9/16: 6-1/2 + 2-3/4 - 4-9/16 = 4-11/16.
    "harbour-house": ("W01", 44.25, 4.6875),
    # Frame 1200, faces 42, reveal 4: 1200 - 84 + 8 = 1124 mm. The widest board is 195, 4 for its edge, 1 proud: 190 mm.
    "hillside-house": ("F1", 1124.0, 190.0),
    # Frame 1180, faces 58, reveal 12: 1180 - 116 + 24 = 1088 mm finished. Sheathing at 12.5 + 145 + 15 = 172.5 and a
    # membrane, 173 on the grid; jamb depth 72: 101 mm.
    "quarry-loft": ("L1", 1088.0, 101.0),
}
LEAST = {
    "creamery": 7,
    "gable-house": 3,
    "garden-studio": 1,
    "harbour-house": 14,
    "hillside-house": 8,
    "quarry-loft": 6,
}
PLAIN = (4, 2)
"""Most sheets of letter or A4, and of tabloid or A3, that the drawings of an opening take."""
MORE = {
    "creamery": {
        "A1": (9, 4),
        "B1": (10, 5),
        "E1": (6, 3),
        "M1": (6, 3),
        "M2": (5, 2),
        "M3": (5, 2),
        "N2": (5, 2),
        "T1": (5, 3),
    },
    "gable-house": {"G9": (5, 2)},
    "harbour-house": {"W02": (5, 2), "W03": (5, 2), "W04": (5, 3), "W07": (5, 3)},
    "hillside-house": {"F1": (5, 2), "F3": (5, 2), "F4": (5, 3)},
}
"""Those of openings that have more: flares, arches, panels, ganged units, sides measured apart."""


def test_no_example_is_forgotten() -> None:
    assert set(NAMES) == set(BY_HAND) == set(LEAST)


@pytest.mark.parametrize("name", NAMES)
def test_an_example_is_built_outside_the_repository(name: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    out = example_papers(name, tmp_path_factory).folder
    record = json.loads((out / "parts.json").read_text(encoding="utf-8"))
    openings = {one["mark"]: one for one in record["openings"]}
    assert len(openings) >= LEAST[name]
    for folder, suffix in (("cut sheets", ".pdf"), ("drawings", ".dxf"), ("drawings", " flat.dxf")):
        assert all((out / folder / f"{mark}{suffix}").stat().st_size > 1000 for mark in openings)
    mark, clear, depth = BY_HAND[name]
    figures = {one["name"]: one["size"]["value"] for one in openings[mark]["figures"]}
    assert figures["clear opening width"] == pytest.approx(clear, abs=1e-6)
    assert figures["interior depth"] == pytest.approx(depth, abs=1e-6)
    assert not any(finding["weight"] == "stop" for one in openings.values() for finding in one["findings"])


@pytest.mark.parametrize("name", NAMES)
def test_drawings_of_an_example_take_few_sheets(name: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    drawings = example_papers(name, tmp_path_factory).folder / "drawings"
    marks = {opening.mark for opening in read_job(EXAMPLES / name).openings}
    for mark in marks:
        text = (drawings / f"{mark}.dxf").read_text(encoding="utf-8")
        counts = tuple(
            len(set(re.findall(rf"^(?:{sizes}) \d+$", text, re.MULTILINE))) for sizes in ("LETTER|A4", "TABLOID|A3")
        )
        most = MORE.get(name, {}).get(mark, PLAIN)
        assert 0 < counts[0] <= most[0] and 0 < counts[1] <= most[1], (mark, counts)


@pytest.mark.parametrize("name", NAMES)
def test_the_parts_of_an_example_fit(name: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    """A build stops where parts do not fit, so it is enough that every opening was measured."""
    if (reason := availability()) is not None:
        pytest.skip(reason.code)
    marks = {opening.mark for opening in read_job(EXAMPLES / name).openings}
    folder = example_papers(name, tmp_path_factory).folder
    for mark in marks:
        _, *rows = (folder / FIT_REPORT.path(mark)).read_text(encoding="utf-8-sig").splitlines()
        assert len(rows) > 10 and all(row.startswith(f"{mark},") for row in rows)
