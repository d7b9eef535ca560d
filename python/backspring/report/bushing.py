"""The turning test of a bushing for people."""

from __future__ import annotations

from collections.abc import Iterator

from backspring.question.bushing import Bushing
from backspring.report.display import reading, text, unit_of
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

_POSITIONS = {"half_stop": "half-stop", "closed": "closed"}
_UNKNOWN = {
    "half_stop": "what a round bushing reads at the half-stop: an oval one errs there by up to "
    "twice its amplitude, an eccentric one by 1.4 times",
    "closed": "what a round bushing reads closed: an eccentric one errs there by up to twice its "
    "amplitude",
    "eccentricity": "eccentricity: read three quarters, or two opposite ones in both positions",
    "oval": "oval: it shows at the half-stop only, from readings in at least three quarters with "
    "closed read too",
}


def bushing_report(bushing: Bushing, units: System | None = None) -> Report:
    """Lay out a turning test in the given units, mm when none are given."""
    units = units or "mm"
    return Report(_headline(bushing, units), tuple(_blocks(bushing, units)))


def _headline(bushing: Bushing, units: System) -> str:
    positions = [
        f"{name} {_with_unit(value, units)}"
        for key, name in _POSITIONS.items()
        if (value := getattr(bushing.result, f"{key}_mm")) is not None
    ]
    if not positions:
        return "Bushing: not known yet what a round one will read"
    return f"Bushing: a round one will read {', '.join(positions)}"


def _with_unit(value_mm: float, units: System) -> str:
    shown = reading(value_mm, units)
    number, space, side = shown.partition(" ")
    return f"{number} {unit_of('reading', units)}{space}{side}" if space else shown


def _blocks(bushing: Bushing, units: System) -> Iterator[Block]:
    heads = (
        "bushing turned by",
        *(f"{each} {unit_of('reading', units)}" for each in _POSITIONS.values()),
    )
    rows = tuple(
        (
            f"{90 * each.quarter} deg",
            *(_cell(getattr(each, f"{key}_mm"), units) for key in _POSITIONS),
        )
        for each in bushing.readings
    )
    yield TextTable("Readings", heads, rows)
    if found := tuple(_found(bushing, units)):
        yield Lines("Found", found)
    if bushing.unknown:
        yield Lines("Not known", tuple(_UNKNOWN[each] for each in bushing.unknown))


def _cell(value_mm: float | None, units: System) -> str:
    return "-" if value_mm is None else reading(value_mm, units)


def _found(bushing: Bushing, units: System) -> Iterator[str]:
    result = bushing.result
    if result.eccentricity_mm is not None:
        yield f"hole off the middle of the bushing by {_text(result.eccentricity_mm, units)}"
    if result.oval_mm is not None:
        yield (
            f"oval by {_text(result.oval_mm, units)} in radius along the quarters; one that lies "
            "between them shows in none of the readings and does not falsify them"
        )
    if result.scatter_mm is not None:
        yield f"left over, which no bushing explains: {_text(result.scatter_mm, units)} a reading"


def _text(value_mm: float, units: System) -> str:
    return text(value_mm, "reading", units)
