#!/usr/bin/env python3
"""Which tests answer for changed files: the nearest ones, for a quick look before all of them.

    tests/affected.py python FILE...    test files for pytest, one a line
    tests/affected.py cpp FILE...       a test specification for `backspring_tests -#`

Files are named from the repository's top. A module answers by the tests of its name and those that
import it (`report/size.py`: test_size*.py); without any, by its room's; without a room, by those
that use a name it gives to the package; without those, by what the modules that import it answer
by, and so on. A C++ file answers by the test of its name, without one by its room's.
"""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path

REPO = Path(__file__).resolve().parents[1]
PACKAGE = REPO / "python" / "backspring"
FACE = PACKAGE / "__init__.py"
MODULES = {path for path in PACKAGE.rglob("*.py") if path != FACE}
BESIDE = set((REPO / "tests").glob("*/*.py"))
TESTS = {path for path in BESIDE if path.stem.startswith("test_")}
CPP_TESTS = {path: path.parent.name for path in (REPO / "tests/cpp").glob("*/test_*.cpp")}
# What no test is named after and no test imports.
BY_PLACE = {
    "README.md": ("readme",),
    "data/designs": ("check",),
    "data/evidence.json": ("evidence", "readme", "notebook"),
    "data/sources.toml": ("steel",),
    "data/steels": ("steel", "temper"),
    "notebooks": ("notebook",),
    "python/backspring/cli/answer.py": ("bad_input", "check"),
    "python/backspring/cli/pictures.py": ("plot_command", "grind_command"),
    "python/backspring/cli/values.py": ("size_command", "grind_command"),
    "python/backspring/design": ("bad_input", "design"),
    "python/backspring/errors.py": ("bad_input", "design"),
    "python/backspring/faults.py": ("bad_input", "design"),
    "python/backspring/fit": ("fit",),
    "python/backspring/many": ("batch",),
    "python/backspring/picture": ("plot",),
    "python/backspring/report": ("check",),
    "python/backspring/steel": ("steel", "temper"),
    "python/backspring/whole_file.py": ("fit_log_file", "plot_command", "batch"),
    "python/backspring/__init__.py": ("check", "readme"),
    "python/bindings": ("check",),
    "tests/agreement.py": ("evidence",),
    "tests/conftest.py": ("evidence",),
    "tests/golden": ("check", "steels_command"),
}


@cache
def tree(path: Path) -> list[ast.AST]:
    return list(ast.walk(ast.parse(path.read_text(encoding="utf-8"))))


def imported(path: Path) -> set[str]:
    """Names of modules, and of what may be one, that a file imports anywhere."""
    found = set()
    for node in tree(path):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
    return found


def names_from(module: str) -> set[str]:
    """What a module gives to the package's face."""
    return {
        alias.name
        for node in tree(FACE)
        if isinstance(node, ast.ImportFrom) and node.module == module
        for alias in node.names
    }


def names_used(path: Path) -> set[str]:
    """What a file reads of the package's face, as `bs.name`."""
    return {
        node.attr
        for node in tree(path)
        if isinstance(node, ast.Attribute)
        and isinstance(node.value, ast.Name)
        and node.value.id == "bs"
    }


def module_name(path: Path) -> str:
    """As it is imported; files beside the tests are known by their last name alone."""
    if path in BESIDE:
        return path.stem
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(parts).removesuffix(".__init__")


def importers(path: Path, files: Iterable[Path]) -> set[Path]:
    name = module_name(path)
    loose = f".{name}" if path in BESIDE else name
    return {
        each
        for each in files
        if any(seen == name or seen.endswith(loose) for seen in imported(each))
    }


def named(*stems: str) -> set[Path]:
    """Tests whose names begin with one of these words: grind, grinding and grind_command alike."""
    begins = re.compile(rf"test_({'|'.join(stems)})(s|ing)?(_|$)")
    return {each for each in TESTS if begins.match(each.stem) and each.parent.name != "oracle"}


def by_place(path: Path) -> set[Path]:
    return set().union(
        *(named(*tests) for place, tests in BY_PLACE.items() if path.is_relative_to(REPO / place))
    )


def own_tests(path: Path) -> set[Path]:
    near = named(path.stem) if path.name != "__init__.py" else set()
    given = names_from(module_name(path))
    return (
        near | importers(path, TESTS)
        or by_place(path)
        or {each for each in TESTS if names_used(each) & given and each.parent.name != "oracle"}
        or named(path.stem.partition("_")[0])
    )


def nearest_tests(path: Path) -> set[Path]:
    """Ring by ring outwards, until a module in the ring has tests of its own."""
    ring, seen = {path}, {path}
    while ring:
        if found := set().union(*map(own_tests, ring)):
            return found
        ring = set().union(*(importers(each, MODULES) for each in ring)) - seen
        seen |= ring
    return named("check")


def users_beside(path: Path) -> set[Path]:
    """Tests that import a file beside them, through others too."""
    ring, seen = {path}, {path}
    while ring:
        ring = set().union(*(importers(each, BESIDE) for each in ring)) - seen
        seen |= ring
    users = seen & TESTS
    return users or {each for each in TESTS if each.parent == path.parent}


def python_tests(path: Path) -> set[Path]:
    if path in TESTS:
        return {path}
    if path in BESIDE:
        return users_beside(path)
    if path in MODULES:
        return nearest_tests(path)
    return by_place(path)


def cpp_tests(path: Path) -> set[Path]:
    if path in CPP_TESTS or path.suffix not in (".cpp", ".hpp"):
        return {path} & CPP_TESTS.keys()
    room = {each for each, name in CPP_TESTS.items() if name == path.parent.name}
    if path.is_relative_to(REPO / "tests" / "cpp"):
        return room or set(CPP_TESTS)
    if path.is_relative_to(REPO / "tests" / "fuzz"):
        return {each for each, name in CPP_TESTS.items() if name == "corpus"}
    if not path.is_relative_to(REPO / "cpp"):
        return set()
    return {each for each in room if each.stem.startswith(f"test_{path.stem}")} or room


def main(language: str, *files: str) -> None:
    of: Callable[[Path], set[Path]] = python_tests if language == "python" else cpp_tests
    found = sorted(set().union(*(of(REPO / name) for name in files if (REPO / name).exists())))
    if language == "cpp":
        print(",".join(f"[#{path.stem}]" for path in found))
    else:
        print(*(path.relative_to(REPO) for path in found), sep="\n")


if __name__ == "__main__":
    main(*sys.argv[1:])
