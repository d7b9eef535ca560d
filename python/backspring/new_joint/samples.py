"""What places of a coarse grid give, worked out once for all that is asked of one joint."""

from __future__ import annotations

import itertools
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.many import check_many
from backspring.new_joint.file_text import Tables

Column = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]
_KEYS = ("tang.corner_radius", "fit.preload", "spring.thickness_scale")
_OF_SPRING = ("peak_pull_n", "yield_margin", "stiffness_n_per_mm")
_OPENINGS = "openings_margin"
# Targets that change nothing of what a joint gives.
_ASIDE = ("pull", "yield_margin", "reading", "edge_gap")


@dataclass(frozen=True, slots=True)
class Grid:
    """Values that the coarse search goes through about one joint.

    `unusual` is how far the joint itself is from what is usual, which counts against it.
    """

    corners_mm: tuple[float, ...]
    preloads_mm: tuple[float, ...]
    unusual: float = 0.0

    @property
    def rows(self) -> Column:
        """Every corner with every preload."""
        return np.array([*itertools.product(self.corners_mm, self.preloads_mm)])


@dataclass(frozen=True, slots=True)
class Given:
    """What every place gives at a thickness of its own; NaN where it is none."""

    pull_n: Column
    yield_margin: Column
    stiffness_n_per_mm: Column
    ok: Mask


class Sampled:
    """One joint and the places of the grid about it."""

    def __init__(self, design: Design, rows: Column) -> None:
        self._design, self._rows = design, rows
        self._given: dict[bytes, Given] = {}
        self._lasting: dict[bytes, Column] = {}

    @property
    def as_drawn(self) -> Given:
        """Return what every place gives with the thickness as it is."""
        count = len(self._rows)
        return self.at(np.ones(count), np.ones(count, dtype=bool))

    def at(self, scale: Column, asked: Mask) -> Given:
        """Check the places asked for with the thickness in proportion."""
        key = scale.tobytes() + asked.tobytes()
        if key not in self._given:
            many, ok = self._check(scale, asked, _OF_SPRING)
            pull, margin, stiffness = many
            self._given[key] = Given(pull, margin, stiffness, ok)
        return self._given[key]

    def openings_margin(self, scale: Column, asked: Mask) -> Column:
        """Find how many openings the places asked for stand, against those wanted."""
        key = scale.tobytes() + asked.tobytes()
        if key not in self._lasting:
            self._lasting[key] = self._check(scale, asked, (_OPENINGS,))[0][0]
        return self._lasting[key]

    def _check(self, scale: Column, asked: Mask, names: Sequence[str]) -> tuple[list[Column], Mask]:
        found = [np.full(len(scale), np.nan) for _ in names]
        ok = np.zeros(len(scale), dtype=bool)
        if asked.any():
            changes = dict(zip(_KEYS, (*self._rows[asked].T, scale[asked]), strict=True))
            many = check_many(self._design, changes, columns=names)
            ok[asked] = many.ok
            for column, name in zip(found, names, strict=True):
                column[asked] = many[name]
        return found, ok


@dataclass
class Samples:
    """Joints that were sampled, by what they are; None for what is none."""

    known: dict[str, Sampled | None] = field(default_factory=dict)

    def of(self, tables: Tables, grid: Grid) -> Sampled | None:
        """Sample a joint, once."""
        key = _name(tables, grid)
        if key not in self.known:
            try:
                content: dict[str, Any] = dict(tables)
                self.known[key] = Sampled(Design(name="layout", **content), grid.rows)
            except InvalidInput:
                self.known[key] = None
        return self.known[key]


def _name(tables: Tables, grid: Grid) -> str:
    held: Mapping[str, Any] = tables["targets"]
    targets = {name: each for name, each in held.items() if name not in _ASIDE}
    return json.dumps([{**tables, "targets": targets}, grid.corners_mm, grid.preloads_mm])
