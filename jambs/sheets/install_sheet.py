"""The install sheet: one opening from the bare frame to the last piece of trim, inside and outside."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType

from jambs.fasten.fastener_words import way_words
from jambs.fasten.furring_words import verdict_words
from jambs.findings import SubjectKind
from jambs.flashing.lap_words import LapKind
from jambs.flashing.laps import Lap, window_laps
from jambs.job.models.openings import Job
from jambs.job.models.shop import Shop
from jambs.length import Grid, Units, length_text
from jambs.outside.fastener_line import InstallFastener
from jambs.outside.house import Installing
from jambs.outside.trim_fasteners import shim_gaps, shim_places
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.stack import steps_back
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.every_page import page_data
from jambs.sheets.fastener_words import assumed_fasteners
from jambs.sheets.install_steps import buck_steps, inside_steps, lap_parts
from jambs.sheets.kit_parts import frame_reveal_of, marks_text
from jambs.sheets.lap_sketch import shape_sketched
from jambs.sheets.pictures import PAPER_WIDTH, SheetPictures, following
from jambs.sheets.press import press
from jambs.sheets.record import assumed_records, state_record
from jambs.sheets.setting_steps import setting_steps
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.told import told
from jambs.sheets.wall_picture import wall_data
from jambs.values import Record

NO_PICTURES: Mapping[str, SheetPictures] = MappingProxyType({})
PROUD = "jambs proud of the wall"


def write_install_sheet(
    kit: CutKit,
    installing: Installing,
    job: Job,
    path: Path,
    *,
    pictures: SheetPictures | None = None,
    stamps: Stamps = NOT_ISSUED,
) -> None:
    """Write the install sheet of one opening as PDF."""
    shown = {kit.mark: pictures} if pictures else {}
    path.write_bytes(install_sheets_pdf([kit], {kit.mark: installing}, job, pictures=shown, stamps=stamps))


def install_sheets_pdf(
    kits: Sequence[CutKit],
    installing: Mapping[str, Installing],
    job: Job,
    *,
    pictures: Mapping[str, SheetPictures] = NO_PICTURES,
    stamps: Stamps = NOT_ISSUED,
) -> bytes:
    """Return the install sheets of some openings as PDF bytes, each counting its own pages.

    ``installing``, ``pictures``: by mark; of the latter the kit pulled apart stands at the end, where it takes no page.
    """
    width = PAPER_WIDTH[job.shop.paper]
    sheets = [
        {
            **install_data(kit, installing[kit.mark], job),
            "apart": _apart(pictures.get(kit.mark), width),
            "stamp": stamps.foot(kit.mark),
        }
        for kit in kits
    ]
    return press("install_sheet", {**page_data(job), "sheets": sheets})


def _apart(pictures: SheetPictures | None, width: float) -> list[list[Record]]:
    return following([(one,) for one in pictures.apart], width, is_last_shrunk=True) if pictures else []


def install_data(kit: CutKit, installing: Installing, job: Job) -> Record:
    """Return what the install sheet of one opening prints."""
    opening, fitting = kit.placement.opening, installing.fitting
    # Without trim outside there is no metal of ours, but the unit is sealed all the same.
    laps = fitting.flashings.laps or window_laps(kit)
    has_jambs = any(part.kind is PartKind.EXTENSION_JAMB for part in kit.parts)
    return {
        "mark": kit.mark,
        "room": opening.room,
        "banner": state_record(kit)["banner"],
        "width": kit.clear_width,
        "height": kit.clear_height,
        # Round a shape the steps name the places edge by edge: the sketch is of a rectangle.
        "shims": _shim_data(kit, job.shop.grid) if has_jambs and not kit.placement.opening.shape else None,
        "buck": buck_steps(kit, job.shop.grid),
        "setting": setting_steps(kit, job.shop.grid),
        "inside": inside_steps(kit, job.shop),
        "outside": [_lap_record(lap, kit, job.units) for lap in laps],
        "has_trim": opening.exterior is not None,
        "has_sill": any(part.kind is PartKind.EXTERIOR_SILL for part in kit.as_trimmed.parts),
        **shape_sketched(opening),
        "has_pan": any(lap.step.kind is LapKind.PAN for lap in laps),
        "fasteners": [_fastener_row(line, job.units) for line in fitting.fasteners],
        "reveals": _reveals(kit, job.shop),
        "findings": _findings(installing),
        "assumed": assumed_records(assumed_fasteners(fitting.fasteners, job.shop.grid)),
        "cautions": [one.text for one in kit.cautions if one.beside is Beside.INSTALL],
        "wall": wall_data(kit, job),
    }


def _findings(installing: Installing) -> list[Record]:
    """Return what is to be known, without the other openings that it holds for: those may come, go or be renamed."""
    found = told(one for one in installing.told if one.subject.kind is not SubjectKind.HOUSE)
    return [{"weight": one["weight"], "text": one["text"]} for one in found]


def _lap_record(lap: Lap, kit: CutKit, units: Units) -> Record:
    return {
        "number": lap.number,
        "kind": lap.step.kind.value,
        "what": lap.step.what,
        "over": lap.step.over(units),
        "parts": marks_text(lap_parts(lap, kit)),
    }


def _shim_data(kit: CutKit, grid: Grid) -> Record:
    """Return where shims go: along the legs from below, along the head from the left."""
    legs, head = shim_places(kit.clear_height, grid), shim_places(kit.clear_width, grid)
    gaps = shim_gaps(kit)
    return {
        "legs": [{"share": at / kit.clear_height, "text": grid.text(at)} for at in legs],
        "head": [{"share": at / kit.clear_width, "text": grid.text(at)} for at in head],
        "left": grid.text(gaps.left),
        "right": grid.text(gaps.right),
        "above": grid.text(gaps.head),
    }


def _fastener_row(line: InstallFastener, units: Units) -> Record:
    return {
        "what": line.what,
        "where": line.where,
        "fastener": line.fastener,
        "length": _length(line, units),
        "needed": length_text(line.needed, units=units),
        "way": line.way or way_words(line.through, line.reached, units, line.target),
        "note": line.note,
        "verdict": {"weight": line.verdict.severity.value, "text": verdict_words(line.verdict, units)}
        if line.verdict
        else None,
        "is_assumed": line.is_assumed,
    }


def _length(line: InstallFastener, units: Units) -> str:
    """Return the length that is sold; nothing where it is not for us to say."""
    if line.says:
        return ""
    needed = length_text(line.needed, units=units)
    return length_text(line.length, units=units) if line.length else f"over {needed}: none listed"


def _reveals(kit: CutKit, shop: Shop) -> list[Record]:
    """Return what to hold a gauge to: of parts that lie at the opening, its own and its neighbors'."""
    interior, exterior = kit.placement.opening.interior, kit.placement.opening.exterior
    has, text = {(part.kind, part.where) for part in kit.as_trimmed.parts}, shop.grid.text
    rows = [
        ("frame reveal inside", frame_reveal_of(kit)),
        *[("reveal between jamb frames", step) for step in steps_back(kit.frames)[:1]],
        *([("casing reveal inside", interior.casing_reveal)] if (PartKind.CASING, Where.INTERIOR) in has else []),
        *([(PROUD, shop.proud)] if (PartKind.EXTENSION_JAMB, Where.INTERIOR) in has else []),
    ]
    if exterior:
        rows += [
            ("frame reveal outside", exterior.frame_reveal),
            ("sealant joint at the frame", exterior.sealant_joint),
        ]
        if (PartKind.CASING, Where.EXTERIOR) in has:
            rows.append(("casing reveal outside", exterior.casing_reveal))
        if (PartKind.HEAD_FLASHING, Where.EXTERIOR) in has:  # along a slope it is left to the site
            rows.append(("cladding over head flashing", exterior.head_flashing.gap_to_cladding))
    return [{"name": name, "value": _gauged(name, value, text)} for name, value in rows]


def _gauged(name: str, value: float, text: Callable[[float], str]) -> str:
    return text(value) if value or name != PROUD else "flush"
