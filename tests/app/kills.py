"""Kill every verb that writes at random moments, and see that papers and record are whole and of one issue afterwards.

    python tests/app/kills.py FOLDER --kills 200 --seed 1

Each verb runs in a process of its own that is killed after a random time; half of the kills fall into the last quarter
of its run, where it writes. Then another verb runs to its end, and the folder is looked at.
"""

from __future__ import annotations

import argparse
import os
import random
import shutil
import signal
import sys
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from jambs.app import build, buy, earlier_job, issue_text, positions  # noqa: F401 (loaded once, for all forks)
from jambs.app.first_reads import DOCUMENT as READINGS
from jambs.app.issuing import INDEX
from jambs.app.old_labels import OLD_LABELS
from jambs.commands.command_line import main
from jambs.issued.durable import sha256_of
from jambs.issued.marks import MARKS, recorded_marks
from jambs.issued.record import Record
from jambs.sheets import labels, measure_sheet  # noqa: F401

STUDIO = Path(__file__).parents[2] / "examples" / "garden-studio"
FRAMES = ("frame: 24 x 36", "frame: 24 x 37")
VERBS = (
    ("build", "garden", "--without-solids"),
    ("buy", "garden", "--stages", "0"),
    ("compare", "garden"),
    ("measure", "garden"),
    ("labels", "garden"),
    ("revisions", "garden", "--withdraw-to", "1", "--overwrite"),
)
OUT = ("--out", "papers")
HEIGHT = "sill_height: 30"
READ = "head_left: 3 1/2, head_right: 3 1/2, sill_left: 3 9/16, sill_right: 3 9/16"
MEASURED = f", measured: {{date: 2026-05-18, interior_depth: {{{READ}}}}}"
"""Is taken of the window with its first frame; with the other one it is set aside."""


def started(words: tuple[str, ...]) -> int:
    """Run the command line in another process and return its number."""
    child = os.fork()
    if child:
        return child
    quiet = os.open(os.devnull, os.O_WRONLY)
    os.dup2(quiet, 1)
    os.dup2(quiet, 2)
    code = 99
    try:
        main((*words, *OUT), standalone_mode=False)
        code = 0
    except SystemExit as end:
        code = int(end.code or 0)
    finally:
        os._exit(code)


def run(words: tuple[str, ...]) -> float:
    """Run the command line to its end; return how long it took [s]."""
    begin = time.monotonic()
    code = os.waitstatus_to_exitcode(os.waitpid(started(words), 0)[1])
    assert code == 0, f"{words} ended with {code}"
    return time.monotonic() - begin


def killed(words: tuple[str, ...], after: float) -> float | None:
    """Run the command line and kill it; return how long it took [s] where it was sooner at its end."""
    child, begin = started(words), time.monotonic()
    while time.monotonic() < begin + after:
        if os.waitpid(child, os.WNOHANG) != (0, 0):
            return time.monotonic() - begin
        time.sleep(0.002)
    os.kill(child, signal.SIGKILL)
    return None if os.WIFSIGNALED(os.waitpid(child, 0)[1]) else after


def change_job() -> None:
    """Give the window its other frame, so that the next build is another issue."""
    job = Path("garden/job.yaml")
    text = job.read_text(encoding="utf-8")
    here, other = FRAMES if FRAMES[0] in text else FRAMES[::-1]
    assert here in text
    job.write_text(text.replace(here, other, 1), encoding="utf-8")


def measure_job() -> None:
    """Enter readings of the window."""
    job = Path("garden/job.yaml")
    text = job.read_text(encoding="utf-8")
    assert HEIGHT in text
    job.write_text(text.replace(HEIGHT, HEIGHT + MEASURED, 1), encoding="utf-8")


def faults(folder: Path) -> Iterator[str]:
    """Name what is not whole, or not of one issue, in a folder of papers."""
    record = Record.open(folder)
    if record.interrupted or record.chain.damaged or record.chain.healed:
        yield "the record is not settled"
    for path, paper in record.papers.items():
        if not (folder / path).is_file() or sha256_of((folder / path).read_bytes()) != paper.sha256:
            yield f"{path} is not as it is on record"
    files = (path.relative_to(folder) for path in folder.rglob("*") if path.is_file())
    yield from (
        f"{path.as_posix()} is not on record"
        for path in files
        if path.parts[0] not in ("issued", ".written.json") and path.as_posix() not in record.papers
    )
    for issue in record.issues.values():
        sums = (*issue.files.values(), *issue.documents.values())
        yield from (f"issue {issue.issue} has lost {digest}" for digest in sums if not record.blobs.has(digest))
    if list(record.issues) != list(range(1, len(record.issues) + 1)):
        yield f"issues are {list(record.issues)}"
    sheets = [path for path, paper in record.papers.items() if paper.kind == "cut sheet"]
    latest = record.latest
    for path in sheets:
        mark = record.papers[path].marks[0]
        assert latest
        if record.papers[path].issue != latest.sheets[mark].number:
            yield f"{path} is of issue {record.papers[path].issue}, the index says {latest.sheets[mark].number}"


def document_faults(folder: Path) -> Iterator[str]:
    """Name what is lost of the marks that were given, of readings, and of the page of old labels."""
    record = Record.open(folder)
    book = recorded_marks(record)
    given = {book.mark(part) for part in book.numbers}
    for entry in record.entries:
        kept = {MARKS, READINGS} if entry.verb in ("build", "buy", "labels") else set()
        yield from (f"entry {entry.number} has no {name}" for name in kept - set(entry.documents))
    for issue in record.issues.values():
        parts = [part["mark"] for opening in record.printed(issue)["openings"] for part in opening["parts"]]
        yield from (f"{mark} of issue {issue.issue} is not in the book of marks" for mark in parts if mark not in given)
    told = {record.papers[path].issue for path in (INDEX, OLD_LABELS) if path in record.papers}
    if len(told) > 1:
        yield f"{INDEX} and {OLD_LABELS} are of issues {sorted(told)}"
    if len({sheet.key for issue in record.issues.values() for sheet in issue.sheets.values()}) > 1:
        yield from () if OLD_LABELS in record.papers else (f"there is no {OLD_LABELS}",)


def main_loop(folder: Path, kills: int, seed: int) -> None:
    """Make the papers, kill verbs, and print what was hit."""
    shutil.copytree(STUDIO, folder / "garden")
    os.chdir(folder)
    measure_job()
    shot, hit = random.Random(seed), Counter[str]()
    lasts = {words: run(words) for words in VERBS}
    done = 0
    while done < kills:
        words = VERBS[done % len(VERBS)]
        change_job()
        share = shot.random() if shot.random() < 0.5 else shot.uniform(0.75, 1.0)
        took = killed(words, share * lasts[words])
        if took is None:
            done += 1
            hit[words[0]] += 1
            hit["while papers moved"] += (folder / "papers" / "issued" / "moving.json").exists()
        else:
            lasts[words] = took
        run(("revisions", "garden"))
        found = [*faults(folder / "papers"), *document_faults(folder / "papers")]
        assert not found, f"kill {done} of {words} after {share:.2f}: {found}"
    print(", ".join(f"{name} {count}" for name, count in hit.items()))


if __name__ == "__main__":
    asked = argparse.ArgumentParser()
    asked.add_argument("folder", type=Path)
    asked.add_argument("--kills", type=int, default=200)
    asked.add_argument("--seed", type=int, default=1)
    given = asked.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    main_loop(given.folder.resolve(), given.kills, given.seed)
    sys.exit(0)
