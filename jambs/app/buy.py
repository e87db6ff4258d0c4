"""``jambs buy``: what to buy and how to cut it, planned, verified, written; the rest again after a spoiled board."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path

from jambs.app.basis import bought_basis
from jambs.app.chain import Unbuildable
from jambs.app.cut_file_papers import kind_of_paper, write_sheet_files
from jambs.app.house_issue import paper_stamp
from jambs.app.marking import MarkedKits, marked_kits, with_marks
from jambs.app.writing import PaperFolder, check_place, hand_in, today, writing_turn
from jambs.issued.basis import basis_bytes
from jambs.issued.durable import file_sums
from jambs.issued.writing import Commit, PaperFacts, Writing
from jambs.job import Job
from jambs.length import Units
from jambs.sheets.cutting_papers import DATA, write_cutting_papers
from jambs.sheets.cutting_record import Round, cutting_record
from jambs.sheets.cutting_rest import Spoiled, SpoiledError, board_marks, planned_rest, short_ranges
from jambs.sheets.press import PressError
from jambs.stock.house.house_plan import Effort, LotProgress, PlannedLot, plan_house
from jambs.stock.house.lot_faults import lot_faults
from jambs.stock.house.lots import house_lots
from jambs.stock.problem import StockFault
from jambs.stock.verify import verify_plan
from jambs.values import Record

VERB = "buy"
MADE_ANEW = (
    "Made anew: boards bought for the plan before this one are not counted. "
    "Write those that are there under shop: on_hand, and run jambs buy again."
)


def buy(
    job: Job, place: PaperFolder, effort: Effort, *, overwrite: bool, progress: LotProgress | None = None
) -> Record:
    """Plan what to buy and how to cut it, write all papers, and return the record of the plan.

    Raises:
        Unbuildable: a window cannot be placed, a part fits no board, or the supply of boards runs out.
        InTheWay: files of the user's would be overwritten.
    """
    check_place(place, job)
    marked = marked_kits(job, place.root)
    lots = house_lots(marked.kits, job)
    if faults := lot_faults(lots, job.units):
        raise Unbuildable(*(one.sentence(job.units) for one in faults))
    try:
        planned = plan_house(lots, effort, progress=progress)
    except StockFault as fault:
        raise Unbuildable(*fault.sentences(job.units)) from None
    _verify(planned, job.units)
    record = cutting_record(planned, job, effort, Round())
    with writing_turn(place, job, verb=VERB) as writing:
        if _buys_otherwise(record, place.path / DATA):
            record["total"]["sentences"].append(MADE_ANEW)
        _hand_in(writing, record, planned, job, marked, overwrite=overwrite)
    return record


def _buys_otherwise(record: Record, before: Path) -> bool:
    """Say whether something is to buy, and other boards than by the plan that stands there, which may be bought."""
    if not record["total"]["to_buy"] or not before.exists():
        return False
    try:
        return bool(_read(before).get("buying") != json.loads(json.dumps(record["buying"])))
    except Unbuildable:
        return False  # no plan of ours


def spoiled_of(boards: Sequence[str], cut: Sequence[str], saved: Sequence[str]) -> Spoiled:
    """Read what happened at the saw, as it is typed.

    Raises:
        Unbuildable: a text names no boards.
    """
    try:
        short = short_ranges([*boards, *cut])
        return Spoiled(boards=board_marks(boards), cut=board_marks(cut), saved=tuple(saved), short=short)
    except SpoiledError as error:
        raise Unbuildable(*error.sentences(Units.INCH)) from None  # it names marks, no lengths


def buy_rest(
    job: Job,
    place: PaperFolder,
    effort: Effort,
    spoiled: Spoiled,
    *,
    overwrite: bool,
    progress: LotProgress | None = None,
) -> Record:
    """Plan again what is left of the plan in a folder after boards were spoiled; return the record of the new plan.

    The plan before it is kept as ``plan of round 1.json``. Nobody else writes from when it is read until the new one
    stands there.

    Raises:
        Unbuildable: there is no plan, it names no such board, the job has changed since, or the supply runs out.
        InTheWay: files of the user's would be overwritten.
    """
    with writing_turn(place, job, verb=VERB) as writing:
        old = _read(place.path / DATA)
        kept = {f"plan of round {old['round']}.json": (place.path / DATA).read_bytes()}
        marked = marked_kits(job, place.root)
        try:
            planned, turn = planned_rest(old, marked.kits, job, spoiled, effort, progress=progress)
        except (StockFault, SpoiledError) as error:
            raise Unbuildable(*error.sentences(job.units)) from None
        _verify(planned, job.units)
        record = cutting_record(planned, job, effort, turn)
        _hand_in(writing, record, planned, job, marked, kept=kept, overwrite=overwrite)
    return record


def _read(path: Path) -> Record:
    try:
        found: Record = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        raise Unbuildable(f"{path}: there is no plan to take up; run jambs buy without --spoiled first") from None
    return found


def _hand_in(
    writing: Writing,
    record: Record,
    planned: Sequence[PlannedLot],
    job: Job,
    marked: MarkedKits,
    *,
    overwrite: bool,
    kept: Mapping[str, bytes] | None = None,
) -> None:
    """Write the papers of a plan; those of earlier rounds stay as long as their plan is taken up."""
    basis = bought_basis(marked.kits, job)
    with writing.fresh_folder() as folder:
        try:
            stamp = paper_stamp(writing.record, VERB, basis, day=today())
            write_cutting_papers({**record, "issue": stamp}, job, folder, stamp=stamp)
            write_sheet_files(planned, job, folder, stamp=stamp)
        except PressError as error:
            raise Unbuildable(str(error)) from error
        for name, content in (kept or {}).items():
            (folder / name).write_bytes(content)
        facts = {path: PaperFacts(kind=kind_of_paper(path)) for path in file_sums(folder)}
        stays = [path for path, paper in writing.papers.items() if paper.verb == VERB] if kept else []
        work = Commit(staged=folder, day=today(), facts=facts, stays=stays, basis=basis_bytes(basis))
        hand_in(writing, with_marks(work, marked, writing.record), overwrite=overwrite)


def _verify(planned: Sequence[PlannedLot], units: Units) -> None:
    """Never print a plan that does not add up, also not one that was read from a file."""
    faults = [f"{one.lot.title}: {fault.sentence(units)}" for one in planned for fault in verify_plan(one.plan)]
    if faults:
        raise Unbuildable(*faults, "the plan does not add up and is not printed; run jambs buy again")


def plan_text(record: Record) -> str:
    """Return a plan in a few lines for a terminal."""
    lines = [_lot_line(lot, stays=lot["letter"] in record["stays"]) for lot in record["lots"]]
    total = record["total"]
    bought = f"To buy, with spares: {record['buying']['cost']['text']}."
    stopped = ["The search was interrupted: the best plan so far."] if record["is_interrupted"] else []
    return "\n".join([*lines, "", *stopped, *total["sentences"], bought])


def _lot_line(lot: Record, *, stays: bool) -> str:
    state = (
        "bought before" if stays else "optimal" if lot["is_optimal"] else f"none under {lot['solver_proved']['text']}"
    )
    count = len(lot["boards"])
    boards = f"{count} board" + "s" * (count > 1)
    return f"{lot['letter']:<2} {lot['title']:<42} {boards:>10}  {lot['cost']['text']:>12}  {state}"
