"""What a curved spring's mid-line does to its stiffness, and whether it counts."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring.outline.thickness import Row, Shape

# A belly this near to the pad's line is straight, as one is that nothing is said of.
STRAIGHT_MM = 0.01
_LEAST_LEAN_RAD = math.radians(3.0)
_LEAST_SHARE = 0.001
_STATIONS = 2000

_Column = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Lean:
    """How far belly and mid-line are off straight between rear pin and pivot.

    `compliance_share` is by how much more the spring gives under the tang than a straight one.
    """

    belly_off_mm: float
    lean_rad: float
    compliance_share: float

    @property
    def counts(self) -> bool:
        """Whether the design states the mid-line: a belly off straight, and enough of a lean."""
        if self.belly_off_mm < STRAIGHT_MM:
            return False
        return self.lean_rad > _LEAST_LEAN_RAD or self.compliance_share > _LEAST_SHARE


def lean_of(shape: Shape, pivot_mm: float, rear_pin_mm: float) -> Lean:
    """Compare the spring with a straight one of the same thickness, loaded at the pivot.

    Leaning by alpha, dx is dx/cos(alpha) long and t is t cos(alpha) thick: bending gains
    cos(alpha)^-4.
    """
    x = np.linspace(-rear_pin_mm, pivot_mm, _STATIONS + 1)
    thickness, height = _along(shape.thickness_mm, x), _along(shape.mid_line_mm, x)
    slopes = np.diff(height) / np.diff(x)
    middles = 0.5 * (x[1:] + x[:-1])
    arm = np.where(middles > 0.0, pivot_mm - middles, pivot_mm * (1.0 + middles / rear_pin_mm))
    depth = 0.5 * (thickness[1:] + thickness[:-1])
    give = arm**2 / np.maximum(depth, 1e-3) ** 3
    # A step of the middle, where a shoulder is, is no lean.
    leaning = np.where(np.abs(slopes) < 1.0, slopes, 0.0)
    share = float((give * ((1.0 + leaning**2) ** 2 - 1.0)).sum() / give.sum())
    belly = float(np.abs(height - 0.5 * thickness).max())
    return Lean(belly, float(np.arctan(np.abs(leaning)).max()), share)


def _along(rows: Sequence[Row], x: _Column) -> _Column:
    return np.interp(x, [row[0] for row in rows], [row[1] for row in rows])
