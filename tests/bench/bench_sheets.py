"""How long the papers take, beside two floors of the same run: their pictures on bare pages, and all that is on them.

Run by hand: ``python tests/bench/bench_sheets.py``. Each figure is the first run of its kind: typst remembers what it
has set, so a second run of the same sheet would measure the memory.

Wanted: at most ten times the pictures, which is out of reach while parts stand in a table that typst sets: with the
heights of all rows given for nothing, and no look sought, it would still be twelve times, nine the press and three the
records. Pictures alone leave out what a sheet is for, its texts and its table; so the second floor (``plain.typ``) sets
the same data, every text, row and picture, with none of our functions: no look sought, no lengths kept whole, no boxes.
It is what typst itself takes for a sheet of this content. Of 23 sheets of two examples, the least of four runs each,
the press takes 93 ms a sheet: 25 as much as the second floor, 20 to find the look that fits, 7 to keep lengths whole,
the rest for rows whose sizes line up, whose settings are large and which stand beside their pictures.
"""

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from unittest.mock import patch

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "sheets"), str(TESTS), str(TESTS.parent)]

import hand_kits as hand  # noqa: E402
import typst  # noqa: E402

from jambs.letter_widths import width_in_capitals  # noqa: E402
from jambs.sheets.cut_sheet import cut_sheets_pdf  # noqa: E402
from jambs.sheets.pictures import Picture, SheetPictures  # noqa: E402
from jambs.sheets.press import fonts  # noqa: E402
from jambs.values import Record  # noqa: E402

PLAIN = Path(__file__).with_name("plain.typ").read_bytes()
"""All that stands on a cut sheet, set plainly."""
BARE = """
#set page(paper: "us-letter")
#for svg in json(bytes(sys.inputs.data)) { image(bytes(svg), format: "svg"); pagebreak() }
"""


OTHERS = 400
"""From the number of a sheet to that of another one that is like it."""


def taken(run: Callable[[], object]) -> float:
    """Return the processor time of a run [s]: the machine may be shared."""
    start = time.process_time()
    run()
    return time.process_time() - start


def drawing(number: int, lines: int = 900) -> str:
    """Return a drawing of as many strokes as a section of the harbour house, each drawing another one."""
    strokes = "".join(f"M{at % 30 / 10} {at / 300}l0.{number + 10} 0.{at % 89 + 10}" for at in range(lines))
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="3in" height="3in" viewBox="0 0 3 3">'
        f'<path d="{strokes}" fill="none" stroke="black" stroke-width="0.01"/></svg>'
    )


def sheets_of(count: int, first: int) -> tuple[list[str], Callable[[], bytes]]:
    """Return the drawings of some cut sheets, and how the sheets are made."""
    marks = [f"W{first + number:03}" for number in range(count)]
    drawn = {mark: (drawing(first + at), drawing(first + at + 1000)) for at, mark in enumerate(marks)}
    pictures = {
        mark: SheetPictures(
            elevation=Picture(title="Interior elevation", svg=one, scale=""),
            section=Picture(title="Section at jamb", svg=two, scale=""),
        )
        for mark, (one, two) in drawn.items()
    }
    kits = [hand.make_kit(mark) for mark in marks]
    job = hand.make_job()
    return [svg for pair in drawn.values() for svg in pair], lambda: cut_sheets_pdf(kits, job, pictures)


def data_of(make: Callable[[], bytes]) -> Record:
    """Return what is given to the press for some sheets."""
    with patch("jambs.sheets.cut_sheet.press", return_value=b"") as press:
        make()
    data: Record = press.call_args.args[1]
    return data


def set_by(template: bytes, data: object) -> float:
    """Return the time typst takes for a template [s]."""
    inputs = {"data": json.dumps(data)}
    page = typst.Compiler(template, font_paths=fonts(), ignore_system_fonts=True, sys_inputs=inputs)
    return taken(lambda: page.compile(format="pdf", timestamp=0))


def sheets(count: int, first: int) -> tuple[float, float, float]:
    """Return the time of some cut sheets, of their pictures alone and of all that is on them, set plainly [s].

    The last sets other sheets of as many parts: typst would remember pictures that it has set.
    """
    drawn, make = sheets_of(count, first)
    _, others = sheets_of(count, first + OTHERS)
    whole = taken(make)
    return whole, set_by(BARE.encode(), [svg + " " for svg in drawn]), set_by(PLAIN, data_of(others))


def main() -> None:
    """Print the times of one sheet and of forty; widths of letters are known, as the drawings come first."""
    fonts()
    for is_bold in (False, True):
        width_in_capitals("0", is_bold)
    for count, first in ((1, 1), (1, 100), (40, 200)):
        whole, floor, plain = sheets(count, first)
        words = "sheet " if count == 1 else "sheets"
        print(
            f"{count:3} cut {words} {whole * 1000:7.0f} ms; pictures {floor * 1000:6.0f} ms, {whole / floor:.1f} x; "
            f"all of it plainly {plain * 1000:6.0f} ms, {whole / plain:.1f} x"
        )


if __name__ == "__main__":
    main()
