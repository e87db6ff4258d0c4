"""The only door to typst: a template of the package and its data become PDF bytes, the same in every run."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

import typst
from pypdf import PdfReader

from jambs.sheets.joining import join_pdfs
from jambs.values import Record

FONT = "Liberation Sans"
MARKED, SUSPECTS = b"/Marked true", b"/Suspects false"
"""What the press says of its tags and what holds anyway (ISO 32000-1, table 321); poppler takes offense at it."""
REMEMBERED = 11
"""typst remembers what its last documents used, and lets go of it when so many others were set."""


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
    return _without_suspects(pdf)


def _without_suspects(pdf: bytes) -> bytes:
    """Leave out that no tags are suspect; blanks take its place, so that all else stays where the file says it is."""
    return pdf.replace(MARKED + SUSPECTS, MARKED.ljust(len(MARKED + SUSPECTS)))


def press_large(template: str, data: Record) -> bytes:
    """Print as ``press`` does, and let typst forget what it used for it, which grows with the document.

    Raises:
        PressError: as ``press``.
    """
    pdf = press(template, data)
    empty = typst.Compiler(b"", font_paths=fonts(), ignore_system_fonts=True)
    for _ in range(REMEMBERED):
        empty.compile(input=b"", format="svg")
    return pdf


def press_in_pieces(template: str, pieces: Sequence[Record], path: Path) -> None:
    """Print a list of a large house piece by piece into one PDF, its pages numbered through.

    Each piece is set twice, the first time to count its pages, and forgotten: what is held does not grow with the list.

    Raises:
        PressError: as ``press``.
    """
    counts = [len(PdfReader(BytesIO(press_large(template, piece))).pages) for piece in pieces]
    with TemporaryDirectory(dir=path.parent) as folder:
        files = [Path(folder) / f"{number}.pdf" for number in range(len(pieces))]
        for number, (piece, file) in enumerate(zip(pieces, files, strict=True)):
            pages = {"before": sum(counts[:number]), "all": sum(counts)}
            file.write_bytes(press_large(template, {**piece, "pages": pages}))
        join_pdfs(files, path)
