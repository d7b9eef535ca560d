"""Spring and tang as plane-stress solids in contact, solved by CalculiX with large displacement.

Spring: no holes. A pin holds the mean displacement of the section at its station, so the spring
turns on it freely; only the middle pin holds it lengthwise. The belly is straight.

Tang: a block a hundred times as stiff as the spring, on a hinge at the pivot, held at a turn.

Stop: a force on the spring's end, square to the stop's face, which turns with the blade. It comes
over the whole end as one that acts at the point that bears: under a force on one node the steel
gives way without end as elements get smaller. Force and turn are found outside the solver, see
contact_with_stop_open.py: from what a solution leaves to turn the blade, and from how deep the
point stands in the face.

The solver pairs the points of both faces at the beginning of an increment. By what slides in it a
force on the spring and its answer on the tang come to stand apart: 0.002 mm, by which both turned
the blade by 0.07 % differently. So a second step holds all as it is, and both agree to 3e-6.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .contact_with_stop_mesh import SolidJoint, mesh_spring, mesh_tang
from .plane_stress_mesh import Floats, Ints, Mesh
from .plane_stress_solver import SLICE_WIDTH_MM, Term, calculix, equation, frd_field

TANG_STIFFER = 100.0
PRESSURE_MPA_PER_MM = 2e7  # 300 MPa sink in by 1.5e-5 mm
HOLD_N_PER_MM = 1e5  # a slice of the spring bends by 0.6 N/mm
HELD_AXES = (2, 1, 2)  # of the nodes that hold: pin, pin lengthwise, rear pin
NEAR_MM = 1e-6


@dataclass(frozen=True)
class Stop:
    """Where on the end it bears, above the belly, and how hard; and how the blade stands to it.

    turn_rad: of the blade from 180 deg, as if opening further.
    """

    height_mm: float
    force_n: float = 0.0
    turn_rad: float = 0.0

    @property
    def square(self) -> Floats:
        """Out of the stop's face, towards the end."""
        return np.array([-np.cos(self.turn_rad), -np.sin(self.turn_rad)])


@dataclass(frozen=True)
class Solved:
    push_n: float  # outward
    left_nmm: float  # to turn the blade on, of all that presses on it
    bears_mm: Floats  # point of the bent end that the stop bears on, from the pivot
    turn_deg: float  # of the blade, as if opening further
    back_mm: float  # at the dial


def solve(joint: SolidJoint, stop: Stop, *, free: bool = False) -> Solved:
    """With the blade held at the stop's turn, unless it is free to seat."""
    model = _Model(joint)
    bent, forces = _run(model.deck(stop, free=free), model.held)
    return model.read(bent, forces, stop)


class _Model:
    """Mesh, named nodes, and those that hold: pin, pin lengthwise, rear pin."""

    def __init__(self, joint: SolidJoint) -> None:
        self.joint, spring = joint, joint.spring
        self.body, self.tang = mesh_spring(joint), mesh_tang(joint)
        self.count = len(self.body.xy_mm)
        self.held = self.count + len(self.tang.xy_mm)
        self.top = self.count + self.tang.node_at(spring.pivot_mm, 0.0)
        self.hinge = self.count + self.tang.node_at(spring.pivot_mm, -joint.face_mm)

    def section(self, x_mm: float) -> tuple[Ints, Floats]:
        """Nodes across the spring and their shares of an even load."""
        nodes = np.flatnonzero(abs(self.body.xy_mm[:, 0] - x_mm) < NEAR_MM)
        nodes = nodes[np.argsort(self.body.xy_mm[nodes, 1])]
        shares = np.tile([2.0, 4.0], len(nodes))[: len(nodes)]
        shares[[0, -1]] = 1.0
        return nodes, shares / shares.sum()

    def end(self, height_mm: float) -> tuple[Ints, Floats]:
        """Nodes of the end and their shares in a point of it, the end taken as a plane."""
        nodes, shares = self.section(float(self.joint.spring.stations_mm[-1]))
        arm = self.body.xy_mm[nodes, 1] - shares @ self.body.xy_mm[nodes, 1]
        at = height_mm - shares @ self.body.xy_mm[nodes, 1]
        return nodes, shares * (1.0 + at * arm / (shares @ arm**2))

    def deck(self, stop: Stop, *, free: bool) -> str:
        joint, spring = self.joint, self.joint.spring
        places = np.vstack([self.body.xy_mm, self.tang.xy_mm, np.tile([0.0, -50.0], (4, 1))])
        ties = [
            self._mean(0.0, 2, self.held),
            self._mean(0.0, 1, self.held + 1),
            [*self._mean(-spring.rear_pin_mm, 2, self.held + 2), (self.held + 3, 2, -1.0)],
        ]
        held = {(self.held + 3, 2): joint.rear_pin_offset_mm, (self.hinge, 1): 0.0}
        held[self.hinge, 2] = joint.face_mm - joint.seat_mm
        for k, axis in enumerate(HELD_AXES):
            held |= {(self.held + k, other): 0.0 for other in (1, 2, 3) if other != axis}
        if not free:
            held[self.top, 1] = -joint.face_mm * np.sin(stop.turn_rad)
        x, y = self.body.xy_mm.T
        pad = (abs(y) < NEAR_MM) & (x > joint.pad_mm[0] - NEAR_MM)
        young, poisson = spring.youngs_modulus_mpa, spring.poisson
        return "\n".join(
            [
                "*NODE, NSET=ALL",
                *(f"{i},{a:.12e},{b:.12e},0." for i, (a, b) in enumerate(places, 1)),
                *_elements("SPRING", self.body, 0, 0),
                *_elements("TANG", self.tang, self.count, len(self.body.elements)),
                *_surface("PAD", self.body, pad, 0),
                *_surface("FACE", self.tang, self._upper(), len(self.body.elements)),
                f"*MATERIAL, NAME=STEEL\n*ELASTIC\n{young},{poisson}",
                f"*MATERIAL, NAME=STIFF\n*ELASTIC\n{young * TANG_STIFFER},{poisson}",
                f"*SOLID SECTION, ELSET=SPRING, MATERIAL=STEEL\n{SLICE_WIDTH_MM}",
                f"*SOLID SECTION, ELSET=TANG, MATERIAL=STIFF\n{SLICE_WIDTH_MM}",
                "*SURFACE INTERACTION, NAME=SLIDES",
                f"*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR\n{PRESSURE_MPA_PER_MM}",
                "*CONTACT PAIR, INTERACTION=SLIDES, TYPE=SURFACE TO SURFACE\nPAD,FACE",
                *_stiff_holds(self.held, len(self.body.elements) + len(self.tang.elements)),
                f"*NSET, NSET=HELD\n{','.join(str(self.held + i) for i in range(1, 4))}",
                *(equation(tie) for tie in ties),
                "*STEP, NLGEOM, INC=200\n*STATIC\n0.25,1.,1e-4,0.5\n*BOUNDARY",
                *(f"{node + 1},{axis},{axis},{value}" for (node, axis), value in held.items()),
                *self._pressed(stop),
                "*END STEP\n*STEP, NLGEOM\n*STATIC\n1.,1.",
                "*NODE FILE, OUTPUT=2D, FREQUENCY=999\nU",
                "*NODE PRINT, NSET=HELD, FREQUENCY=999\nU\n*END STEP\n",
            ]
        )

    def _pressed(self, stop: Stop) -> list[str]:
        nodes, shares = self.end(stop.height_mm)
        force = stop.force_n * SLICE_WIDTH_MM / self.joint.spring.width_mm * stop.square
        rows = (
            f"{node + 1},{axis},{share * part:.12e}"
            for node, share in zip(nodes, shares, strict=True)
            for axis, part in enumerate(force, 1)
        )
        return ["*CLOAD", *rows] if stop.force_n else []

    def read(self, moved: Floats, forces: Floats, stop: Stop) -> Solved:
        """By statics of the spring, and of spring and blade together about the pivot."""
        joint, spring = self.joint, self.joint.spring
        pin_y, pin_x, rear_y = forces * spring.width_mm / SLICE_WIDTH_MM
        bent = self.body.xy_mm + moved[: self.count, :2]
        pivot = np.array([spring.pivot_mm, -joint.seat_mm])

        def point(nodes: Ints, shares: Floats) -> Floats:
            return np.asarray(shares @ bent[nodes] - pivot)

        pin = np.array([0.0, float(spring.middle_at(0.0))]) - pivot
        rear = point(*self.section(-spring.rear_pin_mm))
        return Solved(
            push_n=float(-(pin_y + rear_y + stop.force_n * stop.square[1])),
            left_nmm=float(pin[0] * pin_y - pin[1] * pin_x + rear[0] * rear_y),
            bears_mm=point(*self.end(stop.height_mm)),
            turn_deg=float(np.degrees(np.arcsin(-moved[self.top, 0] / joint.face_mm))),
            back_mm=self._back(bent),
        )

    def _back(self, bent: Floats) -> float:
        """Height of the bent back where the dial touches it, above the seat as fitted."""
        spring, at = self.joint.spring, self.joint.dial_mm
        x, y = self.body.xy_mm.T
        back = np.flatnonzero(abs(y - spring.thickness_at(x)) < NEAR_MM)
        near = back[np.argsort(abs(bent[back, 0] - at))[:4]]
        return float(np.polyval(np.polyfit(bent[near, 0] - at, bent[near, 1], 3), 0.0))

    def _mean(self, x_mm: float, axis: int, holder: int) -> list[Term]:
        nodes, shares = self.section(x_mm)
        terms = [(int(n), axis, float(s)) for n, s in zip(nodes, shares, strict=True)]
        return [*terms, (holder, axis, -1.0)]

    def _upper(self) -> np.ndarray:
        """Nodes of the tang's outline: the highest of their column."""
        x, y = self.tang.xy_mm.T
        _, column = np.unique(np.round(x, 6), return_inverse=True)
        highest = np.full(column.max() + 1, -np.inf)
        np.maximum.at(highest, column.ravel(), y)
        return np.asarray(abs(y - highest[column.ravel()]) < NEAR_MM)


def _elements(name: str, mesh: Mesh, first_node: int, first: int) -> list[str]:
    rows = mesh.elements + first_node + 1
    return [
        f"*ELEMENT, TYPE=CPS8R, ELSET={name}",
        *(f"{i}," + ",".join(map(str, row)) for i, row in enumerate(rows, first + 1)),
    ]


def _surface(name: str, mesh: Mesh, on: np.ndarray, first: int) -> list[str]:
    """Element sides all of whose nodes are on the outline."""
    rows = [f"*SURFACE, NAME={name}"]
    for side in range(4):
        nodes = mesh.elements[:, [side, (side + 1) % 4, 4 + side]]
        rows += [f"{e + first + 1},S{side + 1}" for e in np.flatnonzero(on[nodes].all(axis=1))]
    return rows


def _stiff_holds(held: int, first: int) -> list[str]:
    """A stiff spring to the ground for each holding node: its way tells the force."""
    rows = []
    for k, axis in enumerate(HELD_AXES):
        rows.append(f"*ELEMENT, TYPE=SPRING1, ELSET=HOLD{k}\n{first + k + 1},{held + k + 1}")
        rows.append(f"*SPRING, ELSET=HOLD{k}\n{axis}\n{HOLD_N_PER_MM}")
    return rows


def _run(deck: str, held: int) -> tuple[Floats, Floats]:
    """Displacements of the nodes, and forces of those that hold."""
    answer, table = calculix(deck)
    printed = table.split()
    last = " -4  DISP" + answer.rsplit(" -4  DISP", 1)[1]
    way = {}
    for i, word in enumerate(printed):
        if word in {str(held + k) for k in range(1, 4)}:
            way[int(word) - held - 1] = [float(v) for v in printed[i + 1 : i + 4]]
    forces = -HOLD_N_PER_MM * np.array([way[k][axis - 1] for k, axis in enumerate(HELD_AXES)])
    return frd_field(last, "DISP", 3), forces
