"""The blades of one knife, each as the log tells it."""

from __future__ import annotations

from dataclasses import dataclass

from backspring.design.design import Design
from backspring.fit.knife import Knife


@dataclass(frozen=True)
class Knives:
    """The blades that a log was read of, by name, and the first of them.

    Where none of several blades was read, the first is any of them.
    """

    first: Knife
    read: dict[str, Knife]

    def of(self, design: Design) -> Knife | None:
        """Return what is known of the blade that a design is seen from."""
        return self.read.get(design.blade)
