"""The kits of a job with the marks that its folder of papers has given: every verb that prints marks asks here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from jambs.app.chain import Unbuildable, Unmade, each_kit_at, placed_each, raise_where_unmade
from jambs.app.first_reads import STAY, FirstReads, first_reads, with_readings
from jambs.app.writing import PaperFolder, hand_in, record_faults, today, writing_turn
from jambs.issued.basis import Basis, basis_bytes
from jambs.issued.marks import MARKS, marks_document, recorded_marks
from jambs.issued.record import Record
from jambs.issued.remarked import Moves
from jambs.issued.renaming import moved_openings
from jambs.issued.writing import Commit, PaperFacts
from jambs.job import Job
from jambs.parts.board.marks import MarkBook
from jambs.parts.kit.cut_kit import PlannedForKit, as_cut
from jambs.parts.kit.kit import Kit
from jambs.sheets.record import job_record


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedKits:
    """Kits, the book that their marks are in, and the openings that have another mark since the last issue.

    ``reads``: what every reading that was found in the job was taken of; those that are void are not in the kits.
    ``unmade``: openings of the job that have no kit, and why.
    """

    kits: tuple[Kit, ...]
    book: MarkBook
    moves: Moves
    reads: FirstReads
    unmade: Unmade = field(default_factory=dict)


def marked_kits(job: Job, folder: Path) -> MarkedKits:
    """Make the kits of a job with the marks of a folder of papers.

    Raises:
        Unbuildable: some opening cannot be placed or made, or the record of the folder is of a later version.
    """
    found = marked_each(job, folder)
    raise_where_unmade(found.unmade)
    return found


def marked_each(job: Job, folder: Path) -> MarkedKits:
    """Make the kits of a job that can be made, with the marks of a folder of papers; while some cannot, none moves.

    Raises:
        Unbuildable: the record of the folder is of a later version.
    """
    with record_faults():
        record = Record.open(folder)
    book = recorded_marks(record)
    (placements, unplaced), reads = placed_each(job), first_reads(job, folder)
    kits, unmade = each_kit_at(reads.held(placements, job), job, book)
    unmade = {**unplaced, **unmade}
    moves = STAY if unmade else _moves(kits, job, record)
    if moves:
        book, reads = book.moved(moves), first_reads(job, folder, moves)
        kits, unmade = each_kit_at(reads.held(placements, job), job, book)
    reads = reads.with_new(placements, job.shop.grid)
    return MarkedKits(kits=kits, book=with_kits(book, kits), moves=moves, reads=reads, unmade=unmade)


def moves_since(job: Job, folder: Path) -> Moves:
    """Return the openings that have another mark since the last issue; none where not all of them can be made."""
    try:
        return marked_kits(job, folder).moves
    except Unbuildable:
        return STAY


def _moves(kits: Sequence[Kit], job: Job, record: Record) -> Moves:
    """Return the openings that have another mark since the last issue; no part is evidence of that."""
    if record.latest_issue is None:
        return {}
    return moved_openings(record, job_record([as_cut(replace(kit, parts=()), PlannedForKit()) for kit in kits], job))


def with_kits(book: MarkBook, kits: Sequence[Kit]) -> MarkBook:
    """Return the book with the marks of all parts of some kits."""
    return book.with_parts(part.identity for kit in kits for part in kit.parts)


def with_marks(work: Commit, marked: MarkedKits, record: Record, *, has_renamed: bool = False) -> Commit:
    """Return what a verb hands in together with the marks that it printed, for the record as it is now.

    What its readings were taken of goes with it.

    ``has_renamed``: this issue renames openings; until one does the job may still go back, and nothing is kept.

    Raises:
        Unbuildable: other papers gave some of these marks to other parts since the kits were made.
    """
    if marked.moves and not has_renamed:
        return work
    work = with_readings(work, marked.reads, record)
    book = with_kits(recorded_marks(record).moved(marked.moves), marked.kits)
    if any(part.mark != book.mark(part.identity) for kit in marked.kits for part in kit.parts):
        raise Unbuildable(f"{record.folder}: another command gave marks there while this one ran; run it again")
    return replace(work, documents={**work.documents, MARKS: marks_document(book)})


def write_some(
    papers: Mapping[str, bytes],
    place: PaperFolder,
    job: Job,
    basis: Basis,
    *,
    verb: str,
    overwrite: bool,
    marked: MarkedKits | None = None,
) -> None:
    """Write some papers of the whole house, made from a ``basis``; what else is there stays.

    ``marked``: the kits whose marks these papers print.

    Raises:
        InTheWay: files of the user's would be overwritten.
        Unbuildable: the folder belongs to another job, or cannot be written.
    """
    with writing_turn(place, job, verb=verb) as writing, writing.fresh_folder() as folder:
        for name, content in papers.items():
            (folder / name).write_bytes(content)
        facts = {name: PaperFacts(kind=name.rpartition(".")[0]) for name in papers}
        stays = [path for path, paper in writing.papers.items() if paper.verb == verb]
        work = Commit(staged=folder, day=today(), facts=facts, stays=stays, basis=basis_bytes(basis))
        hand_in(writing, with_marks(work, marked, writing.record) if marked else work, overwrite=overwrite)
