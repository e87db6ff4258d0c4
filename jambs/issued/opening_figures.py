"""What changed of an opening beside its parts: every recorded value has words of its own.

What somebody states (window, wall, opening, trim) is told value by value. What follows from that (planes, swing,
findings, the steps on the install sheet) is told only where nothing else is.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from typing import Any

from jambs.issued.other_units import OTHER_UNITS
from jambs.issued.reasons import (
    FOLLOWING,
    STATED_WORDS,
    WINDOW_WORDS,
    CoursesChanged,
    HeadOfJobChanged,
    IssueReason,
    MeasuresWithdrawn,
    MovedInWall,
    NeighborsChanged,
    NowHalfMeasured,
    NowMeasured,
    OtherBoards,
    RenamedFrom,
    SheetsSayOtherwise,
    ShopChanged,
    StatedChanged,
    TrimmedAlone,
    TrimmedTogether,
    UnitsChanged,
    WindowChanged,
    WindowDetailChanged,
)

Record = Mapping[str, Any]
Row = tuple[str, str, str]
"""A value in words, as it was, as it is."""
NONE = "none"
FREE_OF_NOISE = 6
"""Decimal places to which a difference of two faces is free of the noise of the sum."""
FIGURES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("mark of the opening", ("mark",)),
    ("room", ("room",)),
    ("frame", ("window", "frame")),
    ("rough opening", ("rough_opening",)),
    ("clear between jambs", ("clear_opening",)),
    ("sill height", ("sill_height",)),
    ("frame over the floor", ("floor_below_frame",)),
    ("rough sill height", ("rough_sill_height",)),
    ("rough sill height in the framing", ("framing_sill_height",)),
    ("head height in the framing", ("framing_head_height",)),
    ("inside face to flange", ("planes", "flange_plane")),
    ("interior depth as planned", ("depths", "interior")),
    ("exterior depth as planned", ("depths", "exterior")),
    ("compass direction it faces", ("faces_deg",)),
)
"""Values that are told first, in this order."""
STATED = ("window", "wall", "buck", "trim")
"""Records whose every other value is told."""
LATER_OF_WINDOW = ("frame_depth", "frame_face")
"""Of a window, what goes by its other depths or by what was read at its frame; earlier issues did not record it."""
PARTS = ("parts", "figures", "clear_opening", "depths")
HEADS = ("mark", "state", "parts", *STATED, *(way[0] for _, way in FIGURES if len(way) == 1))
"""What is told otherwise: never among the values that follow."""
DRAWN = ("install", "shape")
"""The outline that an install sheet sketches: it is drawn from figures that are told, and points have no words."""
BARE = {"faces_deg": (1.0, "°"), "share": (100.0, " %")}
"""Numbers that are recorded without words, by their name: by what they are told, and its unit."""


def opening_rows(old: Record, new: Record) -> Iterator[Row]:
    """Yield the changed values that somebody stated, and the depths."""
    for words, way in FIGURES:
        yield from _row(words, _at(old, way), _at(new, way), way)
    told = {way for _, way in FIGURES}
    for key in STATED:
        for way, was, now in _leaves(old.get(key), new.get(key), (key,)):
            if way[1:2] and way[1] in LATER_OF_WINDOW and way[1] not in old.get(key, {}):
                continue  # an issue of before it was recorded
            if way[:2] not in told and way not in told:
                yield from _row(_words(way), was, now, way)


def following_rows(old: Record, new: Record) -> Iterator[Row]:
    """Yield the changed values that follow from others, for where nothing else is told."""
    for key in new:
        if key not in HEADS:
            for way, was, now in _leaves(old.get(key), new.get(key), (key,)):
                if way[: len(DRAWN)] != DRAWN:
                    yield from _row(_words(way), was, now, way)


def opening_whys(old: Record, new: Record) -> Iterator[IssueReason]:
    """Yield what was decided or found between the two; what comes first in the pipeline is named first."""
    if old["mark"] != new["mark"]:
        yield RenamedFrom(mark=old["mark"])
    if OTHER_UNITS in old:
        yield UnitsChanged(was=old[OTHER_UNITS])
    yield from _measured_why(old, new)
    yield from _window_why(old["window"], new["window"])
    for key in STATED_WORDS:
        if without_marks(old.get(key)) != without_marks(new.get(key)):
            yield StatedChanged(key=key)
    yield from _neighbors_why(old, new)
    was, now = (one["planes"]["flange_plane"]["text"] for one in (old, new))
    if was != now:
        yield MovedInWall(was=was, now=now)


def other_why(old: Record, new: Record) -> IssueReason:
    """Find why where nobody stated anything else: by the shop, or in what the sheets say."""
    if old["parts"] != new["parts"] and _all_but_boards(old) == _all_but_boards(new):
        return OtherBoards()
    if _are_parts_others(old, new):
        bare = (_all_but_courses(one, _in_courses(old) | _in_courses(new)) for one in (old, new))
        return ShopChanged() if _are_parts_others(*bare) else CoursesChanged()
    keys = tuple(key for key in dict.fromkeys((*new, *old)) if old.get(key) != new.get(key))
    return SheetsSayOtherwise(keys=keys) if keys else HeadOfJobChanged()


def _are_parts_others(old: Record, new: Record) -> bool:
    return any(_sizes(old.get(key)) != _sizes(new.get(key)) for key in PARTS)


def _in_courses(record: Record) -> set[str]:
    return {part["mark"] for part in record["parts"] if "courses" in part}


def _all_but_courses(record: Record, laid: Collection[str]) -> Record:
    """Leave out boards, and of what is laid in courses its pieces and what is said of them."""
    bare: Record = {"board": "", "courses": (), "work": ()}
    parts = [{**part, **(bare if part["mark"] in laid else {"board": ""})} for part in record["parts"]]
    return {**record, "parts": parts}


def _sizes(value: Any) -> Any:
    """Leave out marks, and the notes beside figures, which may name others."""
    bare = without_marks(value)
    return [{**one, "note": ""} if "note" in one else one for one in bare] if isinstance(bare, list) else bare


def _all_but_boards(record: Record) -> Record:
    return {**record, "parts": [{**part, "board": ""} for part in record["parts"]]}


def _measured_why(old: Record, new: Record) -> Iterator[IssueReason]:
    was, now = old["state"]["date"], new["state"]["date"]
    if old["depths"]["measured"] == new["depths"]["measured"]:
        return
    if now is not None:
        yield NowMeasured(day=now, is_again=was is not None, also=_also(old, new) if was else "")
    elif new["depths"]["measured"]:
        yield NowHalfMeasured()
    else:
        yield MeasuresWithdrawn()


def _also(old: Record, new: Record) -> str:
    """Return the one side that was read since, while the other one, read before, is as it was."""
    sides = (("inside", "is_measured", "interior"), ("outside", "exterior_is_measured", "exterior"))
    read = [words for words, flag, _ in sides if new["state"].get(flag) and not old["state"].get(flag)]
    others = [key for words, _, key in sides if words not in read]
    was, now = (one["depths"]["measured"] or {} for one in (old, new))
    return read[0] if len(read) == 1 and all(was.get(key) == now.get(key) for key in others) else ""


def _window_why(old: Record, new: Record) -> Iterator[IssueReason]:
    keys = [key for key in dict.fromkeys((*new, *old)) if key not in LATER_OF_WINDOW]
    changed = [key for key in keys if old.get(key) != new.get(key)]
    if all(key in WINDOW_WORDS for key in changed):
        yield from (WindowDetailChanged(key=key) for key in changed)
    else:
        yield WindowChanged()


def trimmed_with(opening: Record) -> list[str]:
    """Return the marks of the other openings that one is trimmed with as one."""
    run = opening.get("trimmed_as_one") or {"openings": ()}
    return [one["mark"] for one in run["openings"] if one["mark"] != opening["mark"]]


def _neighbors_why(old: Record, new: Record) -> Iterator[IssueReason]:
    was, now = trimmed_with(old), trimmed_with(new)
    if now and not was:
        yield TrimmedTogether(marks=tuple(now))
    elif was and not now:
        yield TrimmedAlone(marks=tuple(was))
    elif _beside(old) != _beside(new):
        yield NeighborsChanged()


def _beside(record: Record) -> list[str]:
    """Return the frames of the other openings that one is trimmed with as one, and the walls between, left to right."""
    run = record.get("trimmed_as_one")
    if not run:
        return []
    frames = ["" if one["mark"] == record["mark"] else str(one["frame"]["text"]) for one in run["openings"]]
    return [*frames, *(str(one["wall"]["text"]) for one in run["walls"])]


def without_marks(value: Any) -> Any:
    """Leave out marks: of parts in a buck, of the parts themselves."""
    if isinstance(value, Mapping):
        return {key: without_marks(one) for key, one in value.items() if key not in ("mark", "parts")}
    return [without_marks(one) for one in value] if isinstance(value, list) else value


def as_of_any_mark(opening: Record) -> Record:
    """Return the record of an opening whose trims of its own, ``picture (K1)``, are called as under any other mark."""
    trim, own = opening.get("trim"), f" ({opening.get('mark')})"
    if not isinstance(trim, Mapping):
        return opening
    return {**opening, "trim": {side: _called_without(one, own) for side, one in trim.items()}}


def _called_without(trim: Any, own: str) -> Any:
    is_named = isinstance(trim, Mapping) and isinstance(trim.get("name"), str)
    return {**trim, "name": trim["name"].removesuffix(own)} if is_named else trim


def _bare_text(way: tuple[str, ...], value: Any) -> str:
    """Return a value as it is printed; of numbers that the record has without words, the unit by their name."""
    if isinstance(value, int | float) and not isinstance(value, bool) and way[-1] in BARE:
        times, unit = BARE[way[-1]]
        return f"{round(value * times, 1):g}{unit}"
    return _text(value)


def _row(words: str, was: Any, now: Any, way: tuple[str, ...] = ("",)) -> Iterator[Row]:
    old, new = _bare_text(way, was), _bare_text(way, now)
    if old != new:
        yield words, old, new


def _at(record: Any, way: tuple[str, ...]) -> Any:
    for step in way:
        record = record and record.get(step)
    return record


def _leaves(was: Any, now: Any, way: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Any, Any]]:
    """Yield the values that differ, each with the names that lead to it."""
    if was == now:
        return
    if _is_tree(was) and _is_tree(now):
        for key in dict.fromkeys((*was, *now)):
            if key != "parts":
                yield from _leaves(was.get(key), now.get(key), (*way, key))
    elif isinstance(was, list) and isinstance(now, list):
        left, come = _unlike(was, now, _thing), _unlike(now, was, _thing)
        yield (way, left, come) if left or come else (way, _unlike(was, now), _unlike(now, was))
    else:
        yield way, was, now


def _unlike(some: Sequence[Any], others: Sequence[Any], known_by: Callable[[Any], Any] = lambda one: one) -> list[Any]:
    """Return what is not among the others."""
    there = [known_by(one) for one in others]
    return [one for one in some if known_by(one) not in there]


def _thing(value: Any) -> Any:
    """Know a layer by what it is and how thick: that those inside it became thicker is told of them."""
    if not (isinstance(value, Mapping) and {"inner", "outer"} <= value.keys()):
        return value
    thick = value["outer"]["value"] - value["inner"]["value"]
    return {**value, "inner": None, "outer": round(thick, FREE_OF_NOISE)}


def _is_tree(value: Any) -> bool:
    return isinstance(value, Mapping) and "text" not in value


def _text(value: Any) -> str:
    """Return a value as it is printed."""
    if isinstance(value, Mapping):
        return str(value["text"]) if "text" in value else _tree_text(value)
    if isinstance(value, list):
        return _listed([_text(one) for one in value]) or NONE
    if isinstance(value, bool):
        return "yes" if value else "no"
    return NONE if value in (None, "") else str(value)


def _listed(texts: Sequence[str]) -> str:
    """Put texts in a row: whole sentences one after the other, anything else by semicolons."""
    return "".join(f"{one}{' ' if one.endswith('.') else '; '}" for one in texts[:-1]) + "".join(texts[-1:])


def _tree_text(value: Record) -> str:
    name = value.get("name")
    rest = ", ".join(_text(one) for key, one in value.items() if key != "name" and one is not None)
    return f"{name}: {rest}" if name and rest else str(name or rest)


def _words(way: tuple[str, ...]) -> str:
    """Return the names that lead to a value as words: ``interior trim, casing width``, ``window, hinge``."""
    head, *rest = way
    if head == "trim" and rest:
        head, *rest = f"{rest[0]} trim", *rest[1:]
    first = FOLLOWING.get(head, head.replace("_", " "))
    return ", ".join(one for one in (first, " ".join(rest).replace("_", " ")) if one)
