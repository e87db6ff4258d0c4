"""The one verb that is writing papers: how far it is, what it said, and a way to stop it."""

from __future__ import annotations

import json
import signal
import subprocess
import sys
import threading
from pathlib import Path

from jambs.face import Record
from jambs.page.work_aside import CAREFUL, OVERWRITE

VERBS = ("build", "buy", "compare", "measure", "labels")
GRACE = 10.0
"""So long a verb may take to stop when the page closes [s]."""
MOST_LINES = 400
"""Lines that are kept of what a verb said."""


class PaperWork:
    """Runs one verb at a time for a job file and its folder of papers."""

    def __init__(self, *, file: Path, target: Path) -> None:
        self._file, self._target = file, target
        self._lock = threading.Lock()
        self._process: subprocess.Popen[str] | None = None
        self._can_stop = self._is_to_stop = False
        self._state: Record = {
            "verb": "",
            "is_running": False,
            "lines": [],
            "done": 0,
            "of": 0,
            "what": "",
            "code": None,
        }

    @property
    def state(self) -> Record:
        """How far it is, and what was said so far."""
        with self._lock:
            return {**self._state, "lines": list(self._state["lines"])}

    def start(self, verb: str, *, overwrite: bool) -> bool:
        """Begin with a verb; say whether it was begun: only one works at a time."""
        with self._lock:
            if verb not in VERBS or self._state["is_running"]:
                return False
            self._state = {"verb": verb, "is_running": True, "lines": [], "done": 0, "of": 0, "what": "", "code": None}
            self._can_stop = self._is_to_stop = False
            words = [verb, str(self._file), str(self._target), OVERWRITE if overwrite else CAREFUL]
            self._process = subprocess.Popen(
                [sys.executable, "-m", "jambs.page.work_aside", *words],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.PIPE,
                stderr=subprocess.STDOUT,
                text=True,
                encoding="utf-8",
                errors="replace",
                start_new_session=True,
            )
            threading.Thread(target=self._listen, args=(self._process,), daemon=True).start()
            return True

    def stop(self) -> None:
        """Stop the work as Ctrl-C does, once it listens: the folder of papers is as it was, or whole and new."""
        with self._lock:
            self._is_to_stop = True
            self._interrupt()

    def close(self) -> bool:
        """Stop what is being written as the page closes, and wait for it; say whether something was."""
        process = self._process
        if process is None or process.poll() is not None:
            return False
        self.stop()
        try:
            process.wait(GRACE)
        except subprocess.TimeoutExpired:
            process.kill()  # what it wrote so far is no paper yet, or the next verb completes it
        return True

    def _interrupt(self) -> None:
        if self._can_stop and self._process is not None and self._process.poll() is None:
            self._process.send_signal(signal.SIGINT)

    def _listen(self, process: subprocess.Popen[str]) -> None:
        assert process.stdout is not None
        with process.stdout:
            for line in process.stdout:
                self._take(line.rstrip("\n"))
        code = process.wait()
        with self._lock:
            self._state |= {"is_running": False, "code": code}

    def _take(self, line: str) -> None:
        told = _progress(line)
        with self._lock:
            if told is not None:
                self._state |= told
                is_first, self._can_stop = not self._can_stop, True
                if is_first and self._is_to_stop:
                    self._interrupt()
            elif line.strip() and len(self._state["lines"]) < MOST_LINES:
                self._state["lines"].append(line)


def _progress(line: str) -> Record | None:
    if not line.startswith("{"):
        return None
    try:
        told = json.loads(line)
    except ValueError:
        return None
    is_told = isinstance(told, dict) and set(told) == {"done", "of", "what"}
    return told if is_told else None
