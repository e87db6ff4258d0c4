"""Read a job: the file, its schedule, every name looked up; or everything that is wrong with it in one go."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from jambs.job.key_words import missing
from jambs.job.measured.measures import with_table
from jambs.job.models.assumed import assumed_limits
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.fields import Model
from jambs.job.models.job_file import JobFile
from jambs.job.models.layers import WallEntry
from jambs.job.models.on_hand import OnHand
from jambs.job.models.openings import Job, JobEntry, Opening
from jambs.job.models.outside import OutsideEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.shop import Board, Limits, Shop, in_units
from jambs.job.models.tables import TableRead
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.windows import WindowType
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import Fault, JobFaults, advice, nearest
from jambs.job.reading.heights import in_line
from jambs.job.reading.likes import with_likes
from jambs.job.reading.look_up import Shelf, check_names
from jambs.job.reading.look_up_on_hand import look_up_on_hand
from jambs.job.reading.look_up_opening import Shelves, look_up_opening
from jambs.job.reading.look_up_outside import look_up_outside, name_elevations
from jambs.job.reading.marks import Repeatable, each_mark
from jambs.job.reading.profile_files import with_profiles
from jambs.job.reading.rows import TABLES
from jambs.job.reading.schedule import ScheduleRow, read_schedule
from jambs.job.reading.sentences import unknown_key
from jambs.job.reading.tree import TextSource, TreePiece, read_tree
from jambs.job.reading.trim_runs import trimmed_as_one
from jambs.job.reading.walls import look_up_board, look_up_wall
from jambs.length import Units


def read_job(path: str | Path, *, draft: str | None = None, drafts: Mapping[str, bytes] | None = None) -> Job:
    """Read and check a whole job: a YAML file, or a folder that holds one.

    ``draft``: a text that is read in the place of what the file holds; ``drafts``: the same for its schedule and
    its table of measures in CSV, by name. All other tables are those beside the file.

    Raises:
        JobFaults: the job has faults; all of them are told.
    """
    file = job_file(path)
    top, faults = read_tree(file, draft)
    complaints = Complaints(units=_units(top), first_file=file.name, faults=faults)
    profiles = with_profiles(top, file.parent, complaints)
    top = profiles.top
    entry = _top(top, complaints)
    shop = _section(Shop, "shop", top, complaints)
    limits = in_units(_section(Limits, "limits", top, complaints) or Limits(), complaints.units)
    boards = _boards(shop, top, complaints)
    on_hand = _on_hand(shop, top, file.parent, complaints)
    shelves = _shelves(top, shop, complaints)
    openings = _openings(file, top, shelves, complaints, drafts or {})
    openings = _measured(file, top, openings, complaints, drafts or {})
    outside = _outside(top, openings, boards, complaints)
    complaints.settle()
    assert entry and shop
    return Job(
        name=entry.job,
        units=entry.units,
        shop=_with_paper(shop, entry.units),
        limits=limits,
        boards=boards,
        openings=openings,
        date=entry.date,
        address=entry.address or (),
        assumed=assumed_limits(limits, openings, units=entry.units),
        site=entry.site,
        year_built=entry.year_built,
        outside=outside,
        on_hand=on_hand,
        tables=tuple(complaints.tables),
        sources=(file, *_tables(file, top, shop), *profiles.files),
    )


def _tables(file: Path, top: TreePiece, shop: Shop) -> Iterator[Path]:
    """Yield the tables that a job was read from, beside its own file."""
    names = [top.value.get(key) for key in ("schedule", "measures")]
    names += [one.table for one in shop.on_hand]
    yield from (file.parent / name for name in names if isinstance(name, str))


def job_file(path: str | Path) -> Path:
    """Return the YAML file of a job: the path itself, or in a folder ``job.yaml`` or the only YAML file.

    Raises:
        JobFaults: the folder holds none, or several and none called job.yaml.
    """
    path = Path(path)
    if not path.is_dir():
        return path
    found = sorted(one for one in path.iterdir() if one.suffix in (".yaml", ".yml"))
    named = [one for one in found if one.stem == "job"]
    if len(named or found) == 1:
        return (named or found)[0]
    names = ", ".join(one.name for one in found)
    held = f"holds more than one job file: {names}" if found else "no job file here"
    message = f"{held}; name the one to read, or call it job.yaml"
    raise JobFaults([Fault(file=path.name or str(path), line=0, where="", sentence=message)])


def _units(top: TreePiece) -> Units:
    """Guess what the lengths are in, so that they can be checked even where ``units`` is misspelled."""
    return Units.MM if str(top.value.get("units", "")).lower().startswith(("m", "c")) else Units.INCH


def _with_paper(shop: Shop, units: Units) -> Shop:
    """Print a metric job on A4 unless it says otherwise."""
    metric = units is Units.MM and "paper" not in shop.model_fields_set
    return shop.model_copy(update={"paper": "A4"}) if metric else shop


class _Head:
    """The keys that one model has at the top of the file."""

    def __init__(self, top: TreePiece, model: type[Model]) -> None:
        self.value = {key: value for key, value in top.value.items() if key in model.model_fields}
        self.fault = top.fault
        self.within = top.within
        self.name = top.name


def _top(top: TreePiece, complaints: Complaints) -> JobEntry | None:
    unknown = [key for key in top.value if key not in JobFile.model_fields]
    for key in unknown:
        complaints.say(top, (key,), unknown_key(key, JobFile))
    for key in ("shop", "walls", "windows", "interior_trim"):
        if key not in top.value and not nearest(key, unknown):
            complaints.say(top, (), missing(JobFile.__name__, key))
    return complaints.check(JobEntry, _Head(top, JobEntry))


def _outside(
    top: TreePiece, openings: Sequence[Opening], boards: Sequence[Board], complaints: Complaints
) -> OutsideEntry:
    entry = complaints.check(OutsideEntry, _Head(top, OutsideEntry)) or OutsideEntry()
    if not complaints.faults:  # a faulty opening would make its mark look like none
        look_up_outside(entry, top, openings, boards, complaints)
    return entry


def _section(model: type[Any], key: str, top: TreePiece, complaints: Complaints) -> Any:
    return complaints.check(model, top.within((key,))) if key in top.value else None


def _boards(shop: Shop | None, top: TreePiece, complaints: Complaints) -> tuple[Board, ...]:
    entries = shop.boards if shop else ()
    found = (look_up_board(one, top.within(("shop", "boards", place)), complaints) for place, one in enumerate(entries))
    return tuple(board for board in found if board)


def _on_hand(shop: Shop | None, top: TreePiece, folder: Path, complaints: Complaints) -> tuple[OnHand, ...]:
    if shop is None or not shop.on_hand:
        return ()
    return look_up_on_hand(shop.on_hand, top.within(("shop", "on_hand")), folder, complaints)


def _shelf(section: str, key: str, model: type[Any], top: TreePiece, complaints: Complaints) -> Shelf[Any]:
    source = top.within((section,))
    written = top.value.get(section)
    if written is not None and not isinstance(written, dict):
        complaints.say(source, (), "is not a set of names; write each name with its keys under it")
    if written == {}:
        complaints.say(source, (), "is empty; write a name with its keys under it")
    entries: dict[str, Any] = {}
    if isinstance(written, dict):
        check_names(source, key, list(written), complaints)
        source, likes = with_likes(source, complaints)
        entries = {name: _entry(name, model, source, likes, complaints) for name in written}
    is_optional = not JobFile.model_fields[section].is_required()
    return Shelf(section=section, key=key, model=model, source=source, entries=entries, is_optional=is_optional)


def _entry(name: str, model: type[Any], section: TreePiece, likes: Mapping[str, str], complaints: Complaints) -> Any:
    """Check one named piece; what is wrong with the one it is like is told there."""
    own = section.within((name,))
    if name not in likes:
        is_told = isinstance(own.value, dict) and "like" in own.value
        return None if is_told else complaints.check(model, own)
    return complaints.check_merged(model, section.within((likes[name],)), own, own.value)


def _shelves(top: TreePiece, shop: Shop | None, complaints: Complaints) -> Shelves:
    walls: Shelf[WallEntry] = _shelf("walls", "wall", WallEntry, top, complaints)
    looked_up = {
        name: look_up_wall(name, entry, walls.source.within((name,)), complaints) if entry else (None, ())
        for name, entry in walls.entries.items()
    }
    return Shelves(
        walls=walls,
        windows=_shelf("windows", "window", WindowType, top, complaints),
        interior=_shelf("interior_trim", "interior_trim", InteriorTrim, top, complaints),
        exterior=_shelf("exterior_trim", "exterior_trim", ExteriorTrim, top, complaints),
        looked_up=looked_up,
        position=_section(PositionRule, "position", top, complaints),
        top=top,
        shop=shop,
    )


def _openings(
    file: Path, top: TreePiece, shelves: Shelves, complaints: Complaints, drafts: Mapping[str, bytes]
) -> tuple[Opening, ...]:
    entries: list[Repeatable] = [*_listed(top, complaints), *_scheduled(file, top, complaints, drafts)]
    sources = [source for entry in entries for source in each_mark(entry, complaints)]
    if not {"openings", "schedule"} & set(top.value):
        complaints.say(top, (), "openings is missing; list the openings, or name a schedule: openings.csv")
    _no_mark_twice(sources, complaints)
    name_elevations(top, sources, complaints)
    found = [(source, look_up_opening(source, shelves, complaints)) for source in sources]
    listed = [(source, opening) for source, opening in found if opening]
    placed = in_line(listed, complaints)
    return trimmed_as_one(zip((source for source, _ in listed), placed, strict=True), complaints)


def _listed(top: TreePiece, complaints: Complaints) -> Iterator[TreePiece]:
    written = top.value.get("openings")
    if written is None:
        return
    if not isinstance(written, list) or not written:
        message = "is not a list of openings; write each after a dash, its keys under it"
        complaints.say(top, ("openings",), message)
        return
    yield from (top.within(("openings", place)) for place in range(len(written)))


def _scheduled(
    file: Path, top: TreePiece, complaints: Complaints, drafts: Mapping[str, bytes]
) -> Sequence[ScheduleRow]:
    name = top.value.get("schedule")
    if not isinstance(name, str):
        return []
    path = file.parent / name
    if path.suffix.lower() not in TABLES:
        complaints.say(top, ("schedule",), f"{name!r} is not a schedule; name a file that ends in .csv or .xlsx")
        return []
    if not path.is_file():
        near = advice(name, _schedules_beside(file), otherwise="put it there or remove the line")
        complaints.say(top, ("schedule",), f"there is no file {name!r} beside the job file; {near}")
        return []
    try:
        rows, faults = read_schedule(path, drafts.get(name))
    except JobFaults as error:
        complaints.faults += error.faults
        return []
    complaints.faults += faults
    complaints.tables.append(TableRead(file=path.name, rows=len(rows)))
    if not rows:
        complaints.say(top, ("schedule",), f"{name!r} has no openings; add one row for each under the column names")
    return rows


def _measured(
    file: Path, top: TreePiece, openings: tuple[Opening, ...], complaints: Complaints, drafts: Mapping[str, bytes]
) -> tuple[Opening, ...]:
    """Give the openings what the table of measures says, where the job names one."""
    name = top.value.get("measures")
    if not isinstance(name, str):
        return openings
    path = file.parent / name
    if path.suffix.lower() not in TABLES:
        complaints.say(top, ("measures",), f"{name!r} is not a table; name a file that ends in .csv or .xlsx")
    elif not path.is_file():
        near = advice(name, _schedules_beside(file), otherwise="let `jambs measure` write it, or remove the line")
        complaints.say(top, ("measures",), f"there is no file {name!r} beside the job file; {near}")
    elif not complaints.faults:  # a faulty opening would make its rows look like another's
        return with_table(openings, path, complaints, draft=drafts.get(name))
    return openings


def _schedules_beside(file: Path) -> list[str]:
    return sorted(one.name for one in file.parent.iterdir() if one.suffix.lower() in TABLES)


def _no_mark_twice(sources: Sequence[TextSource], complaints: Complaints) -> None:
    """Marks name files and stickers: no two may be alike, not even but for capitals."""
    first: dict[str, Fault] = {}
    for source in sources:
        mark = source.value.get("mark") if isinstance(source.value, dict) else None
        if not isinstance(mark, str):
            continue
        here = source.fault(("mark",), "")
        if there := first.get(mark.lower()):
            place = f"{there.file}:{there.line}"
            message = f"{mark!r} is given to two openings, first at {place}; give each its own mark"
            complaints.say(source, ("mark",), message)
        first.setdefault(mark.lower(), here)
