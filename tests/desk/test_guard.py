"""Who may come in: host, origin, method, token, size, each with the status it must get."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from starlette.testclient import TestClient

from adminer.desk.app import make_app
from adminer.desk.guard import MOST_FORM_BYTES
from tests.desk.desks import HERE, PORT, TOKEN, SmallDesk, small_desk
from tests.desk.pages import CLIPPING, offer, page

GOOD = f"127.0.0.1:{PORT}"
PATHS = ("/", "/in", "/check", f"/check/{CLIPPING}", "/names", "/ask", "/look", "/journal", "/search?q=cup")


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Iterator[SmallDesk]:
    made = small_desk(tmp_path_factory.mktemp("guard"), [page((offer(1, "cup", "0.69", y=100),))])
    yield made
    made.desk.journal.close()


@pytest.mark.parametrize(
    ("host", "status"),
    [
        (GOOD, 200),
        (f"localhost:{PORT}", 200),
        ("127.0.0.1", 421),
        ("127.0.0.1:80", 421),
        (f"127.0.0.1:{PORT}.evil.example", 421),
        (f"evil.example:{PORT}", 421),
        ("evil.example", 421),
        (f"127.0.0.2:{PORT}", 421),
        (f"[::1]:{PORT}", 421),
        ("", 421),
    ],
)
@pytest.mark.parametrize("path", ["/", "/static/desk.css", f"/scan/{CLIPPING}/overview.jpg", "/open?token=x"])
def test_every_request_names_this_desk(small: SmallDesk, host: str, status: int, path: str) -> None:
    answer = small.client().get(path, headers={"host": host})
    assert answer.status_code == (403 if path.startswith("/open") and status == 200 else status)


SITES = {
    "none at all": ({}, 403),
    "same origin": ({"sec-fetch-site": "same-origin"}, 303),
    "typed by hand": ({"sec-fetch-site": "none"}, 403),
    "same site, other port": ({"sec-fetch-site": "same-site"}, 403),
    "another site": ({"sec-fetch-site": "cross-site"}, 403),
    "our origin": ({"origin": HERE}, 303),
    "our origin, both": ({"origin": HERE, "sec-fetch-site": "same-origin"}, 303),
    "null origin": ({"origin": "null"}, 403),
    "other port": ({"origin": "http://127.0.0.1:9999"}, 403),
    "other scheme": ({"origin": f"https://{GOOD}"}, 403),
    "other host": ({"origin": "http://evil.example"}, 403),
    "host in front": ({"origin": f"{HERE}.evil.example"}, 403),
    "they disagree": ({"origin": "http://evil.example", "sec-fetch-site": "same-origin"}, 403),
}
CHANGES = (
    "/in/read",
    "/in/pause",
    f"/check/{CLIPPING}/undo",
    f"/check/{CLIPPING}/offer/{CLIPPING}-a1-o1/confirm",
)


@pytest.mark.parametrize("site", SITES)
@pytest.mark.parametrize("path", CHANGES)
def test_a_change_comes_from_a_page_of_this_desk(small: SmallDesk, site: str, path: str) -> None:
    headers, status = SITES[site]
    client = small.client(follow=False)
    del client.headers["sec-fetch-site"]
    before, small.reader.starts, small.reader.pauses = small.desk.journal.acts, 0, 0
    answer = client.post(path, headers=headers)
    if status == 303:
        assert answer.status_code in (303, 409)  # a confirmation without its mark is stale
    else:
        assert answer.status_code == status
        assert small.desk.journal.acts == before
        assert small.reader.starts == small.reader.pauses == 0


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT", "PROPFIND"])
@pytest.mark.parametrize("path", ["/", "/in/read", "/static/desk.css"])
def test_other_methods_are_not_known(small: SmallDesk, method: str, path: str) -> None:
    assert small.client().request(method, path).status_code == 405


@pytest.mark.parametrize("path", CHANGES)
def test_nothing_changes_by_looking(small: SmallDesk, path: str) -> None:
    before, starts = small.desk.journal.acts, small.reader.starts
    assert small.client(follow=False).get(path).status_code in (404, 405)
    assert small.desk.journal.acts == before
    assert small.reader.starts == starts


@pytest.mark.parametrize("path", PATHS)
@pytest.mark.parametrize("cookie", [None, "", "wrong", TOKEN[:-1], TOKEN + "x", "ä"])
def test_without_the_token_of_this_start_nothing_is_shown(small: SmallDesk, path: str, cookie: str | None) -> None:
    client = small.client(let_in=False)
    headers = {} if cookie is None else {"cookie": f"{small.desk.door.cookie}={cookie}".encode()}
    answer = client.get(path, headers=headers)
    assert answer.status_code == 403
    assert "cup" not in answer.text


def test_the_address_with_the_token_lets_in_and_leads_on(small: SmallDesk) -> None:
    client = TestClient(make_app(small.desk), base_url=HERE, follow_redirects=False)
    answer = client.get(f"/open?token={TOKEN}&next=/check")
    assert (answer.status_code, answer.headers["location"]) == (303, "/check")
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=lax" in cookie
    assert client.get("/check").status_code == 200


@pytest.mark.parametrize("onward", ["//evil.example", "http://evil.example", "/\\evil.example", "x", "/a\r\nx: y"])
def test_the_way_on_never_leads_elsewhere(small: SmallDesk, onward: str) -> None:
    client = TestClient(make_app(small.desk), base_url=HERE, follow_redirects=False)
    answer = client.get("/open", params={"token": TOKEN, "next": onward})
    assert (answer.status_code, answer.headers["location"]) == (303, "/")
    assert "x" not in answer.headers


@pytest.mark.parametrize(
    "path", [*PATHS, "/nowhere", "/static/desk.css", "/check/none", f"/scan/{CLIPPING}/overview.jpg"]
)
def test_every_answer_carries_the_policy(small: SmallDesk, path: str) -> None:
    answer = small.client().get(path)
    policy = answer.headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert "http" not in policy
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["referrer-policy"] == "same-origin"
    if answer.headers["content-type"].startswith("text/html"):
        assert "<script>" not in answer.text
        assert " style=" not in answer.text
        assert "http://" not in answer.text.replace(HERE, "").replace("http://www.w3.org", "")


def test_a_form_larger_than_any_fact_is_refused(small: SmallDesk) -> None:
    client = small.client()
    headers = {"content-type": "application/x-www-form-urlencoded"}
    said = client.post("/in/notes", content=b"a=" + b"b" * MOST_FORM_BYTES, headers=headers)
    assert said.status_code == 413

    def unsaid() -> Iterator[bytes]:
        yield b"a="
        for _ in range(MOST_FORM_BYTES // 100_000 + 2):
            yield b"b" * 100_000

    assert client.post("/in/notes", content=unsaid(), headers=headers).status_code == 413
