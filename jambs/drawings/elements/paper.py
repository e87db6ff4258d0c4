"""Paper: how large things are when printed, and the scales a drawing may have.

Paper sizes are inches on the printed sheet; a view multiplies them by the factor of its scale (4 at 3" = 1'-0").
"""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Point
from jambs.length import MM_PER_INCH, Units

TEXT_HEIGHT = 3 / 32
"""Capital height of dimensions and notes: the least that reads at arm's length (common practice, no source) [in]."""
ISO_TEXT_HEIGHT = 2.5 / MM_PER_INCH
"""The same on drawings in millimeters: ISO 3098-1 has 1.8, 2.5 and 3.5 mm (from memory) [in]."""
MARK_HEIGHT = 1 / 8
TITLE_HEIGHT = 3.5 / MM_PER_INCH
"""Capital height of the titles of views: the next over that of notes (ISO 3098-1, from memory) [in]."""
DESCENDER = 0.32
"""How far letters reach below the line, as a share of the capital height (Liberation Sans: 434 / 1409 units)."""
BOLD_IS_WIDER = 1.1
"""Bold letters over plain ones of the same height."""
LINE_PITCH = 1.5
"""From one line of a text to the next, as a share of the capital height (ISO 3098-1, from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """A drawing scale: model inches per inch of paper, and how it is written.

    ``text``: capital height of dimensions and notes of drawings at it [in on paper].
    """

    factor: float
    words: str
    text: float = TEXT_HEIGHT


JOINED = "; "
"""Between remarks under a title that share a line."""


def scale_line(scale: Scale) -> str:
    """Return what stands under the title of a view at a scale."""
    return f"Scale {scale.words}"


INCH_SCALES = (
    Scale(factor=4, words='3" = 1\'-0"'),
    Scale(factor=8, words='1 1/2" = 1\'-0"'),
    Scale(factor=12, words='1" = 1\'-0"'),
    Scale(factor=16, words='3/4" = 1\'-0"'),
    Scale(factor=24, words='1/2" = 1\'-0"'),
    Scale(factor=32, words='3/8" = 1\'-0"'),
    Scale(factor=48, words='1/4" = 1\'-0"'),
)
MM_SCALES = tuple(Scale(factor=factor, words=f"1:{factor}", text=ISO_TEXT_HEIGHT) for factor in (5, 10, 20, 50))
"""Reduction scales of ISO 5455:1979, table 1."""


HALF_SIZE = {
    Units.INCH: Scale(factor=2, words='6" = 1\'-0"'),
    Units.MM: Scale(factor=2, words="1:2", text=ISO_TEXT_HEIGHT),
}
"""For details of a corner, larger than all else."""


SMALL_SCALES = {
    Units.INCH: tuple(
        Scale(factor=factor, words=words) for factor, words in ((64, '3/16" = 1\'-0"'), (96, '1/8" = 1\'-0"'))
    ),
    Units.MM: (Scale(factor=100, words="1:100", text=ISO_TEXT_HEIGHT),),
}
"""For a picture of the whole in which nobody measures; in millimeters of ISO 5455:1979, table 1."""


def scales_of(units: Units) -> tuple[Scale, ...]:
    """Return the standard scales of a job, largest drawing first."""
    return INCH_SCALES if units is Units.INCH else MM_SCALES


@dataclass(frozen=True, slots=True)
class Sizes:
    """Sizes of lettering and dimensioning in model inches at one scale; each is paper inches × factor."""

    factor: float
    text_height: float = TEXT_HEIGHT

    @property
    def text(self) -> float:
        """Capital height of dimensions and notes."""
        return self.text_height * self.factor

    @property
    def pitch(self) -> float:
        """From one line of a note to the next."""
        return self.text * LINE_PITCH

    @property
    def lane(self) -> float:
        """From one pulled-out dimension text to the one beside it."""
        return self.text * 1.75

    @property
    def gap(self) -> float:
        """Between a text and any line near it."""
        return 0.045 * self.factor

    @property
    def overshoot(self) -> float:
        """Extension lines past the dimension line; half the length of a tick."""
        return 0.05 * self.factor

    @property
    def offset(self) -> float:
        """From the measured point to the start of its extension line."""
        return 0.05 * self.factor

    @property
    def row(self) -> float:
        """Between one row of dimensions with its texts and the next."""
        return 0.07 * self.factor

    @property
    def corridor(self) -> float:
        """The strip beside the drawn shapes where only leaders and extension lines run."""
        return 0.2 * self.factor

    @property
    def shoulder(self) -> float:
        """The level piece of a leader beside its text."""
        return 0.1 * self.factor

    @property
    def remark(self) -> float:
        """Greatest width of what stands under a title; longer lines are broken."""
        return 2.4 * self.factor

    @property
    def tag(self) -> float:
        """Radius of a circle with a number."""
        return 0.14 * self.factor

    @property
    def head(self) -> float:
        """Length of a leader's arrow head; a third of it is its width."""
        return 0.09 * self.factor


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A sheet of paper lying on its long side: name, width × height, margin [in on paper]."""

    name: str
    width: float
    height: float
    margin: float = 0.3

    @property
    def corners(self) -> tuple[Point, ...]:
        """The corners of the border, counter-clockwise from the lower left one."""
        near, right, top = self.margin, self.width - self.margin, self.height - self.margin
        return ((near, near), (right, near), (right, top), (near, top))

    @property
    def border(self) -> tuple[tuple[Point, Point], ...]:
        """The four lines of the border."""
        return tuple(zip(self.corners, (*self.corners[1:], self.corners[0]), strict=True))


PAGES = {
    Units.INCH: (Page(name="LETTER", width=11, height=8.5), Page(name="TABLOID", width=17, height=11)),
    Units.MM: (
        Page(name="A4", width=297 / MM_PER_INCH, height=210 / MM_PER_INCH),
        Page(name="A3", width=420 / MM_PER_INCH, height=297 / MM_PER_INCH),
    ),
}
