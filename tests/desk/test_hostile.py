"""Text of scans, names of files and addresses are hostile: everywhere they render as what they are, text."""

from __future__ import annotations

import io
import re
import struct
import zlib
from collections.abc import Iterator
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from adminer.desk.plain import plain
from adminer.desk.uploads import slug_of, take_in
from adminer.records import Link
from tests.desk.desks import SmallDesk, renamed, small_desk
from tests.desk.pages import CLIPPING, offer, page

SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(1)>\"'><svg/onload=alert(1)>"
TEMPLATE = "{{ 311*311 }}{% for x in y %}${311*311}#{311*311}<%= 311*311 %>"
CONTROLS = "a\u202egnp\u2066b\x1b[31mred\x1b]0;title\x07\x9b2Jc\u200fd\x00e\u2028f"
HOSTILE = [SCRIPT, TEMPLATE, CONTROLS, "=HYPERLINK(1)", "--><!--", "]]>", "javascript:alert(1)", "&lt;b&gt;"]
PAGES = ("/", "/in", "/check", f"/check/{CLIPPING}", "/names", "/ask", "/look", "/look/runs", "/look/prices",
         "/look/weeks", "/look/coverage", "/look/dates", f"/look/dates/{CLIPPING}-a1", "/journal",
         "/look/searches", "/look/objects", "/ask/set-prices", "/ask/clipping-facts", "/search?q=script")  # fmt: skip


class Tags(HTMLParser):
    """Gather tags and attributes of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Iterator[SmallDesk]:
    offers = tuple(
        replace(
            offer(n + 1, text, "0.69", y=60 + 80 * n),
            line=Link("silverthaw", text, text, offer(1, "", "1", y=1).box, 0.9, text, warning=text),
            why=text,
            piece_or_set=text,
        )
        for n, text in enumerate(HOSTILE)
    )
    hostile = page(offers)
    advert = hostile.adverts[0]
    link = Link(None, SCRIPT + TEMPLATE + CONTROLS, SCRIPT, advert.box, 0.9, SCRIPT)
    hostile = replace(hostile, adverts=(replace(advert, retailer=link, city=SCRIPT + CONTROLS),))
    hostile = renamed(hostile, "a{{311*311}}'\"&<b>.png")
    made = small_desk(tmp_path_factory.mktemp("hostile"), [hostile])
    note = {"publication": SCRIPT, "city": TEMPLATE, "remark": "=1+1", "page": "\u202ex"}
    made.desk.set_notes([hostile.clipping.file], note)
    made.desk.put_row("search", 0, None, {"paper": SCRIPT + CONTROLS, "issues": TEMPLATE, "line": SCRIPT})
    made.desk.put_row("object", 0, None, {"what": SCRIPT, "mark": TEMPLATE + CONTROLS, "remark": "=1+1"})
    yield made
    made.desk.journal.close()


@pytest.mark.parametrize("path", PAGES)
def test_hostile_text_is_text_on_every_page(small: SmallDesk, path: str) -> None:
    answer = small.client().get(path)
    assert answer.status_code == 200
    tags = Tags()
    tags.feed(answer.text)
    assert not [name for name, _ in tags.attributes if name.startswith("on") or name == "style"]
    assert all(value is None or not value.strip().lower().startswith("javascript:") or name == "value"
               for name, value in tags.attributes)  # fmt: skip
    assert "b" not in tags.tags or "<b>.png" not in answer.text
    scripts = re.findall(r"<script[^>]*>", answer.text)
    assert all('src="/static/' in script for script in scripts)
    assert "96721" not in answer.text  # 311 * 311, had any template run it
    assert not re.search("[\u202a-\u202e\u2066-\u2069\x00\x07\x1b\x9b\u2028]", answer.text)


@pytest.mark.parametrize("asked", [*HOSTILE, "x" * 5000, "%", "_", "'; DROP TABLE words; --", "\ud800"])
def test_a_search_for_anything_is_harmless(small: SmallDesk, asked: str) -> None:
    answer = small.client().get("/search", params={"q": asked.encode("utf-8", "replace").decode()})
    assert answer.status_code == 200
    assert "<script>alert" not in answer.text


@pytest.mark.parametrize("path", [
    "/check/..%2f..%2fetc", "/check/%00", "/scan/x/overview.jpg", "/scan/..%2f/overview.jpg",
    f"/scan/{CLIPPING}/tile/99/0/0.jpg", f"/scan/{CLIPPING}/tile/0/99/99.jpg", "/ask/..%2fschema",
    "/ask/set-prices/download/exe", "/static/../app.py", "/static/%2e%2e/app.py", "/look/dates/none",
    f"/look/dates/{CLIPPING}-a9/posterior.svg", "/journal/none/undo",
])  # fmt: skip
def test_a_strange_address_ends_in_a_sentence(small: SmallDesk, path: str) -> None:
    answer = small.client().get(path)
    assert answer.status_code in (404, 405, 422)
    assert "Traceback" not in answer.text
    assert "import" not in answer.text


@pytest.mark.parametrize("box", ["", "1,2,3", "a,b,c,d", "-1,0,5,5", "1,1,0,0", "9999999999,1,1,1", "900,1,5,5"])
def test_a_strange_box_ends_in_a_sentence(small: SmallDesk, box: str) -> None:
    assert small.client().get(f"/scan/{CLIPPING}/crop.jpg", params={"box": box}).status_code in (200, 404, 422)


@given(st.text())
def test_nothing_that_acts_is_left_in_plain_text(text: str) -> None:
    assert plain(plain(text)) == plain(text)
    assert not re.search("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u200e\u200f]", plain(text))


@pytest.mark.parametrize(("offered", "slug"), [
    ("../../etc/passwd", "passwd"), ("C:\\scans\\Mar 12.JPG", "mar-12"), ("..", "scan"), ("", "scan"),
    ("con.png", "scan"),
    (".hidden.png", "hidden"), ("a\x00b.png", "a-b"), ("Ä Öl.tif", "a-ol"), ("x" * 300 + ".png", "x" * 80),
    ("a/b/../c.png", "c"), ("-rf.png", "rf"), ("<script>.png", "script"), ("\u202egnp.exe", "gnp"),
    ("日本.png", "scan"),
])  # fmt: skip
def test_names_of_files_never_become_paths(offered: str, slug: str) -> None:
    assert slug_of(offered) == slug


def picture(kind: str = "PNG", size: tuple[int, int] = (40, 40)) -> io.BytesIO:
    stream = io.BytesIO()
    Image.effect_noise(size, 80).save(stream, kind)
    stream.seek(0)
    return stream


def test_an_upload_gets_the_ending_of_what_it_is_and_replaces_nothing(tmp_path: Path) -> None:
    assert take_in(tmp_path, "../a.exe", picture()).file == "a.png"
    before = (tmp_path / "a.png").read_bytes()
    assert take_in(tmp_path, "a.png", picture()).file == "a-2.png"
    assert take_in(tmp_path, "a.png", picture("JPEG")).file == "a.jpg"
    assert (tmp_path / "a.png").read_bytes() == before
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a-2.png", "a.jpg", "a.png"]


@pytest.mark.parametrize("content", [b"", b"\x89PNG\r\n\x1a\n", b"<svg onload=alert(1)>", b"GIF89a", b"\x00" * 100])
def test_what_is_no_picture_is_refused_by_name(tmp_path: Path, content: bytes) -> None:
    taken = take_in(tmp_path, "x.png", io.BytesIO(content))
    assert taken.file is None
    assert taken.problem
    assert not list(tmp_path.iterdir())


def test_a_picture_of_too_many_pixels_is_refused_unopened(tmp_path: Path) -> None:
    head = struct.pack(">IIBBBBB", 30_000, 30_000, 1, 0, 0, 0, 0)
    chunks = ((b"IHDR", head), (b"IDAT", b""))
    body = b"".join(struct.pack(">I", len(d)) + n + d + struct.pack(">I", zlib.crc32(n + d)) for n, d in chunks)
    stream = io.BytesIO(b"\x89PNG\r\n\x1a\n" + body)
    taken = take_in(tmp_path, "huge.png", stream)
    assert taken.file is None
    assert "too large" in (taken.problem or "")


def test_uploads_by_form_report_each_file_and_start_the_reading(small: SmallDesk) -> None:
    client, before = small.client(), small.reader.starts  # pages looked at before may have begun runs of their own
    files = [("scans", ("<b>new.png", picture(), "image/png")), ("scans", ("bad.png", io.BytesIO(b"no"), "image/png"))]
    answer = client.post("/in/scans", files=files)
    assert answer.status_code == 422
    assert "1 scan taken in" in answer.text
    assert "bad.png" in answer.text
    assert small.reader.starts == before + 1
    assert (small.desk.folder.scans / "b-new.png").exists()
