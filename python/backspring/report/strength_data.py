"""What a check says of strength beside its margins, as plain data."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from backspring.notice import Notice, Number

if TYPE_CHECKING:
    from backspring import _core

_LIVES = {"99_percent": "life", "low": "life_low", "high": "life_high", "half": "life_typical"}
_OF_RADIUS = {
    "radius_mm": "radius",
    "stress_mpa": "stress",
    "yield_margin": "yield_margin",
    "fatigue_margin": "fatigue_margin",
}


def life_data(margin: _core.Margin) -> dict[str, Any]:
    """Pick the openings of a fatigue margin; None where no limit is found."""
    if margin.name != "fatigue":
        return {}
    found = {each.name: each.value for each in margin.parameters}
    life = {name: _openings(found[key]) for name, key in _LIVES.items()}
    data: dict[str, Any] = {"openings": found["openings"], "life_openings": life}
    if "peened" in found:
        data["peened"] = {
            "residual_mpa": -found["peened"],
            "margin": found["peened_margin"],
            "life_openings": _openings(found["peened_life"]),
        }
    return data


def _openings(count: float) -> float | None:
    return None if math.isinf(count) else count


def kink_data(notices: Sequence[Notice]) -> dict[str, Any]:
    """Tell what root radii would mean for a kink that is not judged; nothing where all are."""
    told = [each for each in notices if each.code == "kink-not-judged"]
    if not told:
        return {}
    numbers = {
        name: each.value for name, each in told[0].values.items() if isinstance(each, Number)
    }
    radii = [
        {name: numbers.get(f"{key}_{place}") for name, key in _OF_RADIUS.items()}
        for place in range(3)
        if f"radius_{place}" in numbers
    ]
    place = {"station_mm": numbers["station"], "nominal_mpa": numbers["nominal"]}
    return {"kink_not_judged": {**place, "with_radius": radii}}
