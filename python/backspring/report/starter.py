"""A design file that was made, as a report."""

from __future__ import annotations

from typing import TYPE_CHECKING

from backspring.report.display import number, text
from backspring.report.tables import Lines, Report
from backspring.units import System

if TYPE_CHECKING:
    from backspring.new_joint.starter import Starter

WIDTH = 80
CAUTION = (
    "A computed margin does not replace a test: make one spring, look for a set, then cycle it. "
    "Wear eye protection whenever a spring is under load."
)


def starter_report(starter: Starter, units: System | None = None) -> Report:
    """Say what it does and what to do with it; a text that was not written is shown alone."""
    if starter.output is None:
        return Report(starter.text.rstrip("\n"), ())
    units = units or starter.design.units
    check = starter.check
    pulls = [each.peak_pull_n for each in check.strokes if each.peak_pull_n is not None]
    does = f"opens with {text(max(pulls), 'force', units)}, " if pulls else ""
    met = "all targets met" if check.status == "pass" else "not all targets met"
    margin = number(check.travel.yield_margin, "margin", units)
    headline = f"{starter.design.name}: {does}yield margin {margin}, {met}"
    steps = (
        f"written to {starter.output}",
        "put your own numbers in: each line says where it is measured",
        f"backspring check {starter.output}",
    )
    return Report(headline, (Lines("Next", steps), Lines("Caution", (CAUTION,))), WIDTH)
