"""Papers of a cutting plan: buying list and cutting plan (PDF), lists (CSV), everything (JSON); all from one record."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from pathlib import Path

from jambs.csv_text import csv_text
from jambs.job.models.openings import Job
from jambs.length import MM_PER_INCH, Units
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.press import press
from jambs.values import Record

PLAN, BUYING = "cutting plan.pdf", "buying list.pdf"
DATA, PIECES, TO_BUY, DROPS = "plan.json", "cut list.csv", "buying list.csv", "drops.csv"
CHECK = 'python -m jambs.stock.check_file "plan.json"'
"""Proves the certified bounds of a plan file with whole numbers alone."""

BOARD_ROOM = {"letter": (666.0, 205.0), "A4": (716.0, 205.0)}
"""What the drawing of one board may take, along and across, beside its mark [pt]."""
LEAST_STRIP_HEIGHT = 10.0
"""A strip is drawn at least so high, for its mark to stand in it [pt]."""
BETWEEN_TWO = 67.0
"""What two boards in a row leave between them: a gap and the mark of the second [pt]."""
LEAST_PIECE = 100.0
"""Two boards stand in a row where their shortest piece is drawn so long, for its mark and sizes in a line [pt]."""
LITTLE_SMALLER, SMALLER = 1.25, 1.5
"""So much smaller a lot is drawn at most for its shorter boards to stand two in a row; the latter where its shortest
piece still is ``LEAST_SMALL`` long."""
LEAST_SMALL = 85.0
"""Length of a piece that takes its mark and sizes in small letters [pt]."""
PAIRED = 1 / 3
"""Part of its boards that have to be so short."""
RATIOS = (2, 2.5, 3, 4, 5, 6, 7, 8, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 36, 40, 50)
"""Scales boards are drawn at: 1 : 20."""
POINTS_PER_UNIT = {Units.INCH: 72.0, Units.MM: 72.0 / MM_PER_INCH}


def write_cutting_papers(record: Record, job: Job, folder: Path, *, stamp: str = "") -> None:
    """Write all papers of a cutting plan into a folder.

    Raises:
        PressError: a page cannot be printed.
    """
    page = stamped(page_data(job), stamp)
    data = {
        **record,
        **page,
        "lots": [_drawn(lot, job.shop.paper, job.units) for lot in record["lots"]],
        "check": CHECK,
    }
    (folder / PLAN).write_bytes(press("cutting_plan", data))
    (folder / BUYING).write_bytes(press("buying_list", data))
    (folder / DATA).write_text(json.dumps(record, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    for name, text in ((PIECES, cut_list_csv(record)), (TO_BUY, buying_csv(record)), (DROPS, drops_csv(record))):
        (folder / name).write_text(text, encoding="utf-8-sig", newline="")


# ---- how the boards of a lot are drawn


def _drawn(lot: Record, paper: str, units: Units) -> Record:
    """Return a lot with the scales its boards are drawn at: points for one unit of the job, and their words."""
    along, across = scales(lot, paper, units)
    points = POINTS_PER_UNIT[units]
    words = f"drawn 1 : {along:g}" if along == across else f"drawn 1 : {along:g} along, 1 : {across:g} across"
    room, _ = BOARD_ROOM[paper]
    return {**lot, "along": points / along, "across": points / across, "scale": words, "room": room}


def scales(lot: Record, paper: str, units: Units) -> tuple[float, float]:
    """Return the ratios along and across: the longest board fits its room, the narrowest strip takes its mark."""
    points = POINTS_PER_UNIT[units]
    wide, high = BOARD_ROOM[paper]
    longest = max(board["length"]["value"] for board in lot["boards"])
    widest = max(board["width"]["value"] for board in lot["boards"])
    narrowest = min(strip["width"]["value"] for board in lot["boards"] for strip in board["strips"])
    shortest = min(
        one["length"]["value"] for board in lot["boards"] for row in board["strips"] for one in row["pieces"]
    )
    along, halved = (
        next(one for one in RATIOS if longest * points / one <= room) for room in (wide, (wide - BETWEEN_TWO) / 2)
    )
    if len(lot["boards"]) > 1 and shortest * points / halved >= LEAST_PIECE:
        along = halved
    lengths = [board["length"]["value"] * points for board in lot["boards"]]
    along = _pairing(along, lengths, shortest * points, (wide - BETWEEN_TWO) / 2)
    fits = [one for one in RATIOS if widest * points / one <= high]
    along = max(along, fits[0])  # a sheet too high for the page is drawn smaller, both ways alike
    readable = [one for one in fits if one <= along and narrowest * points / one >= LEAST_STRIP_HEIGHT]
    return along, (max(readable) if readable else fits[0])


def _pairing(along: float, lengths: Sequence[float], shortest: float, half: float) -> float:
    """Return the scale, a little smaller at most, at which most boards fit half a row; the largest of such."""

    def paired(ratio: float) -> int:
        count = sum(length / ratio <= half for length in lengths)
        return count if count >= max(2, PAIRED * len(lengths)) else 0

    def is_legible(ratio: float) -> bool:
        return ratio <= LITTLE_SMALLER * along or (ratio <= SMALLER * along and shortest / ratio >= LEAST_SMALL)

    return max((one for one in RATIOS if one >= along and is_legible(one)), key=lambda one: (paired(one), -one))


# ---- tables


def _table(head: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    return csv_text([head, *rows])


def _unit(record: Record) -> str:
    return "in" if record["units"] == Units.INCH else "mm"


SIZES = ("start", "end", "width", "length")


def cut_list_csv(record: Record) -> str:
    """Return every piece with its board, strip and place, as exact numbers and as shop text."""
    columns = [column for name in SIZES for column in (f"{name} [{_unit(record)}]", f"{name} text")]
    rows = (
        [lot["title"], piece["mark"], piece["part"], piece["board"], piece["strip"]]
        + [piece[name][key] for name in SIZES for key in ("value", "text")]
        + [record["planned_words"] if piece["is_planned"] else ""]
        for lot in record["lots"]
        for piece in lot["pieces"]
    )
    return _table(["lot", "mark", "part", "board", "strip", *columns, "depth"], rows)


def buying_csv(record: Record) -> str:
    """Return what to buy, spares counted in; amounts in the job's currency."""
    rows = (
        (
            line["board"],
            *(line[name]["text"] for name in ("thickness", "width", "length")),
            *(line[name] for name in ("count", "spares", "buy")),
            *(line[name]["cents"] / 100 for name in ("price", "cost")),
        )
        for line in record["buying"]["lines"]
    )
    head = ["board", "thickness", "width", "length", "for the plan", "spares", "buy", "price", "cost"]
    return _table(head, rows)


def drops_csv(record: Record) -> str:
    """Return the rests worth keeping and the boards not needed as they are on hand after the job.

    The next job takes them up with ``on_hand: [drops.csv]``.
    Sizes carry their unit, so that a job in the other unit reads them too.
    """
    rows = [
        (*_sizes(drop), drop["count"], drop["edges"], drop["marks_text"])
        for drop in (*record["drops"], *map(_on_rack, record["left_over"]))
    ]
    return _table(["stock", "thickness", "width", "length", "count", "edges", "from"], rows)


def _sizes(board: Record) -> tuple[str, ...]:
    return (board["stock"], *(board[name]["text"] for name in ("thickness", "width", "length")))


def _on_rack(board: Record) -> Record:
    return {**board, "edges": "straight" if board["is_straight"] else "rough", "marks_text": "rack"}
