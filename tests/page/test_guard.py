"""Who may come in, and what a request may be: each way in that is not meant is tried."""

from __future__ import annotations

from pathlib import Path

import pytest
from pages import COOKIE, HOST, ORIGIN, OpenPage, open_page
from starlette.testclient import TestClient
from starlette.websockets import WebSocketDisconnect

from jambs.page import guard
from jambs.page.keys import MOST_WRONG, WITHIN, KeyRing, KeyRole, TooManyWrong
from jambs.page.views import house_view


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


def test_the_link_lets_in(opened: OpenPage) -> None:
    answer = opened.client().get("/")
    assert answer.status_code == 200
    assert "Garden studio" in answer.text


def test_the_cookie_is_for_the_browser_alone(opened: OpenPage) -> None:
    client = TestClient(opened.application, base_url=ORIGIN)
    answer = client.get(f"/enter/{opened.application.keys.token(KeyRole.DESK)}", follow_redirects=False)
    said = answer.headers["set-cookie"].lower()
    assert said.startswith(f"{COOKIE}=")
    assert "httponly" in said and "samesite=strict" in said
    assert opened.application.keys.token(KeyRole.DESK) not in said


@pytest.mark.parametrize("host", ["evil.example", "evil.example:8123", "127.0.0.1", "127.0.0.1:80", "[::1]:8123", ""])
def test_a_name_that_is_pointed_here_is_refused(host: str, opened: OpenPage) -> None:
    answer = opened.client().get("/", headers={"host": host})
    assert answer.status_code == 421
    assert "Garden studio" not in answer.text


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "http://127.0.0.1:9", f"https://{HOST}", None])
def test_what_another_page_sends_does_nothing(origin: str | None, opened: OpenPage) -> None:
    stopped: list[bool] = []
    opened.application.stop = lambda: stopped.append(True)
    client = opened.client()
    del client.headers["origin"]
    headers = {"origin": origin} if origin else {}
    assert client.post("/stop", headers=headers).status_code == 403
    assert stopped == []
    assert client.post("/stop", headers={"origin": ORIGIN}).status_code == 200
    assert stopped == [True]


@pytest.mark.parametrize(
    ("path", "way"),
    [(one, "Open the page with the link") for one in ("/", "/stop", "/nowhere")]
    + [("/telephone", "point its camera at the code")],
)
def test_nobody_comes_in_without_the_link(path: str, way: str, opened: OpenPage) -> None:
    answer = opened.client(None).get(path)
    assert answer.status_code == 403
    assert way in answer.text


def test_a_cookie_of_another_day_is_none(opened: OpenPage) -> None:
    client = opened.client(None)
    client.cookies.set(COOKIE, "A" * 22)
    assert client.get("/").status_code == 403


@pytest.mark.parametrize("path", ["/", "/nowhere", "/telephones", "/telephone/../"])
def test_a_telephone_does_nothing_but_measure(path: str, opened: OpenPage) -> None:
    assert opened.client(KeyRole.TELEPHONE).get(path).status_code == 403


def test_ten_wrong_links_in_a_minute_and_everybody_waits() -> None:
    now = [0.0]
    keys = KeyRing(clock=lambda: now[0])
    right = keys.token(KeyRole.DESK)
    assert [keys.exchange(f"wrong {count}") for count in range(MOST_WRONG)] == [None] * MOST_WRONG
    with pytest.raises(TooManyWrong):
        keys.exchange(right)
    now[0] = WITHIN
    assert keys.exchange(right) is not None


def test_nine_wrong_links_keep_nobody_out() -> None:
    keys = KeyRing(clock=lambda: 0.0)
    for count in range(MOST_WRONG - 1):
        keys.exchange(f"wrong {count}")
    assert keys.exchange(keys.token(KeyRole.DESK)) is not None


def test_a_new_link_of_a_role_ends_the_old_one_and_its_cookies() -> None:
    keys = KeyRing()
    old, desk = keys.token(KeyRole.TELEPHONE), keys.exchange(keys.token(KeyRole.DESK))
    came_in = keys.exchange(old)
    assert came_in and desk and keys.role_of(came_in[0]) is KeyRole.TELEPHONE
    new = keys.renew(KeyRole.TELEPHONE)
    assert keys.exchange(old) is None
    assert keys.role_of(came_in[0]) is None
    assert keys.exchange(new) is not None
    assert keys.role_of(desk[0]) is KeyRole.DESK


@pytest.mark.parametrize(
    "name",
    ["../desk.py", "..%2fdesk.py", "%2e%2e/desk.py", "....//desk.py", "/etc/passwd", "page.css%00", "..\\desk.py"],
)
def test_no_path_of_a_request_leads_to_a_file(name: str, opened: OpenPage) -> None:
    answer = opened.client().get(f"/static/{name}")
    assert answer.status_code == 404
    assert "import" not in answer.text


def test_a_body_has_a_bound_said_or_not(opened: OpenPage) -> None:
    client = opened.client()
    assert client.post("/stop", content=b" " * guard.LARGEST_BODY).status_code == 200
    assert client.post("/stop", content=b" " * (guard.LARGEST_BODY + 1)).status_code == 413


def test_a_stream_without_a_length_is_counted(opened: OpenPage, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guard, "LARGEST_BODY", 1000)
    client, path = opened.client(), "/openings/W1/position"  # it reads what it is sent
    assert client.post(path, content=iter([b" " * 600, b" " * 300])).status_code != 413
    assert client.post(path, content=iter([b" " * 600, b" " * 600])).status_code == 413
    assert opened.reported == []


@pytest.mark.parametrize("path", ["/", "/static/page.css", "/nowhere", "/enter/wrong"])
def test_the_policy_stands_on_every_answer(path: str, opened: OpenPage) -> None:
    headers = opened.client().get(path).headers
    policy = headers["content-security-policy"]
    assert policy.startswith("default-src 'self'; ")
    assert "unsafe" not in policy and "http" not in policy
    assert headers["x-content-type-options"] == "nosniff"


def test_no_template_and_no_module_has_what_the_policy_forbids() -> None:
    room = Path(guard.__file__).parent
    for file in (*room.rglob("*.html"), *room.rglob("*.js"), *room.rglob("*.css"), *room.rglob("*.svg")):
        text = file.read_text(encoding="utf-8")
        plain = text.replace("http://www.w3.org/2000/svg", "")
        assert "http://" not in plain and "https://" not in plain, file
        if file.suffix == ".html":
            assert "<style" not in text and " style=" not in text and " onclick" not in text, file
            assert "<script>" not in text, file


def test_a_name_in_the_job_is_text_in_the_page(opened: OpenPage) -> None:
    text = opened.file.read_text(encoding="utf-8")
    opened.file.write_text(text.replace("job: Garden studio", "job: <script>alert(1)</script>"), encoding="utf-8")
    shown = opened.client().get("/").text
    assert "<script>alert(1)" not in shown
    assert "&lt;script&gt;alert(1)" in shown


def test_a_fault_of_the_program_is_a_sentence_and_no_traceback(
    opened: OpenPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> None:
        raise RuntimeError("secret of the workshop")

    monkeypatch.setattr(house_view, "house_data", broken)
    answer = opened.client().get("/")
    assert answer.status_code == 500
    assert "Something unexpected happened, which is a fault of jambs. report.txt says what happened" in answer.text
    assert "secret" not in answer.text and "Traceback" not in answer.text
    assert [str(error) for error in opened.reported] == ["secret of the workshop"]


@pytest.mark.parametrize("origin", ["http://evil.example", "null"])
def test_a_socket_of_another_page_is_closed(origin: str, opened: OpenPage) -> None:
    client = opened.client()
    with pytest.raises(WebSocketDisconnect), client.websocket_connect("/any", headers={"origin": origin}):
        pass
