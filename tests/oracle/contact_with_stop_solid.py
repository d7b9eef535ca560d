"""Spring and tang as plane-stress solids in contact, solved by CalculiX with large displacement.

Spring: no holes. A pin holds the mean displacement of the section at its station, so the spring
turns on it freely; only the middle pin holds it lengthwise. The belly is straight.

Tang: a block a hundred times as stiff as the spring, free to turn on a hinge at the pivot. Its
shoulder is an equation: the shoulder's point and the point of the spring's end that bears on it go
the same way lengthwise, the shoulder's lever being the height at which that point stands when bent.
That point goes with the end's face as a plane, and its force comes over the whole face as one that
acts there: under a force on one node the steel gives way without end as elements get smaller. The
point's height, and the way the shoulder must be set back for the blade to stand at 180 deg, are
corrected from one solution to the next. So is how far the shoulder's face leans with a blade that
turns: it presses square to that, and holds the point along it no more than across the spring.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from .contact_with_stop_mesh import SolidJoint, mesh_spring, mesh_tang
from .plane_stress_mesh import Floats, Ints, Mesh
from .plane_stress_solver import SLICE_WIDTH_MM, Term, calculix, equation, frd_field

TANG_STIFFER = 100.0
PRESSURE_MPA_PER_MM = 2e7  # 300 MPa sink in by 1.5e-5 mm
HOLD_N_PER_MM = 1e5  # a slice of the spring bends by 0.6 N/mm
HELD_AXES = (2, 1, 2, 1)  # of the nodes that hold: pin, pin lengthwise, rear pin, shoulder
NEAR_MM = 1e-6


@dataclass(frozen=True)
class Shoulder:
    """The point of the end that bears, above the belly; its lever; how far the shoulder is off.

    lean: of its face from square to the spring.
    """

    height_mm: float
    lever_mm: float
    set_back_mm: float = 0.0
    lean: float = 0.0


@dataclass(frozen=True)
class Solved:
    push_n: float  # outward
    along_n: float  # of the tang's push on the spring, forward
    contact_from_pivot_mm: float
    stop_n: float
    lever_mm: float  # of the point that bears, bent
    end_forward_mm: float  # of that point
    end_outward_mm: float  # of that point
    turn_deg: float  # of the blade, as if opening further
    back_mm: float  # at the dial


def solve(joint: SolidJoint, shoulder: Shoulder | None, *, free: bool = False) -> Solved:
    """Held square without a shoulder, unless the blade is free to seat."""
    model = _Model(joint)
    bent, forces = _run(model.deck(shoulder, free=free), model.held)
    return model.read(bent, forces, shoulder)


def open_on_shoulder(
    joint: SolidJoint, height_mm: float, *, square: bool, solutions: int = 3
) -> Solved:
    """Open with its shoulder bearing: standing at 180 deg, or where the end as fitted stood."""
    shoulder = Shoulder(height_mm, joint.seat_mm + height_mm)
    for _ in range(solutions):
        solved = solve(joint, shoulder)
        lever = solved.lever_mm
        if square:
            shoulder = replace(shoulder, lever_mm=lever, set_back_mm=solved.end_forward_mm)
            continue
        # A face that leans meets a point that goes outward sooner, and turns about another lever.
        lean, ahead = np.tan(np.radians(solved.turn_deg)), joint.pad_mm[1] - joint.spring.pivot_mm
        set_back = lean * (solved.end_outward_mm - ahead * lean)
        shoulder = Shoulder(height_mm, lever - ahead * lean, set_back, lean)
    return solved


class _Model:
    """Mesh, named nodes, and the four nodes that hold: pin, pin lengthwise, rear pin, shoulder."""

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

    def end(self, height_mm: float, axis: int = 1, times: float = 1.0) -> list[Term]:
        """Shares of nodes in a point of the end's face; the solver drops the first, the largest."""
        nodes, shares = self.section(float(self.joint.spring.stations_mm[-1]))
        arm = self.body.xy_mm[nodes, 1] - shares @ self.body.xy_mm[nodes, 1]
        at = height_mm - shares @ self.body.xy_mm[nodes, 1]
        shares = shares * (1.0 + at * arm / (shares @ arm**2))
        return [(int(nodes[i]), axis, float(times * shares[i])) for i in np.argsort(-abs(shares))]

    def deck(self, shoulder: Shoulder | None, *, free: bool) -> str:
        joint, spring = self.joint, self.joint.spring
        places = np.vstack([self.body.xy_mm, self.tang.xy_mm, np.tile([0.0, -50.0], (6, 1))])
        ties = [
            self._mean(0.0, 2, self.held),
            self._mean(0.0, 1, self.held + 1),
            [*self._mean(-spring.rear_pin_mm, 2, self.held + 2), (self.held + 4, 2, -1.0)],
        ]
        held = {(self.held + 4, 2): joint.rear_pin_offset_mm, (self.hinge, 1): 0.0}
        held[self.hinge, 2] = joint.face_mm - joint.seat_mm
        for k, axis in enumerate(HELD_AXES):
            held |= {(self.held + k, other): 0.0 for other in (1, 2, 3) if other != axis}
        if shoulder:
            share = shoulder.lever_mm / joint.face_mm
            shoulder_node = [(self.held + 3, 1, -1.0), (self.held + 5, 1, -1.0)]
            across = self.end(shoulder.height_mm, 2, shoulder.lean) if shoulder.lean else []
            along = [*self.end(shoulder.height_mm), *across]
            ties.append([*along, (self.top, 1, -share), *shoulder_node])
            held[self.held + 5, 1] = shoulder.set_back_mm
        elif not free:
            held[self.top, 1] = 0.0
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
                f"*NSET, NSET=HELD\n{','.join(str(self.held + i) for i in range(1, 5))}",
                *(equation(tie) for tie in ties),
                "*STEP, NLGEOM, INC=200\n*STATIC\n0.25,1.,1e-4,0.5\n*BOUNDARY",
                *(f"{node + 1},{axis},{axis},{value}" for (node, axis), value in held.items()),
                "*NODE FILE, OUTPUT=2D, FREQUENCY=999\nU",
                "*NODE PRINT, NSET=HELD, FREQUENCY=999\nU\n*END STEP\n",
            ]
        )

    def read(self, moved: Floats, forces: Floats, shoulder: Shoulder | None) -> Solved:
        """From the pins' forces by statics of the spring, about the middle pin."""
        joint, spring = self.joint, self.joint.spring
        middle_y, middle_x, rear_y, stop_x = forces * spring.width_mm / SLICE_WIDTH_MM
        stop_y = shoulder.lean * stop_x if shoulder else 0.0
        push, along = -(middle_y + rear_y + stop_y), -(middle_x + stop_x)
        bent = self.body.xy_mm + moved[: self.count, :2]
        nodes, shares = self.section(-spring.rear_pin_mm)
        rear = float(shares @ bent[nodes, 0])
        pin = float(spring.middle_at(0.0))
        end = self.end(shoulder.height_mm) if shoulder else []
        bears = sum((share * bent[node] for node, _, share in end), start=np.zeros(2))
        turning = rear * rear_y - (bears[1] - pin) * stop_x + bears[0] * stop_y + pin * along
        top, forward = self.top, shoulder and bears[0] - spring.stations_mm[-1]
        return Solved(
            push_n=float(push),
            along_n=float(along),
            contact_from_pivot_mm=float(-turning / push) - spring.pivot_mm,
            stop_n=float(-stop_x),
            lever_mm=float(joint.seat_mm + bears[1]),
            end_forward_mm=float(forward or 0.0),
            end_outward_mm=float(bears[1] - shoulder.height_mm if shoulder else 0.0),
            turn_deg=float(np.degrees(np.arcsin(-moved[top, 0] / joint.face_mm))),
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
    """Displacements of the nodes, and forces of the four that hold."""
    answer, table = calculix(deck)
    printed = table.split()
    last = " -4  DISP" + answer.rsplit(" -4  DISP", 1)[1]
    way = {}
    for i, word in enumerate(printed):
        if word in {str(held + k) for k in range(1, 5)}:
            way[int(word) - held - 1] = [float(v) for v in printed[i + 1 : i + 4]]
    forces = -HOLD_N_PER_MM * np.array([way[k][axis - 1] for k, axis in enumerate(HELD_AXES)])
    return frd_field(last, "DISP", 3), forces
