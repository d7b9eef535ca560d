"""The snap of a blade beside another, against a sweep in small steps."""

from __future__ import annotations

from pathlib import Path

import numpy as np

import backspring as bs
from backspring import _core

DESIGN = Path(__file__).resolve().parents[2] / "data" / "designs" / "sanderling.toml"
# Of the sweep's own steps: 1e-4 of it, and a quarter of that in steps a quarter as long.
CLOSE = 2e-4
STEPS = 3000


def swept_snap_mj(design: _core.Design, from_deg: float, to_deg: float) -> float:
    """From the highest place past which friction holds no longer, to the rest."""
    rows = _core.sweep(design, (to_deg - from_deg) / STEPS, from_deg, to_deg)
    opening, closing = rows.opening_torque_nmm, rows.closing_torque_nmm
    energy = rows.energy_mj
    crest = int(np.argmax(energy))
    away = crest + int(np.argmax(opening[crest:] < 0.0))
    friction, angle = 0.5 * (opening - closing)[away:], np.radians(rows.blade_angle_deg[away:])
    work = 0.5 * float(np.sum((friction[1:] + friction[:-1]) * np.diff(angle)))
    return float(energy[away] - energy[-1]) - work


def test_a_blade_snaps_home_beside_another_as_a_sweep_says() -> None:
    design = bs.load(DESIGN)
    found = bs.check(design)
    for place, check in enumerate(found.blades.values()):
        for case, row in zip(
            _core.cases(_core.seen_from(design.core, place)), check.beside, strict=True
        ):
            closed, half_stop, _ = sorted(each.blade_angle_deg for each in row.positions.values())
            swept = swept_snap_mj(case, closed, half_stop)
            assert abs(row.strokes[0].snap_energy_mj / swept - 1.0) < CLOSE
