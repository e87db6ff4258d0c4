"""How fasteners are told on paper: their way in, how many, and whose lengths they are."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from jambs.fasten.plan import FastenerLine
from jambs.fasten.reach import Through
from jambs.job.models.openings import Assumed
from jambs.job.models.outside import Fixed
from jambs.length import Units, decimal_text, length_text

FRAMING = "the framing"


def assumed_lengths(lines: Iterable[FastenerLine], units: Units) -> tuple[Assumed, ...]:
    """List the lengths that are no more than assumed to be sold, each kind once."""
    sold = dict.fromkeys(line.sold for line in lines)
    return tuple(
        Assumed(
            what=f"lengths of {one.fastener}",
            value=", ".join(units.text(length) for length in one.lengths),
            why=one.source,
        )
        for one in sold
        if one and not one.is_read
    )


def way_words(through: Sequence[Through], penetration: float, units: Units, target: str = FRAMING) -> str:
    """Say what a fastener goes through: ``casing (1") + EPS (3") + … + 1 1/2" into the framing``."""
    steps = [through_words(one, units) for one in through]
    return " + ".join([*steps, f"{units.text(penetration)} into {target}"])


def through_words(one: Through, units: Units) -> str:
    """Name what is gone through with its thickness, once: the name of a layer may end with it."""
    text, name = units.text(one.thickness), one.name
    for ending in (text, length_text(one.thickness, units=units, mark=False)):
        name = name.removesuffix(f" {ending}")
    return f"{name} ({text})"


TARGETS = {Fixed.RETURN_FURRING: "the wood behind it"}
"""Into what fasteners reach where that is not the framing alone."""


def line_way(line: FastenerLine, units: Units) -> str:
    """Say what the fasteners of a line go through, and into what."""
    return way_words(line.through, line.penetration, units, TARGETS.get(line.fixed, FRAMING))


def count_words(line: FastenerLine) -> str:
    """Say how many: ``48``, ``about 320``, or that the job gives no width of the wall."""
    if line.count is None:
        return f"count: give the elevation's {line.asked}"
    return f"about {decimal_text(line.count, 0)}" if line.is_about else decimal_text(line.count, 0)
