"""`python3 -m demo`: makes everything ready from a bare Python 3.11, fills an invented practice and serves it.

Standard library only, since the packages may not be there yet; what needs them is in serve.py, run by the new environment.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from server import set_up

PORT = 8321


def read_arguments() -> argparse.Namespace:
    """The command line; a certificate without its key, or the reverse, ends here with a reason."""
    parser = argparse.ArgumentParser(prog="python3 -m demo", description=__doc__.split("\n")[0].split(": ", 1)[1])
    parser.add_argument("--prepare", action="store_true", help="make everything ready, the practice too, and stop there")
    parser.add_argument("--port", type=int, default=PORT, help=f"where to serve ({PORT}); 0 takes a free one")
    parser.add_argument("--data", type=Path, default=set_up.ROOT / ".data" / "demo", help="folder of the record (.data/demo)")
    parser.add_argument("--certificate", type=Path, help="serve by https to other machines too, for a real phone")
    parser.add_argument("--key", type=Path, help="the certificate's private key")
    arguments = parser.parse_args()
    if (arguments.certificate is None) != (arguments.key is None):
        parser.error("--certificate and --key go together")
    return arguments


def main() -> None:
    """Sets up and becomes the server."""
    arguments = read_arguments()
    words = ["--data", str(arguments.data.resolve()), "--port", str(arguments.port)]
    if arguments.certificate:
        words += ["--certificate", str(arguments.certificate.resolve()), "--key", str(arguments.key.resolve())]
    if arguments.prepare:
        words.append("--prepare")
    set_up.make_ready(for_tests=False)
    set_up.hand_over(["-m", "demo.serve", *words])


if __name__ == "__main__":
    main()
