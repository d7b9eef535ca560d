"""What was read of a design, and what is wrong with the rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from backspring.faults import Fault

Content = dict[str, Any]
HEADER = ("format", "name", "units")


@dataclass
class Reading:
    """What could be read, the faults of the rest, and the keys that need no second fault."""

    content: Content = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)
    failed: set[str] = field(default_factory=set)

    def fail(self, code: str, key: str, message: str) -> None:
        """Record a fault of a key."""
        self.faults.append(Fault(code, key, message))
        self.failed.add(key)

    def has_failed(self, key: str) -> bool:
        """Whether a key, or the table it stands in, already has a fault."""
        return any(key == failed or key.startswith(f"{failed}.") for failed in self.failed)


def dotted(content: Content, prefix: str = "") -> Iterator[tuple[str, Any]]:
    """Every value of a design with its key as "spring.width"."""
    for key, value in content.items():
        if isinstance(value, dict):
            yield from dotted(value, f"{prefix}{key}.")
        else:
            yield f"{prefix}{key}", value
