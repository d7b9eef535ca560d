"""`backspring compare`: exit codes, the JSON document, the text a maker reads."""

from __future__ import annotations

import json
import re
import shlex
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main

ROOT = Path(__file__).resolve().parents[2]
DESIGNS = ROOT / "data" / "designs"
HERON = str(DESIGNS / "heron.toml")
KESTREL = str(DESIGNS / "kestrel.toml")
TURNSTONE = str(DESIGNS / "turnstone.toml")


def asked(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> dict[str, Any]:
    assert main(["compare", *words, "--json"]) == code
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    return document


def altered(tmp_path: Path, old: str, new: str) -> str:
    text = Path(HERON).read_text(encoding="utf-8")
    assert old in text
    path = tmp_path / "other.toml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return str(path)


def test_the_document_holds_figures_causes_and_targets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = altered(tmp_path, "preload = 0.9", "preload = 1.0")
    data = asked(capsys, HERON, other)["data"]
    figures = {each["name"]: each for each in data["figures"]}
    pull = figures["peak_pull_n"]
    assert pull.keys() == {"name", "a", "b", "change", "share"}
    assert pull["b"] - pull["a"] == pull["change"] > 0.0
    assert pull["share"] == pull["change"] / pull["a"]
    (cause,) = data["causes"]
    assert (cause["key"], cause["a"], cause["b"]) == ("fit.preload", 0.9, 1.0)
    assert cause["pull_n"] == cause["changes"]["peak_pull_n"] == pull["change"]
    assert {each["name"] for each in data["targets"]} == {
        "pull",
        "yield_margin",
        "reading",
        "openings",
    }
    assert data == bs.compare(bs.load(HERON), bs.load(other)).to_dict()


def test_a_target_lost_exits_with_1(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    met = altered(tmp_path, "yield_margin = 1.15", "yield_margin = 1.05")
    document = asked(capsys, met, "--ground", "belly", "0.1 mm", code=1)
    assert document["status"] == "fail"
    lost = {each["name"]: each["lost"] for each in document["data"]["targets"]}
    assert lost["yield_margin"]


def test_a_grind_is_compared_with_the_design_before(capsys: pytest.CaptureFixture[str]) -> None:
    data = asked(capsys, HERON, "--ground", "back", "4", "--units", "in", code=2)["data"]
    assert data == {}
    data = asked(capsys, HERON, "--ground", "back", "0.1 mm")["data"]
    assert data["b"]["name"] == "Heron, back ground"
    ground = bs.compare(bs.load(HERON), bs.grind(bs.load(HERON), back="0.1 mm"))
    assert data["figures"] == ground.to_dict()["figures"]


def test_drawing_against_knife(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    log = tmp_path / "knife.csv"
    knife = bs.Knife(bs.load(HERON), log)
    knife.measure(half_stop="0.12 mm", closed="0.1 mm", state="loaded")
    data = asked(capsys, HERON, "--log", str(log), code=0)["data"]
    figures = {each["name"]: each for each in data["figures"]}
    held = figures["reading_loaded_closed_mm"]["b"]
    assert held == bs.check(knife.design).to_dict()["positions"]["closed"]["reading_loaded_mm"]
    assert data["b"]["name"] == "Heron, this knife"


def test_the_report_speaks_the_units_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", HERON, KESTREL, "--units", "in"]) == 0
    inches = capsys.readouterr().out
    assert inches.startswith("Heron -> Kestrel: pull rises by 1.78 lbf; now met: pull")
    assert "now met: pull, yield margin, reading" in inches
    tables = inches.split("\n\n")[2:]
    assert not re.search(r"\b(mm|MPa|mJ|N)\b", "".join(tables))
    assert max(map(len, inches.splitlines()[1:])) <= 80


def test_every_figure_is_shown_on_request(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", HERON, "--ground", "back", "0.1 mm", "--all"]) == 0
    assert "positions closed force" in capsys.readouterr().out


def test_one_of_several_blades(capsys: pytest.CaptureFixture[str]) -> None:
    words = (TURNSTONE, TURNSTONE)
    assert [*asked(capsys, *words)["data"]["blades"]] == ["long", "pen"]
    assert "blades" not in asked(capsys, *words, "--blade", "pen")["data"]


def test_a_blade_alone_is_held_beside_one_of_several(
    capsys: pytest.CaptureFixture[str],
) -> None:
    data = asked(capsys, HERON, TURNSTONE, "--blade", "long")["data"]
    # No joint stands between two pins without a pen blade and one pin with it.
    (step,) = data["causes"]
    assert {"spring.support", "blades"} <= {*step["key"].split(", ")}
    changes = {each["name"]: each["change"] for each in data["figures"]}
    assert step["pull_n"] == changes["peak_pull_n"] < 0.0
    assert main(["compare", HERON, TURNSTONE, "--blade", "long"]) == 0
    assert "all of it from what differs in kind" in capsys.readouterr().out


def test_the_picture_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    output = tmp_path / "both.svg"
    data = asked(capsys, HERON, "--ground", "back", "0.1 mm", "--output", str(output))["data"]
    assert data["output"] == str(output)
    assert "<svg" in output.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([HERON], "give one of B, --ground FACE DEPTH, --log FILE"),
        ([HERON, KESTREL, "--ground", "back", "0.1 mm"], "give one of B"),
        ([HERON, "--ground", "side", "0.1 mm"], "--ground back, belly or pad, got side"),
        ([HERON, "--ground", "back", "0.1 N"], "ground: "),
        ([HERON, "--log", "none.csv"], "no such file: none.csv"),
        ([HERON, KESTREL, "--habits", "."], "--habits goes with --log FILE"),
        ([HERON, "none.toml"], "none.toml"),
    ],
)
def test_bad_use_is_told_and_exits_with_2(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["compare", *words]) == 2
    streams = capsys.readouterr()
    assert message in streams.err
    assert streams.out == ""


def test_the_line_of_the_readme_runs(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(ROOT)
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    lines = re.findall(r"^backspring (compare data/.*)$", readme, flags=re.MULTILINE)
    assert len(lines) == 1
    for line in lines:
        assert main(shlex.split(line)) == 0
        assert "Which dimension causes how much" in capsys.readouterr().out
