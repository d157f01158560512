"""The guard at the door: loopback is no boundary, so every request is checked before anything is done.

Host must name this desk (a page elsewhere may point its own name at our address); a change must come from
a page of this desk (Sec-Fetch-Site or Origin say so); and every request needs the token made at this
start, as a cookie set by the address that the command prints. Answers carry a policy that forbids
scripts, styles and pictures from anywhere else, and scripts written into a page.
"""

from __future__ import annotations

import hmac
from dataclasses import dataclass
from http.cookies import CookieError, SimpleCookie
from typing import Final
from urllib.parse import parse_qs, quote

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

SAFE_METHODS: Final = frozenset({"GET", "HEAD"})
METHODS: Final = SAFE_METHODS | {"POST"}
MOST_BYTES: Final = 2_000_000_000  # of one upload of many scans
MOST_FORM_BYTES: Final = 2_000_000  # of any other form
UPLOAD_PATH: Final = "/in/scans"
POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; "
    "form-action 'self'; frame-ancestors 'none'; base-uri 'none'"
)
_HEADERS: Final = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
}
_TOO_MUCH: Final = "That is more than the desk takes at once."
_CLOSED: Final = (
    '<!doctype html><html lang="en"><meta charset="utf-8"><title>The desk is closed to this page</title>'
    "<h1>The desk is closed to this page</h1><p>{why}</p>"
    "<p>Open the address that <code>adminer desk</code> printed when it started; it lets this browser in.</p>"
)


@dataclass(frozen=True, slots=True)
class Door:
    """Hold who may come in: the names of this desk with port, and the token of this start."""

    hosts: frozenset[str]
    token: str
    port: int

    @property
    def cookie(self) -> str:
        """Return the cookie's name; desks on two ports do not put each other out."""
        return f"adminer_desk_{self.port}"


class Guard:
    """Check each request at the door, then hand it on; see the module's text for the rules."""

    def __init__(self, app: ASGIApp, door: Door) -> None:
        """Stand before an application."""
        self.app, self.door = app, door

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request that may not come in, or hand it on with the headers added to its answer."""
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        if scope["type"] != "http":  # the desk has no sockets that stay open
            return
        dressed = _dressed(send, private=not scope["path"].startswith("/static/"))
        refusal = self._refusal(scope)
        if refusal is not None:
            await refusal(scope, receive, dressed)
            return
        most = MOST_BYTES if scope["path"] == UPLOAD_PATH else MOST_FORM_BYTES
        await self.app(scope, _counted(receive, most), dressed)

    def _refusal(self, scope: Scope) -> Response | None:
        headers = Headers(scope=scope)
        if headers.getlist("host") not in [[host] for host in self.door.hosts]:
            return _closed(421, "It was asked for under a name that is not its own.")
        method = scope["method"]
        if method not in METHODS:
            return _closed(405, "It knows reading and posting only.")
        if method not in SAFE_METHODS and not self._from_here(headers):
            return _closed(403, "A change was asked for by a page that is not of this desk.")
        if method not in SAFE_METHODS and not _measured(headers, scope["path"]):
            return _closed(413, _TOO_MUCH)
        if scope["path"] == "/open" and method in SAFE_METHODS:
            return self._open(scope)
        if scope["path"].startswith("/static/") and method in SAFE_METHODS:
            return None
        if not self._same_token(_cookie(headers, self.door.cookie)):
            return _closed(403, "This browser has not been let in since the desk was started.")
        return None

    def _from_here(self, headers: Headers) -> bool:
        site, origin = headers.get("sec-fetch-site"), headers.get("origin")
        if site is None and origin is None:
            return False
        host = headers["host"]
        return site in (None, "same-origin") and origin in (None, f"http://{host}")

    def _open(self, scope: Scope) -> Response:
        query = parse_qs(scope["query_string"].decode("latin-1"))
        if not self._same_token(query.get("token", [""])[0]):
            return _closed(403, "That token is not the one of this start.")
        onward = query.get("next", ["/"])[0]
        # only a path of this desk: two slashes, or a backslash, would lead to another place
        if not onward.startswith("/") or onward.startswith("//") or "\\" in onward or not onward.isprintable():
            onward = "/"
        answer = RedirectResponse(quote(onward, safe="/?&=%#:,+;@!$'()*~"), status_code=303)
        answer.set_cookie(self.door.cookie, self.door.token, httponly=True, samesite="lax", path="/")
        return answer

    def _same_token(self, given: str) -> bool:
        return hmac.compare_digest(given.encode("utf-8", "surrogateescape"), self.door.token.encode())


def _measured(headers: Headers, path: str) -> bool:
    length = headers.get("content-length")
    most = MOST_BYTES if path == UPLOAD_PATH else MOST_FORM_BYTES
    return length is None or (length.isdigit() and int(length) <= most)


def _cookie(headers: Headers, name: str) -> str:
    jar: SimpleCookie = SimpleCookie()
    try:
        jar.load(headers.get("cookie", ""))
    except CookieError:
        return ""
    return jar[name].value if name in jar else ""


def _closed(status: int, why: str) -> Response:
    return HTMLResponse(_CLOSED.format(why=why), status_code=status)


def _counted(receive: Receive, most: int) -> Receive:
    taken = 0

    async def counted() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > most:
            raise HTTPException(413, _TOO_MUCH)
        return message

    return counted


def _dressed(send: Send, *, private: bool) -> Send:
    async def dressed(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in _HEADERS.items():
                headers[name] = value
            if private and "cache-control" not in headers:
                headers["cache-control"] = "no-store"
        await send(message)

    return dressed
