"""Every size that follows from the record of an opening in parts.json: what may be a dimension on its drawings."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import Any

from jambs.length import Units, read_length


def values_in(record: Any) -> Iterator[float]:
    """Return every exact value of a record, as it stands there."""
    if isinstance(record, dict):
        if "text" in record and isinstance(record.get("value"), int | float):
            yield float(record["value"])
        for part in record.values():
            yield from values_in(part)
    elif isinstance(record, list):
        for part in record:
            yield from values_in(part)


def apart(places: Iterable[float]) -> set[float]:
    """Return how far places lie from each other."""
    return {abs(one - two) for one, two in combinations(set(places), 2)}


def in_wall(part: dict[str, Any]) -> list[tuple[float, float]]:
    """Return the corners of a part on the wall (x, y), by the seat that parts.json gives it."""
    return [(x, y) for x, y, _ in in_space(part)]


def over_all(part: dict[str, Any]) -> list[tuple[float, float]]:
    """Return the corners of a part on the wall; of one with slanted ends those of its face, which none runs past."""
    is_slanted = any(cut["kind"] == "plane cut" for cut in part["cuts"])
    return in_wall({**part, "profile": []}) if is_slanted else in_wall(part)


def sizes_in(opening: dict[str, Any], unit: float) -> set[float]:
    """Return every size that follows from the record of an opening, in its unit: figures, planes, corners, cuts."""
    found = set(values_in(opening))
    if opening["sill_height"]:
        found.add(opening["sill_height"]["value"] + opening["window"]["frame"]["height"]["value"])  # its head
    found |= apart(plane["value"] for plane in opening["planes"].values())
    for part in opening["parts"]:
        for axis in (0, 1):
            edges = [corner[axis] for corner in (part["outline"], part["profile"])[axis]]
            found |= apart(edges) | apart(corner[axis] for corner in part["outline"])
        for axis, flat in ((0, "outline"), (1, "outline"), (2, "profile")):
            ends = [pocket[end][axis] for pocket in part["pockets"] for end in ("low", "high")]
            across = [corner[0] for corner in part["profile"]] if axis == 1 else []
            found |= apart([*ends, *across, 0.0, *(corner[axis % 2] for corner in part[flat])])
        found |= apart(corner[0] for corner in part["profile"])
    for where in ("interior", "exterior"):
        mine = [part for part in opening["parts"] if part["where"] == where]
        wood = [part for part in mine if part["is_wood"]]
        trim = [part for part in mine if part["is_wood"] or "crew" in part]
        for parts in (trim, wood, [part for part in wood if part["name"] == "casing"]):
            for axis in (0, 1):
                places = [corner[axis] for part in parts for corner in over_all(part)]
                found |= {max(places) - min(places)} if places else set()
    found |= sizes_of_shapes(opening) | sizes_of_sills(opening)
    for part in opening["parts"]:
        found |= sizes_of_ends(part) | sizes_of_arcs(part) | sizes_of_members(part)
    return {size / unit for size in found}


def sizes_of_shapes(opening: dict[str, Any]) -> set[float]:
    """Return how far corners, centers and crowns of the outlines of a shape lie from each other, across and up.

    Of the rough opening also what its words have, which is rounded for whoever frames it.
    """
    frame = opening["window"]["frame"]
    box = ((0.0, frame["width"]["value"]), (0.0, frame["height"]["value"]))
    found: set[float] = set()
    outlines = (opening["window"].get("shape"), opening.get("rough_outline"), opening.get("framing_outline"))
    for outline in (one for one in outlines if one):
        for axis in (0, 1):
            places = [*box[axis], *(corner[axis] for corner in outline["corners"])]
            for arc in outline.get("arcs", ()):
                center, radius = arc["center"][axis], arc["radius"]["value"]
                places += [center - radius, center, center + radius]
            found |= apart(places)
        found |= {float(one) for one in re.findall(r"(\d+(?:\.\d+)?) mm", outline["text"])}
    return found


def sizes_of_sills(opening: dict[str, Any]) -> set[float]:
    """Return how far the top of the exterior sill, where it begins, lies under the inner edge of the frame."""
    face = opening["window"]["frame_face"]["sill"]["value"]
    return {face - part["seat"]["origin"][1] for part in opening["parts"] if part["name"] == "exterior sill"}


def sizes_of_ends(part: dict[str, Any]) -> set[float]:
    """Return points, edges and chords, which the record tells in words, and how a part lies in the wall."""
    points = re.findall(
        r"(?:long point|short point|over|edge on the (?:face|back)) ((?:\d+ )?\d+(?:/\d+)?(?:\"|\.\d mm| mm))",
        f"{part['ends']} {part['work']}",
    )
    in_words = {read_length(one, units=Units.INCH) * (25.4 if one.endswith("mm") else 1.0) for one in points}
    under_frame = {abs(y) for _, y in in_wall(part)} if part["name"] == "exterior sill" else set()
    return in_words.union(under_frame, *(apart(corner[axis] for corner in in_wall(part)) for axis in (0, 1)))


def sizes_of_arcs(part: dict[str, Any]) -> set[float]:
    """Return rise and chord of each arc sawn into the near edge of a part: from it to the crown, and along it."""
    arcs = [
        (cut["radius"]["value"], abs(cut["center"][1]["value"])) for cut in part["cuts"] if cut["kind"] == "arc cut"
    ]
    chords = {2 * math.sqrt(max(0.0, radius**2 - below**2)) for radius, below in arcs}
    return {abs(radius - below) for radius, below in arcs} | chords


def sizes_of_members(part: dict[str, Any]) -> set[float]:
    """Return how far the edges of stiles, rails and panels lie from each other, along the jamb and across it."""
    members = part.get("members", [])
    found: set[float] = set()
    for way in ("along", "across"):
        axis = part["seat"][way]
        places = [sum(a * b for a, b in zip(corner, axis, strict=True)) for one in members for corner in in_space(one)]
        found |= apart(round(place, 6) for place in places)
    return found


def in_space(part: dict[str, Any]) -> Iterator[tuple[float, ...]]:
    """Yield the corners of a part, and of the profile of its edges, in the wall (x, y, d)."""
    seat = part["seat"]
    for u, v in part["outline"]:
        for v1, w in [(v, 0.0), *part["profile"]]:
            yield tuple(
                seat["origin"][i] + u * seat["along"][i] + v1 * seat["across"][i] + w * seat["through"][i]
                for i in range(3)
            )
