"""Openings in line: the height of one that is said by its head, or by another opening."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from jambs.job.models.openings import InLine, Line, Opening
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import advice
from jambs.job.reading.tree import TextSource


def in_line(listed: Iterable[tuple[TextSource, Opening]], complaints: Complaints) -> tuple[Opening, ...]:
    """Return the openings with the heights that others give them; what leads nowhere is told."""
    pairs = list(listed)
    house = _House(
        openings={one.mark: one for _, one in pairs}, sources={one.mark: source for source, one in pairs}, heights={}
    )
    return tuple(replace(one, sill_height=house.sill_height(one.mark, complaints, ())) for _, one in pairs)


@dataclass(frozen=True, slots=True, kw_only=True)
class _House:
    openings: Mapping[str, Opening]
    sources: Mapping[str, TextSource]
    heights: dict[str, float | None]
    """What was found so far: finished floor → bottom of the frame [in]."""

    def sill_height(self, mark: str, complaints: Complaints, trail: tuple[str, ...]) -> float | None:
        """Return the height of an opening, by way of those it is in line with; ``trail``: whose height is asked for."""
        if mark not in self.heights:
            self.heights[mark] = self._found(self.openings[mark], complaints, (*trail, mark))
        return self.heights[mark]

    def _found(self, opening: Opening, complaints: Complaints, trail: tuple[str, ...]) -> float | None:
        for key, wish in (("head_with", opening.head_with), ("sill_with", opening.sill_with)):
            if wish is not None:
                return self._from(opening, key, wish, complaints, trail)
        return opening.sill_height

    def _from(
        self, opening: Opening, key: str, wish: InLine, complaints: Complaints, trail: tuple[str, ...]
    ) -> float | None:
        source, named = self.sources[opening.mark], wish.mark
        if named not in self.openings:
            near = advice(named, [mark for mark in self.openings if mark != opening.mark])
            complaints.say(source, (key,), f"no opening has the mark {named!r}; {near}")
            return None
        if named in trail:
            message = f"{opening.mark} is in line with itself, by way of {named}; give one a height"
            complaints.say(source, (key,), message)
            return None
        other, height = self.openings[named], self._bottom(named, complaints, trail)
        if height is None:
            if not complaints.faults:
                complaints.say(source, (key,), f"{named} has no height; give it sill_height or head_height")
            return None
        at_head = key == "head_with"
        return height + _line(other, wish.line, at_head=at_head) - _line(opening, wish.line, at_head=at_head)

    def _bottom(self, mark: str, complaints: Complaints, trail: tuple[str, ...]) -> float | None:
        """Finished floor → bottom of the frame [in]; a door's floor lies below its frame."""
        below = self.openings[mark].floor_below_frame
        return self.sill_height(mark, complaints, trail) if below is None else below


def _line(opening: Opening, line: Line, *, at_head: bool) -> float:
    """Bottom of the frame → the edge that is to be in line [in]: of the frame, or of the extension jamb beside it."""
    face, reveal = opening.window.frame_face, opening.interior.frame_reveal
    if at_head:
        return opening.frame.height - (face.head - reveal if line is Line.REVEAL else 0.0)
    return face.sill - reveal if line is Line.REVEAL else 0.0
