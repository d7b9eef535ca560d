"""`--units` says what is printed, of pages and logs too; what is read has the file's units."""

from __future__ import annotations

import html
import json
import re
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main
from backspring.report.display import STYLES
from backspring.units import System
from python.test_sentences import FOREIGN, SYSTEMS, printed

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
NAMES = [path.stem for path in sorted(DESIGNS.glob("*.toml"))]
# Bare numbers, in mm and in inches as the files are.
READ = {
    "heron": [
        ["fit", "--half-stop", "0.3", "--closed", "0.4", "--state", "unloaded", "--tip", "-0.5"],
        ["fit", "--target", "0.02"],
        ["fit", "--after-back", "0.2"],
        ["grind", "--remove", "0.1", "--step", "0.05", "--region", "0", "36.5"],
        ["grind", "--to-pull", "9", "--step", "0.05"],
        ["load", "--at", "25", "--clearance", "0.3", "--lever", "150"],
        ["size", "--pull", "9", "--vary", "fit.preload", "--bounds", "fit.preload", "0.3", "1"],
        ["compare", "--ground", "back", "0.1"],
        ["tolerance", "--spread", "fit.preload=0.05", "--n", "16"],
    ],
    "kestrel": [
        ["fit", "--half-stop", "0.012", "--closed", "0.016", "--state", "unloaded"],
        ["grind", "--remove", "0.004", "--step", "0.002"],
        ["size", "--pull", "4", "--vary", "fit.preload"],
        ["tolerance", "--spread", "fit.preload=0.002", "--n", "16"],
    ],
}


def shown(page: str) -> list[str]:
    """What a page shows, but for its drawings and the titles of its sources."""
    hidden = r"<(style|svg).*?</\1>|<h2>\d+. Sources.*?(?=<h2>)"
    told = re.sub(hidden, "", page, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]+>", "\n", told)).replace("Rockwell C", "").splitlines()


@pytest.mark.parametrize(("name", "units"), [*((name, "in") for name in NAMES), ("kestrel", "mm")])
def test_no_page_on_a_design_mixes_units(name: str, units: System, undrawn: None) -> None:
    page = bs.page(bs.load(DESIGNS / f"{name}.toml"), units=units).html
    assert [line for line in shown(page) if FOREIGN[units].search(line)] == []


@pytest.mark.parametrize(
    ("name", "words"), [(name, words) for name, asked in READ.items() for words in asked]
)
def test_a_bare_number_is_read_alike_whatever_is_printed(
    name: str, words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    told = []
    for units in SYSTEMS:
        main([words[0], str(DESIGNS / f"{name}.toml"), *words[1:], "--units", units, "--json"])
        told.append(json.loads(capsys.readouterr().out))
    assert told[0] == told[1]
    assert told[0]["status"] != "error"


def test_the_few_numbers_are_in_mm_whatever_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    words = "check --thickness 2.5 --length 32 --width 2.3 --preload 0.6 --steel 1095 --hardness 47"
    told = []
    for units in SYSTEMS:
        main([*words.split(), "--units", units, "--json"])
        told.append(json.loads(capsys.readouterr().out)["data"])
    assert told[0] == told[1]


@pytest.mark.parametrize(("units", "step"), [("mm", "0.050"), ("in", "2.0")])
def test_rows_of_a_grind_are_round_in_the_units_shown(units: System, step: str) -> None:
    for name in ("heron", "kestrel"):
        text = printed(
            ["grind", str(DESIGNS / f"{name}.toml"), "--remove", "0.12 mm", "--units", units]
        )
        rows = [line.split()[0] for line in text.split("\n") if re.match(r"  \d", line)]
        assert rows[:3] == [f"{i * float(step):.{len(step.partition('.')[2])}f}" for i in range(3)]


def test_both_systems_write_every_kind_of_number() -> None:
    metric, inches = STYLES["mm"], STYLES["in"]
    assert metric.keys() == inches.keys()
    assert (inches["energy"].unit, inches["speed"].unit) == ("in lbf", "ft/s")
    assert (inches["stiffness"].unit, inches["angle"].unit) == ("lbf/in", "deg")
    # NIST SP 811, appendix B: 1 lbf is 4.4482216152605 N, an inch 25.4 mm, a foot 0.3048 m.
    assert inches["energy"].text(25.4 * 4.4482216152605) == "1.000 in lbf"
    assert inches["speed"].text(0.3048 * 3.0) == "3.0 ft/s"
    assert inches["stiffness"].text(4.4482216152605 / 25.4 * 100.0) == "100 lbf/in"


MEASURED = (
    "new --measured --middle-pin 2 --rear-pin 2 --pivot-pin 3.2 --width 2.3 --middle-to-rear 36 "
    "--middle-to-pivot 34.6 --thickness -38=3.2 0=3.8 36.5=2.5 --pad 27 36.5 --open 6.1 "
    "--closed 6.2 --front 6.6 --corner-radius 1.2 --rear-misses 0.9"
)
IN_INCHES = (
    "new --measured --middle-pin 1/16in --rear-pin 1/16in --pivot-pin 1/8in --width .09in "
    "--middle-to-rear 1.42+-.002in --middle-to-pivot 1.36in --thickness -1.5in=.126in 0in=.15in "
    "1.44in=.1in --pad 1.06in 1.44in --open .24in --closed .244in --front .26in "
    "--corner-radius .047in --rear-misses .035in"
)
UNIFORM = (
    "check --thickness .1in --length 1.25in --width .09in --steel 1095 --hardness 47 --preload"
)
WITHOUT_A_FILE = [
    (["new", "--pull", "4 lbf"], "lbf"),
    (["new", "--pull", "18 N"], "N"),
    (["new", "--pull", "18"], "N"),
    (["new", "--pull", "4 lbf", "--units", "mm"], "N"),
    (["new"], "N"),
    (MEASURED.split(" "), "mm"),
    (IN_INCHES.split(" "), "in"),
    (["bushing", "--closed", "7 thou", "6thou", "7 thou", "-"], "thou"),
    (["bushing", "--closed", "7 thou", "0.15", "7 thou", "0.15"], "mm"),
    ([*UNIFORM.split(" "), ".025in"], "lbf"),
    ([*UNIFORM.split(" "), "0.6"], "N"),
]


@pytest.mark.parametrize(("words", "unit"), WITHOUT_A_FILE)
def test_an_answer_without_a_file_has_the_units_that_all_of_it_was_asked_in(
    words: list[str], unit: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    written = ["-o", str(tmp_path / "new.toml")] if words[0] == "new" else []
    assert main([*words, *written]) in (0, 1)
    told = capsys.readouterr().out
    system: System = "in" if unit in ("in", "lbf", "thou") else "mm"
    # Of a measured knife no figure with a unit is printed.
    assert re.search(rf"\d {unit}\b", told) or "--measured" in words
    assert not FOREIGN[system].search(told)
    if written:
        assert bs.load(tmp_path / "new.toml").units == system
