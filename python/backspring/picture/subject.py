"""What a picture shows: a check, made here when only a design is given."""

from __future__ import annotations

from backspring import _core
from backspring.design.design import Design
from backspring.question.check import Check, check_blade
from backspring.report.display import STYLES, Shown, Style
from backspring.units import System

# The order in which the hand meets them.
TRAVEL_ORDER = ("closed", "half_stop", "open")


def as_check(check_or_design: Check | Design) -> Check:
    """Return the check, or check the design."""
    return check_or_design if isinstance(check_or_design, Check) else check_blade(check_or_design)


def style_of(kind: Shown, subject: Check, units: System | None) -> Style:
    """Find how a kind of number is shown: in the given units, else in the design's own."""
    return STYLES[units or subject.design.units][kind]


def rests(subject: Check) -> list[str]:
    """Names of the positions the blade has, from closed to open."""
    return [name for name in TRAVEL_ORDER if name in subject.positions]


def spoken(name: str) -> str:
    """Write a position's name as people do."""
    return name.replace("_", "-")


def root_name(design: _core.Design) -> str:
    """Name what holds the spring where its free length begins."""
    kind = design.spring.support.kind
    if kind == _core.SupportKind.two_pins:
        return "middle pin"
    return "clamped" if kind == _core.SupportKind.clamped else "elastic root"
