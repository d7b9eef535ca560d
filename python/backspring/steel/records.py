"""What the data says of a steel: figures and rows, each with its sources and how sure it is."""

from __future__ import annotations

from typing import Any, Literal, NamedTuple

Confidence = Literal["read", "memory", "derived"]


def as_data(record: Any) -> Any:
    """Return a record of this file, and those in it, as plain data."""
    if hasattr(record, "_asdict"):
        return {name: as_data(each) for name, each in record._asdict().items()}
    return tuple(map(as_data, record)) if isinstance(record, tuple) else record


class Figure(NamedTuple):
    """One number, the band it lies in, and where it comes from.

    `confidence` speaks of `value`: "read" in the source, from "memory", or "derived" here.
    """

    value: float
    low: float
    high: float
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class Stated(NamedTuple):
    """One number without a band."""

    value: float
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class Point(NamedTuple):
    """One published strength row. What the row does not state is None."""

    condition: str
    loading: Literal["tension", "compression"]
    hardness_hrc: float | None
    yield_mpa: float | None
    tensile_mpa: float | None
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class TemperRow(NamedTuple):
    """Hardness after one temper as published; the source's own range where it gives one."""

    temper_c: float
    hardness_hrc: float
    low_hrc: float | None
    high_hrc: float | None
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class Fit(NamedTuple):
    """Time and temperature fitted to an experiment, and the limits of what was fitted.

    P = T (C + log10 t) / 1000, T in kelvin and t in hours; x = (P - mean) / deviation; HRC is the
    polynomial of x with `coefficients` from the constant up.
    """

    time_constant: float
    mean: float
    deviation: float
    coefficients: tuple[float, float, float, float]
    rms_hrc: float
    greatest_error_hrc: float
    number_of_points: int
    coolest_c: float
    hottest_c: float
    shortest_s: float
    longest_h: float
    softest_hrc: float
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class Temper(NamedTuple):
    """Hardness by temper: `points` at one hold, other sources `beside` them, a fit where known.

    `hold_h` is None when the source states no hold. `spread_hrc` is half the least width of the
    band.
    """

    treatment: str
    hold: str
    hold_h: float | None
    spread_hrc: Stated
    as_quenched_hrc: Stated | None
    points: tuple[TemperRow, ...]
    beside: tuple[TemperRow, ...]
    fit: Fit | None
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class Embrittlement(NamedTuple):
    """Tempers that leave the steel brittle."""

    low_c: float
    high_c: float
    confidence: Confidence
    sources: tuple[str, ...]
    note: str


class Steel(NamedTuple):
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
    hardness_confidence: Confidence
    hardness_sources: tuple[str, ...]
    hardness_note: str
    conflicts: tuple[str, ...]
    cautions: tuple[str, ...]
    temper: Temper | None
    embrittlement: tuple[Embrittlement, ...]
    points: tuple[Point, ...]


class Source(NamedTuple):
    """A document, or an honest statement that there is none."""

    title: str
    kind: str
    confidence: Confidence
    author: str = ""
    year: int | None = None
    page: str = ""
    note: str = ""
