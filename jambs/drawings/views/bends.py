"""A blank of sheet metal: its bent profile, and the flat piece with its bend lines."""

from __future__ import annotations

from itertools import pairwise

from jambs.drawings.elements.view import CallOut, Chain, Ink, Interval, Shape, View, ViewSide
from jambs.flashing.blank import Bend, Blank, LegKind, traced
from jambs.length import Units, decimal_text, length_text

FOLD = 180.0
HEM_OPEN = 0.06
"""A hem is drawn this far off the metal it lies on [in]; folded flat, the two would be one line."""
PIECE = 1.5
"""How much of the length of a flat blank is drawn [in]."""


def bent_view(blank: Blank, *, units: Units) -> View:
    """Return the profile as bent, wall at the left, outside at the right; every leg named with its width."""
    points = traced((0.0, 0.0), blank.legs)
    is_hemmed = blank.legs[-1].kind is LegKind.HEM
    if is_hemmed:
        points = (*points[:-1], points[-2], points[-1])
        points = (*points[:-2], *((x - HEM_OPEN, y - HEM_OPEN) for x, y in points[-2:]))
    middles = [((x0 + x1) / 2, (y0 + y1) / 2) for (x0, y0), (x1, y1) in pairwise(points)]
    if is_hemmed:
        del middles[-2]
    call_outs = []
    for leg, middle in zip(blank.legs, middles, strict=True):
        words = f"{leg.name} {length_text(leg.bent_width, units=units)}"
        call_outs.append(CallOut(target=middle, lines=(words,), side=ViewSide.RIGHT, short=words))
    shape = Shape(points=points, ink=Ink.FLASHING, closed=False)
    return View(name=f"bent {blank.name}", title=f"{blank.name}, bent", shapes=(shape,), call_outs=tuple(call_outs))


def flat_view(blank: Blank, *, units: Units) -> View:
    """Return the flat piece on its outer face, upper edge at the top: bends at the left, girth at the right."""
    girth = blank.girth
    corners = ((0.0, 0.0), (PIECE, 0.0), (PIECE, -girth), (0.0, -girth))
    lines = [Shape(points=((0.0, -b.at), (PIECE, -b.at)), ink=Ink.HIDDEN, closed=False) for b in blank.bends]
    running = [
        CallOut(target=(0.0, -bend.at), lines=(words,), side=ViewSide.LEFT, short=words)
        for bend in blank.bends
        for words in [f"{length_text(bend.at, units=units)}: {bend_words(bend)}"]
    ]
    return View(
        name=f"flat {blank.name}",
        title=f"{blank.name}, flat",
        shapes=(Shape(points=corners, ink=Ink.FLASHING), *lines),
        chains=(Chain(side=ViewSide.RIGHT, intervals=(Interval(start=corners[1], finish=corners[2]),), is_main=True),),
        call_outs=tuple(running),
    )


def bend_words(bend: Bend) -> str:
    """Say how a bend turns, looking at the outer face with the upper edge at the top."""
    if abs(abs(bend.turn_deg) - FOLD) < 0.05:
        return "fold flat, back"
    turn = f"{decimal_text(abs(bend.turn_deg), 1)}°"
    return f"{turn} {'toward you' if bend.turn_deg > 0 else 'away'}"
