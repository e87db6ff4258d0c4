"""The rows of a parts table are as high as what they hold, and the height that chooses their look is the table's."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path

import hand_kits as hand
import pytest
import typst

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


@pytest.mark.parametrize("kit", [hand.make_kit(), hand.measured_kit()], ids=["planned", "tapered"])
def test_parts_are_as_high_as_their_table_in_every_look(kit: CutKit, monkeypatch: pytest.MonkeyPatch) -> None:
    typst.Compiler(
        input=MEASURED_BOTH_WAYS.encode(),
        root=Path(str(files("jambs.sheets"))) / "templates",
        font_paths=fonts(),
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(_printed(kit, monkeypatch))},
    ).compile(format="pdf")
