"""What changed between two issues of one opening: figure by figure, why, and whether a cut part is still good.

Works on the records that are written to ``parts.json``: what is compared is what was printed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from jambs.issued.cut_shapes import is_shaped, same_shape, widths
from jambs.issued.opening_figures import as_of_any_mark, following_rows, opening_rows, opening_whys, other_why
from jambs.issued.other_grid import as_rounded_now
from jambs.issued.other_units import OTHER_UNITS, told_alike
from jambs.issued.reasons import (
    GridChanged,
    IssueReason,
    NeighborsChanged,
    NeighborsRenamed,
    OtherBoards,
    RenamedFrom,
    ShopChanged,
)
from jambs.issued.verdict_reasons import CutIt, CutPartVerdict, NoLongerNeeded, Recut, RecutWhy, StillGood, Trim
from jambs.parts.board.kinds import told_name, told_position

Record = Mapping[str, Any]
BOARD = "board"
"""The board at hand that a part comes out of, as its record calls it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One changed figure: mark of the part (empty for one of the opening), its name, old and new as printed.

    ``verdict``: what to do with a part that is cut already; None for a figure of the opening.
    """

    mark: str
    what: str
    old: str
    new: str
    verdict: CutPartVerdict | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningChanges:
    """All changes of one opening since its last issue, and why; ``was``: its mark then."""

    mark: str
    why: tuple[IssueReason, ...]
    changes: tuple[Change, ...]
    was: str


Grids = tuple[Record, Record]
SAME_GRID: Grids = ({}, {})
Both = tuple[Record, Record]
"""Two records of one opening: as it was, as it is."""


def compare_openings(
    old: Record, new: Record, *, tolerance: float, neighbors: Iterable[Both] = (), grids: Grids = SAME_GRID
) -> OpeningChanges:
    """Compare two records of one opening; ``tolerance``: a cut part this near is still good [units of the job].

    ``neighbors``: of the openings that it is trimmed with as one; where one of them changed, that may be why.
    ``grids``: of the shop, until now and now, as they are printed; empty where one is not known.
    """
    old, new = as_of_any_mark(old), as_of_any_mark(new)
    old = told_alike(old, new, tolerance) if OTHER_UNITS in old else old
    changes = [*_figures(opening_rows(old, new)), *_part_changes(old, new, tolerance)]
    why = _whys(old, new, grids) or (_other_why(old, new, neighbors),)
    return OpeningChanges(
        mark=new["mark"], why=why, changes=tuple(changes or _figures(following_rows(old, new))), was=old["mark"]
    )


def _whys(old: Record, new: Record, grids: Grids) -> tuple[IssueReason, ...]:
    """Return what was decided; on another grid what rounding did is none of that."""
    then, now = grids
    if not (then and now) or then["text"] == now["text"] or OTHER_UNITS in old:
        return tuple(opening_whys(old, new))
    grid_changed = GridChanged(was=then["text"], now=now["text"])
    return (*opening_whys(as_rounded_now(old, new, then, now), new), grid_changed)


def _other_why(old: Record, new: Record, neighbors: Iterable[Both]) -> IssueReason:
    """Find why where nothing of the opening itself was decided: by its neighbors, the shop, or what its sheets say."""
    found, neighbors = other_why(old, new), [*neighbors]
    theirs = [why for one in neighbors for why in opening_whys(*map(as_of_any_mark, one))]
    if isinstance(found, OtherBoards) or not theirs:
        return found
    if not all(isinstance(why, RenamedFrom) for why in theirs):
        return NeighborsChanged()
    marks = tuple((was["mark"], now["mark"]) for was, now in neighbors if was["mark"] != now["mark"])
    return found if isinstance(found, ShopChanged) else NeighborsRenamed(marks=marks)


def _figures(rows: Iterable[tuple[str, str, str]]) -> list[Change]:
    return [Change(mark="", what=what, old=was, new=now) for what, was, now in rows]


def paired(old: Record, new: Record) -> list[tuple[Record | None, Record | None]]:
    """Return the parts of two records of an opening, each with what it was: those of the new one first, then those that
    are gone.

    A part is known by what it is and where, whatever its number; one whose place is told by other words, as of a mull
    beside which there is a second one now, by its number.
    """
    before, after = _by_place(old), _by_place(new)
    found = {place: before.pop(place, None) for place in after}
    for place in [place for place, was in found.items() if was is None]:
        same = next((one for one, was in before.items() if _is_told_otherwise(was, after[place])), None)
        if same:
            found[place] = before.pop(same)
    return [*((was, after[place]) for place, was in found.items()), *((was, None) for was in before.values())]


def _is_told_otherwise(was: Record, now: Record) -> bool:
    """Say whether two parts have one number, and the words of their places differ by an addition alone."""
    is_one_part = all(was[key] == now[key] for key in ("where", "name")) and _number(was) == _number(now)
    one, other = sorted((was["position"], now["position"]), key=len)
    return is_one_part and bool(other.startswith(one))


def _by_place(record: Record) -> dict[tuple[str, str, str, int], Record]:
    seen: Counter[tuple[str, str, str]] = Counter()
    parts = {}
    for part in _with_members(record["parts"]):
        place = (part["where"], part["name"], part["position"])
        parts[(*place, seen[place])] = part
        seen[place] += 1
    return parts


def _with_members(parts: Iterable[Record]) -> Iterator[Record]:
    """Yield parts, each jamb that is a frame with panels followed by its stiles, rails and panels."""
    for part in parts:
        yield part
        yield from part.get("members", ())


def _part_changes(old: Record, new: Record, tolerance: float) -> Iterator[Change]:
    for was, now in paired(old, new):
        if was and now:
            yield from _changed_part(was, now, tolerance)
        elif now:
            yield Change(mark=now["mark"], what=named(now), old="none", new=size_words(now), verdict=CutIt())
        elif was:
            yield Change(mark=was["mark"], what=named(was), old=size_words(was), new="none", verdict=NoLongerNeeded())


def named(part: Record) -> str:
    """Return a part in words, with its place where the name does not say it."""
    name = told_name(part["name"], part["where"])
    return ", ".join(filter(None, (name, told_position(part["name"], part["position"]))))


def size_words(part: Record) -> str:
    """Return thickness × width × length as printed."""
    return " × ".join(part[name]["text"] for name in ("thickness", "width", "length"))


def _changed_part(old: Record, new: Record, tolerance: float) -> Iterator[Change]:
    rows = [*_size_rows(old, new), *_work_rows(old, new)]
    if all(what == BOARD for what, _, _ in rows):
        rows = []  # cut from another board it is the same part: there is nothing to do
    if _number(old) != _number(new):
        yield Change(mark=new["mark"], what=f"{named(new)}, its mark", old=old["mark"], new=new["mark"])
    if not rows:
        return
    told = verdict(old, new, tolerance=tolerance)
    for what, was, now in rows:
        yield Change(mark=new["mark"], what=f"{named(new)}, {what}", old=was, new=now, verdict=told)


def _number(part: Record) -> str:
    """Return the number of a part, which it keeps when its opening is renamed."""
    return str(part["mark"]).rpartition("-")[2]


def _size_rows(old: Record, new: Record) -> Iterator[tuple[str, str, str]]:
    for name in ("stock", BOARD):
        if old[name] != new[name]:
            yield name, old[name], new[name]
    for name in ("thickness", "width", "length"):
        if old[name]["text"] != new[name]["text"]:
            yield name, old[name]["text"], new[name]["text"]
    was, now = (_taper_words(part) for part in (old, new))
    if was != now:
        yield "taper", was, now


def _taper_words(part: Record) -> str:
    taper = part["taper"]
    if taper is None:
        return "parallel"
    return f"{taper['start_width']['text']} {taper['start']}, {taper['finish_width']['text']} {taper['finish']}"


def _work_rows(old: Record, new: Record) -> Iterator[tuple[str, str, str]]:
    if old["ends"] != new["ends"]:
        yield "ends", old["ends"], new["ends"]
    was, now = ("; ".join(part["work"]) or "none" for part in (old, new))
    if was != now and old["taper"] == new["taper"]:
        yield "work", was, now


def verdict(old: Record, new: Record, *, tolerance: float) -> Recut | StillGood:
    """Find of a part cut by the old figures whether it is *still good* for the new ones, or has to be *recut*.

    Still good: every measure within ``tolerance`` [units of the job], or larger where only ripping and crosscutting
    make it smaller. Bent metal is bent already. What another crew makes now, piece by piece or not, is another thing.
    """
    if old["stock"] != new["stock"]:
        return Recut(why=RecutWhy.STOCK)
    thickness = new["thickness"]["value"] - old["thickness"]["value"]
    if abs(thickness) > tolerance:
        return Recut(why=RecutWhy.THICKNESS)
    is_of_one_crew = old.get("crew") == new.get("crew")
    if not (is_of_one_crew and same_shape(old, new, tolerance) and _same_frame(old, new, tolerance)):
        return Recut(why=RecutWhy.SHAPE)
    if "courses" in old and "courses" in new:
        return _trimmed_pieces(old, new, tolerance)
    trimmed = _trimmed(old, new, tolerance)
    if _is_bent(new) and (trimmed != StillGood() or not _bent_alike(old, new, tolerance)):
        return Recut(why=RecutWhy.SHAPE if isinstance(trimmed, StillGood) else trimmed.why)
    return trimmed


def _bent_alike(old: Record, new: Record, tolerance: float) -> bool:
    was, now = old.get("bends", ()), new.get("bends", ())
    if [bend["turn"] for bend in was] != [bend["turn"] for bend in now]:
        return False
    lines = zip(was, now, strict=True)
    return all(abs(one["at"]["value"] - other["at"]["value"]) <= tolerance for one, other in lines)


def _is_bent(part: Record) -> bool:
    """Say whether a part is a blank that the carpenter bends: its bends lie where they were made."""
    return not part["is_wood"] and "crew" not in part


def _same_frame(old: Record, new: Record, tolerance: float) -> bool:
    """Say whether two jambs are one board both, or frames of the same members: no rail is changed in a glued frame."""
    was, now = old.get("members", ()), new.get("members", ())
    if len(was) != len(now):
        return False
    pairs = zip(was, now, strict=True)
    return all(verdict(one, other, tolerance=tolerance) == StillGood() for one, other in pairs)


def _trimmed_pieces(old: Record, new: Record, tolerance: float) -> Recut | StillGood:
    """Find the same of pieces of cladding in courses: as many as pass, out of their boards, as long as that is wide."""
    was, now = (sorted((one["value"] for one in part["courses"]), reverse=True) for part in (old, new))
    longer = new["width"]["value"] - old["width"]["value"]
    if len(was) < len(now) or any(one < other - tolerance for one, other in zip(was, now, strict=False)):
        return Recut(why=RecutWhy.PIECES)
    if longer > tolerance:
        return Recut(why=RecutWhy.SHORT)
    is_wider = any(one > other + tolerance for one, other in zip(was, now, strict=False))
    is_larger = {Trim.RIP: is_wider, Trim.CROSSCUT: longer < -tolerance}
    return StillGood(trims=tuple(trim for trim, needed in is_larger.items() if needed))


def _trimmed(old: Record, new: Record, tolerance: float) -> Recut | StillGood:
    wider = [now - was for was, now in zip(widths(old), widths(new), strict=True)]
    length = new["length"]["value"] - old["length"]["value"]
    if max(wider) > tolerance:
        return Recut(why=RecutWhy.NARROW)
    if length > tolerance:
        return Recut(why=RecutWhy.SHORT)
    if length < -tolerance and is_shaped(old):
        return Recut(why=RecutWhy.ENDS)
    is_larger = {Trim.RIP: min(wider) < -tolerance, Trim.CROSSCUT: length < -tolerance}
    return StillGood(trims=tuple(trim for trim, needed in is_larger.items() if needed))
