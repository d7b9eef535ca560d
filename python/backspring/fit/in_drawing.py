"""One knife as a drawing can hold it.

Tilt, play, rotation at the root and what the model leaves out have no place in a drawing. To first
order the faces and Young's modulus stand in for them, so that the drawing reads and pulls alike.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

import numpy as np

from backspring import _core
from backspring.fit.causes import PLACE
from backspring.fit.knife_model import Array
from backspring.fit.log_entry import SPRING_FACES
from backspring.fit.yield_spread import yield_spread
from backspring.many.spreads import SpreadsTogether, can_spread, ordinary_spreads, spread_key

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.fit.estimate import FitEstimate

_STAND_IN = {
    "half_stop_loaded_mm": "half_stop_face_mm",
    "closed_loaded_mm": "closed_face_mm",
    "peak_pull_n": "youngs_modulus_mpa",
}
_NOT_DRAWN = ("pad_tilt_rad", "pivot_play_mm", "extra_root_share", "loaded_offset_mm")
# Keys of a design, and the causes that move each: a depth off a face lowers it.
_KEYS: dict[str, dict[str, float]] = {
    "fit.preload": {"preload_mm": 1.0, "open": -1.0},
    "spring.thickness_offset": {"thickness_mm": 1.0},
    "spring.width": {"width_mm": 1.0},
    "spring.youngs_modulus": {"youngs_modulus_mpa": 1.0},
    "friction.offset": {"friction": 1.0},
    "tang.open": {"open": -1.0},
    "tang.half_stop": {"half_stop": -1.0},
    "tang.closed": {"closed": -1.0},
    "tang.kick.height": {"closed": 1.0, "kick": -1.0},
    "tang.corner_radius": {"corner_radius_mm": 1.0},
}
_UNITS = {"spring.youngs_modulus": " MPa", "friction.offset": ""}


def drawn_alike(found: FitEstimate) -> _core.Design:
    """Return the likely knife as a drawing that reads and pulls alike."""
    rows = found.rows
    return rows.model.design(rows.causes(_standing_in(found) @ found.x, len(rows.ground)))


def spreads_of(found: FitEstimate, likely: Design) -> SpreadsTogether:
    """Return how sure each number of this knife's drawing is, and how they go together.

    What no log tells, as the pivot's place, has the spread of an ordinary bench.
    """
    rows = found.rows
    causes = rows.by_unknown[len(rows.ground)] @ _standing_in(found)
    by_key = {
        key: sum(by * causes[PLACE[name]] for name, by in causes_of.items())
        for key, causes_of in _KEYS.items()
    }
    slopes = {
        spread_key(likely, key): slope
        for key, slope in by_key.items()
        if np.any(slope != 0.0) and can_spread(likely, spread_key(likely, key))
    }
    turn = np.array(list(slopes.values()))
    covariance = turn @ found.covariance @ turn.T
    sds = np.sqrt(np.diag(covariance))
    texts = {
        key: f"sd {float(sd)!r}{_UNITS.get(key, ' mm')}"
        for key, sd in zip(slopes, sds, strict=True)
    }
    rest = ordinary_spreads(likely)
    if "spring.yield" in rest:
        rest["spring.yield"] = f"sd {_yield_sd_mpa(found)!r} MPa"
    return SpreadsTogether(rest | texts, tuple(slopes), covariance)


def _yield_sd_mpa(found: FitEstimate) -> float:
    """Work out what hardness and the steel's band leave open, as for the margin of the log."""
    strength = yield_spread(found.design, found.now)
    hardness = found.unknowns.get("hardness_hrc")
    if strength is None:
        return 0.0
    of_hardness = 0.0 if hardness is None else hardness.sd * strength.per_hrc_mpa
    return math.hypot(of_hardness, strength.share * strength.yield_mpa)


def _standing_in(found: FitEstimate) -> Array:
    """Unknowns of the drawing that stands in for the knife, by those of the knife."""
    rows, figures = found.rows, found.figures
    stand_in = {name: rows.place[by] for name, by in _STAND_IN.items() if name in figures}
    slopes = np.array([figures[name].slopes for name in stand_in])
    undrawn = [rows.place[name] for name in _undrawn(found)]
    left_out = undrawn + [
        place
        for place, entry in enumerate(rows.ground, start=rows.first_depth)
        if entry.face in SPRING_FACES
    ]
    instead = list(stand_in.values())
    turned = np.eye(len(found.x))
    turned[np.ix_(instead, left_out)] = np.linalg.lstsq(
        slopes[:, instead], slopes[:, left_out], rcond=None
    )[0]
    turned[undrawn, undrawn] = 0.0
    return turned


def _undrawn(found: FitEstimate) -> Iterator[str]:
    yield from _NOT_DRAWN
    tang = found.now.tang
    # One key for both corners, which must be alike to be spread; an outline has them in its shape.
    if tang.outline or tang.corner_open_mm != tang.corner_closed_mm:
        yield "corner_radius_mm"
