"""The straight way from one design to another, by the keys in which they differ."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.core_record import changed
from backspring.design.design import Design
from backspring.question.stations import numbers_along, same_stations

Place = tuple[str, ...]
Weight = Callable[[str], float]
# Whether a key is, in kind, as the second design has it.
Second = Callable[[str], bool]
# Makes what stands at a place.
Make = Callable[[Weight, Second], Any]
# Where the core's place of a number is no key of the file; the longest place that fits counts.
_KEYS = {
    "spring.support.rear_pin_mm": "spring.rear_pin",
    "spring.support": "spring.support",
    "spring.holes": "spring.pin_hole",
    "spring.holes.center_mm": "spring.rear_pin",
    "spring.holes.offset_mm": "spring.pin_hole_offset",
    "spring.holes.pin": "spring.support",
    "spring.thickness": "spring.thickness",
    "spring.widths": "spring.width",
    "spring.mid_line": "spring.mid_line",
    "spring.pin_clearance": "spring.pin_clearance",
    "spring.elastic.youngs_modulus_mpa": "spring.youngs_modulus",
    "spring.elastic.poisson": "spring.poisson",
    "strength.yield_mpa": "spring.yield",
    "strength.tensile_mpa": "spring.tensile",
    "hardness.spring_hrc": "spring.hardness",
    "surface.steel": "spring.steel",
    "surface.finish": "spring.finish",
    "surface.hole_finish": "spring.hole_finish",
    "surface.kink_radius_mm": "spring.kink_radius",
    "surface.curve_radius_mm": "spring.curve_radius",
    "surface.residual_mpa": "spring.residual_stress",
    "surface.hole_residual_mpa": "spring.hole_residual_stress",
    "surface.soft_skin_mm": "spring.soft_skin",
    "frame": "frame",
    "blade.pad": "spring.pad",
    "blade.tang.corner_open_mm": "tang.corner_radius",
    "blade.tang.corner_closed_mm": "tang.corner_radius",
    "blade.tang": "tang",
    "blade.fit": "fit",
    "blade.blade": "blade",
    "blade.hardness_hrc": "blade.hardness",
    "blade.stainless": "blade.steel",
    "blade.stands": "blades.stands",
    "blade.end": "blades.end",
}
_UNITS = ("_kg_mm2", "_mm", "_mpa", "_hrc", "_g", "_n")
# Of the targets only these enter a number of a check.
_WANTED = (("targets", "openings"), ("targets", "edge_gap_mm"))
_OF_STEEL = ("steel", "hardness", "temper", "temper_time")
_FOLLOWS_STEEL = ("youngs_modulus", "poisson", "yield", "tensile", "hardness")


@dataclass(frozen=True, slots=True)
class Part:
    """Numbers of one key that differ, or what differs in kind."""

    key: str
    a: tuple[Any, ...]
    b: tuple[Any, ...]


class Path:
    """The way from one design to another; `numbers` change along it, `kinds` by a step each.

    Profiles with other stations are both read at all of them, which changes neither.
    """

    def __init__(self, a: Design, b: Design) -> None:
        first, second = same_stations(a.core, _named_alike(a.core, b.core))
        self._both = first, second
        self._contents = a.to_dict(), b.to_dict()
        self._same = _same_cause(*self._contents)
        numbers: dict[str, list[tuple[Any, Any]]] = {}
        kinds: dict[str, list[tuple[Any, Any]]] = {}

        def differ(place: Place, one: Any, other: Any) -> Make:
            key = self._key(place)
            into = numbers if _is_number(one, other) else kinds
            into.setdefault(key, []).append((one, other))
            return _between(key, one, other) if into is numbers else _either(key, one, other)

        self._make = _maker((), first, second, differ)
        self.numbers, self.kinds = _parts(numbers), _parts(kinds)

    def at(self, weight: Weight, second: Second) -> _core.Design:
        """Return the design where each key has gone its share of the way."""
        design: _core.Design = self._make(weight, second)
        return design

    def stated(self, part: Part) -> Part:
        """Return what both designs state of a part, as the file does where that is one value."""
        if ", " in part.key:
            return part
        table, _, name = part.key.partition(".")
        if part.key in ("spring.thickness", "spring.mid_line"):
            return Part(part.key, *numbers_along(*self._both, part.key))
        if table != "spring":
            return part
        stated = [content[table].get(name) for content in self._contents]
        if part.key == "spring.width" and any(map(_is_several, stated)):
            return Part(part.key, *numbers_along(*self._both, part.key))
        if stated[0] != stated[1] and not any(_is_several(each) for each in stated):
            return Part(part.key, (stated[0],), (stated[1],))
        return part

    def _key(self, place: Place) -> str:
        key = _key_of(place)
        return self._same.get(key, key)


def _parts(found: Mapping[str, list[tuple[Any, Any]]]) -> tuple[Part, ...]:
    return tuple(Part(key, *map(tuple, zip(*pairs, strict=True))) for key, pairs in found.items())


def _is_number(one: Any, other: Any) -> bool:
    return isinstance(one, float) and isinstance(other, float)


def _is_several(stated: Any) -> bool:
    return stated is None or isinstance(stated, list | dict)


def _inner(one: Any, other: Any) -> list[tuple[str, Any, Any]] | None:
    """Return what two records, or two lists of one length, hold by name; None for anything else."""
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        pairs = zip(one, other, strict=True)
        return [(str(place), *pair) for place, pair in enumerate(pairs)]
    names: tuple[str, ...] = getattr(type(one), "_fields", ())
    if not names or type(one) is not type(other):
        return None
    return [(name, getattr(one, name), getattr(other, name)) for name in names]


def _maker(place: Place, one: Any, other: Any, differ: Callable[[Place, Any, Any], Make]) -> Make:
    """Compile what makes a value between two others; only what differs is made anew."""
    if one == other or _is_wish(place):
        return lambda _weight, _second: one
    if place == ("blades",) and len(one) != len(other):
        return _own_and_others(one, other, differ)
    own, inner = _named(place, one), _inner(one, other)
    if inner is None:
        return differ(own, one, other)
    made = {name: _maker((*own, name), a, b, differ) for name, a, b in inner}
    if isinstance(one, list):
        return lambda weight, second: [make(weight, second) for make in made.values()]
    kept = {name: a for name, a, b in inner if a == b}
    moving = {name: make for name, make in made.items() if name not in kept}

    def record(weight: Weight, second: Second) -> Any:
        return type(one)(**kept, **{name: make(weight, second) for name, make in moving.items()})

    return record


def _own_and_others(
    one: list[_core.Blade], other: list[_core.Blade], differ: Callable[[Place, Any, Any], Make]
) -> Make:
    """Follow the blade that the question is about; the others are there or not."""
    own = _maker(("blades", "0"), one[0], other[0], differ)
    others = differ(("blades",), one[1:], other[1:])
    return lambda weight, second: [own(weight, second), *others(weight, second)]


def _between(key: str, one: float, other: float) -> Make:
    def make(weight: Weight, _: Second) -> float:
        share = weight(key)
        return (1.0 - share) * one + share * other

    return make


def _either(key: str, one: Any, other: Any) -> Make:
    return lambda _, second: other if second(key) else one


def _is_wish(place: Place) -> bool:
    return len(place) == 2 and place[0] == "targets" and place not in _WANTED


def _named(place: Place, record: Any) -> Place:
    """Name a blade in its place: the first is the one that the question is about."""
    if len(place) != 2 or place[0] != "blades" or not isinstance(record, _core.Blade):
        return place
    return ("blade",) if place[1] == "0" else ("blades", record.name, "blade")


def _key_of(place: Place) -> str:
    if place[:1] == ("blades",) and len(place) > 2:
        own = _key_of(place[2:]).removeprefix("spring.").removeprefix("blades.")
        return f"blades.{place[1]}.{own}"
    words = [word for word in place if not word.isdigit()]
    for length in range(len(words), 0, -1):
        key = _KEYS.get(".".join(words[:length]))
        if key is None:
            continue
        if key not in ("tang", "fit", "blade"):
            return key
        return _bare(".".join([key, *words[length:]]))
    return _bare(".".join(words))


def _bare(key: str) -> str:
    unit = next((unit for unit in _UNITS if key.endswith(unit)), "")
    return key.removesuffix(unit)


def _same_cause(one: Mapping[str, Any], other: Mapping[str, Any]) -> dict[str, str]:
    """Return under which key a number is counted that the file leaves to follow from it."""
    same = {}
    stated = [name for name in _OF_STEEL if one["spring"].get(name) != other["spring"].get(name)]
    if stated:
        cause = f"spring.{stated[0].removesuffix('_time')}"
        for name in _FOLLOWS_STEEL:
            if one["spring"].get(name) == other["spring"].get(name) or name == "hardness":
                same[f"spring.{name}"] = cause
    alone = "blades" not in one and "blades" not in other
    if alone and "dial" not in one["fit"] and "dial" not in other["fit"]:
        same["fit.dial"] = "tang.pivot"
    return same


def _named_alike(a: _core.Design, b: _core.Design) -> _core.Design:
    """Give the blade that the question is about one name, and the others one order."""
    own, *others = b.blades
    order = [blade.name for blade in a.blades[1:]]
    if sorted(order) == sorted(blade.name for blade in others):
        others = sorted(others, key=lambda blade: order.index(blade.name))
    return changed(b, blades=[changed(own, name=a.blades[0].name), *others])
