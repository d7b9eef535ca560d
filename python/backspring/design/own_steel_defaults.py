"""What stands for the fields that a steel's file leaves out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

_USUAL_NOTE = "Usual for steel: not stated."
_USUAL: dict[str, dict[str, Any]] = {
    "elastic": {
        "poisson": {"value": 0.29, "low": 0.27, "high": 0.30},
        "density_kg_m3": {"value": 7850, "low": 7700, "high": 7900},
    },
    "strength": {"hardness_range_hrc": {"low": 42, "high": 52}},
}
_USUAL_SURE = {"confidence": "derived", "sources": ["common-practice"], "note": _USUAL_NOTE}
# Half a band of hardness after a temper, as of the shipped tables with the least agreement.
_SPREAD_HRC = 3


def with_defaults(data: Mapping[str, Any], source: str) -> dict[str, Any]:
    """Fill in what a steel's file left out, so that it states every field.

    `source` is the key of the file itself, which stands behind what cites nothing.
    """

    def sure(table: Mapping[str, Any]) -> dict[str, Any]:
        """Say how sure a figure is, and give one without a band a band of no width."""
        band = {"low": table["value"], "high": table["value"]} if "value" in table else {}
        return {"confidence": "memory", "sources": [source], "note": "", **band, **table}

    def rows(table: Mapping[str, Any], name: str) -> list[dict[str, Any]]:
        return [sure(row) for row in table.get(name, ())]

    whole: dict[str, Any] = {"also_called": [], "family": "steel of one's own", **data}
    whole["strength"] = {"conflicts": [], "cautions": [], **data["strength"]}
    for section, usual in _USUAL.items():
        filled = {name: each | _USUAL_SURE for name, each in usual.items()} | whole[section]
        whole[section] = {
            name: sure(each) if isinstance(each, Mapping) else each for name, each in filled.items()
        }
    if "temper" in whole:
        given = {"treatment": "hardened", "hold": "", "spread": {"hrc": _SPREAD_HRC}}
        temper = sure(given | whole["temper"])
        parts = {
            name: sure(temper[name]) for name in ("as_quenched", "spread", "fit") if name in temper
        }
        whole["temper"] = (
            temper | parts | {name: rows(temper, name) for name in ("points", "beside")}
        )
    return whole | {name: rows(whole, name) for name in ("embrittlement", "points")}
