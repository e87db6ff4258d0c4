"""Lists for the whole house: window order, summary with all findings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import groupby
from pathlib import Path

from jambs.job.models.openings import Job
from jambs.job.models.windows import Sash
from jambs.length import share_text
from jambs.outside.register import ORDER, Register
from jambs.parts.board.lifting import lifting_of_house, lifts_of
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.place.falls import falls_words
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.house_cells import NONE, cautions_beside, parts_of
from jambs.sheets.opening_words import bearing_words, exterior_text, interior_text, planned_text
from jambs.sheets.press import press_large
from jambs.sheets.record import job_record
from jambs.sheets.told import assumed_rows, count_record, told
from jambs.values import Record

UNSTATED = "HINGE SIDE NOT STATED"
SIDE_HUNG = tuple(sash.value for sash in Sash if sash.is_side_hung)

WEIGHTS = [weight.value for weight in ORDER]


def write_order_sheet(
    kits: Sequence[CutKit],
    job: Job,
    path: Path,
    *,
    positions: Sequence[Record] = (),
    stamp: str = "",
    record: Record | None = None,
) -> None:
    """Write the window order sheet as PDF: what to order, how many of each, and how deep they stand.

    ``positions``: what the planned positions do to heat, damp and sun, in texts. ``record``: that of the job, where it
    is made already.
    """
    data = {**order_data(kits, job, record), "positions": list(positions)}
    path.write_bytes(press_large("order", stamped(data, stamp)))


def write_summary(
    kits: Sequence[CutKit],
    register: Register,
    job: Job,
    path: Path,
    *,
    stamp: str = "",
    record: Record | None = None,
) -> None:
    """Write the summary of the house as PDF: depths and rips of every opening, all findings, what was assumed."""
    path.write_bytes(press_large("summary", stamped(summary_data(kits, register, job, record), stamp)))


def order_data(kits: Sequence[CutKit], job: Job, record: Record | None = None) -> Record:
    """Return what the order sheet prints; ``record``: that of the job, where it is made already."""
    openings = (record or job_record(kits, job))["openings"]
    ordered = [unit for one in openings for unit in as_ordered(one)]
    return {
        **page_data(job),
        "kinds": _order_kinds(ordered),
        "rows": [_order_row(one) for one in ordered],
        "glass": _weightiest(openings, "glass"),
        "falls": falls_words(kit.placement.opening for kit in kits),
        "escapes": [_escape_row(one) for one in openings if one["escape"]],
        "escape_limits": next((one["escape"]["limits_of"] for one in openings if one["escape"]), ""),
        "depths": _depth_rows(openings),
        "bearing": bearing_words(openings),
        "count": len(ordered),
    }


OF_UNIT = ("name", "frame", "frame_face", "sash", "hinge", "safety_glass", "weight", "weight_is_assumed")
"""What a unit says in the place of its opening's window."""


def as_ordered(opening: Record) -> list[Record]:
    """Return an opening once for every unit that is ordered for it, each with its own window."""
    units = opening.get("units")
    if not units:
        return [opening]
    return [
        {
            **opening,
            "mark": f"{opening['mark']}, unit {unit['number']}",
            "rough_opening": {"text": _rough_of_unit(opening, unit["number"])},
            "window": {**opening["window"], **{key: unit[key] for key in OF_UNIT}},
        }
        for unit in units
    ]


def _rough_of_unit(opening: Record, number: int) -> str:
    """Return the one rough opening of all units beside the first of them."""
    if number > 1:
        return "the same"
    return f"{opening['rough_opening']['text']}, one for units 1 to {len(opening['units'])}"


def _order_key(opening: Record) -> tuple[str, ...]:
    """Return what makes two windows the same to order, as printed."""
    window = opening["window"]
    shape = window.get("shape")
    return (
        f"{window['name']}: {shape['text']}, seen from inside" if shape else window["name"],
        window["frame"]["text"],
        window["sash"] + (", safety glass" if window["safety_glass"] else ""),
        hinge_words(window),
        window["jamb_depth"]["text"],
        window["frame_projection"]["text"],
        "yes" if window["nailing_flange"] else "no",
    )


def hinge_words(window: Record) -> str:
    """Return the side of the hinge, seen from inside; a sash that hangs on one must not be ordered without it."""
    if window["hinge"] or window["sash"] not in SIDE_HUNG:
        return window["hinge"] or NONE
    return UNSTATED


KIND_KEYS = ("type", "frame", "sash", "hinge", "jamb_depth", "projection", "flange")


def _order_kinds(openings: Sequence[Record]) -> list[Record]:
    """Return how many of each kind of window, and for which openings; kinds in the order they first come."""
    counts = Counter(map(_order_key, openings))
    first = {_order_key(one): one["window"] for one in reversed(openings)}
    return [
        {
            **dict(zip(KIND_KEYS, key, strict=True)),
            "frame_depth": first[key]["frame_depth"]["text"],
            "frame_face": first[key]["frame_face"]["text"],
            "hinge_is_missing": key[KIND_KEYS.index("hinge")] == UNSTATED,
            "count": count,
            "marks": [one["mark"] for one in openings if _order_key(one) == key],
        }
        for key, count in counts.items()
    ]


def _order_row(opening: Record) -> Record:
    window = opening["window"]
    return {
        **dict(zip(KIND_KEYS, _order_key(opening), strict=True)),
        "mark": opening["mark"],
        "room": opening["room"],
        "opens": _opens(window),
        "weight": window["weight"]["text"],
        "weight_is_assumed": window["weight_is_assumed"],
        "rough_opening": opening["rough_opening"]["text"],
        "escape": _escape_words(opening),
    }


def _opens(window: Record) -> str:
    """Return the sash, where the name of the window is not its word, and its hinge, to stand apart from the name."""
    hinge = hinge_words(window)
    side = hinge if hinge == UNSTATED else f"hinge {hinge}"
    told = [f"sash: {window['sash']}"] if window["sash"] != window["name"] else []
    return ", ".join([*told, *([side] if hinge != NONE else [])])


def _escape_words(opening: Record) -> str:
    """Say whether an opening has to serve as an escape, and the clear passage its sash leaves."""
    if not opening["window"]["escape"]:
        return NONE
    check = opening["escape"]
    return f"yes, clear {check['clear']['text']}" if check else "yes"


def _escape_row(opening: Record) -> Record:
    measures = [{"has": one["has"], "needs": one["needs"]} for one in opening["escape"]["measures"]]
    return {"mark": opening["mark"], "room": opening["room"], "measures": measures}


def _depth_rows(openings: Iterable[Record]) -> list[Record]:
    """Return the depths of each wall and window type as planned, openings with the same depths in one row."""

    def key(one: Record) -> tuple[str, ...]:
        return (
            one["wall"]["name"],
            one["window"]["name"],
            one["planes"]["flange_plane"]["text"],
            planned_text(one, "interior"),
            planned_text(one, "exterior"),
            one["buck"]["kind"] if one["buck"] else "none",
        )

    names = ("wall", "type", "flange_plane", "interior", "exterior", "buck")
    return [
        {**dict(zip(names, values, strict=True)), "marks": [one["mark"] for one in group]}
        for values, group in groupby(sorted(openings, key=key), key=key)
    ]


def summary_data(kits: Sequence[CutKit], register: Register, job: Job, record: Record | None = None) -> Record:
    """Return what the summary of the house prints; its findings and their counts are those of the register.

    ``record``: that of the job, where it is made already.
    """
    record = record or job_record(kits, job)
    openings = record["openings"]
    weights = {
        " ".join(filter(None, (kit.mark, lift.words))): lift.weight for kit in kits for lift in lifts_of(kit.placement)
    }
    return {
        **page_data(job),
        "rows": [_summary_row(one, register) for one in openings],
        "findings": told(register.entries),
        "counts": count_record(register.entries),
        "rest": count_record(register.of_the_rest),
        "measured": sum(one["state"]["is_measured"] for one in openings),
        "assumed": assumed_rows(record["assumed"]),
        "own_assumed": _own_assumed(openings),
        "cautions": [*lifting_of_house(weights, job.units), *cautions_beside(kits, *Beside)],
    }


def _own_assumed(openings: Sequence[Record]) -> list[Record]:
    """Return what was assumed for the same reason once, each value with the openings that it was assumed of."""
    found: dict[str, Record] = {}
    for said, marks in _gathered(openings, "assumed"):
        (one,) = assumed_rows([said])
        value = {"value": one.pop("value"), "marks": marks}
        found.setdefault(repr(one), {**one, "values": []})["values"].append(value)
    return list(found.values())


def _weightiest(openings: Sequence[Record], key: str) -> list[Record]:
    """Return findings of several openings, the same words once with all their marks, the weightiest first."""
    found = [{**one, "marks": marks} for one, marks in _gathered(openings, key)]
    return sorted(found, key=lambda one: WEIGHTS.index(one["weight"]))


def _gathered(openings: Sequence[Record], key: str) -> list[tuple[Record, list[str]]]:
    """Return what several openings say in the same words once, with their marks."""
    marks: dict[tuple[tuple[str, str], ...], list[str]] = {}
    for opening in openings:
        for said in opening[key]:
            marks.setdefault(tuple(said.items()), []).append(opening["mark"])
    return [(dict(said), list(dict.fromkeys(found))) for said, found in marks.items()]


def _summary_row(opening: Record, register: Register) -> Record:
    share = opening["depths"]["share"]
    return {
        "mark": opening["mark"],
        "room": opening["room"],
        "window": opening["window"]["name"],
        "wall": opening["wall"]["name"],
        "frame": opening["window"]["frame"]["text"],
        "state": "measured" if opening["state"]["is_measured"] else "planned",
        "flange_plane": opening["planes"]["flange_plane"]["text"],
        "share": f"share {share_text(share)}" if share is not None and 0 <= share <= 1 else "",
        "interior": interior_text(opening),
        "rip": rip_text(opening),
        "exterior": exterior_text(opening),
        "buck": opening["buck"]["kind"] if opening["buck"] else "none",
        "parts": len(opening["parts"]),
        "findings": count_record(register.of_opening(opening["mark"])),
    }


def rip_text(opening: Record) -> str:
    """Return the rip width of the interior extension jambs; the least and the greatest where they differ."""
    jambs = [part["width"] for part in parts_of(opening, "interior") if "jamb" in part["name"]]
    widths = {width["value"]: width["text"] for width in jambs}
    if not widths:
        return NONE
    texts = [widths[value] for value in sorted(widths)]
    return texts[0] if texts[0] == texts[-1] else f"{texts[0]} to {texts[-1]}"
