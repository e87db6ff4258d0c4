"""Panels held against how their wood moves: do they swell in the room they have, do they stay in their grooves?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from jambs.findings import Finding, Subject
from jambs.job.models.openings import Job
from jambs.job.models.panels import PanelsEntry
from jambs.length import ROUND_OFF
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.panel_layout import PanelLayout
from jambs.parts.board.part import Part
from jambs.parts.findings.panel_findings import PanelLeavesGroove, PanelSwellsTight
from jambs.parts.jambs.panel_room import (
    LEAST_HELD,
    STILL,
    PanelMovement,
    held_when_driest,
    panel_movement,
    wanted_depth,
)


def movement_findings(jambs: Sequence[Part], entry: PanelsEntry, job: Job) -> tuple[Finding, ...]:
    """Hold the panels of an opening's jambs against their room and their grooves: those of one jamb are alike."""
    moves = panel_movement(entry.panel.stock, job) or STILL
    return (*_swelling(jambs, entry, moves), *_leaving(jambs, entry, moves, job))


def _swelling(jambs: Sequence[Part], entry: PanelsEntry, moves: PanelMovement) -> Iterator[Finding]:
    """Find panels that get wider than their grooves are apart; the one that does most is told."""
    tight = [one for one in jambs if _growth(one, moves) > _room(one, entry) + ROUND_OFF]
    if tight:
        worst = max(tight, key=lambda one: _growth(one, moves))
        growth, room = _growth(worst, moves), _room(worst, entry)
        yield PanelSwellsTight(subject=_about(jambs), marks=_panel_marks(tight), growth=growth, room=room)


def _leaving(jambs: Sequence[Part], entry: PanelsEntry, moves: PanelMovement, job: Job) -> Iterator[Finding]:
    """Find panels that get so narrow that their grooves hold too little of them."""
    grid, least = job.shop.grid, LEAST_HELD[job.shop.grid.units]
    loose = [one for one in jambs if _held(one, moves) < least - ROUND_OFF]
    if loose:
        held = min(_held(one, moves) for one in loose)
        deep = wanted_depth(entry.groove.depth, held, least, grid)
        yield PanelLeavesGroove(subject=_about(jambs), marks=_panel_marks(loose), held=held, least=least, wanted=deep)


def _growth(jamb: Part, moves: PanelMovement) -> float:
    return _layout(jamb).panel_width * moves.growth


def _room(jamb: Part, entry: PanelsEntry) -> float:
    """What both grooves leave a panel across its grain, as it is cut [in]."""
    layout = _layout(jamb)
    return layout.opening_width + 2 * entry.groove.depth - layout.panel_width


def _held(jamb: Part, moves: PanelMovement) -> float:
    layout = _layout(jamb)
    return held_when_driest(layout.panel_width, layout.opening_width, moves.shrinkage)


def _layout(jamb: Part) -> PanelLayout:
    assert jamb.blank.panels
    return jamb.blank.panels.layout


def _about(jambs: Sequence[Part]) -> Subject:
    return Subject.opening(jambs[0].opening)


def _panel_marks(jambs: Sequence[Part]) -> tuple[str, ...]:
    return tuple(one.mark for jamb in jambs for one in jamb.frame_members if one.kind is PartKind.PANEL)
