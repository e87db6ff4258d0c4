"""Frame-and-panel jambs as the job file states them: stiles, rails, and a panel in a groove with room to move."""

from __future__ import annotations

from typing import Annotated

from pydantic import BeforeValidator, model_validator

from jambs.job.models.fields import NUMBER, Amount, BoardWidth, Long, Model, Small, Text, Thickness, fault
from jambs.length import HALF_64TH

MOST_PANELS = 8
"""Along one jamb: more are no panels but a grille; and every member of a jamb has a letter of its own."""
PanelCount = Annotated[int, BeforeValidator(Amount(1, MOST_PANELS, whole=True)), NUMBER]


class PanelGrooveEntry(Model):
    """The groove in the inner edges of stiles and rails [in]; ``from_face``: face of the jamb → its near side."""

    width: Thickness
    depth: Small
    from_face: Small


class PanelEntry(Model):
    """The panels [in]; ``tongue``: how wide the rabbet round a panel is that is thicker than its groove is wide.

    ``room``: what both grooves together leave for it to swell across the grain; left out, it follows from its wood and
    the shop's moisture. ``end_room``: the same along the grain, where wood hardly moves.
    """

    thickness: Thickness
    stock: Text
    tongue: Small | None = None
    room: Small | None = None
    end_room: Small


class PanelsEntry(Model):
    """Jambs as frames with panels: widths of stiles and rails, stub tenons, groove, and how many panels [in].

    ``on_legs``, ``on_level``: how many along a leg, and along head and bottom; ``longest``: else as many as keep every
    opening between rails at most so long.
    """

    stiles: BoardWidth
    rails: BoardWidth
    tenon: Small
    groove: PanelGrooveEntry
    panel: PanelEntry
    on_legs: PanelCount | None = None
    on_level: PanelCount | None = None
    longest: Long | None = None

    @model_validator(mode="after")
    def _counted(self) -> PanelsEntry:
        counts = (self.on_legs, self.on_level)
        if (self.longest is None) is (None in counts) or (self.longest is not None and counts != (None, None)):
            raise fault(
                "says nothing, or two things, of how many panels there are; write longest: 30 in (the longest panel), "
                "or both on_legs and on_level"
            )
        return self

    @model_validator(mode="after")
    def _grooved(self) -> PanelsEntry:
        groove = self.groove
        if not groove.depth or not groove.from_face:
            raise fault("gives a groove without depth, or one that opens in the face; write both above 0")
        if not 0 < self.tenon <= groove.depth + HALF_64TH:
            raise fault("gives a tenon that is longer than the groove is deep, or none; write at most its depth")
        if self.stiles <= groove.depth or self.rails <= 2 * groove.depth:
            raise fault(
                "gives stiles or rails that the grooves cut through; a stile is wider than the groove is deep, a rail "
                "wider than two of them"
            )
        return self

    @model_validator(mode="after")
    def _panel_in_groove(self) -> PanelsEntry:
        panel, groove = self.panel, self.groove
        if panel.thickness < groove.width - HALF_64TH:
            raise fault("gives a panel thinner than its groove is wide, which rattles; write a groove of its thickness")
        if self.is_rabbeted and (panel.tongue is None or panel.tongue < groove.depth):
            raise fault(
                "gives a panel thicker than its groove is wide and no tongue that goes into it; write tongue in panel, "
                "at least as wide as the groove is deep"
            )
        if not self.is_rabbeted and panel.tongue is not None:
            raise fault("gives tongue for a panel that is as thick as its groove is wide and needs none; remove it")
        room = max(panel.room or 0.0, panel.end_room)
        if room >= groove.depth:
            raise fault(
                "leaves the panel as much room as the groove is deep, so that it can fall out at one side; write a "
                "deeper groove, or less room or end_room"
            )
        return self

    @property
    def is_rabbeted(self) -> bool:
        """Say whether the panel is thicker than the groove is wide, so that it is rabbeted from the back to enter."""
        return self.panel.thickness > self.groove.width + HALF_64TH

    @property
    def deep(self) -> float:
        """Face of the jamb → back of what reaches deepest into it, groove or panel [in]."""
        return self.groove.from_face + max(self.groove.width, self.panel.thickness)
