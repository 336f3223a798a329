"""Stands before every route: is the request ours, is its body acceptable, and may this caller use the route?

Obeys `wire/api.json` (see operations). Establishes who calls, into `flask.g`: `device` and `signed`. A practice in the
address that is not the caller's own is answered as one that does not exist.
"""

from __future__ import annotations

from urllib.parse import urlsplit

from flask import Flask, g, request

from quietcuff.record import credentials
from quietcuff.record.database import reading, writing
from quietcuff.record.errors import RecordBusy
from quietcuff.web import cookies
from quietcuff.web.operations import Operation, path_of
from quietcuff.web.parts import parts
from quietcuff.web.problems import Refused

OUR_HEADER = "X-Quietcuff"
SAFE_METHODS = ("GET", "HEAD")


def set_up(app: Flask) -> None:
    """Registers the guard; it runs before any route."""
    app.before_request(_guard)
    app.after_request(cookies.set_waiting)


def _guard() -> None:
    if request.url_rule is None:
        return  # no such route or method: the framework's own 404 or 405 follows
    operation = _operation()
    if request.method not in SAFE_METHODS:
        _must_be_ours()
        _must_be_acceptable(operation)
    _must_be_allowed(operation)
    own = g.signed.practice if g.signed else g.device.practice if g.device else None
    asked = (request.view_args or {}).get("practice")
    if asked is not None and asked != own:
        raise Refused(404, "not_found")


def _operation() -> Operation:
    method = "GET" if request.method == "HEAD" else request.method
    operation = parts().operations.get((path_of(str(request.url_rule)), method))
    if operation is None:
        raise Refused(404, "not_found")  # a route that nobody described is closed, not open
    return operation


# --- is it ours? ------------------------------------------------------------------------------------------------------


def _must_be_ours() -> None:
    """Another site can make a browser send our cookies, but not this header, nor a false Sec-Fetch-Site or Origin."""
    if request.headers.get(OUR_HEADER) != "1":
        raise Refused(403, "request_not_ours")
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None and site != "same-origin":
        raise Refused(403, "request_not_ours")
    if site is None and not _origin_is_ours():
        raise Refused(403, "request_not_ours")


def _origin_is_ours() -> bool:
    """For browsers without Sec-Fetch-Site. The scheme is not compared: a proxy may have ended the encryption."""
    return urlsplit(request.headers.get("Origin", "")).netloc == request.host


def _must_be_acceptable(operation: Operation) -> None:
    """Media type and size, before a byte of the body is read."""
    # One more than allowed: of a body that comes in chunks, without a declared length, the library reads this much and
    # no error, so that only the one byte too many tells a body at the limit from one cut off there (see read_body).
    request.max_content_length = operation.body_most_bytes + 1
    g.body_most_bytes = operation.body_most_bytes
    named = request.headers.get("Content-Type")
    if named is None and not operation.media:
        return
    accepted = operation.media or {"application/json"}
    if request.mimetype not in accepted:
        raise Refused(415, "media_type_wrong")
    if request.content_length is not None and request.content_length > operation.body_most_bytes:
        raise Refused(413, "too_large")


def read_body() -> bytes:
    """The whole body within the route's limit; 413 where a longer one came without saying so."""
    body = request.get_data()
    if len(body) > g.body_most_bytes:
        raise Refused(413, "too_large")
    return body


# --- who is it? -------------------------------------------------------------------------------------------------------


def _must_be_allowed(operation: Operation) -> None:
    g.device, g.signed = None, None
    if operation.who == {"anyone"}:
        return
    _establish()
    if g.device is None:
        raise Refused(401, "device_unknown")
    if operation.who == {"device"}:
        return  # handing in is never refused for a sign-in; what a revoked phone hands in is held
    if g.signed is None or g.device.standing != "good":
        raise Refused(401, "sign_in_needed")
    if g.signed.role not in operation.who:
        raise Refused(403, "role_not_allowed")


def _establish() -> None:
    """Phone and person by their cookies; a sign-in counts only on the phone it was made on."""
    now_ms, limits = parts().now_ms(), parts().limits
    device_token, sign_in_token = cookies.shown(cookies.DEVICE), cookies.shown(cookies.SIGN_IN)
    if device_token is None:
        return
    with reading() as connection:
        g.device = credentials.device_of(connection, device_token, limits, now_ms)
        if g.device is not None and sign_in_token is not None:
            g.signed = credentials.signed_in(connection, sign_in_token, limits, now_ms)
    if g.signed is not None and g.signed.device != g.device.id:
        g.signed = None
    _note_contact(device_token, sign_in_token, now_ms)


def _note_contact(device_token: str, sign_in_token: str | None, now_ms: int) -> None:
    """Begins the times anew, at most once in a while: a write for each request would make reading as dear as filing."""
    device_due = (g.device is not None and g.device.standing == "good"
                  and now_ms - g.device.contact_at_ms >= credentials.HOUR_MS)
    use_due = g.signed is not None and now_ms - g.signed.used_at_ms >= 5 * credentials.MINUTE_MS
    if not device_due and not use_due:
        return
    try:
        with writing() as orm:
            if device_due:
                credentials.note_contact(orm, device_token, now_ms)
                cookies.wait(cookies.DEVICE, device_token)  # its time in the browser begins anew as well
            if use_due and sign_in_token is not None:
                credentials.note_use(orm, sign_in_token, now_ms)
    except RecordBusy:
        return  # the next request notes it; this one must not fail for it
