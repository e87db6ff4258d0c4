"""What the first page shows: every opening as the summary prints it, where it stands on its elevation, its state."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from jambs.app.basis import basis_of
from jambs.app.build import Asked
from jambs.app.issue_record import issue_record
from jambs.app.paper_names import NAMING_BOARDS
from jambs.app.stale_words import stale_line
from jambs.app.table import summary_text
from jambs.app.writing import suppress_record_faults
from jambs.courses.elevation import SIDE_BY_SIDE, Elevation, elevation_of
from jambs.findings import Severity
from jambs.issued.basis import Stale, stale_papers
from jambs.issued.record import Record as PaperRecord
from jambs.job.models.openings import Job, Opening
from jambs.length import Units
from jambs.outside.register import Registered
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.on_elevation import frame_over_floor
from jambs.screen.desk import Desk, House
from jambs.screen.spoken_keys import spoken, spoken_records
from jambs.screen.unmade_data import STATE, TO_SETTLE, unmade_on, unmade_openings, unmade_rows, unplanned_rows
from jambs.screen.window_seen import Polygon, window_seen
from jambs.sheets.house import summary_data
from jambs.sheets.told import told
from jambs.values import Record

AROUND = 18.0
"""Of the drawing around an elevation [in]."""
LEAST_HEIGHT = 96.0
"""A wall without an eave is drawn so high over its floor [in]."""
ROOM_FOR_WORD = 36.0
"""Over a frame as high as this its state stands under its mark; at a lower one under the frame [in]."""
UNDER_MARK, UNDER_FRAME = 11.0, 9.0
UNITS_WORDS = {Units.INCH: "inches", Units.MM: "millimeters"}
STALE = "stale"
"""Kind of a state, and its word on an elevation."""
WORDS = {Severity.STOP: TO_SETTLE, Severity.CHECK: "to check"}
"""States of an opening that somebody has to see to."""


def house_data(desk: Desk) -> Record:
    """Return what the first page shows of the house."""
    house = desk.house()
    if house.asked is None:
        return {
            "name": desk.name,
            "is_new": not desk.draft.saved,
            "other_units": (),
            "wrong": house.wrong if house.faults else [*map(spoken, house.wrong)],
            "rows": [],
            "unmade": [],
            "unplanned": [],
            "elevations": [],
            "count": "",
            "told": [],
            "stale": [],
        }
    asked = house.asked
    stale = stale_of(asked)
    states = {kit.mark: state_words(kit, asked.register.of_opening(kit.mark), stale) for kit in asked.kits}
    states |= {one.mark: [STATE] for one in unmade_openings(house)}
    return {
        "name": asked.job.name,
        "is_new": not desk.draft.saved,
        "other_units": other_units(asked.job) if desk.is_untouched else (),
        "wrong": (),
        "rows": rows_of(house, asked, states),
        "unmade": unmade_rows(house),
        "unplanned": unplanned_rows(house),
        "elevations": elevation_records(house, asked, states),
        "count": summary_text(asked.kits, asked.register, asked.job, dict(asked.record)).splitlines()[-1],
        "told": spoken_records(told(asked.register.of_the_rest)),
        "stale": [stale_line(one, job_words=str(desk.file.parent)).removeprefix("stale").strip() for one in stale],
    }


def other_units(job: Job) -> list[Record]:
    """Return what else a new job can be in: what it is called, and in a sentence."""
    return [{"units": one.value, "words": UNITS_WORDS[one]} for one in Units if one is not job.units]


def rows_of(house: House, asked: Asked, states: Mapping[str, list[Record]]) -> list[Record]:
    """Return the list of all openings, in the order of the job, also of those that cannot be made."""
    summary = summary_data(asked.kits, asked.register, asked.job, dict(asked.record))
    rows = {row["mark"]: row for row in (*summary["rows"], *unmade_rows(house))}
    return [{**rows[one.mark], "states": states[one.mark]} for one in asked.job.openings]


def stale_of(asked: Asked) -> list[Stale]:
    """Return the papers on record that hold no longer, as `jambs check` names them; none while some cannot be built."""
    if asked.marked.unmade or asked.unplanned:
        return []
    with suppress_record_faults():
        record = PaperRecord.open(asked.target)
        if record.latest:
            basis = basis_of(
                asked.kits, asked.job, issue_record(asked.kits, asked.house.installing, asked.job, dict(asked.record))
            )
            return list(stale_papers(record, basis, naming_boards=NAMING_BOARDS))
    return []


def state_words(kit: CutKit, found: Sequence[Registered], stale: Iterable[Stale]) -> list[Record]:
    """Return the states of an opening, each as a kind for its color and a word: how it was got, what is to see to."""
    kind = "measured" if kit.is_measured else "planned"
    states = [{"kind": kind, "word": kind}]
    worst = next((one.severity for one in found if one.severity in WORDS), None)
    if worst is not None:
        states.append({"kind": worst.value, "word": WORDS[worst]})
    if any(_is_of(kit.mark, one) for one in stale):
        states.append({"kind": STALE, "word": "stale sheets"})
    return states


def _is_of(mark: str, stale: Stale) -> bool:
    return any(one == mark or (stale.is_of_parts and one.rpartition("-")[0] == mark) for one in stale.marks)


# ---- elevations


def elevation_records(house: House, asked: Asked, states: Mapping[str, list[Record]]) -> list[Record]:
    """Return the sides of the house as seen from outside, openings where they stand; then those that are on none."""
    openings = {one.mark: one for one in asked.job.openings}
    found, seen = [], set[str]()
    for name, entry in asked.job.outside.elevations.items():
        elevation, unmade = elevation_of(name, entry, asked.kits), unmade_on(name, house)
        if elevation.openings:
            drawn = _elevation(elevation, openings, states)
            rest = [_drawn(one, left, drawn["floor"] - low - one.frame.height, states, trim=None)
                    for one, left, low in unmade]  # fmt: skip
            found.append({**drawn, "openings": [*drawn["openings"], *rest]})
            seen |= {one["mark"] for one in found[-1]["openings"]}
    others = sorted((one for one in asked.job.openings if one.mark not in seen), key=_wall)
    return found + [_side_by_side(wall, list(some), states) for wall, some in groupby(others, key=_wall)]


def _wall(opening: Opening) -> str:
    return opening.wall.name


def _elevation(elevation: Elevation, openings: Mapping[str, Opening], states: Mapping[str, list[Record]]) -> Record:
    right = elevation.width or max(one.trim[2] for one in elevation.openings) + SIDE_BY_SIDE
    top, bottom = elevation.eave, min(elevation.start_line, 0.0)
    placed = all(one.is_placed for one in elevation.openings)
    return {
        "name": f"Elevation {elevation.name}",
        "note": "" if placed else "where they stand along the wall is not said for all",
        "box": [-AROUND, -AROUND, right + 2 * AROUND, top - bottom + 2 * AROUND],
        "wall": [0.0, 0.0, right, top - elevation.start_line],
        "floor": top,
        "openings": [
            _drawn(openings[one.mark], one.frame[0], top - one.frame[3], states, trim=_down(one.trim, top))
            for one in elevation.openings
        ],
    }


def _down(box: Sequence[float], top: float) -> list[float]:
    """Turn left, bottom, right, top into left, top, width, height on a screen, where y runs down."""
    left, bottom, right, high = box
    return [left, top - high, right - left, high - bottom]


def _side_by_side(wall: str, openings: Sequence[Opening], states: Mapping[str, list[Record]]) -> Record:
    """Draw openings that are on no elevation side by side, at their heights where they are said."""
    heights = [frame_over_floor(one) or 0.0 for one in openings]
    tops = [low + one.frame.height for low, one in zip(heights, openings, strict=True)]
    top, across = max(LEAST_HEIGHT, *(one + AROUND for one in tops)), SIDE_BY_SIDE
    drawn = []
    for high, one in zip(tops, openings, strict=True):
        drawn.append(_drawn(one, across, top - high, states, trim=None))
        across += one.frame.width + SIDE_BY_SIDE
    return {
        "name": f"Wall {wall}",
        "note": "side by side: the job does not say where they stand",
        "box": [-AROUND, -AROUND, across + 2 * AROUND, top + 2 * AROUND],
        "wall": [0.0, 0.0, across, top],
        "floor": top,
        "openings": drawn,
    }


def _tag(state: Record) -> str:
    """Return the word of a state where there is little room."""
    return STALE if state["kind"] == STALE else str(state["word"])


def _drawn(
    opening: Opening, left: float, top: float, states: Mapping[str, list[Record]], *, trim: list[float] | None
) -> Record:
    """Return one opening seen from outside: frame, glass, how it opens, as its elevation has it; y runs down."""
    height, window = opening.frame.height, window_seen(opening, from_outside=True)

    def points(polygon: Polygon) -> str:
        return " ".join(f"{left + x:.2f},{top + height - y:.2f}" for x, y in polygon)

    return {
        "mark": opening.mark,
        "room": opening.room,
        "states": states[opening.mark],
        "tag": _tag(states[opening.mark][-1]),
        "trim": None if opening.shape else trim,  # a box round a shape is not its trim
        "frame": points(window.outline),
        "glass": [points(one) for one in window.panes],
        "opens": [points(one) for one in window.opens],
        "middle": [left + opening.frame.width / 2, top + height / 2],
        "word_at": top + (height / 2 + UNDER_MARK if height >= ROOM_FOR_WORD else height + UNDER_FRAME),
    }
