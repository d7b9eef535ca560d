"""What pin clearances take under load, and what peening gives back."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.report.display import Shown, reading, text, unit_of
from backspring.report.tables import Block, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Check

_ROWS: tuple[tuple[str, str, Shown], ...] = (
    ("peak_pull_n", "pull", "force"),
    ("travel_peak_stress_mpa", "worst stress", "stress"),
    ("yield_margin", "yield margin", "margin"),
)
READINGS = {"half_stop": "half-stop, loaded", "closed": "closed, loaded"}


def clearance_data(check: Check) -> dict[str, Any]:
    """Clearances ready for JSON; nothing where none is stated."""
    lost = preload_lost_mm(check)
    if lost == 0.0:
        return {}
    peened = None if check.peened is None else figures(check.peened)
    return {"clearance": {"preload_lost_mm": lost, "peened": peened}}


def clearance_blocks(check: Check, units: System) -> Iterator[Block]:
    """Lay out the knife with its pins loose beside the same with peened pins."""
    lost = preload_lost_mm(check)
    if lost == 0.0:
        return
    title = f"Clearances: load takes {text(lost, 'reading', units)} of the preload"
    loose = "on the fixture" if check.on_fixture is None else "pins loose"
    columns = {loose: check}
    if check.peened is not None:
        columns["pins peened tight"] = check.peened
    yield figures_table(title, columns, units)


def figures_table(title: str, columns: Mapping[str, Check], units: System) -> TextTable:
    """Lay out checks side by side, by what each of them is of; the first one's rows."""
    shown = [figures(each) for each in columns.values()]
    now = shown[0]
    rows = [
        (label, *(text(each[name], kind, units) for each in shown))
        for name, label, kind in _ROWS
        if now[name] is not None
    ]
    for name, label in READINGS.items():
        key = f"reading_loaded_{name}_mm"
        if now[key] is not None:
            unit = unit_of("reading", units)
            rows.append((f"{label} {unit}", *(reading(each[key], units) for each in shown)))
    return TextTable(title, ("", *columns), tuple(rows))


def preload_lost_mm(check: Check) -> float:
    """Preload that clearances take at the pivot."""
    return _core.preload_lost_mm(check.design.core.spring, check.design.core.tang)


def figures(check: Check) -> dict[str, float | None]:
    """Pick the numbers that a change of what holds the pins changes."""
    pulls = [each.peak_pull_n for each in check.strokes if each.peak_pull_n is not None]
    rests = {name: check.positions.get(name) for name in READINGS}
    return {
        "peak_pull_n": max(pulls, default=None),
        "travel_peak_stress_mpa": check.travel.peak_stress_mpa,
        "yield_margin": check.travel.yield_margin,
        **{
            f"reading_loaded_{name}_mm": None if rest is None else rest.reading_loaded_mm
            for name, rest in rests.items()
        },
    }
