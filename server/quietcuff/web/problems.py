"""The only translator of errors: every error that leaves the server is an RFC 9457 problem with a stable `code`.

A body holds the code, the status with its standard title, and at most a JSON Pointer: never a message of an exception,
a file name or a value that came in. The sentence for a person is found by the code in words/en.ftl, on the phone.
"""

from __future__ import annotations

import json
from http import HTTPStatus

from flask import Flask, Response, current_app
from werkzeug.exceptions import HTTPException

from quietcuff.contract.read_json import Unreadable
from quietcuff.record.errors import RecordError

PROBLEM_TYPE = "application/problem+json"
BUSY_WAIT_S = 2
# what Flask and Werkzeug raise by themselves; any other status of theirs has the code `request_wrong`
_BY_STATUS = {400: "request_wrong", 404: "not_found", 405: "method_not_allowed", 413: "too_large",
              415: "media_type_wrong", 500: "server_error"}
# what the rooms below raise: their code → the status, and the code to show where it must tell less
_RECORD_STATUS = {
    "practice_unknown": (404, "not_found"), "record_busy": (503, "record_busy"), "cursor_void": (409, "cursor_void"),
    "bundle_too_large": (413, "bundle_too_large"), "too_many_entries": (413, "too_many_entries"),
    "encoding_unknown": (415, "encoding_unknown"), "gzip_damaged": (400, "gzip_damaged"),
    "gzip_truncated": (400, "gzip_damaged"), "gzip_trailing": (400, "gzip_damaged"),
    "lines_missing": (400, "bundle_unreadable"), "header_unreadable": (400, "bundle_unreadable"),
    "header_invalid": (400, "bundle_unreadable"), "count_differs": (400, "bundle_unreadable"),
    "practice_differs": (400, "practice_differs"),
}


class Refused(Exception):
    """A route or a guard says no: status, code, and where it applies a JSON Pointer and seconds to wait."""

    def __init__(self, status: int, code: str, path: str | None = None, wait_s: int | None = None) -> None:
        super().__init__(code)
        self.status, self.code, self.path, self.wait_s = status, code, path, wait_s


def problem(status: int, code: str, path: str | None = None, wait_s: int | None = None) -> Response:
    """The answer itself. `about:blank` with the status' own title is what the standard asks for here."""
    body: dict[str, str | int] = {
        "type": "about:blank", "title": HTTPStatus(status).phrase, "status": status, "code": code}
    if path is not None:
        body["path"] = path[:200]
    answer = Response(json.dumps(body), status=status, content_type=PROBLEM_TYPE)
    if wait_s is not None:
        answer.headers["Retry-After"] = str(wait_s)
    return answer


def set_up(app: Flask) -> None:
    """Registers the translation of each kind of error."""
    app.register_error_handler(Refused, lambda e: problem(e.status, e.code, e.path, e.wait_s))
    app.register_error_handler(Unreadable, lambda e: problem(400, e.code, ""))
    app.register_error_handler(RecordError, _of_record)
    app.register_error_handler(HTTPException, _of_http)
    app.register_error_handler(Exception, _unforeseen)


def _of_record(error: RecordError) -> Response:
    if error.code not in _RECORD_STATUS:
        return _unforeseen(error)
    status, code = _RECORD_STATUS[error.code]
    path = error.facts.get("path")
    wait_s = BUSY_WAIT_S if status == HTTPStatus.SERVICE_UNAVAILABLE else None
    return problem(status, code, None if path is None else str(path), wait_s)


def _of_http(error: HTTPException) -> Response:
    """An error raised by the framework; what it says in its own headers (Allow) is kept, its text is not."""
    status = error.code if error.code is not None and error.code >= HTTPStatus.BAD_REQUEST else 500
    answer = problem(status, _BY_STATUS.get(status, "request_wrong"))
    for name, value in error.get_headers(None):
        if name.lower() in ("allow", "retry-after"):
            answer.headers[name] = value
    return answer


def _unforeseen(error: Exception) -> Response:
    current_app.logger.error("an error nobody foresaw", exc_info=error)
    return problem(500, "server_error")
