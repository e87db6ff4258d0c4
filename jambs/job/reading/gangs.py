"""Ganged units as the job file lists them become units in their places, and the one frame they make together."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.gang import Boxed, Gang, Mull, MullEntry, MullKind, Unit, UnitEntry, Way, row_fault, row_ways
from jambs.job.models.openings import Assumed, OpeningEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.windows import FLANGE_DEPTHS, FrameFace, Sash, WindowType
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.look_up import Found, Shelf, find
from jambs.job.reading.tree import TextSource
from jambs.job.reading.unstated import ask_for, unstated, with_usual
from jambs.length import HALF_64TH, length_text
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundGang:
    """The units of an opening by rows, and the window they make together.

    ``rows``: each entry with its window; ``ways``: the keys of each row in the opening's entry.
    """

    ways: tuple[Way, ...]
    rows: tuple[tuple[tuple[UnitEntry, Found[WindowType]], ...], ...]
    whole: Found[WindowType]


def find_gang(
    entry: OpeningEntry, source: TextSource, shelf: Shelf[WindowType], mark: str, complaints: Complaints
) -> FoundGang | None:
    """Find the windows that the units name, and hold them against each other; nothing where they make no one frame."""
    entries = [one for one in (entry.units, entry.transom, *(entry.transoms or ())) if one is not None]
    ways = row_ways(has_transom=entry.transom is not None, transoms=len(entry.transoms or ()))
    way, sentence = row_fault(entries, ways, entry.mull, entry.transom_bar, complaints.units)
    if sentence:
        complaints.say(source, way if way[0] in source.value else (), sentence)
        return None
    rows = []
    for way, row in zip(ways, entries, strict=True):
        found = [find(shelf, source.within((*way, place)), mark, complaints) for place in range(len(row))]
        rows.append(tuple((one, window) for one, window in zip(row, found, strict=True) if window))
    if any(len(row) < len(all_of) for row, all_of in zip(rows, entries, strict=True)):
        return None
    if _differ(rows, ways, source, complaints, on_floor=entry.floor_below_frame is not None):
        return None
    return FoundGang(ways=ways, rows=tuple(rows), whole=_whole(rows))


Rows = Sequence[Sequence[tuple[UnitEntry, Found[WindowType]]]]


def _differ(rows: Rows, ways: Sequence[Way], source: TextSource, complaints: Complaints, *, on_floor: bool) -> bool:
    """Complain of units that cannot stand in one plane behind one jamb; say whether there are any."""
    lead, count = rows[0][0][1], len(complaints.faults)
    for way, row in zip(ways, rows, strict=True):
        for place, (unit, window) in enumerate(row):
            at = source.within((*way, place))
            _hold_depths(lead, window, at, complaints)
            _hold_frame(unit, window.entry, at, complaints)
            if way != ways[0] and window.entry.sash.is_door:
                complaints.say(at, ("window",), "is a door over other units; put doors into the lower row")
    for where, faces in _shared_faces(rows, on_floor=on_floor).items():
        if max(faces) - min(faces) > HALF_64TH:
            low, high = (length_text(one, units=complaints.units) for one in (min(faces), max(faces)))
            message = f"have faces of {low} to {high} along the {where}, where one straight board covers them; "
            complaints.say(source, ("units",), f"{message}choose windows with one face there")
    return len(complaints.faults) > count


def _hold_depths(lead: Found[WindowType], window: Found[WindowType], at: TextSource, complaints: Complaints) -> None:
    """One jamb goes round all: frames have one depth and one flange plane."""
    for key in FLANGE_DEPTHS:
        wanted, found = getattr(lead.entry, key), getattr(window.entry, key)
        if abs(wanted - found) > HALF_64TH:
            one, two = (length_text(length, units=complaints.units) for length in (found, wanted))
            message = (
                f"has a {key.replace('_', ' ')} of {one} and {lead.name} one of {two}; in one rough opening all "
                "frames stand in one plane, so choose windows with the same depths and flange"
            )
            complaints.say(at, ("window",), message)
    if window.entry.nailing_flange is not lead.entry.nailing_flange:
        complaints.say(
            at, ("window",), f"and {lead.name} are not both with a nailing flange, or both without; choose alike"
        )


def _hold_frame(unit: UnitEntry, window: WindowType, at: TextSource, complaints: Complaints) -> None:
    face, frame = window.frame_face, unit.frame
    if face.left + face.right >= frame.width or face.head + face.sill >= frame.height:
        complaints.say(at, ("frame",), "is no more than the frame faces of its window together; correct one of them")


def _shared_faces(rows: Rows, *, on_floor: bool) -> dict[str, list[float]]:
    """Return the faces of the frames along each board that several of them share [in]; no board lies on a floor."""
    shared = {
        "left jamb": [row[0][1].entry.frame_face.left for row in rows],
        "right jamb": [row[-1][1].entry.frame_face.right for row in rows],
        "head": [one.entry.frame_face.head for _, one in rows[-1]],
    }
    if not on_floor:
        shared["sill"] = [one.entry.frame_face.sill for _, one in rows[0]]
    for number, (lower, upper) in enumerate(pairwise(rows), 1):
        bar = "transom bar" if len(rows) == 2 else f"transom bar {number} from below"
        shared[f"{bar}, under it"] = [one.entry.frame_face.head for _, one in lower]
        shared[f"{bar}, over it"] = [one.entry.frame_face.sill for _, one in upper]
    return shared


def _whole(rows: Rows) -> Found[WindowType]:
    """Return the window that all units make together: the first one's depths, the faces of the outer edges."""
    first = rows[0][0][1]
    doors = [one.entry.sash for _, one in rows[0] if one.entry.sash.is_door]
    update = {
        "frame_face": _faces(rows, from_outside=False),
        "exterior_frame_face": _faces(rows, from_outside=True)
        if any(one.entry.exterior_frame_face for row in rows for _, one in row)
        else None,
        "sash": doors[0] if doors else first.entry.sash,
        "weight": None,
    }
    names = " / ".join(" + ".join(one.name for _, one in row) for row in rows)
    return replace(first, name=names, entry=first.entry.model_copy(update=update))


def _faces(rows: Rows, *, from_outside: bool) -> FrameFace:
    def face(found: Found[WindowType]) -> FrameFace:
        return found.entry.outside_face if from_outside else found.entry.frame_face

    left, right = face(rows[0][0][1]), face(rows[0][-1][1])
    return FrameFace(left=left.left, right=right.right, head=face(rows[-1][0][1]).head, sill=left.sill)


def hold_trim(
    interior: InteriorTrim, exterior: ExteriorTrim | None, source: TextSource, complaints: Complaints
) -> bool:
    """Ask the trims of ganged units for the board over their mulls; say whether one was missing."""
    if exterior is not None and exterior.returns and not exterior.returns.hem:
        message = (
            "gives returns of bent metal without hem, and the strips over the mulls of its units are hemmed at both "
            "edges; give returns a hem"
        )
        complaints.say(source, ("exterior_trim",), message)
        return True
    lacking = [
        key
        for key, trim in (("interior_trim", interior), ("exterior_trim", exterior))
        if trim is not None and trim.mull_casing is None and not (trim is exterior and exterior.returns)
    ]
    for key in lacking:
        message = "has no mull_casing and its units have mulls to cover; give it mull_casing: {thickness: …, stock: …}"
        complaints.say(source, (key,), message)
    return bool(lacking)


def hold_boxed(
    entry: OpeningEntry,
    interior: InteriorTrim,
    exterior: ExteriorTrim | None,
    source: TextSource,
    complaints: Complaints,
) -> bool:
    """Hold boxed mulls against the trim that they are to be boxed with; say whether they cannot be."""
    boxed = entry.mull.boxed if entry.mull else None
    if boxed is None:
        return False
    told = []
    if boxed is not Boxed.OUTSIDE:
        told += [
            f"is {boxed.value}, and the interior trim has {what}; {cure}"
            for is_there, what, cure in (
                (not interior.is_cased, "no casing to close the box on the wall", "write boxed: outside, or give it"),
                (interior.flare is not None, "a flare, and mull jambs stand square", "remove one of both"),
                (interior.stack is not None, "a stack, and mull jambs are one board deep", "remove one of both"),
                (interior.panels is not None, "panels, and mull jambs are plain boards", "remove one of both"),
            )
            if is_there
        ]
    if boxed is not Boxed.INSIDE and exterior is None:
        told.append(f"is {boxed.value}, and there is no exterior trim; write boxed: inside")
    if boxed is not Boxed.INSIDE and exterior is not None and exterior.returns:
        told.append(
            f"is {boxed.value}, and the exterior trim lines the opening with bent metal, of which no mull jambs are "
            "made; write boxed: inside"
        )
    if boxed is not Boxed.INSIDE and exterior is not None and exterior.cladding_returns:
        told.append(
            f"is {boxed.value}, and the exterior trim lines the opening with its cladding, of which no mull jambs are "
            "made; write boxed: inside"
        )
    for sentence in told:
        complaints.say(source, ("mull", "boxed"), sentence)
    return bool(told)


def ask_units(
    found: FoundGang, entry: OpeningEntry, rule: PositionRule, source: TextSource, complaints: Complaints
) -> bool:
    """Ask for the sizes of a sash that a result rests on; say whether there was anything to ask.

    Of an escape opening one unit is enough: the one that opens widest.
    """
    if entry.escape and all(one.entry.sash is Sash.FIXED for row in found.rows for _, one in row):
        message = "is yes and all its units are fixed: nobody gets out; give it a unit that opens, or write no"
        complaints.say(source, ("escape",), message)
        return True
    asked = [
        ask_for(one.entry, entry, rule, source.within((*way, place)), complaints)
        for way, row in zip(found.ways, found.rows, strict=True)
        for place, (_, one) in enumerate(row)
    ]
    return any(asked)


def placed_gang(found: FoundGang, entry: OpeningEntry, complaints: Complaints) -> tuple[Gang, tuple[Assumed, ...]]:
    """Put every unit in its place, its window filled up with usual sizes; say what was assumed."""
    units: list[Unit] = []
    mulls: list[Mull] = []
    assumed: list[Assumed] = []
    y, last = 0.0, len(found.rows) - 1
    for row, entries in enumerate(found.rows):
        in_row: list[Unit] = []
        x = 0.0
        for place, (unit, window) in enumerate(entries):
            whole, usual = with_usual(window.entry, complaints.units, is_escape=entry.escape)
            assumed += usual
            sides = _at_mull(place, len(entries), row, last)
            filled, lacking = replace(window, entry=whole), unstated(window.entry)
            in_row.append(_unit(len(units) + place + 1, row, x, y, unit, filled, sides, lacking))
            x += unit.frame.width + (entry.mull.between if entry.mull else 0.0)
        mulls += _mulls(in_row, entry.mull, len(mulls))
        units += in_row
        y += entries[0][0].frame.height + (entry.transom_bar.between if entry.transom_bar else 0.0)
    if entry.transom_bar:
        mulls += [_bar(units, row, entry.transom_bar) for row in range(last)]
    return Gang(units=tuple(units), mulls=tuple(mulls)), tuple(dict.fromkeys(assumed))


def _at_mull(place: int, count: int, row: int, last: int) -> tuple[Side, ...]:
    sides = {Side.LEFT: place > 0, Side.RIGHT: place < count - 1, Side.HEAD: row < last, Side.SILL: row > 0}
    return tuple(side for side, is_mull in sides.items() if is_mull)


def _unit(
    number: int,
    row: int,
    x: float,
    y: float,
    entry: UnitEntry,
    window: Found[WindowType],
    at_mull: tuple[Side, ...],
    lacking: tuple[str, ...],
) -> Unit:
    return Unit(
        number=number,
        row=row,
        x=x,
        y=y,
        window_name=window.name,
        window=window.entry,
        frame=entry.frame,
        hinge=entry.hinge,
        safety_glass=entry.safety_glass,
        weight=entry.weight,
        at_mull=at_mull,
        unstated=lacking,
    )


def _mulls(units: Sequence[Unit], entry: MullEntry | None, before: int) -> Iterable[Mull]:
    for place, (left, right) in enumerate(pairwise(units)):
        yield Mull(
            kind=MullKind.MULL,
            member=before + place + 1,
            row=left.row,
            low=left.x + left.frame.width,
            high=right.x,
            post=entry.post if entry else None,
            before=(left.number,),
            after=(right.number,),
            boxed_inside=entry is not None and entry.boxed in (Boxed.INSIDE, Boxed.BOTH),
            boxed_outside=entry is not None and entry.boxed in (Boxed.OUTSIDE, Boxed.BOTH),
        )


def _bar(units: Sequence[Unit], below: int, entry: MullEntry) -> Mull:
    """Return the bar over a row; ``below``: the row under it, from 0."""
    lower, upper = [[unit for unit in units if unit.row == row] for row in (below, below + 1)]
    return Mull(
        kind=MullKind.TRANSOM_BAR,
        member=below + 1,
        row=below,
        low=max(unit.y + unit.frame.height for unit in lower),
        high=min(unit.y for unit in upper),
        post=entry.post,
        before=tuple(unit.number for unit in lower),
        after=tuple(unit.number for unit in upper),
    )
