"""The catalog as it is printed on a terminal."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.job.reading.catalog import CatalogBoard, CatalogLayer, catalog_boards, catalog_layers, plain_name
from jambs.length import Units, decimal_text, length_text


def catalog_text(word: str, *, units: Units, with_sources: bool) -> str:
    """List layers and boards whose name, role or alias holds a word; nothing if none does."""
    layers = [layer for layer in catalog_layers() if _holds(word, (layer.name, layer.role.value, *layer.aliases))]
    boards = [board for board in catalog_boards() if _holds(word, (board.nominal, "boards"))]
    lists = [
        _list("layers, by name", [_layer(one, units, with_sources) for one in layers]),
        _list("boards, by nominal name", [_board(one, units, with_sources) for one in boards]),
    ]
    return "\n\n".join(one for one in lists if one)


def _holds(word: str, names: Iterable[str]) -> bool:
    return any(plain_name(word) in plain_name(name) for name in names)


def _list(title: str, rows: list[list[str]]) -> str:
    if not rows:
        return ""
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))]
    return "\n".join([title, *("  " + "  ".join(map(str.ljust, row, widths)).rstrip() for row in rows)])


def _layer(layer: CatalogLayer, units: Units, with_sources: bool) -> list[str]:
    thickness = length_text(layer.thickness, units=units) if layer.thickness else "give the thickness"
    if layer.thickness and layer.thickness < 1 / 16:
        thickness = "thin"
    heat = f"{decimal_text(layer.conductivity, 3)} W/mK" if layer.conductivity else ""
    source = [layer.source] if with_sources else []
    return [layer.name, layer.role.value, thickness, heat, *source]


def _board(board: CatalogBoard, units: Units, with_sources: bool) -> list[str]:
    width = length_text(board.width, units=units) if board.width else "give the width"
    source = [board.source] if with_sources else []
    return [board.nominal, f"{length_text(board.thickness, units=units)} × {width}", *source]
