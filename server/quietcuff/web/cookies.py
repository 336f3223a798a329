"""The two cookies: `__Host-device` (handing in) and `__Host-sign_in` (reading). Knows their attributes, nothing else.

The prefix makes the browser refuse them from another host, without Secure or with another path; no script reads them.
"""

from __future__ import annotations

from flask import Response, g, request

DEVICE = "__Host-device"
SIGN_IN = "__Host-sign_in"
_DAY_S = 86_400
# The longest a browser keeps one. How long a phone may hand in is decided by the server, not by the cookie: one that
# arrives after its time is still recognised, and what it hands in is held instead of lost.
_DEVICE_AGE_S = 400 * _DAY_S


def shown(name: str) -> str | None:
    """The token in the request; a cookie of impossible length is none."""
    value = request.cookies.get(name)
    return value if value and len(value) <= 100 else None


def wait(name: str, token: str | None, age_s: int = _DEVICE_AGE_S) -> None:
    """Sets the cookie on the answer that is being made; None removes it."""
    if "cookies_waiting" not in g:
        g.cookies_waiting = {}
    g.cookies_waiting[name] = (token, age_s)


def set_waiting(answer: Response) -> Response:
    """Puts what waits onto the answer; runs after each request."""
    for name, (token, age_s) in g.get("cookies_waiting", {}).items():
        answer.set_cookie(name, token or "", max_age=age_s if token else 0, path="/", secure=True, httponly=True,
                          samesite="Lax")
    return answer
