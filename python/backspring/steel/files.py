"""Reads the data files of the steels and of their sources."""

from __future__ import annotations

import os
from functools import cache
from typing import Any

from backspring.steel.records import (
    Embrittlement,
    Figure,
    Fit,
    Point,
    Source,
    Stated,
    Steel,
    Temper,
    TemperRow,
)

# Found by its path, for what looks into packages takes as long to load as all of the steels.
_DATA = os.path.join(os.path.dirname(os.path.dirname(__file__)), "data")


@cache
def all_steels() -> tuple[Steel, ...]:
    """Every steel, sorted by name."""
    files = (each for each in os.listdir(os.path.join(_DATA, "steels")) if each.endswith(".toml"))
    return tuple(sorted((_steel_in(each) for each in files), key=lambda s: s.name))


@cache
def steel_by_file(name: str) -> Steel | None:
    """Return the steel whose file has its name in small letters; None where none has."""
    if not name.replace("-", "").isalnum() or not name.isascii():
        return None
    try:
        found = _steel_in(f"{name}.toml")
    # Not there, or a name that is no file's: too long a one.
    except OSError:
        return None
    return found if found.name.casefold() == name else None


@cache
def all_sources() -> dict[str, Source]:
    """Every source by its key."""
    return {key: Source(**table) for key, table in _read("sources.toml").items()}


# Imports below wait for their use: most programs load this module and ask for no steel.


def _steel_in(file: str) -> Steel:
    return parse_steel(_read(os.path.join("steels", file)))


def _read(file: str) -> dict[str, Any]:
    import tomllib

    with open(os.path.join(_DATA, file), "rb") as held:
        return tomllib.load(held)


def parse_steel(data: dict[str, Any]) -> Steel:
    """Take a steel as its file states it, every field given."""
    elastic, strength = data["elastic"], data["strength"]
    hardness = strength["hardness_range_hrc"]
    return Steel(
        name=data["name"],
        also_called=tuple(data["also_called"]),
        family=data["family"],
        youngs_modulus_mpa=_parse_figure(elastic["youngs_modulus_mpa"]),
        poisson=_parse_figure(elastic["poisson"]),
        density_kg_m3=_parse_figure(elastic["density_kg_m3"]),
        yield_ratio=_parse_figure(strength["yield_ratio"]),
        hardness_low_hrc=float(hardness["low"]),
        hardness_high_hrc=float(hardness["high"]),
        hardness_confidence=hardness["confidence"],
        hardness_sources=tuple(hardness["sources"]),
        hardness_note=hardness["note"],
        conflicts=tuple(strength["conflicts"]),
        cautions=tuple(strength["cautions"]),
        temper=_parse_temper(data["temper"]) if "temper" in data else None,
        embrittlement=tuple(Embrittlement(**_plain(row)) for row in data.get("embrittlement", ())),
        points=tuple(_parse_point(row) for row in data["points"]),
    )


def _parse_figure(table: dict[str, Any]) -> Figure:
    return Figure(**_plain(table))


def _parse_point(row: dict[str, Any]) -> Point:
    nothing = {"hardness_hrc": None, "yield_mpa": None, "tensile_mpa": None}
    return Point(**{"loading": "tension", "note": "", **nothing, **_plain(row)})


def _parse_temper(table: dict[str, Any]) -> Temper:
    fit = _parse_fit(table["fit"]) if "fit" in table else None
    return Temper(
        treatment=table["treatment"],
        hold=table["hold"],
        hold_h=_number(table, "hold_h"),
        spread_hrc=_parse_spread(table, fit),
        as_quenched_hrc=_parse_stated(table["as_quenched"]) if "as_quenched" in table else None,
        points=tuple(_parse_row(row) for row in table["points"]),
        beside=tuple(_parse_row(row) for row in table.get("beside", ())),
        fit=fit,
        confidence=table["confidence"],
        sources=tuple(table["sources"]),
        note=table["note"],
    )


def _parse_spread(table: dict[str, Any], fit: Fit | None) -> Stated:
    """Take the stated spread, else the error of the fit."""
    if fit is None or "spread" in table:
        return _parse_stated(table["spread"])
    return Stated(fit.rms_hrc, fit.confidence, fit.sources, "The rms error of the fit.")


def _parse_stated(table: dict[str, Any]) -> Stated:
    return Stated(
        value=float(table["hrc"]),
        confidence=table["confidence"],
        sources=tuple(table["sources"]),
        note=table.get("note", ""),
    )


def _parse_row(row: dict[str, Any]) -> TemperRow:
    return TemperRow(**{"low_hrc": None, "high_hrc": None, "note": "", **_plain(row)})


def _parse_fit(table: dict[str, Any]) -> Fit:
    return Fit(**_plain(table) | {"number_of_points": table["number_of_points"]})


def _plain(table: dict[str, Any]) -> dict[str, Any]:
    """Numbers as floats, lists as tuples."""
    return {key: _plain_value(value) for key, value in table.items()}


def _plain_value(value: Any) -> Any:
    if isinstance(value, list):
        return tuple(value)
    return float(value) if isinstance(value, int) else value


def _number(row: dict[str, Any], key: str) -> float | None:
    return float(row[key]) if key in row else None
