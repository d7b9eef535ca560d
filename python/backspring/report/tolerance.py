"""A tolerance study as a report for people: one line that answers, then tables."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring import _core
from backspring.many.dimensions import unit_of_key
from backspring.report.check import CAUTION
from backspring.report.display import Shown, number, scatter, text, unit_of
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.tolerance import Tolerance

RESULTS: dict[str, tuple[str, Shown]] = {
    "peak_pull_n": ("peak pull", "force"),
    "peak_torque_nmm": ("peak torque", "torque"),
    "travel_peak_stress_mpa": ("worst stress", "stress"),
    "yield_margin": ("yield margin", "margin"),
    "reading_loaded_open_mm": ("open, loaded", "reading"),
    "reading_loaded_half_stop_mm": ("half-stop, loaded", "reading"),
    "reading_loaded_closed_mm": ("closed, loaded", "reading"),
}
_TARGETS: dict[str, Shown] = {
    "pull": "force",
    "yield_margin": "margin",
    "reading": "reading",
    "openings": "margin",
    "edge_gap": "length",
}
_DIMENSIONS: dict[str, Shown] = {"mm": "reading", "MPa": "stress"}


def tolerance_report(study: Tolerance, units: System | None = None) -> Report:
    """Lay out a study in the given units, the design's own when none are given."""
    units = units or study.design.units
    return Report(headline(study), tuple(_blocks(study, units)))


def headline(study: Tolerance) -> str:
    """Answer in one line: what share of knives meets the targets, and the chance of a batch."""
    chance, name = study.result.batch, study.design.title
    if chance is None:
        return f"{name}: stopped before anything was worked out"
    judged = "meet the targets" if study.targets else "work as slip joints"
    one = {"meet the targets": "meets them", "work as slip joints": "works"}[judged]
    many = {"meets them": "meet them", "works": "work"}[one]
    knives = f"the knife {one}" if study.batch == 1 else f"all {study.batch} of a batch {many}"
    return (
        f"{name}: {_percent(chance.share)} of knives {judged} "
        f"({_percent(chance.share_low)} to {_percent(chance.share_high)}), "
        f"chance that {knives}: {_percent(chance.chance)}"
    )


def _percent(share: float) -> str:
    """Write a share; never all or none of it by rounding."""
    if share in (0.0, 1.0):
        return f"{100 * share:.0f} %"
    if share < 0.001:
        return "under 0.1 %"
    return "over 99.9 %" if share > 0.999 else f"{100 * share:.1f} %"


def _blocks(study: Tolerance, units: System) -> Iterator[Block]:
    yield TextTable(
        "Results",
        (
            "",
            "as drawn",
            "mean",
            "sd",
            "combined tolerance",
            "1 %",
            "99 %",
            "worst low",
            "worst high",
        ),
        tuple(_result(each, units) for each in study.result.results),
    )
    if study.targets:
        rows = tuple(_target(study, each, units) for each in study.targets)
        yield TextTable("Targets", ("", "wanted", "met by"), rows)
    yield _spreads(study, units)
    if any(each.shares for each in study.result.results):
        yield _shares(study)
    if notices := study.notices:
        yield Lines("Notices", tuple(notice.text(units) for notice in notices))
    yield Lines("How", tuple(_method(study)))
    yield Lines("Caution", (CAUTION,))


def _result(each: _core.ResultSpread, units: System) -> tuple[str, ...]:
    local, sample = each.local, each.sample
    name, kind = RESULTS[local.name]
    low, high = sample.quantiles[0], sample.quantiles[-1]
    values = (local.nominal, sample.mean, sample.sd, local.root_sum_square_sd)
    shown = (*values, low, high, local.worst_low, local.worst_high)
    unit = unit_of(kind, units)
    cells = [
        scatter(value, kind, units)
        if place in (2, 3) and math.isfinite(value)
        else number(value if math.isfinite(value) else None, kind, units)
        for place, value in enumerate(shown)
    ]
    return f"{name} {unit}".rstrip(), *cells


def _target(study: Tolerance, target: _core.TargetShare, units: System) -> tuple[str, ...]:
    kind, low, high = _TARGETS[target.name], target.low, target.high
    wanted = (
        f"at least {text(low, kind, units)}"
        if high is None
        else f"at most {text(high, kind, units)}"
        if low is None
        else f"{number(low, kind, units)} to {text(high, kind, units)}"
    )
    if not target.stated:
        wanted += " (none stated: at the likely strength)"
    share = target.met / study.result.rows if study.result.rows else 0.0
    return target.name.replace("_", " "), wanted, _percent(share)


def _spreads(study: Tolerance, units: System) -> TextTable:
    rows = []
    for spread in study.spreads:
        kind = _DIMENSIONS.get(unit_of_key(spread.key))
        values = (
            _core.dimension_value(study.design.core, spread.key),
            _core.standard_deviation(spread),
            _core.farthest(spread),
        )
        cells = [
            f"{v:.4g}" if kind is None else text(v, kind, units) for v in values if v is not None
        ]
        rows.append((spread.key, *cells, spread.kind.name))
    return TextTable("Spreads", ("", "as drawn", "sd", "worst", ""), tuple(rows))


def _shares(study: Tolerance) -> TextTable:
    shown = [each for each in study.result.results if each.shares]
    heads = ("", *(RESULTS[each.local.name][0] for each in shown))
    rows = tuple(
        (spread.key, *(f"{100 * max(each.shares[place].total, 0.0):.0f} %" for each in shown))
        for place, spread in enumerate(study.spreads)
    )
    return TextTable("What causes the spread", heads, rows)


def _method(study: Tolerance) -> Iterator[str]:
    yield f"{study.result.rows} quasi-random knives, seed {study.seed}"
    yield "combined tolerance: root of the sum of squares of slope times standard deviation"
    yield (
        "worst: every dimension at that end of its tolerance, or at three standard deviations, "
        "which its slope says"
    )
    yield "what causes the spread: share of the variance, with what each does together with others"
    yield "limits of the share: 95 %, as of random draws; quasi-random ones are steadier"
