"""Results of some rows, and the rows that a worker took with it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring.many.columns import Column


@dataclass(frozen=True, slots=True)
class Lost:
    """The first chunk that a worker did not bring back, how many others, and what it ended with."""

    first_row: int
    last_row: int
    others: int
    cause: BaseException


@dataclass(frozen=True, slots=True)
class Checked:
    """Results of some rows: columns by name, a status code a row."""

    columns: dict[str, Column]
    codes: npt.NDArray[np.uint8]
    complete: bool
    lost: Lost | None = None
