"""Ten questions that make a job: each knows what it asks and where in the starter job its answer goes."""

from __future__ import annotations

import json
import re
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from jambs.job.key_words import words_of
from jambs.job.models.windows import Sash
from jambs.job.read import read_job
from jambs.job.reading.faults import JobFaults
from jambs.job.starter import new_job_text
from jambs.length import Units

Fill = Callable[[str, str], str]
"""Puts an answer into the text of a job."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question: its words, a line that helps to answer it, and how the answer gets into the job."""

    ask: str
    help: str
    fill: Fill


def _comment(model: str, key: str) -> str:
    found = words_of(model, key)
    return f"  # {found.words}" if found else ""


def _meaning(model: str, key: str) -> str:
    found = words_of(model, key)
    assert found is not None
    return found.told


def _line(pattern: str, new: str, comment: str = "") -> Fill:
    """Return what exchanges the value of one line, and keeps its indentation; its old comment no longer holds."""

    def fill(text: str, answer: str) -> str:
        line = re.compile(rf"^(\s*(?:- )?){pattern}.*$", re.M)
        return line.sub(lambda one: f"{one[1]}{new} {_scalar(answer)}{comment}", text, count=1)

    return fill


def _scalar(answer: str) -> str:
    """Write an answer so that YAML reads it as it is."""
    return answer if re.fullmatch(r"[A-Za-z0-9][\w ./-]*", answer) else json.dumps(answer, ensure_ascii=False)


def _layers(text: str, answer: str) -> str:
    written = "".join(f"      - {_scalar(layer.strip())}\n" for layer in answer.split(",") if layer.strip())
    old = re.compile(r"(?<=    layers:).*?\n(?=    buck:)", re.S)
    return old.sub(lambda _: f"  # inside -> outside\n{written}", text, count=1)


def _buck(text: str, answer: str) -> str:
    if answer == "none":
        return re.sub(r"^    buck:.*\n", "", text, count=1, flags=re.M)
    return re.sub(r"(?<=^    buck: \{kind: )[^,]*", lambda _: _scalar(answer), text, count=1, flags=re.M)


def _opening(text: str, answer: str) -> str:
    """Write mark, room and frame; what was not asked goes, so that it is assumed and said so, or asked for."""
    mark, room, frame = ([*map(str.strip, answer.split(",", 2)), "", ""])[:3]
    for pattern, value in (("mark:", mark), ("room:", room), ("frame: ", frame)):
        text = _line(pattern, pattern.strip())(text, value)
    return re.sub(r"^    (rough_opening|sill_height|hinge):.*\n", "", text, flags=re.M)


EXAMPLES = {
    Units.INCH: ("gypsum board 1/2, stud 2x6, plywood 1/2, EPS 2, strapping 1x3, vertical boards", "35 1/2 x 47 1/2"),
    Units.MM: ("gypsum board 12.5 mm, stud 45x145, OSB 12 mm, EPS 100, strapping 25 mm, boards 21 mm", "902 x 1207"),
}


def questions(units: Units) -> tuple[Question, ...]:
    """Return the questions after the name and the units, which come first."""
    layers, frame = EXAMPLES[units]
    return (
        Question(
            ask="The layers of the wall, from the inside to the outside, with commas between them?",
            help=f"By their names in the catalog, with their thickness, written like: {layers}",
            fill=_layers,
        ),
        Question(
            ask="What carries a window that stands outside the sheathing: outboard, liner or none?",
            help=_meaning("BuckEntry", "kind"),
            fill=_buck,
        ),
        Question(
            ask="How deep is the whole frame of the window?",
            help=_meaning("WindowType", "frame_depth"),
            fill=_line("jamb_depth:", "frame_depth:", _comment("WindowType", "frame_depth")),
        ),
        Question(
            ask="How far is its nailing flange set back from the outside edge of the frame?",
            help=_meaning("WindowType", "flange_set_back") + "; of its clips, where it has no flange",
            fill=_line("frame_projection:", "flange_set_back:", _comment("WindowType", "flange_set_back")),
        ),
        Question(
            ask="How wide is the face of the frame?",
            help=_meaning("WindowType", "frame_face"),
            fill=_line("frame_face:", "frame_face:", _comment("WindowType", "frame_face")),
        ),
        Question(
            ask="How does it open?",
            help=", ".join(sash for sash in Sash if not sash.is_door) + "; a door is added to the job later",
            fill=_line("sash: ", "sash:", _comment("WindowType", "sash")),
        ),
        Question(
            ask="Where in the wall do the windows stand?",
            help="equal depths, on the sheathing, on the trim plane, or a rule and its value (`jambs keys position`)",
            fill=_line("position:", "position:"),
        ),
        Question(
            ask="The first opening: its mark, its room and the size of its frame, with commas between them?",
            help=f"Written like: mark, room, width x height ({frame})",
            fill=_opening,
        ),
    )


def begun(name: str, units: Units) -> str:
    """Return the starter job under a name, without what no question asks and a maker's sheet does not say."""
    text = _line("job:", "job:")(new_job_text(units), name)
    text = re.sub(r"^    (flange_width|sash_thickness|sash_set_back|glass):.*\n", "", text, flags=re.M)
    text = _without_door(text)
    return text.replace("# A job of jambs.", f"{NOT_ASKED}\n# A job of jambs.", 1)


def _without_door(text: str) -> str:
    """Drop the starter's door: nobody was asked about one."""
    for name in ("garden door", "to the floor", "no sill"):
        text = re.sub(rf"^\n  {name}:.*\n(?:    .*\n)+", "", text, flags=re.M)
    return re.sub(r"^\n  - mark: D01\n(?:    .*\n)+", "", text, flags=re.M)


NOT_ASKED = "# Written from your answers. Nobody asked you for shop, boards and trim: check every size there first."


def wrong_with(text: str) -> list[str]:
    """Return what is wrong with the text of a job, in the sentences of its faults."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "job.yaml"
        file.write_text(text, encoding="utf-8")
        try:
            read_job(file)
        except JobFaults as error:
            return [": ".join(part for part in (fault.where, fault.sentence) if part) for fault in error.faults]
    return []
