"""`backspring tolerance`: exit codes, the JSON document, progress."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = str(DESIGNS / "heron.toml")
SPREADS = ["--spread", "fit.preload=0.05 mm", "--spread", "spring.thickness_offset=0.02 mm"]


def test_the_document_holds_the_study(capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["tolerance", HERON, *SPREADS, "--n", "200", "--seed", "7", "--json"])
    document = json.loads(capsys.readouterr().out)
    spreads = {"fit.preload": "0.05 mm", "spring.thickness_offset": "0.02 mm"}
    study = bs.tolerance(bs.load(HERON), spreads, n=200, seed=7)
    assert document["data"] == study.to_dict()
    assert (document["command"], document["status"]) == ("tolerance", study.status)
    assert code == (0 if study.status == "pass" else 1)
    assert document["data"]["spreads"][0] == {
        "key": "fit.preload",
        "unit": "mm",
        "kind": "normal",
        "nominal": 0.9,
        "standard_deviation": pytest.approx(0.05 / 3),
        "tolerance": pytest.approx(0.05),
    }


def test_a_share_decides_the_exit_code(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["tolerance", HERON, *SPREADS, "--n", "50"]
    assert main(words) == 1
    assert main([*words, "--wanted-share", "0"]) == 0
    assert "of knives meet the targets" in capsys.readouterr().out


def test_results_are_shown_in_inches(capsys: pytest.CaptureFixture[str]) -> None:
    main(["tolerance", HERON, *SPREADS, "--n", "50", "--units", "in"])
    assert "peak pull lbf" in capsys.readouterr().out


def test_progress_goes_to_the_error_stream(capsys: pytest.CaptureFixture[str]) -> None:
    main(["tolerance", HERON, *SPREADS, "--n", "50", "--progress", "--json"])
    shown = capsys.readouterr()
    assert "Heron" in shown.err
    assert json.loads(shown.out)["command"] == "tolerance"
    main(["tolerance", HERON, *SPREADS, "--n", "50", "--no-progress"])
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (
            [HERON, "--spread", "fit.preload"],
            'backspring tolerance: write --spread KEY=TOLERANCE, got "fit.preload"',
        ),
        (
            [HERON, *SPREADS, *SPREADS],
            "backspring tolerance: --spread fit.preload is given twice",
        ),
        ([HERON, "--spread", "fit.preload=1 N"], 'fit.preload: must be a length, got "1 N"'),
        ([HERON, "--spread", "fit=1"], "fit: unknown dimension: "),
        ([HERON, *SPREADS, "--n", "0"], "n: must be a whole number from 1 to 10000000, got 0"),
        ([HERON, *SPREADS, "--n", "x"], "backspring tolerance: argument --n: invalid int value"),
        (["no such file", *SPREADS], "no such file: no such file"),
    ],
)
def test_wrong_use_is_told(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["tolerance", *words]) == 2
    assert capsys.readouterr().err.startswith(message)


def test_without_spreads_an_ordinary_bench_is_taken_and_told(
    capsys: pytest.CaptureFixture[str],
) -> None:
    main(["tolerance", HERON, "--n", "200", "--json"])
    document = json.loads(capsys.readouterr().out)
    taken = {each["key"] for each in document["data"]["spreads"]}
    assert {"fit.preload", "spring.thickness_offset", "tang.half_stop"} <= taken
    (told,) = (d for d in document["diagnostics"] if d["code"] == "ordinary-tolerances")
    assert "common practice, no source" in told["message"]
    main(
        [
            "tolerance",
            str(DESIGNS / "bittern.toml"),
            "--n",
            "50",
            "--spread",
            "fit.preload=0.1 mm",
            "--json",
        ]
    )
    diagnostics = json.loads(capsys.readouterr().out)["diagnostics"]
    assert "ordinary-tolerances" not in {each["code"] for each in diagnostics}


def test_the_picture_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    picture = tmp_path / "spread.svg"
    main(["tolerance", HERON, *SPREADS, "--n", "200", "--output", str(picture), "--json"])
    assert json.loads(capsys.readouterr().out)["data"]["output"] == str(picture)
    assert "<svg" in picture.read_text("utf-8")
