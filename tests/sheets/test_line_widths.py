"""A line of the parts table is told no less wide than it is set, so that none is taken for one that takes two."""

from __future__ import annotations

import json

import pytest
import typst

from jambs.sheets.line_widths import with_widths
from jambs.sheets.press import fonts
from jambs.values import Record

ROW: Record = {
    "name": "exterior extension jamb",
    "position": "left leg",
    "board": '1x6 "clear" 19 mm',
    "ends": 'top: 45° miter; bottom: square, 35 1/2" × 3/8"',
    "work": ['Rabbet 902 mm × 19 mm along AVAST, 1 1/2" from the face', 'To WAVY Ty: cut (3/8" deep)'],
    "asides": ["glue up of 2 strips"],
}
SET = """
#set page(width: 900pt, height: auto, margin: 0pt)
#set text(font: "Liberation Sans", size: 10pt, hyphenate: false)
#let data = json(bytes(sys.inputs.data))
#let one-length = "(?:\\d+'-)?\\d+(?:[.]\\d+)?(?: \\d+/\\d+|/\\d+)?(?:\\"| mm)"
#let settings = regex("\\d+(?:\\.\\d+)?°|" + one-length + "(?: × " + one-length + ")*")
#context {
  for (words, wide) in data.plain { assert(measure(words).width <= wide * 10pt + 0.001pt, message: words) }
  for (words, wide) in data.work {
    let bold(one) = measure(text(size: 14pt, weight: "bold", one.text)).width
    let found = words.matches(settings).map(bold).sum(default: 0pt)
    let rest = words.split(settings).map(one => measure(one).width).sum(default: 0pt)
    assert(found + rest <= wide.plain * 10pt + wide.bold * 14pt + 0.001pt, message: words)
    assert(found + rest >= 0.8 * (wide.plain * 10pt + wide.bold * 14pt), message: words)
  }
}
"""


def test_lines_are_told_no_less_wide_than_they_are_set() -> None:
    wide = with_widths(ROW)["wide"]
    plain = [(ROW[key], wide[key]) for key in ("name", "position")] + [(ROW["asides"][0], wide["asides"][0])]
    work = list(zip((ROW["ends"], *ROW["work"]), wide["work"], strict=True))
    data = json.dumps({"plain": [*plain, (f"· {ROW['board']}", wide["board"])], "work": work})
    typst.Compiler(SET.encode(), font_paths=fonts(), ignore_system_fonts=True, sys_inputs={"data": data}).compile(
        format="pdf"
    )


def test_a_width_is_the_sum_of_the_letters() -> None:
    """Of 2048 units of the font: a and b 1139 each, in bold 1139 and 1251, figures 1139, space 569."""
    (line,) = with_widths({**ROW, "ends": "ab 11", "work": []})["wide"]["work"]
    assert line["plain"] == pytest.approx((2 * 1139 + 569) / 2048)
    assert line["bold"] == pytest.approx((2 * 1139 + 569) / 2048)
