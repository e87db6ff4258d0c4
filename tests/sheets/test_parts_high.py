"""The height by which the look of the parts is chosen is that of their table, which is not set only to be measured."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path

import hand_kits as hand
import pytest
import typst

from jambs.parts.cut_kit import CutKit
from jambs.sheets import cut_sheet
from jambs.sheets.press import fonts
from jambs.values import Record

MEASURED_BOTH_WAYS = """
#import "common.typ": *
#import "cut_sheet.typ": parts-high, parts-of
#set page(width: 540pt, margin: 0pt)
#show: look
#for sheet in data.sheets { layout(room => context {
  let (least, whole) = parts-high(sheet, room.width)
  for it in looks {
    let set-as-table = high(room.width, parts-of(sheet, it))
    assert(calc.abs(whole(it) - set-as-table) < 0.001pt, message: repr((whole(it), set-as-table, it)))
    assert(least(it) <= set-as-table)
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
