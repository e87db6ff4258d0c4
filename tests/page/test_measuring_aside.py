"""Readings taken in a process aside: what is refused there is refused here; another follows one that was ended."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from concurrent.futures import Future
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from typing import Any

import pytest
from pages import EXAMPLES

from jambs.job import JobFaults
from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.measuring_aside import MeasuringAside
from jambs.screen.process_aside import ProcessAside
from jambs.screen.sent_reading import NotTaken, ReadOtherwise, SentReading


def entry(text: str, *, place: int = 1, was: str = "") -> SentReading:
    """Return a reading of the garden studio's window."""
    id_ = f"{place} {text}"
    return SentReading(id=id_, mark="W1", place=place, text=text, was=was, is_sure=False, day="2026-06-01", by="Ann")


def process_of(measuring: Measuring) -> int:
    """Return the number of the process that readings are asked in."""
    return os.getpid()


def test_it_answers_and_refuses_as_the_readings_themselves_do(tmp_path: Path) -> None:
    for name in ("here", "aside"):
        (tmp_path / name).mkdir()
        shutil.copy(EXAMPLES / "garden-studio" / "job.yaml", tmp_path / name)
    here = Measuring(Desk(file=tmp_path / "here" / "job.yaml", target=tmp_path / "output"))
    aside = MeasuringAside(file=tmp_path / "aside" / "job.yaml", target=tmp_path / "output")
    try:
        assert aside.ask(Measuring.take, entry("3 3/8")) == here.ask(Measuring.take, entry("3 3/8"))
        with pytest.raises(NotTaken, match="no place 99"):
            aside.ask(Measuring.take, entry("3", place=99))
        with pytest.raises(ReadOtherwise) as found:
            aside.ask(Measuring.take, entry("4"))
        assert (found.value.there, found.value.by) == ("3 3/8", "Ann")
        assert aside.ask(process_of) != os.getpid()
        tables = [(tmp_path / name / "measures.csv").read_bytes() for name in ("here", "aside")]
        assert tables[0] == tables[1]
        (tmp_path / "aside" / "job.yaml").write_text("units: ells\n")
        with pytest.raises(JobFaults) as wrong:
            aside.ask(Measuring.job_name)
        assert any("ells" in str(fault) for fault in wrong.value.faults)
        assert str(wrong.value) == "\n".join(map(str, wrong.value.faults))
    finally:
        aside.close()


class Ended(ProcessAside):
    """A process that is ended in the middle of its first work; the one after it does its work here."""

    def __init__(self) -> None:
        super().__init__()
        self.ended = 0

    def submit(self, work: Callable[..., Any], *given: Any, **named: Any) -> Future[Any]:
        """Do the work; the first answer is lost."""
        found: Future[Any] = Future()
        found.set_result(work(*given, **named))
        if self.ended:
            return found
        lost: Future[Any] = Future()
        lost.set_exception(BrokenProcessPool())
        return lost

    def close(self) -> None:
        """End it."""
        self.ended += 1


def test_a_reading_whose_answer_was_lost_is_sent_once_more_and_written_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copy(EXAMPLES / "garden-studio" / "job.yaml", tmp_path)
    aside, process = MeasuringAside(file=tmp_path / "job.yaml", target=tmp_path / "output"), Ended()
    monkeypatch.setattr(aside, "_aside", process)
    assert aside.ask(Measuring.take, entry("3 3/8"))["read"]["1"] == "3 3/8"
    assert process.ended == 1
    assert (tmp_path / "measures.csv").read_text(encoding="utf-8-sig").count("3 3/8") == 1


def test_a_hand_goes_on_with_the_house_it_took_while_others_read(tmp_path: Path) -> None:
    shutil.copy(EXAMPLES / "garden-studio" / "job.yaml", tmp_path)
    desk = Desk(file=tmp_path / "job.yaml", target=tmp_path / "output")
    measuring = Measuring(desk)
    measuring.take(entry("3 3/8"))
    taken = desk.house()
    measuring.take(entry("3 1/2", place=3))
    assert desk.house_at_hand() is taken
    now = desk.house()
    assert now.number == taken.number + 1
    desk.file.write_text(desk.file.read_text().replace("sill_height: 30", "sill_height: 31"))
    assert desk.house_at_hand().number == now.number + 1
