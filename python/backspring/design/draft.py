"""A design changed over and over, for a search: read once, judged by the core alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Self

from backspring import _core
from backspring.design.blades import copied, put
from backspring.design.core_design import make_core_design
from backspring.design.design import Design
from backspring.design.fields import BESIDE, HEADER
from backspring.faults import invalid
from backspring.steel.choice import SteelChoice, choose_steel
from backspring.steel.known import Own

Content = dict[str, Any]
_OF_STEEL = {"spring.steel", "spring.hardness", "spring.temper"}


@dataclass(frozen=True)
class Draft:
    """Content of a design in the core's units, and the keys in which it differs from the first."""

    content: Content
    choice: SteelChoice
    changes: Mapping[str, Any] = field(default_factory=dict)

    @classmethod
    def of(cls, design: Design) -> Self:
        """Take over a design, seen from its first blade."""
        beside = {*HEADER, *BESIDE}
        held = {key: each for key, each in design.to_dict().items() if key not in beside}
        if "blades" in held:
            held["blades"] = {each["name"]: each for each in held["blades"]}
        return cls(held, _chosen(held["spring"], design.own_steel))

    def changed(self, changes: Mapping[str, Any]) -> Draft:
        """Change keys, as a design file has them, to values in the core's units.

        Raises InvalidInput for a steel that cannot be so; other rules are judged by the core.
        """
        content = copied(self.content)
        for key, value in changes.items():
            put(content, key, value)
        again = bool(_OF_STEEL & changes.keys())
        choice = _chosen(content["spring"], self.choice.own) if again else self.choice
        return Draft(content, choice, {**self.changes, **changes})

    def core(self) -> _core.Design:
        """Make the core's design; what follows from a key follows as in a file."""
        return make_core_design(self.content, self.choice)

    def value(self, key: str) -> Any:
        """Return what is held under a key; None where nothing is."""
        held: Any = self.content
        for part in key.split("."):
            held = held.get(part) if isinstance(held, dict) else None
        return held


def _chosen(spring: Content, own: Own | None) -> SteelChoice:
    choice = choose_steel(spring, own)
    if isinstance(choice, list):
        raise invalid(choice)
    return choice
