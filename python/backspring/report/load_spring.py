"""Getting the spring over the tang as a report for the bench."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring import _core
from backspring.report.display import number, text, unit_of
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.wrapping import that_fits
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.load_spring import SpringLoading

# Common practice, no source.
CAUTIONS = (
    "A spring under load can leave hook or clamp faster than the eye follows: wear eye protection, "
    "stand out of its line, keep fingers from between spring and tang.",
    "The margin is for the plain section: a pin hole or a sharp kink begins to give earlier. It "
    "does not replace a test.",
)
# Of the way from the middle pin to the nearest place behind the tang.
_SHARES = (1.0, 0.8, 0.6, 0.4)
_SAME_PLACE_MM = 0.005


def loading_report(loading: SpringLoading, units: System | None = None) -> Report:
    """Lay out a loading in the given units, the design's own when none are given."""
    units = units or loading.design.units
    return Report(headline(loading, units), tuple(_blocks(loading, units)))


def headline(loading: SpringLoading, units: System) -> str:
    """Answer in one line: how hard to pull where, and whether the spring bears it."""
    found = loading.result
    force, place = text(found.force_n, "force", units), text(found.at_mm, "length", units)
    parts = [f"pull the spring out with {force} at {place}"]
    if found.yield_margin is not None:
        margin = f"yield margin {number(found.yield_margin, 'margin', units)}"
        if found.yield_margin < 1.0:
            margin = f"it takes a set ({margin})"
        elif not found.met:
            margin += f", wanted {number(found.wanted_margin, 'margin', units)}"
        parts.append(margin)
    parts.append(f"it moves {text(found.movement_mm, 'length', units)} there")
    return that_fits(loading.design.title, *parts)


def _blocks(loading: SpringLoading, units: System) -> Iterator[Block]:
    yield Lines("Both pins in, blade out", tuple(_pulled(loading.result, units)))
    yield _stations(loading, units)
    if loading.result.rear_pin_last is not None:
        yield Lines("The other way in, rear pin last, blade open", tuple(_last(loading, units)))
    yield Lines("Caution", CAUTIONS)


def _pulled(found: _core.SpringLoading, units: System) -> Iterator[str]:
    clearance = text(found.pull.clearance_mm, "length", units)
    clears = text(found.clears_last_mm, "length", units)
    yield f"the pad clears the tang by {clearance}, least of all at {clears}"
    if found.stop_before_mm is not None and found.stop_before_low_mm is not None:
        stress = text(found.peak_stress_mpa, "stress", units)
        station = text(found.peak_stress_station_mm, "length", units)
        margin = _least_margin(found, units)
        yield f"worst stress {stress} at {station}, yield margin {margin}"
        least = text(found.stop_before_low_mm, "length", units)
        most = text(found.stop_before_mm, "length", units)
        yield (
            f"stop before {least}: past {most} the spring takes a set"
            if least != most
            else f"stop before {most}: past it the spring takes a set"
        )
    if found.rear_pin_force_n is not None and found.middle_pin_force_n is not None:
        rear = text(found.rear_pin_force_n, "force", units)
        middle = text(found.middle_pin_force_n, "force", units)
        yield f"the rear pin holds {rear}, the middle pin {middle}"


def _least_margin(found: _core.SpringLoading, units: System) -> str:
    margin = number(found.yield_margin, "margin", units)
    least = number(found.yield_margin_low, "margin", units)
    return margin if margin == least else f"{margin} ({least} for the weakest of this steel)"


def _stations(loading: SpringLoading, units: System) -> TextTable:
    """Tell the same elsewhere, nearest to the tang first."""
    nearest = _core.nearest_pull_mm(loading.design.core)
    places: list[float] = []
    for place in (*(share * nearest for share in _SHARES), loading.result.at_mm):
        station = max(place, _core.LEAST_PULL_STATION_MM)
        if all(abs(station - each) > _SAME_PLACE_MM for each in places):
            places.append(station)
    rows = []
    for each in loading.at(sorted(places, reverse=True)):
        rows.append(
            (
                text(each.at_mm, "length", units),
                number(each.force_n, "force", units),
                number(each.movement_mm, "length", units),
                number(each.yield_margin, "margin", units),
                "" if each.met else "missed",
            )
        )
    heads = (
        "station",
        f"force {unit_of('force', units)}",
        f"movement {unit_of('length', units)}",
        "yield margin",
        "",
    )
    return TextTable("Pull as near the tang as can be", heads, tuple(rows))


def _last(loading: SpringLoading, units: System) -> Iterator[str]:
    last, lever = loading.result.rear_pin_last, loading.result.pull.lever_mm
    if last is None:
        return
    away = text(last.hole_to_go_mm, "length", units)
    force = text(last.force_n, "force", units)
    yield f"the rear hole stands {away} from its pin; {force} there brings it home"
    if lever is not None and last.lever_force_n is not None:
        arm, hand = text(lever, "length", units), text(last.lever_force_n, "force", units)
        yield f"by a bar clamped to the spring, {arm} behind the middle pin: {hand}"
