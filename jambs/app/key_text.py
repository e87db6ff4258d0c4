"""The keys of a job file as they are printed on a terminal, and the pictures of what they measure."""

from __future__ import annotations

import textwrap
from importlib.resources import files

from jambs.job.key_list import KeyLine, KeySection, key_sections, sections_with

PICTURES = ("depths", "faces", "heights", "bent", "clad", "between")
WIDTH = 100
KEY_WIDTH = 24


def keys_text(word: str) -> str:
    """List the keys whose name or section holds a word, its picture first; nothing if there is none."""
    sections = sections_with(word) if word else key_sections()
    if not sections:
        return ""
    picture = [_picture(word)] if word in PICTURES else []
    note = f"* must be given where its section is.\nPictures: jambs keys {', '.join(PICTURES)}."
    return "\n\n".join([*picture, *map(_section, sections), note])


def _picture(name: str) -> str:
    return files("jambs.data").joinpath(f"keys_{name}.txt").read_text(encoding="utf-8").rstrip()


def _section(section: KeySection) -> str:
    return "\n".join([section.path, *map(_line, section.lines)])


def _line(line: KeyLine) -> str:
    key = f"  {line.key}{'*' if line.is_required else ''}"
    words = f"{line.words} ({', '.join(line.choices)})" if line.choices else line.words
    lines = textwrap.wrap(words, WIDTH - KEY_WIDTH) or [""]
    return f"{key:<{KEY_WIDTH}}" + ("\n" + " " * KEY_WIDTH).join(lines)
