"""Whatever is typed into a job file or a schedule, it is read or its faults are told; nothing else comes out."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from houses import HOUSE, METRIC
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from jambs.job import JobFaults, read_job

QUIET = settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
ODD = st.sampled_from(
    [*"-:{}[]\"'#~%|>\té", "", "none", "like:", "0", "-1", "1/0", "9" * 400, "NaN", "1e999", "&a", "*a"]
)


def reads_or_tells(folder: Path) -> None:
    """Read a job; every fault names a place and says something."""
    try:
        read_job(folder)
    except JobFaults as error:
        assert error.faults
        for fault in error.faults:
            assert fault.file and fault.sentence and "Error" not in fault.sentence, str(fault)


@QUIET
@given(base=st.sampled_from([HOUSE, METRIC]), data=st.data())
def test_a_slip_anywhere_in_the_text(base: str, data: st.DataObject, tmp_path: Path) -> None:
    start = data.draw(st.integers(min_value=0, max_value=len(base)))
    end = data.draw(st.integers(min_value=start, max_value=min(len(base), start + 12)))
    text = base[:start] + data.draw(ODD) + base[end:]
    (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
    reads_or_tells(tmp_path)


VALUES: st.SearchStrategy[Any] = st.recursive(
    ODD | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(ODD, inner, max_size=2),
    max_leaves=4,
)


def places(value: Any, way: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Return the way to every value of a tree."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [way, *(place for key, one in inner for place in places(one, (*way, key)))]


@QUIET
@given(base=st.sampled_from([HOUSE, METRIC]), odd=VALUES, data=st.data())
def test_an_odd_value_in_any_place(base: str, odd: Any, data: st.DataObject, tmp_path: Path) -> None:
    tree = yaml.load(base, Loader=yaml.BaseLoader)
    *way, last = data.draw(st.sampled_from(places(tree)[1:]))
    inner = tree
    for step in way:
        inner = inner[step]
    inner[last] = odd
    (tmp_path / "job.yaml").write_text(yaml.safe_dump(tree, allow_unicode=True), encoding="utf-8")
    reads_or_tells(tmp_path)


@QUIET
@given(rows=st.lists(st.lists(ODD | st.text(max_size=8), max_size=8), max_size=3), separator=st.sampled_from(",;\t"))
def test_any_rows_of_a_schedule(rows: list[list[str]], separator: str, tmp_path: Path) -> None:
    head = separator.join(["mark", "room", "wall", "window", "frame", "frame width", "measured date", "head left"])
    text = "\n".join([head, *(separator.join(row) for row in rows)])
    (tmp_path / "windows.csv").write_text(text, encoding="utf-8", errors="replace")
    (tmp_path / "job.yaml").write_text(HOUSE + "schedule: windows.csv\n", encoding="utf-8")
    reads_or_tells(tmp_path)


@pytest.mark.parametrize("size", [10, 3000])
def test_deep_and_long_files_end(size: int, tmp_path: Path) -> None:
    for text in (
        "a: " * size,
        "[" * size + "]" * size,
        "{a: " * size + "}" * size,
        "- " * size,
        "a:\n" + " b: c\n" * size,
    ):
        (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
        reads_or_tells(tmp_path)
