"""The sections of a page that are of one blade: results, strength, levers, allowance, changes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.errors import NoConvergence
from backspring.fit.levers import levers
from backspring.fit.plan import allowance
from backspring.fit.result import Allowance
from backspring.question.sensitivity import gradient
from backspring.report.budget import budget_parts
from backspring.report.check import target_row
from backspring.report.display import STYLES, Shown, Style
from backspring.report.fit import allowance_report
from backspring.report.levers import levers_report, levers_table
from backspring.report.page_drawing import drawing
from backspring.report.page_parts import Part, Section, Words
from backspring.report.page_results import result_parts
from backspring.report.sentences import margin_sentence
from backspring.report.tables import Lines, TextTable
from backspring.report.to_change import to_change
from backspring.report.verdict import HEADS, MEANINGS, label, row
from backspring.unit_table import THOU_MM
from backspring.units import System

if TYPE_CHECKING:
    from backspring import _core
    from backspring.question.check import BladesCheck, Check

# Blocks of an allowance that stand in other places of a page.
_ELSEWHERE = ("Caution", "Left out")
# Lengths of a drawing that a maker may still change, and the figures that are shown to answer.
_DIMENSIONS = {
    "spring.thickness_offset": "spring.thickness, all along",
    "spring.width": "spring.width",
    "spring.rear_pin": "spring.rear_pin",
    "tang.pivot": "tang.pivot",
    "tang.corner_radius": "tang.corner_radius",
    "tang.round_end": "tang.round_end",
    "fit.preload": "fit.preload",
    "fit.dial": "fit.dial",
}
_FIGURES: dict[str, tuple[str, Shown]] = {
    "peak_pull_n": ("pull", "force"),
    "peak_torque_nmm": ("torque", "torque"),
    "travel_peak_stress_mpa": ("worst stress", "stress"),
    "yield_margin": ("yield margin", "margin"),
    "reading_loaded_half_stop_mm": ("half-stop", "reading"),
    "reading_loaded_closed_mm": ("closed", "reading"),
}
_CHANGE: dict[System, tuple[str, float]] = {"mm": ("0.1 mm", 0.1), "in": ("1 thou", THOU_MM)}


def blade_sections(
    check: Check, whole: Check | BladesCheck, units: System, prefix: str
) -> Iterator[Section]:
    """Lay out a blade; `prefix` keeps its drawings apart from those of other blades.

    `whole` is the check of all blades, or the same check again of a blade alone.
    """
    blade = None if whole is check else check.design.blade
    parts: dict[tuple[str, str], Iterator[Part]] = {
        ("results", "Results"): result_parts(check, whole, units, prefix),
        ("strength", "Strength"): _strength(check, units, prefix),
        ("levers", "Levers"): _levers(check, units),
        ("allowance", "Allowance: what to leave unloaded"): _allowance(check, units),
        ("left-out", "What is left out"): budget_parts(check, units),
        ("changes", "If the drawing changes"): _changes(check, units),
    }
    for (key, title), found in parts.items():
        yield Section(key, title, tuple(found), blade)


def _strength(check: Check, units: System, prefix: str) -> Iterator[Part]:
    yield TextTable("Verdict", HEADS, tuple(row(each, units) for each in check.verdict))
    meanings = "; ".join(f"{word}: {meaning}" for word, meaning in MEANINGS.items())
    yield Lines("", (meanings,))
    if check.targets:
        targets = tuple(target_row(target, units) for target in check.targets)
        yield TextTable("Targets", ("", "now", "wanted", ""), targets)
    caption = "Bending stress along the spring, against yield."
    yield drawing(check, "stress", caption, units, f"{prefix}-stress")
    said = _said(check.verdict, units)
    yield Words("The verdict in words", ("", "what it says", "sources"), said)
    yield Lines("What to change", (to_change(check, units),))


def _said(found: list[_core.Margin], units: System) -> tuple[tuple[str, ...], ...]:
    return tuple((label(each), margin_sentence(each, units), _cited(each)) for each in found)


def _cited(margin: _core.Margin) -> str:
    """Name the sources of a margin, each once."""
    return ", ".join(dict.fromkeys(margin.sources)) or "common practice, or the design itself"


def _levers(check: Check, units: System) -> Iterator[Part]:
    yield from levers_report(levers(check.design), units).blocks


def _allowance(check: Check, units: System) -> Iterator[Part]:
    """Lay out what to leave; that no tang gives the reading is worth a sentence as well."""
    try:
        left = allowance(check.design)
    except NoConvergence as error:
        yield Lines("No allowance", (error.text(units),))
        return
    assert isinstance(left, Allowance)
    table = levers_table(left.levers, units)
    report = allowance_report(left, units)
    yield Lines("", (report.headline,))
    for block in report.blocks:
        if block != table and not (isinstance(block, Lines) and block.heading in _ELSEWHERE):
            yield block


def _changes(check: Check, units: System) -> Iterator[Part]:
    """Tell what a little more of a dimension does, before it is cut."""
    slopes = gradient(check.design)
    if "peak_pull_n" in slopes:
        del slopes["peak_torque_nmm"]
    name, step = _CHANGE[units]
    figures = {key: _finer(kind, units) for key, (_, kind) in _FIGURES.items() if key in slopes}
    heads = ("", *(f"{_FIGURES[key][0]} {style.unit}".rstrip() for key, style in figures.items()))
    rows = tuple(
        (
            _DIMENSIONS[key],
            *(_signed(slopes[each][key], step, style) for each, style in figures.items()),
        )
        for key in _DIMENSIONS
        if any(key in slopes[each] for each in figures)
    )
    yield TextTable(f"What {name} more of a dimension changes", heads, rows)
    note = "Slopes, for small changes: check a change before cutting it. + is prouder."
    if any(slopes[each].get(key, 0.0) is None for each in figures for key in _DIMENSIONS):
        note += " - where less of it does not do the opposite of more."
    yield Lines("", (note,))


def _finer(kind: Shown, units: System) -> Style:
    style = STYLES[units][kind]
    return Style(style.unit, style.size, style.decimals + 1)


def _signed(slope: float | None, step: float, style: Style) -> str:
    if slope is None:
        return "-"
    shown = style.number(slope * step)
    return shown if shown.startswith("-") or float(shown) == 0.0 else f"+{shown}"
