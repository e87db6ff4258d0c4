"""The record of ganged units: each unit in its place, and what lies between them; nothing of a plain opening."""

from __future__ import annotations

from collections import Counter

from jambs.job.models.fields import Size
from jambs.job.models.gang import Mull, MullKind, Unit
from jambs.job.models.windows import WindowType
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.place.escape import clear_opening
from jambs.place.placement import UnitPlaced
from jambs.place.posts import posts_in
from jambs.sides import Side
from jambs.values import Record, dump, size, sized, stated, stated_size, weight


def gang_record(kit: Kit, *, units: Units) -> Record:
    """Return the units and the mulls of an opening; an empty record where it is one unit."""
    placement = kit.placement
    gang = placement.opening.gang
    if gang is None:
        return {}
    return {
        "units": [
            _unit_record(unit, placed, units=units) for unit, placed in zip(gang.units, placement.units, strict=True)
        ],
        "mulls": [_mull_record(mull, kit, units=units) for mull in gang.mulls],
    }


def _unit_record(unit: Unit, placed: UnitPlaced, *, units: Units) -> Record:
    opening, swing = placed.opening, placed.swing
    clear = clear_opening(opening, swing)
    return {
        "number": unit.number,
        "name": unit.window_name,
        "frame": stated_size(unit.frame.width, unit.frame.height, units=units),
        "frame_face": frame_face_record(unit.window, units=units),
        "from_left": stated(unit.x, units=units),
        "from_bottom": stated(unit.y, units=units),
        "sash": unit.window.sash.value,
        "is_door": unit.window.sash.is_door,
        "hinge": unit.hinge,
        "safety_glass": opening.safety_glass,
        "weight": weight(placed.weight, units=units),
        "weight_is_assumed": placed.weight_is_assumed,
        "swing": swing and {**dump(swing, units=units), "clear": sized(*_sides(swing.clear), units=units)},
        "passage": sized(*_sides(clear), units=units),
    }


def frame_face_record(window: WindowType, *, units: Units) -> Record:
    """Return how wide the frame is seen square on: what most sides have, then those that have another."""
    face = {side: window.frame_face.at(side) for side in Side}
    most = Counter(face.values()).most_common(1)[0][0]
    others = (f"{side.value} {stated(width, units=units)['text']}" for side, width in face.items() if width != most)
    text = ", ".join((stated(most, units=units)["text"], *others))
    return {**{side.value: stated(width, units=units) for side, width in face.items()}, "text": text}


def _sides(clear: Size) -> tuple[float, float]:
    return clear.width, clear.height


def _mull_record(mull: Mull, kit: Kit, *, units: Units) -> Record:
    kinds = [PartKind.MULL_JAMB, PartKind.MULL_CASING]
    if mull.kind is MullKind.TRANSOM_BAR:
        kinds = [PartKind.TRANSOM_BAR_CASING]
    boxed = {"boxed_inside": mull.boxed_inside, "boxed_outside": mull.boxed_outside}
    return {
        "kind": mull.kind.value,
        "units": [*mull.before, *mull.after],
        "from": stated(mull.low, units=units),
        "between_frames": stated(mull.between, units=units),
        "post": None if mull.post is None else size(mull.post, units=units),
        **_post_record(mull, kit, units=units),
        **(boxed if any(boxed.values()) else {}),
        "parts": [part.mark for part in kit.parts if part.kind in kinds and part.member == mull.member],
    }


def _post_record(mull: Mull, kit: Kit, *, units: Units) -> Record:
    """Return where a post or a bar stands in the rough opening and how long it is; nothing where none does."""
    placement = kit.placement
    post = next((one for one in posts_in(placement.opening, placement.shims) if one.mull == mull), None)
    if post is None:
        return {}
    return {"post_from": stated(post.low, units=units), "post_length": size(post.length, units=units)}
