"""Clearances of the pins: keys, what load takes, and the knife with its pins peened."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
LOOSE = HERON.replace(**{"spring.pin_clearance": [0.02, 0.03], "tang.pivot_clearance": 0.01})


def pull_n(design: bs.Design) -> float:
    return max(stroke.peak_pull_n for stroke in bs.check(design).strokes)


def test_load_takes_the_stated_clearance_off_the_preload() -> None:
    told = bs.check(LOOSE).to_dict()["clearance"]
    lost = 0.01 + (0.01 + 0.015) * 32.0 / 34.0 + 0.005
    assert told["preload_lost_mm"] == pytest.approx(lost, rel=1e-12)
    assert pull_n(LOOSE) < pull_n(HERON)


def test_one_number_stands_for_both_pins() -> None:
    one = HERON.replace(**{"spring.pin_clearance": "0.02 mm"})
    assert one == HERON.replace(**{"spring.pin_clearance": [0.02, 0.02]})
    # A nonlinear model of this joint lost 1.5 %.
    assert 1.0 - pull_n(one) / pull_n(HERON) == pytest.approx(0.015, abs=0.002)


def test_peened_pins_give_back_what_theirs_took() -> None:
    peened = bs.check(LOOSE).peened
    assert peened is not None and peened.peened is None
    only_pivot = HERON.replace(**{"tang.pivot_clearance": 0.01})
    assert peened.to_dict()["positions"] == bs.check(only_pivot).to_dict()["positions"]
    told = bs.check(LOOSE).to_dict()["clearance"]["peened"]
    assert told["peak_pull_n"] == pull_n(only_pivot)


def test_without_clearances_nothing_is_said_of_them() -> None:
    assert "clearance" not in bs.check(HERON).to_dict()
    assert "Clearances" not in bs.check(HERON).report()
    none = HERON.replace(**{"spring.pin_clearance": 0, "tang.pivot_clearance": 0})
    assert bs.check(none).to_dict()["travel"] == bs.check(HERON).to_dict()["travel"]


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_command_tells_fixture_and_finished_knife(
    units: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (DESIGNS / "heron.toml").read_text("utf-8")
    design = tmp_path / "heron.toml"
    design.write_text(text.replace("rear_pin = 34", "pin_clearance = 0.02\nrear_pin = 34"), "utf-8")
    main(["check", str(design), "--units", units])
    shown = capsys.readouterr().out
    assert "Clearances: load takes " in shown and "pins peened tight" in shown
    main(["check", str(design), "--json"])
    assert json.loads(capsys.readouterr().out)["data"]["clearance"]["peened"]["yield_margin"] > 1


def test_clearances_go_with_two_pins() -> None:
    clamped = HERON.replace(
        **{"spring.support": "clamped", "spring.rear_pin": None, "spring.pin_clearance": 0.02}
    )
    assert ("not-used", "spring.pin_clearance") in {
        (each.code, each.values.get("key")) for each in clamped.notices
    }
    turnstone = bs.load(DESIGNS / "turnstone.toml").replace(**{"spring.pin_clearance": 0.02})
    assert ("not-used", "spring.pin_clearance") in {
        (each.code, each.values.get("key")) for each in turnstone.notices
    }
