"""Tricks tried on a page in an open network, or on a folder that somebody else has filled: each is turned away."""

from __future__ import annotations

import asyncio
import io
import os
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook
from pages import HOST, ORIGIN, READING, OpenPage, asked_now, open_page
from PIL import Image
from starlette.testclient import TestClient
from starlette.types import Message

from jambs.app.whole_file import write_whole
from jambs.page import guard, photos
from jambs.page.keys import KeyRole


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


@pytest.fixture
def telephone(opened: OpenPage) -> TestClient:
    return opened.client(KeyRole.TELEPHONE)


def photo() -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (60, 40), (200, 30, 30)).save(out, "JPEG")
    return out.getvalue()


# ---- the folder of the job was filled by somebody else


def test_a_photo_that_is_a_link_elsewhere_is_not_shown(telephone: TestClient, opened: OpenPage, tmp_path: Path) -> None:
    (tmp_path / "secret.jpg").write_bytes(photo())
    (opened.file.parent / "photos").mkdir()
    os.symlink(tmp_path / "secret.jpg", opened.file.parent / "photos" / "W1.jpg")
    assert telephone.get("/telephone/photo/W1").status_code == 404
    assert 'src="/telephone/photo' not in telephone.get("/telephone/opening/W1").text


def test_a_folder_of_photos_that_is_a_link_elsewhere_takes_none(
    telephone: TestClient, opened: OpenPage, tmp_path: Path
) -> None:
    (tmp_path / "elsewhere").mkdir()
    os.symlink(tmp_path / "elsewhere", opened.file.parent / "photos")
    answer = telephone.post("/telephone/photo/W1", content=photo())
    assert answer.status_code == 503 and "photos" in answer.json()["said"]
    assert list((tmp_path / "elsewhere").iterdir()) == [] and opened.reported == []


def test_a_link_where_a_file_is_made_first_is_not_written_through(tmp_path: Path) -> None:
    victim = tmp_path / "victim"
    victim.write_text("mine")
    os.symlink(victim, tmp_path / ".job.yaml.new")
    write_whole(tmp_path / "job.yaml", b"a: 1\n")
    assert victim.read_text() == "mine" and (tmp_path / "job.yaml").read_bytes() == b"a: 1\n"


@pytest.mark.parametrize("kind", ["folder", "pipe"])
def test_a_job_file_that_is_no_file_is_said_and_nothing_waits_for_it(kind: str, opened: OpenPage) -> None:
    client = opened.client()
    opened.file.unlink()
    if kind == "folder":
        opened.file.mkdir()
    else:
        os.mkfifo(opened.file)
    answer = client.get("/")
    assert answer.status_code == 503 and "job.yaml" in answer.text and "is no file" in answer.text
    assert opened.reported == []


def test_a_job_file_that_became_a_link_is_written_where_it_points_only_if_that_is_what_was_read(
    opened: OpenPage, tmp_path: Path
) -> None:
    client = opened.client()
    assert client.post("/openings/W1/position", json={"plane": 4.6, "reach": 0, "alone": False}).status_code == 200
    other = tmp_path / "other.yaml"
    other.write_text("name: of another\n")
    opened.file.unlink()
    os.symlink(other, opened.file)
    assert client.post("/draft/save", json={}).status_code == 409
    assert other.read_text() == "name: of another\n"


# ---- what is sent


@pytest.mark.parametrize(
    "host",
    [f"{HOST}@evil.example", f"evil.example@{HOST}", f"{HOST}.evil.example", f"{HOST} ", f"{HOST},evil.example",
     "127.0.0.1:08123", "127.0.0.1:8123#", "127.1:8123", "2130706433:8123", "LOCALHOST.evil:8123"],
)  # fmt: skip
def test_a_host_that_only_looks_like_ours_is_refused(host: str, opened: OpenPage) -> None:
    assert opened.client().get("/", headers={"host": host}).status_code == 421


def test_two_hosts_are_refused(opened: OpenPage) -> None:
    sent: list[Message] = []
    scope = _scope("GET", "/", [(b"host", HOST.encode()), (b"host", b"evil.example")])
    _run(opened, scope, [], sent)
    assert sent[0]["status"] == 421


@pytest.mark.parametrize("path", ["/openings/W1/position", "/job/change", "/papers/work", "/telephone/reading"])
def test_brackets_without_end_are_no_fault(path: str, opened: OpenPage) -> None:
    answer = opened.client().post(path, content=b"[" * 200_000)
    assert answer.status_code in (200, 400, 409) and opened.reported == []


def test_brackets_without_end_in_the_hand_are_passed_over(opened: OpenPage) -> None:
    client = opened.client()
    cookie = "; ".join(f"{name}={value}" for name, value in client.cookies.items())
    with client.websocket_connect("/hand", headers={"host": HOST, "cookie": cookie}) as socket:
        socket.send_text("[" * 200_000)
        socket.send_json({"n": 1, "mark": "W1", "plane": 1e308, "reach": -1, "first": True})
        assert socket.receive_json()["n"] == 1
    assert opened.reported == []


@pytest.mark.parametrize("text", ["\ud800", "Ann\x00", "Ann\nBert,1", "=HYPERLINK(1)", "\u202eAnn"])
def test_a_name_is_a_name(text: str, telephone: TestClient, opened: OpenPage) -> None:
    answer = telephone.post("/telephone/reading", content=_ascii(READING | {"by": text}))
    assert answer.status_code in (200, 400, 422) and opened.reported == []
    if answer.status_code == 200:
        table = (opened.file.parent / "measures.csv").read_text(encoding="utf-8-sig")
        assert not any(cell.startswith("=") for row in table.splitlines() for cell in row.split(","))


def _ascii(value: dict[str, Any]) -> bytes:
    import json

    return json.dumps(value).encode("ascii")


def test_a_form_of_many_parts_is_no_photo(telephone: TestClient, opened: OpenPage) -> None:
    answer = telephone.post("/telephone/photo/W1", files={"../../job.yaml": ("../../job.yaml", photo())})
    assert answer.status_code == 422 and opened.file.is_file()
    assert not (opened.file.parent / "photos").exists()


def test_photos_are_made_smaller_one_at_a_time() -> None:
    with photos.ONE_AT_A_TIME:
        assert photos.ONE_AT_A_TIME.locked()
    assert photos.kept_photo(photo()) and not photos.ONE_AT_A_TIME.locked()


def test_who_sends_slowly_is_sent_away(opened: OpenPage, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guard, "PATIENCE", 0.05)
    client = opened.client()
    cookie = "; ".join(f"{name}={value}" for name, value in client.cookies.items())
    headers = [(b"host", HOST.encode()), (b"origin", ORIGIN.encode()), (b"cookie", cookie.encode())]
    sent: list[Message] = []
    first: Message = {"type": "http.request", "body": b"{", "more_body": True}
    _run(opened, _scope("POST", "/openings/W1/position", headers), [first], sent)
    assert sent[0]["status"] == 408 and opened.reported == []


def _scope(method: str, path: str, headers: list[tuple[bytes, bytes]]) -> dict[str, Any]:
    return {
        "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": method, "path": path,
        "raw_path": path.encode(), "query_string": b"", "headers": headers, "scheme": "http", "root_path": "",
        "client": ("127.0.0.1", 1), "server": ("127.0.0.1", 8123), "state": {},
    }  # fmt: skip


def _run(opened: OpenPage, scope: dict[str, Any], messages: list[Message], sent: list[Message]) -> None:
    """Ask the application as a server would that gets these messages and then no more."""

    async def receive() -> Message:
        if messages:
            return messages.pop(0)
        await asyncio.sleep(30)
        return {"type": "http.disconnect"}

    async def send(message: Message) -> None:
        sent.append(message)

    asyncio.run(opened.application(scope, receive, send))


@pytest.mark.parametrize("name", ["../x.csv", "tables/x.csv", "../x.xlsx"])
def test_a_table_in_another_folder_is_read_and_never_written(
    name: str, opened: OpenPage, telephone: TestClient
) -> None:
    table = opened.file.parent / name
    table.parent.mkdir(exist_ok=True)
    rows = [("mark", "place", "measured"), ("W1", "date", "2026-06-01"), ("W1", "1", "3 3/8")]
    if name.endswith(".csv"):
        table.write_text("".join(f"{','.join(row)}\n" for row in rows))
    else:
        book = Workbook()
        for row in rows:
            book.worksheets[0].append(row)
        book.save(table)
    text = opened.file.read_text(encoding="utf-8").replace("units: inch\n", f"units: inch\nmeasures: {name}\n")
    opened.file.write_text(text, encoding="utf-8")
    before, beside = table.read_bytes(), {one.name for one in opened.file.parent.iterdir()}
    client = opened.client()
    assert client.get("/draft").json()["wrong"] == []
    asked = {"act": "set", "path": ["openings", 0, "mark"], "value": "W9"}
    answer = client.post("/job/change", json=asked_now(client, asked))
    assert answer.status_code == 409 and "stands in another folder" in answer.json()["said"]
    answer = telephone.post("/telephone/reading", json=READING | {"place": 3})
    assert answer.status_code == 422 and "put it beside the job file" in answer.json()["said"]
    assert table.read_bytes() == before and {one.name for one in opened.file.parent.iterdir()} == beside
    assert opened.reported == []
