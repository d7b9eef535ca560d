"""The least of 1/2 P C P - P need with P >= 0, by Lawson and Hanson's active set.

C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, chapter 23 (from memory). What turns
freely, the spring on one pin or a blade on its pivot, is an unknown of its own without a force, and
the moments about it balance.
"""

from __future__ import annotations

import numpy as np

from .blades import Array
from .slow_beam import Places

FITS_MM = 1e-9
# Each force gives by next to nothing: two blades may press on one spot.
SOFT_MM_PER_N = 1e-12
CAUTIOUS = 60


def balance(
    flexibility: Array, need: Array, levers: Array, bed: Array, start: Places
) -> tuple[Places, Array, Array]:
    """The stations that press, their forces, and the turns.

    Gap = C P + levers turn - need; a column of levers for each thing that turns, and the bed that
    holds it where nothing turns it, in N mm/rad.
    """
    on = [int(i) for i in start]
    on, force, turn = _let_go(flexibility, need, levers, bed, on, np.zeros(len(on)))
    for count in range(20 * need.size):
        gap = flexibility[:, on] @ force + levers @ turn - need
        gap[on] = np.inf
        worst = _worst(gap, single=count > CAUTIOUS)
        if not worst:
            return np.array(on, dtype=np.intp), force, turn
        on = on + worst
        force = np.append(force, np.zeros(len(worst)))
        on, force, turn = _let_go(flexibility, need, levers, bed, on, force)
    raise RuntimeError("the contact did not settle")


def _worst(gap: Array, single: bool) -> list[int]:
    """The station most through the spring, or at first every one that is more so than its like."""
    if gap.min() >= -FITS_MM:
        return []
    least = int(np.argmin(gap))
    if single:
        return [least]
    around = np.concatenate([[np.inf], gap, [np.inf]])
    low = (gap < around[:-2]) & (gap <= around[2:]) & (gap < -FITS_MM)
    return sorted({*np.flatnonzero(low).tolist(), least})


def _let_go(
    flexibility: Array, need: Array, levers: Array, bed: Array, on: list[int], force: Array
) -> tuple[list[int], Array, Array]:
    """Move towards forces that close all gaps; whatever would pull on the way lets go."""
    target, turn = _closed(flexibility, need, levers, bed, on)
    while target.size and target.min() <= 0.0:
        pulls = target <= 0.0
        share = np.where(pulls, force / np.where(pulls, force - target, 1.0), np.inf)
        share[pulls & (force <= 0.0)] = 0.0
        force = force + share.min() * (target - force)
        keep = ~(pulls & (share <= share.min()))
        on = [node for node, kept in zip(on, keep, strict=True) if kept]
        force = force[keep]
        target, turn = _closed(flexibility, need, levers, bed, on)
    return on, target, turn


def _closed(
    flexibility: Array, need: Array, levers: Array, bed: Array, on: list[int]
) -> tuple[Array, Array]:
    """Forces that close the gap at each of these stations, pulling where they must."""
    n, m = len(on), levers.shape[1]
    if n == 0:
        return np.zeros(0), np.zeros(m)
    matrix = np.zeros((n + m, n + m))
    matrix[:n, :n] = flexibility[np.ix_(on, on)]
    matrix[:n, n:] = levers[on]
    matrix[n:, :n] = levers[on].T
    diagonal = np.r_[np.full(n, SOFT_MM_PER_N), -bed]
    matrix.flat[:: n + m + 1] += diagonal
    found = np.linalg.solve(matrix, np.append(need[on], np.zeros(m)))
    return found[:n], found[n:]
