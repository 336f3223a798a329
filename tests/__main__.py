"""`python3 -m tests [pytest arguments]`: makes everything ready, the browser included, then hands over to pytest.

Standard library only until then. What is tested stands in the folders beside this file; it decides nothing about it.
"""

import sys

from server import set_up


def main() -> None:
    """Sets up and becomes pytest; the exit code is pytest's."""
    set_up.make_ready(for_tests=True)
    set_up.hand_over(["-m", "pytest", *sys.argv[1:]], CHROMIUM=set_up.browser())


if __name__ == "__main__":
    main()
