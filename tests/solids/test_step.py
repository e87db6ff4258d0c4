"""Every STEP file read back by another program, gmsh: names, counts, volumes, boxes. Files are the same every time."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import gmsh
import pytest
from cases import DOOR, changed, job_of
from harbour import harbour_job, harbour_solids

from jambs.length import MM_PER_INCH
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids import kernel, write_elevation_step, write_step
from jambs.solids.colors import color_of
from jambs.solids.model import KitSolids, Solid, model_kit
from jambs.solids.step import ElevationError

SAME_VOLUME = 1e-4
SAME_PLACE = 1e-4
"""gmsh gives boxes with a margin of 1e-7 mm [in]."""
MARKS = ["W01", "W02", "W06", "W07", "D01"]


@pytest.fixture(autouse=True)
def reader() -> Iterator[None]:
    gmsh.initialize(interruptible=False)
    if hasattr(signal, "SIGPIPE"):  # else a write to a closed pipe ends the process, later tests too
        signal.signal(signal.SIGPIPE, signal.SIG_IGN)
    gmsh.option.setNumber("General.Terminal", 0)
    gmsh.option.setNumber("Geometry.OCCImportLabels", 1)
    yield
    gmsh.finalize()


def read_back(path: Path) -> dict[str, tuple[float, list[float]]]:
    """Volume [cu in] and box [in, kernel axes] of every solid of a file, by its whole name."""
    gmsh.clear()
    found = {}
    for dimension, tag in gmsh.model.occ.importShapes(str(path)):
        assert dimension == 3
        gmsh.model.occ.synchronize()
        name = gmsh.model.getEntityName(3, tag)
        assert name not in found
        size = gmsh.model.occ.getMass(3, tag) / MM_PER_INCH**3
        found[name] = (size, [edge / MM_PER_INCH for edge in gmsh.model.occ.getBoundingBox(3, tag)])
    return found


def box_of(solid: Solid, along: float = 0.0, up: float = 0.0) -> list[float]:
    """The solid's own box, wall axes (x, y, d) as the file has them (x, d, y)."""
    (x0, y0, d0), (x1, y1, d1) = solid.low, solid.high
    return [x0 + along, d0, y0 + up, x1 + along, d1, y1 + up]


def test_the_other_reader_leaves_closed_pipes_an_error() -> None:
    reads, writes = os.pipe()
    os.close(reads)
    with pytest.raises(BrokenPipeError):
        os.write(writes, b"one")
    os.close(writes)


@pytest.mark.parametrize("mark", MARKS)
def test_an_opening_read_back_by_gmsh(mark: str, tmp_path: Path) -> None:
    solids = harbour_solids(mark)
    path = tmp_path / "opening.step"
    write_step(solids, path)
    found = read_back(path)
    assert set(found) == {f"Shapes/{mark}/{one.label}/{one.label}" for one in solids.solids}
    for one in solids.solids:
        size, box = found[f"Shapes/{mark}/{one.label}/{one.label}"]
        assert size == pytest.approx(kernel.volume(one.bench), abs=SAME_VOLUME)
        assert box == pytest.approx(box_of(one), abs=SAME_PLACE)


def test_the_file_is_not_mirrored(tmp_path: Path) -> None:
    """Seen from the room the axes x right, y up, d away are left-handed, a file's are right-handed: x, d, y.

    The left casing leg lies at the least x, the apron lowest in the third, the flashing farthest out in the second.
    """
    path = tmp_path / "opening.step"
    write_step(harbour_solids("W01"), path)
    found = {name.rsplit("/", 1)[-1].split()[0]: box for name, (_, box) in read_back(path).items()}
    assert found["W01-6"][0] < 0 < found["W01-7"][0]
    assert min(found, key=lambda name: found[name][2]) == "W01-8"
    assert max(found, key=lambda name: found[name][4]) in ("W01-12", "W01-16")
    assert found["W01-5"][1] < 0


def test_bodies_say_what_they_are(tmp_path: Path) -> None:
    path = tmp_path / "opening.step"
    write_step(harbour_solids("W01"), path)
    found = {name.rsplit("/", 1)[-1] for name in read_back(path)}
    assert {"W01-2 extension jamb, left leg", "W01-4 stool", "W01-5 casing, head", "W01 window frame"} <= found


def test_the_frame_of_a_door_is_named_so() -> None:
    job = job_of(changed(**DOOR))
    named = {one.name for one in model_kit(make_kit(place_windows(job)[0], job), job).frame}
    assert any(name.startswith("W1 door frame") for name in named) and not any("window" in name for name in named)


def test_colors_are_by_material(tmp_path: Path) -> None:
    """gmsh reads the colors too, from 0 to 255: every part has its stock's."""
    path = tmp_path / "opening.step"
    write_step(harbour_solids("W01"), path)
    gmsh.clear()
    tags = gmsh.model.occ.importShapes(str(path))
    gmsh.model.occ.synchronize()
    found = {gmsh.model.getEntityName(*tag).rsplit("/", 1)[-1]: gmsh.model.getColor(*tag)[:3] for tag in tags}
    for one in harbour_solids("W01").solids:
        asked = tuple(round(255 * part) for part in color_of(one.material))
        assert found[one.label] == pytest.approx(asked, abs=1)
    assert len(set(found.values())) == len({one.material for one in harbour_solids("W01").solids}) == 5


def test_a_file_is_the_same_every_time(tmp_path: Path) -> None:
    """Another file in between counts the kernel's numbers on; the time in the head is fixed."""
    first, other, again = (tmp_path / name for name in ("first.step", "other.step", "again.step"))
    write_step(harbour_solids("W11"), first)
    write_step(harbour_solids("D01"), other)
    write_step(model_kit(harbour_solids("W11").kit, harbour_job()), again)
    assert first.read_bytes() == again.read_bytes()
    assert b"FILE_NAME('W11','2000-01-01T00:00:00',(''),(''),'','','');" in first.read_bytes()


def openings(**second: Any) -> list[KitSolids]:
    """Two windows of the north side, frames 35-1/2 wide: left edges 30 and 90 from the corner, seen from outside."""
    one = {
        "mark": "W1",
        "room": "Room",
        "frame": "35 1/2 x 47 1/2",
        "rough_opening": "36 x 48",
        "sill_height": "36",
        "elevation": "north",
        "from_left": "30",
    }
    data = changed()
    data["openings"] = [one, {**one, "mark": "W2", "from_left": "90", "sill_height": "24", **second}]
    data["openings"] = [{key: value for key, value in each.items() if value is not None} for each in data["openings"]]
    side = {"start_line": "-10", "eave": "200"}
    data["elevations"] = {"north": {**side, "stories": [{"floor": "100", "openings": ["W2"]}]}, "south": side}
    job = job_of(data)
    return [model_kit(make_kit(one, job), job) for one in place_windows(job)]


def test_an_elevation_read_back_by_gmsh(tmp_path: Path) -> None:
    """Seen from outside W1 is left of W2; x runs right as seen from inside, so it has the greater x. By hand:

    W1's frame ends 65-1/2 from the corner, W2's 125-1/2; W2 stands on a floor 100 in up, its sill 24 in over that.
    """
    pair = openings()
    path = tmp_path / "north.step"
    write_elevation_step(pair, path, elevation="north")
    found = read_back(path)
    assert len(found) == sum(len(one.solids) for one in pair)
    for solids, along, up in zip(pair, (-65.5, -125.5), (36.0, 124.0), strict=True):
        for one in solids.solids:
            size, box = found[f"Shapes/north/{solids.mark}/{solids.mark}/{one.label}/{one.label}"]
            assert size == pytest.approx(kernel.volume(one.bench), abs=SAME_VOLUME)
            assert box == pytest.approx(box_of(one, along, up), abs=SAME_PLACE)


BAD_ELEVATIONS: list[tuple[dict[str, Any], str, str]] = [
    (
        {"from_left": None},
        "north",
        "W2: from_left is not given; elevation 'north' needs it for every opening",
    ),
    (
        {"sill_height": None},
        "north",
        "W2: sill_height is not given; elevation 'north' needs it for every opening",
    ),
    (
        {"elevation": "south"},
        "north",
        "W2 is not on elevation 'north'; leave it out or name that elevation in its entry",
    ),
    ({}, "west", "no elevation is called 'west'; the job has north, south"),
]


@pytest.mark.parametrize(("second", "name", "sentence"), BAD_ELEVATIONS)
def test_an_elevation_that_cannot_be_written_says_why(
    second: dict[str, Any], name: str, sentence: str, tmp_path: Path
) -> None:
    with pytest.raises(ElevationError) as caught:
        write_elevation_step(openings(**second), tmp_path / "north.step", elevation=name)
    assert str(caught.value) == sentence


def test_no_opening_makes_no_elevation(tmp_path: Path) -> None:
    with pytest.raises(ElevationError) as caught:
        write_elevation_step([], tmp_path / "north.step", elevation="north")
    assert str(caught.value) == "elevation 'north': there are no openings to write; give at least one"


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    path = tmp_path / "no" / "opening.step"
    with pytest.raises(OSError) as caught:
        write_step(harbour_solids("D01"), path)
    assert str(caught.value) == f"{path}: the STEP file could not be written; is the folder there?"
