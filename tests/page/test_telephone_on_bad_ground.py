"""A telephone on a slow network, while the program is killed and started again, and with photos of every kind."""

from __future__ import annotations

import io
import os
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from browser import Served, served
from pages import EXAMPLES
from PIL import Image
from playwright.sync_api import Browser, Page, Route, expect
from test_telephone_in_browser import PIXEL_7, enter, rows
from test_telephone_walks import at_opening

from jambs.page.listening import LOOPBACK, own_address


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, "garden-studio") as found:
        yield found
        assert found.reported == []


# ---- a slow network


def slowed(page: Page, *, latency: int, up: int, down: int) -> None:
    """Slow the network of a page down: how long an answer takes to begin [ms], what goes up and down [bytes/s]."""
    session = page.context.new_cdp_session(page)
    told = {"offline": False, "latency": latency, "uploadThroughput": up, "downloadThroughput": down}
    session.send("Network.emulateNetworkConditions", told)


def test_on_a_slow_network_nothing_waits_for_the_answer_and_each_reading_is_written_once(
    browser: Browser, place: Served
) -> None:
    page = at_opening(browser, place)
    slowed(page, latency=1500, up=2_000, down=4_000)
    sent: list[str] = []
    page.on("request", lambda request: sent.append(request.url) if request.method == "POST" else None)
    begun = time.monotonic()
    for fraction in ("3/8", "7/16", "1/2", "9/16"):
        enter(page, "3", fraction)
    assert time.monotonic() - begun < 6  # each answer alone takes longer than all four entries do
    expect(page.locator("#network")).to_contain_text("kept in this telephone: on the way")
    expect(page.locator("#network")).to_be_hidden(timeout=40_000)
    assert [rows(place)[number][4] for number in ("1", "3", "5", "7")] == ["3 3/8", "3 7/16", "3 1/2", "3 9/16"]
    assert len([one for one in sent if one.endswith("/telephone/reading")]) == 4


def test_an_answer_that_does_not_come_in_time_is_asked_for_again_and_nothing_is_written_twice(
    browser: Browser, place: Served
) -> None:
    """The program has written the reading, and its answer is lost: the same reading goes out again."""
    lost: list[int] = []

    def answer(route: Route) -> None:
        found = route.fetch()
        if lost:
            route.fulfill(response=found)
        else:
            lost.append(found.status)
            route.abort()

    page = at_opening(browser, place)
    page.route("**/telephone/reading", answer)
    enter(page, "3", "3/8")
    expect(page.locator("#network")).to_contain_text("no network")
    assert lost == [200] and rows(place)["1"][4] == "3 3/8"
    other = at_opening(browser, place)
    other.locator(".place-row").first.click()
    enter(other, "3", "1/2")  # somebody measures it anew before the first telephone is heard
    expect(other.locator("#state")).to_have_text("half measured")
    expect(page.locator("#network")).to_be_hidden(timeout=15_000)
    assert rows(place)["1"][4] == "3 1/2"


# ---- the program ends and is started again


@contextmanager
def program(house: Path, out: Path) -> Iterator[tuple[str, subprocess.Popen[str]]]:
    """Start the program as one does, and return the link of its telephones; it is killed in the end, not closed."""
    command = [sys.executable, "-m", "jambs", "open", str(house), "--out", str(out), "--telephone", "--no-browser"]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, text=True, env=os.environ | {"PYTHONUNBUFFERED": "1"}
    ) as run:
        assert run.stdout
        try:
            for line in run.stdout:
                if found := re.fullmatch(rf"  (http://{re.escape(own_address())}:\S+)\n", line):
                    yield found[1], run
                    break
        finally:
            run.send_signal(signal.SIGKILL)


def measured(house: Path) -> str:
    file = house / "measures.csv"
    return file.read_text(encoding="utf-8-sig") if file.exists() else ""


@pytest.mark.skipif(own_address() == LOOPBACK, reason="this computer is in no network")
def test_a_program_that_is_killed_and_started_again_gets_every_reading_once(browser: Browser, tmp_path: Path) -> None:
    house = tmp_path / "studio"
    shutil.copytree(EXAMPLES / "garden-studio", house, ignore=shutil.ignore_patterns("output"))
    page = browser.new_context(**PIXEL_7).new_page()
    with program(house, tmp_path / "out") as (link, run):
        base = link.partition("/enter/")[0]
        page.goto(link)
        page.wait_for_url(f"{base}/telephone")
        page.locator("#openings a").first.tap()
        expect(page.locator("#asked")).not_to_be_empty()
        enter(page, "3", "3/8")
        expect(page.locator("#state")).to_have_text("half measured", timeout=60_000)
        run.send_signal(signal.SIGKILL)
        run.wait(10)
        enter(page, "3", "7/16")
        enter(page, "3", "1/2")
        expect(page.locator("#network")).to_contain_text("2 readings are kept in this telephone: no network")
    with program(house, tmp_path / "out") as (again, _):
        assert again.partition("/enter/")[0] == base and again != link  # one address, and another key
        expect(page.locator("#network")).to_contain_text("let in no longer; open the program's code again")
        enter(page, "3", "9/16")
        assert measured(house).count("interior depth") == 8 and "3 7/16" not in measured(house)
        page.goto(again)
        page.wait_for_url(f"{base}/telephone")
        expect(page.locator("#network")).to_be_hidden(timeout=60_000)
        page.locator("#openings a").first.tap()
        expect(page.locator("#state")).to_have_text("measured")
        for reading in ("3 3/8", "3 7/16", "3 1/2", "3 9/16"):
            assert measured(house).count(f",{reading},") == 1


# ---- photos


def photo(size: tuple[int, int], *, turned: bool = False) -> bytes:
    """Return a photo with a picture that packs badly, as leaves and plaster do."""
    grain = Image.effect_noise((size[0] // 4, size[1] // 4), 90).resize(size, Image.Resampling.NEAREST)
    tags, out = Image.Exif(), io.BytesIO()
    if turned:
        tags[0x0112] = 6  # turned a quarter (Exif 2.3, from memory)
        tags[0x010F] = "a maker of telephones"
    grain.convert("RGB").save(out, "JPEG", quality=92, exif=tags)
    return out.getvalue()


def take(page: Page, content: bytes, folder: Path, name: str = "photo.jpg") -> list[int]:
    """Take a photo; return how many bytes go out with each request."""
    sent: list[int] = []
    page.on("request", lambda one: sent.append(len(one.post_data_buffer or b"")) if "/photo/" in one.url else None)
    file = folder / name
    file.write_bytes(content)
    page.locator("#picture").set_input_files(str(file))
    return sent


def test_a_photo_of_fifty_million_pixels_goes_out_small_and_upright(
    browser: Browser, place: Served, tmp_path: Path
) -> None:
    page, content = at_opening(browser, place), photo((8160, 6120), turned=True)
    assert len(content) > 20_000_000
    sent = take(page, content, tmp_path)
    expect(page.locator("#said")).to_have_text("Kept beside the job: photos/W1.jpg", timeout=60_000)
    assert max(sent) < 2_000_000
    with Image.open(place.file.parent / "photos" / "W1.jpg") as kept:
        assert kept.size == (1200, 1600) and not kept.getexif()


HEIC = b"\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic"


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("cut off.jpg", photo((4000, 3000))[:2_500_000], "is damaged or was cut off on its way; take it again"),
        ("half.jpg", photo((800, 600))[:20_000], "is damaged or was cut off on its way; take it again"),
        ("paper.pdf", b"%PDF-1.7" + bytes(600_000), "This is no photo that can be read; send a JPEG, PNG or WebP"),
        ("nothing.jpg", b"", "This is no photo that can be read"),
    ],
)
def test_what_cannot_be_kept_is_told_and_waits_no_longer(
    name: str, content: bytes, said: str, browser: Browser, place: Served, tmp_path: Path
) -> None:
    page = at_opening(browser, place)
    take(page, content, tmp_path, name)
    expect(page.locator("#said")).to_contain_text(said)
    waits = page.evaluate(KEYS)
    assert waits == [] and not (place.file.parent / "photos").exists()


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (HEIC + bytes(2_000), "is HEIC or another format that cannot be read here; set the camera to JPEG"),
        (HEIC + bytes(30_000_000), "is HEIC or another format that cannot be read here; set the camera to JPEG"),
        (b"%PDF-1.7" + bytes(30_000_000), "is larger than 20 MB, and could not be made smaller here"),
    ],
)
def test_what_would_be_refused_is_told_before_it_is_sent(
    content: bytes, said: str, browser: Browser, place: Served, tmp_path: Path
) -> None:
    page = at_opening(browser, place)
    sent = take(page, content, tmp_path, "photo.heic")
    expect(page.locator("#said")).to_contain_text(said)
    assert sent == [] and page.evaluate(KEYS) == []
    page.goto(f"{place.base}/telephone")
    page.locator("#picture").set_input_files(str(tmp_path / "photo.heic"))
    expect(page.locator("#said")).to_contain_text(said)


def test_a_photo_in_a_format_that_the_telephone_reads_alone_goes_out_as_jpeg(
    browser: Browser, place: Served, tmp_path: Path
) -> None:
    """AVIF stands for HEIC here, in the same container: this browser reads the one, some telephones the other."""
    page, out = at_opening(browser, place), io.BytesIO()
    Image.new("RGB", (640, 480), (40, 90, 40)).save(out, "AVIF")
    take(page, out.getvalue(), tmp_path, "photo.avif")
    expect(page.locator("#said")).to_have_text("Kept beside the job: photos/W1.jpg")
    with Image.open(place.file.parent / "photos" / "W1.jpg") as kept:
        assert kept.size == (640, 480)


KEYS = """() => new Promise((done) => {
  const asked = indexedDB.open("jambs", 1);
  asked.onsuccess = () => {
    const keys = asked.result.transaction("photos").objectStore("photos").getAllKeys();
    keys.onsuccess = () => done(keys.result);
  };
})"""
"""What waits of photos in the browser's own store."""


def test_a_photo_on_a_slow_network_is_kept_and_readings_go_out_beside_it(
    browser: Browser, place: Served, tmp_path: Path
) -> None:
    page = at_opening(browser, place)
    slowed(page, latency=400, up=60_000, down=60_000)
    take(page, photo((4000, 3000)), tmp_path)
    expect(page.locator("#said")).to_contain_text("on its way")
    enter(page, "3", "3/8")
    expect(page.locator("#state")).to_have_text("half measured")
    assert page.locator("#said").text_content() == "The photo is on its way …"
    expect(page.locator("#said")).to_have_text("Kept beside the job: photos/W1.jpg", timeout=90_000)
    assert rows(place)["1"][4] == "3 3/8"
