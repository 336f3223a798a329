"""`python3 -m demo.gallery [--out DIR] [--only NAME …] [--readme]`: a picture of every screen and state, in each look.

Standard library only, since the packages may not be there yet; the walk itself is in take.py, run by the new environment.
"""

import sys

from server import set_up


def main() -> None:
    """Sets up, the browser included, and becomes the walk."""
    if not {"-h", "--help"} & set(sys.argv[1:]):
        set_up.make_ready(for_tests=True)
    set_up.hand_over(["-m", "demo.gallery.take", *sys.argv[1:]], CHROMIUM=set_up.browser())


if __name__ == "__main__":
    main()
