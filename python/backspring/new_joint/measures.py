"""What calipers told: a value with its spread, as "36.9 +- 0.05 mm"."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from backspring.design.arguments import quantity
from backspring.errors import InvalidInput
from backspring.faults import Fault
from backspring.units import Kind, System

# Spread of a reading where none is stated: common practice, no source.
CALIPER_MM = 0.02
GAUGE_MM = 0.1
_PARTS = re.compile(r"\s*(?:\+-|\+/-|±)\s*")
_UNIT = re.compile(r"[A-Za-z\"][^\d]*$")


@dataclass(frozen=True, slots=True)
class Measured:
    """A value and its spread, one standard deviation, in the core's units."""

    value: float
    spread: float

    def __sub__(self, other: Measured) -> Measured:
        return Measured(self.value - other.value, math.hypot(self.spread, other.spread))

    def half(self) -> Measured:
        """Half of it."""
        return Measured(0.5 * self.value, 0.5 * self.spread)


def mean_of(first: Measured, second: Measured) -> Measured:
    """Mean of two."""
    spread = 0.5 * math.hypot(first.spread, second.spread)
    return Measured(0.5 * (first.value + second.value), spread)


@dataclass
class Readings:
    """Reads what was measured by name; faults are gathered and not raised."""

    given: Mapping[str, Any]
    units: System
    faults: list[Fault] = field(default_factory=list)

    def get(self, name: str, usual: float = CALIPER_MM, kind: Kind = "length") -> Measured | None:
        """Read one; None where it was not given or cannot be read."""
        value = self.given.get(name)
        return None if value is None else self.read(value, name, usual, kind)

    def need(self, name: str, usual: float = CALIPER_MM) -> Measured:
        """Read one that must be there."""
        if self.given.get(name) is None:
            self.fault(name, "must be given")
        return self.get(name, usual) or Measured(math.nan, usual)

    def pairs(self, name: str) -> list[tuple[float, Measured]]:
        """Read rows of station and thickness, as {"-38": "3.2 +- 0.02"} or [(-38, 3.2)]."""
        given = self.given.get(name) or {}
        rows: Iterable[Any] = given.items() if isinstance(given, Mapping) else given
        found = []
        for row in rows:
            try:
                station, value = row
            except (TypeError, ValueError):
                self.fault(name, f"must be rows of a station and a thickness, got {row!r}")
                continue
            at = self.read(station, name, 0.0)
            thick = self.read(value, name)
            if at and thick:
                found.append((at.value, thick))
        return sorted(found, key=lambda each: each[0])

    def read(
        self, value: Any, name: str, usual: float = CALIPER_MM, kind: Kind = "length"
    ) -> Measured | None:
        """Read a value with its spread, or with the usual one."""
        written, spread = parted(value) if isinstance(value, str) else (value, None)
        try:
            best = quantity(written, kind, name, self.units)
            off = usual if spread is None else self._spread(spread, kind, name)
        except InvalidInput as error:
            self.faults += [each for each in error.faults if isinstance(each, Fault)]
            return None
        if off < 0.0:
            self.fault(name, f"its +- must not be below 0, got {value!r}")
            return None
        return Measured(best, off)

    def fault(self, name: str, message: str) -> None:
        """Note what is wrong."""
        self.faults.append(Fault("bad-value", name, message))

    def _spread(self, spread: str, kind: Kind, name: str) -> float:
        nought = quantity("0", kind, name, self.units)
        return quantity(spread, kind, name, self.units) - nought


def parted(text: str) -> tuple[str, str | None]:
    """Part "36.9 +- 0.05 mm" into both numbers, each with the unit that either has."""
    parts = _PARTS.split(text.strip(), maxsplit=1)
    if len(parts) == 1:
        return parts[0], None
    best, spread = parts
    unit = _UNIT.search(spread)
    if unit and not _UNIT.search(best):
        best = f"{best} {unit[0]}"
    return best, spread
