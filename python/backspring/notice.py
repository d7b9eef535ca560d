"""Findings that are no errors: a code with numbers and names, and its sentence when it is shown."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from importlib import import_module
from typing import TYPE_CHECKING, NamedTuple, Protocol

from backspring.units import System

if TYPE_CHECKING:
    from backspring import _core


class Number(NamedTuple):
    """A number of the core and what kind of quantity it is."""

    value: float
    quantity: str


class InWords(Protocol):
    """Something that writes itself in the units asked for."""

    def text(self, units: System = "mm") -> str:
        """Write it."""


Value = Number | float | str | InWords


class Notice(NamedTuple):
    """What a maker should know: a short, fixed code, and the numbers and names it is told with."""

    code: str
    values: Mapping[str, Value] = {}

    def text(self, units: System = "mm") -> str:
        """Write its sentence in the units asked for."""
        # Named and not imported: sentences belong to the room of reports.
        sentences = import_module("backspring.report.sentences")
        return str(sentences.notice_sentence(self.code, self.values, units))

    @property
    def message(self) -> str:
        """Its sentence, in mm."""
        return self.text()

    def __str__(self) -> str:
        return self.text()


def from_core(found: _core.Notice) -> Notice:
    """Take over a notice of the core."""
    from backspring._core import name_of

    return Notice(name_of(found.code), values_of(found.parameters, found.names))


def all_from_core(found: Iterable[_core.Notice]) -> tuple[Notice, ...]:
    """Take over notices of the core."""
    return tuple(map(from_core, found))


def values_of(parameters: Iterable[_core.Parameter], names: Mapping[str, str]) -> dict[str, Value]:
    """Numbers and names of a finding of the core under one roof."""
    values: dict[str, Value] = {
        each.name: Number(each.value, each.quantity.name) for each in parameters
    }
    return values | dict(names)
