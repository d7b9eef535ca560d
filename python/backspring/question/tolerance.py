"""Spread of pull, stress, margin and readings for stated tolerances of the bench."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

from backspring import _core
from backspring.core_record import changed
from backspring.design.arguments import plain_number
from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.many.many import refuse_running, run
from backspring.many.many_checks import ManyChecks
from backspring.many.progress import Progress
from backspring.many.spreads import (
    SpreadsTogether,
    ordinary_spreads,
    read_spreads,
    with_usual_friction,
)
from backspring.notice import Notice, Number
from backspring.report.result import Reported
from backspring.units import System

_FAR_SIGMAS = 3.0


@dataclass(frozen=True, eq=False, repr=False)
class Tolerance(Reported):
    """What the bench's spreads do to a design. mm, N, MPa.

    `stated` is False where nobody said the spreads and those of an ordinary bench were taken;
    `of_knife` is True where they are what the log of one knife tells;
    `assumed_friction` is True where `design` was given a friction for that, as it states none.
    `sample` holds the quasi-random rows; `result` is the core's.
    """

    _report_by = "tolerance:tolerance_report"
    _data_by = "tolerance_data:tolerance_data"

    design: Design
    spreads: tuple[_core.Spread, ...]
    stated: bool
    n: int
    seed: int
    batch: int
    wanted_share: float
    sample: ManyChecks
    result: _core.Tolerance
    assumed_friction: bool = False
    of_knife: bool = False

    @cached_property
    def results(self) -> dict[str, _core.ResultSpread]:
        """Spread of each result by its name, as "peak_pull_n"."""
        return {each.local.name: each for each in self.result.results}

    @property
    def targets(self) -> list[_core.TargetShare]:
        """Targets the design states, each with the rows of the sample that meet it."""
        return self.result.targets

    @property
    def share(self) -> float | None:
        """Share of knives that work and meet every target; None when no row was run."""
        return None if self.result.batch is None else self.result.batch.share

    @property
    def complete(self) -> bool:
        """Whether all rows were run."""
        return self.result.complete

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether at least the wanted share of knives meets the targets."""
        share = self.share
        good = self.complete and share is not None and share >= self.wanted_share
        return "pass" if good else "fail"

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know of this study."""
        return tuple(_notices(self))


def tolerance(
    design: Design,
    spreads: Mapping[str, Any] | SpreadsTogether | None = None,
    *,
    n: int = 100_000,
    seed: int = 1,
    batch: int = 20,
    wanted_share: float = 0.95,
    shares: bool = True,
    threads: int | None = None,
    executor: Executor | None = None,
    progress: Progress = None,
    chunk_rows: int | None = None,
    keep: str | os.PathLike[str] | None = None,
    units: System = "mm",
) -> Tolerance:
    """Work out the spread of a design's results: worst case, root-sum-square and a sample.

    `spreads` are tolerances by key: "0.05 mm" either way, taken as three standard deviations of a
    normal spread; "sd 0.02 mm" for the standard deviation; "uniform 0.05 mm" for one alike within
    limits. A bare number is in mm or MPa, with units="in" in inches or ksi. Keys are those of
    `check_many`. Without `spreads` those of an ordinary bench are taken, with what is not known of
    friction, Young's modulus and hardness, as the design's `[priors]` say or as is usual; friction
    is then that of the priors, or 0.12, where the design states none.

    `spreads` may be those of one knife, `knife.spreads` with `knife.design`: then what its log
    tells goes together as it tells it, and there are no shares of variance.

    `n` rows are drawn, the same for the same `seed` whatever runs them. `batch` is how many knives
    are made; the design passes when at least `wanted_share` of the knives meets its targets.
    `shares=False` leaves out the shares of variance, which cost as many rows again. The rest is as
    in `check_many`. Ctrl-C ends the run and returns what is done.
    """
    refuse_running(threads, executor, chunk_rows)
    _refuse(n, seed, batch, wanted_share)
    stated = spreads is not None
    drawn = design
    together = spreads if isinstance(spreads, SpreadsTogether) else None
    if not stated:
        design = with_usual_friction(design)
    if isinstance(spreads, SpreadsTogether):
        texts, shares = spreads.texts, False
    else:
        texts = ordinary_spreads(design) if spreads is None else spreads
    read = read_spreads(design, texts, units)
    plan = _core.tolerance_rows(design.core, read, n, seed, shares)
    inputs = {change.key: change.values for change in plan.changes}
    if together is not None:
        inputs = together.drawn(design, inputs)
    names = _core.tolerance_columns(design.core)
    rows = run(design, inputs, names, threads, executor, progress, chunk_rows, keep)
    columns = [_core.BatchColumn(name, column) for name, column in rows.columns.items()]
    checked = _core.Batch(columns, rows.status_codes, rows.complete)
    result = _core.sum_up(design.core, read, plan, checked, batch)
    if together is not None:
        result = _going_together(result, read, together)
    sample = _head(rows, n)
    assumed = design is not drawn
    return Tolerance(
        design,
        tuple(read),
        stated,
        n,
        seed,
        batch,
        wanted_share,
        sample,
        result,
        assumed,
        together is not None,
    )


def _going_together(
    result: _core.Tolerance, spreads: Sequence[_core.Spread], together: SpreadsTogether
) -> _core.Tolerance:
    """Put root-sum-squares in that count what goes together."""
    results = []
    for each in result.results:
        sd = _root_sum_square(each.local, spreads, together)
        results.append(changed(each, local=changed(each.local, root_sum_square_sd=sd)))
    return changed(result, results=results)


def _root_sum_square(
    local: _core.LocalSpread, spreads: Sequence[_core.Spread], together: SpreadsTogether
) -> float:
    """Work one result out; where strokes compete, the larger that can take the other's place."""
    if not local.strokes:
        return together.root_sum_square(spreads, local.slopes)
    first, second = local.strokes
    gap = [a - b for a, b in zip(first.slopes, second.slopes, strict=True)]
    sds = [together.root_sum_square(spreads, each.slopes) for each in local.strokes]
    apart = abs(first.nominal - second.nominal)
    return max(sds) if apart <= _FAR_SIGMAS * together.root_sum_square(spreads, gap) else sds[0]


def _head(rows: ManyChecks, count: int) -> ManyChecks:
    """Return the first rows alone, so that the others need not be kept."""
    return ManyChecks(
        rows.design,
        {key: column[:count].copy() for key, column in rows.inputs.items()},
        {name: column[:count].copy() for name, column in rows.columns.items()},
        rows.status_codes[:count].copy(),
        rows.complete,
    )


def _refuse(n: int, seed: int, batch: int, wanted_share: float) -> None:
    faults = [
        Fault("bad-value", key, f"must be a whole number from {low} to {high}, got {value!r}")
        for key, value, low, high in (
            ("n", n, 1, 10_000_000),
            ("seed", seed, 0, 2**32 - 1),
            ("batch", batch, 1, 10**9),
        )
        if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high
    ]
    if not 0.0 <= plain_number(wanted_share, "wanted_share") <= 1.0:
        faults.append(
            Fault("bad-value", "wanted_share", f"must be from 0 to 1, got {wanted_share!r}")
        )
    if faults:
        raise invalid(faults)


def _notices(study: Tolerance) -> Iterator[Notice]:
    """Find what to know of a study beyond its numbers."""
    result = study.result
    if study.of_knife:
        yield Notice("knife-tolerances")
    if not study.stated:
        yield Notice("ordinary-tolerances")
    if study.assumed_friction:
        yield Notice(
            "usual-friction", {"friction": Number(study.design.core.friction.spring, "ratio")}
        )
    if not study.complete:
        yield Notice("stopped", {"rows": result.rows, "wanted": study.n})
    if broken := result.rows - result.working:
        yield Notice("not-working", {"broken": broken, "rows": result.rows})
