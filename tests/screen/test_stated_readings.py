"""Where readings stand that are written with their opening: file and line, as an editor counts them."""

from __future__ import annotations

from pathlib import Path

from jambs.screen.stated_readings import where_stated

EXAMPLES = Path(__file__).parents[2] / "examples"


def test_in_the_job_file() -> None:
    file = EXAMPLES / "harbour-house" / "job.yaml"
    lines = file.read_text(encoding="utf-8").splitlines()
    start = next(at for at, line in enumerate(lines) if "mark: W02" in line)
    line = next(at for at in range(start, len(lines)) if "measured:" in lines[at]) + 1
    assert where_stated(file, "W02") == f"job.yaml, line {line}"


def test_in_a_row_of_the_schedule(tmp_path: Path) -> None:
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text(encoding="utf-8")
    (tmp_path / "job.yaml").write_text(f"{text[: text.index('openings:')]}schedule: rows.csv\n", encoding="utf-8")
    head = "mark,room,frame,sill_height,measured_date,head_left,head_right,sill_right,sill_left\n"
    (tmp_path / "rows.csv").write_text(f"{head}W1,Hall,24 x 36,30,2026-06-01,3 3/8,3 1/2,3 5/8,3 1/2\n")
    assert where_stated(tmp_path / "job.yaml", "W1") == "rows.csv, line 2"
