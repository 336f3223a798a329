"""Copies of the Python engine in memory, each with one comparison turned: `>=` to `>`, `==` to `!=` and so on.

Answers where the turned comparisons stand and hands over the two doors of such a copy. It never writes a file,
and the engine that everybody else imports stays as it is.
"""

from __future__ import annotations

import ast
import importlib.util
import sys
from collections.abc import Iterator
from functools import cache
from importlib.machinery import ModuleSpec
from pathlib import Path
from types import CodeType, ModuleType
from typing import NamedTuple

import quietcuff.rules
from tests.both_engines.server_engine import Rules

PACKAGE = "quietcuff.rules"
FOLDER = Path(quietcuff.rules.__file__).parent
TURNED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.GtE: ast.Gt, ast.Gt: ast.GtE, ast.LtE: ast.Lt, ast.Lt: ast.LtE,
    ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.In: ast.NotIn, ast.NotIn: ast.In,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip


class Mutant(NamedTuple):
    """`name`: file, function around it, the comparison as written and as turned. `number` counts within the file."""

    name: str
    file: Path
    number: int


class _Turn(ast.NodeTransformer):
    """Turns the comparison of that number and remembers where it stood; without a number it only counts."""

    def __init__(self, number: int | None) -> None:
        self.number = number
        self.count = 0
        self.functions: list[str] = []
        self.found: list[str] = []

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        self.functions.append(node.name)
        self.generic_visit(node)
        self.functions.pop()
        return node

    def visit_Compare(self, node: ast.Compare) -> ast.AST:
        self.generic_visit(node)
        written = ast.unparse(node)
        for index, operator in enumerate(node.ops):
            turned = ast.Compare(node.left, [*node.ops], node.comparators)
            turned.ops[index] = TURNED[type(operator)]()
            self.found.append(f"{'.'.join(self.functions)}: {written} -> {ast.unparse(turned)}")
            if self.count == self.number:
                node.ops[index] = turned.ops[index]
            self.count += 1
        return node


def comparison_mutants() -> Iterator[Mutant]:
    """Every comparison of every file of the engine, turned once."""
    for file in sorted(FOLDER.glob("*.py")):
        counter = _Turn(None)
        counter.visit(ast.parse(file.read_text(encoding="utf-8")))
        for number, found in enumerate(counter.found):
            yield Mutant(f"{file.stem}.{found}", file, number)


def mutated_engine(mutant: Mutant) -> Rules:
    """The engine with that one comparison turned."""
    tree = _Turn(mutant.number).visit(ast.parse(mutant.file.read_text(encoding="utf-8")))
    return _engine({mutant.file.stem: compile(ast.fix_missing_locations(tree), str(mutant.file), "exec")})


def copied_engine() -> Rules:
    """A copy with nothing turned."""
    return _engine({})


class _Finder:
    """Serves the rules as compiled here, before any other finder is asked."""

    def __init__(self, codes: dict[str, CodeType]) -> None:
        self.codes = codes

    def find_spec(self, name: str, path: object = None, target: object = None) -> ModuleSpec | None:
        stem = name.removeprefix(PACKAGE + ".")
        return importlib.util.spec_from_loader(name, self) if stem in self.codes else None

    def create_module(self, spec: ModuleSpec) -> None:
        return None

    def exec_module(self, module: ModuleType) -> None:
        exec(self.codes[module.__name__.removeprefix(PACKAGE + ".")], module.__dict__)  # noqa: S102  (our own source, one comparison turned)


def _engine(changed: dict[str, CodeType]) -> Rules:
    """Imports the copy while its modules stand in for the real ones, then puts those back."""
    finder = _Finder({**_codes(), **changed})
    real = {name: sys.modules.pop(name) for name in list(sys.modules) if name.startswith(PACKAGE + ".")}
    sys.meta_path.insert(0, finder)  # type: ignore[arg-type]  # a finder needs find_spec alone
    try:
        copy = importlib.import_module(PACKAGE + ".assess"), importlib.import_module(PACKAGE + ".cuff")
    finally:
        sys.meta_path.remove(finder)  # type: ignore[arg-type]  # a finder needs find_spec alone
        for name in [name for name in sys.modules if name.startswith(PACKAGE + ".")]:
            del sys.modules[name]
        sys.modules.update(real)
        _point_package_at(real)
    return Rules(copy[0].assess, copy[1].choose_cuff)


def _point_package_at(real: dict[str, ModuleType]) -> None:
    """Importing a module also sets it as an attribute of its package: `import quietcuff.rules.cuff` reads that."""
    for name, module in real.items():
        setattr(quietcuff.rules, name.removeprefix(PACKAGE + "."), module)


@cache
def _codes() -> dict[str, CodeType]:
    files = (file for file in FOLDER.glob("*.py") if file.stem != "__init__")
    return {file.stem: compile(file.read_text(encoding="utf-8"), str(file), "exec") for file in files}
