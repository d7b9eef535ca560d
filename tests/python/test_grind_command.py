"""`backspring grind`: exit codes, the JSON document, the text a maker reads, the picture."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg

import backspring as bs
from backspring.cli import main
from backspring.picture.grinding import grinding

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = str(DESIGNS / "heron.toml")
WREN = str(DESIGNS / "wren.toml")
NUMBER = {"type": "number"}
MAYBE = {"type": ["number", "null"]}


def table(numbers: str, maybe: str = "", **others: Any) -> dict[str, Any]:
    fields = dict.fromkeys(numbers.split(), NUMBER) | dict.fromkeys(maybe.split(), MAYBE) | others
    return {"type": "object", "properties": fields, "required": list(fields)}


ROW = table(
    "removed_mm preload_mm travel_peak_stress_mpa stiffness_n_per_mm",
    "peak_pull_n peak_torque_nmm yield_margin yield_margin_low reading_loaded_half_stop_mm "
    "reading_loaded_closed_mm",
)
DOCUMENT = table(
    "",
    format={"const": 1},
    command={"const": "grind"},
    status={"enum": ["pass", "fail"]},
    data=table(
        "removed_mm pass_mm",
        face={"enum": ["back", "belly", "pad"]},
        region_mm={"type": "array", "items": NUMBER, "minItems": 2, "maxItems": 2},
        passes={"type": "integer"},
        rows={"type": "array", "items": ROW, "minItems": 1},
    ),
    diagnostics={"type": "array", "items": table("", code={}, message={}, path={}, line={})},
)


def asked(capsys: pytest.CaptureFixture[str], *words: str, code: int = 1) -> dict[str, Any]:
    """Answer in JSON; the Heron pulls less than its own target, ground or not."""
    assert main(["grind", *words, "--json"]) == code
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    return document


@pytest.mark.parametrize(
    "words",
    [
        ["--face", "back", "--remove", "0.3 mm", "--step", "0.05 mm"],
        ["--face", "belly", "--remove", "8 thou", "--region", "5", "20 mm"],
        ["--face", "pad", "--to-pull", "2.3 lbf"],
        ["--flush"],
        ["--flush", "--liners", "-34", "9", "36.5", "6.9"],
    ],
)
def test_the_document_has_its_stated_shape(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    document = asked(capsys, HERON, *words)
    jsonschema.validate(document, DOCUMENT)
    rows = document["data"]["rows"]
    assert rows[0]["removed_mm"] == 0.0
    assert rows[-1]["removed_mm"] == document["data"]["removed_mm"]


def test_the_rows_are_those_of_the_table(capsys: pytest.CaptureFixture[str]) -> None:
    data = asked(capsys, HERON, "--face", "back", "--remove", "0.3 mm", "--step", "0.1 mm")["data"]
    expected = bs.grind_table(bs.load(HERON), "back", to=0.3, step=0.1).to_dict()
    assert data == expected | {"pass_mm": 0.1, "passes": 3}


def test_without_a_half_stop_its_reading_is_null(capsys: pytest.CaptureFixture[str]) -> None:
    data = asked(capsys, WREN, "--remove", "0.1 mm", code=0)["data"]
    assert all(row["reading_loaded_half_stop_mm"] is None for row in data["rows"])
    main(["grind", WREN, "--remove", "0.1 mm"])
    assert "half-stop" not in capsys.readouterr().out


def test_the_depth_for_a_pull_reaches_it(capsys: pytest.CaptureFixture[str]) -> None:
    data = asked(capsys, HERON, "--to-pull", "2.2 lbf", "--pass", "0.02 mm")["data"]
    assert data["pull_n"] == pytest.approx(2.2 * 4.4482216152605, rel=1e-12)
    assert data["rows"][-1]["peak_pull_n"] == pytest.approx(data["pull_n"], rel=1e-6)
    assert data["removed_mm"] == bs.grind_depth(bs.load(HERON), "2.2 lbf")
    assert data["passes"] == bs.grind_passes(data["removed_mm"], 0.02)
    assert data["ways"] == bs.grind_ways(bs.load(HERON), data["pull_n"]).to_dict()["ways"]
    assert [each["face"] for each in data["ways"]] == ["back", "back", "back", "belly", "pad"]
    margins = [each["yield_margin"] for each in data["ways"]]
    # The pad takes preload with it; ground ahead of the middle pin alone, the root pays.
    assert max(margins) == margins[-1] and min(margins[:3]) == margins[1]


def test_a_spring_ground_below_a_target_says_which_and_exits_1(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    text = Path(HERON).read_text(encoding="utf-8")
    kept, _, _ = text.partition("[targets]")
    design = tmp_path / "heron.toml"
    design.write_text(kept + "[targets]\npull = [10.5, 30]\n", encoding="utf-8")
    words = [str(design), "--remove", "0.15 mm", "--step", "0.05 mm"]
    light = asked(capsys, *words[:2], "0.1 mm", code=0)
    assert [row["missed"] for row in light["data"]["rows"]] == [[], [], []]
    deep = asked(capsys, *words, code=1)
    assert [row["missed"] for row in deep["data"]["rows"]] == [[], [], [], ["pull"]]
    assert "target-missed" in [each["code"] for each in deep["diagnostics"]]
    assert main(["grind", *words]) == 1
    shown = capsys.readouterr().out
    assert "misses" in shown and "none stated: at the likely strength" in shown


def test_a_spring_ground_until_it_yields_exits_1_without_a_stated_margin(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    text = Path(HERON).read_text(encoding="utf-8")
    design = tmp_path / "heron.toml"
    design.write_text(text.partition("[targets]")[0], encoding="utf-8")
    assert asked(capsys, str(design), "--remove", "0.2 mm", code=0)["status"] == "pass"
    yielded = asked(capsys, str(design), "--remove", "0.3 mm", code=1)["data"]
    assert yielded["rows"][-1]["yield_margin"] < 1.0
    (target,) = yielded["targets"]
    assert (target["name"], target["low"], target["stated"]) == ("yield_margin", 1.0, False)


def test_a_bare_number_is_in_the_units_of_the_design(capsys: pytest.CaptureFixture[str]) -> None:
    data = asked(capsys, HERON, "--remove", "0.1", "--step", "0.05", "--units", "in")["data"]
    assert [row["removed_mm"] for row in data["rows"]] == pytest.approx([0.0, 0.05, 0.1])
    kestrel = str(DESIGNS / "kestrel.toml")
    assert asked(capsys, kestrel, "--remove", "0.01")["data"]["removed_mm"] == 0.254


def test_what_grinding_cannot_give_is_no_solution(capsys: pytest.CaptureFixture[str]) -> None:
    document = asked(capsys, HERON, "--to-pull", "3 lbf", code=3)
    assert document["status"] == "error" and document["data"] == {}
    (told,) = document["diagnostics"]
    assert told["code"] == "no-solution"
    assert "every pass lowers that; a preload of" in told["message"]
    assert "rear hole moved by" in told["message"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([], "give one of --remove DEPTH, --to-pull PULL, --flush"),
        (["--remove", "0.1", "--flush"], "give one of --remove DEPTH, --to-pull PULL, --flush"),
        (["--flush", "--face", "pad"], "--flush finds depth and place on the back by itself"),
        (["--remove", "0.1", "--liners", "0", "8", "9", "8"], "--liners goes with --flush"),
        (["--remove", "0.1", "--face", "edge"], "invalid choice: 'edge'"),
        (["--remove", "0.1 N"], '--remove: must be a length, got "0.1 N", which is a force'),
        (["--remove", "0.1", "--pass", "0"], "pass: must be greater than 0 mm, got 0 mm"),
        (
            ["--remove", "3 mm"],
            "back: must be less than 0.6264706 mm, where the pin hole at -34 mm opens",
        ),
        (["--to-pull", "5 lb"], 'unit "lb" in "5 lb" can be a force or a mass'),
        (["--remove", "0.1", "--region", "5", "80"], "region: must lie on the spring"),
        (["--remove", "0.1", "--output", "heron.pdf"], "output: must end in .png or .svg"),
    ],
)
def test_a_bad_question_is_told(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["grind", HERON, *words]) == 2
    shown = capsys.readouterr()
    assert shown.out == ""
    assert message in shown.err


def test_every_fault_is_a_diagnostic_of_its_own(capsys: pytest.CaptureFixture[str]) -> None:
    document = asked(capsys, HERON, "--remove", "3 mm", code=2)
    assert [each["message"].split(":")[0] for each in document["diagnostics"]] == ["back"] * 3


def test_the_text_answers_first_and_says_what_to_mind(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["grind", HERON, "--face", "pad", "--remove", "0.2 mm"]) == 1
    text = capsys.readouterr().out
    first, last = bs.grind_table(bs.load(HERON), "pad", to=0.2, step=0.2)
    headline = text.splitlines()[0]
    pulls = f"pull {first.peak_pull_n:.1f} to {last.peak_pull_n:.1f} N"
    assert headline.startswith(f"Heron: 0.200 mm off the pad, {pulls}, yield margin ")
    assert "\nOff the pad, 27.00 to 36.50 mm\n" in text
    assert "4 of at most 0.050 mm" in text
    assert "cannot be put back" in text
    assert "preload mm" in text


def test_grinding_that_makes_a_spring_yield_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    """A short deep cut puts the bending into one place."""
    words = ["--face", "belly", "--remove", "0.8 mm", "--region", "6", "12"]
    document = asked(capsys, HERON, *words)
    assert document["data"]["rows"][-1]["yield_margin"] < 1.0
    assert "yields" in [each["code"] for each in document["diagnostics"]]


@pytest.mark.parametrize("face", ["back", "belly", "pad"])
@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_picture_shows_the_table(face: Any, units: Any) -> None:
    rows = bs.grind_table(bs.load(HERON), face, to=0.2, step=0.05)
    figure = grinding(rows, units=units)
    curves = {ax.get_ylabel(): ax.lines[0] for ax in figure.axes[:3]}
    size = {"mm": 1.0, "in": 0.0254}[units]
    (pull,) = [line for label, line in curves.items() if label.startswith("peak pull")]
    np.testing.assert_allclose(pull.get_xdata(), rows["removed_mm"] / size)
    margin = curves["yield margin"]
    np.testing.assert_array_equal(margin.get_ydata(), rows["yield_margin"])
    # The shaded area is what comes off.
    area = [
        0.5 * abs(np.dot(x, np.roll(y, 1)) - np.dot(y, np.roll(x, 1)))
        for x, y in (path.vertices.T for path in figure.axes[3].collections[1].get_paths())
    ]
    length = {"back": 36.5 + 38.0, "belly": 27.0, "pad": (36.5**2 - 27.0**2) / 64.0}[face]
    unit_mm2 = {"mm": 1.0, "in": 25.4**2}[units]
    assert sum(area) * unit_mm2 == pytest.approx(0.2 * length, rel=2e-3)
    canvas = FigureCanvasAgg(figure)
    canvas.draw()
    pixels = np.asarray(canvas.buffer_rgba())[..., :3]
    edges = (pixels[0], pixels[-1], pixels[:, 0], pixels[:, -1])
    assert all(np.all(edge == 255) for edge in edges)


def test_the_command_draws(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    output = tmp_path / "heron.png"
    document = asked(capsys, HERON, "--flush", "--output", str(output))
    assert document["data"]["output"] == str(output)
    assert output.read_bytes().startswith(b"\x89PNG")
