"""The square code of a label or a measure sheet (QR, ISO/IEC 18004): mark, issue and job, for a telephone to read."""

from __future__ import annotations

from dataclasses import dataclass

import segno

CORRECTION = "m"
"""Level M: the code is read with up to 15 % of it worn off (ISO/IEC 18004, from memory)."""
NOT_ISSUED = "not issued"
"""What a code says where nothing is known of an issue."""
QUIET = 4
"""White modules round the code (ISO/IEC 18004)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelCode:
    """A code as a picture without its quiet zone, and how many modules it is wide with that zone."""

    svg: str
    modules: int


def code_text(mark: str, issue: str, job: str) -> str:
    """Return what the code of a label says, a line each: mark, issue, job."""
    return "\n".join((mark, issue, job))


def label_code(text: str) -> LabelCode:
    """Return the code of a text."""
    made = segno.make(text, error=CORRECTION, micro=False, boost_error=False)
    svg = made.svg_inline(border=QUIET, omitsize=True)
    return LabelCode(svg=svg, modules=round(made.symbol_size(border=QUIET)[0]))
