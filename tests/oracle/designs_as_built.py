"""Joints with what a usual drawing leaves out, drawn by rule. All of it is invented data.

Each is an ordinary design of designs.py with one thing besides: an outline for a tang, a bow behind
the pad, liners that give, play at the pins.
"""

from __future__ import annotations

import numpy as np

from .designs import Design, Generator, Kinds, ordinary, pick

PAD_FLAT_MM = 2.0  # the bow ends so far behind the pad


def _drawn_tang(rng: Generator) -> Design:
    """Egg-shaped behind, a flat at half-stop; the closed face flat or a slow curve."""
    design = ordinary(rng)
    tang, pad = design["tang"], design["spring"]["pad"]
    face, half, closed = (tang[key] for key in ("open", "half_stop", "closed"))
    reach = round(tang["pivot"] - pad[0] + 3.0, 3)
    rows = [
        [tang["front"], face],
        [round(pick(rng, 2.4, 3.2) - half, 3), face, pick(rng, 0.12, 0.2)],
        [-half, pick(rng, 1.8, 2.4)],
        [-half, -pick(rng, 1.8, 2.4), pick(rng, 0.12, 0.2)],
        [round(pick(rng, 2.4, 3.2) - half, 3), -closed],
        [reach, -closed],
    ]
    if rng.random() < 0.5:
        rows[4].append(pick(rng, 0.01, 0.03))
    design["tang"] = {"pivot": tang["pivot"], "outline": rows}
    return design


def _bowed(rng: Generator) -> Design:
    """The belly hollow or full between rear pin and pad; the pad itself is straight."""
    design = ordinary(rng)
    spring = design["spring"]
    start, pad = spring["thickness"][0][0], spring["pad"]
    bow = pick(rng, 0.5, 2.5) * (1.0 if rng.random() < 0.5 else -1.0)
    belly = [(start, 0.0), (0.0, bow), (pad[0] - PAD_FLAT_MM, 0.0), (pad[1], 0.0)]
    station, thickness = np.transpose(spring["thickness"])
    rows = sorted({*map(float, station), *(x for x, _ in belly)})
    height = np.interp(rows, *zip(*belly, strict=True)) + 0.5 * np.interp(rows, station, thickness)
    spring["mid_line"] = [[x, float(y)] for x, y in zip(rows, height, strict=True)]
    return design


def _liners_give(rng: Generator) -> Design:
    """Read at the pivot, where liners and a fixture are one datum."""
    design = ordinary(rng)
    design["frame"] = {"seat": pick(rng, 0.5e-4, 5e-4, 6)}
    design["fit"]["dial"] = design["tang"]["pivot"]
    return design


def _play(rng: Generator) -> Design:
    design = ordinary(rng)
    design["spring"]["pin_clearance"] = [pick(rng, 0.0, 0.05), pick(rng, 0.0, 0.05)]
    design["tang"]["pivot_clearance"] = pick(rng, 0.0, 0.05)
    return design


AS_BUILT: Kinds = [
    ("drawn tang", _drawn_tang),
    ("bowed", _bowed),
    ("liners that give", _liners_give),
    ("play at the pins", _play),
]
