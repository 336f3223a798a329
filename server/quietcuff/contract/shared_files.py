"""Where the shared schemas are: packaged beside the code, or in the repository.

Answers one folder and reads JSON from it. Must never write there: released files do not change.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any


@cache
def shared_folder() -> Path:
    """The folder with `rules`, `wire` and `words`; raises FileNotFoundError when neither place has it.

    A wheel carries its own copy; an editable install and the tests use the repository's.
    """
    package = Path(__file__).resolve().parent.parent
    for folder in (package / "shared_schemas", package.parent.parent / "shared_schemas"):
        if (folder / "wire").is_dir():
            return folder
    raise FileNotFoundError("shared_schemas is neither in the package quietcuff nor beside server/")


def read_shared_json(relative_path: str) -> Any:
    """One shared document, named by its path below the folder, with `/` between the parts."""
    return json.loads(shared_folder().joinpath(*relative_path.split("/")).read_text(encoding="utf-8"))
