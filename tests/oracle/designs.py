"""Ordinary designs of every kind, made by rule and repeatable. All of it is invented data.

Plain dicts in the shape of the design file; all numbers in mm, N, MPa.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np

Design = dict[str, Any]
Generator = np.random.Generator
Kinds = list[tuple[str, Callable[[Generator], Design]]]


def generated_designs(
    n: int = 68, seed: int = 1, kinds: Kinds | None = None
) -> list[tuple[str, Design]]:
    """The first n designs, kinds in turn; the same n, seed and kinds give the same designs."""
    rng = np.random.default_rng(seed)
    kinds = kinds or KINDS
    labelled = []
    for i in range(n):
        kind, make = kinds[i % len(kinds)]
        labelled.append((f"{kind} {i // len(kinds) + 1}", make(rng)))
    return labelled


def pick(rng: Generator, low: float, high: float, digits: int = 3) -> float:
    return round(float(rng.uniform(low, high)), digits)


def ordinary(
    rng: Generator,
    length: tuple[float, float] = (27.0, 45.0),
    root: tuple[float, float] = (2.6, 4.0),
    taper: tuple[float, float] = (0.58, 0.85),
) -> Design:
    """Two pins with holes, a tapered belly, a square tang nearly even on its three faces."""
    pivot = pick(rng, *length)
    rear_pin = round(pivot * pick(rng, 0.7, 1.15), 2)
    face = pick(rng, 3.6, 5.2)
    half, closed = round(face + pick(rng, -0.03, 0.2), 3), round(face + pick(rng, -0.03, 0.2), 3)
    radius = pick(rng, 0.35, 1.0)
    pad = [round(pivot - half - pick(rng, 0.4, 1.6), 3), round(pivot + pick(rng, 3.6, 5.4), 3)]
    root_mm = pick(rng, *root)
    tip_mm = max(1.5, round(root_mm * pick(rng, *taper), 3))
    thickness = [
        [-(rear_pin + 4.0), round(0.85 * root_mm, 3)],
        [-4.0, root_mm],
        [round(0.1 * pivot, 3), root_mm],
        [pad[0] - 1.0, tip_mm],
        [pad[1], round(tip_mm + 0.1, 3)],
    ]
    return {
        "spring": {
            "youngs_modulus": pick(rng, 195e3, 212e3, -2),
            "poisson": pick(rng, 0.27, 0.31),
            "width": pick(rng, 1.5, 4.0),
            "thickness": thickness,
            "support": "two-pins",
            "rear_pin": rear_pin,
            "pin_hole": round(root_mm * pick(rng, 0.4, 0.6), 3),
            "pad": pad,
        },
        "tang": {
            "pivot": pivot,
            "open": face,
            "half_stop": half,
            "closed": closed,
            "corner_radius": radius,
            "front": round(pad[1] - pivot + pick(rng, 0.3, 1.0), 3),
        },
        "fit": {
            "preload": round(pivot * pick(rng, 0.012, 0.033, 4), 3),
            "dial": round(pivot + pick(rng, 0.5, 2.5), 3),
        },
    }


def _without_holes(rng: Generator) -> Design:
    design = ordinary(rng)
    design["spring"]["pin_hole"] = 0.0
    if rng.random() < 0.5:
        design["spring"]["thickness"] = pick(rng, 2.2, 3.2)
    return design


def _clamped(rng: Generator) -> Design:
    design = _without_holes(rng)
    design["spring"]["support"] = "clamped"
    return design


def _root_stiffness(rng: Generator) -> Design:
    design = ordinary(rng)
    design["spring"]["support"] = {"root_stiffness": pick(rng, 8e4, 6e5, -2)}
    return design


def _eccentric_holes(rng: Generator) -> Design:
    design = ordinary(rng)
    spring = design["spring"]
    root_mm, rear_mm = spring["thickness"][1][1], spring["thickness"][0][1]
    holes = [round(root_mm * pick(rng, 0.3, 0.5), 3), round(rear_mm * pick(rng, 0.3, 0.5), 3)]
    spring["pin_hole"] = holes
    room = [0.5 * (t - hole) - 0.4 for t, hole in zip((root_mm, rear_mm), holes, strict=True)]
    spring["pin_hole_offset"] = [pick(rng, -r, r) for r in room]
    return design


def _with_kick(rng: Generator) -> Design:
    """The nose stands on the pad when closed, so the pad has to reach back behind it."""
    design = ordinary(rng, length=(32.0, 48.0))
    distance, radius = pick(rng, 6.5, 9.0), pick(rng, 0.3, 0.7)
    design["tang"]["kick"] = {
        "distance": distance,
        "height": pick(rng, 0.12, 0.4),
        "radius": radius,
    }
    pad = design["spring"]["pad"]
    pad[0] = round(design["tang"]["pivot"] - distance - radius - pick(rng, 0.5, 2.0), 3)
    design["spring"]["thickness"][3][0] = pad[0] - 1.0
    return design


def _round_ended(rng: Generator) -> Design:
    design = ordinary(rng)
    del design["tang"]["half_stop"]
    return design


def _unequal_corners(rng: Generator) -> Design:
    design = ordinary(rng)
    design["tang"]["corner_radius"] = [pick(rng, 0.25, 0.6), pick(rng, 0.7, 1.3)]
    if rng.random() < 0.5:
        design["tang"]["corner_radius"].reverse()
    return design


def _strong_taper(rng: Generator) -> Design:
    return ordinary(rng, root=(3.8, 4.5), taper=(0.38, 0.5))


def _any_profile(rng: Generator) -> Design:
    """Two to seven stations, thinner towards the pad on the whole, no steps."""
    design = ordinary(rng)
    spring = design["spring"]
    start, stop = -(spring["rear_pin"] + 4.0), spring["pad"][1]
    count = int(rng.integers(2, 8))
    # Even places moved by less than half a space never come close enough to make a step.
    even = np.linspace(start, stop, count)
    moved = even + (even[1] - even[0]) * rng.uniform(-0.3, 0.3, count)
    moved[0], moved[-1] = start, stop
    trend = np.interp(moved, [start, 0.0, stop], [3.2, 3.6, 2.1]) + rng.uniform(-0.3, 0.3, count)
    rows = zip(moved, trend, strict=True)
    spring["thickness"] = [[round(float(s), 3), round(float(t), 3)] for s, t in rows]
    spring["pin_hole"] = pick(rng, 0.8, 1.8)
    return design


def _light_preload(rng: Generator) -> Design:
    """A low closed face takes up most of a light preload: the spring nearly lifts off there."""
    design = ordinary(rng)
    preload = pick(rng, 0.2, 0.35)
    design["fit"]["preload"] = preload
    design["tang"]["closed"] = round(design["tang"]["open"] - preload * pick(rng, 0.7, 0.9), 4)
    return design


def _pad_begins(rng: Generator, low: float, high: float) -> Design:
    """The pad begins this far ahead of the open face's rear corner."""
    design = ordinary(rng)
    tang = design["tang"]
    corner = tang["pivot"] - (tang["half_stop"] - tang["corner_radius"])
    design["spring"]["pad"][0] = round(corner + pick(rng, low, high), 3)
    return design


def _pad_ends(rng: Generator, low: float, high: float) -> Design:
    """The pad ends this far ahead of the same corner, blade at half-stop."""
    design = ordinary(rng)
    tang, spring = design["tang"], design["spring"]
    corner = tang["pivot"] + (tang["open"] - tang["corner_radius"])
    spring["pad"][1] = round(corner + pick(rng, low, high), 3)
    spring["thickness"][-1][0] = spring["pad"][1]
    design["fit"]["dial"] = round(tang["pivot"] + pick(rng, 0.3, 1.2), 3)
    return design


def _thick_short(rng: Generator) -> Design:
    return ordinary(rng, length=(22.0, 26.0), root=(3.9, 4.5), taper=(0.8, 1.0))


def _thin_long(rng: Generator) -> Design:
    return ordinary(rng, length=(46.0, 60.0), root=(1.8, 2.4), taper=(0.8, 0.95))


KINDS: Kinds = [
    ("two pins with holes", ordinary),
    ("two pins without holes", _without_holes),
    ("clamped", _clamped),
    ("root stiffness", _root_stiffness),
    ("eccentric holes", _eccentric_holes),
    ("kick", _with_kick),
    ("round end", _round_ended),
    ("unequal corners", _unequal_corners),
    ("strong taper", _strong_taper),
    ("any profile", _any_profile),
    ("light preload", _light_preload),
    ("pad begins ahead of corner", lambda rng: _pad_begins(rng, 0.05, 1.2)),
    ("pad begins behind corner", lambda rng: _pad_begins(rng, -0.3, -0.02)),
    ("pad ends behind corner", lambda rng: _pad_ends(rng, -1.2, -0.05)),
    ("pad ends ahead of corner", lambda rng: _pad_ends(rng, 0.02, 0.3)),
    ("thick and short", _thick_short),
    ("thin and long", _thin_long),
]
