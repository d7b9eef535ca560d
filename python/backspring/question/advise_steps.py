"""One change that can be made, as the values it can be set to."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.design.draft import Draft

Values = npt.NDArray[np.float64]
Put = Callable[[Draft, float], dict[str, Any]]
_COARSE = 60
LESS_MORE = ("less", "more")


@dataclass(frozen=True, slots=True)
class Steps:
    """What a maker can set, in the core's units."""

    fine: float  # thickness, preload, width, radius [mm]
    length: float  # between pins, pad [mm]
    temper_c: float
    temper_zero_c: float = 0.0
    hardness_hrc: float = 0.5


@dataclass(frozen=True, slots=True)
class Change:
    """One way to change a joint, by one number: in mm, HRC or C as its key goes.

    `put` tells which keys of a draft become what. `sides`, where the number is what is added to
    what is drawn, say which way less and more go. `words`: the number is a place in that list.
    """

    key: str
    name: str
    now: float
    values: Values
    step: float
    put: Put
    sides: tuple[str, str] | None = None
    words: tuple[str, ...] = ()

    @property
    def low(self) -> float:
        """Least that it may be."""
        return float(self.values[0])

    @property
    def high(self) -> float:
        """Greatest that it may be."""
        return float(self.values[-1])

    def size(self, value: Any) -> Any:
        """How large a change is: its share of the way to the limit on its side, with its sign."""
        if self.words:
            return np.where(np.asarray(value) == self.now, 0.0, 1.0)
        away = np.asarray(value) - self.now
        room = np.where(away > 0, self.high - self.now, self.now - self.low)
        return np.divide(away, room, out=np.zeros_like(away), where=room > 0)

    def coarse(self) -> Values:
        """About sixty of its values, with what is among them."""
        if self.words or self.values.size <= _COARSE:
            return self.values
        places = np.linspace(0, self.values.size - 1, _COARSE).round().astype(int)
        return np.union1d(self.values[places], [self.now])

    def near(self, value: float, places: int) -> Values:
        """Its values next to one of them, so many to either side."""
        at = int(np.argmin(np.abs(self.values - value)))
        return self.values[max(0, at - places) : at + places + 1]


def numbered(
    key: str,
    name: str,
    now: float,
    limits: tuple[float, float],
    step: float,
    put: Put,
    *,
    sides: tuple[str, str] | None = None,
    zero: float = 0.0,
) -> Change:
    """Make a change whose values are whole steps from a zero within limits, and what is."""
    low, high = ((limit - zero) / step for limit in limits)
    whole = zero + step * np.arange(math.ceil(low - 1e-9), math.floor(high + 1e-9) + 1)
    apart = whole[np.abs(whole - now) > 1e-9]
    return Change(key, name, now, np.union1d(apart, [now]), step, put, sides)
