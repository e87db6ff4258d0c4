"""Names that papers are called by: what is a file's name on every machine."""

from __future__ import annotations

import re

RESERVED = re.compile(r"(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])([ .].*)?", re.IGNORECASE)
"""Devices that some systems take for a file of this name, whatever ending it has: no file there can be called so.

Source: the file naming rules that the maker of such a system publishes; from memory.
"""


def file_name_fault(name: str) -> str | None:
    """Say why a name cannot be that of a file everywhere; nothing where it can."""
    if RESERVED.fullmatch(name.strip()):
        return f"{name!r} is a device name on some systems, where no file can have it; write another, like W-{name}"
    if name != name.strip() or name.endswith("."):
        return f"{name!r} ends in a dot or a space, which some systems strip from file names; leave it out"
    return None
