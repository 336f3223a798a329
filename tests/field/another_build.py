"""Another build of the client, made from the built one by one sentence in its page: enough for a browser to see a newer worker."""

import hashlib
import re
import shutil
from pathlib import Path

MARK = '<meta name="build" content="newer" />'


def made_from(dist: Path, folder: Path) -> Path:
    """A copy whose page carries `MARK` and whose list gives the page its new hash, as the build itself would."""
    shutil.copytree(dist, folder)
    page = folder / "index.html"
    page.write_text(page.read_text(encoding="utf-8").replace("<title>", MARK + "<title>"), encoding="utf-8")
    fresh = hashlib.md5(page.read_bytes(), usedforsecurity=False).hexdigest()
    worker = folder / "sw.js"
    text, changed = re.subn(r'(\{"revision":")[0-9a-f]{32}(","url":"index\.html"\})', rf"\g<1>{fresh}\g<2>",
                            worker.read_text(encoding="utf-8"))
    assert changed == 1, "the worker no longer lists index.html as it did: mend this test"
    worker.write_text(text, encoding="utf-8")
    for name in ("index.html", "sw.js"):
        for ending in (".br", ".gz"):
            (folder / f"{name}{ending}").unlink(missing_ok=True)
    return folder
