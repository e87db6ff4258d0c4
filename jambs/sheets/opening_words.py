"""An opening in a line: its window, wall, sash and depths, the same on every paper."""

from __future__ import annotations

import math
from collections.abc import Iterable

from jambs.length import OFF_GRID
from jambs.values import Record


def about_words(record: Record) -> str:
    """Return window, wall and rough opening in one line."""
    if record.get("units"):
        return f"{units_words(record)} · {_in_wall(record)}"
    window = record["window"]
    told = [window["sash"]] if window["sash"] != window["name"] else []
    told += [f"hinge {window['hinge']}"] if window["hinge"] else []
    kind = f'window type "{window["name"]}"' + (f" ({', '.join(told)})" if told else "")
    kind += f", {window['shape']['text']}" if "shape" in window else ""
    return f"{kind} · {_in_wall(record)}"


def _in_wall(record: Record) -> str:
    wall, is_door = wall_words(record["wall"]["name"]), record["floor_below_frame"] is not None
    which = "all units" if record.get("units") else "the door" if is_door else "the window"
    datum = ", from the bottom of the frame" if is_door else ""
    return f"{wall} · rough opening for {which} {record['rough_opening']['text']}{datum}"


def units_words(record: Record) -> str:
    """Return each unit of an opening by its number, left to right as seen from inside, the lower row first."""
    return "; ".join(f"unit {unit['number']} {unit['name']} {unit['frame']['text']}" for unit in record["units"])


def sash_words(record: Record) -> str:
    """Return how far the sash opens and what stops it."""
    if record.get("units"):
        return "; ".join(f"unit {one['number']}: {_sash_words(one)}" for one in record["units"] if one["swing"])
    return _sash_words(record)


def _sash_words(record: Record) -> str:
    swing = record["swing"]
    if swing is None:
        return ""
    degrees, met = math.floor(swing["greatest_deg"]["value"] + OFF_GRID), swing["stopped_by"]
    leaf = "door" if record.get("floor_below_frame") or record.get("is_door") else "sash"
    return f"{leaf} opens to {degrees}°, {'nothing stops it' if met == 'nothing' else f'stopped by {met}'}"


def wall_words(name: str) -> str:
    """Return ``wall "main"``: a name that somebody gave stands in quotes, whatever it is."""
    return f'wall "{name}"'


def bearing_words(openings: Iterable[Record]) -> str:
    """Say what bears in the flange plane: flanges, the clips of windows that have none, or both."""
    has = {one["window"]["nailing_flange"] for one in openings}
    return " or ".join(words for key, words in ((True, "flange"), (False, "bearing face of clips")) if key in has)


def interior_text(record: Record) -> str:
    """Return the interior depth; where it was measured, the least and the greatest that was found."""
    if record["state"]["is_measured"]:
        return _range_text(record["depths"]["measured"]["interior"])
    return _proud_text(record["depths"]["interior"])


def exterior_text(record: Record) -> str:
    """Return the exterior depth; a frame that stands out past the trim plane is *proud* by that much."""
    if record["state"]["exterior_is_measured"]:
        return _range_text(record["depths"]["measured"]["exterior"])
    return _proud_text(record["depths"]["exterior"])


def planned_text(record: Record, side: str) -> str:
    """Return the interior or exterior depth as planned."""
    return _proud_text(record["depths"][side])


def _proud_text(depth: Record) -> str:
    text: str = depth["text"]
    return f"{text.removeprefix('-')} proud" if depth["value"] < 0 else text


def _range_text(sides: Record) -> str:
    depths = sorted((one for side in sides.values() if side for one in side if one), key=lambda one: one["value"])
    least, greatest = _proud_text(depths[0]), _proud_text(depths[-1])
    return least if least == greatest else f"{least} to {greatest}"
