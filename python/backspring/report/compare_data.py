"""A comparison as plain data."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from backspring.question.causes import Cause
    from backspring.question.compare import BladesComparison, Compared, Comparison

# Parts that stand in a cause's own row, by the figure that they are of.
_SHORT = {
    "pull_n": "peak_pull_n",
    "torque_nmm": "peak_torque_nmm",
    "stress_mpa": "travel_peak_stress_mpa",
    "yield_margin": "yield_margin",
    "half_stop_mm": "reading_loaded_half_stop_mm",
    "closed_mm": "reading_loaded_closed_mm",
}


def comparison_data(found: Comparison) -> dict[str, Any]:
    """Everything a comparison says, ready for JSON."""
    return _designs(found) | _blade(found) | {"targets": _targets(found)}


def blades_comparison_data(found: BladesComparison) -> dict[str, Any]:
    """Everything a comparison of several blades says, ready for JSON."""
    blades = {name: _blade(each) for name, each in found.blades.items()}
    rest = {"only": list(found.only), "targets": _targets(found)}
    return _designs(found) | {"blades": blades} | rest


def _designs(found: Compared) -> dict[str, Any]:
    designs = {"a": found.a.design, "b": found.b.design}
    return {side: {"name": d.name, "sha256": d.sha256} for side, d in designs.items()}


def _blade(found: Comparison) -> dict[str, Any]:
    return {
        "figures": [
            asdict(each) | {"change": each.change, "share": each.share} for each in found.figures
        ],
        "causes": [_cause(each) for each in found.causes],
    }


def _cause(cause: Cause) -> dict[str, Any]:
    return {
        "key": cause.key,
        "sort": cause.sort,
        "a": _end(cause.a),
        "b": _end(cause.b),
        **{short: cause.changes.get(name) for short, name in _SHORT.items()},
        "changes": cause.changes,
    }


def _end(values: tuple[object, ...]) -> Any:
    """One number, or several; what is no number by its name, none where there is none."""
    plain = [_plain(value) for value in values]
    return plain[0] if len(plain) == 1 else plain or None


def _plain(value: object) -> Any:
    if value is None or isinstance(value, float | int | str):
        return value
    if isinstance(value, list):
        return [_plain(each) for each in value]
    names = getattr(type(value), "_fields", None)
    if names:
        return {name: _plain(getattr(value, name)) for name in names}
    return str(getattr(value, "name", value))


def _targets(found: Compared) -> list[dict[str, Any]]:
    return [
        {
            "name": each.name,
            "a": None if each.a is None else each.a._asdict(),
            "b": None if each.b is None else each.b._asdict(),
            "lost": each.lost,
        }
        for each in found.targets
    ]
