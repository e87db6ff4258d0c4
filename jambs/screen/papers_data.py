"""The papers: what is there, what of it holds no longer and why; each has a key, by which alone it is asked for."""

from __future__ import annotations

import hashlib
from pathlib import PurePosixPath

from jambs.app.measure import TABLE
from jambs.app.stale_words import things_words
from jambs.app.writing import suppress_record_faults
from jambs.issued.entry import WrittenPaper
from jambs.issued.record import Record as PaperRecord
from jambs.job.reading.rows import TABLES
from jambs.screen.desk import Desk
from jambs.screen.house_data import stale_of
from jambs.screen.job_edits import nodes_root
from jambs.screen.named_table import MEASURES
from jambs.values import Record

WORDS = {
    "build": ("Build", "shop drawings, cut sheets, cut files, lists of the house"),
    "measure": ("Measure", "measure sheets to fill in on the site, and the table for the readings"),
    "buy": ("Buy", "what to buy and how to cut it"),
    "compare": ("Compare", "the positions side by side: heat, damp, sun"),
    "labels": ("Labels", "a label for every part"),
}
"""Each verb as its button, and what it writes."""
SHOWN = (".pdf",)
"""What a browser shows in the page; all else is taken home."""
KEY_LETTERS = 24
FOLDERS = ("", "cut sheets", "drawings", "install sheets", "site", "cutting", "placement", "templates", "outside")


def written(desk: Desk) -> dict[str, WrittenPaper]:
    """Return what the record of the folder of papers has, by path."""
    with suppress_record_faults():
        return dict(PaperRecord.open(desk.target).papers)
    return {}


def key_of(path: str) -> str:
    """Return the key by which a paper is asked for."""
    return hashlib.sha256(path.encode()).hexdigest()[:KEY_LETTERS]


def papers_record(desk: Desk) -> Record:
    """Return the papers by verb and folder, each with what changed since it was made."""
    house = desk.house()
    stale = stale_of(house.asked) if house.asked else []
    why = {path: things_words(alone) for one in stale for path, alone in one.alone.items()}
    groups: dict[str, dict[str, list[Record]]] = {}
    for path, paper in sorted(written(desk).items()):
        if (desk.target / path).is_file():
            folder = str(PurePosixPath(path).parent)
            groups.setdefault(paper.verb, {}).setdefault("" if folder == "." else folder, []).append(
                _paper(path, paper, why)
            )
    return {
        "folder": str(desk.target),
        "verbs": [{"verb": verb, "words": words, "writes": writes} for verb, (words, writes) in WORDS.items()],
        "groups": [
            {"verb": verb, "words": WORDS.get(verb, (verb, ""))[0], "folders": _folders(folders)}
            for verb, folders in groups.items()
        ],
        "stale": [{"verb": one.verb, "count": len(one.paths), "why": things_words(one, in_full=True)} for one in stale],
        "is_to_settle": bool(house.wrong or house.unmade or house.unplanned),
        "unsaved": bool(desk.draft.changed),
        "unread_table": _unread_table(desk),
        "wrong": [*house.wrong, *(sentence for _, sentence in house.unplanned)],
    }


def _unread_table(desk: Desk) -> str:
    """Return the table of measures that stands beside a job that names none yet; else nothing."""
    if desk.house().job is None or MEASURES in nodes_root(desk.draft.files[desk.file.name]):
        return ""
    names = (f"{TABLE}{kind}" for kind in TABLES)
    return next((name for name in names if desk.file.with_name(name).is_file()), "")


def _folders(folders: dict[str, list[Record]]) -> list[Record]:
    """Put what is read most first; a folder that is not named comes after those that are."""
    names = sorted(folders, key=lambda name: (FOLDERS.index(name) if name in FOLDERS else len(FOLDERS), name))
    return [{"name": name, "papers": folders[name]} for name in names]


def _paper(path: str, paper: WrittenPaper, why: dict[str, str]) -> Record:
    name = PurePosixPath(path)
    return {
        "key": key_of(path),
        "name": name.name,
        "kind": paper.kind,
        "marks": list(paper.marks),
        "issue": paper.issue,
        "is_shown": name.suffix in SHOWN,
        "why": why.get(path, ""),
    }


def paper_file(desk: Desk, key: str) -> tuple[bytes, str] | None:
    """Return a paper of the table and its name; nothing where there is none of that key."""
    path = next((one for one in written(desk) if key_of(one) == key), None)
    file = desk.target / path if path else None
    if file is None or not file.is_file() or not file.resolve().is_relative_to(desk.target.resolve()):
        return None
    return file.read_bytes(), file.name
