"""A window's depths as its maker writes them: the whole frame and where the flange sits on it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jambs.job.models.fields import fault
from jambs.length import LengthError, Units, length_text, read_length

SAME = 1 / 64
"""Depths that differ by less are one depth, written in two units or rounded by the maker [in]."""


def with_flange_depths(written: Mapping[str, Any], units: Units) -> dict[str, Any]:
    """Fill in jamb depth and frame projection from the frame depth and the flange's set-back, where those are given.

    All run along the depth axis: frame depth = outside edge → inside edge of the frame = projection + jamb depth.
    What cannot be read is left to be told where it stands.
    """
    found = dict(written)
    if "flange_set_back" in found:
        found.setdefault("frame_projection", _rest(found["flange_set_back"], 0.0, units))
    if "frame_depth" not in found:
        return found
    for wanted, other in (("jamb_depth", "frame_projection"), ("frame_projection", "jamb_depth")):
        if wanted not in found and other in found:
            found[wanted] = _rest(found["frame_depth"], found[other], units)
    if "jamb_depth" not in found:
        found["jamb_depth"] = None  # the projection is what is missing: one of them is enough
    return found


def stated_depths(written: Mapping[str, Any], units: Units) -> dict[str, float]:
    """Return jamb depth and frame projection exactly as they are stated, in whichever unit [in]."""
    filled, found = with_flange_depths(written, units), {}
    for key in ("jamb_depth", "frame_projection"):
        if isinstance(filled.get(key), str | int | float):
            found[key] = read_length(filled[key], units=units)
    return found


def _rest(whole: Any, part: Any, units: Units) -> str | None:
    """Return what is left of a depth, in a text that reads as exactly that; nothing where one is not a length."""
    try:
        depth, other = (read_length(one, units=units) for one in (whole, part))
    except (LengthError, TypeError):
        return None
    if depth < other:
        texts = [length_text(one, units=units) for one in (depth, other)]
        raise fault(f"frame_depth is {texts[0]}, less than {texts[1]} from the flange to one edge; correct one of them")
    return f'{depth - other!r}"'


def depths_that_differ(given: Mapping[str, float | None], units: Units) -> str | None:
    """Say where the depths of one frame do not add up; nothing where they do [in]."""
    jamb, projection = given["jamb_depth"] or 0.0, given["frame_projection"] or 0.0
    whole, set_back = given["frame_depth"], given["flange_set_back"]
    if set_back is not None and abs(set_back - projection) > SAME:
        texts = [length_text(one, units=units) for one in (set_back, projection)]
        return (
            f"gives flange_set_back {texts[0]} and frame_projection {texts[1]}; both are flange → outside edge of the "
            "frame, keep one"
        )
    if whole is not None and abs(whole - jamb - projection) > SAME:
        texts = [length_text(one, units=units) for one in (whole, jamb, projection)]
        return (
            f"gives frame_depth {texts[0]}, and jamb_depth {texts[1]} and frame_projection {texts[2]} do not add up to "
            "it; keep two of the three"
        )
    return None
