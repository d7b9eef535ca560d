"""A check as a report for people: one line that answers, then tables."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from backspring.report.beside import beside_blocks, head, headed, stroke_name
from backspring.report.budget import budget_blocks
from backspring.report.check_steel import steel_lines
from backspring.report.clearance import clearance_blocks
from backspring.report.closed_blade import closed_blade_blocks
from backspring.report.display import Shown, number, reading, text
from backspring.report.feel import feel_blocks
from backspring.report.frame import frame_blocks
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.to_change import HEADING, to_change
from backspring.report.verdict import verdict_blocks
from backspring.report.whole_back import whole_back_blocks
from backspring.report.wrapping import that_fits
from backspring.units import System

if TYPE_CHECKING:
    from backspring import _core
    from backspring.question.check import Beside, Check
    from backspring.question.targets import TargetResult

CAUTION = (
    "A computed margin does not replace a test. Wear eye protection whenever a spring is under "
    "load."
)
# What a terminal shows without folding.
WIDTH = 80
TARGET_KINDS: dict[str, Shown] = {
    "pull": "force",
    "yield_margin": "margin",
    "reading": "reading",
    "openings": "margin",
    "edge_gap": "length",
}


def check_report(
    check: Check,
    units: System | None = None,
    assumed: tuple[str, ...] = (),
    everything: bool = False,
) -> Report:
    """Lay out a check in the given units, the design's own when none are given.

    `assumed` are sentences on values that were chosen for the user, put before the defaults;
    `everything` shows all margins of the verdict instead of the first.
    """
    units = units or check.design.units
    blocks = _blocks(check, units, assumed, everything)
    return Report(headline(check, units), tuple(blocks), WIDTH)


def headline(check: Check, units: System) -> str:
    """Answer in one line: what it takes to open, the worst stress, and how near to yield."""
    rows: list[Check | Beside] = [*check.beside] or [check]
    travel = max((row.travel for row in rows), key=lambda each: each.peak_stress_mpa)
    parts = [opening([stroke for row in rows for stroke in row.strokes], units)]
    worst = " at worst" if check.beside else ""
    if travel.yield_margin is not None:
        margin = f"yield margin {number(travel.yield_margin, 'margin', units)}"
        if travel.yield_margin_low != travel.yield_margin_high:
            low, high = travel.yield_margin_low, travel.yield_margin_high
            margin += f" ({number(low, 'margin', units)} to {number(high, 'margin', units)})"
        parts.append(f"{margin}{worst}")
    parts.append(f"peak stress {text(travel.peak_stress_mpa, 'stress', units)}")
    return that_fits(check.design.title, *parts)


def opening(strokes: Sequence[_core.StrokeReport], units: System) -> str:
    """Say what it takes to open a blade."""
    if not strokes:
        return "does not work as a slip joint"
    pulls = [stroke.peak_pull_n for stroke in strokes if stroke.peak_pull_n is not None]
    if pulls:
        return f"opens with {text(max(pulls), 'force', units)}"
    torque = max(stroke.peak_torque_nmm for stroke in strokes)
    return f"opens with a torque of {text(torque, 'torque', units)}"


def _blocks(
    check: Check, units: System, assumed: tuple[str, ...], everything: bool
) -> Iterator[Block]:
    several = bool(check.beside)
    for block in _judged(check, units, everything):
        yield headed(block, after=", in the worst case of the others") if several else block
    for block in _as_it_is(check, units, everything):
        yield headed(block, after=", the others closed") if several else block
    if several:
        yield from beside_blocks("With the other blades", check, units)
    if check.notices:
        yield Lines("Notices", tuple(each.text(units) for each in check.notices))
    yield Lines("Steel", tuple(steel_lines(check.design, units, everything)))
    if left_open := (*assumed, *check.design.assumptions(units)):
        yield Lines("Assumed", left_open)
    yield Lines("Caution", (CAUTION,))
    yield Lines(HEADING, (to_change(check, units),))


def _as_it_is(check: Check, units: System, everything: bool) -> Iterator[Block]:
    if check.strokes:
        yield _strokes(check, units)
        yield _snaps(check, units)
    yield from feel_blocks(check, units)
    yield _positions(check, units)
    yield from frame_blocks(check, units)
    yield from clearance_blocks(check, units)
    yield from closed_blade_blocks(check, units)
    yield from whole_back_blocks(check.along, units)
    yield from budget_blocks(check, units, everything)


def _judged(check: Check, units: System, everything: bool) -> Iterator[Block]:
    if check.targets:
        rows = tuple(target_row(target, units) for target in check.targets)
        yield TextTable("Targets", ("", "now", "wanted", ""), rows)
    yield from verdict_blocks(check.verdict, units, everything)


def _positions(check: Check, units: System) -> TextTable:
    heads = (
        "",
        head("angle", "angle", units),
        head("force", "force", units),
        head("stress", "stress", units),
        head("station", "length", units),
        "yield margin",
        head("loaded", "reading", units),
        head("unloaded", "reading", units),
    )
    rows = tuple(
        (
            name.replace("_", "-"),
            number(each.blade_angle_deg, "angle", units),
            number(each.force_n, "force", units),
            number(each.peak_stress_mpa, "stress", units),
            number(each.peak_stress_station_mm, "length", units),
            number(each.yield_margin, "margin", units),
            "datum"
            if name == "open" and not check.beside
            else reading(each.reading_loaded_mm, units),
            "datum" if name == "open" else reading(each.reading_unloaded_mm, units),
        )
        for name, each in check.positions.items()
    )
    return TextTable("Positions", heads, rows)


def _strokes(check: Check, units: System) -> TextTable:
    pulls = any(stroke.peak_pull_n is not None for stroke in check.strokes)
    kind: Shown = "force" if pulls else "torque"
    what = "pull" if pulls else "torque"
    rows = []
    for stroke in check.strokes:
        opening = (
            (stroke.start_pull_n, stroke.peak_pull_n)
            if pulls
            else (stroke.start_torque_nmm, stroke.peak_torque_nmm)
        )
        closing = stroke.closing_peak_pull_n if pulls else stroke.closing_peak_torque_nmm
        rows.append(
            (
                stroke_name(stroke.from_position, stroke.to_position),
                *(number(each, kind, units) for each in opening),
                number(stroke.peak_torque_angle_deg, "angle", units),
                number(stroke.crest_angle_deg, "angle", units),
                number(closing, kind, units),
            )
        )
    heads = (
        "",
        head(f"start {what}", kind, units),
        head(f"peak {what}", kind, units),
        head("at", "angle", units),
        head("crest", "angle", units),
        head(f"closing peak {what}", kind, units),
    )
    return TextTable("Strokes, opening", heads, tuple(rows))


def _snaps(check: Check, units: System) -> TextTable:
    rows = tuple(
        (
            stroke_name(stroke.from_position, stroke.to_position),
            number(stroke.energy_up_mj, "energy", units),
            number(stroke.energy_released_mj, "energy", units),
            number(stroke.snap_energy_mj, "energy", units),
            number(stroke.tip_speed_m_per_s, "speed", units),
        )
        for stroke in check.strokes
    )
    heads = (
        "",
        *(head(name, "energy", units) for name in ("up", "released", "snap")),
        head("tip", "speed", units),
    )
    return TextTable("Energy and snap", heads, rows)


def target_row(target: TargetResult, units: System) -> tuple[str, ...]:
    """Write one target as a row: what is, what is wanted, met or missed."""
    kind = TARGET_KINDS[target.name]
    low, high = target.low, target.high
    wanted = (
        f"at least {text(low, kind, units)}"
        if high is None
        else (
            f"at most {text(high, kind, units)}"
            if low is None
            else f"{number(low, kind, units)} to {text(high, kind, units)}"
        )
    )
    if not target.stated:
        wanted += " (none stated: at the likely strength)"
    verdict = "met" if target.met else "missed"
    return target.name.replace("_", " "), text(target.value, kind, units), wanted, verdict
