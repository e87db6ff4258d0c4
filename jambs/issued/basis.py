"""What papers were made from: a digest of each thing they print, so that a paper is known to be stale.

A *basis* is kept with each paper by its sha256; papers of one run share it. It has a group of digests for each way in
which papers depend on the job: ``sheets`` by opening mark, ``parts`` by part mark, and so on; what differs between the
basis of a paper and the job's present one, in the groups that its verb depends on, is why it is stale.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace

from jambs.issued.durable import sha256_of
from jambs.issued.entry import BUILD, WrittenPaper
from jambs.issued.record import Record

Basis = Mapping[str, Mapping[str, str]]
"""Group -> thing -> digest."""
DIGITS = 16
"""Of a digest: enough to tell the states of one job apart."""
SHEETS, HOUSE, PARTS, LABELS, SHOP = "sheets", "house", "parts", "labels", "shop"
SHAPES = "shapes"
"""What the sheets print of an opening but the boards that its parts come out of, which a cutting plan decides."""
AROUND = "around"
"""What papers of an opening may show and tell nowhere: their size, its place on the key, what fills its wall."""
PLACES, COMPARED, SITE = "places", "compared", "site"
DEPENDS: Mapping[str, tuple[str, ...]] = {
    BUILD: (SHEETS, HOUSE),
    "buy": (PARTS, SHOP),
    "labels": (LABELS,),
    "measure": (PLACES,),
    "compare": (COMPARED, SITE),
}
"""The groups that the papers of a verb depend on; those of one opening depend on its sheets alone, and what names no
board on their shapes."""
OF_PARTS, IN_WORDS = (PARTS, LABELS), (HOUSE, SHOP, SITE)
"""Groups whose things are marks of parts, and those whose things are words; in all others they are of openings."""
NOT_KNOWN = "what they were made from is not on record"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stale:
    """Papers of one verb that hold no longer.

    ``things``: what differs since: marks of openings or parts, and words like *prices*; ``words``: the latter.
    ``gone``, ``new``: marks among them that went and came since; all others are there still and changed.
    ``is_of_boards``: of these openings nothing did but the boards that their parts come out of.
    ``alone``: path -> the same of that paper by itself.
    """

    verb: str
    paths: tuple[str, ...]
    kinds: tuple[str, ...]
    things: tuple[str, ...]
    words: tuple[str, ...] = ()
    gone: tuple[str, ...] = ()
    new: tuple[str, ...] = ()
    is_of_boards: bool = False
    alone: Mapping[str, Stale] = field(default_factory=dict)

    @property
    def marks(self) -> tuple[str, ...]:
        """The marks of what differs."""
        return tuple(thing for thing in self.things if thing not in self.words)

    @property
    def changed(self) -> tuple[str, ...]:
        """The marks of what is there still and changed."""
        return tuple(mark for mark in self.marks if mark not in (*self.gone, *self.new))

    @property
    def is_of_parts(self) -> bool:
        """Say whether these marks are of parts; else they are of openings."""
        return DEPENDS[self.verb][0] in OF_PARTS


def digest(thing: object) -> str:
    """Return the digest of something that JSON can hold."""
    return sha256_of(json.dumps(thing, sort_keys=True, ensure_ascii=False).encode("utf-8"))[:DIGITS]


def basis_bytes(basis: Basis) -> bytes:
    """Return a basis as it is kept: the same bytes for the same basis."""
    return json.dumps(basis, sort_keys=True, ensure_ascii=False).encode("utf-8")


def read_basis(content: bytes | None) -> Basis | None:
    """Return a kept basis, None where it is gone or holds what no basis holds."""
    try:
        found = json.loads(content or b"")
    except ValueError:
        return None
    is_basis = isinstance(found, dict) and all(isinstance(group, dict) for group in found.values())
    return found if is_basis else None


def differing(old: Basis, new: Basis, groups: Iterable[str], only: Collection[str] = ()) -> tuple[str, ...]:
    """Return the things of some groups that differ, came or went; ``only``: of these alone."""
    found: dict[str, None] = {}
    for group in groups:
        was, now = old.get(group, {}), new.get(group, {})
        wanted = [thing for thing in only if thing in now or thing in was] or ({} if only else {**now, **was})
        found |= dict.fromkeys(thing for thing in wanted if was.get(thing) != now.get(thing))
    return tuple(found)


def printed_otherwise(record: Record, present: Basis, sheets: Mapping[str, str]) -> set[str]:
    """Return the openings whose papers on record have other surroundings than they would have now.

    ``sheets``: path of a paper of each, by mark. What an earlier version kept does not say, and stays.
    """
    found = {mark: record.papers[path].basis for mark, path in sheets.items() if path in record.papers}
    bases = {name: read_basis(record.blobs.found(name)) or {} for name in {*found.values()} if name}
    was = {mark: bases.get(name, {}).get(AROUND, {}).get(mark) for mark, name in found.items()}
    return {mark for mark, kept in was.items() if kept and kept != present[AROUND].get(mark)}


def of_shapes(basis: Basis) -> Basis:
    """Return a basis as what names no board depends on it; one that was kept before shapes were has none."""
    return {**basis, SHEETS: basis.get(SHAPES, basis.get(SHEETS, {}))}


def stale_papers(record: Record, present: Basis, *, naming_boards: Collection[str]) -> list[Stale]:
    """Return the papers on record that hold no longer, those of each verb together.

    ``naming_boards``: kinds of papers of a build that say which board a part comes out of; others hold for any board.
    """
    known: dict[str, Basis | None] = {}
    reshaped: set[str] = set()
    worded = {thing for group in IN_WORDS for thing in present.get(group, {})}
    found: dict[str, dict[str, tuple[str, ...]]] = {}
    for path, paper in record.papers.items():
        if paper.basis and paper.basis not in known:
            known[paper.basis] = read_basis(record.blobs.found(paper.basis))
        basis = known.get(paper.basis)
        if paper.verb == BUILD:
            things = _stale_of_build(paper, basis, present, record, names_boards=paper.kind in naming_boards)
            reshaped |= {*_reshaped(things, basis, present)}
        else:
            things = _stale_things(paper, basis, present)
        if things:
            found.setdefault(paper.verb, {})[path] = things
    each = sorted(found.items(), key=lambda one: list(DEPENDS).index(one[0]))

    def stale(verb: str, papers: Mapping[str, tuple[str, ...]]) -> Stale:
        return _stale(verb, papers, worded, record, reshaped, known, present)

    return [
        replace(stale(verb, papers), alone={path: stale(verb, {path: things}) for path, things in papers.items()})
        for verb, papers in each
    ]


def _things_of(bases: Iterable[Basis], groups: Iterable[str]) -> set[str] | None:
    """Return all things in some groups of some bases.

    None where a group is not kept: from before there was such a group it says nothing of what was there.
    """
    bases, groups = [*bases], [*groups]
    if not all(group in basis for basis in bases for group in groups):
        return None
    return {thing for basis in bases for group in groups for thing in basis[group]}


def _reshaped(things: tuple[str, ...], basis: Basis | None, present: Basis) -> tuple[str, ...]:
    """Return those of what changed of which more did than the boards that parts come out of."""
    if basis is None or SHAPES not in basis or not things:
        return things
    return differing(of_shapes(basis), of_shapes(present), (SHEETS,), things)


def _stale(
    verb: str,
    papers: Mapping[str, tuple[str, ...]],
    worded: Collection[str],
    record: Record,
    reshaped: Collection[str],
    known: Mapping[str, Basis | None],
    present: Basis,
) -> Stale:
    things = tuple(dict.fromkeys(thing for some in papers.values() for thing in some))
    marks = [thing for thing in things if thing not in worded]
    now = _things_of([present], DEPENDS[verb])
    was = _things_of([basis for path in papers if (basis := known.get(record.papers[path].basis))], DEPENDS[verb])
    return Stale(
        verb=verb,
        paths=tuple(papers),
        kinds=tuple(dict.fromkeys(record.papers[path].kind for path in papers)),
        things=things,
        words=tuple(thing for thing in things if thing in worded),
        gone=tuple(mark for mark in marks if now is not None and mark not in now),
        new=tuple(mark for mark in marks if was and mark not in was),
        is_of_boards=verb == BUILD and not {*things} & {*reshaped},
    )


def _stale_things(paper: WrittenPaper, basis: Basis | None, present: Basis) -> tuple[str, ...]:
    if paper.verb not in DEPENDS:
        return ()
    return (NOT_KNOWN,) if basis is None else differing(basis, present, DEPENDS[paper.verb])


def _stale_of_build(
    paper: WrittenPaper, basis: Basis | None, present: Basis, record: Record, *, names_boards: bool
) -> tuple[str, ...]:
    """The index and the lists of changes, which have no basis, are of their issue and stay so."""
    if basis is None and paper.marks:
        sheets = record.latest.sheets if record.latest else {}
        basis = {SHEETS: {mark: sheets[mark].key[:DIGITS] for mark in paper.marks if mark in sheets}}
    if basis is None:
        return ()
    if not names_boards and SHAPES in basis:
        basis, present = of_shapes(basis), of_shapes(present)
    return differing(basis, present, DEPENDS[BUILD][: 1 if paper.marks else None], paper.marks)
