"""The only door to typst: a template of the package and its data become PDF bytes, the same in every run."""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from pathlib import Path

import typst

from jambs.values import Record

FONT = "Liberation Sans"


class PressError(RuntimeError):
    """A page that cannot be printed; the message says which template and what is missing."""


@cache
def fonts() -> typst.Fonts:
    """Read the bundled fonts, once; fonts of the machine would make the pages differ."""
    folder = Path(str(files("jambs.data"))) / "fonts"
    found = typst.Fonts(False, False, [folder])
    if FONT not in found.families():
        raise PressError(f"{FONT} is not in {folder}; install the package again, its fonts are part of it")
    return found


def press(template: str, data: Record) -> bytes:
    """Print a template (``cut_sheet`` is ``templates/cut_sheet.typ``) with its data; return PDF bytes.

    Raises:
        PressError: the template does not take the data, or the fonts are missing.
    """
    folder = Path(str(files("jambs.sheets"))) / "templates"
    compiler = typst.Compiler(
        input=folder / f"{template}.typ",
        root=folder,
        font_paths=fonts(),
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(data, ensure_ascii=False)},
    )
    try:
        pdf = compiler.compile(format="pdf", timestamp=0)
    except typst.TypstError as error:
        raise PressError(f"{template}: {error.message}\n{error.diagnostic}") from error
    assert isinstance(pdf, bytes)
    return pdf
