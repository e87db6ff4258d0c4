"""The rows of a parts table are as high as what they hold, and the height that chooses their look is the table's."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path

import hand_kits as hand
import pytest
import typst
from flat_segments import flat

from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets import cut_sheet
from jambs.sheets.press import fonts
from jambs.values import Record

MEASURED_BOTH_WAYS = """
#import "common.typ": *
#import "cut_sheet.typ": beside-rows, least-rows, parts-of
#import "parts_table.typ": cell-inset, fit-of, high, looks, part-row, picture-room, shares-of, sizes-line
#set page(width: 540pt, margin: 0pt)
#show: look
#let are-alike(one, other) = assert(calc.abs(one - other) < 0.001pt, message: repr((one, other)))

// As high as the highest cell of a row, and as what is placed in the last of them.
#let row-high(part, sizes, widths, it) = {
  let cells = part-row(part, (), sizes, it).zip(widths).map(((body, width)) => high(width, body))
  calc.max(..cells, high(widths.last(), sizes-line(part, sizes, it)), picture-room(part, it).high) + 2 * it.inset
}

#for sheet in data.sheets { layout(room => context {
  let (shares, beside) = (shares-of(sheet.groups), beside-rows(sheet, room.width))
  for it in looks {
    let fit = fit-of(sheet.groups, shares, room.width, it)
    let whole = beside(it) + fit.heights.flatten().sum()
    are-alike(whole, high(room.width, parts-of(sheet, fit)))
    assert(beside(it) + least-rows(sheet.groups, it) <= whole)
    let given = fit.columns.slice(0, 3)
    let widths = (..given, room.width - given.sum()).map(one => one - 2 * cell-inset)
    for (at, group) in sheet.groups.enumerate() {
      for (part, height) in group.parts.zip(fit.heights.at(at)) {
        are-alike(height, row-high(part, fit.sizes.at(at), widths, it))
      }
    }
  }
}) }
"""


def _printed(kit: CutKit, monkeypatch: pytest.MonkeyPatch) -> Record:
    """Return what the press is given for a kit."""
    given: list[Record] = []

    def press(template: str, data: Record) -> bytes:
        given.append(data)
        return b""

    monkeypatch.setattr(cut_sheet, "press", press)
    cut_sheet.cut_sheets_pdf([kit], hand.make_job(), {kit.mark: hand.make_pictures()})
    return given[0]


def _ring() -> CutKit:
    """Return a full round with flared flat segments by hand: all its segments share one row, its casings another."""
    return hand.make_kit(parts=list(flat("full round").kit.parts))


@pytest.mark.parametrize("kit", [hand.make_kit(), hand.measured_kit(), _ring()], ids=["planned", "tapered", "shared"])
def test_parts_are_as_high_as_their_table_in_every_look(kit: CutKit, monkeypatch: pytest.MonkeyPatch) -> None:
    typst.Compiler(
        input=MEASURED_BOTH_WAYS.encode(),
        root=Path(str(files("jambs.sheets"))) / "templates",
        font_paths=fonts(),
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(_printed(kit, monkeypatch))},
    ).compile(format="pdf")


def test_pieces_of_a_ring_share_rows_with_a_box_for_each(monkeypatch: pytest.MonkeyPatch) -> None:
    """Equal turns of a circle, so jambs are one row and casings another; no mark is lost."""
    kit = _ring()
    (group,) = _printed(kit, monkeypatch)["sheets"][0]["groups"]
    assert [part["name"] for part in group["parts"]] == ["extension jamb", "casing"]
    assert [mark for part in group["parts"] for mark in part["marks"]] == [part.mark for part in kit.parts]
    assert "bottom<" not in "".join(part["shape"]["svg"] for part in group["parts"])


def test_parts_of_a_rectangle_have_rows_of_their_own(monkeypatch: pytest.MonkeyPatch) -> None:
    """Left and right legs are cut to the same words, and stay apart."""
    groups = _printed(hand.make_kit(), monkeypatch)["sheets"][0]["groups"]
    assert all(len(part["marks"]) == 1 for group in groups for part in group["parts"])
