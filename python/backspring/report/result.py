"""Results show themselves: as text, in a notebook, as plain data."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any, ClassVar

from backspring.units import System

if TYPE_CHECKING:
    from backspring.report.tables import Report


class Reported:
    """A result with a report, which is named and not imported: reports look at results."""

    __slots__ = ()
    _report_by: ClassVar[str]  # "module:function" in the room of reports
    _data_by: ClassVar[str]

    def laid_out(self, units: System | None = None) -> Report:
        """Headline and tables, in the design's own units unless others are asked for."""
        report: Report = _found(self._report_by)(self, units)
        return report

    def report(self, units: System | None = None) -> str:
        """Results as plain text, in the design's own units unless others are asked for."""
        return self.laid_out(units).plain()

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        data: dict[str, Any] = _found(self._data_by)(self)
        return data

    def __repr__(self) -> str:
        return self.report()

    def _repr_html_(self) -> str:
        return self.laid_out().html()


def _found(place: str) -> Any:
    module, _, name = place.partition(":")
    return getattr(import_module(f"backspring.report.{module}"), name)


class Columns(Reported):
    """A result that is columns of numbers: NumPy arrays, each named with its unit."""

    __slots__ = ()
    _report_by = "columns:columns_report"
    _data_by = "columns:columns_data"

    def arrays(self) -> dict[str, Any]:
        """Arrays by name."""
        # Loaded only where there are columns.
        from dataclasses import fields

        values = {each.name: getattr(self, each.name) for each in fields(self)}  # type: ignore[arg-type]
        return {name: value for name, value in values.items() if hasattr(value, "ndim")}
