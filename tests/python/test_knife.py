"""The fitting log learns from what it was given, and answers alike."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
TARGET_MM = 0.0254


BAD: list[tuple[Callable[[bs.Knife], object], str]] = [
    (lambda log: log.measure(closed=0.1, state="loaded"), "half_stop: missing: this tang has a"),
    (lambda log: log.measure(half_stop=0, closed=9, state="loaded"), "closed: must be from -3 mm"),
    (lambda log: log.measure(half_stop=0, closed=float("nan"), state="loaded"), "closed: must be"),
    (lambda log: log.measure(half_stop=0, closed=0, state="wet"), 'state: must be "loaded" or'),
    (
        lambda log: log.measure(half_stop=0, closed=0, state="loaded", repeatability=-1),
        "repeatability: must be from 0 mm to 0.2 mm, got -1 mm",
    ),
    (
        lambda log: log.ground("kick", 0.1),
        "ground: this knife's faces are open, half_stop, closed, back, belly;",
    ),
    (lambda log: log.ground("closed", "-0.1 mm"), "ground: must be from 0 mm to 3 mm, got -0.1 mm"),
    (lambda log: log.plan(), "log: no readings yet: measure first"),
]


@pytest.mark.parametrize(("spoil", "message"), BAD)
def test_bad_input_is_told_and_not_kept(spoil: Callable[[bs.Knife], object], message: str) -> None:
    log = bs.Knife(HERON)
    with pytest.raises(bs.InvalidInput) as refused:
        spoil(log)
    assert str(refused.value).startswith(message)
    assert log.entries == ()


class TrueKnife:
    """A knife with a tilt, play and root that the drawing does not show."""

    def __init__(self, rng: np.random.Generator, spread_mm: float) -> None:
        self.rng, self.spread_mm = rng, spread_mm
        self.unknowns = _core.FitUnknowns(
            pad_tilt_rad=rng.normal(0.0, 0.001),
            pivot_play_mm=abs(rng.normal(0.0, 0.01)),
            extra_root_rad_per_nmm=rng.normal(0.0, 1e-6),
        )
        self.knife = _core.take_off(
            HERON.core, _core.FaceDepths(half_stop_mm=-0.25, closed_mm=-0.3)
        )

    def loaded(self) -> _core.Readings:
        return _core.fit_readings(self.knife, self.unknowns).loaded

    def measure(self, log: bs.Knife, state: str, repeats: int) -> None:
        both = _core.fit_readings(self.knife, self.unknowns)
        shown = both.loaded if state == "loaded" else both.unloaded
        assert shown.half_stop_mm is not None
        assert shown.closed_mm is not None
        with log.together():
            for _ in range(repeats):
                noise = self.rng.normal(0.0, self.spread_mm, 2)
                log.measure(
                    half_stop=shown.half_stop_mm + noise[0],
                    closed=shown.closed_mm + noise[1],
                    state=state,  # type: ignore[arg-type]
                    repeatability=self.spread_mm,
                )

    def grind(self, log: bs.Knife, step: _core.FitStep) -> None:
        off = _core.FaceDepths(**{f"{step.face.name}_mm": step.remove_mm})
        self.knife = _core.take_off(self.knife, off)
        log.ground(step.face.name, step.remove_mm)


def measure_until_taken(knife: TrueKnife, log: bs.Knife) -> None:
    """Three readings in a thousand lie three deviations off; what is refused is read again."""
    knife.measure(log, "unloaded", 1)
    for _ in range(3):
        try:
            return knife.measure(log, "loaded", 1)
        except bs.InvalidInput as error:
            assert "cannot all be one knife" in str(error)
    pytest.fail("three readings refused")


def test_a_log_ends_unknown_knives_at_the_target() -> None:
    """Six knives, each with its own tilt, play and root: measured loaded once a pass."""
    rng = np.random.default_rng(8)
    for _ in range(6):
        knife, log = TrueKnife(rng, 0.005), bs.Knife(HERON)
        for _ in range(6):
            measure_until_taken(knife, log)
            steps = [step for step in log.plan().steps if step.pass_number == 1]
            if not steps:
                break
            for step in steps:
                knife.grind(log, step)
            loaded = knife.loaded()
            for reading in (loaded.half_stop_mm, loaded.closed_mm):
                assert reading is not None
                assert reading >= TARGET_MM - 2 * 0.005
        for reading in (loaded.half_stop_mm, loaded.closed_mm):
            assert abs(reading - TARGET_MM) <= 4 * 0.005


def test_what_is_learned_lies_within_its_own_uncertainty() -> None:
    """Of three hundred errors in units of their own deviation, nine in ten lie within two."""
    rng, errors = np.random.default_rng(9), []
    for _ in range(40):
        knife, log = TrueKnife(rng, 0.002), bs.Knife(HERON)
        knife.measure(log, "unloaded", 4)
        knife.measure(log, "loaded", 4)
        found, loaded = log.estimate(), knife.loaded()
        for name in ("half_stop", "closed"):
            error = found.figures[f"{name}_loaded_mm"].value - getattr(loaded, f"{name}_mm")
            errors.append(error / found.figures[f"{name}_loaded_mm"].sd)
        true = knife.unknowns
        for name in ("pad_tilt_rad", "pivot_play_mm"):
            learned = found.unknowns[name]
            errors.append((learned.value - getattr(true, name)) / learned.sd)
    assert np.mean(np.abs(errors) < 2.0) >= 0.9


def test_only_what_the_readings_can_tell_is_said() -> None:
    knife, log = TrueKnife(np.random.default_rng(10), 0.002), bs.Knife(HERON)
    knife.measure(log, "loaded", 3)
    found = log.estimate().unknowns
    assert [name for name, each in found.items() if each.known] == [
        "half_stop_face_mm",
        "closed_face_mm",
    ]
    knife.measure(log, "unloaded", 3)
    assert log.estimate().unknowns["pad_tilt_rad"].sd < found["pad_tilt_rad"].sd


def test_the_same_measurements_give_the_same_answer(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    knife, log = TrueKnife(np.random.default_rng(11), 0.005), bs.Knife(HERON, path)
    knife.measure(log, "unloaded", 2)
    knife.measure(log, "loaded", 2)
    first = log.plan().to_dict()
    assert bs.Knife(HERON, path).plan().to_dict() == first
    assert log.to_dict() == bs.Knife(HERON, path).to_dict()


def test_contradictory_readings_are_told_and_nothing_finer_is_planned() -> None:
    log = bs.Knife(HERON)
    with log.together():
        for closed in (0.30, 0.36, 0.33):
            log.measure(half_stop=0.2, closed=closed, state="loaded", repeatability=0.002)
    # Six readings, two means: sqrt((0.03^2 + 0.03^2) / 4).
    assert log.scatter_mm == pytest.approx(0.03 / np.sqrt(2))
    plan = log.plan()
    assert plan.notices[0].code == "scatter"
    assert "scatter by 0.021 mm, stated was 0.002 mm" in plan.notices[0].message
    assert all(step.remove_mm >= 0.021 for step in plan.steps if step.pass_number > 1)
    assert plan.result.aim_mm == pytest.approx(
        TARGET_MM + 0.75 * max(log.scatter_mm, log.estimate().widest_mm)
    )


def test_a_log_that_no_knife_could_give_has_no_solution() -> None:
    log = bs.Knife(HERON)
    log.measure(half_stop=0.1, closed=0.1, state="loaded")
    stood = log.entries
    with pytest.raises(bs.NoConvergence, match="the log cannot be this design's"), log.together():
        log.ground("half_stop", 2.9)
        log.ground("half_stop", 2.9)
        log.measure(half_stop=0.1, closed=0.1, state="loaded")
    assert log.entries == stood
