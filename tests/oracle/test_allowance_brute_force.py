"""The allowance against brute force: faces moved by bisection on the slow reference.

The slow reference presses anywhere on the pad and finds rests by energy; it shares no code with
the core. Its readings are good to 0.0003 mm; the core's point force differs by under 0.0005 mm.
"""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

import pytest
from scipy.optimize import brentq

import backspring as bs
from oracle.slow_spring import loaded_reading_mm, solve_rests

TARGET_MM = 0.0254
WITHIN_MM = 0.001
DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"


def plain(design: bs.Design) -> dict[str, Any]:
    """The design in the slow reference's shape: no steel, its own elastic constants."""
    tables = design.to_dict()
    elastic = design.core.spring.elastic
    spring = tables["spring"] | {
        "youngs_modulus": elastic.youngs_modulus_mpa,
        "poisson": elastic.poisson,
    }
    spring.setdefault("support", "two-pins")
    tables["fit"].setdefault("dial", tables["tang"]["pivot"])
    return {"spring": spring, "tang": tables["tang"], "fit": tables["fit"]}


def with_face(slow: dict[str, Any], key: str, value: float) -> dict[str, Any]:
    changed = copy.deepcopy(slow)
    table = changed["tang"]["kick"] if key == "height" else changed["tang"]
    table[key] = value
    return changed


def moved(slow: dict[str, Any], key: str, position: str) -> dict[str, Any]:
    """The face of one position where the loaded reading is the target."""
    table = slow["tang"]["kick"] if key == "height" else slow["tang"]

    def missing(value: float) -> float:
        return loaded_reading_mm(with_face(slow, key, value), position) - TARGET_MM

    start = float(table[key])
    return with_face(slow, key, brentq(missing, start - 0.15, start + 0.15, xtol=1e-5))


@pytest.mark.parametrize("name", ["heron", "kestrel", "osprey", "wren"])
def test_allowance_is_that_of_brute_force(name: str) -> None:
    design = bs.load(DESIGNS / f"{name}.toml")
    slow = plain(design)
    if "half_stop" in slow["tang"]:
        slow = moved(slow, "half_stop", "half_stop")
    slow = moved(slow, "height" if "kick" in slow["tang"] else "closed", "closed")
    found = solve_rests(slow)
    left = bs.allowance(design)
    assert left.closed_mm == pytest.approx(found["closed"]["reading_unloaded_mm"], abs=WITHIN_MM)
    if left.half_stop_mm is None:
        assert "half_stop" not in found
    else:
        brute = found["half_stop"]["reading_unloaded_mm"]
        assert left.half_stop_mm == pytest.approx(brute, abs=WITHIN_MM)


def test_a_thinner_back_changes_loaded_readings_as_brute_force_says() -> None:
    """0.3 mm off the whole back, the holes left where they are."""
    design = bs.load(DESIGNS / "heron.toml")
    thinner = plain(design)
    thinner["spring"]["thickness"] = [
        [-38, 2.9], [-4, 3.5], [0, 3.5], [7, 2.8], [25, 2.1], [36.5, 2.2]
    ]  # fmt: skip
    thinner["spring"]["pin_hole_offset"] = [0.15, 0.15]
    ground = bs.readings_after_back_grind(design, "0.3 mm")
    slow = solve_rests(thinner)
    for name in ("half_stop", "closed"):
        after = getattr(ground.after.loaded, f"{name}_mm")
        assert after == pytest.approx(slow[name]["reading_loaded_mm"], abs=WITHIN_MM)
    assert ground.after.loaded.closed_mm < ground.before.loaded.closed_mm
