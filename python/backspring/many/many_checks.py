"""What checks of many designs say, as columns."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import numpy.typing as npt

from backspring._core import RowStatus
from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.many.columns import Column
from backspring.report.result import Columns
from backspring.text_cells import as_cell
from backspring.whole_file import replace_file

if TYPE_CHECKING:
    import os

    import xarray

_STATUS = np.array([status.name for status in RowStatus])
_CSV_ROWS = 10_000


@dataclass(frozen=True, eq=False, repr=False)
class ManyChecks(Columns, Mapping[str, npt.NDArray[Any]]):
    """Results by name, an entry a row; NaN where a row has none. "status" tells how each went.

    `inputs` are the values that were changed, `complete` tells that the run was not stopped.
    """

    design: Design
    inputs: Mapping[str, Column]
    columns: Mapping[str, Column]
    status_codes: npt.NDArray[np.uint8]
    complete: bool

    @property
    def ok(self) -> npt.NDArray[np.bool_]:
        """Rows that work as a slip joint."""
        return np.asarray(self.status_codes == RowStatus.ok.value)

    @property
    def rows(self) -> int:
        """Number of designs."""
        return self.status_codes.size

    def counts(self) -> dict[str, int]:
        """Count the rows of each status that occurs."""
        codes, numbers = np.unique(self.status_codes, return_counts=True)
        return {RowStatus(int(c)).name: int(n) for c, n in zip(codes, numbers, strict=True)}

    def __getitem__(self, name: str) -> npt.NDArray[Any]:
        return _STATUS[self.status_codes] if name == "status" else self.columns[name]

    def __iter__(self) -> Iterator[str]:
        yield "status"
        yield from self.columns

    def __len__(self) -> int:
        return 1 + len(self.columns)

    def arrays(self) -> dict[str, npt.NDArray[Any]]:
        """Results by name, without how each row went."""
        return dict(self.columns)

    def __repr__(self) -> str:
        counts = ", ".join(f"{number} {name}" for name, number in self.counts().items())
        stopped = "" if self.complete else ", stopped"
        return f"ManyChecks({self.design.name!r}, {self.rows} rows: {counts or 'none'}{stopped})"

    def to_csv(self, path: str | os.PathLike[str]) -> None:
        """Write inputs, status and results, a line a row, all digits; whole or not at all."""
        replace_file(Path(path), (part.encode() for part in self._csv_parts()))

    def _csv_parts(self) -> Iterator[str]:
        table = {**self.inputs, **self}
        yield _lines([[as_cell(name) for name in table]])
        for start in range(0, self.rows, _CSV_ROWS):
            parts = [column[start : start + _CSV_ROWS].tolist() for column in table.values()]
            # A missing value is an empty cell, as tables read it.
            yield _lines([["" if v != v else v for v in row] for row in zip(*parts, strict=True)])

    def to_xarray(self) -> xarray.Dataset:
        """Return a dataset with the dimension `row`; inputs are its coordinates. Needs xarray."""
        try:
            import xarray
        except ModuleNotFoundError:
            message = 'datasets need xarray: pip install "backspring[study]"'
            raise invalid([Fault("missing-package", "", message)]) from None
        return xarray.Dataset(
            {name: ("row", self[name]) for name in self},
            coords={key: ("row", column) for key, column in self.inputs.items()},
            attrs={"design": self.design.name, "sha256": self.design.sha256},
        )


def _lines(rows: list[list[Any]]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerows(rows)
    return text.getvalue()
