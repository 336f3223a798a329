"""The factory: the only place where settings, record and routes meet. gunicorn: `quietcuff.app:create_app()`."""

from __future__ import annotations

import time
from collections.abc import Callable

from flask import Flask
from werkzeug.middleware.proxy_fix import ProxyFix

from quietcuff.config import Settings, settings_from_environment
from quietcuff.contract.shared_files import shared_folder
from quietcuff.record import database
from quietcuff.record.passwords import Passwords
from quietcuff.web import documents, guard, headers, health, parts, problems, shell, sign_in, sync_routes
from quietcuff.web.operations import read_operations


def system_now_ms() -> int:
    """The server's clock, ms UTC."""
    return time.time_ns() // 1_000_000


def create_app(settings: Settings | None = None, now_ms: Callable[[], int] = system_now_ms) -> Flask:
    """One application, ready to serve; reads the environment where no settings are given, raises SettingsRefused."""
    settings = settings or settings_from_environment()
    app = Flask("quietcuff", static_folder=None)
    operations = read_operations(shared_folder())
    # no route may take more than the most any of them does; the guard lowers it for each route
    app.config["MAX_CONTENT_LENGTH"] = max(operation.body_most_bytes for operation in operations.values())
    app.config["PROVIDE_AUTOMATIC_OPTIONS"] = False  # no other origin is ever answered
    app.config["PROPAGATE_EXCEPTIONS"] = False  # an error nobody foresaw becomes a problem body, in tests as well
    app.url_map.merge_slashes = False  # no address is ever redirected to another
    app.json.sort_keys = False  # type: ignore[attr-defined]  # the provider Flask makes has it, its base class has not
    if not settings.database:
        settings.data.mkdir(parents=True, exist_ok=True)
    database.set_up(app, settings.database_url)
    passwords = Passwords(settings.argon2_memory_kib, settings.argon2_passes, settings.hashes_at_once)
    parts.keep(app.extensions, parts.Parts(
        settings=settings, now_ms=now_ms, passwords=passwords, operations=operations,
        limits=parts.limits_of(settings)))
    shell.keep(app.extensions, shell.read_shell(settings.client or shell.client_folder()))
    _add_routes(app, settings)
    if settings.proxies:
        app.wsgi_app = ProxyFix(app.wsgi_app, x_for=settings.proxies)  # type: ignore[method-assign]  # the way Flask documents
    return app


def _add_routes(app: Flask, settings: Settings) -> None:
    headers.set_up(app, settings.tls)  # registered first, so that it runs last: nothing can take a header away again
    problems.set_up(app)
    guard.set_up(app)
    for room in (sign_in, sync_routes, health, documents, shell):
        app.register_blueprint(room.routes)
