"""The server's application with its clock moved, so that server and phone of the gallery agree about the time. For the gallery only."""

from __future__ import annotations

from flask import Flask

from quietcuff.app import create_app, system_now_ms


def moved_app(by_ms: int) -> Flask:
    """The application at a time that is `by_ms` after the real one; negative for before it."""
    return create_app(now_ms=lambda: system_now_ms() + by_ms)
