"""Serves the built client: the page, its hashed assets, the worker and the manifest, compressed where that was built.

All files are read into memory at the start, and an address is looked up among them: no name from a request ever
becomes the name of a file, so nothing else of the disk can be read.
"""

from __future__ import annotations

import hashlib
import mimetypes
import re
from dataclasses import dataclass
from pathlib import Path

from flask import Blueprint, Response, current_app, request

from quietcuff.web.problems import Refused

_ENCODINGS = {"br": ".br", "gzip": ".gz"}  # the better first
_HASHED = re.compile(r"(^|/)assets/[^/]+-[A-Za-z0-9_-]{8,}\.[a-z0-9]+\Z")
_FOR_EVER = "public, max-age=31536000, immutable"
_ASK_EACH_TIME = "no-cache"
_TYPES = {".webmanifest": "application/manifest+json", ".js": "text/javascript; charset=utf-8",
          ".mjs": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
          ".html": "text/html; charset=utf-8", ".json": "application/json", ".svg": "image/svg+xml",
          ".woff2": "font/woff2", ".txt": "text/plain; charset=utf-8"}
_KEY = "quietcuff-shell"

routes = Blueprint("shell", __name__)


@dataclass(frozen=True)
class ShellFile:
    """One file of the client: its type, how long it may be kept, and its bytes by encoding ("" = as it is)."""

    content_type: str
    cache_control: str
    etag: str
    bytes_by_encoding: dict[str, bytes]


def client_folder() -> Path:
    """The client packaged with us, else the one built in the repository."""
    package = Path(__file__).resolve().parent.parent
    packaged = package / "static"
    return packaged if packaged.is_dir() else package.parent.parent / "client" / "dist"


def read_shell(folder: Path) -> dict[str, ShellFile]:
    """Every file of the built client by its address without the first slash; a folder that is not there gives none.

    Hidden files, source maps and links that lead out of the folder are left out.
    """
    inside = folder.resolve()
    files = {file.relative_to(folder).as_posix(): file for file in sorted(folder.rglob("*"))
             if file.is_file() and file.resolve().is_relative_to(inside)}
    return {name: _shell_file(name, file, files) for name, file in files.items() if _is_served(name, files)}


def _is_served(name: str, files: dict[str, Path]) -> bool:
    if name.endswith(".map") or any(part.startswith(".") for part in name.split("/")):
        return False
    return not any(name.endswith(end) and name.removesuffix(end) in files for end in _ENCODINGS.values())


def _shell_file(name: str, file: Path, files: dict[str, Path]) -> ShellFile:
    as_it_is = file.read_bytes()
    by_encoding = {encoding: files[name + end].read_bytes() for encoding, end in _ENCODINGS.items()
                   if name + end in files}
    guessed = mimetypes.guess_type(name)[0] or "application/octet-stream"
    return ShellFile(
        content_type=_TYPES.get(file.suffix, guessed),
        cache_control=_FOR_EVER if _HASHED.search(name) else _ASK_EACH_TIME,
        etag=hashlib.sha256(as_it_is).hexdigest()[:32], bytes_by_encoding={**by_encoding, "": as_it_is})


def keep(extensions: dict, shell: dict[str, ShellFile]) -> None:
    """Hands the files to an application."""
    extensions[_KEY] = shell


@routes.get("/")
def page() -> Response:
    """The page. A view of its own: a second address of one view would be redirected, and the phone's store of the
    shell takes no redirect for a file."""
    return shell("index.html")


@routes.get("/<name>")
@routes.get("/<folder>/<name>")
def shell(name: str, folder: str | None = None) -> Response:
    """One file of the client; an address that is none of them is a plain 404, never the page in its place."""
    files: dict[str, ShellFile] = current_app.extensions[_KEY]
    found = files.get(f"{folder}/{name}" if folder else name)
    if found is None:
        raise Refused(503, "client_not_built") if not files and name == "index.html" else Refused(404, "not_found")
    encoding = _encoding_for(found)
    answer = Response(found.bytes_by_encoding[encoding], content_type=found.content_type)
    answer.headers["Cache-Control"] = found.cache_control
    answer.headers["Vary"] = "Accept-Encoding"
    if encoding:
        answer.headers["Content-Encoding"] = encoding
    answer.set_etag(f"{found.etag}-{encoding}" if encoding else found.etag)
    return answer.make_conditional(request)


def _encoding_for(found: ShellFile) -> str:
    """The best of what was built that the browser takes."""
    return next((encoding for encoding in _ENCODINGS
                 if encoding in found.bytes_by_encoding and request.accept_encodings[encoding] > 0), "")
