"""A design as a table of what it states."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from backspring.reading import dotted
from backspring.tables import TextTable

if TYPE_CHECKING:
    from backspring.design import Design


def design_table(design: Design) -> TextTable:
    """Every key of a design with its value in mm, N, MPa, HRC, g, kg mm2."""
    content = design.to_dict()
    rows = tuple(
        (key, _value(value)) for key, value in dotted(content) if key not in ("format", "name")
    )
    return TextTable(design.name, ("key", "value"), rows)


def _value(value: Any) -> str:
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    return f"{value:.10g}" if isinstance(value, float) else str(value)
