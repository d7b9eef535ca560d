"""Where n tangs press on one spring, and how hard: least complementary energy over pad nodes.

Pressure is allowed at every node of every pad, and where an outline could still stand through the
spring between two nodes the stretch is split, three times over. What a blade's torque is follows
from the energy alone: dU/dtheta is the work of the forces on the outline's rise at their stations.
Independent of the package under test. mm, N, rad inside, degrees for blade angles.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from .blades import Array, Flags, Joint
from .blades_active import balance
from .blades_beam import ELEMENT_MM, ElementBeam
from .blades_pool import Pool, Tangs, pad_nodes, whole_mm
from .slow_beam import Places

NODE_MM = 0.1
SPLITS, LEVELS = 12, 3
BULGE_MM = 1e-9
THROUGH_MM = 1e-6
NEAR_MM = 0.1  # what may come to bear while blades seat
# So softly is a spring on one pin held against turning: a billionth of what it carries.
BED_NMM_PER_RAD = 1e-4


@dataclass(frozen=True)
class Pressed:
    """All forces on the spring at given blade angles; stations are the blade's own."""

    joint: Joint
    angles_deg: dict[str, float]
    blade: Places
    own_mm: Array
    force_n: Array
    height_mm: Array
    slope: Array
    kick: Flags
    rise_mm: Array
    energy_nmm: float
    turn_rad: float  # of a spring on one pin
    pool: Pool  # every station that was looked at in the end

    def of(self, name: str) -> Flags:
        return np.asarray(self.blade == self.joint.names.index(name))

    def force(self, name: str) -> float:
        return float(self.force_n[self.of(name)].sum())

    def place_mm(self, name: str) -> float:
        """Where the resultant meets the spring."""
        mine = self.of(name)
        return float(self.own_mm[mine] @ self.force_n[mine] / self.force_n[mine].sum())

    def torque_nmm(self, name: str) -> float:
        """dU/dtheta of one blade, the others still."""
        mine = self.of(name)
        return float(self.force_n[mine] @ self.rise_mm[mine])


@dataclass(frozen=True)
class _State:
    """A solution on one pool of stations."""

    pool: Pool
    on: Places
    force: Array
    turn: Array
    gap: Array


class BladeContacts:
    """One joint; its flexibility between all pad nodes is found once."""

    def __init__(
        self, joint: Joint, node_mm: float = NODE_MM, element_mm: float = ELEMENT_MM
    ) -> None:
        self.joint = joint
        self.beam = ElementBeam(joint, element_mm)
        self._turns = joint.spring.support == "middle-pin"
        self._bed = np.full(int(self._turns), BED_NMM_PER_RAD)
        self._node_mm = node_mm
        self._base = pad_nodes(joint, node_mm)
        self._base_flexibility = self._flexibility(self._base, self._base)

    def pressed(self, angles_deg: Mapping[str, float], near: Pressed | None = None) -> Pressed:
        """Gap >= 0, force >= 0, gap x force = 0 for every blade held at its angle.

        A solution near by only says where the search begins.
        """
        tangs = Tangs(self.joint, dict(angles_deg))
        return self._describe(angles_deg, self._settled(tangs, near), tangs)

    def seated_nearer(
        self, pressed: Pressed, free: Sequence[str], bed_nmm_per_rad: float
    ) -> dict[str, float]:
        """How far the free blades turn until all their torques vanish, or their beds bear them.

        The outlines' rise is taken as even: exact where none need turn.
        """
        tangs = Tangs(self.joint, pressed.angles_deg)
        touching = Pool(pressed.blade, pressed.own_mm)
        pool = touching
        for each in (pressed.pool, self._base):
            near = self._gap_at(each, pressed, tangs) < NEAR_MM
            pool = pool.with_(each.blade[near], each.own_mm[near])
        rise = tangs.rise_mm(pool)
        numbers = [self.joint.names.index(name) for name in free]
        turning = [np.where(pool.blade == i, -rise, 0.0) for i in numbers]
        levers = np.column_stack([self._levers(pool), *turning])
        bed = np.append(self._bed, np.full(len(free), bed_nmm_per_rad))
        start = pool.nodes(touching, np.arange(touching.blade.size))
        matrix = self._flexibility(pool, pool)
        _, _, turn = balance(matrix, tangs.need_mm(pool), levers, bed, start)
        turns = np.degrees(turn[turn.size - len(free) :])
        return dict(zip(free, map(float, turns), strict=True))

    def movement_mm(self, pressed: Pressed, name: str, own_mm: float | None = None) -> float:
        """Outward movement of the spring at a blade's dial or at another station of its own."""
        blade = self.joint.blades[self.joint.names.index(name)]
        at = np.array([blade.dial_mm if own_mm is None else own_mm])
        here = self.joint.station_mm(blade, at)
        forces = whole_mm(self.joint, Pool(pressed.blade, pressed.own_mm))
        lift = self.beam.flexibility(here, forces) @ pressed.force_n
        return float((lift + pressed.turn_rad * here)[0])

    def _settled(self, tangs: Tangs, near: Pressed | None) -> _State:
        base = self._base
        start = self._start(tangs.need_mm(base), near)
        state = self._state(base, self._base_flexibility, tangs, start)
        for _ in range(4 * LEVELS):
            through = self._through(state, tangs)
            if through.any():
                finer = self._split(state, through)
            else:
                moved = self._flexibility(base, state.pool.only(state.on)) @ state.force
                moved += self._levers(base) @ state.turn
                beyond = tangs.need_mm(base) - moved > THROUGH_MM
                if not beyond.any():
                    break
                finer = state.pool.with_(base.blade[beyond], base.own_mm[beyond])
            start = finer.nodes(state.pool, state.on)
            state = self._state(finer, self._flexibility(finer, finer), tangs, start)
        return state

    def _state(self, pool: Pool, flexibility: Array, tangs: Tangs, start: Places) -> _State:
        need, levers = tangs.need_mm(pool), self._levers(pool)
        on, force, turn = balance(flexibility, need, levers, self._bed, start)
        gap = flexibility[:, on] @ force + levers @ turn - need
        return _State(pool, on, force, turn, gap)

    def _flexibility(self, at: Pool, forces: Pool) -> Array:
        return self.beam.flexibility(whole_mm(self.joint, at), whole_mm(self.joint, forces))

    def _levers(self, pool: Pool) -> Array:
        """Of the spring on one pin, about which it lifts on one side and falls on the other."""
        if self._turns:
            return whole_mm(self.joint, pool)[:, None]
        return np.zeros((pool.own_mm.size, 0))

    def _gap_at(self, pool: Pool, pressed: Pressed, tangs: Tangs) -> Array:
        touching = Pool(pressed.blade, pressed.own_mm)
        moved = self._flexibility(pool, touching) @ pressed.force_n
        if self._turns:
            moved = moved + pressed.turn_rad * whole_mm(self.joint, pool)
        return np.asarray(moved - tangs.need_mm(pool))

    def _start(self, need: Array, near: Pressed | None) -> Places:
        """The nodes at what presses near by, or else the one most in the way of each blade."""
        parts = self._base.parts(len(self.joint.blades))
        if near is None:
            return np.array([part.start + int(np.argmax(need[part])) for part in parts])
        nodes = []
        for i, part in enumerate(parts):
            x = self._base.own_mm[part]
            places = near.own_mm[near.blade == i]
            closest = np.argmin(np.abs(x[:, None] - places), axis=0) if places.size else []
            nodes.append(part.start + np.unique(np.asarray(closest, dtype=np.intp)))
        return np.concatenate(nodes)

    def _through(self, state: _State, tangs: Tangs) -> Flags:
        """Stretches between two stations where the outline bulges by more than the gap beside."""
        pool, gap, length = state.pool, state.gap, np.diff(state.pool.own_mm)
        finest = self._node_mm / float(SPLITS) ** LEVELS
        same = (np.diff(pool.blade) == 0) & (length < 1.01 * self._node_mm)
        same &= length > 1.5 * finest
        middle = Pool(pool.blade[:-1][same], pool.own_mm[:-1][same] + 0.5 * length[same])
        need = tangs.need_mm(pool)
        bulge = tangs.need_mm(middle) - 0.5 * (need[1:] + need[:-1])[same]
        through = np.zeros(length.size, dtype=bool)
        through[same] = (bulge > BULGE_MM) & (np.minimum(gap[1:], gap[:-1])[same] < bulge)
        return through

    def _split(self, state: _State, through: Flags) -> Pool:
        """The stretches' new stations and their ends, and what presses meanwhile."""
        pool = state.pool
        start, length = pool.own_mm[:-1][through], np.diff(pool.own_mm)[through]
        extra = start[:, None] + length[:, None] * np.arange(1, SPLITS) / SPLITS
        kept = np.zeros(pool.blade.size, dtype=bool)
        kept[state.on] = True
        kept[:-1] |= through
        kept[1:] |= through
        return pool.only(kept).with_(np.repeat(pool.blade[:-1][through], SPLITS - 1), extra.ravel())

    def _describe(self, angles_deg: Mapping[str, float], state: _State, tangs: Tangs) -> Pressed:
        order = np.argsort(state.on)
        touching, force = state.pool.only(state.on[order]), state.force[order]
        height, slope = tangs.top(touching)
        return Pressed(
            joint=self.joint, angles_deg=dict(angles_deg), blade=touching.blade,
            own_mm=touching.own_mm, force_n=force, height_mm=height, slope=slope,
            kick=tangs.kick(touching), rise_mm=tangs.rise_mm(touching),
            energy_nmm=float(0.5 * force @ tangs.need_mm(touching)),
            turn_rad=float(state.turn.sum()), pool=state.pool,
        )  # fmt: skip
