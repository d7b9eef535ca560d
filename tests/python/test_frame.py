"""Liners that give: keys, numbers against a rigid fixture, JSON, report, many designs."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
LINERS = {"frame.liner_thickness": 1.0, "frame.liner_height": 12.0}
BRASS = HERON.replace(**LINERS)
REDSTART = "turnstone.toml"


def pull_n(design: bs.Design) -> float:
    return max(stroke.peak_pull_n for stroke in bs.check(design).strokes)


@pytest.mark.parametrize(
    ("metal", "thickness_mm", "height_mm", "seat_mm_per_n"),
    [
        # A nonlinear model's table of seats, two digits at most; the core has shear and holes too.
        ("brass", 1.0, 12.0, 2.0e-4),
        ("brass", 1.0, 10.0, 3.4e-4),
        ("stainless", 1.2, 14.0, 0.6e-4),
    ],
)
def test_usual_liners_give_as_much_as_the_table_says(
    metal: str, thickness_mm: float, height_mm: float, seat_mm_per_n: float
) -> None:
    design = HERON.replace(
        **{
            "frame.liner_metal": metal,
            "frame.liner_thickness": thickness_mm,
            "frame.liner_height": height_mm,
        }
    )
    told = bs.check(design).to_dict()["frame"]["seat_mm_per_n"]
    assert told == pytest.approx(seat_mm_per_n, rel=0.25)


def test_knife_and_fixture_are_told_side_by_side() -> None:
    check = bs.check(BRASS)
    told, fixture = check.to_dict()["frame"], bs.check(HERON)
    assert check.on_fixture is not None and check.on_fixture.on_fixture is None
    assert told["fixture"]["peak_pull_n"] == pull_n(HERON)
    for name in ("half_stop", "closed"):
        here, there = (each.positions[name].reading_loaded_mm for each in (check, fixture))
        assert told["shift_mm"][name] == here - there > 0.0
        assert (
            check.positions[name].reading_unloaded_mm == fixture.positions[name].reading_unloaded_mm
        )
    assert check.travel.peak_stress_mpa < fixture.travel.peak_stress_mpa


def test_a_measured_seat_is_in_any_unit() -> None:
    seat = HERON.replace(**{"frame.seat": "2e-4 mm/N"})
    assert seat == HERON.replace(**{"frame.seat": "0.2 um/N"})
    thou = HERON.replace(**{"frame.seat": "0.035025 thou/lbf"})
    assert pull_n(thou) == pytest.approx(pull_n(seat), rel=1e-5)
    assert bs.check(seat).to_dict()["frame"]["seat_mm_per_n"] == 2e-4
    # A nonlinear model: 1e-4 costs 2.4 % and 3e-4 6.8 % of the pull.
    assert 1.0 - pull_n(seat) / pull_n(HERON) == pytest.approx(0.047, abs=0.005)


def test_without_a_frame_nothing_is_said_of_it() -> None:
    assert "frame" not in bs.check(HERON).to_dict()
    assert "Frame" not in bs.check(HERON).report()
    assert bs.check(HERON).on_fixture is None


def test_peened_pins_and_liners_go_together() -> None:
    loose = BRASS.replace(**{"spring.pin_clearance": 0.02})
    told = bs.check(loose).to_dict()
    assert told["clearance"]["peened"]["peak_pull_n"] == pull_n(BRASS)
    tight_fixture = told["frame"]["fixture"]["peak_pull_n"]
    assert tight_fixture == pull_n(HERON.replace(**{"spring.pin_clearance": 0.02}))
    report = bs.check(loose).report()
    assert "pins loose" in report and "on a rigid fixture" in report


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_command_tells_fixture_and_knife(
    units: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (DESIGNS / "heron.toml").read_text("utf-8")
    design = tmp_path / "heron.toml"
    design.write_text(text + '\n[frame]\nliner_thickness = "1 mm"\nliner_height = 12\n', "utf-8")
    main(["check", str(design), "--units", units])
    shown = capsys.readouterr().out
    assert "on a rigid fixture" in shown and "prouder in the liners" in shown
    assert ("um/N" in shown) == (units == "mm")
    main(["check", str(design), "--json"])
    data = json.loads(capsys.readouterr().out)["data"]
    assert data["frame"]["pivot_mm_per_n"] > 0.0


def test_a_frame_goes_with_two_pins() -> None:
    clamped = BRASS.replace(**{"spring.support": "clamped", "spring.rear_pin": None})
    assert ("not-used", "frame") in {
        (each.code, each.values.get("key")) for each in clamped.notices
    }
    rigid = HERON.replace(**{"spring.support": "clamped", "spring.rear_pin": None})
    assert pull_n(clamped) == pull_n(rigid)


def test_many_designs_differ_in_their_liners() -> None:
    heights = np.array([10.0, 12.0, 16.0])
    rows = bs.check_many(BRASS, {"frame.liner_height": heights})
    for height, pull in zip(heights, rows["peak_pull_n"], strict=True):
        assert pull == pytest.approx(pull_n(BRASS.replace(**{"frame.liner_height": height})))
    assert all(np.diff(rows["peak_pull_n"]) > 0.0)


def test_every_blade_stands_in_the_frame() -> None:
    design = bs.load(DESIGNS / "turnstone.toml").replace(**LINERS | {"frame.liner_height": 14.0})
    rigid = bs.check(bs.load(DESIGNS / "turnstone.toml"))
    if all(each.on_fixture is None for each in bs.check(design).blades.values()):
        assert design.core.spring.support.kind is not _core.SupportKind.two_pins
        return
    for name, check in bs.check(design).blades.items():
        assert check.travel.peak_force_n < rigid.blades[name].travel.peak_force_n


def test_going_to_another_frame_has_one_cause() -> None:
    causes = bs.compare(HERON, BRASS).to_dict()["causes"]
    assert {cause["key"] for cause in causes} == {"frame"}
