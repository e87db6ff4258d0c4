"""A frame with panels where a section cuts it through a panel: air before and behind the panel and in its grooves.

The jamb's own outline is drawn as that of one board; what its panel leaves of that is air over the wood,
as a groove is.
"""

from __future__ import annotations

from jambs.geometry import Outline, Point
from jambs.job.models.panels import PanelsEntry
from jambs.length import ROUND_OFF
from jambs.parts.board.panel_layout import PanelLayout
from jambs.parts.board.part import Part


def panel_outline(entry: PanelsEntry, layout: PanelLayout) -> Outline:
    """Return the panel across the jamb, in coordinates (v, w) of the jamb [in]."""
    low, high = _panel_edges(layout)
    face, back = entry.groove.from_face, entry.groove.from_face + entry.panel.thickness
    if not entry.is_rabbeted:
        return ((low, face), (high, face), (high, back), (low, back))
    assert entry.panel.tongue
    step, tongue = entry.groove.from_face + entry.groove.width, entry.panel.tongue
    return (
        (low, face),
        (high, face),
        (high, step),
        (high - tongue, step),
        (high - tongue, back),
        (low + tongue, back),
        (low + tongue, step),
        (low, step),
    )


def panel_air(part: Part, entry: PanelsEntry, layout: PanelLayout) -> list[Outline]:
    """Return the boxes of air round a panel, in coordinates (v, w) of the jamb [in]."""
    low, high = _panel_edges(layout)
    near, far = layout.across
    face, step = entry.groove.from_face, entry.groove.from_face + entry.groove.width
    back, deep = entry.groove.from_face + entry.panel.thickness, entry.groove.depth
    inset = entry.panel.tongue if entry.is_rabbeted and entry.panel.tongue else 0.0
    boxes = (
        ((near, 0.0), (far, face)),
        ((near, back), (far, part.thickness)),
        ((near - deep, face), (low, step)),
        ((high, face), (far + deep, step)),
        ((near, step), (low + inset, back)),
        ((high - inset, step), (far, back)),
    )
    return [_box(one, two) for one, two in boxes if two[0] - one[0] > ROUND_OFF and two[1] - one[1] > ROUND_OFF]


def _panel_edges(layout: PanelLayout) -> Point:
    play = (layout.opening_width - layout.panel_width) / 2
    return layout.across[0] + play, layout.across[1] - play


def _box(low: Point, high: Point) -> Outline:
    return (low, (high[0], low[1]), high, (low[0], high[1]))
