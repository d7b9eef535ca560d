"""What changes from one design to another, and by what, in sentences."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.compare_words import amount, cause_word, figure_kind, figure_word, signed
from backspring.report.display import unit_of
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.compare import Comparison, FigureChange

_SAID = (
    "travel_peak_stress_mpa",
    "yield_margin",
    "reading_loaded_half_stop_mm",
    "reading_loaded_closed_mm",
    "snap_energy_mj",
)
_PARTS_SAID = 3
_LINE_LETTERS = 74


def pull_name(found: Comparison) -> str:
    """Name the pull, or the torque where one of them has no nail nick."""
    known = {each.name for each in found.figures if each.change is not None}
    return "peak_pull_n" if "peak_pull_n" in known else "peak_torque_nmm"


def sentences(found: Comparison, units: System) -> Iterator[str]:
    """Say of each figure that changes how far, and which dimensions cause most of it."""
    figures = {each.name: each for each in found.figures}
    for name in (pull_name(found), *_SAID):
        figure = figures.get(name)
        if figure is None or figure.change is None or is_nothing(figure, units):
            continue
        moved, parts = f"{figure_word(name)} {moves(figure, units)}", _parts(found, name, units)
        if len(moved) + len(parts) + 2 <= _LINE_LETTERS:
            yield f"{moved}: {parts}" if parts else moved
        else:
            yield f"{moved}:"
            yield from _broken(parts)


def _broken(parts: str) -> Iterator[str]:
    """Break a long line between parts, never between a number and its words."""
    line = ""
    for part in parts.split(", "):
        if line and len(line) + len(part) + 2 > _LINE_LETTERS:
            yield f"  {line},"
            line = part
        else:
            line = f"{line}, {part}" if line else part
    yield f"  {line}"


def is_nothing(figure: FigureChange, units: System) -> bool:
    """Tell whether a change is too small to be shown."""
    return figure.change is None or not float(
        amount(figure.change, figure_kind(figure.name), units)
    )


def moves(figure: FigureChange, units: System) -> str:
    """Say how far a figure rises or falls."""
    assert figure.change is not None
    if is_nothing(figure, units):
        return "stays as it is"
    kind = figure_kind(figure.name)
    way = "rises" if figure.change > 0.0 else "falls"
    return f"{way} by {amount(figure.change, kind, units)} {unit_of(kind, units)}".rstrip()


def _parts(found: Comparison, name: str, units: System) -> str:
    kind = figure_kind(name)
    parts = [
        (each.changes[name], cause_word(each)) for each in found.causes if name in each.changes
    ]
    parts = [part for part in parts if float(amount(part[0], kind, units))]
    parts.sort(key=lambda part: -abs(part[0]))
    if len(parts) == 1:
        return f"all of it from {parts[0][1]}"
    if len(parts) > _PARTS_SAID + 1:
        rest = sum(value for value, _ in parts[_PARTS_SAID:])
        parts = [*parts[:_PARTS_SAID], (rest, "the others")]
    one_way = len({value > 0.0 for value, _ in parts}) == 1
    write = amount if one_way else signed
    return ", ".join(f"{write(value, kind, units)} from {word}" for value, word in parts)
