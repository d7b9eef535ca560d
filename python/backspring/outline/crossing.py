"""Where an outline crosses itself."""

from __future__ import annotations

import math

import numpy as np

from backspring.outline.chain import Chain

_STEP_RAD = 0.2


def crossing_of(chain: Chain) -> complex | None:
    """Find a place where two pieces that are no neighbours cross, arcs as short chords."""
    starts, ends, owners = [], [], []
    for i, piece in enumerate(chain.pieces):
        steps = max(1, math.ceil(abs(piece.sweep_rad) / _STEP_RAD))
        places = [piece.point_mm(k / steps) for k in range(steps + 1)]
        starts += places[:-1]
        ends += places[1:]
        owners += [i] * steps
    a, b, own = np.array(starts), np.array(ends), np.array(owners)
    count = len(chain.vertices)
    for i in range(len(a)):
        others = np.arange(i + 1, len(a))
        apart = (own[others] - own[i]) % count
        others = others[(apart > 1) & (apart < count - 1)]
        along = b[i] - a[i]
        first = ((a[others] - a[i]) * np.conj(along)).imag
        last = ((b[others] - a[i]) * np.conj(along)).imag
        ways = b[others] - a[others]
        behind = ((a[i] - a[others]) * np.conj(ways)).imag
        ahead = ((b[i] - a[others]) * np.conj(ways)).imag
        hits = (first * last < 0.0) & (behind * ahead < 0.0)
        if hits.any():
            j = int(hits.argmax())
            return complex(a[others[j]] + ways[j] * first[j] / (first[j] - last[j]))
    return None
