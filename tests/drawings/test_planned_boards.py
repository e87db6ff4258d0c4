"""A drawing names the board of the cutting plan once there is one, and says all else as it did."""

from __future__ import annotations

from dataclasses import replace

from samples import ISSUE, drawn, made

from jambs.drawings import Drawing, draw_opening
from jambs.job.models.shop import Board


def said(drawing: Drawing) -> list[str]:
    return [line for view in drawing.views for text in view.texts for line in text.lines]


def test_a_drawing_names_the_board_of_the_plan_and_nothing_else_reads_otherwise() -> None:
    kit, sections, job = made("picture framed")
    wide = next(part for part in kit.parts if part.blank.board is not None)
    board = wide.blank.board
    assert isinstance(board, Board)
    planned = board.model_copy(update={"nominal": "1x12"})
    parts = tuple(
        replace(part, blank=replace(part.blank, board=planned)) if part is wide else part for part in kit.parts
    )
    after = draw_opening(replace(kit, parts=parts), sections, job, issue=ISSUE)
    pairs = zip(said(drawn("picture framed")), said(after), strict=True)
    other = [(was, now) for was, now in pairs if was != now]
    assert other == [(f"{board.nominal} {board.stock}", f"1x12 {board.stock}")]
