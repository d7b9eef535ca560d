"""An option that would change nothing is refused: exit code 2, and what it goes with."""

from __future__ import annotations

from pathlib import Path

import pytest

from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON, OSPREY, WREN = (str(DESIGNS / f"{name}.toml") for name in ("heron", "osprey", "wren"))
SANDERLING = str(DESIGNS / "sanderling.toml")
READ = ["--closed", "0.4 mm", "--state", "unloaded"]
NUMBERS = [
    word
    for option, value in {
        "thickness": "2.5 mm",
        "length": "32 mm",
        "width": "2.3 mm",
        "preload": "0.5 mm",
        "steel": "1095",
        "hardness": "47",
    }.items()
    for word in (f"--{option}", value)
]
UNUSED = [
    (["check", *NUMBERS, "--blade", "main"], "--blade goes with a design file"),
    (["check", *NUMBERS, "--habits", "knives"], "--habits goes with a design file"),
    (["check", *NUMBERS, "--log", "a.csv"], "--log goes with a design file"),
    (["check", HERON, "--thickness", "2.5 mm"], "give a design file or --thickness, not both"),
    (["check", HERON, "--habits", "knives"], "habits: go with --log FILE"),
    (["check", HERON, "--blade", "pen"], "pen"),
    (["compare", HERON, WREN, "--blade", "pen"], "pen"),
    (["compare", HERON, WREN, "--habits", "knives"], "--habits goes with --log FILE"),
    (["compare", HERON, WREN, "--ground", "back", "0.1 mm"], "give one of B, --ground FACE"),
    (["fit", HERON, *READ, "--closed-by", "kick"], "--closed-by: goes with a kick, and this tang"),
    (["fit", HERON, *READ, "--closed-by", "level"], "--closed-by: goes with a kick, and this tang"),
    (["fit", HERON, *READ, "--material", "kick", "1 mm"], "--material: this tang has no kick"),
    (["fit", WREN, *READ, "--material", "half-stop", "1 mm"], "--material: this tang has no half"),
    (["fit", WREN, *READ, "--half-stop", "0.3 mm"], "this tang has no half-stop"),
    (["fit", SANDERLING, "--state", "loaded"], "--state goes with readings"),
    (["fit", HERON, "--repeatability", "0.01 mm"], "--repeatability goes with readings"),
    (["fit", HERON, "--reserve", "0.5"], "--reserve goes with a plan"),
    (["fit", OSPREY, "--closed-by", "kick"], "--closed-by goes with a plan"),
    (["fit", HERON, *READ, "--support", "clamped"], "--support goes with the allowance alone"),
    (["fit", HERON, "--pull", "9 N"], "--pull goes with --log FILE"),
    (["fit", HERON, "--after-back", "0.1 mm", "--output", "a.svg"], "--after-back goes without"),
    (["functions", "check", "--reference"], "give one of NAME and --reference"),
    (["functions", "--units", "in"], "unrecognized arguments: --units"),
    (["grind", HERON, "--remove", "0.1 mm", "--to-pull", "9 N"], "give one of --remove DEPTH"),
    (["grind", HERON, "--flush", "--face", "belly"], "--flush finds depth and place"),
    (["grind", HERON, "--flush", "--step", "0.1 mm"], "--flush finds depth and place"),
    (["grind", HERON, "--remove", "0.1 mm", "--liners", *"1234"], "--liners goes with --flush"),
    (
        ["grind", HERON, "--face", "pad", "--remove", "0.1 mm", "--region", "28 mm", "30 mm"],
        "region: the pad is ground whole",
    ),
    (["keys", "spring.width", "--schema"], "give one of KEY, --schema, --reference and --drawing"),
    (["keys", "--schema", "--units", "in"], "--schema and --reference tell both systems"),
    (["plot", HERON, "--output", "a.svg", "--angle", "52"], "--angle goes with --kind positions"),
    (["size", HERON, "--pull", "9 N", "--taper", "2 mm", "--vary", "width"], "does not go with"),
    (
        ["size", HERON, "--pull", "9 N", "--bounds", "preload", "0.3 mm", "1 mm"],
        "bounds.fit.preload: is not varied",
    ),
    (["steels", "O1", "--time", "2 h"], "--time needs --temper or --hardness"),
    (["steels", "--temper", "400 C"], "--temper needs the name of a steel"),
    (["tolerance", HERON, "--seed", "1", "--seed", "2"], "--seed is given twice"),
    (["grind", HERON, "--remove=0.1 mm", "--remove", "0.2 mm"], "--remove is given twice"),
    (["report", HERON, "-o", "a.html", "--output", "b.html"], "--output is given twice"),
]  # fmt: skip


@pytest.mark.parametrize(("words", "message"), UNUSED)
def test_an_option_that_would_change_nothing_is_refused(
    words: list[str],
    message: str,
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(words) == 2
    printed = capsys.readouterr()
    assert message in printed.err and printed.out == ""
    assert [*tmp_path.iterdir()] == []


def test_options_of_a_plan_are_refused_where_the_log_makes_none(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log = tmp_path / "heron.csv"
    pulled = ["fit", HERON, "--log", str(log), "--pull", "12 N"]
    for more in (["--output", str(tmp_path / "a.svg")], ["--target", "0.1 mm"]):
        assert main([*pulled, *more]) == 2
        assert f"{more[0]}: goes with a plan, the log does not hold" in capsys.readouterr().err
        assert [*tmp_path.iterdir()] == []
    assert main(pulled) == 0
    content = log.read_bytes()
    capsys.readouterr()
    assert main(["fit", HERON, "--log", str(log), "--undo", "--reserve", "0.5"]) == 2
    assert "--reserve: goes with a plan, and --undo makes none" in capsys.readouterr().err
    assert log.read_bytes() == content


@pytest.mark.parametrize("face", ["kick", "half-stop"])
def test_what_goes_with_a_face_is_taken_where_there_is_one(
    face: str, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["fit", OSPREY, "--half-stop", "0.3 mm", *READ, "--closed-by", "level"]
    assert main([*words, "--material", face, "3 mm"]) == 0
    assert "take off" in capsys.readouterr().out
