"""What the sliders of a panel move, how far, and what that is as a change of the design."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.report.display import STYLES
from backspring.units import System

BLADE = "blade angle"
_HARDNESS_HRC = (38.0, 60.0)
# As shares of what the design has.
_THICKNESS, _PRELOAD, _CORNER = (0.7, 1.3), (0.3, 1.7), (0.3, 2.0)
_STEPS_OF_A_SIZE = {"mm": 0.01, "in": 0.0005}


@dataclass(frozen=True)
class Setting:
    """One slider, in the units that are shown, and the change of the design that a value means."""

    name: str
    start: float
    least: float
    most: float
    step: float
    unit: str
    change: Callable[[float], dict[str, Any]]

    def moved(self, value: float) -> bool:
        """Whether a value is another one than the design's."""
        return abs(value - self.start) > 1e-9


def settings_of(design: Design, system: System) -> list[Setting]:
    """Return the settings that a design has: the four sizes, and where the blade is drawn."""
    found = [_thickness(design, system), _preload(design, system)]
    if design.steel.get("hardness_hrc") is not None:
        found.append(_hardness(design))
    if not design.core.tang.outline:
        found.append(_corner(design, system))
    return [*found, Setting(BLADE, 0.0, 0.0, 180.0, 1.0, "deg", lambda _: {})]


def changes_of(settings: list[Setting], values: Mapping[str, float]) -> dict[str, Any]:
    """Put together what the moved sliders change, as design.replace() takes it."""
    changes: dict[str, Any] = {}
    for setting in settings:
        if setting.moved(values[setting.name]):
            changes |= setting.change(values[setting.name])
    return changes


def _size(
    name: str,
    start_mm: float,
    shares: tuple[float, float],
    system: System,
    change: Callable[[float], dict[str, Any]],
) -> Setting:
    """Make a slider for a length; `change` gets it in mm."""
    style, step = STYLES[system]["length"], _STEPS_OF_A_SIZE[system]
    start = round(start_mm / style.size, 5)
    least, most = (round(max(step, step * round(share * start / step)), 5) for share in shares)
    return Setting(
        name,
        start,
        min(least, start),
        max(most, start),
        step,
        style.unit,
        lambda value: change(round(value * style.size, 5)),
    )


def _thickness(design: Design, system: System) -> Setting:
    at_pin_mm = _core.thickness_mm(design.core.spring.thickness, 0.0)
    return _size(
        "thickness at the middle pin",
        at_pin_mm,
        _THICKNESS,
        system,
        lambda mm: {"spring.thickness_scale": round(mm / at_pin_mm, 5)},
    )


def _preload(design: Design, system: System) -> Setting:
    start_mm = design.core.fit.preload_mm
    return _size("preload", start_mm, _PRELOAD, system, lambda mm: {"fit.preload": mm})


def _corner(design: Design, system: System) -> Setting:
    start_mm = design.core.tang.corner_open_mm
    return _size("corner radius", start_mm, _CORNER, system, lambda mm: {"tang.corner_radius": mm})


def _hardness(design: Design) -> Setting:
    start = round(float(design.steel["hardness_hrc"]), 2)
    stated = design.to_dict()["spring"]
    # A hardness takes the place of the temper that it was worked out from.
    without: dict[str, Any] = {
        f"spring.{key}": None for key in ("temper", "temper_time") if key in stated
    }
    least, most = min(_HARDNESS_HRC[0], start), max(_HARDNESS_HRC[1], start)
    return Setting(
        "hardness",
        start,
        least,
        most,
        0.5,
        "HRC",
        lambda value: {**without, "spring.hardness": value},
    )
