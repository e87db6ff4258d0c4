"""Frame-and-panel jambs for the tests: the base window deep in its wall, its jambs stiles, rails and panels."""

from __future__ import annotations

from typing import Any

PANEL: dict[str, Any] = {"thickness": "1/4", "stock": "poplar", "end_room": "1/16"}
PANELS: dict[str, Any] = {
    "stiles": "2",
    "rails": "2 1/2",
    "tenon": "3/8",
    "groove": {"width": "1/4", "depth": "3/8", "from_face": "1/4"},
    "panel": PANEL,
    "longest": "24",
}
MOISTURE: dict[str, Any] = {"gain": "4", "loss": "2"}
THIN_BOARD = {"stock": "poplar", "thickness": "1/4", "width": "5 1/2"}
BOARDS = [{"nominal": "1x4", "stock": "poplar"}, {"nominal": "1x8", "stock": "poplar"}, THIN_BOARD]


def paneled(**changes: Any) -> dict[str, Any]:
    """Return the changes of the base job that make its jambs 7 15/32 deep frames with panels; ``changes`` by path."""
    whole = {
        "position": {"share": "1"},
        "interior_trim__inside__panels": PANELS,
        "shop__moisture": MOISTURE,
        "shop__boards": BOARDS,
        **changes,
    }
    return {path: value for path, value in whole.items() if value is not None}
