"""The headers of EVERY answer: what a browser may do with our pages, and what it may keep.

Set once, after everything else, so that errors, 304 and static files cannot be forgotten. No route sets one of these.
"""

from __future__ import annotations

from flask import Flask, Response

_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; "
    "object-src 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; "
    "trusted-types quietcuff-worker"
)
# Everything off but the lock that keeps the screen lit while a hand is on the limb. Only names that a browser knows:
# of any other it complains in its log each time the page is opened.
_FEATURES_OFF = (
    "accelerometer", "autoplay", "browsing-topics", "camera", "clipboard-read", "clipboard-write", "compute-pressure",
    "display-capture", "encrypted-media", "fullscreen", "gamepad", "geolocation", "gyroscope", "hid",
    "idle-detection", "keyboard-map", "local-fonts", "magnetometer", "microphone", "midi", "payment",
    "picture-in-picture", "publickey-credentials-create", "publickey-credentials-get", "serial", "storage-access",
    "sync-xhr", "usb", "window-management", "xr-spatial-tracking",
)
SECURITY_HEADERS = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": ", ".join([*(f"{name}=()" for name in _FEATURES_OFF), "screen-wake-lock=(self)"]),
}
HSTS = "max-age=31536000; includeSubDomains"


def set_up(app: Flask, tls: bool) -> None:
    """Adds the headers to each answer; HSTS only where people reach us by https."""

    @app.after_request
    def _add(answer: Response) -> Response:
        for name, value in SECURITY_HEADERS.items():
            answer.headers[name] = value
        if tls:
            answer.headers["Strict-Transport-Security"] = HSTS
        if "Cache-Control" not in answer.headers:
            # Only a file of the shell says otherwise: an answer of the record, or an error, must lie in no cache.
            answer.headers["Cache-Control"] = "no-store"
        return answer
