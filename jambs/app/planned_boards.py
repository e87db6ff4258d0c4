"""The boards of the cutting plan on record, for the parts that it holds for: sheet and label name the plan's board.

Until there is a plan, and for a part that changed since, they name the narrowest board at hand.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import PurePosixPath
from typing import Any

from jambs.app.basis import PRICES, parts_basis, shop_basis
from jambs.issued.basis import PARTS, SHOP, differing, read_basis
from jambs.issued.entry import WrittenPaper
from jambs.issued.record import Record
from jambs.job import Job
from jambs.job.models.shop import Board
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.planned import marks_of_planned
from jambs.sheets.cutting_papers import DATA
from jambs.sheets.record import job_record

BUY = "buy"
ROUND = "plan of round "
OTHER_SHAPE = (KeyError, TypeError, ValueError, AttributeError)
"""What comes of a plan that is not of today's shape."""


def with_planned_boards(kits: Sequence[CutKit], job: Job, record: Record) -> tuple[CutKit, ...]:
    """Return kits whose parts come out of the boards of the plan on record, where that holds for them."""
    plans = _plans(record)
    if not plans:
        return tuple(kits)
    now = parts_basis(job_record(kits, job)["openings"], marks_of_planned(kits), grid=job.shop.grid)
    boards: dict[str, Board] = {}
    for content, paper in plans:
        was = read_basis(record.blobs.found(paper.basis)) if paper.basis else None
        if was is None or not _are_boards_same(was.get(SHOP, {}), shop_basis(job)):
            continue
        changed = differing(was, {PARTS: now}, (PARTS,))
        boards |= {mark: board for mark, board in _boards(content) if mark not in changed}
    return tuple(replace(kit, parts=tuple(_out_of(boards.get(part.mark), part) for part in kit.parts)) for kit in kits)


def _are_boards_same(was: Mapping[str, str], now: Mapping[str, str]) -> bool:
    """Say whether the shop has the boards it had; those of the plan are the same boards at another price."""
    return {**was, PRICES: ""} == {**now, PRICES: ""}


def _out_of(board: Board | None, part: Part) -> Part:
    is_it = board and board.stock == part.stock and (part.is_wood or part.blank.courses)
    return replace(part, blank=replace(part.blank, board=board)) if is_it else part


def _plans(record: Record) -> list[tuple[bytes, WrittenPaper]]:
    """Return the plans on record, that of the first round first."""
    names = {PurePosixPath(path).name: paper for path, paper in record.papers_of(BUY).items()}
    rounds = sorted((name for name in names if name.startswith(ROUND)), key=lambda name: (len(name), name))
    papers = [names[name] for name in (*rounds, DATA) if name in names]
    contents = [(record.blobs.found(paper.sha256), paper) for paper in papers]
    return [(content, paper) for content, paper in contents if content is not None]


def _boards(content: bytes) -> Iterator[tuple[str, Board]]:
    """Yield part marks with the board of the plan; a part glued up of strips of several kinds is left out."""
    try:
        yield from _read_boards(json.loads(content))
    except OTHER_SHAPE:
        return


def _read_boards(plan: Mapping[str, Any]) -> Iterator[tuple[str, Board]]:
    found: dict[str, set[Board]] = {}
    for lot in plan["lots"]:
        kinds = {one["words"]: one for one in lot["lumber"]}
        boards = {board["mark"]: kinds[board["board"]] for board in lot["boards"]}
        for piece in lot["pieces"]:
            kind = boards[piece["board"]]
            board = Board(
                stock=lot["stock"],
                nominal=kind["words"].removesuffix(f" {lot['stock']}"),  # in the words of the plan
                thickness=lot["thickness"],
                width=kind["width"],
            )
            found.setdefault(piece["of"], set()).add(board)
    yield from ((mark, next(iter(boards))) for mark, boards in found.items() if len(boards) == 1)
