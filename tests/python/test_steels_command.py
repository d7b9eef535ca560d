"""`backspring steels`: the list, one steel with sources, questions on a temper, its picture."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from backspring import steel as steels
from backspring.cli import main
from backspring.picture.temper import temper_curve

GOLDEN = Path(__file__).resolve().parents[1] / "golden"
Captured = pytest.CaptureFixture[str]


def document(capsys: Captured, *words: str) -> dict[str, Any]:
    assert main(["steels", *words, "--json"]) == 0
    shown = json.loads(capsys.readouterr().out)
    assert (shown["format"], shown["command"], shown["status"]) == (1, "steels", "pass")
    return dict(shown)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("steels.txt", []),
        ("steels_1095.txt", ["1095"]),
        ("steels_o1_inch.txt", ["O1", "--units", "in"]),
        (
            "steels_1095_after.txt",
            ["1095", "--temper", "440 C", "--time", "2 h", "--after", "500 C", "60 s"],
        ),
    ],
)
def test_the_text_is_that_which_was_read_and_found_good(
    name: str, words: list[str], capsys: Captured
) -> None:
    assert main(["steels", *words]) == 0
    assert capsys.readouterr().out == (GOLDEN / name).read_text("utf-8")


def test_the_list_has_every_steel(capsys: Captured) -> None:
    listed = document(capsys)["data"]["steels"]
    assert [each["name"] for each in listed] == list(steels.names())
    by_name = {each["name"]: each for each in listed}
    assert (by_name["O1"]["temper_low_c"], by_name["O1"]["temper_high_c"]) == (149.0, 649.0)
    assert (by_name["O1"]["time_counts"], by_name["1095"]["time_counts"]) == (False, True)
    assert by_name["17-7PH"]["temper_low_c"] is None


@pytest.mark.parametrize("name", steels.names())
def test_every_number_of_a_steel_is_printed_with_its_source(name: str, capsys: Captured) -> None:
    shown = document(capsys, name)["data"]
    main(["steels", name])
    text = capsys.readouterr().out
    steel = steels.steel(name)
    for line in (*steel.conflicts, *steel.cautions):
        assert line in text
    for point in steel.points:
        assert point.condition in text
    keys = [key for row in _with_sources(shown["steel"]) for key in row["sources"]]
    assert set(keys) <= set(shown["sources"])
    for key in keys:
        assert f"  {key}: " in text
    if steel.temper is not None:
        for row in (*steel.temper.points, *steel.temper.beside):
            assert f"{row.hardness_hrc:.10g}" in text


def _with_sources(node: Any) -> list[dict[str, Any]]:
    if isinstance(node, dict):
        inner = [row for value in node.values() for row in _with_sources(value)]
        return [node, *inner] if "sources" in node else inner
    return [row for value in node for row in _with_sources(value)] if _listed(node) else []


def _listed(node: Any) -> bool:
    return isinstance(node, list)


def test_what_hardness_a_temper_leaves(capsys: Captured) -> None:
    shown = document(capsys, "O1", "--temper", "959 F", "--time", "1 h")
    answer = shown["data"]["answer"]
    wanted = steels.hardness_after_temper("O1", 515, 1)
    assert answer["temper_c"] == pytest.approx(515.0)
    assert answer["hardness_hrc"] == pytest.approx(wanted.value)
    assert answer["hardness_low_hrc"] == pytest.approx(wanted.low)
    assert shown["diagnostics"] == []


def test_which_temper_leaves_a_hardness(capsys: Captured) -> None:
    answer = document(capsys, "1095", "--hardness", "45 HRC", "--time", "2 h")["data"]["answer"]
    wanted = steels.temper_for_hardness("1095", 45, 2)
    assert answer["temper_c"] == wanted.value
    assert (answer["temper_low_c"], answer["temper_high_c"]) == (wanted.low, wanted.high)
    assert answer["hardness_hrc"] == pytest.approx(45.0, abs=1e-9)


def test_what_a_hot_moment_leaves(capsys: Captured) -> None:
    words = ("1095", "--temper", "400", "--time", "2", "--after", "500 C", "60 s")
    shown = document(capsys, *words)
    after = shown["data"]["answer"]["after"]
    wanted = steels.hardness_after_heat("1095", 400, 2, 500, "60 s")
    assert after["hardness_hrc"] == wanted.hardness_hrc.value
    assert after["extrapolated_in_time"] is True
    assert [each["code"] for each in shown["diagnostics"]] == ["extrapolated-in-time"]


def test_notices_are_told(capsys: Captured) -> None:
    shown = document(capsys, "O1", "--temper", "300 C", "--time", "2 h")
    codes = [each["code"] for each in shown["diagnostics"]]
    assert codes == ["embrittlement", "temper-time"]


def test_bare_numbers_are_degrees_celsius_whatever_is_printed(capsys: Captured) -> None:
    answer = document(capsys, "O1", "--temper", "515", "--units", "in")["data"]["answer"]
    assert answer["temper_c"] == pytest.approx(515.0)
    main(["steels", "O1", "--temper", "959 F", "--units", "in"])
    assert capsys.readouterr().out.startswith("O1 tempered 1 h at 959 F: 45.2 HRC (43.2 to 47.2)")


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["109"], 'unknown steel "109": did you mean "1095"? known: 1075'),
        (["01"], 'unknown steel "01": did you mean "O1"? known: 1075'),
        (["--temper", "515 C"], "backspring steels: --temper needs the name of a steel (see"),
        (["--output", "x.png"], "backspring steels: --output needs the name of a steel (see"),
        (["O1", "--time", "2 h"], "backspring steels: --time needs --temper or --hardness (see"),
        (
            ["O1", "--after", "400 C", "60 s"],
            "backspring steels: --after needs --temper or --hardness (see",
        ),
        (
            ["O1", "--temper", "515 C", "--hardness", "45"],
            "backspring steels: give --temper or --hardness, not both (see",
        ),
        (["O1", "--temper", "515 mm"], '--temper: must be a temperature, got "515 mm", which is'),
        (["O1", "--hardness", "45 HV"], '--hardness: unknown unit "HV" in "45 HV": known are HRC'),
        (
            ["1075", "--temper", "400", "--after", "500 C", "60 N"],
            '--after: must be a time, got "60 N", which is a force',
        ),
        (["O1", "--temper", "700 C"], "temper: known from 149 to 649 C, got 700 C"),
        (["17-7PH", "--temper", "480 C"], "no temper data of 17-7PH: measure the hardness"),
        (["17-7PH", "--output", "x.png"], "no temper data of 17-7PH: measure the hardness"),
        (["O1", "--output", "x.pdf"], 'output: must end in .png or .svg, got "x.pdf"'),
    ],
)
def test_wrong_use_is_told(words: list[str], message: str, capsys: Captured) -> None:
    assert main(["steels", *words]) == 2
    assert capsys.readouterr().err.startswith(message)


@pytest.mark.parametrize("suffix", [".png", ".svg"])
def test_the_picture_is_the_same_every_time(suffix: str, tmp_path: Path, capsys: Captured) -> None:
    words = ["steels", "1095", "--temper", "420 C", "--output"]
    contents = []
    for name in ("first", "second"):
        output = tmp_path / (name + suffix)
        assert main([*words, str(output)]) == 0
        contents.append(output.read_bytes())
    assert contents[0] == contents[1]
    assert contents[0].startswith(b"\x89PNG" if suffix == ".png" else b"<?xml")
    assert f"drawn in {output}" in " ".join(capsys.readouterr().out.split())


def test_the_picture_shows_the_curve_its_points_and_the_band() -> None:
    ax = temper_curve("O1", mark=(515.0, 45.2))
    curve, points = ax.lines[0], ax.lines[1]
    for x, y in zip(curve.get_xdata(), curve.get_ydata(), strict=True):
        assert y == pytest.approx(steels.hardness_after_temper("O1", float(x)).value)
    temper = steels.steel("O1").temper
    assert temper is not None
    assert list(points.get_ydata()) == [row.hardness_hrc for row in temper.points]
    labels = ax.get_legend_handles_labels()[1]
    assert {"garland-o1", "buffalo-o1", "aobo-o1"} <= set(labels)
    assert "45.2 HRC" in [text.get_text() for text in ax.texts]


def test_the_picture_in_degrees_f() -> None:
    celsius, fahrenheit = temper_curve("1095", time_h=2.0), temper_curve("1095", units="in")
    assert fahrenheit.get_xlabel() == "temper [F]"
    assert fahrenheit.lines[0].get_xdata()[0] == pytest.approx(
        celsius.lines[0].get_xdata()[0] * 1.8 + 32.0
    )


def test_without_matplotlib_one_line_says_what_to_install(tmp_path: Path) -> None:
    """A module set to None cannot be imported: Python's own import rules."""
    output = tmp_path / "o1.png"
    question = (
        "import sys; sys.modules['matplotlib'] = None; from backspring.cli import main;"
        f"sys.exit(main(['steels', 'O1', '--output', {str(output)!r}]))"
    )
    answer = subprocess.run([sys.executable, "-c", question], capture_output=True, text=True)
    assert answer.returncode == 2
    assert answer.stderr == 'pictures need matplotlib: pip install "backspring[plot]"\n'
    assert not output.exists()


def test_a_range_is_told_in_the_units_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    """195 C is 383 F, 620 C 1148 F: NIST SP 811, B.9."""
    assert main(["steels", "1095", "--temper", "900 C", "--units", "in"]) == 2
    assert "temper: known from 383 to 1148 F, got 1652 F" in capsys.readouterr().err
    assert main(["steels", "1095", "--temper", "900 C"]) == 2
    assert "temper: known from 195 to 620 C, got 900 C" in capsys.readouterr().err
