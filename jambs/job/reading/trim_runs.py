"""Openings that say with which neighbor they are trimmed become runs, left to right; what keeps them apart is told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.gang import SAME_LINE
from jambs.job.models.openings import Opening
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.trim_run import TrimRun
from jambs.job.models.windows import FLANGE_DEPTHS, WindowType
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import advice
from jambs.job.reading.tree import TextSource
from jambs.length import HALF_64TH, Units, length_text
from jambs.sides import Side

KEY = "trim_with"


def trimmed_as_one(listed: Iterable[tuple[TextSource, Opening]], complaints: Complaints) -> tuple[Opening, ...]:
    """Return the openings with the runs that they stand in; what leads nowhere or does not go together is told."""
    pairs = list(listed)
    by_mark = {one.mark: one for _, one in pairs}
    told = [(source, one) for source, one in pairs if one.trim_with]
    if any(one.trim_with.right_of not in by_mark for _, one in told if one.trim_with) and complaints.faults:
        return tuple(by_mark.values())  # the one that is named may be one of those that are at fault themselves
    before = len(complaints.faults)
    for source, opening in told:
        _hold_named(source, opening, by_mark, complaints)
    _hold_one_each(told, complaints)
    if len(complaints.faults) > before:
        return tuple(by_mark.values())
    runs = _runs(by_mark)
    for source, opening in told:
        if opening.mark not in runs:
            complaints.say(source, (KEY,), f"{opening.mark} is at the right of itself, by way of others; {_LEFTMOST}")
            continue
        assert opening.trim_with is not None
        _hold_alike(source, opening, by_mark[opening.trim_with.right_of], complaints)
    for source, opening in pairs:
        if opening.mark in runs:
            _hold_trims(source, opening, complaints)
    return tuple(replace(one, run=runs.get(one.mark)) for one in by_mark.values())


_LEFTMOST = "the one at the left, as seen from inside, names none: take trim_with out there"


def _hold_named(source: TextSource, opening: Opening, by_mark: Mapping[str, Opening], complaints: Complaints) -> None:
    assert opening.trim_with is not None
    named = opening.trim_with.right_of
    if named == opening.mark:
        complaints.say(source, (KEY, "right_of"), f"{named} is the opening itself; name the one at its left")
    elif named not in by_mark:
        near = advice(named, [mark for mark in by_mark if mark != opening.mark])
        complaints.say(source, (KEY, "right_of"), f"no opening has the mark {named!r}; {near}")


def _hold_one_each(told: Sequence[tuple[TextSource, Opening]], complaints: Complaints) -> None:
    """Let no two openings stand at the right of one."""
    named = Counter(one.trim_with.right_of for _, one in told if one.trim_with)
    for source, opening in told:
        if opening.trim_with and named[opening.trim_with.right_of] > 1:
            left = opening.trim_with.right_of
            others = [one.mark for _, one in told if one.trim_with and one.trim_with.right_of == left]
            message = f"{' and '.join(others)} are both at the right of {left}; let each name the one beside it"
            complaints.say(source, (KEY, "right_of"), message)
            return


def _runs(by_mark: Mapping[str, Opening]) -> dict[str, TrimRun]:
    """Return the run of every opening that stands in one, followed from its leftmost; a ring has none."""
    after = {one.trim_with.right_of: one for one in by_mark.values() if one.trim_with}
    found: dict[str, TrimRun] = {}
    for first in by_mark.values():
        if first.trim_with or first.mark not in after:
            continue
        row = [first]
        while row[-1].mark in after:
            row.append(after[row[-1].mark])
        walls = tuple(one.trim_with.wall for one in row if one.trim_with)
        run = TrimRun(marks=tuple(one.mark for one in row), walls=walls)
        found |= dict.fromkeys(run.marks, run)
    return found


def _hold_alike(source: TextSource, opening: Opening, left: Opening, complaints: Complaints) -> None:
    """Hold two neighbors against each other: what goes past both lies in one line and one plane."""
    for sentence in _differences(opening, left, complaints.units):
        complaints.say(source, (KEY,), sentence)


def _differences(one: Opening, left: Opening, units: Units) -> Iterator[str]:
    def both(own: float, its: float) -> str:
        return f"{length_text(own, units=units)} and that of {left.mark} {length_text(its, units=units)}"

    if one.wall.name != left.wall.name:
        yield f"{one.mark} is in wall {one.wall.name} and {left.mark} in {left.wall.name}; one wall lies behind boards"
        return
    for key, own, its in (
        ("interior_trim", one.interior_name, left.interior_name),
        ("exterior_trim", one.exterior_name, left.exterior_name),
    ):
        if own != its:
            yield f"its {key} is {own or 'none'} and that of {left.mark} {its or 'none'}; give both the same"
    if one.position != left.position:
        yield f"its position is another than that of {left.mark}, and one stool lies under both; give it to the wall"
    if abs(one.frame.height - left.frame.height) > SAME_LINE:
        yield f"its frame is {both(one.frame.height, left.frame.height)} high; one head lies over both: make them alike"
    if one.floor_below_frame != left.floor_below_frame:
        yield "one stands on the floor and the other does not, or not as high; give both the same floor_below_frame"
    elif (one.sill_height is None) is not (left.sill_height is None):
        yield f"only one of both says how high it stands; write sill_with: {left.mark} here, or no height at all"
    elif abs((one.sill_height or 0.0) - (left.sill_height or 0.0)) > HALF_64TH:
        heights = both(one.sill_height or 0.0, left.sill_height or 0.0)
        yield f"its sill height is {heights}; write sill_with: {left.mark} in its place"
    yield from _other_windows(one.window, left.window, left.mark, units)


def _other_windows(own: WindowType, its: WindowType, left: str, units: Units) -> Iterator[str]:
    def both(one: float, other: float) -> str:
        return f"{length_text(one, units=units)} and that of {left} {length_text(other, units=units)}"

    cure = "choose windows with the same depths and faces"
    for key in FLANGE_DEPTHS:
        if abs(getattr(own, key) - getattr(its, key)) > HALF_64TH:
            yield f"its window's {key} is {both(getattr(own, key), getattr(its, key))}; {cure}"
    for key in ("frame_face", "outside_face"):
        for side in (Side.HEAD, Side.SILL):
            one, other = (getattr(window, key).at(side) for window in (own, its))
            if abs(one - other) > HALF_64TH:
                yield f"the {key.replace('_', ' ')} of its window at the {side.value} is {both(one, other)}; {cure}"


def _hold_trims(source: TextSource, opening: Opening, complaints: Complaints) -> None:
    """Refuse an opening and a trim that no board can lie over with others."""
    if opening.shape is not None or opening.gang is not None:
        what = "has a shape" if opening.shape is not None else "lists units"
        message = f"{what}, and what is trimmed as one with a neighbor is a plain rectangle; take trim_with out"
        complaints.say(source, (KEY,) if opening.trim_with else (), f"{opening.mark} {message}")
    for key, cure in _lacking(opening.interior):
        message = f"its interior trim {key}, and {opening.mark} is trimmed as one with a neighbor; {cure}"
        complaints.say(source, ("interior_trim",), message)
    for key, cure in _lacking_outside(opening.exterior) if opening.exterior else ():
        message = f"its exterior trim {key}, and {opening.mark} is trimmed as one with a neighbor; {cure}"
        complaints.say(source, ("exterior_trim",), message)


def _lacking_outside(trim: ExteriorTrim) -> Iterator[tuple[str, str]]:
    if trim.returns is not None:
        yield "has returns of bent metal", _METAL
    elif trim.cladding_returns is not None:
        yield "has cladding_returns", _CLAD
    elif trim.mull_casing is None:
        yield "has no mull_casing", _MULL_CASING


_METAL = (
    "sheet is turned at the corners of its own opening and has its legs on the wall between, so that nothing lies over "
    "both: take trim_with out and line each by itself, heads in line by sill_with, gang them under units in one rough "
    "opening, where strips of metal cover the mulls, or take returns out"
)
_CLAD = (
    "its cladding turns into the reveal at every side of its own opening, so that the wall between is clad and no "
    "board lies over both: take trim_with out and line each by itself, heads in line by sill_with, or write a jamb "
    "instead"
)
_MULL_CASING = "give it mull_casing: {thickness: …, stock: …} for the board on the wall between"


def _lacking(trim: InteriorTrim) -> Iterator[tuple[str, str]]:
    if not trim.is_cased:
        yield "has no casing", "give it casing, or trim each by itself"
    elif trim.mull_casing is None:
        yield "has no mull_casing", _MULL_CASING
    if trim.flare is not None:
        yield "has a flare", "trim flared openings each by itself, or take flare out"
    if trim.stack is not None:
        yield "has a stack", "trim stacked jambs each by itself, or take stack out"
    if trim.built_up is not None:
        yield "is built up", "trim built-up casings each by itself, or take built_up out"
