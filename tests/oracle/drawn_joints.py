"""Joints of several blades, drawn by rule and repeatable. All of it is invented data.

Three kinds: a blade at each end of the spring, two side by side on one pin, and both together.
Every joint is a plain dict in the shape of the design file and can be written as one; all numbers
in mm, N, MPa.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

import numpy as np

Drawn = dict[str, Any]
Generator = np.random.Generator
SEED = 1010


def drawn_joints(kind: str, n: int = 100, first: int = 0) -> Iterator[tuple[str, Drawn]]:
    """Joints of one kind by number: each number is the same joint whichever others are drawn."""
    for number in range(first, first + n):
        rng = np.random.default_rng([SEED, list(KINDS).index(kind), number])
        yield f"{kind} {number}", KINDS[kind](rng, number)


def _pick(rng: Generator, low: float, high: float, digits: int = 3) -> float:
    return round(float(rng.uniform(low, high)), digits)


def _tang(rng: Generator, pivot: float, face: float) -> Drawn:
    """Square or round-ended, nearly even on its faces; some with a kick on the closed one."""
    tang: Drawn = {"pivot": pivot, "open": face}
    if rng.random() < 0.5:
        tang["half_stop"] = round(face + _pick(rng, -0.03, 0.15), 3)
        tang["corner_radius"] = _pick(rng, 0.4, 1.0)
    else:
        tang["corner_radius"] = _pick(rng, 0.8, 1.8)
    tang["closed"] = round(face + _pick(rng, -0.03, 0.15), 3)
    tang["front"] = _pick(rng, 4.5, 5.5)
    if rng.random() < 0.4:
        distance, radius = _pick(rng, 6.0, 9.0), _pick(rng, 0.3, 0.8)
        height = _pick(rng, 0.05, 0.4)
        tang["kick"] = {"distance": distance, "height": height, "radius": radius}
    return tang


def _pad(rng: Generator, tang: Mapping[str, Any], end: float) -> list[float]:
    """A face from behind whatever of the tang can reach it to the spring's end."""
    back = max(tang.get("half_stop", tang["open"]), tang["closed"]) + 0.8
    if "kick" in tang:
        back = tang["kick"]["distance"] + tang["kick"]["radius"] + 0.5
    return [round(tang["pivot"] - back - _pick(rng, 0.0, 1.0), 3), end]


def _blade(rng: Generator, tang: Drawn, end: float, preload: float) -> Drawn:
    return {
        "pad": _pad(rng, tang, end),
        "tang": tang,
        "fit": {"preload": preload, "dial": round(tang["pivot"] + _pick(rng, 0.3, 2.0), 3)},
        "blade": {"nail_nick": _pick(rng, 18, 24, 1), "length": _pick(rng, 28, 34, 1)},
    }


def _alone(rng: Generator) -> tuple[Drawn, float]:
    """A blade by itself, and where its end of the spring stops."""
    pivot = _pick(rng, 27.0, 40.0)
    end = round(pivot + _pick(rng, 3.5, 5.0), 3)
    tang = _tang(rng, pivot, _pick(rng, 3.6, 4.8))
    return _blade(rng, tang, end, round(pivot * _pick(rng, 0.012, 0.026, 4), 3)), end


def _beside(rng: Generator, first: Drawn) -> Drawn:
    """A blade on the pin of the first, its faces within what a maker leaves of the first's."""
    tang = _tang(rng, first["tang"]["pivot"], first["tang"]["open"])
    spread = 0.03 if rng.random() < 0.7 else 0.0
    for face in ("open", "half_stop", "closed"):
        if face in tang:
            like = first["tang"].get(face, first["tang"]["open"])
            tang[face] = round(like + _pick(rng, -spread, spread), 3)
    preload = round(first["fit"]["preload"] + _pick(rng, -spread, spread), 3)
    return _blade(rng, tang, first["pad"][1], preload)


def _half(rng: Generator, end: float, root: float) -> list[list[float]]:
    """Thickness from a pin to the spring's end, stations positive and rising."""
    tip = max(1.6, round(root * _pick(rng, 0.6, 0.85), 3))
    return [[round(0.15 * end, 3), root], [round(0.65 * end, 3), tip], [end, round(tip + 0.1, 3)]]


def _spring(rng: Generator, width: float, front: float, rear: float | None, support: str) -> Drawn:
    """Tapered to one end or to both, on one pin or two."""
    root = _pick(rng, 2.7, 3.8)
    if rear is None:
        span = round(front * _pick(rng, 0.6, 1.0), 2)
        behind = [[-(span + 4.0), round(0.85 * root, 3)]]
    else:
        span = 0.0 if support == "middle-pin" else _pick(rng, 9.0, 22.0, 2)
        behind = [[round(-span - x, 3), t] for x, t in reversed(_half(rng, rear, root))]
    spring: Drawn = {
        "steel": "O1",
        "hardness": 47,
        "youngs_modulus": _pick(rng, 195e3, 212e3, -2),
        "poisson": _pick(rng, 0.27, 0.31),
        "width": width,
        "thickness": [*behind, *_half(rng, front, root)],
        "support": support,
        "pin_hole": round(root * _pick(rng, 0.35, 0.6), 3),
    }
    if support == "two-pins":
        spring["rear_pin"] = span
    return spring


def _joint(number: int, kind: str, spring: Drawn, blades: list[Drawn]) -> Drawn:
    main, *others = blades
    return {
        "format": 1,
        "name": f"Drawn {kind} {number}",
        "units": "mm",
        "spring": spring | {"pad": main["pad"]},
        "tang": main["tang"],
        "fit": main["fit"],
        "blade": main["blade"],
        "blades": others,
    }


def _at_both_ends(rng: Generator, number: int) -> Drawn:
    (main, front), (pen, rear) = _alone(rng), _alone(rng)
    support = "two-pins" if number % 2 else "middle-pin"
    spring = _spring(rng, _pick(rng, 1.6, 3.0), front, rear, support)
    return _joint(number, "ends", spring, [main, {"name": "pen", "end": "rear"} | pen])


def _side_by_side(rng: Generator, number: int) -> Drawn:
    main, front = _alone(rng)
    pen = {"name": "pen", "end": "front"} | _beside(rng, main)
    support = "clamped" if number % 4 == 3 else "two-pins"
    spring = _spring(rng, _pick(rng, 2.5, 4.5), front, None, support)
    return _joint(number, "side", spring, [main, pen])


def _three(rng: Generator, number: int) -> Drawn:
    (main, front), (file, rear) = _alone(rng), _alone(rng)
    pen = {"name": "pen", "end": "front"} | _beside(rng, main)
    support = "two-pins" if number % 2 else "middle-pin"
    spring = _spring(rng, _pick(rng, 2.5, 4.5), front, rear, support)
    return _joint(number, "three", spring, [main, pen, {"name": "file", "end": "rear"} | file])


KINDS: dict[str, Callable[[Generator, int], Drawn]] = {
    "ends": _at_both_ends,
    "side": _side_by_side,
    "three": _three,
}


def as_toml(tables: Mapping[str, Any], path: str = "") -> str:
    """The joint as a design file."""
    plain = [f"{key} = {_value(v)}" for key, v in tables.items() if not _is_table(key, v)]
    lines = plain + ([""] if plain else [])
    for key, value in tables.items():
        if key == "blades":
            for blade in value:
                lines += ["[[blades]]", as_toml(blade, "blades.")]
        elif _is_table(key, value):
            lines += [f"[{path}{key}]", as_toml(value)]
    return "\n".join(lines)


def _is_table(key: str, value: Any) -> bool:
    return key == "blades" or (isinstance(value, Mapping) and key != "kick")


def _value(value: Any) -> str:
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{key} = {_value(v)}" for key, v in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(_value(each) for each in value) + "]"
    return repr(value)
