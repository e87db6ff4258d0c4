"""The telephone's requests without a browser: what it may do, and everything that it may not."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
import segno
from pages import READING, OpenPage, open_page
from PIL import Image
from starlette.testclient import TestClient

from jambs.page import guard
from jambs.page.guard import LARGEST_BODY
from jambs.page.keys import KeyRole
from jambs.sheets.label_codes import code_text


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


@pytest.fixture
def telephone(opened: OpenPage) -> TestClient:
    return opened.client(KeyRole.TELEPHONE)


def picture(text: str = "", *, size: tuple[int, int] = (60, 40), exif: bool = False) -> bytes:
    """Return a photo as a telephone sends it: turned on its side, with the place where it was taken."""
    out = io.BytesIO()
    if text:
        segno.make(text, error="m", micro=False).save(out, kind="png", scale=6)
        return out.getvalue()
    image = Image.new("RGB", size, (200, 30, 30))
    tags = Image.Exif()
    if exif:
        tags[0x0112] = 6  # turned a quarter (Exif 2.3, from memory)
        tags[0x010F] = "a maker of telephones"
        tags.get_ifd(0x8825)[1] = "N"  # where it was taken
    image.save(out, "JPEG", exif=tags)
    return out.getvalue()


def test_the_link_of_a_telephone_leads_to_the_list(opened: OpenPage) -> None:
    client = opened.client(None)
    answer = client.get(f"/enter/{opened.application.keys.token(KeyRole.TELEPHONE)}")
    assert 'content="0;url=/telephone"' in answer.text
    answer = client.get("/telephone")
    assert "W1" in answer.text and "Studio" in answer.text
    assert client.get("/telephone/opening/w1").status_code == 200


def test_a_reading_is_answered_and_sent_twice_is_written_once(telephone: TestClient, opened: OpenPage) -> None:
    answer = telephone.post("/telephone/reading", json=READING)
    assert answer.status_code == 200 and answer.json()["answer"]["read"]["1"] == "3 3/8"
    table = (opened.file.parent / "measures.csv").read_bytes()
    assert telephone.post("/telephone/reading", json=READING).json() == answer.json()
    assert (opened.file.parent / "measures.csv").read_bytes() == table
    assert opened.reported == []


def test_the_desk_sees_what_was_measured(telephone: TestClient, opened: OpenPage) -> None:
    for place, text in {1: "3 3/8", 3: "3 1/2", 5: "3 5/8", 7: "3 1/2"}.items():
        telephone.post("/telephone/reading", json={**READING, "id": f"{place}", "place": place, "text": text})
    assert "measured" in opened.client(KeyRole.DESK).get("/").text


@pytest.mark.parametrize(
    ("change", "status", "said"),
    [
        ({"text": "3 3/17"}, 422, "a tape is divided"),
        ({"place": 99}, 422, "no place 99"),
        ({"mark": "W9"}, 422, "no opening W9"),
        ({"was": "3"}, 200, ""),
        ({"place": "1"}, 400, "no reading"),
        ({"place": True}, 400, "no reading"),
        ({"text": ""}, 400, "no reading"),
        ({"text": ["3"]}, 400, "no reading"),
        ({"id": ""}, 400, "no reading"),
        ({"by": "x" * 300}, 400, "no reading"),
        ({"mark": "../../job"}, 422, "no opening"),
        ({"day": "2026-13-45"}, 422, "2026-13-45"),
    ],
)
def test_what_is_no_reading_is_said_to_be_none(
    change: dict[str, object], status: int, said: str, telephone: TestClient, opened: OpenPage
) -> None:
    answer = telephone.post("/telephone/reading", json=READING | change)
    assert answer.status_code == status and said in answer.text
    assert (opened.file.parent / "measures.csv").exists() is (status == 200)
    assert opened.reported == []


def test_another_telephones_reading_is_handed_back(telephone: TestClient, opened: OpenPage) -> None:
    telephone.post("/telephone/reading", json=READING)
    other = opened.client(KeyRole.TELEPHONE)
    answer = other.post("/telephone/reading", json=READING | {"id": "b", "text": "3 1/2", "by": "Bert"})
    assert answer.status_code == 409
    assert answer.json() == {"id": "b", "there": "3 3/8", "by": "Ann"}


def test_where_the_job_is_at_fault_the_telephone_waits_and_says_why(telephone: TestClient, opened: OpenPage) -> None:
    text = opened.file.read_text()
    opened.file.write_text(text.replace("kerf: 1/8", "kerf: wide"))
    shown = telephone.get("/telephone").text
    assert "wide" in shown and "Nothing can be measured now" in shown and "Try again" in shown
    answer = telephone.post("/telephone/reading", json=READING)
    assert answer.status_code == 503 and "has to wait" in answer.text and "wide" in answer.text
    opened.file.write_text(text)
    assert telephone.post("/telephone/reading", json=READING).status_code == 200
    assert opened.reported == []


# ---- attacks


@pytest.mark.parametrize("path", ["/", "/openings/W1", "/stop", "/enter", "/static/../job.yaml", "/draft", "/save"])
@pytest.mark.parametrize("how", ["get", "post"])
def test_a_telephone_reaches_nothing_of_the_desk(path: str, how: str, telephone: TestClient, opened: OpenPage) -> None:
    before = opened.file.read_bytes()
    stopped: list[bool] = []
    opened.application.stop = lambda: stopped.append(True)
    assert telephone.request(how, path).status_code in (403, 404)
    assert opened.file.read_bytes() == before and stopped == []


def test_a_telephone_changes_nothing_but_the_table_and_its_name(telephone: TestClient, opened: OpenPage) -> None:
    before = opened.file.read_text()
    telephone.post("/telephone/reading", json=READING)
    assert opened.file.read_text() == before.replace("units: inch\n", "units: inch\nmeasures: measures.csv\n")


def test_ten_wrong_links_and_telephones_wait(opened: OpenPage) -> None:
    client = opened.client(None)
    answers = [client.get(f"/enter/wrong{count}").status_code for count in range(11)]
    assert answers == [403] * 10 + [429]
    assert client.get(f"/enter/{opened.application.keys.token(KeyRole.TELEPHONE)}").status_code == 429


def test_another_sites_page_writes_no_reading(telephone: TestClient, opened: OpenPage) -> None:
    answer = telephone.post("/telephone/reading", json=READING, headers={"origin": "http://evil.example"})
    assert answer.status_code == 403 and not (opened.file.parent / "measures.csv").exists()


def test_a_body_is_bounded(telephone: TestClient, opened: OpenPage, monkeypatch: pytest.MonkeyPatch) -> None:
    assert telephone.post("/telephone/reading", content=b"x" * (LARGEST_BODY + 1)).status_code == 413
    for path in ("/telephone/photo/", "/telephone/code"):
        monkeypatch.setitem(guard.LARGER, path, 2000)
    assert telephone.post("/telephone/photo/W1", content=b"x" * 2001).status_code == 413
    assert telephone.post("/telephone/code", content=b"x" * 2001).status_code == 413
    assert opened.reported == []


# ---- pictures


def test_a_photo_is_kept_upright_small_and_without_its_place(telephone: TestClient, opened: OpenPage) -> None:
    answer = telephone.post("/telephone/photo/w1", content=picture(size=(2400, 1200), exif=True))
    assert answer.json() == {"said": "Kept beside the job: photos/W1.jpg"}
    kept = opened.file.parent / "photos" / "W1.jpg"
    with Image.open(kept) as found:
        assert found.size == (800, 1600)
        assert not found.getexif() and set(found.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}
    shown = telephone.get("/telephone/photo/W1")
    assert shown.content == kept.read_bytes() and shown.headers["content-type"] == "image/jpeg"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "no photo that can be read"),
        (b"<svg/>", "no photo that can be read"),
        (b"GIF89a", "no photo that can be read"),
        (b"\xff\xd8\xff\xe0 half a photo", "is damaged or was cut off"),
    ],
)
def test_what_is_no_photo_is_not_kept(content: bytes, said: str, telephone: TestClient, opened: OpenPage) -> None:
    answer = telephone.post("/telephone/photo/W1", content=content)
    assert answer.status_code == 422 and said in answer.text
    assert not (opened.file.parent / "photos").exists() and opened.reported == []


def test_a_photo_of_too_many_pixels_is_refused(telephone: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("jambs.page.photos.MOST_PIXELS", 1000)
    assert telephone.post("/telephone/photo/W1", content=picture()).status_code == 422


@pytest.mark.parametrize("mark", ["W9", "..%2Fjob", "%2Fetc%2Fpasswd"])
def test_a_photo_is_of_an_opening_of_the_job(mark: str, telephone: TestClient, opened: OpenPage) -> None:
    assert telephone.post(f"/telephone/photo/{mark}", content=picture()).status_code in (403, 404)
    assert telephone.get(f"/telephone/photo/{mark}").status_code in (403, 404)
    assert sorted(one.name for one in opened.file.parent.iterdir()) == ["job.yaml"]


@pytest.mark.parametrize("mark", ["W1", "w1", "W1-7"])
def test_the_code_on_a_sheet_and_on_a_label_opens_its_opening(mark: str, telephone: TestClient) -> None:
    answer = telephone.post("/telephone/code", content=picture(code_text(mark, "not issued", "Garden studio")))
    assert answer.json() == {"path": "/telephone/opening/W1"}


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (picture(code_text("W1", "not issued", "Harbour house")), "This code is not of Garden studio"),
        (picture(code_text("W7", "not issued", "Garden studio")), "Nothing on record says which opening was W7"),
        (picture("https://evil.example"), "This code is not of Garden studio"),
        (picture(), "No code is read in this picture"),
        (b"nothing", "no picture that can be read"),
    ],
)
def test_another_code_is_told_from_it(content: bytes, said: str, telephone: TestClient) -> None:
    answer = telephone.post("/telephone/code", content=content)
    assert answer.status_code == 422 and said in answer.text


def test_a_new_job_has_to_be_saved_before_it_is_measured(tmp_path: Path) -> None:
    """Nothing stands in its folder yet, and a telephone makes nothing there."""
    opened = open_page(tmp_path)
    telephone = opened.client(KeyRole.TELEPHONE)
    text = opened.file.read_bytes()
    opened.file.unlink()
    opened.file.parent.rmdir()
    for shown in (telephone.get("/telephone"), telephone.get("/telephone/opening/W1")):
        assert "There is no job.yaml yet: press Save on the page at the desk." in shown.text
    answer = telephone.post("/telephone/reading", json=READING)
    assert answer.status_code == 503 and "press Save on the page" in answer.json()["said"]
    for path in ("/telephone/photo/W1", "/telephone/code"):
        answer = telephone.post(path, content=picture())
        assert answer.status_code == 503 and "press Save on the page" in answer.json()["said"]
    assert not opened.file.parent.exists() and opened.reported == []
    opened.file.parent.mkdir()
    opened.file.write_bytes(text)
    assert telephone.post("/telephone/reading", json=READING).status_code == 200


def test_the_desk_is_told_that_telephones_see_what_is_saved(opened: OpenPage) -> None:
    desk = opened.client()
    assert "Not all is saved" not in desk.get("/telephones").text
    assert desk.post("/openings/W1/position", json={"plane": 4.6, "reach": 0, "alone": False}).status_code == 200
    assert "Not all is saved" in desk.get("/telephones").text
