"""Labels: one a part and one for each strip it is glued up of, on label stock, letter or A4, given by its measures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from jambs.findings import FindingsError
from jambs.job.models.openings import Job
from jambs.length import MM_PER_INCH, ROUND_OFF, Grid, Units, length_text
from jambs.parts.board.kinds import Crew, told_name, told_position
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.planned import marks_of_planned
from jambs.parts.readings.as_built import PLANNED
from jambs.parts.words.cut_words import board_words
from jambs.sheets.label_codes import NOT_ISSUED, code_text, label_code
from jambs.sheets.label_findings import LabelsOverEachOther, LabelsPastPaper, LabelTooSmall, NoSuchLabel
from jambs.sheets.press import press
from jambs.sheets.record import opening_record
from jambs.stock.house.house_pieces import STRIP_LETTERS
from jambs.values import Record

PAPER = {"letter": (8.5, 11.0), "A4": (210 / MM_PER_INCH, 297 / MM_PER_INCH)}
"""Width × height [in]."""


class LabelError(FindingsError):
    """Label stock that does not fit its paper; the finding says by how much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelStock:
    """A sheet of labels [in]: how many across and down, label width × height, its upper left label, the pitch.

    ``left``, ``top``: edge of the paper → first label. ``pitch_across``, ``pitch_down``: from one label to the next,
    its own size and the gap.
    """

    paper: str
    across: int
    down: int
    width: float
    height: float
    left: float
    top: float
    pitch_across: float
    pitch_down: float

    @property
    def count(self) -> int:
        """Labels on one sheet."""
        return self.across * self.down


STOCK = {
    "letter": LabelStock(
        paper="letter",
        across=3,
        down=10,
        width=2.625,
        height=1.0,
        left=3 / 16,
        top=0.5,
        pitch_across=2.75,
        pitch_down=1.0,
    ),
    "A4": LabelStock(
        paper="A4",
        across=3,
        down=8,
        width=70 / MM_PER_INCH,
        height=36 / MM_PER_INCH,
        left=0.0,
        top=4.5 / MM_PER_INCH,
        pitch_across=70 / MM_PER_INCH,
        pitch_down=36 / MM_PER_INCH,
    ),
}
"""Where nothing is given: sizes that are often sold; common practice, no source."""


NO_ISSUES: Mapping[str, str] = MappingProxyType({})
"""Labels that say nothing of an issue."""
PAST_PAPER = 1 / 64
"""Sizes of label stock are given in rounded figures: so far past the paper a label is not [in]."""
LEAST_LABEL = 0.25
"""Nothing is read on a label that is lower or narrower [in]."""


def checked_stock(stock: LabelStock) -> LabelStock:
    """Return label stock that fits its paper.

    Raises:
        LabelError: its labels reach past the paper, or over each other.
    """
    wide, high = PAPER[stock.paper]
    if min(stock.width, stock.height) < LEAST_LABEL:
        raise LabelError(LabelTooSmall())
    right = stock.left + (stock.across - 1) * stock.pitch_across + stock.width
    bottom = stock.top + (stock.down - 1) * stock.pitch_down + stock.height
    for end, room, way in ((right, wide, "width"), (bottom, high, "height")):
        if end > room + PAST_PAPER:
            raise LabelError(LabelsPastPaper(past=end - room, way=way, paper=stock.paper))
    if stock.width > stock.pitch_across + ROUND_OFF or stock.height > stock.pitch_down + ROUND_OFF:
        raise LabelError(LabelsOverEachOther())
    return stock


def checked_first(first: int, stock: LabelStock) -> int:
    """Return the label to start at, counted from 1.

    Raises:
        LabelError: a sheet has no such label.
    """
    if not 1 <= first <= stock.count:
        raise LabelError(NoSuchLabel(first=first, count=stock.count))
    return first


def cutting_order(kits: Sequence[CutKit], *, units: Units) -> list[str]:
    """Return part marks as they are sawn: board by board, the widest rips first, of those the longest."""

    def order(part: Part) -> tuple[str, float, float, str]:
        return (board_words(part, units=units), -part.width, -part.length, part.mark)

    return [part.mark for part in sorted(_labeled(kits), key=order)]


def label_count(kits: Sequence[CutKit]) -> int:
    """Return how many labels are printed: one for each part that the carpenter makes, and for each strip of it."""
    return sum(1 + len(part.strips) for part in _labeled(kits))


def _labeled(kits: Sequence[CutKit]) -> list[Part]:
    """Return what labels go on: parts, and members of those that are frames; what other crews make has none."""
    parts = (part for kit in kits for part in kit.parts if part.crew is Crew.CARPENTER)
    return [one for part in parts for one in (part, *part.frame_members)]


def labels_pdf(
    kits: Sequence[CutKit],
    job: Job,
    stock: LabelStock,
    *,
    order: Sequence[str] = (),
    first: int = 1,
    issues: Mapping[str, str] = NO_ISSUES,
) -> bytes:
    """Return labels as PDF bytes: by opening, or in the order of some part marks; ``first``: label to start at.

    ``issues``: what the labels of an opening say of their issue, by its mark.

    Raises:
        LabelError: the stock does not fit its paper, or has no such first label.
    """
    stock = checked_stock(stock)
    checked_first(first, stock)
    return press("labels", labels_data(kits, job, stock, order=order, first=first, issues=issues))


def labels_data(
    kits: Sequence[CutKit],
    job: Job,
    stock: LabelStock,
    *,
    order: Sequence[str] = (),
    first: int = 1,
    issues: Mapping[str, str] = NO_ISSUES,
) -> Record:
    """Return what the labels print, sheet by sheet."""
    planned = marks_of_planned(kits)
    parts = {part.mark: part for part in _labeled(kits)}
    labels = [
        {**label, **_code_data(part, job.name, issues.get(opening["mark"], "")), "of": part["mark"]}
        for opening in (opening_record(kit, grid=job.shop.grid) for kit in kits)
        for jamb in opening["parts"]
        if "crew" not in jamb
        for part in (jamb, *jamb.get("members", ()))
        for whole in [label_data(part, room=opening["room"], is_planned=jamb["mark"] in planned)]
        for label in (whole, *_strip_labels(whole, parts[part["mark"]], job.shop.grid))
    ]
    if order:
        place = {mark: at for at, mark in enumerate(order)}
        labels.sort(key=lambda one: place.get(one["of"], len(place)))
    cells: list[Record | None] = [None] * (first - 1) + [*labels]
    sheets = [cells[at : at + stock.count] for at in range(0, len(cells), stock.count)]
    measures = {
        name: getattr(stock, name)
        for name in ("across", "width", "height", "left", "top", "pitch_across", "pitch_down")
    }
    return {
        "paper": stock.paper,
        "job": job.name,
        "stock": measures,
        "sheets": sheets,
        "proud": length_text(job.shop.proud, units=job.units),
    }


def _strip_labels(whole: Record, part: Part, grid: Grid) -> list[Record]:
    """Return a label for each strip that a part is glued up of: it comes off the saw under a mark of its own."""
    count, what = len(part.strips), "for plies" if part.is_laminated else "to glue up"
    return [
        {
            **whole,
            "mark": part.mark + letter,
            "name": f"strip {number} of {count} {what}: {whole['name']}",
            "size": " × ".join(grid.text(one) for one in (part.blank.thickness, width, part.blank.strip_length)),
        }
        for number, (letter, width) in enumerate(zip(STRIP_LETTERS, part.strips, strict=False), start=1)
    ]


def _code_data(part: Record, job: str, issue: str) -> Record:
    """Return what a label says of its issue, and its code; ``job``: the name of the job."""
    code = label_code(code_text(part["mark"], issue or NOT_ISSUED, job))
    return {"issue": issue, "code": {"svg": code.svg, "modules": code.modules}}


def label_data(part: Record, *, room: str, is_planned: bool) -> Record:
    """Return what the label of a part prints, but for its issue and its code; ``is_planned``: its width may change.

    Of a tapered part the width is that of its wider end: it says so, for a rule laid on the other reads less.
    """
    name, position = told_name(part["name"], part["where"]), told_position(part["name"], part["position"])
    return {
        "mark": part["mark"],
        "room": room,
        "name": ", ".join(one for one in (name, position, "tapered" if part["taper"] else "") if one),
        "size": " × ".join(part[one]["text"] for one in ("thickness", "width", "length")),
        "board": part["board"],
        "is_planned": is_planned,
        "planned": PLANNED,
    }
