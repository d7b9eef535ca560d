"""Names and numbers of a comparison as a maker says them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from backspring._core import Form
from backspring.design.fields import row_of
from backspring.report.display import STYLES, Shown, number, scatter, text, unit_of
from backspring.unit_table import KINDS
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.causes import Cause

FIGURES = {
    "peak_pull_n": "pull",
    "closing_peak_pull_n": "closing pull",
    "peak_torque_nmm": "torque",
    "travel_peak_stress_mpa": "worst stress",
    "yield_margin": "yield margin",
    "reading_loaded_half_stop_mm": "half-stop reading",
    "reading_loaded_closed_mm": "closed reading",
    "reading_unloaded_half_stop_mm": "half-stop unloaded",
    "reading_unloaded_closed_mm": "closed unloaded",
    "snap_energy_mj": "snap",
    "tip_speed_m_per_s": "tip speed",
    "stiffness_n_per_mm": "stiffness",
    "feel.pull_oiled_n": "pull oiled",
    "feel.pull_dry_n": "pull dry",
    "feel.evenness": "evenness",
}
_KEYS = {
    "spring.thickness": "thickness",
    "spring.mid_line": "height of the mid-line",
    "spring.rear_pin": "rear pin",
    "spring.pin_hole": "pin holes",
    "spring.youngs_modulus": "Young's modulus",
    "tang.pivot": "pivot",
    "tang.open": "open face",
    "tang.half_stop": "half-stop face",
    "tang.closed": "closed face",
    "tang.front": "front of the open face",
    "tang.pivot_clearance": "pivot clearance",
    "tang.kick": "kick",
    "friction.spring": "friction at the spring",
    "friction.pivot": "friction at the pivot",
    "pins.middle": "middle pin",
    "pins.liner": "liners",
    "pins.yield": "yield of the pins",
    "blade.edge": "edge",
    "blades": "other blades",
    "blade.nail_nick": "nail nick",
    "targets.openings": "openings wanted",
    "targets.edge_gap": "gap wanted under the edge",
}
_SUFFIXES: tuple[tuple[str, Shown], ...] = (
    ("_n_per_mm", "stiffness"),
    ("_nmm_per_deg", "torque"),
    ("_nmm", "torque"),
    ("_m_per_s", "speed"),
    ("_mpa", "stress"),
    ("_deg", "angle"),
    ("_mj", "energy"),
    ("station_mm", "length"),
    ("_mm", "reading"),
    ("_n", "force"),
)
_KINDS: dict[str, Shown] = {
    "length": "size",
    "stress": "stress",
    "hardness": "hardness",
    "angle": "angle",
    "force": "force",
}


def figure_word(name: str) -> str:
    """Name a figure as people do."""
    word = FIGURES.get(name)
    if word is not None:
        return word
    for unit, _ in _SUFFIXES:
        if unit.startswith("_"):
            name = name.removesuffix(unit)
    return name.replace(".", " ").replace("_", " ")


def figure_kind(name: str) -> Shown:
    """Tell how a figure's numbers are written."""
    return next((kind for suffix, kind in _SUFFIXES if name.endswith(suffix)), "margin")


def key_word(key: str) -> str:
    """Name a dimension as people do; of another blade, whose it is."""
    if key.startswith("blades.") and key.count(".") > 1:
        _, blade, own = key.split(".", 2)
        return f"{key_word('spring.pad' if own == 'pad' else own)} of {blade}"
    return _KEYS.get(key) or key.rpartition(".")[2].replace("_", " ")


def cause_word(cause: Cause) -> str:
    """Name a cause."""
    if cause.sort == "together":
        return "together"
    if ", " in cause.key:
        return "what differs in kind"
    return key_word(cause.key)


def ends(cause: Cause, units: System) -> tuple[str, str]:
    """Write what both designs have; of several numbers, how far they differ."""
    if cause.sort == "kind":
        return _kinds(cause.a, cause, units), _kinds(cause.b, cause, units)
    kind = _key_kind(cause.key)
    if len(set(cause.a)) == len(set(cause.b)) == 1:
        return _value(cause.a[0], kind, units), _value(cause.b[0], kind, units)
    row = row_of(cause.key)
    return "", _by(cause, units) if row is not None and row.form is Form.profile else ""


def _by(cause: Cause, units: System) -> str:
    """Write how much a profile differs, where its stations stay."""
    by = [b - a for a, b in zip(cause.a, cause.b, strict=True)]  # type: ignore[operator]
    low, high = (signed(each, "reading", units) for each in (min(by), max(by)))
    between = low if low == high else f"{low} to {high}"
    return f"{between} {unit_of('reading', units)}" if by else ""


def _kinds(values: tuple[object, ...], cause: Cause, units: System) -> str:
    return _value(values[0], _key_kind(cause.key), units) if len(values) == 1 else ""


def _key_kind(key: str) -> Shown:
    row = row_of(key)
    return "count" if row is None else _KINDS.get(KINDS[row.quantity], "count")


def _value(value: object, kind: Shown, units: System) -> str:
    if value is None:
        return "none"
    if isinstance(value, str):
        return value
    if isinstance(value, list):
        return ", ".join(str(getattr(each, "name", "other")) for each in value) or "none"
    if not isinstance(value, float | int):
        name = getattr(value, "name", None)
        return name.replace("_", " ") if isinstance(name, str) else "other"
    return f"{value:.6g}" if kind == "count" else text(value, kind, units)


def signed(value: float | None, kind: Shown, units: System) -> str:
    """Write a change with its sign, with a digit more where it would be lost; no unit."""
    if value is None:
        return "-"
    size = amount(value, kind, units)
    if not float(size):
        return "0"
    return f"{'+' if value > 0 else '-'}{size}"


def amount(value: float, kind: Shown, units: System) -> str:
    """Write the size of a change, without sign and unit."""
    if kind == "margin":
        return f"{abs(value):.3f}"
    if STYLES[units][kind].trim:
        return number(abs(value), kind, units)
    return scatter(abs(value), kind, units)
