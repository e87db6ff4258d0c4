"""The placement comparison as it is used: the verb, the pages read back, the record and the table beside them."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import csv
import json
import re
import sys
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from shops import Shop, shop

from jambs.app.chain import make_kits
from jambs.app.positions import comparison_text
from jambs.job import read_job
from jambs.sheets.comparison_charts import charts
from jambs.study.record.figures import figure, share, signed
from jambs.study.record.planned_positions import planned_positions
from jambs.wall.planes import stack_wall

FOLDER = "output/house/placement"
NUMBER = re.compile(r"[-−+]?\d+(?:\.\d+)?(?: \d+/\d+|/\d+)?")


@pytest.fixture(scope="module")
def compared(tmp_path_factory: pytest.TempPathFactory) -> tuple[Shop, str]:
    """The worked case, compared once."""
    import shutil

    from shops import WORKED

    folder = tmp_path_factory.mktemp("compare")
    (folder / "house").mkdir()
    shutil.copy(WORKED, folder / "house" / "job.yaml")
    with pytest.MonkeyPatch.context() as patch:
        run = Shop(folder, patch)
        result = run.run("compare", "house")
    assert result.exit_code == 0, result.output
    return run, result.output


def record_of(compared: tuple[Shop, str]) -> dict[str, Any]:
    text = (compared[0].folder / FOLDER / "placement.json").read_text(encoding="utf-8")
    found: dict[str, Any] = json.loads(text)
    return found


def page_texts(compared: tuple[Shop, str]) -> list[str]:
    reader = PdfReader(compared[0].folder / FOLDER / "placement comparison.pdf")
    return [re.sub(r"\s+", " ", page.extract_text().replace("\u200b", "")) for page in reader.pages]


def texts_in(value: Any) -> set[str]:
    """Every text of a record."""
    if isinstance(value, dict):
        return set().union(*(texts_in(one) for one in value.values()), *({key} for key in value))
    if isinstance(value, list):
        return set().union(set(), *(texts_in(one) for one in value))
    return {value} if isinstance(value, str) else set()


def test_what_is_written_and_said(compared: tuple[Shop, str]) -> None:
    run, output = compared
    there = [name for name in run.files() if "/issued/" not in name]
    assert there == [
        "output/house/.written.json",
        f"{FOLDER}/placement comparison.pdf",
        f"{FOLDER}/placement.csv",
        f"{FOLDER}/placement.json",
    ]
    assert "the job's own" in output and "W/K through the joint" in output
    assert "no figure here promises a window free of condensation" in output
    assert output.rstrip().endswith(FOLDER)


def test_the_record_says_what_it_is(compared: tuple[Shop, str]) -> None:
    record = record_of(compared)
    assert (record["format"], record["version"]) == ("jambs placement comparison", 1)
    assert len(record["windows"]) >= 1 and len(record["walls"]) >= 1
    assert all(fact["assumed"] is not None for fact in record["site"])
    for window in record["windows"]:
        assert window["convention"].startswith("Counted beyond the clear wall")
        assert "Films 0.13 inside, 0.04 outside" in window["convention"]


def test_every_figure_of_a_column_is_in_the_record(compared: tuple[Shop, str]) -> None:
    """Numbers on the pages of candidates and walls, and the last one, each stand in a text of the record."""
    record = record_of(compared)
    known = {number for text in texts_in(record) for number in NUMBER.findall(text)}
    own_words = {"3-D", "2-D", "6946", "13788", "10077-2", "1", "2", "60"}
    allowed = known | {one for word in own_words for one in NUMBER.findall(word)}
    pages = page_texts(compared)
    chosen = [page for page in pages if "over all positions" not in page]
    assert len(chosen) == len(record["windows"]) + len(record["walls"]) + 1
    for page in chosen:
        body = re.sub(
            r"page \d+ of \d+|job of [\d-]+|shop grid \S+|(?:not issued|issue \d+) · \S+ · [0-9A-F]{4}", "", page
        )
        found = set(NUMBER.findall(body))
        assert found and found - allowed == set()


def test_every_figure_of_the_record_is_on_its_page(compared: tuple[Shop, str]) -> None:
    record, pages = record_of(compared), page_texts(compared)
    for place, window in enumerate(record["windows"]):
        page = pages[2 * place].replace(" ", "")
        for one in window["candidates"]:
            for key in ("flange_plane", "interior_depth", "exterior_depth"):
                assert one[key]["text"].replace(" ", "") in page
            for side in one.get("heat", {}).get("sides", {}).values():
                assert f"{side['text']} ±{side['half_width']['text']}".replace(" ", "") in page
            for group in ("heat", "cold"):
                for key in ("whole", "per_season", "sweats_above", "estimate_sweats_above", "temperature"):
                    if key in one.get(group, {}):
                        assert one[group][key]["text"].replace(" ", "") in page
        for one in window["details"]:
            assert one["words"].replace(" ", "") in pages[2 * place + 1].replace(" ", "")


def test_each_window_has_two_pages_with_what_its_figures_are_worth(compared: tuple[Shop, str]) -> None:
    record, pages = record_of(compared), page_texts(compared)
    assert len(pages) == 2 * len(record["windows"]) + len(record["walls"]) + 1
    for place in range(len(record["windows"])):
        for page in pages[2 * place : 2 * place + 2]:
            assert "Films 0.13 inside" in page
        assert "uncertain by 0.005 to 0.01 W/mK" in pages[2 * place]
        assert "not modeled" in pages[2 * place]
        assert "nothing here is folded into one score" in pages[2 * place]
        assert "(assumed)" in pages[2 * place]
    assert "Permeances are dry-cup values" in pages[-1] and "wet-cup values of plywood" in pages[-1]
    assert "limits within 0.0015, their mean within 0.0001" in pages[-1] and "factors within 0.0033" in pages[-1]


def test_the_table_holds_the_candidates_exactly(compared: tuple[Shop, str]) -> None:
    record = record_of(compared)
    text = (compared[0].folder / FOLDER / "placement.csv").read_text(encoding="utf-8")
    rows = list(csv.DictReader(text.splitlines()))
    wanted = [(window, one) for window in record["windows"] for one in window["candidates"]]
    assert len(rows) == len(wanted)
    for row, (window, one) in zip(rows, wanted, strict=True):
        assert (row["wall"], row["window"], row["letter"]) == (window["wall"], window["window"], one["letter"])
        assert float(row["interior_depth"]) == pytest.approx(one["interior_depth"]["value"], rel=1e-5)
        if "heat" in one:
            assert float(row["whole_window_W_K"]) == pytest.approx(one["heat"]["whole"]["value"], rel=1e-5)
            assert float(row["sweats_above_humidity"]) == pytest.approx(one["cold"]["sweats_above"]["value"], rel=1e-5)
        else:
            assert row["whole_window_W_K"] == "" and one["why_not"]


def test_over_the_least_is_counted_from_the_least(compared: tuple[Shop, str]) -> None:
    for window in record_of(compared)["windows"]:
        least = next(one for one in window["candidates"] if "least heat loss" in one["names"])
        assert least["heat"]["over_least"]["value"] == 0.0
        for one in window["candidates"]:
            if "heat" in one:
                apart = one["heat"]["per_season"]["value"] - least["heat"]["per_season"]["value"]
                assert one["heat"]["over_least"]["value"] == pytest.approx(apart, abs=1e-9)
        assert window["least"]["flange_plane"] == least["flange_plane"]


def test_the_order_sheet_says_what_the_columns_say(compared: tuple[Shop, str]) -> None:
    """One row for each window at its own position, with the figures of the comparison where the size is the same."""
    run, _ = compared
    job = read_job(run.job)
    rows = planned_positions(make_kits(job), job)
    record = record_of(compared)
    for window in record["windows"]:
        own = next(one for one in window["candidates"] if "the job's own" in one["names"])
        row = next(one for one in rows if (one["wall"], one["type"]) == (window["wall"], window["window"]))
        assert row["flange_plane"] == own["flange_plane"]["text"]
        assert row["marks"] == window["marks"]
        if window["computed_for"]["mark"] == window["marks"][0]:
            assert (row["heat"], row["whole"]) == (own["heat"]["mean"]["text"], own["heat"]["whole"]["text"])
            assert row["sweats"] == own["cold"]["sweats_above"]["text"]
        assert "uncertain by 0.005 to 0.01" in row["words"] and "(assumed)" in row["words"]


def test_files_of_the_user_are_not_overwritten(shop: Shop) -> None:
    target = shop.output / "placement"
    target.mkdir(parents=True)
    (target / "placement.csv").write_text("mine\n")
    result = shop.run("compare", "house")
    assert result.exit_code == 1
    assert "placement.csv (not written by jambs)" in result.output
    assert "move them away, or give --overwrite" in result.output
    assert (target / "placement.csv").read_text() == "mine\n"
    assert sorted(path.name for path in target.iterdir()) == ["placement.csv"]


def test_a_broken_site_is_told_before_anything_is_computed(shop: Shop) -> None:
    text = shop.job.read_text(encoding="utf-8")
    shop.job.write_text(text + "\nsite: {latitude_deg: 43, indoor_humidity: 0.4}\n", encoding="utf-8")
    result = shop.run("compare", "house")
    assert result.exit_code == 1
    assert "site: indoor_humidity: '0.4' is not a relative humidity; write it in percent, like 40 %" in result.output
    assert shop.files() == []


def test_the_verb_has_help_with_an_example(shop: Shop) -> None:
    result = shop.run("compare", "--help")
    assert result.exit_code == 0
    assert re.search(r"Examples?:\n +jambs compare", result.output)


@pytest.mark.parametrize("verb", ["check", "measure"])
def test_least_heat_loss_works_with_every_verb_that_places_windows(verb: str, shop: Shop) -> None:
    text = shop.job.read_text(encoding="utf-8")
    assert re.search(r"^position:.*$", text, re.M)
    shop.job.write_text(re.sub(r"^position:.*$", "position: least heat loss", text, flags=re.M), encoding="utf-8")
    result = shop.run(verb, "house")
    assert result.exit_code == 0, result.output


def test_texts_of_figures() -> None:
    assert figure(0.01049, "W/mK", 3)["text"] == "0.010"
    assert figure(-0.0001, "W/mK", 3)["text"] == "0.000"
    assert signed(-0.0031, "W/K", 3)["text"] == "−0.003"
    assert signed(0.0001, "W/K", 3)["text"] == "0"
    shown = share(0.556)
    assert shown is not None and shown["text"] == "56 %"
    assert share(None) is None


def test_charts_are_drawn_from_the_record(compared: tuple[Shop, str]) -> None:
    """A letter for every candidate that can be built, and one curve per side and their mean."""
    run, _ = compared
    job, record = read_job(run.job), record_of(compared)
    planes = stack_wall(job.openings[0].wall, grid=job.shop.grid)
    window = next(one for one in record["windows"] if one["wall"] == planes.wall.name)
    drawn = charts(window, planes, job.units, width=230)
    assert len(drawn) == 3
    for svg in drawn:
        assert svg.count("<circle") == sum("heat" in one for one in window["candidates"])
    assert all(f">{side}</text>" in drawn[0] for side in ("mean", *window["curve"][0]["heat"]["sides"]))


def test_help_stays_light() -> None:
    """The verb is known to the command line without loading what it computes with."""
    import subprocess

    code = (
        "import sys; from jambs.commands.command_line import main\n"
        "print(sorted({'numpy', 'scipy', 'pydantic', 'typst'} & set(sys.modules)), 'compare' in main.commands)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[] True"


def test_pages_name_every_opening(compared: tuple[Shop, str]) -> None:
    run, _ = compared
    text = " ".join(page_texts(compared))
    assert all(opening.mark in text for opening in read_job(run.job).openings)
    assert Path(run.folder / FOLDER).is_dir()


@pytest.mark.parametrize(("value", "text", "said"), [(-0.75, '-3/4"', '3/4" proud'), (0.75, '3/4"', '3/4"')])
def test_a_frame_that_stands_proud_is_said_as_everywhere(value: float, text: str, said: str) -> None:
    depth = {"value": value, "text": text}
    one = {"letter": "A", "names": ["there"], "interior_depth": {"text": '4"'}, "exterior_depth": depth, "refused": ""}
    window = {"window": "fixed", "wall": "main", "marks": ["W1"], "candidates": [one]}
    told = comparison_text({"windows": [window], "left_out": [], "cautions": []})
    assert told.splitlines()[1] == f'  A  there: interior 4", exterior {said}; cannot be built'
