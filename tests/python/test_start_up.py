"""What a command loads before it answers: nothing heavy that the answer does not need."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

import backspring as bs
from backspring import steel
from backspring.steel.files import all_sources, all_steels, steel_by_file

HERON = str(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
HEAVY = {"numpy", "matplotlib", "scipy", "rich", "jinja2", "pydantic", "ezdxf", "svgelements"}
# Beside those, of the standard library what takes long, and of ours what other commands need.
NOT_FOR_CHECK = HEAVY | {
    "asyncio", "dataclasses", "importlib.metadata", "importlib.resources", "inspect",
    "ipaddress", "json", "multiprocessing", "pathlib", "shutil", "statistics", "tempfile",
    "urllib", "zipfile", "backspring.design.key_lines", "backspring.design.own_steel_checks",
    "backspring.design.own_steel_fields", "backspring.design.toml_faults", "backspring.fit",
    "backspring.many", "backspring.new_joint", "backspring.outline", "backspring.picture",
    "backspring.report.page_parts",
}  # fmt: skip
NOT_FOR_VERSION = NOT_FOR_CHECK | {"argparse", "re", "typing", "backspring.design"}


def loaded(*words: str) -> set[str]:
    program = (
        "import sys, io; from backspring.cli import main; out = sys.stdout;"
        "sys.stdout = io.StringIO(); main(sys.argv[1:]); print(*sys.modules, file=out)"
    )
    done = subprocess.run(
        [sys.executable, "-S", "-c", program, *words],
        capture_output=True,
        text=True,
        check=True,
        env={"PYTHONPATH": ":".join(each for each in sys.path if each)},
    )
    return set(done.stdout.split())


@pytest.mark.parametrize(
    ("words", "not_needed"),
    [
        (["--version"], NOT_FOR_VERSION),
        (["--help"], NOT_FOR_VERSION),
        (["check", HERON], NOT_FOR_CHECK),
        (["check", HERON, "--json"], NOT_FOR_CHECK - {"json"}),
    ],
)
def test_what_an_answer_does_not_need_is_not_loaded(words: list[str], not_needed: set[str]) -> None:
    assert loaded(*words) & not_needed == set()


def test_what_was_loaded_is_not_looked_through_once_more_at_the_end() -> None:
    program = (
        "import gc, sys; from backspring.cli import entry; entry();"
        "print(gc.get_freeze_count(), gc.get_count()[0], file=sys.stderr)"
    )
    words = [sys.executable, "-S", "-c", program, "check", HERON]
    env = {"PYTHONPATH": ":".join(each for each in sys.path if each)}
    done = subprocess.run(words, capture_output=True, text=True, check=True, env=env)
    kept, left = map(int, done.stderr.split())
    assert kept > 10_000 > left


def test_a_check_in_words_reads_no_sources() -> None:
    all_sources.cache_clear()
    check = bs.check(bs.load(HERON))
    assert "Steel" in check.report()
    assert all_sources.cache_info().currsize == 0
    assert check.steel["sources"] and all_sources.cache_info().currsize == 1


def test_a_steel_by_its_file_is_the_steel_of_that_name() -> None:
    for each in all_steels():
        assert steel.steel(each.name) == each
        assert steel.steel(each.name.swapcase()) == each
        for called in each.also_called:
            assert steel.steel(called) == each
    for stray in ("", "..", "../sources", "o1.toml", "a/b", "\u00e9", "no-such"):
        assert steel_by_file(stray) is None
