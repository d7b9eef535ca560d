"""What is expected of a knife before anything is measured on it.

Common practice, no source, but for the steel's own band.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from backspring import _core
from backspring.design.design import Design
from backspring.report.display import Shown

FACE_MM, KICK_MM, TRIP_MM = 1.0, 0.5, 1.0
# A nose that stands no higher is none: the closed face itself bears.
LEAST_KICK_MM = 0.02
TILT_RAD, PLAY_MM, ROOT_SHARE = 0.002, 0.02, 0.1
FRICTION, MOST_FRICTION = _core.FRICTION_SPREAD, 0.6
THICKNESS_MM, WIDTH_MM, PRELOAD_MM, CORNER_MM = 0.02, 0.01, 0.05, 0.1
HARDNESS_HRC = 1.0
# Both pins in: the stop at open moves a reading by up to 0.018 mm, the liners by up to 0.010 mm.
LOADED_MM = 0.02
# A steel of which one figure alone is known is no surer than this.
_LEAST_MODULUS = 0.001
DEPTH_MM, DEPTH_SHARE = 0.003, 0.05
# Where readings belie the depths stated, these were aimed at and not measured.
AIMED_SHARE = 0.2
# Unknowns by their keys in the design file.
_STATED = {
    "half_stop_face_mm": "half_stop_face",
    "closed_face_mm": "closed_face",
    "kick_height_mm": "kick",
    "pad_tilt_rad": "pad_tilt",
    "pivot_play_mm": "pivot_play",
    "extra_root_share": "extra_root",
    "friction": "friction",
    "youngs_modulus_mpa": "youngs_modulus",
    "thickness_mm": "thickness",
    "width_mm": "width",
    "preload_mm": "preload",
    "corner_radius_mm": "corner_radius",
    "hardness_hrc": "hardness",
    "loaded_offset_mm": "loaded_offset",
}
# Mean and deviation of a normal spread about nothing of which only the upper half can be.
_HALF_MEAN = math.sqrt(2.0 / math.pi)
_HALF_SD = math.sqrt(1.0 - 2.0 / math.pi)


@dataclass(frozen=True, slots=True)
class Leeway:
    """How far a log is believed to the letter.

    `depth_share` is how well depths are known that were stated, `offset` widens what is expected
    of the loaded readings' offset, `friction` that of friction, `dial` how well readings repeat.
    `by_reading`: what was last read with both pins in is so.
    """

    depth_share: float = DEPTH_SHARE
    offset: float = 1.0
    friction: float = 1.0
    dial: float = 1.0
    by_reading: bool = False


@dataclass(frozen=True, slots=True)
class Prior:
    """What is expected of one unknown: value, standard deviation and bounds.

    `broad`: so wide that it says nothing beside a single measurement. `drawn` is added to the
    value where it is shown, of the kind `shown`.
    """

    name: str
    expected: float
    sd: float
    least: float = -math.inf
    greatest: float = math.inf
    broad: bool = False
    drawn: float = 0.0
    shown: Shown = "reading"


def half_normal(name: str, sd: float) -> Prior:
    """Expect no less than nothing: mean and deviation of the half that is left."""
    return Prior(name, _HALF_MEAN * sd, _HALF_SD * sd, least=0.0)


def priors_of(design: Design, root_scale: float) -> list[Prior]:
    """List the unknowns of a knife, but for what was ground, against its drawing.

    What the design states in `[priors]` takes the place of common practice.
    """
    stated = design.priors
    return [_as_stated(each, stated, design) for each in _usual(design, root_scale)]


def _usual(design: Design, root_scale: float) -> list[Prior]:
    core, steel = design.core, design.steel_figures
    tang, root = core.tang, _core.make_flexibility(core.spring).root_rotation_rad_per_nmm
    friction, kick = core.friction, _kick_mm(core)
    corner = min(tang.corner_open_mm, tang.corner_closed_mm)
    low = min(friction.spring, friction.pivot)
    high = max(friction.spring, friction.pivot)
    modulus = core.spring.elastic.youngs_modulus_mpa
    modulus_sd = max(steel["youngs_modulus_sd_mpa"], _LEAST_MODULUS * modulus)
    hardness = core.hardness.spring_hrc or 0.0
    hardness_sd = steel["hardness_sd_hrc"] or HARDNESS_HRC
    return [
        Prior("half_stop_face_mm", 0.0, FACE_MM, broad=True),
        Prior("closed_face_mm", 0.0, FACE_MM, broad=True),
        Prior("kick_height_mm", 0.0, KICK_MM, LEAST_KICK_MM - kick, broad=True, drawn=kick),
        Prior("pad_tilt_rad", 0.0, TILT_RAD, shown="tilt"),
        half_normal("pivot_play_mm", PLAY_MM),
        Prior("extra_root_share", 0.0, ROOT_SHARE, least=-root / root_scale, shown="change"),
        Prior(
            "friction", 0.0, FRICTION, -low, MOST_FRICTION - high, False, friction.spring, "margin"
        ),
        Prior("youngs_modulus_mpa", 0.0, modulus_sd, drawn=modulus, shown="modulus"),
        Prior("thickness_mm", 0.0, THICKNESS_MM),
        Prior("width_mm", 0.0, WIDTH_MM, drawn=core.spring.width_mm),
        Prior("preload_mm", 0.0, PRELOAD_MM, drawn=core.fit.preload_mm),
        Prior("corner_radius_mm", 0.0, CORNER_MM, least=-corner, drawn=tang.corner_open_mm),
        Prior("hardness_hrc", 0.0, hardness_sd, drawn=hardness, shown="hardness"),
        Prior("loaded_offset_mm", 0.0, LOADED_MM),
    ]


def _as_stated(usual: Prior, stated: Mapping[str, tuple[float, float]], design: Design) -> Prior:
    name = _STATED[usual.name]
    if name not in stated:
        return usual
    expected, sd = stated[name]
    if name == "pad_tilt":
        expected, sd = math.radians(expected), math.radians(sd)
    if name == "friction":
        expected -= design.core.friction.spring
    if name == "pivot_play" and expected == 0.0:
        return half_normal(usual.name, sd)
    return replace(usual, expected=expected, sd=sd, broad=False)


def stated_in(design: Design) -> set[str]:
    """Name the unknowns of which the design itself states what is expected."""
    return {name for name, key in _STATED.items() if key in design.priors}


def depth_prior(name: str, depth_mm: float | None, share: float) -> Prior:
    """Expect of a trip to the grinder what was stated of it, or nearly anything."""
    if depth_mm is None:
        return Prior(name, 0.0, TRIP_MM, least=0.0, broad=True)
    return Prior(name, depth_mm, DEPTH_MM + share * depth_mm, least=0.0)


def _kick_mm(core: _core.Design) -> float:
    return 0.0 if core.tang.kick is None else core.tang.kick.height_mm
