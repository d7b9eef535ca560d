"""Grinding from Python: changed designs, tables, the depth for a pull, flush with the liners."""

from __future__ import annotations

import math
import pickle
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
ALL = sorted(path.stem for path in DESIGNS.glob("*.toml") if len(bs.load(path).blades) == 1)
FACES = ("back", "belly", "pad")
LBF_N = 4.4482216152605  # NIST SP 811, appendix B


def peak_pull_n(check: bs.Check) -> float:
    return max(stroke.peak_pull_n for stroke in check.strokes)


def strip(**spring: Any) -> bs.Design:
    """A uniform strip held fast at the middle pin."""
    changes = {"spring.support": "clamped", "spring.pin_hole": 0, "spring.thickness": 0.5}
    changes |= {f"spring.{key}": value for key, value in spring.items()}
    return HERON.replace(**changes)


@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("name", ALL)
def test_a_fresh_check_of_the_ground_design_gives_the_rows(name: str, face: Any) -> None:
    design = bs.load(DESIGNS / f"{name}.toml")
    table = bs.grind_table(design, face, to="0.2 mm", step="0.1 mm")
    assert [row.removed_mm for row in table] == [0.0, 0.1, 0.2]
    for row in table:
        check = bs.check(bs.grind(design, **{face: row.removed_mm}))
        assert row.peak_pull_n == peak_pull_n(check)
        assert row.travel_peak_stress_mpa == check.travel.peak_stress_mpa
        assert row.yield_margin == check.travel.yield_margin
        assert row.preload_mm == check.design.core.fit.preload_mm
        assert row.reading_loaded_closed_mm == check.positions["closed"].reading_loaded_mm
        half_stop = check.positions.get("half_stop")
        assert row.reading_loaded_half_stop_mm == (half_stop and half_stop.reading_loaded_mm)
    assert table.ground == bs.grind(design, **{face: 0.2})
    assert peak_pull_n(bs.check(table.ground)) == table[-1].peak_pull_n


def test_pull_falls_with_the_cube_of_thickness_and_stress_with_thickness() -> None:
    """Cantilever: force goes with t^3, stress at one deflection with t; from memory."""
    first, last = bs.grind_table(strip(), "back", to=0.1, step=0.1)
    # Shear's share, 0.774 (t/L)^2, is 0.0002 at 0.5 mm.
    assert last.peak_pull_n / first.peak_pull_n == pytest.approx(0.8**3, rel=2e-4)
    stress = last.travel_peak_stress_mpa / first.travel_peak_stress_mpa
    assert stress == pytest.approx(0.8, rel=2e-4)


def test_a_ground_strip_is_a_strip_of_its_new_thickness() -> None:
    ground = bs.check(bs.grind(strip(), back=0.1))
    made = bs.check(strip(thickness=0.4))
    assert peak_pull_n(ground) == pytest.approx(peak_pull_n(made), rel=1e-12)
    assert ground.travel.peak_stress_mpa == pytest.approx(made.travel.peak_stress_mpa, rel=1e-12)


def test_the_design_given_stays_and_the_changed_one_says_what_changed() -> None:
    before = HERON.to_dict()
    ground = bs.grind(HERON, back="0.2 mm", region=(5, "30 mm"))
    assert HERON.to_dict() == before
    changed = ground.to_dict()
    changed["spring"]["thickness"] = before["spring"]["thickness"]
    assert changed == before
    stations = [x for x, _ in ground.to_dict()["spring"]["thickness"]]
    assert stations.count(5.0) == stations.count(30.0) == 2


def test_a_pin_hole_keeps_its_place_when_the_back_goes_down() -> None:
    def offsets(design: bs.Design) -> dict[float, float]:
        return {hole.center_mm: hole.offset_mm for hole in design.core.spring.holes}

    # The mid-line drops by half of what is off: the back is ground over both pins.
    assert offsets(bs.grind(HERON, back=0.2)) == {0.0: 0.1, -34.0: 0.1}
    assert offsets(bs.grind(HERON, back=0.2, region=(0, 36.5))) == {0.0: 0.1, -34.0: 0.0}
    both = bs.grind(HERON, belly=0.2, region=(-38, 20))
    assert offsets(both) == {0.0: -0.1, -34.0: -0.1}


def test_the_pad_takes_the_preload_with_it() -> None:
    wren = bs.load(DESIGNS / "wren.toml")
    was_mm = 0.7 * 26.5 / 24.0
    ground = bs.grind(wren, pad="4 thou").to_dict()
    assert ground["fit"]["preload"] == pytest.approx(was_mm - 0.1016, abs=1e-12)
    assert "rear_pin_offset" not in ground["fit"]
    kept = bs.grind(wren, back=0.1).to_dict()["fit"]
    assert kept == wren.to_dict()["fit"]


@pytest.mark.parametrize("face", FACES)
def test_the_depth_for_a_pull_gives_it(face: Any) -> None:
    wanted_n = 2.2 * LBF_N
    depth_mm = bs.grind_depth(HERON, "2.2 lbf", face)
    assert peak_pull_n(bs.check(bs.grind(HERON, **{face: depth_mm}))) == pytest.approx(
        wanted_n, rel=1e-6
    )


def test_a_pull_that_grinding_cannot_give_is_refused_with_what_can() -> None:
    with pytest.raises(bs.NoConvergence) as refused:
        bs.grind_depth(HERON, 13.0)
    text = str(refused.value)
    assert "every pass lowers that" in text and "rear hole moved by" in text
    preload_mm = float(text.split("a preload of ")[1].split(" mm")[0])
    # The preload is told to 0.0001 mm.
    more = bs.check(HERON.replace(**{"fit.preload": preload_mm}))
    assert peak_pull_n(more) == pytest.approx(13.0, rel=1e-4)
    moved_mm = float(text.split("rear hole moved by ")[1].split(" mm")[0])
    assert moved_mm == pytest.approx((preload_mm - 0.9) * 34 / 32, abs=1e-4)


def test_passes_are_counted() -> None:
    assert bs.grind_passes("0.3 mm") == 6
    assert bs.grind_passes("12 thou", "5 thou") == 3


def test_flush_takes_off_what_loading_lifts() -> None:
    flush = bs.grind_flush(HERON, per_pass="0.02 mm")
    station, proud = flush.before
    # Loaded, the spring rides on the rear edge of the open face: proud ahead of it, low behind.
    contact_mm = 32.0 + bs.check(HERON).positions["open"].contacts_mm[0]
    assert np.all(proud[station < contact_mm - 1e-6] <= 1e-9)
    assert np.all(proud[station > contact_mm + 0.1] > 0.0)
    assert flush.passes == math.ceil(proud.max() / 0.02) == len(flush) - 1
    assert flush.removed_mm == pytest.approx(proud.max(), abs=0.001)
    assert flush.proud_mm[-1] <= 0.001
    assert np.all(np.diff(flush["removed_mm"]) <= 0.02 + 1e-12)
    assert peak_pull_n(bs.check(flush.ground)) == flush[-1].peak_pull_n
    assert bs.grind_flush(flush.ground, per_pass=1).design == flush.ground


def test_a_straight_liner_line_is_reached() -> None:
    liners = ((-34, "9 mm"), (36.5, 6.9))
    flush = bs.grind_flush(HERON, liners)
    along = bs.spring_along(flush.ground, 180.0, 0.05)
    back = along.face_mm + along.deflection_mm + along.thickness_mm
    line = np.interp(along.station_mm, [-34, 36.5], [9.0, 6.9])
    ahead = along.station_mm >= 0.0
    # 0.00005 mm: the bent back between the stations of the solution.
    assert np.max((back - line)[ahead]) <= 0.001 + 5e-5
    again = bs.grind_flush(flush.ground, liners)
    assert again.passes == 0 and again.ground == flush.ground
    assert "nothing stands proud" in again.report()


def test_columns_by_name() -> None:
    table = bs.grind_table(bs.load(DESIGNS / "wren.toml"), "belly", to=0.2, step=0.1)
    assert table["removed_mm"].tolist() == [0.0, 0.1, 0.2]
    assert np.all(np.isnan(table["reading_loaded_half_stop_mm"]))
    with pytest.raises(KeyError):
        table["pull"]


def test_results_pickle() -> None:
    table = bs.grind_table(HERON, "back", to=0.1, step=0.05)
    assert pickle.loads(pickle.dumps(table)).to_dict() == table.to_dict()
    flush = bs.grind_flush(HERON)
    assert pickle.loads(pickle.dumps(flush)).to_dict() == flush.to_dict()
