"""What a page rests on: values filled in, and what the model takes as known, with sizes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

import numpy as np

from backspring import _core
from backspring.report.display import number, text
from backspring.report.page_parts import Part, Words
from backspring.report.tables import Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.question.check import Check

_SPACING_MM = 0.2
# Against a solution that lets pressure spread, and a trial with play at both pins.
_POINT_MM, _PLAY_MM = 0.0007, 0.02
_NOT_KNOWN = "not modelled, size not known"


def assumption_parts(design: Design, checks: Sequence[Check], units: System) -> Iterator[Part]:
    """List what was filled in, what to know of what was stated, and the model's limits."""
    if filled := design.assumptions(units):
        yield Lines("Assumed, for the file does not say", filled)
    if notices := design.notices:
        yield Lines("To know of what the file says", tuple(each.text(units) for each in notices))
    rows = (*_of_design(design, checks, units), *_of_model(units), *_of_blades(checks))
    yield Words("What the numbers rest on", ("taken as known", "how far that can be off"), rows)


def _of_design(design: Design, checks: Sequence[Check], units: System) -> Iterator[tuple[str, str]]:
    slope = max(map(_steepest_slope, checks))
    square = number(slope**2, "change", units)
    yield (
        "the spring bends little: slopes are small",
        f"up to {slope:.3f} rad on the way: off by the order of its square, {square} %",
    )
    steel = design.steel
    modulus, sd = steel["youngs_modulus_mpa"], steel["youngs_modulus_sd_mpa"]
    share = text(2.0 * sd / modulus, "change", units)
    yield (
        f"Young's modulus {text(modulus, 'modulus', units)}",
        f"+-{share} (two standard deviations); pull and stress go with it",
    )
    yield _strength(steel, checks, units)
    for check in checks:
        feel = check.feel
        if feel.pull_oiled_n is not None and feel.pull_dry_n is not None:
            name = f", {check.design.blade}" if len(checks) > 1 else ""
            oiled, dry = (
                text(pull, "force", units) for pull in (feel.pull_oiled_n, feel.pull_dry_n)
            )
            yield f"friction{name}", f"peak pull {oiled} oiled, {dry} dry"


def _steepest_slope(check: Check) -> float:
    along = _core.spring_along(check.design.core, check.travel.peak_stress_angle_deg, _SPACING_MM)
    return float(np.abs(np.gradient(along.deflection_mm, along.station_mm)).max())


def _strength(steel: dict[str, float], checks: Sequence[Check], units: System) -> tuple[str, str]:
    low, high = (text(steel[f"yield_{end}_mpa"], "stress", units) for end in ("low", "high"))
    what = f"yield stress {text(steel['yield_mpa'], 'stress', units)}, at 0.2 % proof"
    if low == high:
        return what, "as stated; a little set begins below it"
    travels = [check.travel for check in checks]
    worst = max(travels, key=lambda travel: travel.peak_stress_mpa)
    ends = (worst.yield_margin_low, worst.yield_margin_high)
    margins = " to ".join(number(each, "margin", units) for each in ends)
    return what, f"{low} to {high}, so a margin of {margins}; a little set begins below it"


def _of_model(units: System) -> Iterator[tuple[str, str]]:
    point, play = (text(each, "size", units) for each in (_POINT_MM, _PLAY_MM))
    yield "the tang presses at one place", f"under {point} in readings, 0.06 % in force"
    yield "the spring is a beam of varying section with holes", "0.7 % in stiffness"
    yield (
        "peak stress is nominal, of the net section",
        "holes, kinks and shoulders have margins of their own, within 8 %",
    )
    yield (
        "no play at pins and pivot but what is stated",
        f"{play} at both pins takes 1.4 % of the pull of a hand-size knife",
    )
    yield (
        "a set: elastic, then perfectly plastic",
        "hardening and notches left out, size not known",
    )
    yield (
        "fatigue in air, ground faces and drilled holes unless stated",
        "margin and life are of 99 springs of 100; the life's band is an envelope, not odds",
    )
    yield "rap: eased by a hand, or let go without hand and gravity", "a lower and an upper limit"
    yield (
        "pins stand still unless a frame is given",
        "liners of common sizes take 2 to 8 % of the pull",
    )
    yield "moved slowly", _NOT_KNOWN


def _of_blades(checks: Sequence[Check]) -> Iterator[tuple[str, str]]:
    if len(checks) > 1:
        yield "a blade that stands still seats anew, without friction", _NOT_KNOWN
        yield "blades do not strike each other", "not looked at"
