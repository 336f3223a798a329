"""What the routes of one application share: settings, clock, ways of hashing, the description of the routes.

Made once by the factory; a route reads it and changes nothing in it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from flask import current_app

from quietcuff.config import Settings
from quietcuff.record.credentials import DAY_MS, HOUR_MS, MINUTE_MS, Limits
from quietcuff.record.passwords import Passwords
from quietcuff.web.operations import Operation

_KEY = "quietcuff"


@dataclass(frozen=True)
class Parts:
    """One application's parts; `now_ms` is the clock, ms UTC."""

    settings: Settings
    now_ms: Callable[[], int]
    passwords: Passwords
    operations: dict[tuple[str, str], Operation]
    limits: Limits


def limits_of(settings: Settings) -> Limits:
    """The settings of sign-in in the unit the record counts in."""
    return Limits(
        device_ms=settings.device_days * DAY_MS, sign_in_ms=settings.sign_in_days * DAY_MS,
        idle_ms=settings.sign_in_idle_hours * HOUR_MS, tries=settings.sign_in_failures,
        window_ms=settings.sign_in_window_minutes * MINUTE_MS)


def keep(extensions: dict, made: Parts) -> None:
    """Hands the parts to an application."""
    extensions[_KEY] = made


def parts() -> Parts:
    """The parts of the application that answers this request."""
    found: Parts = current_app.extensions[_KEY]
    return found
