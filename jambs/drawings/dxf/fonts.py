"""The bundled fonts made known to ezdxf, so that a drawing is the same on every machine."""

from __future__ import annotations

from functools import cache
from importlib.resources import as_file, files

from ezdxf.fonts import fonts

from jambs.letter_widths import BOLD, FONT_FOLDER, REGULAR

NAMES = {REGULAR: "arial.ttf", BOLD: "arialbd.ttf"}
"""What the files stand for: fonts of the same widths that other machines have."""


@cache
def use_bundled_fonts() -> None:
    """Let ezdxf know the bundled fonts and no others; before any text is measured or drawn."""
    manager = fonts.font_manager
    with as_file(files(FONT_FOLDER).joinpath("fonts")) as folder:
        manager.clear()
        manager.build([str(folder)], support_dirs=False)
    manager.add_synonyms(NAMES, reverse=False)
