"""Every picture that a design can have, for tests and programs that look at all of them."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator
from typing import Any

import numpy as np
from matplotlib.figure import Figure

import backspring as bs

KINDS = ("sheet", "positions", "stress", "action", "back")
_FREE = ("thickness", "preload")
_MM: dict[str, float] = {"mm": 1.0, "in": 1.0 / 25.4}


def drawn_pictures(
    design: bs.Design, units: Any, without: Container[str] = ()
) -> Iterator[tuple[str, Figure]]:
    """Name and picture of each result that the design has; a refused one is left out."""
    for name, draw in _drawings(design, units).items():
        if name in without:
            continue
        try:
            yield name, draw()
        except (bs.NoConvergence, bs.OutOfRange):
            continue


def _drawings(design: bs.Design, units: Any) -> dict[str, Callable[[], Figure]]:
    check = bs.check(design)

    def of(result: Callable[[], Any], *kind: str, **options: Any) -> Callable[[], Figure]:
        return lambda: bs.plot(result(), *kind, units=units, **options)

    mm = _MM[design.units]
    wider = {"spring.width": 1.1 * design.core.spring.width_mm * mm}
    found = {kind: of(lambda: check, kind) for kind in KINDS}
    found["compare"] = of(lambda: bs.compare(design, design.replace(**wider)))
    if isinstance(check, bs.BladesCheck):
        for blade in check.blades:
            found |= {f"{blade} {kind}": of(lambda: check, kind, blade=blade) for kind in KINDS}
        return found
    for kind in ("positions", "stress"):
        found[f"{kind} at 52 deg"] = of(lambda: check, kind, blade_angle_deg=52.0)
    for face in ("back", "belly", "pad"):
        found[f"grind {face}"] = of(
            lambda face=face: bs.grind_table(design, face=face, to="0.2 mm", step="0.05 mm")
        )
    peak_nmm = max(stroke.peak_torque_nmm for stroke in check.strokes)
    peak_n = peak_nmm / (design.core.blade.nail_nick_mm or 35.0)
    wanted = {"pull": f"{0.8 * peak_n:.3f} N", "yield_margin": 1.1, "vary": _FREE}
    read = {name: 0.3 * mm for name in ("half_stop", "closed") if name in check.positions}
    spreads = {
        "fit.preload": "0.05 mm",
        "spring.width": "0.02 mm",
        "spring.thickness_offset": "0.03 mm",
    }
    grid = {"thickness": np.linspace(2.0, 4.6, 20), "preload": np.linspace(0.3, 1.2, 20)}
    return found | {
        "flush": of(lambda: bs.grind_flush(design, per_pass="0.05 mm"), "flush"),
        "ways": of(lambda: bs.grind_ways(design, f"{0.9 * peak_n:.3f} N")),
        "levers": of(lambda: bs.levers(design)),
        "allowance": of(lambda: bs.allowance(design)),
        "fit": of(lambda: bs.fit_plan(design, **read, state="unloaded")),
        "load": of(lambda: bs.load_spring(design, at=0.7 * design.core.tang.pivot_mm)),
        "influence": of(lambda: bs.influence(design)),
        "sizes": of(lambda: bs.size(design, **wanted)),
        "map": of(lambda: bs.design_map(design, grid), pull_n=10.0, yield_margin=1.2),
        "tolerance": of(lambda: bs.tolerance(design, spreads, n=200)),
    }
