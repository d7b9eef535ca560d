"""Scans of drawn joints read back: how far off, and whether the reading knows how sure it is.

`scan_accuracy.py 8` makes eight scans of each demo at 300 and at 600 dpi, turned at any angle,
blurred, noisy and under uneven light, and prints the errors and their z-scores.
"""

from __future__ import annotations

import math
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import numpy as np

import backspring as bs
from backspring.outline.drawn import draw
from backspring.outline.reading import OutlineReading, read_outline
from outline_pen import DEMOS, demo
from scanner import Light, saved, scanned, sheets

# Places whose thickness is read: between the pins, at the middle of the free length, on the pad.
_SHARES = (-0.5, 0.4, 0.97)


def read_back(name: str, dpi: float, seed: int, folder: Path) -> tuple[OutlineReading, Light]:
    """Scan a demo's parts and read the picture; every other blade is whole, some are flipped."""
    rng = np.random.default_rng([seed, int(dpi), len(name)])
    light = Light(
        blur_px=rng.uniform(0.5, 1.0), noise=rng.uniform(0.003, 0.02), uneven=rng.uniform(0.0, 0.2)
    )
    parts = sheets(demo(name).core, whole_blade=seed % 2 == 1)
    picture = scanned(parts, dpi, rng, light, flipped=seed % 3 == 0)
    values = {
        "spring.steel": '"' + demo(name).steel["name"] + '"',
        "spring.width": str(demo(name).core.spring.width_mm),
        "spring.hardness": '"46 HRC"',
    }
    reading = read_outline(saved(picture, folder / "scan.png"), dpi=dpi, values=values)
    return reading, light


def errors(name: str, reading: OutlineReading) -> Iterator[tuple[str, float, float]]:
    """Tell by how much each number is off, and its standard deviation [mm]."""
    core, scan, joint, faces = demo(name).core, reading.scan, reading.joint, reading.faces
    assert scan is not None
    read = {"open": faces.open_mm, "half_stop": faces.half_stop_mm, "closed": faces.closed_mm}
    for face, value in read.items():
        drawn = getattr(core.tang, f"{face}_mm")
        if drawn and face in scan.faces_mm:
            yield face, value - drawn, scan.faces_mm[face]
    yield (
        "closed against open",
        (faces.closed_mm - faces.open_mm) - (core.tang.closed_mm - core.tang.open_mm),
        math.hypot(scan.faces_mm["closed"], scan.faces_mm["open"]),
    )
    yield "preload", joint.preload_mm - core.fit.preload_mm, scan.preload_mm
    drawn_holes = {round(hole.center_mm, 6): hole for hole in core.spring.holes}
    span = core.spring.support.rear_pin_mm
    for hole, where, wide in zip(
        ("middle hole", "rear hole"), (0.0, -span), joint.pin_hole_mm, strict=True
    ):
        yield f"{hole}, width", wide - drawn_holes[where].diameter_mm, scan.holes[hole][1]
    spans = [
        abs(holes[0].center_mm - holes[1].center_mm)
        for holes in (reading.found.outlines.spring_holes, draw(core).spring_holes)
    ]
    sds = [scan.holes[hole][0] for hole in ("middle hole", "rear hole")]
    yield "span of holes", spans[0] - spans[1], math.hypot(*sds)


def thicknesses(name: str, reading: OutlineReading) -> Iterator[float]:
    """Tell by how much the spring is read too thick, at some stations [mm]."""
    drawn, read = demo(name).core.spring.thickness, reading.joint.thickness_mm
    for share in _SHARES:
        x = share * (drawn[-1].x_mm if share > 0.0 else -drawn[0].x_mm)
        at = [
            float(np.interp(x, [p for p, _ in rows], [t for _, t in rows]))
            for rows in (read, [(row.x_mm, row.thickness_mm) for row in drawn])
        ]
        yield at[0] - at[1]


def force_off(name: str, reading: OutlineReading) -> float:
    """Tell by what share the force on the tang is off at its peak."""
    forces = [bs.check(each).travel.peak_force_n for each in (demo(name), reading.design)]
    return forces[1] / forces[0] - 1.0


def main() -> None:
    """Print errors and z-scores."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 4
    with tempfile.TemporaryDirectory() as folder:
        for dpi in (300.0, 600.0):
            told: dict[str, list[tuple[float, float]]] = {}
            thick, forces = [], []
            for name in DEMOS:
                for seed in range(count):
                    reading, _ = read_back(name, dpi, seed, Path(folder))
                    for what, off, sd in errors(name, reading):
                        told.setdefault(what, []).append((off, off / sd))
                    thick += thicknesses(name, reading)
                    forces.append(force_off(name, reading))
            print(f"{dpi:.0f} dpi, {len(forces)} scans")
            for what, rows in told.items():
                off, z = np.array(rows).T
                print(
                    f"  {what:22} off {off.mean():+.4f} mm, rms {_rms(off):.4f}, most "
                    f"{np.abs(off).max():.4f}; z {z.mean():+.2f}, sd {z.std():.2f}"
                )
            print(f"  thickness: rms {_rms(thick):.4f} mm, most {np.abs(thick).max():.4f}")
            print(f"  force: rms {100.0 * _rms(forces):.2f} %, most {_most(forces):.2f} %")


def _rms(values: object) -> float:
    return float(np.sqrt(np.mean(np.square(values))))


def _most(shares: list[float]) -> float:
    return 100.0 * float(np.abs(shares).max())


if __name__ == "__main__":
    main()
