"""What the drywall crew leaves at an opening without casing, as ``parts.json`` has it."""

from __future__ import annotations

from jambs.length import Units
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.drywall import Bead
from jambs.parts.shapes.clear import ClearOpening
from jambs.sheets.backing_words import backing_records
from jambs.values import Record, size, sized


def drywall_record(kit: CutKit, *, units: Units) -> Record:
    """Return openings in the board, the gap at the frame, beads and what backs them; nothing where there is casing."""
    work = kit.drywall
    if work is None:
        return {}
    record: Record = {
        "finished_opening": sized(kit.clear_width, kit.clear_height, units=units),
        "wall_board_opening": _opening(work.wall_board, units),
        "return_board_opening": _opening(work.boards, units) if work.boards else None,
        "gap_at_frame": size(work.gap_at_frame, units=units),
        "beads": [_bead(one, units) for one in work.beads],
        "backing": backing_records(kit, units=units),
    }
    return {"drywall": record}


def _opening(clear: ClearOpening, units: Units) -> Record:
    return sized(clear.width, clear.height, units=units)


def _bead(bead: Bead, units: Units) -> Record:
    return {
        "kind": bead.kind.value,
        "side": bead.side.words,
        "leg": size(bead.leg, units=units),
        "nose": size(bead.nose, units=units),
        "length": size(bead.length, units=units),
    }
