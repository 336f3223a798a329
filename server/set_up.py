"""Makes this repository ready to run from a bare Python 3.11: virtual environment, pinned packages, built client, browser.

Standard library only, because it runs before anything is installed. Each step writes a stamp, the hash of what it was made
from, and is skipped while that hash holds. It must not touch the person's own Python, nor any record under .data.
"""

from __future__ import annotations

import fcntl
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import tomllib
import venv
from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from ctypes.util import find_library
from pathlib import Path

from server import node

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
PYTHON = VENV / "bin" / "python"
CLIENT = ROOT / "client"
CONSTRAINTS = ROOT / "server" / "constraints.txt"
PYPROJECT = ROOT / "pyproject.toml"
NOT_A_SOURCE = {"node_modules", "dist", "dist-engine", "dist-parts", "wire_types.ts"}  # made from the sources, or fetched


def make_ready(*, for_tests: bool) -> None:
    """Does every step that is not up to date; two runs in one checkout wait for each other."""
    if sys.version_info < (3, 11):
        raise SystemExit("quietcuff needs Python 3.11 or newer.")
    try:
        with _one_at_a_time():
            _make_venv()
            _ensure_node()
            with ThreadPoolExecutor() as side_by_side:  # both wait for downloads most of the time
                steps = [side_by_side.submit(_install_python_packages, for_tests), side_by_side.submit(_prepare_client)]
            for step in steps:
                step.result()
    except subprocess.CalledProcessError as failed:
        words = " ".join(map(str, failed.cmd[:5]))
        raise SystemExit(f"Setting up stopped: `{words} …` ended with {failed.returncode}; its own words stand above.") from None


def environment() -> dict[str, str]:
    """The process environment with the virtual environment's programs (and Node, if it came by wheel) found first."""
    return {**os.environ, "PATH": f"{VENV / 'bin'}{os.pathsep}{os.environ.get('PATH', '')}", "VIRTUAL_ENV": str(VENV)}


def hand_over(words: list[str], **more: str) -> None:
    """Replaces this process by the virtual environment's Python; signals then reach the program itself. Never returns."""
    os.chdir(ROOT)
    sys.stdout.flush()
    os.execve(PYTHON, [str(PYTHON), *words], {**environment(), **more})


def browser() -> str:
    """Path of Chromium: env CHROMIUM, else the machine's, else Debian's package when run as root; exits with advice."""
    # the program that drives the browser is a Node of its own, which needs a library that a bare Debian lacks
    if find_library("atomic") is None and _may_install_debian_packages():
        _say("installing Debian's libatomic1 for the browser tests")
        _install_debian_package("libatomic1")
    named = os.environ.get("CHROMIUM")
    if named:
        return named
    if shutil.which("chromium") is None and _may_install_debian_packages():
        _say("installing Debian's chromium for the browser tests")
        _install_debian_package("chromium")
    found = shutil.which("chromium")
    if found is None:
        raise SystemExit("The browser tests need Chromium: install it, or name its program in the variable CHROMIUM.")
    return found


def _say(text: str) -> None:
    print(f"· {text}", flush=True)


@contextmanager
def _one_at_a_time() -> Iterator[None]:
    folder = ROOT / ".data"
    folder.mkdir(exist_ok=True)
    with (folder / "set_up.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        yield


def _make_venv() -> None:
    # the root is part of the stamp: the programs in a venv carry their own path, so a moved one does not run
    wanted = _hash_of_texts([str(ROOT), sys.version.split()[0]])
    stamp = VENV / ".quietcuff-venv"
    if PYTHON.exists() and _read(stamp) == wanted:
        return
    if importlib.util.find_spec("ensurepip") is None:
        if not _may_install_debian_packages():
            raise SystemExit("Python's venv module is not complete here: install Debian's package python3-venv.")
        _install_debian_package("python3-venv")
    _say("making .venv")
    venv.create(VENV, with_pip=True, clear=True)
    stamp.write_text(wanted)


def _install_python_packages(for_tests: bool) -> None:
    """Installs what pyproject.toml names, as constraints.txt pins it. The set for tests contains the one for running."""
    wanted = {name: _hash_of_texts([name, PYPROJECT.read_text(), CONSTRAINTS.read_text()]) for name in ("run", "tests")}
    stamp = VENV / ".quietcuff-packages"
    if _read(stamp) in {wanted["tests"], wanted["tests" if for_tests else "run"]}:
        return
    _say("installing the pinned Python packages")
    _pip("--only-binary", ":all:", *_requirements(for_tests))
    # without isolation, so that hatchling is the pinned one and is not fetched a second time
    _pip("--no-deps", "--no-build-isolation", "--editable", str(ROOT))
    stamp.write_text(wanted["tests" if for_tests else "run"])


def _requirements(for_tests: bool) -> list[str]:
    described = tomllib.loads(PYPROJECT.read_text())
    project = described["project"]
    tools = project["optional-dependencies"]["test"] if for_tests else []
    return [*described["build-system"]["requires"], *project["dependencies"], *tools]


def _pip(*words: str) -> None:
    command = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--constraint", str(CONSTRAINTS)]
    subprocess.run([*command, *words], check=True)


def _ensure_node() -> None:
    if not node.machine_has_node(environment()["PATH"]):
        _say("installing Node from its wheel, as this machine has none new enough")
        _pip("--only-binary", ":all:", node.WHEEL)


def _prepare_client() -> None:
    _install_client_packages()
    _build_client()


def _install_client_packages() -> None:
    wanted = _hash_of_files(CLIENT / name for name in ("package.json", "package-lock.json", ".npmrc"))
    stamp = CLIENT / "node_modules" / ".quietcuff-packages"
    if _read(stamp) == wanted:
        return
    _say("installing the client's pinned packages")
    node.install_packages(CLIENT, environment())
    stamp.write_text(wanted)


def _build_client() -> None:
    wanted = _hash_of_files([*_files_under(CLIENT), *_files_under(ROOT / "shared_schemas")])
    stamp = CLIENT / "node_modules" / ".quietcuff-built"  # not in dist: the build empties that, and it is served
    built = all((CLIENT / name).exists() for name in ("dist/index.html", "dist-engine/engine.mjs"))
    if built and _read(stamp) == wanted:
        return
    _say("building the client")
    node.build(CLIENT, environment())
    stamp.write_text(wanted)


def _files_under(folder: Path) -> list[Path]:
    found: list[Path] = []
    for place, folders, names in os.walk(folder):
        folders[:] = sorted(name for name in folders if name not in NOT_A_SOURCE)
        found += [Path(place) / name for name in sorted(names) if name not in NOT_A_SOURCE]
    return found


def _hash_of_files(files: Iterable[Path]) -> str:
    texts = []
    for file in files:
        texts += [str(file.relative_to(ROOT)), hashlib.sha256(file.read_bytes()).hexdigest()]
    return _hash_of_texts(texts)


def _hash_of_texts(texts: Iterable[str]) -> str:
    return hashlib.sha256("\0".join(texts).encode()).hexdigest()


def _read(stamp: Path) -> str:
    return stamp.read_text() if stamp.exists() else ""


def _may_install_debian_packages() -> bool:
    return os.geteuid() == 0 and shutil.which("apt-get") is not None


def _install_debian_package(name: str) -> None:
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for words in (["update"], ["install", "-y", "--no-install-recommends", name]):
        subprocess.run(["apt-get", "-qq", *words], check=True, env=quiet, stdout=subprocess.DEVNULL)
