"""What is wrong with a design: which key, which line, which rule."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple, Self

from backspring.errors import InvalidInput

# More would tell a reader nothing: what is wrong with thousands of rows is one thing.
_MOST_TOLD = 10
_LONGEST_MESSAGE = 1000
_LONGEST_KEY = 80


class _Fields(NamedTuple):
    code: str
    key: str
    message: str
    path: str | None
    line: int | None
    rule: str | None
    limits: tuple[float, ...]
    values: tuple[float, ...]


class Fault(_Fields):
    """One broken rule. `line` counts from 1; without a file `path` and `line` are None.

    `rule` names a rule of the core, as "at_most"; `limits` and `values` are in the core's units.
    """

    __slots__ = ()

    def __new__(
        cls,
        code: str,
        key: str,
        message: str,
        path: str | None = None,
        line: int | None = None,
        rule: str | None = None,
        limits: tuple[float, ...] = (),
        values: tuple[float, ...] = (),
    ) -> Self:
        """Make one; a message longer than anyone reads is cut."""
        message = in_one_piece(message, _LONGEST_MESSAGE)
        return super().__new__(cls, code, key, message, path, line, rule, limits, values)

    @classmethod
    def _make(cls, iterable: Iterable[Any]) -> Self:  # type: ignore[override]
        # A copy with another message comes by here.
        return cls(*iterable)

    def __str__(self) -> str:
        place = "" if self.path is None else f"{self.path}: "
        if self.path is not None and self.line is not None:
            place = f"{self.path}:{self.line}: "
        key = in_one_piece(self.key, _LONGEST_KEY)
        return place + (f"{key}: " if key else "") + self.message


def invalid(faults: Sequence[Fault]) -> InvalidInput:
    """Make the exception that tells all faults, one a line, and carries them as `faults`."""
    return InvalidInput("\n".join(told(faults)), tuple(faults))


def told(faults: Sequence[Fault]) -> list[str]:
    """Write the first faults, a line each, and how many more there are."""
    lines = [str(fault) for fault in faults[:_MOST_TOLD]]
    more = len(faults) - _MOST_TOLD
    return [*lines, f"and {more} more"] if more > 0 else lines


def in_one_piece(text: str, most: int) -> str:
    """Cut a long text, and write what would act on a terminal instead of being seen as its code."""
    if len(text) > most:
        text = f"{text[: most - 30]} ... ({len(text)} characters)"
    if text.isprintable():
        return text
    return "".join(each if each.isprintable() or each == "\n" else _coded(each) for each in text)


def _coded(each: str) -> str:
    return each.encode("unicode_escape").decode("ascii")


def near_match(name: str, known: Iterable[str]) -> str | None:
    """Return the known name that a misspelt one most likely stands for."""
    # Loaded only where something is amiss.
    import difflib

    found = difflib.get_close_matches(name.casefold().replace("-", "_"), list(known), n=1)
    return found[0] if found else None
