"""``like:`` in a section of named pieces: a window or a trim is another one of its section, but for what it gives."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import advice
from jambs.job.reading.look_up import merged
from jambs.job.reading.tree import TreePiece


def with_likes(section: TreePiece, complaints: Complaints) -> tuple[TreePiece, Mapping[str, str]]:
    """Return a section with every piece whole, and which piece each is like.

    A piece that is like itself, or like nobody, is told and stays as it is.
    """
    written = section.value
    bases = {name: piece["like"] for name, piece in written.items() if isinstance(piece, dict) and "like" in piece}
    wrong = {name: why for name in bases if (why := _fault(name, bases, written))}
    for name, why in wrong.items():
        complaints.say(section, (name, "like"), why)
    good = {name: base for name, base in bases.items() if not set(_chain(name, bases)) & set(wrong)}
    wholes = {name: _whole(name, written, good) for name in written}
    return section.replaced((), wholes), good


def _fault(name: str, bases: Mapping[str, Any], written: Mapping[str, Any]) -> str:
    base = bases[name]
    if not isinstance(base, str):
        return "like names one piece; write like: and its name"
    if base not in written:
        others = [one for one in written if one != name]
        return f"nothing here is called {base!r}; {advice(str(base), others, otherwise='define it first')}"
    if name in _chain(name, bases)[1:]:
        return f"{name} is like itself, by way of {base}; give one of them all its keys"
    if not isinstance(written[base], dict):
        return f"{base} has no keys to be like; write key: value lines under it"
    return ""


def _chain(name: str, bases: Mapping[str, Any]) -> list[str]:
    """Return a name, what it is like, what that is like, … up to one that is whole or comes again."""
    found = [name]
    while found[-1] in bases:
        base = bases[found[-1]]
        found.append(str(base))
        if base in found[:-1]:
            break
    return found


def _whole(name: str, written: Mapping[str, Any], bases: Mapping[str, str]) -> Any:
    """Lay the keys of a piece over those of the piece it is like."""
    if name not in bases:
        return written[name]
    own = {key: value for key, value in written[name].items() if key != "like"}
    return merged(_whole(bases[name], written, bases), own)
