"""Publishes the description of every route and the wire schemas it refers to, as they stand in shared_schemas."""

from __future__ import annotations

from functools import cache

from flask import Blueprint, Response

from quietcuff.contract.shared_files import shared_folder
from quietcuff.web.problems import Refused

routes = Blueprint("documents", __name__)


@routes.get("/api/1/api.json")
def api() -> Response:
    """OpenAPI 3.1 of every route, with `x-who`."""
    return Response(_documents()["api"], content_type="application/json")


@routes.get("/api/1/<document>.json")
def wire_document(document: str) -> Response:
    """A wire schema, beside api.json, where the references in it point."""
    found = _documents().get(document)
    if found is None:
        raise Refused(404, "not_found")
    return Response(found, content_type="application/schema+json")


@cache
def _documents() -> dict[str, bytes]:
    """Name → bytes, read once: no name from a request ever becomes the name of a file."""
    return {file.name.removesuffix(".json"): file.read_bytes() for file in (shared_folder() / "wire").glob("*.json")}
