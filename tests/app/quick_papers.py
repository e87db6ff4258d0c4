"""Papers for tests that read words, tables and the record: no pictures in them, no drawings, no solids beside them."""

from __future__ import annotations

import pytest

from jambs.app import papers
from jambs.sheets.pictures import Picture, SheetPictures


def quick(patch: pytest.MonkeyPatch, *, drawings: bool) -> None:
    """Leave out what a test does not read: hatching, pictures, solids and, unless asked for, the drawings."""
    nothing = Picture(title="", svg='<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"/>', scale="")
    patch.setattr(papers, "sheet_pictures", lambda *_, **__: SheetPictures(elevation=nothing, section=nothing))
    patch.setattr(papers, "write_solids", lambda *_, **__: ())
    patch.setattr(papers, "write_elevations", lambda *_, **__: None)
    patch.setattr(papers, "write_flat_dxf", lambda _, path: path.write_bytes(b""))
    patch.setattr(papers, "sheet_pages", lambda *_: [])
    patch.setattr(papers, "write_drawing_sheets", lambda _, __, path: path.write_bytes(b""))
    patch.setattr(papers, "write_cut_files", lambda *_, **__: None)
    patch.setattr(papers, "write_all_drawings", lambda *_, **__: None)
    if not drawings:
        patch.setattr(papers, "draw_opening", lambda *_, **__: None)
        patch.setattr(papers, "drawing_title", lambda _: "")
        patch.setattr(papers, "write_dxf", lambda _, path: path.write_bytes(b""))
