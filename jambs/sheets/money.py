"""Money as it is printed: ``$12.40``, ``268 kr``; and the parts of a whole."""

from __future__ import annotations

from jambs.values import Record

BEFORE = ("$", "€", "£", "¥")
"""Signs that stand before the amount; others follow it."""


def money_text(cents: int, currency: str) -> str:
    """Print an amount; without decimals where there are none and the currency is written after it."""
    sign, cents = ("-" if cents < 0 else ""), abs(cents)
    if currency in BEFORE:
        return f"{sign}{currency}{cents // 100:,}.{cents % 100:02d}"
    rest = f".{cents % 100:02d}" if cents % 100 else ""
    return f"{sign}{cents // 100:,}{rest} {currency}".replace(",", " ")


def money(cents: int, currency: str) -> Record:
    """Return an amount as its whole cents and its printed text."""
    return {"cents": cents, "text": money_text(cents, currency)}


def percent_text(part: int, whole: int) -> str:
    """Print a part of a whole in percent, rounded up to a hundredth: what is left to save is never said too small."""
    hundredths = -(-10_000 * part // max(1, whole))
    return f"{hundredths // 100}.{hundredths % 100:02d} %"
