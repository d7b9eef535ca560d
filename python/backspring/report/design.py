"""A design as a table of what it states."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from backspring.design.reading import dotted
from backspring.report.tables import Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.design.design import Design


def design_report(design: Design, _: System | None = None) -> Report:
    """Every key of a design with its value, always in mm, N, MPa, HRC, g, kg mm2."""
    content = design.to_dict()
    rows = tuple(
        (key, _value(value)) for key, value in dotted(content) if key not in ("format", "name")
    )
    return Report(design.name, (TextTable("", ("key", "value"), rows),))


def _value(value: Any) -> str:
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    return f"{value:.10g}" if isinstance(value, float) else str(value)
