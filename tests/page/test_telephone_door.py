"""The door for telephones: shut unless asked for, on an address of its own, and shut again for all who came in."""

from __future__ import annotations

import io
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
import segno
import zxingcpp
from pages import OpenPage, open_page
from PIL import Image

from jambs.page import telephone_door
from jambs.page.keys import KeyRole
from jambs.page.listening import LOOPBACK, listening_for
from jambs.page.telephone_door import NoNetwork, TelephoneDoor, code_lines, code_picture


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


@pytest.fixture
def door(opened: OpenPage, monkeypatch: pytest.MonkeyPatch) -> Iterator[TelephoneDoor]:
    """A door on this computer alone, called by a name that counts as its address in the network."""
    monkeypatch.setattr(telephone_door, "own_address", lambda: "localhost")
    made = TelephoneDoor(opened.application, file=opened.file, keys=opened.application.keys, hosts=opened.hosts)
    opened.application.give_door(made)
    yield made
    made.close()


def test_the_link_lets_a_telephone_in_until_the_door_is_shut(door: TelephoneDoor, opened: OpenPage) -> None:
    assert door.link is None
    link = door.open()
    assert door.open() == link == door.link
    jar = urllib.request.build_opener(urllib.request.HTTPCookieProcessor())
    list_page = link.partition("/enter/")[0] + "/telephone"
    jar.open(link).close()
    with jar.open(list_page) as answer:
        assert b"W1" in answer.read()
    door.close()
    assert door.link is None
    with pytest.raises(urllib.error.URLError):
        jar.open(list_page, timeout=2)
    again = door.open()
    assert again != link and again.partition("/enter/")[0] == link.partition("/enter/")[0]
    with pytest.raises(urllib.error.HTTPError, match="403"):
        jar.open(list_page)
    with pytest.raises(urllib.error.HTTPError, match="403"):
        jar.open(link)


def test_the_desk_opens_and_shuts_the_door(door: TelephoneDoor, opened: OpenPage) -> None:
    desk = opened.client(KeyRole.DESK)
    assert "Let telephones in" in desk.get("/telephones").text
    shown = desk.post("/telephones/open").text
    assert door.link and door.link in shown and "<svg" in shown
    assert "Let telephones in" in desk.post("/telephones/shut").text and door.link is None


def test_a_telephone_opens_no_door(door: TelephoneDoor, opened: OpenPage) -> None:
    assert opened.client(KeyRole.TELEPHONE).post("/telephones/open").status_code == 403
    assert door.link is None


def test_without_a_network_it_says_so(opened: OpenPage, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(telephone_door, "own_address", lambda: LOOPBACK)
    made = TelephoneDoor(opened.application, file=opened.file, keys=opened.application.keys, hosts=set())
    opened.application.give_door(made)
    with pytest.raises(NoNetwork, match="in no network"):
        made.open()
    assert "in no network" in opened.client(KeyRole.DESK).post("/telephones/open").text


def test_the_port_is_the_same_every_day_and_another_where_that_is_taken(tmp_path: Path) -> None:
    file = tmp_path / "job.yaml"
    with listening_for(file, everywhere=True) as first:
        port = first.getsockname()[1]
        assert 20_000 <= port < 32_000
        with listening_for(file, everywhere=True) as second:
            assert second.getsockname()[1] != port
    with listening_for(file, everywhere=True) as third:
        assert third.getsockname()[1] == port


def test_the_code_says_the_link() -> None:
    link = "http://192.168.1.7:20123/enter/AbCd-efgh_1234567890zz"
    assert code_picture(link).startswith("<svg") and "style" not in code_picture(link)
    lines = code_lines(link)
    assert len(set(map(len, lines.strip("\n").split("\n")))) <= 2
    out = io.BytesIO()
    segno.make(link, error="m", micro=False).save(out, kind="png", scale=5)
    (read,) = zxingcpp.read_barcodes(Image.open(out))
    assert read.text == link
