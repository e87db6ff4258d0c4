"""What *check* accepts *build* builds: random kits, in a house that says of heights, places and courses what it likes.

``pytest --hypothesis-profile=long tests/app/test_check_and_build.py`` tries many more.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed, examples
from click.testing import CliRunner
from hypothesis import event, given
from hypothesis import strategies as st
from quick_papers import quick
from random_kits import RandomKit, kits

from jambs.commands.command_line import main

COURSES = {
    "kind": "shingles",
    "coursing": "single",
    "least_exposure": 5,
    "wanted_exposure": 7,
    "line_tolerance": "1/16",
}
ELEVATION = {"start_line": -10, "faces": "north"}


@st.composite
def outsides(draw: st.DrawFn) -> dict[str, Any]:
    """What a job may say of one opening's place, and of the elevation it is in; None: it says nothing."""
    said: dict[str, Any] = {
        "openings__0__sill_height": draw(st.sampled_from([None, "0", "30", "84"])),
        "openings__0__from_left": draw(st.sampled_from([None, "0", "12", "300"])),
    }
    if draw(st.booleans()):
        elevation = {
            **ELEVATION,
            "eave": draw(st.sampled_from(["6'", "17'-4"])),
            "width": draw(st.sampled_from(["7'", "36'"])),
        }
        if draw(st.booleans()):
            elevation["cladding"] = {**COURSES, "length": draw(st.sampled_from(["16", "18"]))}
        said |= {"elevations": {"north": elevation}, "openings__0__faces": "north"}
    return {key: one for key, one in said.items() if one is not None}


@examples(4)
@given(kit=kits(), outside=outsides())
def test_what_check_accepts_is_built(
    kit: RandomKit, outside: dict[str, Any], tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = tmp_path_factory.mktemp("job")
    job = folder / "job.yaml"
    job.write_text(yaml.safe_dump(changed(**{**kit.changes, **outside}), sort_keys=False), encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        quick(patch, drawings=False)
        checked = run("check", job)
        event("accepted" if checked.exit_code == 0 else "refused")
        if checked.exit_code == 0:
            for verb in ("build", "labels", "measure"):
                done = run(verb, job)
                assert done.exit_code == 0, done.output


def run(verb: str, job: Path) -> Any:
    words = [verb, str(job), "--out", str(job.parent / "papers"), *(["--without-solids"] if verb == "build" else [])]
    return CliRunner().invoke(main, words)
