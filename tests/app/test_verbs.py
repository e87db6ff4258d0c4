"""Verbs nobody wrote down, verbs without a path, and ``python -m jambs``."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from shops import Shop, shop

from jambs import __version__
from jambs.commands.command_line import main
from jambs.commands.verbs import MEANT

JOB_VERBS = ("check", "build", "measure", "compare", "buy", "labels", "revisions")


@pytest.mark.parametrize(
    ("word", "verbs"),
    [
        ("print", {"build", "labels"}),
        ("order", {"build", "buy"}),
        ("cut", {"buy"}),
        ("undo", {"revisions"}),
        ("init", {"new"}),
        ("validate", {"check"}),
        ("chekc", {"check"}),
        ("biuld", {"build"}),
        ("materials", {"catalog"}),
    ],
)
def test_an_unknown_verb_leads_to_the_one_that_does_it(word: str, verbs: set[str], shop: Shop) -> None:
    result = shop.run(word, "house")
    assert result.exit_code == 2
    assert f"There is no verb {word!r}. What does that:" in result.stderr
    told = {line.split()[1] for line in result.stderr.splitlines() if line.startswith("  jambs ")}
    assert told == verbs


def test_a_word_that_means_nothing_gets_the_list(shop: Shop) -> None:
    result = shop.run("xyzzy", "house")
    assert result.exit_code == 2
    assert "There is no verb 'xyzzy'; the verbs are build, buy, catalog, check" in result.stderr


def test_the_words_lead_to_verbs_that_exist_and_are_none_themselves() -> None:
    verbs = set(main.commands)
    assert set(MEANT) <= verbs
    assert verbs & {word for words in MEANT.values() for word in words} == set()


def test_a_verb_in_the_folder_of_its_job_needs_no_path(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    told = shop.run("check", "house").stdout
    monkeypatch.chdir(shop.folder / "house")
    result = CliRunner().invoke(main, ["check"])
    assert (result.exit_code, result.stdout) == (0, told)


@pytest.mark.parametrize("verb", JOB_VERBS)
def test_a_verb_elsewhere_asks_for_its_job(verb: str, shop: Shop) -> None:
    result = shop.run(verb)
    assert (result.exit_code, result.stdout) == (2, "")
    said = f"No JOB is named, and this folder holds no job file. Name one, like: jambs {verb} house"
    assert said in result.stderr.replace("main ", "jambs ")


def test_the_module_is_the_command() -> None:
    done = subprocess.run([sys.executable, "-m", "jambs", "--version"], capture_output=True, text=True, check=True)
    assert done.stdout == f"jambs, version {__version__}\n"
