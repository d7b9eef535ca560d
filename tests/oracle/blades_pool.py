"""Stations of several pads at which tangs may press, and what the joint says of each."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from .blades import Array, Flags, Joint
from .slow_beam import Places
from .slow_tang import TurnedTang

APART_MM = 1024.0
NOWHERE_MM = -50.0  # below the free face, where an outline does not reach a station


@dataclass(frozen=True)
class Pool:
    """Stations in order, those of one blade together; each is the blade's own."""

    blade: Places
    own_mm: Array

    def with_(self, blade: Places, own_mm: Array) -> Pool:
        keys = np.append(self._key, own_mm + APART_MM * blade)
        first = np.unique(keys, return_index=True)[1]
        return Pool(np.append(self.blade, blade)[first], np.append(self.own_mm, own_mm)[first])

    def only(self, chosen: Flags | Places) -> Pool:
        return Pool(self.blade[chosen], self.own_mm[chosen])

    def nodes(self, of: Pool, on: Places) -> Places:
        """The numbers that stations of another pool, all of them here too, have here."""
        return np.searchsorted(self._key, of._key[on])

    @property
    def _key(self) -> Array:
        return np.asarray(self.own_mm + APART_MM * self.blade)

    def parts(self, count: int) -> list[slice]:
        edges = np.searchsorted(self.blade, np.arange(count + 1))
        return [slice(a, b) for a, b in zip(edges[:-1], edges[1:], strict=True)]


def pad_nodes(joint: Joint, node_mm: float) -> Pool:
    """Even stations over every pad, its edges among them."""
    grids = [
        np.linspace(*b.pad_mm, int(np.ceil((b.pad_mm[1] - b.pad_mm[0]) / node_mm)) + 1)
        for b in joint.blades
    ]
    which = [np.full(grid.size, i) for i, grid in enumerate(grids)]
    return Pool(np.concatenate(which), np.concatenate(grids))


def whole_mm(joint: Joint, pool: Pool) -> Array:
    """The same stations along the whole spring."""
    rear = np.array([b.rear for b in joint.blades])[pool.blade]
    return np.where(rear, -joint.spring.span_mm - pool.own_mm, pool.own_mm)


class Tangs:
    """All outlines of a joint, each turned to its blade angle."""

    def __init__(self, joint: Joint, angles_deg: dict[str, float]) -> None:
        self._joint = joint
        self._turned = [b.turned(angles_deg[b.name]) for b in joint.blades]
        bodies = [
            replace(b, tang={key: value for key, value in b.tang.items() if key != "kick"})
            for b in joint.blades
        ]
        self._bodies = [b.turned(angles_deg[b.name]) for b in bodies]

    def need_mm(self, pool: Pool) -> Array:
        """How far each tang stands through the free face."""
        free = np.empty(pool.own_mm.size)
        for part, blade in zip(self._parts(pool), self._joint.blades, strict=True):
            free[part] = blade.free_face_mm(pool.own_mm[part])
        return np.maximum(self.top(pool)[0] - free, NOWHERE_MM)

    def top(self, pool: Pool) -> tuple[Array, Array]:
        """Height above the pivot and slope of the outline."""
        return self._top(pool, self._turned)

    def kick(self, pool: Pool) -> Flags:
        """Whether it is the kick that is on top."""
        return np.asarray(self._top(pool, self._bodies)[0] < self.top(pool)[0] - 1e-12)

    def rise_mm(self, pool: Pool) -> Array:
        """How fast each station of the outline rises as its blade opens [mm/rad]."""
        height, slope = self.top(pool)
        pivots = np.array([b.pivot_mm for b in self._joint.blades])[pool.blade]
        reached = np.isfinite(height)
        turned = np.where(reached, slope, 0.0) * np.where(reached, height, 0.0)
        return np.where(reached, pool.own_mm - pivots + turned, 0.0)

    def _top(self, pool: Pool, turned: list[TurnedTang]) -> tuple[Array, Array]:
        height, slope = np.empty(pool.own_mm.size), np.empty(pool.own_mm.size)
        for part, tang in zip(self._parts(pool), turned, strict=True):
            height[part], slope[part] = tang.top(pool.own_mm[part])
        return height, slope

    def _parts(self, pool: Pool) -> list[slice]:
        return pool.parts(len(self._turned))
