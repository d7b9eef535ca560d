"""A design file from calipers: what follows from each, how sure it is, all faults at once."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main

# The Heron's joint as calipers would tell it: distances outside over pins, faces over a pin.
TOLD: dict[str, Any] = {
    "middle_pin": "2.0 mm",
    "rear_pin": "1.8 mm",
    "pivot_pin": "3.2 +- 0.01 mm",
    "middle_to_rear": "35.9 +- 0.05 mm",
    "middle_to_pivot": "34.6 +- 0.04 mm",
    "width": "2.3 mm",
    "thickness": [("-38 mm", "3.2 mm"), ("0 mm", "3.8 mm"), ("36.5 mm", "2.5 +- 0.03 mm")],
    "pad": ("27 mm", "36.5 mm"),
    "open": "6.1 mm",
    "half_stop": "6.22 mm",
    "closed": "6.2 mm",
    "front": "6.6 mm",
    "corner_radius": "0.7 mm",
    "rear_misses": "0.9 +- 0.05 mm",
}
WORDS = [
    "new", "--measured", "--middle-pin", "2 mm", "--rear-pin", "1.8 mm", "--pivot-pin",
    "3.2 +- 0.01 mm", "--middle-to-rear", "35.9 +- 0.05 mm", "--middle-to-pivot",
    "34.6 +- 0.04 mm", "--width", "2.3 mm", "--thickness", "-38 mm=3.2 mm", "0 mm=3.8 mm",
    "36.5 mm=2.5 +- 0.03 mm", "--pad", "27 mm", "36.5 mm", "--open", "6.1 mm",
    "--half-stop-face", "6.22 mm", "--closed", "6.2 mm", "--front", "6.6 mm", "--corner-radius",
    "0.7 mm", "--rear-misses", "0.9 +- 0.05 mm", "--hardness", "45 +- 1 HRC",
]  # fmt: skip


@pytest.mark.parametrize(("units", "step_mm"), [("mm", 0.0005), ("in", 0.00005 * 25.4 / 10)])
def test_distances_are_those_between_centres(units: Any, step_mm: float) -> None:
    content = bs.measured_design(TOLD, units=units).design.to_dict()
    spring, tang = content["spring"], content["tang"]
    assert spring["rear_pin"] == pytest.approx(35.9 - 1.9, abs=step_mm)
    assert tang["pivot"] == pytest.approx(34.6 - 2.6, abs=step_mm)
    assert tang["open"] == pytest.approx(6.1 - 1.6, abs=step_mm)
    assert tang["half_stop"] == pytest.approx(6.22 - 1.6, abs=step_mm)
    assert tang["front"] == pytest.approx(6.6 - 1.6, abs=step_mm)
    assert spring["thickness"][1] == pytest.approx([0.0, 3.8], abs=step_mm)


def test_preload_is_what_the_rear_hole_misses_by_the_lever() -> None:
    made = bs.measured_design(TOLD)
    assert made.design.core.fit.preload_mm == pytest.approx(0.9 * 32.0 / 34.0, abs=1e-3)
    # To first order: the miss's own spread, and that of both distances over pins.
    caliper = 0.02
    pivot = math.hypot(0.04, 0.5 * math.hypot(caliper, 0.01))
    rear = math.hypot(0.05, 0.5 * math.hypot(caliper, caliper))
    share = math.hypot(0.05 / 0.9, pivot / 32.0, rear / 34.0)
    spread = made.design.priors["preload"][1]
    assert spread == pytest.approx(0.9 * 32.0 / 34.0 * share, abs=0.0005)
    assert "preload = this x pivot /" in made.text


def test_spreads_are_stated_as_priors() -> None:
    priors = bs.measured_design(TOLD, hardness="45 +- 1.5 HRC").design.priors
    assert priors["thickness"] == (0.0, 0.03)
    assert priors["hardness"] == (0.0, 1.5)
    assert priors["closed_face"][1] == pytest.approx(math.hypot(0.02, 0.005), abs=0.0005)


def test_the_command_gives_the_same_file(tmp_path: Path) -> None:
    made = tmp_path / "linnet.toml"
    assert main([*WORDS, "-o", str(made)]) in (0, 1)
    assert made.read_text("utf-8") == bs.measured_design(TOLD, hardness="45 +- 1 HRC").text
    assert max(map(len, made.read_text("utf-8").splitlines())) <= 80


def test_a_bare_number_is_in_the_files_units() -> None:
    bare = {
        key: float(each.split()[0]) / 25.4
        for key, each in TOLD.items()
        if isinstance(each, str) and "+-" not in each
    }
    in_inches = bs.measured_design({**TOLD, **bare}, units="in").design
    assert in_inches.to_dict()["spring"]["rear_pin"] == pytest.approx(34.0, abs=2e-4)


def test_all_faults_are_told_at_once() -> None:
    told = {**TOLD, "rear_misses": "-0.1 mm", "middle_to_rear": "1 mm", "open": "x", "heigth": 3}
    del told["closed"]
    told["width"] = "2.3 +- -0.1 mm"
    with pytest.raises(bs.InvalidInput) as refused:
        bs.measured_design(told, steel="O2")
    keys = {each.key for each in refused.value.faults}
    assert {"rear_misses", "open", "heigth", "closed", "width", "steel"} <= keys
    assert "would not press" in str(refused.value)


def test_a_distance_shorter_than_its_pins_is_refused() -> None:
    with pytest.raises(bs.InvalidInput, match="no longer than the pins"):
        bs.measured_design({**TOLD, "middle_to_rear": "1 mm"})


def test_options_of_the_other_way_are_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "--width", "3"]) == 2
    assert main(["new", "--measured", "--pull", "18"]) == 2
    assert main(["new", "--half-stop", "maybe"]) == 2
    told = capsys.readouterr().err
    assert "--width goes with --measured" in told and "yes or no" in told
