"""A verb that writes papers, in a process of its own, so that the page goes on and Ctrl-C can stop the work alone.

Started as ``python -m jambs.page.work_aside VERB JOB FOLDER WAY``; tells its progress as lines of JSON, and whatever
the verb says to people as plain lines. ``WAY`` is ``overwrite`` or ``careful``. It comes in by the door of the command
line, so that a stop at any moment, and what nobody foresaw, are sentences here too.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from jambs.commands.start import run as start

if TYPE_CHECKING:
    import click

BUILD, OVERWRITE, CAREFUL = "build", "overwrite", "careful"
INSIDE: Mapping[str, str] = {"buy": "cutting", "compare": "placement"}
"""The folder within that of the papers which a verb writes to."""


def main(words: Sequence[str]) -> None:
    """Do the work of one verb."""
    verb, file, folder, way = words
    out = Path(folder) / INSIDE[verb] if verb in INSIDE else Path(folder)
    sys.argv[1:] = [verb, file, "--out", str(out), *(["--overwrite"] if way == OVERWRITE else [])]
    start(_verbs)


def _verbs() -> click.Group:
    """Return all verbs, with a build that tells how far it is."""
    _tell(0, 0, "")  # from now on a stop is a sentence
    import click

    from jambs.commands.command_line import main as verbs

    path = click.Path(path_type=Path)
    options = [click.Argument(["job"], type=path), click.Option(["--out"], type=path)]
    verbs.add_command(
        click.Command(BUILD, params=[*options, click.Option(["--overwrite"], is_flag=True)], callback=_build)
    )
    return verbs


def _build(job: Path, out: Path, *, overwrite: bool) -> None:
    from jambs.commands.errors import read, told
    from jambs.face import check, steps, write_papers

    asked = told(lambda: check(read(job), out))
    progress = _teller(steps(asked))
    written = told(lambda: write_papers(asked, may_overwrite=lambda _: overwrite, progress=progress))
    print(f"{len(written)} files are in {out}")


def _teller(of: int) -> Callable[[str], None]:
    done = 0

    def tell(what: str) -> None:
        nonlocal done
        done += 1
        _tell(done, of, what)

    return tell


def _tell(done: int, of: int, what: str) -> None:
    print(json.dumps({"done": done, "of": of, "what": what}), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
