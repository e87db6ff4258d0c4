"""The first sheet of all drawings: general notes, woods, kinds of lines, index with the issue of every opening."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from jambs.job.models.openings import Job
from jambs.length import length_text
from jambs.parts.board.kinds import Where
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.words.proud_words import proud_words
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.joining import AUTHOR
from jambs.sheets.press import press
from jambs.sheets.record import state_record
from jambs.sheets.stamp import Stamps
from jambs.values import Record

PLACES = {Where.INTERIOR: "Inside", Where.EXTERIOR: "Outside", Where.BUCK: "Bucks"}
GRADE = "Grade, grain and finish are not stated in the job: agree on them before boards are bought."
KeyOf = Sequence[tuple[str, str]]
"""The key of the drawings: each kind of line and each hatch as SVG of its true size, and what it stands for."""


def drawing_cover_pdf(
    kits: Sequence[CutKit], job: Job, sheets: Mapping[str, int], *, title: str, stamps: Stamps, key: KeyOf = ()
) -> bytes:
    """Return the first sheet of all drawings as PDF bytes; ``sheets``: how many each opening has.

    Raises:
        PressError: the sheet cannot be printed.
    """
    return press("drawing_cover", drawing_cover_data(kits, job, sheets, title=title, stamps=stamps, key=key))


def drawing_cover_data(
    kits: Sequence[CutKit], job: Job, sheets: Mapping[str, int], *, title: str, stamps: Stamps, key: KeyOf
) -> Record:
    """Return what the first sheet of all drawings prints."""
    return {
        **stamped(page_data(job), stamps.boards_foot),
        "title": title,
        "author": AUTHOR,
        "address": [*job.address],
        "notes": _notes(job),
        "woods": _woods(kits, job),
        "grade": GRADE,
        "key": [{"svg": svg, "words": words} for svg, words in key],
        "rows": [_row(kit, sheets[kit.mark], stamps) for kit in kits],
    }


def _notes(job: Job) -> list[str]:
    shop = job.shop
    step, stand = shop.grid.text(shop.grid.step), proud_words(shop.proud, "the finished wall", job.units)
    bears = ", so that the casing bears" if shop.proud else ""
    taper = length_text(shop.taper_tolerance, units=job.units)
    return [
        f"Sizes are finished sizes, to {step}. Never measure from the drawing; print it at 100\u00a0%.",
        f"A board that tapers by no more than {taper} is ripped parallel; what is left is planed at the wall.",
        "Left and right are as seen from inside, on every sheet. Sections have the inside at the left; the section at "
        "the jamb is a plan seen from above.",
        "PLANNED depths are from the plan: measure before cutting. MEASURED ones name the day they were read.",
        f"Boards are straight and flat, boxes square and plumb. Interior jambs stand {stand}{bears}.",
        "A part has one mark on every paper: drawing, cut sheet, label, list.",
        "The air-control line runs around every opening without a break. It is drawn on the wall's membrane, else on "
        "its sheathing: who builds the wall decides which layer it is.",
        "In the sections fasteners are drawn at their lengths; joints of boards of insulation are an example.",
        "What carries a window, escape, safety glass, fire and weather barriers: the local code and licensed practice "
        "decide.",
    ]


def _woods(kits: Sequence[CutKit], job: Job) -> list[Record]:
    found = []
    for where, words in PLACES.items():
        stocks = {part.stock for kit in kits for part in kit.parts if part.where is where and part.is_wood}
        if stocks:
            found.append({"where": words, "stocks": ", ".join(_stock(one, job) for one in sorted(stocks))})
    return found


def _stock(stock: str, job: Job) -> str:
    """Name a stock, with its species where the job says which it is."""
    wood = job.outside.woods.get(stock)
    return f"{stock} ({wood.species}, {wood.sawn.value} sawn)" if wood else stock


def _row(kit: CutKit, sheets: int, stamps: Stamps) -> Record:
    stamp = stamps.by_mark.get(kit.mark)
    replaced = stamp.issue.replaced if stamp else ""
    return {
        "mark": kit.mark,
        "room": kit.placement.opening.room,
        "state": "; ".join(one["text"] for one in state_record(kit)["banner"]),
        "sheets": str(sheets),
        "number": str(stamp.number) if stamp else "not issued",
        "why": "; ".join(filter(None, (replaced, stamp.why if stamp else ""))),
        "day": stamp.day if stamp else "",
        "code": stamp.code if stamp else "",
    }
