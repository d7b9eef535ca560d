"""What is wrong with a design: which key, which line, which rule."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backspring.errors import InvalidInput


@dataclass(frozen=True, slots=True)
class Fault:
    """One broken rule. `line` counts from 1; without a file `path` and `line` are None.

    `rule` names a rule of the core, as "at_most"; `limits` and `values` are in the core's units.
    """

    code: str
    key: str
    message: str
    path: str | None = None
    line: int | None = None
    rule: str | None = None
    limits: tuple[float, ...] = ()
    values: tuple[float, ...] = ()

    def __str__(self) -> str:
        place = "" if self.path is None else f"{self.path}: "
        if self.path is not None and self.line is not None:
            place = f"{self.path}:{self.line}: "
        return place + (f"{self.key}: " if self.key else "") + self.message


def invalid(faults: Sequence[Fault]) -> InvalidInput:
    """Make the exception that tells all faults, one a line, and carries them as `faults`."""
    return InvalidInput("\n".join(str(fault) for fault in faults), tuple(faults))


def near_match(name: str, known: Iterable[str]) -> str | None:
    """Return the known name that a misspelt one most likely stands for."""
    found = difflib.get_close_matches(name.casefold().replace("-", "_"), list(known), n=1)
    return found[0] if found else None
