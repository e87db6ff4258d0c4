"""Papers for the site: they stand in a folder of their own, apart from those of a build."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from jambs.app.marking import MarkedKits, write_some
from jambs.app.writing import PaperFolder
from jambs.issued.basis import Basis
from jambs.job import Job

SITE = "site"
"""Papers that are asked for one by one stand apart from those of a build."""


def write_site_papers(
    papers: Mapping[str, bytes],
    folder: Path,
    job: Job,
    basis: Basis,
    *,
    verb: str,
    overwrite: bool,
    marked: MarkedKits | None = None,
) -> tuple[Path, ...]:
    """Write papers into the folder ``site`` of a job's papers; return where they are.

    Raises:
        InTheWay: files of the user's would be overwritten.
        Unbuildable: the folder belongs to another job, or cannot be written.
    """
    place = PaperFolder(root=folder, inside=SITE)
    write_some(papers, place, job, basis, verb=verb, overwrite=overwrite, marked=marked)
    return tuple(place.path / name for name in papers)
