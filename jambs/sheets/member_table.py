"""The table of stiles, rails and panels: what is sawn alike in one line, what holds for all of them said once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby

from jambs.sheets.part_rows import PLAIN, TOLD_ALIKE
from jambs.values import Record


def said_once(parts: Sequence[Record], beside: Mapping[str, Record]) -> list[str]:
    """Return what several paneled jambs say alike of their frames: it stands with the members, not at each jamb."""
    frames = [beside.get(part["mark"], PLAIN)["frame"] for part in parts if "members" in part]
    return [line for line in frames[0] if all(line in one for one in frames[1:])] if frames[1:] else []


def member_table(parts: Sequence[Record], beside: Mapping[str, Record]) -> Record | None:
    """Return the table of the members of all paneled jambs among some parts; none where there are none."""
    framed = [part for part in parts if "members" in part]
    if not framed:
        return None
    members = [(part, one) for part in framed for one in part["members"]]
    alike: dict[str, list[tuple[Record, Record]]] = {}
    for part, one in members:
        alike.setdefault(repr([one[key] for key in TOLD_ALIKE]), []).append((part, one))
    ends = {one["ends"] for _, one in members}
    sizes = {what: size for part in framed for what, size in beside.get(part["mark"], PLAIN)["sizes"].items()}
    told = [*(f"{what}: {size}" for what, size in sizes.items()), *(ends if len(ends) == 1 else ())]
    return {
        "title": f"Stiles, rails and panels ({len(members)})",
        "told": [*told, *said_once(parts, beside)],
        "rows": [_row(some, beside, with_ends=len(ends) > 1) for some in alike.values()],
    }


def _row(some: Sequence[tuple[Record, Record]], beside: Mapping[str, Record], *, with_ends: bool) -> Record:
    """Return the line of members that are sawn alike."""
    _, first = some[0]
    places = dict.fromkeys(one["position"].removeprefix(f"{part['position']}, ") for part, one in some)
    found = beside.get(first["mark"], PLAIN)
    return {
        "marks": [_marks([one["mark"] for _, one in own]) for _, own in groupby(some, key=_jamb_mark)],
        "name": first["name"],
        "places": list(places),
        "board": first["board"],
        **{key: first[key]["text"] for key in ("thickness", "width", "length")},
        "work": [*([first["ends"]] if with_ends else []), *found["short"]],
        "shape": found["shape"],
    }


def _jamb_mark(pair: tuple[Record, Record]) -> str:
    return str(pair[0]["mark"])


def _marks(marks: Sequence[str]) -> Record:
    """Return the marks of a jamb's members as one text, ``W1-2c, e``, and all of them."""
    first, *others = marks
    return {"text": ", ".join([first, *(mark[-1] for mark in others)]), "all": list(marks)}
