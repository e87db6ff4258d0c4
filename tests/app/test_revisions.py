"""Going back: the papers of an earlier issue hold again, the job file is told about and never touched unasked."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from shops import Reach, Shop, built, papers, reach, shop, undrawn

from jambs.app.earlier_job import earlier_job
from jambs.issued.entry import BUILD, JobIdentity
from jambs.issued.errors import Unreadable
from jambs.issued.record import Record
from jambs.issued.writing import Commit, NewIssue, begin

pytestmark = pytest.mark.usefixtures("undrawn")
WIDE, NARROW = "frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2"


@pytest.fixture
def narrowed(built: Shop, reach: Reach) -> Shop:
    """The worked case issued twice: the second time with a narrower frame."""

    def issue() -> None:
        built.change(WIDE, NARROW)
        assert built.run("build", "house", "--without-solids").exit_code == 0

    reach("narrowed", issue)
    return built


def job_text(shop: Shop) -> str:
    return shop.job.read_text(encoding="utf-8")


def test_every_issue_keeps_its_job(narrowed: Shop) -> None:
    record = Record.open(narrowed.output)
    kept = [record.document(record.issue(number), "job/job.yaml").decode() for number in (1, 2)]
    assert WIDE in kept[0] and NARROW in kept[1] and kept[1] == job_text(narrowed)


def test_going_back_says_what_differs_and_leaves_the_job_alone(narrowed: Shop) -> None:
    before = job_text(narrowed)
    line = next(number for number, text in enumerate(before.splitlines(), start=1) if NARROW in text)
    result = narrowed.run("revisions", "house", "--withdraw-to", "1")
    assert result.exit_code == 0, result.output
    said = result.stdout.splitlines()
    assert said[0] == "issue 3 is the same as issue 1; papers of other issues are void"
    assert said[1].startswith("  W01: window or its frame changed") and "if cut already, recut W01-" in said[1]
    assert said[2:6] == [
        "The job is not as it was in issue 1; the next build issues that again:",
        f"  job.yaml, then: {WIDE}",
        f"  job.yaml, line {line} now: {NARROW}",
        "To write it as it was: jambs revisions JOB --withdraw-to 1 --job-file beside (or over)",
    ]
    assert job_text(narrowed) == before
    assert [path.name for path in narrowed.job.parent.iterdir()] == ["job.yaml"]


def test_going_back_to_the_same_figures_says_that_only_the_sheet_is_another(narrowed: Shop) -> None:
    """Wide, narrow, wide again: the sheets of issues 1 and 3 differ in what they say of the issue before, no more."""
    narrowed.change(NARROW, WIDE)
    assert narrowed.run("build", "house", "--without-solids").exit_code == 0
    said = narrowed.run("revisions", "house", "--withdraw-to", "1").stdout.splitlines()
    assert said[1] == "  W01: no figure changed; its sheet is that of issue 1 again"


def test_the_earlier_job_beside_it(narrowed: Shop) -> None:
    before = job_text(narrowed)
    result = narrowed.run("revisions", "house", "--withdraw-to", "1", "--job-file", "beside")
    beside = narrowed.job.parent / "issue 1" / "job.yaml"
    assert WIDE in beside.read_text(encoding="utf-8") and job_text(narrowed) == before
    assert f"{Path('house') / 'issue 1'} holds the job as it was in issue 1" in result.stdout
    assert narrowed.run("check", "house/issue 1").exit_code == 0
    narrowed.run("revisions", "house", "--withdraw-to", "1", "--job-file", "beside")
    assert (narrowed.job.parent / "issue 1 (2)" / "job.yaml").exists()


def test_the_earlier_job_over_it_and_nothing_is_lost(narrowed: Shop) -> None:
    before = job_text(narrowed)
    result = narrowed.run("revisions", "house", "--withdraw-to", "1", "--job-file", "over")
    assert result.exit_code == 0, result.output
    assert WIDE in job_text(narrowed) and NARROW not in job_text(narrowed)
    kept = narrowed.job.parent / "before issue 1 came back" / "job.yaml"
    assert kept.read_text(encoding="utf-8") == before
    assert (
        narrowed.run("build", "house", "--without-solids").stdout.splitlines()[-1] == "Nothing changed since issue 3."
    )


def test_a_table_of_the_job_comes_back_with_it(built: Shop) -> None:
    built.run("measure", "house")
    built.change("\nposition:", "\nmeasures: measures.csv\nposition:")
    table = built.job.parent / "measures.csv"
    built.change(WIDE, NARROW)
    assert built.run("build", "house", "--without-solids").exit_code == 0
    then = table.read_bytes()
    table.write_bytes(then + b"\n")
    built.change(NARROW, WIDE)
    assert built.run("build", "house", "--without-solids").exit_code == 0
    result = built.run("revisions", "house", "--withdraw-to", "2", "--job-file", "beside")
    assert "measures.csv, line" in result.stdout
    assert (built.job.parent / "issue 2" / "measures.csv").read_bytes() == then


def test_a_job_that_did_not_change_is_said_to_be_the_same(built: Shop) -> None:
    assert "The job is as it was in issue 1." in built.run("revisions", "house", "--withdraw-to", "1").stdout


def test_an_issue_of_the_earlier_format_kept_no_job(shop: Shop) -> None:
    earlier = Path(__file__).parents[1] / "issued" / "earlier_record"
    shutil.copytree(earlier, shop.output)
    shop.job.write_text(job_text(shop).replace("job: ", "job: worked case #", 1), encoding="utf-8")
    name = Record.open(shop.output).entries[0].job.name
    lines = [f"job: {name}" if one.startswith("job:") else one for one in job_text(shop).splitlines()]
    shop.job.write_text("\n".join(lines) + "\n", encoding="utf-8")
    result = shop.run("revisions", "house", "--withdraw-to", "1")
    assert result.exit_code == 0, result.output
    assert "The job file of issue 1 was not kept; change back by hand" in result.stdout
    assert (shop.output / "cut sheets" / "W1.2.pdf").read_text(encoding="utf-8") == "W1.2, issue 1"


def test_a_build_says_that_it_brings_back_what_was_withdrawn(narrowed: Shop) -> None:
    narrowed.run("revisions", "house", "--withdraw-to", "1")
    said = narrowed.run("build", "house", "--without-solids").stdout
    assert "Issue 4, changed sheets of W01;" in said
    assert "(again as in issue 2, which issue 3 withdrew)" in said


def test_a_build_of_something_new_after_going_back_says_nothing_of_it(narrowed: Shop) -> None:
    narrowed.run("revisions", "house", "--withdraw-to", "1")
    narrowed.change(NARROW, "frame: 35 x 47 1/2")
    said = narrowed.run("build", "house", "--without-solids").stdout
    assert "Issue 4, changed sheets of W01;" in said and "again as in" not in said


def test_a_job_file_goes_with_going_back(shop: Shop) -> None:
    result = shop.run("revisions", "house", "--job-file", "over")
    assert result.exit_code == 2
    assert "--job-file goes with --withdraw-to; name the issue to go back to" in result.stderr


def test_papers_of_other_verbs_stay_when_going_back(narrowed: Shop) -> None:
    narrowed.run("labels", "house")
    narrowed.run("revisions", "house", "--withdraw-to", "1")
    assert (narrowed.output / "site" / "labels.pdf").exists()
    assert Record.open(narrowed.output).papers["site/labels.pdf"].issue == 2


def test_a_damaged_record_is_told_by_the_list_too(built: Shop) -> None:
    built.run("labels", "house")
    (built.output / "issued" / "entries" / "00001.json").write_bytes(b"")
    result = built.run("revisions", "house")
    assert "entry 1 of the record was damaged or gone, and is written anew from its copy" in result.stderr
    assert result.stdout.startswith("issue   1")


def test_nothing_issued_yet_and_nothing_made(shop: Shop) -> None:
    result = shop.run("revisions", "house")
    assert result.stdout.strip() == "nothing issued yet; `jambs build` makes the first issue"
    assert shop.files() == []


@pytest.mark.parametrize("name", ["job/../../evil.yaml", "job//etc/evil.yaml", "job/"])
def test_no_name_of_a_kept_job_file_leads_out_of_its_folder(tmp_path: Path, name: str) -> None:
    job, issue = JobIdentity(name="house", file=""), NewIssue(sheets={}, changed=(), why={})
    with begin(tmp_path / "papers", job, verb=BUILD) as writing, writing.fresh_folder() as folder:
        entry = writing.commit(Commit(staged=folder, day="2026-05-04", documents={name: b"evil"}, issue=issue))
    with pytest.raises(Unreadable, match="leads out of the folder"):
        earlier_job(Record.open(tmp_path / "papers"), entry)
