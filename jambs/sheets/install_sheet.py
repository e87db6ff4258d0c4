"""The install sheet: one opening from the bare frame to the last piece of trim, inside and outside."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path

from jambs.flashing.make import make_flashings
from jambs.job.models.openings import Job
from jambs.job.models.trim import InteriorStyle
from jambs.length import length_text
from jambs.parts.cut_kit import CutKit
from jambs.parts.kinds import PartKind, Where
from jambs.sheets.cut_sheet import page_data
from jambs.sheets.install_fasteners import (
    InstallFastener,
    assumed_fasteners,
    install_fasteners,
    shim_gaps,
    shim_places,
)
from jambs.sheets.press import press
from jambs.sheets.record import assumed_records, finding_records, state_record
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.wall_picture import wall_data
from jambs.values import Record

CORNER_WORDS = {
    "rabbet": "glue and screw the rabbeted corners",
    "miter": "glue and screw the mitered corners",
}
OUTSIDE_CAUTIONS = ("Height:", "Glass:", "Foam", "Structure:", "Old paint:")


def write_install_sheet(kit: CutKit, job: Job, path: Path, *, stamps: Stamps = NOT_ISSUED) -> None:
    """Write the install sheet of one opening as PDF."""
    path.write_bytes(install_sheets_pdf([kit], job, stamps=stamps))


def install_sheets_pdf(kits: Sequence[CutKit], job: Job, *, stamps: Stamps = NOT_ISSUED) -> bytes:
    """Return the install sheets of some openings as PDF bytes, each counting its own pages."""
    sheets = [{**install_data(kit, job), "stamp": stamps.foot(kit.mark)} for kit in kits]
    return press("install_sheet", {**page_data(job), "sheets": sheets})


def install_data(kit: CutKit, job: Job) -> Record:
    """Return what the install sheet of one opening prints."""
    opening = kit.placement.opening
    fasteners, findings = install_fasteners(kit, job)
    laps = make_flashings(kit, job.outside.flashing, job).laps
    outside = any(part.where is Where.EXTERIOR for part in kit.parts)
    return {
        "mark": kit.mark,
        "room": opening.room,
        "banner": state_record(kit)["banner"],
        "width": kit.clear_width,
        "height": kit.clear_height,
        "shims": _shim_data(kit, job),
        "inside": inside_steps(kit, job),
        "outside": [{"number": one.number, "what": one.what, "over": one.over} for one in laps] if outside else [],
        "has_sill": any(part.kind is PartKind.EXTERIOR_SILL for part in kit.parts),
        "fasteners": [_fastener_row(line, job) for line in fasteners],
        "reveals": _reveals(kit, job),
        "findings": finding_records(findings, units=job.units),
        "assumed": assumed_records(assumed_fasteners(fasteners, job)),
        "cautions": [one for one in kit.cautions if one.startswith(OUTSIDE_CAUTIONS)],
        "wall": wall_data(kit, job),
    }


def _shim_data(kit: CutKit, job: Job) -> Record:
    """Return where shims go: along the legs from below, along the head from the left."""
    grid, legs = job.shop.grid, shim_places(kit.clear_height, job.shop.grid)
    head = shim_places(kit.clear_width, grid)
    gaps = shim_gaps(kit, job)
    return {
        "legs": [{"share": at / kit.clear_height, "text": grid.text(at)} for at in legs],
        "head": [{"share": at / kit.clear_width, "text": grid.text(at)} for at in head],
        "left": grid.text(gaps.left),
        "right": grid.text(gaps.right),
        "above": grid.text(gaps.head),
    }


def _fastener_row(line: InstallFastener, job: Job) -> Record:
    needed = length_text(line.needed, units=job.units)
    return {
        "what": line.what,
        "where": line.where,
        "fastener": line.fastener,
        "length": length_text(line.length, units=job.units) if line.length else f"over {needed}: none listed",
        "needed": needed,
        "way": line.words(job),
        "note": line.note,
        "is_assumed": line.is_assumed,
    }


def inside_steps(kit: CutKit, job: Job) -> list[str]:
    """Return the order of work inside, a sentence each."""
    trim, text = kit.placement.opening.interior, job.shop.grid.text
    diagonal = text(math.hypot(kit.clear_width, kit.clear_height))
    steps = [
        "Lay out all parts and hold the marks against this sheet; check that the frame is plumb, level, square.",
        "Hold the tape once more at the four corners: each depth is a part's width less what it stands proud.",
    ]
    if any(part.kind is PartKind.EXTENSION_JAMB for part in kit.parts):
        corners = CORNER_WORDS.get(trim.jamb.joint.value, f"glue and screw the corners, {trim.jamb.joint.value}")
        box = f"Build the jamb box on the bench: {corners}; clear inside {text(kit.clear_width)} × "
        box += f"{text(kit.clear_height)}, both diagonals {diagonal}."
        if trim.style is not InteriorStyle.PICTURE_FRAMED:
            box += " Tack a strip across the open side."
        steps.append(box)
        if trim.stool:
            steps.append("Fit the stool first: horns to the wall, level, back edge tight to the frame; shim under it.")
        steps += [
            f"Set the box against the frame with the frame reveal of {text(trim.frame_reveal)} all round; wedge it.",
            "Shim in pairs at the marked places, jambs straight and square to the frame; no shim past the wall.",
            "Fasten through jamb and shims into the framing; check the reveals after every pair.",
            f"Check with a straightedge: jambs stand {text(job.shop.proud)} proud of the wall, nowhere shy.",
            *_scribe_step(kit),
            "Close the gap between jamb and rough opening airtight: backer and sealant, or low-expansion foam.",
        ]
    steps.append(f"Case: mark the casing reveal of {text(trim.casing_reveal)} at the corners; head first, then legs.")
    if trim.apron:
        steps.append("Apron last: tight under the stool, its ends under the casing's outer edges.")
    return steps


def _scribe_step(kit: CutKit) -> list[str]:
    marks = [part.mark for part in kit.parts if part.is_scribed]
    return [f"Scribe to the wall and plane down: {', '.join(marks)}."] if marks else []


def _reveals(kit: CutKit, job: Job) -> list[Record]:
    """Return what to hold a gauge to."""
    interior, exterior = kit.placement.opening.interior, kit.placement.opening.exterior
    text = job.shop.grid.text
    rows = [
        ("frame reveal inside", interior.frame_reveal),
        ("casing reveal inside", interior.casing_reveal),
        ("jambs proud of the wall", job.shop.proud),
    ]
    if exterior:
        rows += [
            ("frame reveal outside", exterior.frame_reveal),
            ("sealant joint at the frame", exterior.sealant_joint),
            ("casing reveal outside", exterior.casing_reveal),
            ("cladding over head flashing", exterior.head_flashing.gap_to_cladding),
        ]
    return [{"name": name, "value": text(value)} for name, value in rows]
