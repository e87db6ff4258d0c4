"""The record of a job: everything that is printed, as one JSON document. It is ``parts.json``.

Layout (``parts_schema.json`` says it in full)::

    format    always "jambs parts"
    version   3; grows when a reader of the older one would go wrong
    job       name, date, site
    units     "inch" or "mm": the unit of every bare number
    grid      the step of the shop's sizes
    issue     of its lists, and of each opening: number, code, date, measured, replaces; where it is issued
    assumed   values of the whole job that nobody stated
    findings  what is to be known of walls, elevations and the house (in the file only)
    openings  one record each: state, sizes, window (of ganged units also units and mulls), wall, planes, depths, buck,
              swing, escape, glass, trim, figures, parts, findings, assumed, cautions

A *size* is ``{"value": 4.6875, "text": "4 11/16\""}``: the exact number in the job's units, and the text that
stands on every paper. Where an ``outline`` has ``bulges``, pieces of it are arcs: a bulge is the tangent of a quarter
of the arc that begins at its point, positive counter-clockwise. ``outline``, ``profile``, ``pockets`` and ``seat``
hold bare numbers in the job's units. The seat is where the body is: on a measured wall casing, apron and flashing lie
on the plane that the jambs' edges make.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from jambs.findings import Finding
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Assumed, Job, Measured
from jambs.job.models.path import outset
from jambs.job.models.site import SiteEntry
from jambs.length import Grid, Units
from jambs.outside.register import ORDER
from jambs.parts.board.kinds import Where
from jambs.parts.findings.flare_findings import RoughOpeningFlares
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.readings.as_built import PLANNED
from jambs.parts.trim.casing_plane import hung
from jambs.parts.words.corner_words import has_no_butt, jamb_corner_words
from jambs.place.frame_path import frame_path, rough_path, rough_size
from jambs.place.glass_findings import GlassFinding
from jambs.place.placement import Alternative, Placement
from jambs.section.threshold import feet_of
from jambs.sheets.depths_record import depths_record, planes_record
from jambs.sheets.drywall_record import drywall_record
from jambs.sheets.escape_record import escape_record
from jambs.sheets.outline_record import outline_record
from jambs.sheets.part_record import part_record
from jambs.sheets.run_record import run_record
from jambs.sheets.trim_record import trim_record
from jambs.sheets.unit_record import frame_face_record, gang_record
from jambs.sides import Side
from jambs.values import Record, dump, number, sawn_size, sawn_sizes, size, sized, stated, stated_size, weight

FORMAT = "jambs parts"

VERSION = 3
"""3: outlines and cuts may have arcs.

2: ``depths.measured`` has null at points that nobody read, where version 1 had a size that lay between others."""


def _site(site: SiteEntry | None) -> Record:
    """Return what the job says of its site: degrees Celsius, kelvin days, humidities 0 to 1."""
    return site.model_dump(exclude_none=True) if site else {}


def job_record(kits: Sequence[CutKit], job: Job) -> Record:
    """Return the record of a whole job: ``parts.json`` before it is written."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "job": _job(job),
        "units": job.units.value,
        "grid": size(job.shop.grid.step, units=job.units),
        "assumed": assumed_records(job.assumed),
        "openings": [opening_record(kit, grid=job.shop.grid) for kit in kits],
    }


def _job(job: Job) -> Record:
    """Return what is told of the job itself; its address only where there is one."""
    address = {"address": [*job.address]} if job.address else {}
    return {
        "name": job.name,
        **address,
        "date": job.date.isoformat() if job.date else None,
        "site": _site(job.site),
    }


def opening_record(kit: CutKit, *, grid: Grid) -> Record:
    """Return the record of one opening: what its cut sheet prints and more."""
    placement, units = kit.placement, grid.units
    opening = placement.opening
    return {
        "mark": kit.mark,
        "room": opening.room,
        "state": state_record(kit),
        "window": _window_record(placement, units=units),
        **gang_record(kit, units=units),
        **run_record(kit, units=units),
        "wall": _wall_record(placement, units=units),
        **_sizes_record(kit, units=units),
        "clear_opening": sawn_sizes(kit.clear_width, kit.clear_height, grid=grid),
        "planes": planes_record(placement, units=units),
        "depths": depths_record(kit, units=units),
        "buck": _buck_record(kit, units=units),
        **drywall_record(kit, units=units),
        **_feet_record(kit),
        "swing": _swing_record(placement, units=units),
        "escape": escape_record(placement.escape, units=units),
        "glass": _glass_record(placement, units=units),
        "reasons": [one.sentence(units) for one in placement.reasons],
        "alternatives": [_alternative_record(one, units=units) for one in placement.alternatives],
        "trim": trim_record(
            opening,
            units=units,
            corners=jamb_corner_words(kit),
            mitered=[where for where in (Where.INTERIOR, Where.EXTERIOR) if has_no_butt(kit, where)],
        ),
        "figures": [
            {"name": one.name, "size": sawn_size(one.value, grid=grid), "note": one.note} for one in kit.figures
        ],
        "parts": [
            part_record(replace(part, seat=seat), grid=grid)
            for part, seat in zip(kit.parts, hung(kit).seats, strict=True)
        ],
        "findings": finding_records((*placement.findings, *kit.findings), units=units),
        "assumed": assumed_records((*opening.assumed, *kit.assumed)),
        "cautions": [one.text for one in kit.cautions],
        "cautions_beside": _cautions_record(kit),
    }


def _feet_record(kit: CutKit) -> Record:
    """Return on what the legs of a door stand; nothing of a window."""
    if kit.placement.opening.floor_below_frame is None:
        return {}
    feet = sorted(feet_of(kit), key=lambda foot: kit.parts.index(foot.part))
    grounds = dict.fromkeys(foot.ground for foot in feet)
    return {
        "feet": [
            {"on": ground.value, "parts": [foot.part.mark for foot in feet if foot.ground is ground]}
            for ground in grounds
        ]
    }


def state_record(kit: CutKit) -> Record:
    """Return whether an opening is planned or measured, inside and outside, when and by whom; and the banner's words.

    Depths measured from the room alone leave the exterior parts planned, and the other way round.
    """
    measured = kit.placement.opening.measured
    inside, outside = kit.is_measured, kit.outside_is_measured
    is_any = measured is not None and (inside or outside)
    return {
        "is_measured": inside,
        "exterior_is_measured": outside,
        "date": measured.date.isoformat() if measured and is_any else None,
        "by": measured.by if measured and is_any else None,
        "banner": [_banner(text) for text in _banner_texts(kit, measured if is_any else None)],
    }


def _banner_texts(kit: CutKit, measured: Measured | None) -> list[str]:
    """Say what is measured and what is planned; a set of depths is measured where all its corners were read."""
    if measured is None:
        return [PLANNED]
    day = measured.date.isoformat()
    if not kit.is_measured:
        return [f"INSIDE {PLANNED}", f"OUTSIDE MEASURED {day}"]
    if not kit.outside_is_measured and any(part.where is Where.EXTERIOR for part in kit.parts):
        return [f"INSIDE MEASURED {day}", f"OUTSIDE {PLANNED}"]
    return [f"MEASURED {day}" + (f" by {measured.by}" if measured.by else "")]


def _banner(text: str) -> Record:
    return {"text": text, "is_planned": PLANNED in text}


def _window_record(placement: Placement, *, units: Units) -> Record:
    opening, window = placement.opening, placement.opening.window
    return {
        "name": opening.window_name,
        "frame": stated_size(opening.frame.width, opening.frame.height, units=units),
        "jamb_depth": _as_ordered(window.jamb_depth, window.stated_jamb_depth, units=units),
        "frame_projection": _as_ordered(window.frame_projection, window.stated_projection, units=units),
        "frame_depth": stated(window.whole_depth, units=units),
        "frame_face": frame_face_record(window, units=units),
        "nailing_flange": window.nailing_flange,
        "sash": window.sash.value,
        "hinge": opening.hinge,
        "escape": opening.escape,
        "safety_glass": opening.safety_glass,
        **outline_record(placement, frame_path(opening), units=units),
        "weight": weight(placement.weight, units=units),
        "weight_is_assumed": placement.weight_is_assumed,
    }


def _as_ordered(computed: float, told: float, *, units: Units) -> Record:
    """Return a depth of the unit [in]: the number that the wall is summed with, the text as its maker states it."""
    return {**stated(told, units=units), "value": number(computed, units=units)}


def _wall_record(placement: Placement, *, units: Units) -> Record:
    layers = [
        {
            "name": one.layer.name,
            "role": one.layer.role.value,
            "inner": size(one.inner, units=units),
            "outer": size(one.outer, units=units),
        }
        for one in placement.planes.layers
    ]
    return {"name": placement.opening.wall.name, "layers": layers}


def _sizes_record(kit: CutKit, *, units: Units) -> Record:
    placement = kit.placement
    opening, framing = placement.opening, placement.framing_opening
    rough, buck = rough_size(placement), placement.buck
    framed_to = placement.framed_to
    lined = buck.thickness if buck and buck.kind is BuckKind.LINER else 0.0
    return {
        "rough_opening": stated_size(*rough, units=units),
        "framing_opening": sized(framing.width, framing.height, units=units),
        **_flared_record(kit, units=units),
        **outline_record(placement, rough_path(placement), units=units, key="rough_outline", framed_to=framed_to),
        **outline_record(
            placement, rough_path(placement, lined), units=units, key="framing_outline", framed_to=framed_to
        ),
        "shims": dump(placement.shims, units=units),
        "sill_height": size(opening.sill_height, units=units),
        "rough_sill_height": size(rough_sill_height(placement), units=units),
        "framing_sill_height": size(placement.framing_sill, units=units),
        "framing_head_height": size(framing_head_height(placement), units=units),
        "floor_below_frame": size(opening.floor_below_frame, units=units),
        "from_left": size(opening.from_left, units=units),
        "faces_deg": opening.faces_deg,
    }


def _flared_record(kit: CutKit, *, units: Units) -> Record:
    """Return what the rough opening is at the inside face of the framing, where flared jambs need more there."""
    found = next((one for one in kit.findings if isinstance(one, RoughOpeningFlares)), None)
    if found is None:
        return {}
    return {
        "flared_rough_opening": {
            **sized(found.room_width, found.room_height, units=units),
            "out": {side.value: size(found.out[side], units=units) for side in Side},
            "sill_height": size(found.room_sill, units=units),
            "head_height": size(found.room_head, units=units),
            "where": found.where(units),
        },
        **outline_record(
            kit.placement,
            outset(rough_path(kit.placement), found.out),
            units=units,
            key="flared_outline",
            framed_to=kit.placement.framed_to,
        ),
    }


def rough_sill_height(placement: Placement) -> float | None:
    """Height of the window's rough sill, inside the buck where there is one.

    From the finished floor up to the bottom of the window's rough opening [in]; None where no sill height is given.
    """
    height = placement.opening.sill_height
    return None if height is None else height - placement.shims.sill


def framing_head_height(placement: Placement) -> float | None:
    """Height of the head in the framing: from the finished floor up to the top of the hole in the framing [in].

    None for a window where no sill height is given. A door's hole is as high as its head stands over the floor.
    """
    if placement.opening.floor_below_frame is not None:
        return placement.framing_opening.height
    sill = placement.framing_sill
    return None if sill is None else sill + placement.framing_opening.height


def _buck_record(kit: CutKit, *, units: Units) -> Record | None:
    buck = kit.placement.buck
    if buck is None:
        return None
    return {
        "kind": buck.kind.value,
        "depth": size(buck.outer - buck.inner, units=units),
        "thickness": size(buck.thickness, units=units),
        "set_back": size(buck.set_back, units=units),
        "stock": buck.stock,
        "parts": [part.mark for part in kit.parts if part.where is Where.BUCK],
    }


def _swing_record(placement: Placement, *, units: Units) -> Record | None:
    swing = placement.swing
    if swing is None:
        return None
    clear = sized(swing.clear.width, swing.clear.height, units=units)
    return {**dump(swing, units=units), "clear": clear}


def _cautions_record(kit: CutKit) -> Record:
    """Return the lines of caution by the work that they stand beside."""
    return {beside.value: [one.text for one in kit.cautions if one.beside is beside] for beside in Beside}


def _glass_record(placement: Placement, *, units: Units) -> list[Record]:
    """Return what must be seen to, or asked, before the glass is ordered."""
    found = [one for one in placement.findings if isinstance(one, GlassFinding)]
    return finding_records((*found, *placement.asked), units=units)


def finding_records(findings: Iterable[Finding], *, units: Units) -> list[Record]:
    """Return findings in words, each once, the weightiest first."""
    told = dict.fromkeys((one.severity, one.sentence(units)) for one in findings)
    each = sorted(told, key=lambda one: ORDER.index(one[0]))
    return [{"weight": severity.value, "text": text} for severity, text in each]


def _alternative_record(one: Alternative, *, units: Units) -> Record:
    return {
        "name": one.name.words(units),
        "flange_plane": size(one.flange_plane, units=units),
        "interior_depth": size(one.interior_depth, units=units),
        "exterior_depth": size(one.exterior_depth, units=units),
        "against": [limit.sentence(units) for limit in one.against],
    }


def assumed_records(assumed: Iterable[Assumed]) -> list[Record]:
    """Return assumed values, each once."""
    return [_assumed_record(one) for one in dict.fromkeys(assumed)]


def _assumed_record(one: Assumed) -> Record:
    """Return an assumed value; what the job gives and is rounded up says so."""
    said = {"what": one.what, "value": one.value, "why": one.why}
    return {**said, "is_rounded": True} if one.is_rounded else said
