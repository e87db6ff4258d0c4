"""A verb that writes papers, in a process of its own, so that the page goes on and Ctrl-C can stop the work alone.

Started as ``python -m jambs.page.work_aside VERB JOB FOLDER WAY``; tells its progress as lines of JSON, and whatever
the verb says to people as plain lines. ``WAY`` is ``overwrite`` or ``careful``.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import click

from jambs.interrupts import watch

BUILD, OVERWRITE, CAREFUL = "build", "overwrite", "careful"
INSIDE: Mapping[str, str] = {"buy": "cutting", "compare": "placement"}
"""The folder within that of the papers which a verb writes to."""


def main(words: Sequence[str]) -> None:
    """Do the work of one verb."""
    verb, file, folder, way = words
    watch()
    if verb == BUILD:
        _build(Path(file), Path(folder), may_overwrite=way == OVERWRITE)
        return
    from jambs.commands.command_line import main as program

    out = Path(folder) / INSIDE[verb] if verb in INSIDE else Path(folder)
    program.main([verb, file, "--out", str(out), *(["--overwrite"] if way == OVERWRITE else [])], prog_name="jambs")


def _build(file: Path, folder: Path, *, may_overwrite: bool) -> None:
    from jambs.commands.errors import read, told
    from jambs.face import check, steps, write_papers

    job = read(file)
    asked = told(lambda: check(job, folder))
    progress = _teller(steps(asked))
    written = told(lambda: write_papers(asked, may_overwrite=lambda _: may_overwrite, progress=progress))
    click.echo(f"{len(written)} files are in {folder}")


def _teller(of: int) -> Callable[[str], None]:
    done = 0

    def tell(what: str) -> None:
        nonlocal done
        done += 1
        click.echo(json.dumps({"done": done, "of": of, "what": what}))
        sys.stdout.flush()

    return tell


if __name__ == "__main__":
    main(sys.argv[1:])
