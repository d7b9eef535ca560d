"""The errors the library raises; what is wrong with a knife is a result, not an error."""

from __future__ import annotations

from typing import Any


class Error(Exception):
    """Base of all errors the library raises."""


class InvalidInput(Error, ValueError):
    """Input that breaks one or more rules; `faults` holds each of them."""

    faults: tuple[Any, ...]

    def __init__(self, text: str, faults: tuple[Any, ...] = ()) -> None:
        super().__init__(text, faults)
        self.faults = faults

    def __str__(self) -> str:
        return str(self.args[0])


class OutOfRange(Error):
    """A question outside the range that data or model cover."""


class NoConvergence(Error):
    """A search that ended without a solution."""
