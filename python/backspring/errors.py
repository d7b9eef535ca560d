"""The errors the library raises; what is wrong with a knife is a result, not an error."""

from __future__ import annotations

# As typing has it, which takes longer to load than the core, which asks for this module.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any, Literal


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


class Explained(Error):
    """An error that carries what was found, or a text; its sentence is written when it is shown.

    `units` are those that str() writes; `text()` writes any.
    """

    units: Literal["mm", "in"] = "mm"

    def text(self, units: Literal["mm", "in"] = "mm") -> str:
        """Write what was found in the units asked for."""
        found = self.args[0] if self.args else ""
        if isinstance(found, str):
            return found
        # Named and not imported: errors come before everything else.
        from importlib import import_module

        notice = import_module("backspring.notice").from_core(found)
        return str(notice.text(units))

    def __str__(self) -> str:
        return self.text(self.units)


class WorkerLost(Error):
    """A worker of an executor ended, or failed, with rows in hand; what is done is in `checks`.

    `first_row` and `last_row` are those of the first chunk that is lost.
    """

    def __init__(
        self, text: str, first_row: int = 0, last_row: int = 0, checks: Any = None
    ) -> None:
        super().__init__(text, first_row, last_row, checks)
        self.first_row, self.last_row, self.checks = first_row, last_row, checks

    def __str__(self) -> str:
        return str(self.args[0])


class OutOfRange(Explained):
    """A question outside the range that data or model cover."""


class NoConvergence(Explained):
    """A search that ended without a solution."""
