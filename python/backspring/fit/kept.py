"""What was worked out is kept, up to so many; unlike functools' caches it goes with its owner."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import Generic, TypeVar

T = TypeVar("T")


class Kept(Generic[T]):
    """Values by what they were worked out from. When there are too many all are dropped."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._values: dict[Hashable, T] = {}

    def of(self, key: Hashable, work_out: Callable[[], T]) -> T:
        """Return what is kept under a key, or work it out."""
        if key not in self._values:
            if len(self._values) >= self._most:
                self._values.clear()
            self._values[key] = work_out()
        return self._values[key]
