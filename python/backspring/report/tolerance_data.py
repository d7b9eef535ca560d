"""Results of a tolerance study as plain data."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.many.dimensions import unit_of_key

if TYPE_CHECKING:
    from backspring.question.tolerance import Tolerance


def tolerance_data(study: Tolerance) -> dict[str, Any]:
    """Everything a study says, ready for JSON."""
    result, chance = study.result, study.result.batch
    keys = [spread.key for spread in study.spreads]
    return {
        "design": study.design.identity(),
        "n": study.n,
        "seed": study.seed,
        "complete": study.complete,
        "rows": result.rows,
        "working": result.working,
        "good": result.good,
        "share": None if chance is None else chance.share,
        "share_low": None if chance is None else chance.share_low,
        "share_high": None if chance is None else chance.share_high,
        "wanted_share": study.wanted_share,
        "batch": None
        if chance is None
        else {
            "knives": study.batch,
            "chance": chance.chance,
            "chance_low": chance.chance_low,
            "chance_high": chance.chance_high,
        },
        "spreads": [_spread(study, spread) for spread in study.spreads],
        "results": {each.local.name: _result(each, keys) for each in result.results},
        "targets": [
            {
                "name": target.name,
                "low": target.low,
                "high": target.high,
                "stated": target.stated,
                "share": target.met / result.rows if result.rows else None,
            }
            for target in result.targets
        ],
    }


def _spread(study: Tolerance, spread: _core.Spread) -> dict[str, Any]:
    return {
        "key": spread.key,
        "unit": unit_of_key(spread.key),
        "kind": spread.kind.name,
        "nominal": _core.dimension_value(study.design.core, spread.key),
        "standard_deviation": _core.standard_deviation(spread),
        "tolerance": _core.farthest(spread),
    }


def _result(each: _core.ResultSpread, keys: list[str]) -> dict[str, Any]:
    local, sample = each.local, each.sample
    quantiles = zip(_core.quantiles(), sample.quantiles, strict=True)
    return {
        "nominal": _number(local.nominal),
        "mean": _number(sample.mean),
        "standard_deviation": _number(sample.sd),
        "root_sum_square": _number(local.root_sum_square_sd),
        "worst_low": _number(local.worst_low),
        "worst_high": _number(local.worst_high),
        "quantiles": {f"{p:g}": _number(value) for p, value in quantiles},
        "slopes": {key: _number(v) for key, v in zip(keys, local.slopes, strict=True)},
        # Without shares there is no key, so that nothing is taken for zero.
        "shares": {
            key: {"first": share.first, "total": share.total}
            for key, share in zip(keys, each.shares, strict=False)
        },
    }


def _number(value: float) -> float | None:
    return value if math.isfinite(value) else None
