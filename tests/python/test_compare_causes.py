"""Which dimension causes how much: parts against closed forms, sums and the gradient."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs
from backspring.question.compare_figures import MAIN

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
PAIRS = 50
# Where a peak lies, which is not shared out.
PLACES = ("peak_torque_angle_deg", "peak_stress_angle_deg", "_station_mm")
# How far drawn designs move each of these from the Heron: mm, MPa, or a ratio.
MOVED = {
    "fit.preload": 0.15,
    "spring.width": 0.25,
    "spring.thickness_offset": 0.1,
    "tang.closed": 0.03,
    "tang.corner_radius": 0.1,
    "blade.nail_nick": 2.0,
    "friction.spring": 0.03,
}


def one(a: bs.Design, b: bs.Design) -> bs.Comparison:
    found = bs.compare(a, b)
    assert isinstance(found, bs.Comparison)
    return found


def changed(**changes: Any) -> bs.Design:
    return HERON.replace(**{key.replace("__", "."): value for key, value in changes.items()})


def drawn(random: np.random.Generator) -> bs.Design:
    keys = random.choice([*MOVED], size=2, replace=False)
    now = {key: HERON.to_dict() for key in keys}
    changes = {}
    for key in keys:
        table, name = key.split(".")
        middle = now[key][table].get(name, 0.0)
        changes[str(key)] = middle + float(random.uniform(-1.0, 1.0)) * MOVED[key]
    return HERON.replace(**changes)


def assert_parts_add_up(found: bs.Comparison) -> None:
    """Every figure's parts give its change, to the rounding of a sum."""
    changes = {each.name: each.change for each in found.figures if each.change}
    for name, change in changes.items():
        parts = found.caused(name)
        if not name.startswith("feel.") and not name.endswith(PLACES):
            assert parts, name
            size = sum(map(abs, parts.values()))
            assert math.fsum(parts.values()) == pytest.approx(change, rel=1e-9, abs=1e-13 * size)


def test_parts_add_up_to_the_change_for_drawn_pairs() -> None:
    random = np.random.default_rng(12)
    for _ in range(PAIRS):
        found = one(drawn(random), drawn(random))
        assert found.causes
        assert_parts_add_up(found)
        for name in MAIN:
            parts = found.caused(name)
            # What no dimension has alone is small beside what they have.
            together = abs(parts.pop("together", 0.0))
            assert together <= 2e-3 * sum(map(abs, parts.values())) + 1e-9 * abs(
                found[name].a or 0.0
            )


def test_pull_is_bilinear_in_width_and_modulus() -> None:
    a = changed(spring__width=2.0, spring__youngs_modulus=200_000.0)
    b = changed(spring__width=2.6, spring__youngs_modulus=212_000.0)
    parts = one(a, b).caused("peak_pull_n")
    per = bs.check(a).to_dict()["strokes"][0]["peak_pull_n"] / (2.0 * 200_000.0)
    assert parts["spring.width"] == pytest.approx(per * 0.6 * 206_000.0, rel=1e-6)
    assert parts["spring.youngs_modulus"] == pytest.approx(per * 12_000.0 * 2.3, rel=1e-6)


def test_stress_answers_to_the_modulus_alone() -> None:
    a = changed(spring__youngs_modulus=200_000.0)
    b = changed(spring__youngs_modulus=210_000.0, spring__width=2.5)
    found = one(a, b)
    parts = found.caused("travel_peak_stress_mpa")
    stress = found["travel_peak_stress_mpa"]
    assert stress.a is not None
    assert stress.change == pytest.approx(0.05 * stress.a)
    assert parts["spring.youngs_modulus"] == stress.change
    assert parts["spring.width"] == 0.0


def test_nick_and_width_share_as_their_integral_says() -> None:
    """Pull = c width / nick: along the straight way each part is a logarithm."""
    a, b = (
        changed(spring__width=2.0, blade__nail_nick=30.0),
        changed(spring__width=2.6, blade__nail_nick=36.0),
    )
    found = one(a, b)
    pull = found["peak_pull_n"]
    assert pull.a is not None
    scale = pull.a * 30.0 / 2.0
    width = scale * 0.6 / 6.0 * math.log(36.0 / 30.0)
    # The rest: -c (w0 + dw s) dn / (n0 + dn s)^2, integrated from 0 to 1.
    nick = -scale * ((2.0 - 0.1 * 30.0) * (1 / 30.0 - 1 / 36.0) + 0.1 * math.log(36.0 / 30.0))
    parts = found.caused("peak_pull_n")
    assert parts["spring.width"] == pytest.approx(width, rel=1e-6)
    assert parts["blade.nail_nick"] == pytest.approx(nick, rel=1e-6)


def test_a_small_step_has_the_parts_of_the_gradient() -> None:
    steps = {"fit.preload": 1e-3, "tang.closed": 5e-4, "spring.width": 2e-3, "tang.pivot": 1e-3}
    now = HERON.to_dict()
    stepped = {}
    for key, step in steps.items():
        table, name = key.split(".")
        stepped[key] = now[table][name] + step
    found = one(HERON, HERON.replace(**stepped))
    slopes = bs.gradient(HERON)
    for name in MAIN:
        parts = found.caused(name)
        for key, step in steps.items():
            # The rest of a step is of second order in it.
            expected = slopes[name][key] * step
            assert parts[key] == pytest.approx(expected, rel=5e-3, abs=1e-6 * (found[name].a or 1))
