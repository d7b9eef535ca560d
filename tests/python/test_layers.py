"""The layers hold one direction, and each outside library stays in its place."""

from __future__ import annotations

import ast
import graphlib
import re
import subprocess
import sys
from pathlib import Path

import pytest

REPO = Path(__file__).resolve().parents[2]
LAYERS = (
    "core",
    "steel",
    "spring",
    "tang",
    "action",
    "strength",
    "design",
    "check",
    "load",
    "many",
    "grind",
    "sensitivity",
    "size",
    "tolerance",
    "fit",
)
LONGEST_FILE = 250
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]', re.MULTILINE)
HEADERS = REPO / "cpp" / "include" / "backspring"
SOURCES = REPO / "cpp" / "src"
PACKAGE = REPO / "python" / "backspring"


def files(*folders: str, ends: tuple[str, ...]) -> list[Path]:
    return sorted(
        path for folder in folders for path in (REPO / folder).rglob("*") if path.suffix in ends
    )


def name(path: Path) -> str:
    return str(path.relative_to(REPO))


def includes(path: Path) -> list[str]:
    return INCLUDE.findall(path.read_text(encoding="utf-8"))


def layer_of(path: Path) -> str | None:
    """The layer that a file of the core belongs to; the umbrella header has none."""
    root = HEADERS if path.is_relative_to(HEADERS) else SOURCES
    layer = path.relative_to(root).parts[0]
    return layer if layer in LAYERS else None


def is_in(path: Path, *folders: str) -> bool:
    return any(path.is_relative_to(REPO / folder) for folder in folders)


CPP = files("cpp", "python/bindings", "tests/cpp", ends=(".cpp", ".hpp"))
CORE = files("cpp/include", "cpp/src", ends=(".cpp", ".hpp"))
PYTHON = files("python", "tests", ends=(".py",))
MODULES = files("python/backspring", ends=(".py",))


def later_layers(path: Path) -> set[str]:
    """Those that a file looks at and should not."""
    own = layer_of(path)
    later = LAYERS[LAYERS.index(own) + 1 :] if own else ()
    return {part.removeprefix("backspring/").split("/")[0] for part in includes(path)} & {*later}


def test_a_layer_looks_only_at_those_before_it() -> None:
    assert {name(path): later for path in CORE if (later := later_layers(path))} == {}


def test_every_file_of_the_core_is_in_a_layer() -> None:
    assert [name(path) for path in CORE if layer_of(path) is None] == [
        "cpp/include/backspring/backspring.hpp"
    ]


def test_the_umbrella_header_reaches_every_header() -> None:
    reached, waiting = set(), ["backspring/backspring.hpp"]
    while waiting:
        header = waiting.pop()
        if header not in reached and header.startswith("backspring/"):
            reached.add(header)
            waiting += includes(HEADERS.parent / header)
    assert reached == {
        path.relative_to(HEADERS.parent).as_posix() for path in HEADERS.rglob("*.hpp")
    }


@pytest.mark.parametrize(
    ("library", "folders"),
    [
        ("pybind11/", ["python/bindings"]),
        ("boost/", ["cpp/src", "cpp/include/backspring/core"]),
        ("fstream", ["tests/cpp/corpus"]),
        ("filesystem", ["tests/cpp/corpus"]),
        ("iostream", ["cpp/bench", "tests/cpp"]),
    ],
)
def test_a_library_is_included_only_in_its_place(library: str, folders: list[str]) -> None:
    users = [path for path in CPP if any(part.startswith(library) for part in includes(path))]
    assert [name(path) for path in users if not is_in(path, *folders)] == []


def display_libraries(path: Path) -> set[str]:
    """Those that a module imports as it is loaded; an import in a function costs its caller."""
    imported = set()
    for statement in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(statement, ast.Import):
            imported |= {alias.name.split(".")[0] for alias in statement.names}
        elif isinstance(statement, ast.ImportFrom) and statement.module:
            imported.add(statement.module.split(".")[0])
    return imported & {"matplotlib", "rich", "jinja2"}


def test_display_libraries_are_imported_only_where_things_are_shown() -> None:
    shown = [f"python/backspring/{room}" for room in ("cli", "picture", "report")]
    others = [path for path in MODULES if not is_in(path, *shown)]
    assert {name(path): used for path in others if (used := display_libraries(path))} == {}


def imported_modules(path: Path) -> set[str]:
    """Modules of the package that a module imports anywhere, for types too."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
    return {each for each in found if each.startswith("backspring.")}


def test_modules_import_one_another_in_one_direction() -> None:
    """The package's own face hands names on and is left out."""
    names = {
        ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts).removesuffix(
            ".__init__"
        ): path
        for path in MODULES
    }
    graph = {each: imported_modules(path) & names.keys() for each, path in names.items()}
    graph.pop("backspring")
    for each, seen in graph.items():
        # Python loads a room's face before its files, which is no look at it.
        seen -= {each, each.rpartition(".")[0]}
    assert [*graphlib.TopologicalSorter(graph).static_order()]


def test_importing_the_package_loads_no_heavy_library() -> None:
    question = "import sys, backspring; print(*{'matplotlib', 'scipy'} & {*sys.modules})"
    answer = subprocess.run(
        [sys.executable, "-c", question], capture_output=True, text=True, check=True
    )
    assert answer.stdout.split() == []


def test_a_file_is_short_enough_to_hold_one_idea() -> None:
    lines = {name(path): path.read_text(encoding="utf-8").count("\n") for path in CPP + PYTHON}
    assert {path: count for path, count in lines.items() if count > LONGEST_FILE} == {}
