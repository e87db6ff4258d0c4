"""Names: found exactly first, told apart, and fit to be printed and to be files' names everywhere."""

from __future__ import annotations

from pathlib import Path

import pytest
from houses import HOUSE, spoiled

from jambs.job import JobFaults, read_job
from jambs.job.reading.look_up import _called


def told(text: str, folder: Path) -> str:
    (folder / "job.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(JobFaults) as caught:
        read_job(folder)
    return str(caught.value)


def piece(section: str, name: str) -> str:
    """Return the lines of one named entry of the house."""
    lines = HOUSE[HOUSE.index(f"\n{section}:\n") :].splitlines()[2:]
    start = lines.index(f"  {name}:")
    end = next(at for at, line in enumerate(lines[start + 1 :], start + 1) if not line.startswith("    "))
    return "\n".join(lines[start + 1 : end])


def with_twin(section: str, name: str, twin: str) -> str:
    return spoiled((f"\n{section}:\n", f"\n{section}:\n  {twin}:\n{piece(section, name)}\n"), text=HOUSE)


@pytest.mark.parametrize(
    ("section", "name"),
    [("walls", "main"), ("windows", "fixed"), ("interior_trim", "picture"), ("exterior_trim", "plain")],
)
def test_names_that_differ_only_in_capitals_are_refused(section: str, name: str, tmp_path: Path) -> None:
    said = told(with_twin(section, name, name.upper()), tmp_path)
    assert f"{name!r} and {name.upper()!r} differ only in capitals, spaces or inch marks" in said


@pytest.mark.parametrize(("section", "name"), [("walls", "main"), ("windows", "fixed"), ("interior_trim", "picture")])
@pytest.mark.parametrize("odd", ['""', '" "', '"a\\nb"', '"' + "a" * 61 + '"', '"a "'])
def test_a_name_that_nobody_can_read_is_refused(section: str, name: str, odd: str, tmp_path: Path) -> None:
    key = section.removesuffix("s").replace("_", " ")
    named = "an interior trim" if key == "interior trim" else f"a {key}"
    assert f"is not a name for {named}; write 1 to 60 letters" in told(with_twin(section, name, odd), tmp_path)


def test_an_exact_name_comes_first() -> None:
    assert _called("MAIN", ["main", "MAIN"]) == "MAIN"
    assert _called("Main", ["main", "side"]) == "main"
    assert _called("other", ["main"]) is None


@pytest.mark.parametrize("mark", ["CON", "nul", "aux", "COM1", "lpt9", "con.1"])
def test_a_mark_that_is_a_device_elsewhere(mark: str, tmp_path: Path) -> None:
    said = told(spoiled(("mark: W01", f"mark: {mark}"), text=HOUSE), tmp_path)
    assert f"{mark!r} is a device name on some systems, where no file can have it" in said


def test_a_mark_that_ends_in_a_dot(tmp_path: Path) -> None:
    said = told(spoiled(("mark: W01", "mark: W01."), text=HOUSE), tmp_path)
    assert "ends in a dot or a space, which some systems strip from file names" in said


@pytest.mark.parametrize("mark", ["CONS", "COM", "COM10", "NULL", "W.1"])
def test_marks_that_only_look_like_devices(mark: str, tmp_path: Path) -> None:
    (tmp_path / "job.yaml").write_text(spoiled(("mark: W01", f"mark: {mark}"), text=HOUSE), encoding="utf-8")
    assert read_job(tmp_path).openings[0].mark == mark


@pytest.mark.parametrize("change", [("job: Test house", 'job: "a\\ud800b"'), ("\n  main:", '\n  "m\\udc00":')])
def test_half_a_letter_is_told(change: tuple[str, str], tmp_path: Path) -> None:
    assert change[0] in HOUSE
    assert "holds half a letter (a lone surrogate)" in told(spoiled(change, text=HOUSE), tmp_path)


def test_a_path_may_be_text(tmp_path: Path) -> None:
    (tmp_path / "job.yaml").write_text(HOUSE, encoding="utf-8")
    assert read_job(str(tmp_path)) == read_job(tmp_path) == read_job(str(tmp_path / "job.yaml"))
    with pytest.raises(JobFaults, match=r"nothing\.yaml: cannot be opened"):
        read_job(str(tmp_path / "nothing.yaml"))


@pytest.mark.parametrize("like", ["[fixed]", "{a: 1}", "~"])
def test_what_a_piece_is_like_is_a_name(like: str, tmp_path: Path) -> None:
    said = told(spoiled(("\nwindows:\n", f"\nwindows:\n  odd: {{like: {like}}}\n"), text=HOUSE), tmp_path)
    assert "like names one piece; write like: and its name" in said or "has no value" in said
