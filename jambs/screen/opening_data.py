"""What the page says of one opening, in the texts of its cut sheet: figures, boards, findings, limits, parts."""

from __future__ import annotations

import math
from dataclasses import replace

from jambs.job import Job
from jambs.length import OFF_GRID
from jambs.outside.register import Register
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.kit.kit import Kit
from jambs.place.limits import FAR, Range
from jambs.screen.boards_needed import boards_record
from jambs.screen.elevation_shapes import view_records
from jambs.screen.placing import HeldWindow, Named, Stood, depths_words, why_words
from jambs.screen.shapes import chain_records, layer_records, section_records, swing_record, window_boxes
from jambs.screen.spoken_keys import spoken_records
from jambs.sheets.cut_sheet import GROUPS, NOTHING
from jambs.sheets.house import rip_text
from jambs.sheets.opening_words import about_words, exterior_text, interior_text
from jambs.sheets.part_rows import member_rows, part_row
from jambs.sheets.record import finding_records, opening_record
from jambs.values import Record

NONE = "–"


def stood_record(hand: HeldWindow, stood: Stood, *, with_parts: bool = True, only: str = "") -> Record:
    """Return all that changes while a window is moved: shapes, chains, figures, findings.

    ``only``: the section that is looked at, by its name; empty for all of them.

    ``with_parts``: parts, boards and elevations too, which take longer than all the rest, for a hand that rests.
    """
    kit, job = stood.kit, hand.job
    cut = kit if isinstance(kit, CutKit) else as_cut(kit, PlannedForKit())
    record = opening_record(cut if with_parts else replace(cut, parts=_jambs(cut)), grid=job.shop.grid)
    return {
        "plane": round(stood.plane, 6),
        "named": stood.named.name if stood.named else "",
        "sections": section_records(kit, job, only=only),
        "chains": chain_records(kit, job),
        "frames": window_boxes(kit),
        "figures": figure_rows(record, kit, job),
        "why": why_words(stood, hand),
        "limits": limit_rows(hand, stood.plane),
        "findings": spoken_records(finding_records((*kit.placement.findings, *kit.findings), units=job.units)),
        "swing": swing_record(kit),
        "parts": part_groups(record) if with_parts else None,
        "boards": boards_record(kit, job) if with_parts else None,
        "views": view_records(kit) if with_parts else None,
        "others": other_rows(hand, stood.plane),
    }


def _jambs(kit: Kit) -> tuple[Part, ...]:
    return tuple(part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB)


def settled_record(hand: HeldWindow, kit: CutKit, register: Register) -> Record:
    """Return an opening as it stands in the job, as the papers say it: reasons and findings are the register's own."""
    stood = Stood(plane=kit.placement.flange_plane, named=None, kit=kit)
    reasons = [one.sentence(hand.job.units) for one in kit.placement.reasons]
    return {
        **stood_record(hand, stood),
        "why": " ".join(reasons),
        "findings": spoken_records(
            {"weight": one.severity.value, "text": one.sentence} for one in register.of_opening(kit.mark)
        ),
    }


def fixed_record(hand: HeldWindow, kit: CutKit, places: tuple[Named, ...]) -> Record:
    """Return what stays as it is while a window is moved: who it is, the wall, the places with a name."""
    opening, planes, job = hand.opening, hand.planes, hand.job
    record = opening_record(kit, grid=job.shop.grid)
    return {
        "mark": opening.mark,
        "room": opening.room,
        "about": about_words(record),
        "banner": record["state"]["banner"],
        "measured": kit.is_measured or kit.placement.stands_as_measured,
        "wall": opening.wall.name,
        "layers": layer_records(kit, job),
        "reach": [0.0, planes.cladding_face],
        "places": [{"name": one.name, "plane": round(one.plane, 6)} for one in places],
        "step": job.shop.grid.step,
        "together": [one.mark for one in hand.together],
        "own": opening.position_is_own,
        "run": [*opening.run.marks] if opening.run else [],
    }


def figure_rows(record: Record, kit: Kit, job: Job) -> list[Record]:
    """Return the row of large figures, always the same ones in the same places: name, figure, and what is under it."""
    tightest = kit.placement.tightest
    swing = tightest[1] if tightest else None
    degrees = f"{math.floor(swing.greatest_deg + OFF_GRID)}°" if swing else NONE
    met = f"stopped by {swing.stopped_by}" if swing else "the sash does not swing"
    met += ", the unit that opens least" if swing and kit.placement.units else ""
    buck = kit.placement.buck
    return [
        _figure("interior depth", interior_text(record), "finished face to frame"),
        _figure("exterior depth", exterior_text(record), "frame to trim plane"),
        _figure("jamb rip", rip_text(record), _board_words(record)),
        _figure("buck", job.units.text(buck.outer - buck.inner) if buck else "none", _buck_words(kit)),
        _figure("sash opens", degrees, met),
        _figure("clear between jambs", record["clear_opening"]["text"], "width × height"),
    ]


def _figure(name: str, text: str, under: str) -> Record:
    return {"name": name, "text": text, "under": under}


def _board_words(record: Record) -> str:
    jambs = [one["board"] for one in record["parts"] if PartKind(one["name"]) is PartKind.EXTENSION_JAMB]
    return "; ".join(dict.fromkeys(jambs)) or NONE


def _buck_words(kit: Kit) -> str:
    buck = kit.placement.buck
    return f"{buck.kind}, {buck.stock}" if buck else "the flange lies on the sheathing"


def limit_rows(hand: HeldWindow, plane: float) -> list[Record]:
    """Return each limit as a range of the flange plane, and by how much it is missed; nothing where it is not."""
    return [_limit(one, plane, hand) for one in hand.limits]


def _limit(one: Range, plane: float, hand: HeldWindow) -> Record:
    miss = one.miss(plane)
    mark = f" ({one.mark})" if len(hand.together) > 1 else ""
    return {
        "name": f"{one.limit}{mark}",
        "low": None if one.low <= -FAR else round(one.low, 4),
        "high": None if one.high >= FAR else round(one.high, 4),
        "miss": f"missed by {hand.job.units.text(miss)}" if miss > OFF_GRID else "",
    }


def part_groups(record: Record) -> list[Record]:
    """Return the parts as the cut sheet lists them, in its order."""
    groups = [
        {
            "title": title,
            "parts": [
                row
                for one in record["parts"]
                if one["where"] == where.value
                for row in (part_row(one), *member_rows(one, NOTHING))
            ],
        }
        for where, title in GROUPS
    ]
    return [group for group in groups if group["parts"]]


def other_rows(hand: HeldWindow, plane: float) -> list[Record]:
    """Return the openings that move along, with the depths they would have there."""
    found = []
    for one in hand.together:
        if one.mark != hand.opening.mark:
            inside, outside = depths_words(one, hand.planes, plane, hand.job.units)
            found.append({"mark": one.mark, "room": one.room, "interior": inside, "exterior": outside})
    return found
