"""Columns of numbers as a report: a row each, with its ends and its extremes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from backspring.report.tables import Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.report.result import Columns

_HEADS = ("column", "first", "least", "greatest", "last")


def columns_report(result: Columns, _units: System | None = None) -> Report:
    """Lay out what the columns span; each name carries the unit that its numbers are in."""
    columns = result.arrays()
    shape = " by ".join(map(str, next(iter(reversed(columns.values()))).shape))
    rows = tuple((name, *map(_number, _ends(column))) for name, column in columns.items())
    return Report(f"{type(result).__name__}: {shape}", (TextTable("", _HEADS, rows),))


def columns_data(result: Columns) -> dict[str, Any]:
    """Plain lists by name."""
    return {name: column.tolist() for name, column in result.arrays().items()}


def _ends(column: Any) -> tuple[float, float, float, float]:
    """First, least, greatest and last; what is not a number counts nowhere but at the ends."""
    known = column[~np.isnan(column)]
    least, greatest = (known.min(), known.max()) if known.size else (np.nan, np.nan)
    return column.flat[0], least, greatest, column.flat[-1]


def _number(value: float) -> str:
    return "-" if np.isnan(value) else f"{value:.4g}"
