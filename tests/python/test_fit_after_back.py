"""`backspring fit --after-back`: readings and allowance when the back is ground."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

HERON = str(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")


def test_a_ground_back_keeps_the_unloaded_readings_and_moves_the_loaded(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["fit", HERON, "--after-back", "0.3 mm", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)["data"]
    before, after = data["readings_before"], data["readings_after"]
    fresh = bs.check(bs.grind(bs.load(HERON), back="0.3 mm"))
    for name in ("half_stop", "closed"):
        assert after[f"{name}_unloaded_mm"] == pytest.approx(before[f"{name}_unloaded_mm"])
        loaded = fresh.positions[name].reading_loaded_mm
        assert after[f"{name}_loaded_mm"] == pytest.approx(loaded, abs=1e-9)
    assert data["back_removed_mm"] == 0.3
    assert main(["fit", HERON, "--after-back", "12 thou", "--units", "in"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("Heron: after 12.0 thou off the back leave half-stop ")
    assert "closed, to leave unloaded" in said
    assert main(["fit", HERON, "--after-back", "3 mm"]) == 2
    assert "pin hole" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--closed", "0.1", "--state", "loaded"], "--after-back goes without readings"),
        (["--output", "a.png"], "--after-back goes without readings"),
        (["--support", "clamped"], "--support goes with the allowance alone"),
    ],
)
def test_what_does_not_go_together_is_told(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["fit", HERON, "--after-back", "0.1 mm", *words]) == 2
    assert message in capsys.readouterr().err


def test_an_even_strip_held_fast_loses_the_same_under_load_at_any_thickness() -> None:
    """A strip bent by a given distance has one shape whatever its thickness: beam theory."""
    strip = bs.load(HERON).replace(
        **{"spring.thickness": "3 mm", "spring.pin_hole": 0, "spring.support": "clamped"}
    )
    ground = bs.readings_after_back_grind(strip, "0.6 mm")
    # Shear, which goes with the thickness squared, is what is left.
    for name in ("half_stop_mm", "closed_mm"):
        left = [getattr(each, name) for each in (ground.allowance_before, ground.allowance_after)]
        assert left[0] == pytest.approx(left[1], abs=0.0015)
    assert "back ground" in repr(ground)
