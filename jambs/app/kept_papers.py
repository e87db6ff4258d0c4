"""Papers of openings that did not change: laid among the new ones as they were issued, and not made again."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from pathlib import Path

from jambs.app.issuing import Issuing
from jambs.app.paper_names import ALL_CUT, ALL_DRAWINGS
from jambs.app.papers import paths_of
from jambs.app.solid_papers import elevation_facts, left_out
from jambs.issued.blobs import Blobs
from jambs.issued.entry import BUILD, WrittenPaper


def lay_unchanged(issuing: Issuing, folder: Path, *, with_solids: bool, all_cut_files: bool) -> set[str]:
    """Lay the papers of unchanged openings into a folder as they were issued; return their paths there.

    Of an opening all that a build writes of it now, or none: where one was left out the last time, or its kept copy is
    damaged, they are made anew. So are the solids of an elevation.
    """
    laid: set[str] = set()
    papers = issuing.record.papers_of(BUILD)
    for paths in _unchanged(issuing, with_solids=with_solids, all_cut_files=all_cut_files):
        found = _kept(issuing.record.blobs, papers, paths)
        if len(found) < len(paths):
            continue
        for path, content in found.items():
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            (folder / path).write_bytes(content)
        laid.update(found)
    return laid


def _unchanged(issuing: Issuing, *, with_solids: bool, all_cut_files: bool) -> Iterator[Collection[str]]:
    """Yield the paths of all papers of each opening that did not change, then of elevations without one that did.

    Then those of all sheets together, where none changed.
    """
    unchanged = issuing.as_issued
    for kit in issuing.kits:
        if kit.mark in unchanged:
            yield paths_of(kit, issuing.job, with_solids=with_solids, all_cut_files=all_cut_files)
    if issuing.is_whole and with_solids and left_out() is None:
        for path, facts in elevation_facts(issuing.kits, issuing.job).items():
            if unchanged.issuperset(facts.marks):
                yield [path]
    if issuing.is_whole and issuing.is_as_issued:
        yield from ([path] for path in (ALL_CUT, ALL_DRAWINGS))


def _kept(blobs: Blobs, papers: Mapping[str, WrittenPaper], paths: Collection[str]) -> dict[str, bytes]:
    """Return what is on record of some papers, as far as it is whole."""
    found = {path: blobs.found(papers[path].sha256) for path in paths if path in papers}
    return {path: content for path, content in found.items() if content is not None}
