"""An opening that is taken hold of: what it shows, where the hand wants it, and where it was let go."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from jambs.findings import FindingsError
from jambs.job.editing.file_text import EditRefused
from jambs.parts.kit.cut_kit import CutKit
from jambs.screen.desk import CannotStand, Desk, House
from jambs.screen.opening_data import fixed_record, settled_record, stood_record
from jambs.screen.placing import HeldWindow, Named, held, named_places, settle, stand
from jambs.screen.position_edits import position_edits
from jambs.screen.unmade_data import unplanned_rows
from jambs.values import Record

MOST_REACH = 1.0
"""No named place takes a window from further away than this [in], whatever a browser asks for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InHand:
    """An opening that is looked at: the house it stands in, what is held, its kit as printed, the named places."""

    house: House
    hand: HeldWindow
    kit: CutKit
    places: tuple[Named, ...]


def in_hand(desk: Desk, mark: str, *, alone: bool, moves: bool = False) -> InHand | None:
    """Take hold of an opening of the house as it is now; nothing where there is no such opening.

    ``moves``: the hand is on it, so what was read elsewhere since the house was made waits until it lets go.
    """
    house = desk.house_at_hand() if moves else desk.house()
    kit = next((one for one in house.asked.kits if one.mark == mark), None) if house.asked else None
    if house.asked is None or kit is None:
        return None
    opening, job = kit.placement.opening, house.asked.job
    hand = held(opening, kit.placement, job, alone=alone or opening.position_is_own, book=house.asked.marked.book)
    least = desk.heat.least(hand.lead, job)
    places = named_places(hand, now=kit.placement.flange_plane, least_heat=least)
    return InHand(house=house, hand=hand, kit=kit, places=places)


def opening_record_of(found: InHand) -> Record:
    """Return everything the view shows of an opening as it stands in the job."""
    assert found.house.asked
    fixed = fixed_record(found.hand, found.kit, found.places)
    return {
        "number": found.house.number,
        "fixed": {**fixed, "unplanned": [row["why"] for row in unplanned_rows(found.house)]},
        "now": settled_record(found.hand, found.kit, found.house.asked.register),
    }


def moved_record(found: InHand, asked: dict[str, Any]) -> Record:
    """Return what a window does that is wanted near a plane; where it cannot stand, why."""
    number, wanted, reach = asked.get("n", 0), _number(asked.get("plane")), _number(asked.get("reach"))
    plane, named = settle(found.hand, wanted, found.places, reach=min(reach, MOST_REACH))
    try:
        stood = stand(found.hand, plane, named)
    except FindingsError as error:
        return {"n": number, "wrong": list(error.sentences(found.hand.job.units))}
    rests = bool(asked.get("rests"))
    only = "" if rests else str(asked.get("cut") or "")
    return {"n": number, "now": stood_record(found.hand, stood, with_parts=rests, only=only)}


def _number(value: Any) -> float:
    found = float(value) if isinstance(value, int | float) else 0.0
    return found if math.isfinite(found) else 0.0


def heat_record(desk: Desk, mark: str) -> Record:
    """Return the curves of an opening, or that they are being worked out."""
    found = in_hand(desk, mark, alone=False)
    if found is None:
        return {"said": ""}
    draft, lead = found.house.text, found.hand.lead
    if lead.mark != mark:
        desk.heat.curves(desk.file, draft, lead, found.hand.job)
    return desk.heat.curves(desk.file, draft, found.hand.opening, found.hand.job)


def put(desk: Desk, mark: str, asked: dict[str, Any]) -> tuple[Record, int]:
    """Put a window where the hand let it go: a step of the draft; where it cannot stand, why, and nothing changes."""
    alone = bool(asked.get("alone"))
    with desk.lock:
        found = in_hand(desk, mark, alone=alone)
        if found is None:
            return {"wrong": [f"There is no opening {mark} in this job."]}, 404
        alone = alone or found.hand.opening.position_is_own
        reach = min(_number(asked.get("reach")), MOST_REACH)
        plane, named = settle(found.hand, _number(asked.get("plane")), found.places, reach=reach)
        moved = mark if alone else f"all windows of wall {found.hand.opening.wall.name}"
        try:
            edits = position_edits(
                desk.draft.files[desk.file.name], found.hand, plane, named, alone=alone, folder=desk.file.parent
            )
            desk.change(f"place {moved}", edits)
        except EditRefused as error:
            return {"wrong": [str(error)]}, 409
        except CannotStand as error:
            return {"wrong": list(error.sentences)}, 409
        now = in_hand(desk, mark, alone=alone)
        assert now is not None
        return opening_record_of(now), 200
