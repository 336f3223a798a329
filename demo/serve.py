"""Fills the demo's record once and becomes gunicorn. Run by the virtual environment's Python, see __main__.py.

It must never touch a real record: whatever QUIETCUFF_ settings stand in the environment are left out, and the data lie in
a folder of the demo's own.
"""

from __future__ import annotations

import argparse
import os
import socket
import sys
from pathlib import Path

from demo.play_in import LOGIN, fill

LOOPBACK = "127.0.0.1"
# two processes so that one slow password hash holds nobody up; threads for phones that hand in slowly
GUNICORN = ["-m", "gunicorn", "quietcuff.app:create_app()", "-k", "gthread", "-w", "2", "--threads", "8", "--no-control-socket"]


def settings_of_the_demo(data: Path, *, tls: bool) -> dict[str, str]:
    """The environment for the demo's server: the person's own, without the settings of a real one."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("QUIETCUFF_")}
    return {**kept, "QUIETCUFF_DATA": str(data), **({"QUIETCUFF_TLS": "yes"} if tls else {})}


def port_to_use(asked: int, host: str) -> int:
    """The port asked for, or a free one for 0; ends with a reason when it is taken."""
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((host, asked))
        except OSError as error:
            raise SystemExit(f"Port {asked} cannot be used ({error.strerror}). Choose another with --port.") from error
        return int(probe.getsockname()[1])


def serve(arguments: argparse.Namespace, password: str) -> None:
    """Says where and how to sign in, then becomes gunicorn; never returns."""
    tls = arguments.certificate is not None
    host = "0.0.0.0" if tls else LOOPBACK  # a phone has to reach it; without a certificate nobody else may
    port = port_to_use(arguments.port, host)
    # not 127.0.0.1: browsers treat a name as an origin that may keep things, an address they do not in every respect
    address = f"https://{socket.gethostname()}:{port}" if tls else f"http://localhost:{port}"
    print(f"\n  {address}\n  login     {LOGIN}\n  password  {password}\n\n  Invented animals only. Ctrl-C ends it.\n", flush=True)
    words = [*GUNICORN, "-b", f"{host}:{port}"]
    if tls:
        words += ["--certfile", str(arguments.certificate), "--keyfile", str(arguments.key)]
    os.execve(sys.executable, [sys.executable, *words], settings_of_the_demo(arguments.data, tls=tls))


def main() -> None:
    """Fills, and serves unless only preparing was asked for."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--prepare", action="store_true")
    parser.add_argument("--port", type=int, required=True)
    parser.add_argument("--data", type=Path, required=True)
    parser.add_argument("--certificate", type=Path)
    parser.add_argument("--key", type=Path)
    arguments = parser.parse_args()
    password = fill(arguments.data)
    if arguments.prepare:
        print("Ready: `python3 -m demo` serves it.")
    else:
        serve(arguments, password)


if __name__ == "__main__":
    main()
