"""GLB read back as the format's own document says (glTF 2.0, sections 3.6, 4.4): chunks, nodes, accessors."""

from __future__ import annotations

import json
import struct
from pathlib import Path
from typing import Any

import pytest
from harbour import harbour_solids

from jambs.length import MM_PER_INCH
from jambs.solids import write_glb

METERS_PER_INCH = MM_PER_INCH / 1000
SAME_PLACE = 1e-5


def read_glb(path: Path) -> tuple[dict[str, Any], bytes]:
    """The two chunks of a binary glTF: header of 12 bytes, then for each length, type and data."""
    data = path.read_bytes()
    magic, version, length = struct.unpack_from("<4sII", data)
    assert (magic, version, length) == (b"glTF", 2, len(data))
    size, kind = struct.unpack_from("<I4s", data, 12)
    assert kind == b"JSON"
    document: dict[str, Any] = json.loads(data[20 : 20 + size])
    length, kind = struct.unpack_from("<I4s", data, 20 + size)
    assert kind == b"BIN\x00"
    return document, data[28 + size : 28 + size + length]


def positions(document: dict[str, Any], data: bytes, index: int) -> list[tuple[float, ...]]:
    """Corners of a mesh: three floats each (component type 5126)."""
    accessor = document["accessors"][index]
    assert (accessor["componentType"], accessor["type"]) == (5126, "VEC3")
    view = document["bufferViews"][accessor["bufferView"]]
    start, step = view.get("byteOffset", 0) + accessor.get("byteOffset", 0), view.get("byteStride", 12)
    return [struct.unpack_from("<3f", data, start + step * i) for i in range(accessor["count"])]


def test_parts_stand_upright_in_meters(tmp_path: Path) -> None:
    """glTF is y up and right-handed, so depth d, away from the viewer in the room, runs along -z."""
    solids, path = harbour_solids("W02"), tmp_path / "opening.glb"
    write_glb(solids, path)
    document, data = read_glb(path)
    names = {node["name"] for node in document["nodes"] if "mesh" in node}
    assert names == {solid.label for solid in solids.solids}
    low, high = whole_box(document, data)
    for axis in (0, 1):
        assert low[axis] == pytest.approx(min(one.low[axis] for one in solids.solids) * METERS_PER_INCH, abs=SAME_PLACE)
        assert high[axis] == pytest.approx(
            max(one.high[axis] for one in solids.solids) * METERS_PER_INCH, abs=SAME_PLACE
        )
    assert low[2] == pytest.approx(-max(one.high[2] for one in solids.solids) * METERS_PER_INCH, abs=SAME_PLACE)
    assert high[2] == pytest.approx(-min(one.low[2] for one in solids.solids) * METERS_PER_INCH, abs=SAME_PLACE)


def whole_box(document: dict[str, Any], data: bytes) -> tuple[list[float], list[float]]:
    """Corners of the box around all meshes, every node's matrix or turn and shift applied."""
    points = []
    for root in document["scenes"][0]["nodes"]:
        points += node_points(document, data, root, identity())
    return [min(p[i] for p in points) for i in range(3)], [max(p[i] for p in points) for i in range(3)]


Matrix = list[list[float]]


def identity() -> Matrix:
    return [[float(i == j) for j in range(4)] for i in range(4)]


def times(one: Matrix, two: Matrix) -> Matrix:
    return [[sum(one[i][k] * two[k][j] for k in range(4)) for j in range(4)] for i in range(4)]


def node_points(document: dict[str, Any], data: bytes, index: int, above: Matrix) -> list[list[float]]:
    node = document["nodes"][index]
    here = times(above, local(node))
    found = []
    for child in node.get("children", []):
        found += node_points(document, data, child, here)
    if "mesh" in node:
        for primitive in document["meshes"][node["mesh"]]["primitives"]:
            for corner in positions(document, data, primitive["attributes"]["POSITION"]):
                point = [*corner, 1.0]
                found.append([sum(here[i][k] * point[k] for k in range(4)) for i in range(3)])
    return found


def local(node: dict[str, Any]) -> Matrix:
    if "matrix" in node:
        return [[node["matrix"][4 * j + i] for j in range(4)] for i in range(4)]
    x, y, z, w = node.get("rotation", [0.0, 0.0, 0.0, 1.0])
    shift = node.get("translation", [0.0, 0.0, 0.0])
    return [
        [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w), shift[0]],
        [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w), shift[1]],
        [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y), shift[2]],
        [0.0, 0.0, 0.0, 1.0],
    ]


def test_no_surface_is_metal(tmp_path: Path) -> None:
    """A factor that is not stated is 1, all metal (glTF 2.0, 5.22): viewers would show wood as dark mirrors."""
    path = tmp_path / "opening.glb"
    write_glb(harbour_solids("W02"), path)
    document, _ = read_glb(path)
    assert document["materials"]
    for material in document["materials"]:
        surface = material["pbrMetallicRoughness"]
        assert surface["metallicFactor"] == 0 and 0.5 < surface["roughnessFactor"] <= 1
        assert len(surface["baseColorFactor"]) == 4


def test_a_glb_is_the_same_every_time(tmp_path: Path) -> None:
    first, again = tmp_path / "first.glb", tmp_path / "again.glb"
    write_glb(harbour_solids("W02"), first)
    write_glb(harbour_solids("W02"), again)
    assert first.read_bytes() == again.read_bytes()
