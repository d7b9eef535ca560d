"""A bench card: on one page what is wanted at the grinder, with boxes to tick."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from backspring.design.design import Design
from backspring.errors import NoConvergence
from backspring.fit.levers import levers
from backspring.fit.plan import allowance, fit_plan
from backspring.fit.result import Allowance, FitPlan
from backspring.question.check import Check, check
from backspring.question.load_spring import load_spring
from backspring.report.display import number, reading, text, unit_of
from backspring.report.fit import CAUTIONS, face_name
from backspring.report.levers import levers_table
from backspring.report.tables import Block, Lines, TextTable
from backspring.units import System

# How proud both faces are taken to be where nothing was read yet.
_PROUD: dict[System, tuple[str, float]] = {"mm": ("0.3 mm", 0.3), "in": ("12 thou", 0.3048)}
_BLANK = "______"
_BOX = "[ ]"
# Common practice, no source.
_LOADING_CAUTION = (
    "A spring under load can leave hook or clamp faster than the eye follows: stand out of its "
    "line."
)


@dataclass(frozen=True, slots=True)
class Read:
    """Readings with the rear pin out, where some were taken [mm]."""

    half_stop_mm: float | None = None
    closed_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Card:
    """A card of one blade: its heading and what stands under it."""

    title: str
    blocks: tuple[Block, ...]

    def to_dict(self) -> dict[str, Any]:
        """Give the blocks' names as plain data."""
        names = [
            block.heading if isinstance(block, Lines) else block.title for block in self.blocks
        ]
        return {"title": self.title, "blocks": names}


def card(design: Design, units: System, read: Read | None = None) -> Card:
    """Lay out the card of one blade."""
    return Card(design.title, tuple(_blocks(design, units, read or Read())))


def _blocks(design: Design, units: System, read: Read) -> Iterator[Block]:
    checked = check(design)
    assert isinstance(checked, Check)
    yield Lines("When done", (_answer(checked, units),))
    try:
        left = allowance(design)
        assert isinstance(left, Allowance)
        yield _readings(left, units)
        yield from _passes(design, left, units, read)
        yield Lines("Stop", tuple(_stop(left, units)))
    except NoConvergence as error:
        yield Lines("No allowance", (error.text(units),))
    yield levers_table(levers(design), units)
    yield Lines("Getting the spring over the tang", tuple(_loading(design, units)))
    yield Lines("Caution", (*CAUTIONS, _LOADING_CAUTION))


def _answer(checked: Check, units: System) -> str:
    pulls = [stroke.peak_pull_n for stroke in checked.strokes if stroke.peak_pull_n is not None]
    said = f"it opens with {text(max(pulls), 'force', units)}; " if pulls else ""
    margin = checked.travel.yield_margin
    if margin is None:
        return f"{said}yield margin not known"
    if margin < 1.0:
        return f"{said}the spring takes a set, yield margin {number(margin, 'margin', units)}"
    return f"{said}yield margin {number(margin, 'margin', units)}"


def _readings(left: Allowance, units: System) -> TextTable:
    unit = unit_of("reading", units)
    heads = ("", f"leave, rear pin out {unit}", "read", f"wanted, both pins in {unit}", "read")
    rows = tuple(
        (name, reading(value, units), _BLANK, reading(left.target_mm, units), _BLANK)
        for name, value in (("half-stop", left.half_stop_mm), ("closed", left.closed_mm))
        if value is not None
    )
    dial = text(left.design.core.fit.dial_mm, "length", units)
    return TextTable(f"Readings of the back against open, dial at {dial}", heads, rows)


def _passes(design: Design, left: Allowance, units: System, read: Read) -> Iterator[Block]:
    """Plan the passes: from the readings taken, or from both faces a little proud."""
    name, proud_mm = _PROUD[units]
    taken = read.closed_mm is not None
    closed_mm = read.closed_mm if taken else left.closed_mm + proud_mm
    half_stop_mm = read.half_stop_mm
    if not taken and left.half_stop_mm is not None:
        half_stop_mm = left.half_stop_mm + proud_mm
    try:
        plan = fit_plan(
            design,
            closed=f"{closed_mm!r} mm",
            half_stop=None if half_stop_mm is None else f"{half_stop_mm!r} mm",
            state="unloaded",
        )
    except NoConvergence as error:
        yield Lines("No passes", (error.text(units),))
        return
    source = "from the readings given" if taken else f"from {name} more than to leave, as drawn"
    yield _steps(plan, f"Depth of each pass, {source}; measure after each", units)


def _steps(plan: FitPlan, title: str, units: System) -> TextTable:
    kick = plan.design.core.tang.kick is not None
    square = plan.result.half_stop_loaded_mm is not None
    unit = unit_of("reading", units)
    heads = ["pass", "face", f"take off {unit}"]
    heads += [f"then half-stop {unit}"] if square else []
    heads += [f"then closed {unit}", "read", "done"]
    rows = []
    for step in plan.steps:
        row = [
            f"{step.pass_number}",
            face_name(step.face.name, kick),
            number(step.remove_mm, "reading", units),
        ]
        row += [reading(step.half_stop_mm, units)] if square else []
        rows.append((*row, reading(step.closed_mm, units), _BLANK, _BOX))
    return TextTable(title, tuple(heads), tuple(rows))


def _stop(left: Allowance, units: System) -> Iterator[str]:
    wanted = left.design.core.targets.reading_mm
    goal = f"{reading(left.target_mm, units)} [{unit_of('reading', units)}]"
    near = ""
    if wanted is not None:
        near = f", and no farther from flush than {text(wanted, 'reading', units)}"
    yield f"when both pins are in and the back reads {goal}{near}"
    yield "when a reading is less than the table says: what is low cannot be made proud again"


def _loading(design: Design, units: System) -> Iterator[str]:
    try:
        found = load_spring(design).result
    except NoConvergence as error:
        yield error.text(units)
        return
    force, place = text(found.force_n, "force", units), text(found.at_mm, "length", units)
    moves = text(found.movement_mm, "length", units)
    yield f"pull it out with {force} at {place} from the middle pin; it moves {moves} there"
    if found.stop_before_low_mm is not None:
        before = text(found.stop_before_low_mm, "length", units)
        yield f"stop before {before}: past it the spring takes a set"
    if found.rear_pin_last is not None:
        last = found.rear_pin_last
        away, push = text(last.hole_to_go_mm, "length", units), text(last.force_n, "force", units)
        yield f"or rear pin last, blade open: {push} at its hole, which has {away} to go"
