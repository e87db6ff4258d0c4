"""A record that cannot lie: who may write, what goes, what is damaged, what is known without it."""

from __future__ import annotations

import json
import os
import shutil
from pathlib import Path

import pytest
from folders import DAY, JOB, blob, entry, is_whole, staged, texts, write

from jambs.issued.durable import sha256_of
from jambs.issued.entry import JobIdentity
from jambs.issued.errors import RecordError
from jambs.issued.findings import Conflict
from jambs.issued.paths import WITNESS
from jambs.issued.record import Record
from jambs.issued.writing import begin


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "papers"


def test_the_digest_is_a_sha256() -> None:
    """SHA-256 of "abc", as the standard prints it (FIPS 180-4, worked example)."""
    digest = "ba7816bf 8f01cfea 414140de 5dae2223 b00361a3 96177a9c b410ff61 f20015ad"
    assert sha256_of(b"abc") == digest.replace(" ", "")


def test_an_entry_says_what_was_written_by_whom_for_what(folder: Path) -> None:
    write(folder, {"cut sheets/W1.pdf": "one"})
    write(folder, {"labels.pdf": "two"}, verb="labels", inside="site")
    papers = Record.open(folder).papers
    assert {path: (one.verb, one.issue, one.marks, one.sha256) for path, one in papers.items()} == {
        "cut sheets/W1.pdf": ("build", 1, ("W1",), sha256_of(b"one")),
        "site/labels.pdf": ("labels", 1, ("W1",), sha256_of(b"two")),
    }
    assert texts(folder) == {"cut sheets/W1.pdf": "one", "site/labels.pdf": "two"}


def test_documents_are_kept_with_their_issue(folder: Path) -> None:
    write(folder, {"a": "1"}, documents={"readings.json": b"{}"})
    write(folder, {"a": "2"}, documents={"readings.json": b"[1]"})
    record = Record.open(folder)
    assert [record.document(record.issue(number), "readings.json") for number in (1, 2)] == [b"{}", b"[1]"]


def test_the_same_again_is_no_entry(folder: Path) -> None:
    write(folder, {"a": "1"})
    for _ in range(2):
        write(folder, {"labels.pdf": "one"}, verb="labels", inside="site")
    assert [one.verb for one in Record.open(folder).entries] == ["build", "labels"]


# ---- a verb removes what it wrote itself, and nothing else


def test_a_verb_leaves_the_papers_of_another(folder: Path) -> None:
    write(folder, {"cut sheets/W1.pdf": "one"})
    write(folder, {"placement.csv": "two"}, verb="compare")
    write(folder, {"plan.json": "three"}, verb="buy")
    assert set(texts(folder)) == {"cut sheets/W1.pdf", "placement.csv", "plan.json"}
    write(folder, {"cut sheets/W2.pdf": "four"})
    assert set(texts(folder)) == {"cut sheets/W2.pdf", "placement.csv", "plan.json"}


def test_what_a_verb_wrote_before_goes_and_its_empty_folder_too(folder: Path) -> None:
    write(folder, {"a": "1", "in/b": "1"})
    write(folder, {"a": "2"})
    assert texts(folder) == {"a": "2"} and not (folder / "in").exists()


def test_what_is_said_to_stay_stays(folder: Path) -> None:
    write(folder, {"a": "1", "b": "1"})
    write(folder, {"a": "2"}, stays=["b"])
    assert texts(folder) == {"a": "2", "b": "1"} and set(Record.open(folder).papers) == {"a", "b"}


def test_a_changed_paper_that_is_void_is_left_and_named(folder: Path) -> None:
    write(folder, {"a": "1", "b": "1"})
    staged(folder, {"b": "with pencil"})
    said: list[str] = []
    write(folder, {"a": "2"}, said=said)
    assert texts(folder)["b"] == "with pencil"
    assert said == ["b is void; it was changed since it was written, and is left there"]


def test_a_paper_on_record_that_is_gone_is_put_back(folder: Path) -> None:
    write(folder, {"a": "1", "b": "1"})
    (folder / "b").unlink()
    said: list[str] = []
    write(folder, {"a": "2"}, stays=["b"], said=said)
    assert texts(folder) == {"a": "2", "b": "1"} and said == ["b was gone and is put back"]


def test_a_paper_of_another_verb_that_is_gone_is_off_the_list(folder: Path) -> None:
    write(folder, {"a": "1"})
    write(folder, {"labels.pdf": "one"}, verb="labels")
    (folder / "labels.pdf").unlink()
    said: list[str] = []
    write(folder, {"a": "2"}, said=said)
    assert said == ["labels.pdf is gone and is off the list of papers"]
    assert set(Record.open(folder).papers) == {"a"}


@pytest.mark.parametrize("left", [b"", b"\0\0\0"])
def test_a_paper_that_a_power_cut_emptied_is_put_back_unasked(folder: Path, left: bytes) -> None:
    write(folder, {"a": "1"})
    write(folder, {"labels.pdf": "one"}, verb="labels")
    for name in ("a", "labels.pdf"):
        (folder / name).write_bytes(left)
    with begin(folder, JOB, verb="build") as writing, writing.fresh_folder() as fresh:
        assert writing.conflicts(staged(fresh, {"a": "2"})) == []
    write(folder, {"a": "2"})
    assert texts(folder) == {"a": "2", "labels.pdf": "one"} and is_whole(folder)


def test_only_what_the_user_touched_is_in_the_way(folder: Path) -> None:
    write(folder, {"a": "1", "b": "1", "c": "1", "g": "1"})
    write(folder, {"a": "2", "b": "1", "c": "1", "g": "2"})
    staged(folder, {"b": "mine", "d": "mine", "e": "same", "g": "1"})
    with begin(folder, JOB, verb="build") as writing, writing.fresh_folder() as fresh:
        staged(fresh, {"a": "3", "b": "2", "c": "2", "d": "2", "e": "same", "f": "2", "g": "3"})
        found = writing.conflicts(fresh)
    assert found == [Conflict(path="b", was_ours=True), Conflict(path="d", was_ours=False)]


# ---- one folder, one job


@pytest.fixture
def houses(tmp_path: Path) -> tuple[Path, JobIdentity, JobIdentity]:
    """Two jobs of the same name of folder, and the folder of papers they would share."""
    for place in ("lake", "hill"):
        staged(tmp_path / place / "house", {"job.yaml": ""})
    lake, hill = (JobIdentity(name=one, file=f"../../{one}/house/job.yaml") for one in ("lake", "hill"))
    return tmp_path / "output" / "house", lake, hill


def test_a_folder_of_another_job_is_refused(houses: tuple[Path, JobIdentity, JobIdentity]) -> None:
    folder, lake, hill = houses
    write(folder, {"a": "1"}, job=lake)
    before = sorted(folder.rglob("*"))
    said = r"house holds the papers of the job 'lake' \(../../lake/house/job.yaml\); those of 'hill' \(../../hill/house"
    with pytest.raises(RecordError, match=said):
        write(folder, {"a": "2"}, job=hill)
    assert texts(folder) == {"a": "1"} and sorted(folder.rglob("*")) == before


def test_a_copy_of_a_job_under_its_old_name_is_another_job(houses: tuple[Path, JobIdentity, JobIdentity]) -> None:
    folder, lake, hill = houses
    write(folder, {"a": "1"}, job=lake)
    with pytest.raises(RecordError, match="Choose another folder with --out, or move that one away"):
        write(folder, {"a": "2"}, job=JobIdentity(name="lake", file=hill.file))


def test_a_job_that_moved_or_was_renamed_keeps_its_papers(houses: tuple[Path, JobIdentity, JobIdentity]) -> None:
    folder, lake, _ = houses
    write(folder, {"a": "1"}, job=lake)
    write(folder, {"a": "2"}, job=JobIdentity(name="lake, revised", file=lake.file))
    (folder.parents[1] / "lake").rename(folder.parents[1] / "pond")
    write(folder, {"a": "3"}, job=JobIdentity(name="lake, revised", file="../../pond/house/job.yaml"))
    assert [one.job.name for one in Record.open(folder).entries] == ["lake", "lake, revised", "lake, revised"]


# ---- records are input


OUT_OF_THE_FOLDER = ("../precious.txt", "/precious.txt", "a/../../precious.txt", "C:/precious", "..\\precious.txt", "")


@pytest.mark.parametrize("path", [*OUT_OF_THE_FOLDER, "issued/files/x", ".written.json"])
def test_no_path_of_a_record_leads_out_of_the_folder(folder: Path, path: str) -> None:
    precious = folder.parent / "precious.txt"
    staged(folder.parent, {"precious.txt": "mine"})
    write(folder, {"a": "1"})
    plain = json.loads(entry(folder, 1).read_text(encoding="utf-8"))
    plain["papers"][path] = {**plain["papers"]["a"], "sha256": sha256_of(b"mine")}
    entry(folder, 1).write_text(json.dumps(plain), encoding="utf-8")
    (folder / WITNESS).unlink()
    said: list[str] = []
    write(folder, {"a": "2"}, said=said)
    assert precious.read_text(encoding="utf-8") == "mine"
    assert any("leads out of the folder of papers" in one for one in said)


def test_a_link_that_leads_out_is_not_followed(folder: Path) -> None:
    elsewhere = staged(folder.parent / "elsewhere", {"W1.pdf": "mine"})
    write(folder, {"cut sheets/W1.pdf": "one"})
    shutil.rmtree(folder / "cut sheets")
    (folder / "cut sheets").symlink_to(elsewhere, target_is_directory=True)
    with pytest.raises(RecordError, match="is a link that leads out of"):
        write(folder, {"cut sheets/W1.pdf": "two"})
    assert texts(elsewhere) == {"W1.pdf": "mine"}


PAPER = {"sha256": "0" * 64, "kind": "x", "verb": "build", "issue": 1}


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("number", "1", "damaged: number is not a whole number"),
        ("issue", True, "damaged: issue is not a whole number"),
        ("papers", [], "damaged: papers is not a set of names"),
        ("sheets", {"W1": 3}, "damaged: sheet is not a set of names"),
        ("documents", {"parts.json": "../../x"}, "damaged: parts.json is not a sha256"),
        ("changed", "W1", "damaged: changed is not a list"),
        ("why", {"W1": None}, "damaged: W1 is not a text"),
        ("papers", {"a": {"marks": [{}]}}, "damaged: a is not a paper"),
        ("papers", {"a": {"marks": "W1", **PAPER}}, "damaged: marks is not a list"),
        ("papers", {"a": {"marks": [1], **PAPER}}, "damaged: marks is not a text"),
        ("papers", {"a": {"marks": [], **PAPER, "issue": 1.0}}, "damaged: issue is not a whole number"),
    ],
)
def test_wrong_types_are_a_sentence(folder: Path, name: str, value: object, said: str) -> None:
    write(folder, {"a": "1"})
    plain = json.loads(entry(folder, 1).read_text(encoding="utf-8"))
    entry(folder, 1).write_text(json.dumps({**plain, name: value}), encoding="utf-8")
    (folder / WITNESS).unlink()
    heard: list[str] = []
    write(folder, {"a": "2"}, said=heard)
    assert heard[0] == f"issued/entries/00001.json is {said}, and was set aside as issued/set aside/00001.json"


def test_a_record_of_a_later_version_is_left_alone(folder: Path) -> None:
    write(folder, {"a": "1"})
    plain = json.loads(entry(folder, 1).read_text(encoding="utf-8"))
    entry(folder, 1).write_text(json.dumps({**plain, "version": 3}), encoding="utf-8")
    with pytest.raises(
        RecordError, match=r"^the record was written by a later version of jambs \(format 3\); use that version$"
    ):
        write(folder, {"a": "2"})
    assert texts(folder) == {"a": "1"} and entry(folder, 1).exists()


# ---- a damaged record


def three_issues(folder: Path) -> Path:
    for number in (1, 2, 3):
        write(folder, {"a": str(number), "b": "same"})
    return folder


def spoil(file: Path, how: str) -> None:
    content = file.read_bytes()
    if how == "missing":
        file.unlink()
    else:
        spoiled = {"cut short": content[: len(content) // 2], "empty": b"", "full of zeros": bytes(len(content))}
        file.write_bytes(spoiled.get(how) or (content.replace(b"2026", b"2025") if how == "changed" else b""))


HOW = ["missing", "cut short", "empty", "full of zeros", "changed"]


@pytest.mark.parametrize("how", HOW)
@pytest.mark.parametrize("number", [1, 2, 3])
def test_a_damaged_entry_is_written_anew_from_its_copy(folder: Path, number: int, how: str) -> None:
    before = entry(three_issues(folder), number).read_bytes()
    spoil(entry(folder, number), how)
    said: list[str] = []
    write(folder, {"a": "4"}, said=said)
    assert said == [f"entry {number} of the record was damaged or gone, and is written anew from its copy"]
    assert entry(folder, number).read_bytes() == before
    assert list(Record.open(folder).issues) == [1, 2, 3, 4]
    assert (folder / "issued" / "set aside" / entry(folder, number).name).exists() is (how != "missing")


@pytest.mark.parametrize("how", HOW)
def test_without_any_copy_it_is_set_aside_and_the_house_goes_on(folder: Path, how: str) -> None:
    spoil_copy = sha256_of(entry(three_issues(folder), 2).read_bytes())
    (folder / "issued" / "files" / spoil_copy).unlink()
    spoil(entry(folder, 2), how)
    said: list[str] = []
    write(folder, {"a": "4", "b": "same"}, said=said)
    named = {"changed": "changed since it was written"}.get(how, how)
    first = f"issued/entries/00002.json is {named}, and was set aside as issued/set aside/00002.json"
    assert said == [
        "entry 2 of the record is missing" if how == "missing" else first,
        "No longer known: what was written and issued by entry 2. Known issues: 1, 3. "
        "The next issue is 4, so that no number stands on two sheets.",
    ]
    assert list(Record.open(folder).issues) == [1, 3, 4]
    said.clear()
    write(folder, {"a": "5", "b": "same"}, said=said)
    assert said == [] and is_whole(folder)


def test_the_last_entry_lost_with_its_copies_leaves_its_number_unused(folder: Path) -> None:
    three_issues(folder)
    entry(folder, 3).write_bytes(b"")
    (folder / WITNESS).unlink()
    said: list[str] = []
    write(folder, {"a": "4", "b": "same"}, said=said)
    record = Record.open(folder)
    assert list(record.issues) == [1, 2, 4] and record.latest and record.latest.number == 4
    assert said[-1].endswith("The next issue is 4, so that no number stands on two sheets.")
    assert texts(folder) == {"a": "4", "b": "same"}


def test_a_witness_that_is_damaged_is_written_anew(folder: Path) -> None:
    three_issues(folder)
    (folder / WITNESS).write_bytes(bytes(40))
    write(folder, {"labels.pdf": "x"}, verb="labels")
    found = Record.open(folder)
    assert found.witness and found.latest and found.witness.entry == found.latest and found.latest.number == 4


def test_a_record_that_is_gone_is_noticed_and_numbers_go_on(folder: Path) -> None:
    three_issues(folder)
    shutil.rmtree(folder / "issued")
    said: list[str] = []
    write(folder, {"a": "4", "b": "same"}, said=said)
    assert said[0] == "entry 3 of the record was damaged or gone, and is written anew from its copy"
    assert said[1:] == [
        "entry 1-2 of the record is missing",
        "No longer known: what was written and issued by entries 1-2. Known issues: 3. "
        "The next issue is 4, so that no number stands on two sheets.",
    ]
    assert list(Record.open(folder).issues) == [3, 4]


def test_papers_without_any_record_are_noticed(folder: Path) -> None:
    write(folder, {"parts.json": "{}", "cut sheets/W1.pdf": "1"})
    shutil.rmtree(folder / "issued")
    (folder / WITNESS).unlink()
    said: list[str] = []
    write(folder, {"parts.json": "{}", "cut sheets/W1.pdf": "1"}, said=said)
    assert said == [
        f"{folder} holds papers, but no record of what was issued: it is gone. Sheets printed before today are void, "
        "whatever issue they name."
    ]


def test_a_fresh_folder_is_told_nothing(folder: Path) -> None:
    said: list[str] = []
    write(folder, {"parts.json": "{}", "cut sheets/W1.pdf": "1"}, said=said)
    write(folder, {"parts.json": "{1}", "cut sheets/W1.pdf": "2"}, said=said)
    assert said == []


def test_kept_content_that_is_damaged_is_healed_when_it_comes_again(folder: Path) -> None:
    write(folder, {"a": "1"})
    blob(folder, "1").write_bytes(b"?")
    write(folder, {"a": "1", "b": "2"})
    assert blob(folder, "1").read_bytes() == b"1"


def test_files_follow_the_umask(folder: Path) -> None:
    before = os.umask(0o027)
    try:
        write(folder, {"in/a": "1"})
    finally:
        os.umask(before)
    modes = {path.name: path.stat().st_mode & 0o777 for path in folder.rglob("*") if path.is_file()}
    assert set(modes.values()) == {0o640} and len(modes) > 3
    assert {path.stat().st_mode & 0o777 for path in folder.rglob("*") if path.is_dir()} == {0o750}


def test_nothing_stays_behind_where_nothing_was_written(tmp_path: Path) -> None:
    turn = begin(tmp_path / "out" / "papers", JOB, verb="build")
    with pytest.raises(KeyboardInterrupt), turn as writing, writing.fresh_folder() as fresh:
        staged(fresh, {"a": "half"})
        raise KeyboardInterrupt
    assert list(tmp_path.iterdir()) == []


def test_the_day_of_an_entry_is_the_day_of_its_commit(folder: Path) -> None:
    assert write(folder, {"a": "1"}).day == DAY
