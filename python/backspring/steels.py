"""Steels a spring can be made of: figures with their bands and sources."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable

Confidence = Literal["read", "memory", "derived"]


@dataclass(frozen=True, slots=True)
class Figure:
    """One number, the band it lies in, and where it comes from.

    `confidence` speaks of `value`: "read" in the source, from "memory", or "derived" here.
    """

    value: float
    low: float
    high: float
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


@dataclass(frozen=True, slots=True)
class Point:
    """One published strength row. What the row does not state is None."""

    condition: str
    loading: Literal["tension", "compression"]
    hardness_hrc: float | None
    yield_mpa: float | None
    tensile_mpa: float | None
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


@dataclass(frozen=True, slots=True)
class Steel:
    """A steel. `yield_ratio` is 0.2 % proof stress over tensile strength."""

    name: str
    also_called: tuple[str, ...]
    family: str
    youngs_modulus_mpa: Figure
    poisson: Figure
    density_kg_m3: Figure
    yield_ratio: Figure
    hardness_low_hrc: float
    hardness_high_hrc: float
    hardness_note: str
    conflicts: tuple[str, ...]
    cautions: tuple[str, ...]
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Source:
    """A document, or an honest statement that there is none."""

    title: str
    kind: str
    confidence: Confidence
    author: str = ""
    year: int | None = None
    page: str = ""
    note: str = ""


def steel(name: str) -> Steel:
    """Look up a steel by its name or by another name it goes by; case does not matter."""
    found = _by_any_name().get(name.casefold())
    if found is None:
        raise LookupError(_unknown(name))
    return found


def names() -> tuple[str, ...]:
    """Names of all steels, sorted."""
    return tuple(each.name for each in _steels())


def sources() -> dict[str, Source]:
    """Every source by its key."""
    return dict(_sources())


@cache
def _steels() -> tuple[Steel, ...]:
    files = (each for each in (_data() / "steels").iterdir() if each.name.endswith(".toml"))
    return tuple(sorted((_parse_steel(_read(each)) for each in files), key=lambda s: s.name))


@cache
def _by_any_name() -> dict[str, Steel]:
    return {
        called.casefold(): each for each in _steels() for called in (each.name, *each.also_called)
    }


@cache
def _sources() -> dict[str, Source]:
    return {key: Source(**table) for key, table in _read(_data() / "sources.toml").items()}


# Imports below wait for their use: most programs load this module and ask for no steel.


def _data() -> Traversable:
    from importlib.resources import files

    return files("backspring") / "data"


def _read(file: Traversable) -> dict[str, Any]:
    import tomllib

    return tomllib.loads(file.read_text(encoding="utf-8"))


def _unknown(name: str) -> str:
    import difflib

    # Zero for the letter O is the common slip with these names.
    alike = {
        called.casefold().replace("0", "o"): called
        for each in _steels()
        for called in (*each.also_called, each.name)
    }
    near = difflib.get_close_matches(name.casefold().replace("0", "o"), alike, n=1)
    hint = f'did you mean "{alike[near[0]]}"? ' if near else ""
    return f'unknown steel "{name}": {hint}known: {", ".join(names())}'


def _parse_steel(data: dict[str, Any]) -> Steel:
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
        hardness_note=hardness["note"],
        conflicts=tuple(strength["conflicts"]),
        cautions=tuple(strength["cautions"]),
        points=tuple(_parse_point(row) for row in data["points"]),
    )


def _parse_figure(table: dict[str, Any]) -> Figure:
    return Figure(
        value=float(table["value"]),
        low=float(table["low"]),
        high=float(table["high"]),
        confidence=table["confidence"],
        sources=tuple(table["sources"]),
        note=table["note"],
    )


def _parse_point(row: dict[str, Any]) -> Point:
    return Point(
        condition=row["condition"],
        loading=row.get("loading", "tension"),
        hardness_hrc=_number(row, "hardness_hrc"),
        yield_mpa=_number(row, "yield_mpa"),
        tensile_mpa=_number(row, "tensile_mpa"),
        confidence=row["confidence"],
        sources=tuple(row["sources"]),
        note=row.get("note", ""),
    )


def _number(row: dict[str, Any], key: str) -> float | None:
    return float(row[key]) if key in row else None
