"""A first design file, from a few words: commented, ready to be checked, and passing."""

from __future__ import annotations

import itertools
import os
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, Literal

from backspring import steel as steels
from backspring._core import Quantity
from backspring.design.arguments import quantity
from backspring.design.design import Design
from backspring.design.load import load_content
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.new_joint.file_text import Tables, design_text
from backspring.new_joint.joint import Joint, corner_for_rise
from backspring.new_joint.request import PINS_MM
from backspring.new_joint.rounding import band_n
from backspring.new_joint.samples import Grid, Samples
from backspring.new_joint.solving import candidates, first_that_passes
from backspring.question.check import Check, check_blade
from backspring.report.result import Reported
from backspring.unit_table import POUND_FORCE_N
from backspring.units import Kind, System, shown
from backspring.whole_file import replace_file, require_free

PULL_N: dict[System, float] = {"mm": 18.0, "in": 4.0 * POUND_FORCE_N}
PULL_SHARE = 0.25
YIELD_MARGIN = 1.15
OPENINGS = 20000.0
READING_MM = 0.05
_TRIES = 12
_RISES_MM = (0.9, 1.2, 1.5)
_PRELOADS_MM = (0.4, 0.6, 0.8, 1.0, 1.2)
_WIDTHS_MM: dict[System, tuple[float, ...]] = {
    "mm": (3.2, 2.5, 4.0),
    "in": (3.175, 2.38125, 3.96875),
}


@dataclass(frozen=True, repr=False)
class Starter(Reported):
    """A design file's text, which was read back and checked."""

    _report_by = "starter:starter_report"

    text: str
    design: Design
    output: str | None = None

    @cached_property
    def check(self) -> Check:
        """What a check of the file says."""
        return check_blade(self.design)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether all its targets are met."""
        return self.check.status

    def to_dict(self) -> dict[str, Any]:
        """Give what the command's JSON holds."""
        pulls = [each.peak_pull_n for each in self.check.strokes if each.peak_pull_n is not None]
        written = {"output": self.output} if self.output else {}
        return {
            "design": self.design.identity(),
            "text": self.text,
            "pull_n": max(pulls, default=None),
            "yield_margin": self.check.travel.yield_margin,
            **written,
        }


def new_design(
    output: str | os.PathLike[str] | None = None,
    *,
    name: str = "My pattern",
    units: System = "mm",
    steel: str = "1075",
    hardness: Any = 46,
    half_stop: bool = True,
    pull: Any = None,
    force: bool = False,
) -> Starter:
    """Make a first design file of a hand-size knife: every line commented, all targets met.

    The spring is sized for `pull` (18 N or 4 lbf when left out, allowed a quarter more or less) in
    the steel named, and the file is in `units`. With `output` it is written there; a file that is
    there already is kept unless `force` says otherwise.

    Raises InvalidInput with every fault, and where no spring of a hand-size knife gives the pull.
    """
    pull_n, chosen = require_plain(name, units, steel, hardness, pull)
    require_free(output, force)
    tables = _sized(chosen, pull_n, units, half_stop)
    if tables is None:
        asked = shown(pull_n, Quantity.force, units)
        raise invalid([Fault("bad-value", "pull", _none_gives(asked, chosen))])
    text = design_text(name, units, tables, _about(name, half_stop))
    return written(text, output)


def require_plain(
    name: str, units: System, steel: str, hardness: Any, pull: Any
) -> tuple[float, dict[str, Any]]:
    """Read pull and steel; raises InvalidInput with every fault."""
    faults: list[Fault] = []

    def read(value: Any, kind: Kind, key: str, low: float, high: float, unit: str) -> float:
        try:
            found = quantity(value, kind, key, units if units in ("mm", "in") else "mm")
        except InvalidInput as error:
            faults.extend(each for each in error.faults if isinstance(each, Fault))
            return low
        if not low <= found <= high:
            message = f"must be {low:g} to {high:g} {unit}, got {found:g}"
            faults.append(Fault("bad-value", key, message))
        return found

    if units not in ("mm", "in"):
        faults.append(Fault("bad-value", "units", f'must be "mm" or "in", got "{units}"'))
    if not isinstance(name, str) or not name.strip() or len(name) > 100 or "\n" in name:
        faults.append(Fault("bad-value", "name", "must be a line of 1 to 100 characters"))
    pull_n = PULL_N.get(units, 18.0) if pull is None else read(pull, "force", "pull", 1, 200, "N")
    hrc = read(hardness, "hardness", "hardness", 20, 68, "HRC")
    try:
        steel = steels.steel(steel).name
    except LookupError as error:
        faults.append(Fault("bad-value", "steel", str(error.args[0])))
    if faults:
        raise invalid(faults)
    return pull_n, {"steel": steel, "hardness": hrc}


def written(text: str, output: str | os.PathLike[str] | None) -> Starter:
    """Read a text back as a design, then write it."""
    shown = "the design file" if output is None else os.fspath(output)
    design = load_content(text.encode(), shown)
    starter = Starter(text, design, None if output is None else shown)
    if output is not None:
        replace_file(Path(output), [text.encode()])
    return starter


def _sized(steel: dict[str, Any], pull_n: float, units: System, half_stop: bool) -> Tables | None:
    targets = {
        "pull": band_n(pull_n, PULL_SHARE, units),
        "yield_margin": YIELD_MARGIN,
        "reading": READING_MM if units == "mm" else 0.0508,
        "openings": OPENINGS,
    }
    for width, hole in itertools.product(_WIDTHS_MM[units], PINS_MM[units]):
        joint = _hand_size(width, hole, half_stop, units)
        corners = tuple(corner_for_rise(joint.open_mm, rise) for rise in _RISES_MM)
        tables = {**joint.tables(steel, units), "targets": targets}
        grid = Grid(corners, _PRELOADS_MM)
        found = candidates([(tables, grid)], pull_n, YIELD_MARGIN, Samples())
        done = first_that_passes(found, pull_n, units, _TRIES)
        if done:
            return done[0]
    return None


def _hand_size(width_mm: float, hole_mm: float, half_stop: bool, units: System) -> Joint:
    """Draw a joint of a knife of some 95 mm, closed: common practice, no source."""
    return Joint(
        pivot_mm=34.0,
        rear_mm=36.0,
        tail_mm=5.0,
        middle_mm=4.6,
        end_mm=2.8,
        width_mm=width_mm,
        hole_mm=hole_mm,
        open_mm=4.6,
        front_mm=5.0,
        corner_mm=1.5,
        preload_mm=0.8,
        half_stop=half_stop,
        pin_mm=3.2 if units == "mm" else 3.175,
        nick_mm=35.0,
    )


def _about(name: str, half_stop: bool) -> tuple[str, ...]:
    end = "with a half-stop" if half_stop else "without half-stop"
    return (
        f"{name}: a starter for a hand-size knife {end}.",
        "Invented, no maker's knife. Put your own numbers in, then: backspring check THIS FILE",
        'Any number may carry its unit, as "3/32 in", "0.8 mm" or "4 lbf".',
        "A computed margin does not replace a test: make one spring, look for a set, then cycle "
        "it. Wear eye protection whenever a spring is under load.",
    )


def _none_gives(pull: str, steel: dict[str, Any]) -> str:
    return (
        f"no spring of this hand-size knife in {steel['steel']} at {steel['hardness']:g} HRC "
        f"opens with {pull} and holds: ask for less, "
        "choose a steel or hardness with more yield, or see backspring layout"
    )
