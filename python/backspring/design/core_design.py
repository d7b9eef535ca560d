"""Turns the content of a design file into the core's design.

What could not be read becomes NaN, so that the core's rules can still be asked about the rest.
"""

from __future__ import annotations

from typing import Any

from backspring import _core
from backspring.design.fields import KEYS
from backspring.design.reading import dotted
from backspring.design.value import numbers_of
from backspring.steel.choice import SteelChoice

Section = dict[str, Any]
# On its middle pin alone each end bends as if clamped there; the core turns the whole.
_SUPPORTS = {
    "two-pins": _core.SupportKind.two_pins,
    "clamped": _core.SupportKind.clamped,
    "middle-pin": _core.SupportKind.clamped,
}


def make_core_design(content: Section, choice: SteelChoice | None) -> _core.Design:
    """Build the core's design; `choice` is None when the steel could not be read."""
    spring = content.get("spring", {})
    sound = _core.Band(value=1.0, low=1.0, high=1.0)
    hardness = choice.hardness if choice else None
    base = _core.Design(
        spring=_core.Spring(
            support=_support(spring), elastic=choice.elastic if choice else _core.Elastic()
        ),
        strength=choice.strength if choice else _core.Strength(yield_mpa=sound),
        surface=_surface(spring, choice),
        hardness=_core.Hardness(spring_hrc=hardness.value if hardness else None),
    )
    return _core.with_numbers(base, _numbers(content))


def make_core_two_blades(content: Section, first: _core.Design) -> _core.TwoBlades | None:
    """Add the second blade to the core's design of the first; None when there is none."""
    if "second" not in content:
        return None
    end = make_end(content["second"])
    return _core.TwoBlades(first=first, second=end.blades[0])


def make_end(second: Section) -> _core.Design:
    """Put pad, tang, fit and blade of a second blade into a design of their own."""
    pad = {"spring": {"pad": second["pad"]}} if "pad" in second else {}
    rest = {name: table for name, table in second.items() if name != "pad"}
    return _core.with_numbers(_core.Design(), _numbers(pad | rest))


def _numbers(content: Section) -> dict[str, list[float]]:
    given = {key: numbers_of(KEYS[key], value) for key, value in dotted(content)}
    return {key: numbers for key, numbers in given.items() if numbers}


def _support(spring: Section) -> _core.Support:
    support = spring.get("support", "two-pins")
    if support in _SUPPORTS:
        return _core.Support(kind=_SUPPORTS[support])
    return _core.Support(kind=_core.SupportKind.root_stiffness, root_stiffness_nmm_per_rad=support)


def _surface(spring: Section, choice: SteelChoice | None) -> _core.Surface:
    stainless = choice is not None and "stainless" in choice.steel.family
    return _core.Surface(
        finish=_core.Finish[spring.get("finish", "ground").replace("-", "_")],
        steel=_core.SpringSteel.stainless if stainless else _core.SpringSteel.carbon,
    )
