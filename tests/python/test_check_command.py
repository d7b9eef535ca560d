"""`backspring check`: exit codes, the JSON document, and the text a maker reads."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

REPO = Path(__file__).resolve().parents[2]
DESIGNS = REPO / "data" / "designs"
GOLDEN = REPO / "tests" / "golden"
HERON = str(DESIGNS / "heron.toml")
WREN = str(DESIGNS / "wren.toml")
NUMBERS = {
    "--thickness": "2.5",
    "--length": "32 mm",
    "--width": "2.3",
    "--preload": "20 thou",
    "--steel": "1095",
    "--hardness": "46",
}


def few_numbers(**changes: str | None) -> list[str]:
    """Words of a command that checks a uniform spring; None leaves an option out."""
    options = NUMBERS | {f"--{name}": value for name, value in changes.items()}
    return [word for name, value in options.items() if value for word in (name, value)]


def run(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "backspring", *words], capture_output=True, text=True, check=False
    )


@pytest.mark.parametrize(
    ("name", "options"), [("check_heron.txt", []), ("check_heron_inch.txt", ["--units", "in"])]
)
def test_the_text_is_that_which_was_read_and_found_good(
    name: str, options: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", HERON, *options]) == 1
    assert capsys.readouterr().out == (GOLDEN / name).read_text("utf-8")


def test_a_design_is_shown_in_its_own_units_unless_asked(
    capsys: pytest.CaptureFixture[str],
) -> None:
    kestrel = str(DESIGNS / "kestrel.toml")
    main(["check", kestrel])
    assert " lbf, " in capsys.readouterr().out.splitlines()[0]
    main(["check", kestrel, "--units", "mm"])
    assert " N, " in capsys.readouterr().out.splitlines()[0]


def test_a_few_numbers_do_instead_of_a_file(capsys: pytest.CaptureFixture[str]) -> None:
    # It yields, and no margin can be stated here: 1 is judged.
    assert main(["check", *few_numbers(), "--json"]) == 1
    data = json.loads(capsys.readouterr().out)["data"]
    # Clamped uniform strip: stiffness 3 E I / L^3, 0.9 % less by shear (E 207000 MPa, nu 0.29).
    inertia_mm4 = 2.3 * 2.5**3 / 12
    shear = 1 / (5 / 6 * 207000 / 2.58 * 2.3 * 2.5 / 32)
    bending = 32**3 / (3 * 207000 * inertia_mm4)
    assert data["stiffness_n_per_mm"] == pytest.approx(1 / (bending + shear), rel=1e-9)
    assert data["positions"]["half_stop"]["reading_unloaded_mm"] == pytest.approx(0.0, abs=1e-9)
    assert "spring: one thickness all along, clamped at the middle pin" in data["defaults"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([], "usage: "),
        (["chek", HERON], 'backspring: unknown command "chek": did you mean "check"?'),
        (["check"], "backspring check: give a design file, or all of --thickness, --length"),
        (
            ["check", *few_numbers(width=None, steel=None)],
            "backspring check: missing --width, --st",
        ),
        (["check", HERON, "--width", "2"], "backspring check: give a design file or --width, not"),
        (["check", HERON, "--units", "cm"], "backspring check: argument --units: invalid choice"),
        (
            ["check", *few_numbers(thickness="0")],
            "--thickness: must be greater than 0 mm, got 0 mm",
        ),
        (["check", *few_numbers(thickness="2 N")], '--thickness: must be a length, got "2 N"'),
        (["check", *few_numbers(length="4")], "--length: the pad about the pivot must be greater"),
        (["check", *few_numbers(steel="01")], '--steel: unknown steel "01": did you mean "O1"?'),
    ],
)
def test_wrong_use_is_told(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(words) == 2
    shown = capsys.readouterr()
    assert (shown.err or shown.out).startswith(message)


def test_wrong_use_is_told_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--json"]) == 2
    document = json.loads(capsys.readouterr().out)
    assert (document["status"], document["diagnostics"][0]["code"]) == ("error", "usage")


@pytest.mark.parametrize(("path", "code"), [(HERON, 1), (WREN, 0), ("no such file", 2)])
def test_the_command_ends_with_its_code_and_without_a_traceback(path: str, code: int) -> None:
    done = run("check", path)
    assert (done.returncode, "Traceback" in done.stderr) == (code, False)
    assert bool(done.stdout) == (code != 2)


def test_a_search_without_a_solution_has_its_own_code(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(design: bs.Design) -> None:
        raise bs.NoConvergence("stroke: no crest")

    monkeypatch.setattr("backspring.cli.check.check", fail)
    assert main(["check", HERON, "--json"]) == 3
    shown = capsys.readouterr()
    assert json.loads(shown.out)["diagnostics"][0]["code"] == "no-solution"
    assert shown.err == "stroke: no crest\n"


def test_a_reader_that_leaves_early_is_no_error() -> None:
    reader, writer = os.pipe()
    os.close(reader)
    words = [sys.executable, "-m", "backspring", "check", HERON]
    with os.fdopen(writer, "wb") as pipe:
        done = subprocess.run(words, stdout=pipe, stderr=subprocess.PIPE, check=False)
    assert (done.returncode, done.stderr) == (1, b"")


def test_help_names_the_commands() -> None:
    done = run("--help")
    assert done.returncode == 0
    assert re.search(r"\n  check +rests, strokes", done.stdout)
    assert run("--version").stdout == f"backspring {bs.__version__}\n"


def test_the_command_and_the_package_start_without_heavy_libraries() -> None:
    for first in ("import backspring; backspring.load", "from backspring.cli import main"):
        question = (
            f"import sys; {first}; "
            "print(*{'matplotlib', 'scipy', 'rich', 'numpy'} & {*sys.modules})"
        )
        done = subprocess.run(
            [sys.executable, "-c", question], capture_output=True, text=True, check=True
        )
        assert done.stdout.split() == []
