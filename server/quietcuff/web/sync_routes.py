"""Handing letters in (push) and getting them (pull): reads the request, calls `sync`, sends its lines on.

Looks into no letter and into no bundle. Who may come here was settled by the guard.
"""

from __future__ import annotations

import re

from flask import Blueprint, Response, g, request

from quietcuff.sync.bundle import MEDIA_TYPE
from quietcuff.sync.receive import receive
from quietcuff.sync.send import send_page
from quietcuff.web.guard import read_body
from quietcuff.web.parts import parts
from quietcuff.web.problems import Refused

routes = Blueprint("sync", __name__)

_UUID = re.compile(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\Z", re.ASCII)
_POSITION = re.compile(r"(0|[1-9][0-9]{0,15})\Z", re.ASCII)
_HOLD = {"good": None, "revoked": "device_revoked", "expired": "device_expired"}
_LARGEST_POSITION = 2**53 - 1  # as in the wire schemas: the largest whole number both languages hold


@routes.post("/api/1/practices/<practice>/push")
def push(practice: str) -> Response:
    """Hands in a bundle; the answer has one line an entry. Needs the phone's cookie alone.

    What a revoked or long unseen phone hands in is held for a person to decide, not filed and not turned away.
    """
    hold = _HOLD[g.device.standing]
    lines = receive(practice, g.device.id, read_body(), request.headers.get("Content-Encoding"), parts().now_ms(), hold)
    return Response(lines, content_type=MEDIA_TYPE)


@routes.get("/api/1/practices/<practice>/pull")
def pull(practice: str) -> Response:
    """The page after a place in the journal. Without `epoch` from the beginning only; an absent `position` is 0."""
    epoch, position = _query()
    return Response(send_page(practice, epoch, position, parts().now_ms()), content_type=MEDIA_TYPE)


def _query() -> tuple[str | None, int]:
    """Both values, strictly: a parameter that is misspelt or given twice would silently mean another place."""
    given = request.args.to_dict(flat=False)
    wrong = next((name for name, values in given.items()
                  if name not in ("epoch", "position") or len(values) != 1), None)
    if wrong is not None:
        raise Refused(400, "query_wrong", f"/{wrong[:40].replace('~', '~0').replace('/', '~1')}")
    epoch, position = request.args.get("epoch"), request.args.get("position", "0")
    if epoch is not None and not _UUID.match(epoch):
        raise Refused(400, "query_wrong", "/epoch")
    if not _POSITION.match(position) or int(position) > _LARGEST_POSITION:
        raise Refused(400, "query_wrong", "/position")
    return epoch, int(position)
