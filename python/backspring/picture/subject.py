"""What a picture shows: a check, made here when only a design is given."""

from __future__ import annotations

import textwrap

from matplotlib.figure import Figure

from backspring import _core
from backspring.design.design import Design
from backspring.picture import palette
from backspring.question.check import Check, check_blade
from backspring.report.display import STYLES, Shown, Style
from backspring.units import System

# Height that the name takes above a picture, and each line of an answer under it.
NAME_IN = 0.45
_LINE_IN = 0.2
_NAME_LEFT_IN = 0.18
_NAME_DOWN_IN = 0.12
_NAME_LETTERS = 60
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


def head_in(answer: str = "") -> float:
    """Height that the name and an answer take above a picture."""
    return NAME_IN + _LINE_IN * len(answer.splitlines())


def write_name(figure: Figure, name: str, answer: str = "") -> None:
    """Write whose picture it is into its upper left corner, and an answer under it."""
    left, high = _NAME_LEFT_IN / figure.get_figwidth(), figure.get_figheight()
    figure.text(
        left,
        1.0 - (NAME_IN - 0.02) / high,
        answer,
        fontsize=palette.NORMAL,
        va="top",
        parse_math=False,
    )
    figure.text(
        left,
        1.0 - _NAME_DOWN_IN / high,
        textwrap.shorten(name, _NAME_LETTERS, placeholder="..."),
        fontsize=palette.LARGE + 2.0,
        fontweight="bold",
        va="top",
        parse_math=False,
    )


def pins_mm(design: _core.Design) -> tuple[float, ...]:
    """Stations of the pins that hold the spring; none of a spring held some other way."""
    support = design.spring.support
    if support.kind == _core.SupportKind.two_pins:
        return 0.0, -support.rear_pin_mm
    return (0.0,) if rear_pad_mm(design) is not None else ()


def rear_pad_mm(design: _core.Design) -> float | None:
    """How far from the pin next to it the face of a blade at the other end reaches, if any is."""
    ends = [blade.pad.end_mm for blade in design.blades if blade.end == _core.End.rear]
    return max(ends, default=None)


def root_name(design: _core.Design) -> str:
    """Name what holds the spring where its free length begins."""
    if pins_mm(design):
        return "middle pin"
    clamped = design.spring.support.kind == _core.SupportKind.clamped
    return "clamped" if clamped else "elastic root"
