"""The data of a steel as a report for people: every number with its sources."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backspring.report.display import number, unit_of
from backspring.report.steel_words import hardness, span, temperature, temperature_unit, time
from backspring.report.tables import Block, Lines, TextTable
from backspring.steel.records import Figure, Fit, Source, Stated, Steel, Temper, TemperRow
from backspring.steel.tempering import limits_c
from backspring.unit_table import LB_IN3_KG_M3
from backspring.units import System


def steels_table(steels: Sequence[Steel], units: System) -> TextTable:
    """Every steel in a row: family, hardness it is used at, temper data."""
    rows = tuple(
        (
            each.name,
            each.family,
            f"{span(each.hardness_low_hrc, each.hardness_high_hrc)} HRC",
            _temper_data(each.temper, units),
        )
        for each in steels
    )
    return TextTable("Steels", ("", "family", "springs", "temper data"), rows)


def steel_blocks(steel: Steel, sources: dict[str, Source], units: System) -> Iterator[Block]:
    """Everything known of one steel, in the order in which it is used."""
    yield _figures(steel, units)
    if steel.points:
        yield _strengths(steel, units)
    if steel.temper is not None:
        yield from _temper(steel.temper, units)
    if steel.embrittlement:
        yield Lines("Tempers that make it brittle", tuple(_brittle(steel, units)))
    for heading, lines in (("Conflicts", steel.conflicts), ("Cautions", steel.cautions)):
        if lines:
            yield Lines(heading, lines)
    yield Lines("Notes", tuple(_notes(steel)))
    yield Lines("Sources", tuple(_source(key, sources[key]) for key in cited(steel)))


def cited(steel: Steel) -> list[str]:
    """Keys of the sources of a steel, sorted."""
    return sorted({key for keys in _all_sources(steel) for key in keys})


def _all_sources(steel: Steel) -> Iterator[tuple[str, ...]]:
    yield from (figure.sources for figure in _named(steel).values())
    yield steel.hardness_sources
    yield from (point.sources for point in steel.points)
    yield from (band.sources for band in steel.embrittlement)
    if (temper := steel.temper) is None:
        return
    yield from (temper.sources, temper.spread_hrc.sources)
    yield from (row.sources for row in (*temper.points, *temper.beside))
    if temper.as_quenched_hrc is not None:
        yield temper.as_quenched_hrc.sources
    if temper.fit is not None:
        yield temper.fit.sources


def _named(steel: Steel) -> dict[str, Figure]:
    return {
        "Young's modulus": steel.youngs_modulus_mpa,
        "Poisson's ratio": steel.poisson,
        "density": steel.density_kg_m3,
        "yield ratio": steel.yield_ratio,
    }


def _temper_data(temper: Temper | None, units: System) -> str:
    if temper is None:
        return "none"
    low, high = (temperature(each, units) for each in limits_c(temper))
    hold = "hold not stated" if temper.hold_h is None else temper.hold
    if temper.fit is not None:
        hold = f"{time(temper.fit.shortest_s / 3600.0)} to {time(temper.fit.longest_h)}"
    return f"{low.split()[0]} to {high}, {hold}"


def _figures(steel: Steel, units: System) -> TextTable:
    rows = []
    for name, figure in _named(steel).items():
        value, low, high, unit = _shown(name, figure, units)
        cells = f"{value} {unit}".rstrip(), f"{low} to {high}", figure.confidence
        rows.append((name, *cells, ", ".join(figure.sources)))
    used = span(steel.hardness_low_hrc, steel.hardness_high_hrc)
    keys = ", ".join(steel.hardness_sources)
    rows.append(("springs, HRC", "", used, steel.hardness_confidence, keys))
    return TextTable("Figures", ("", "value", "band", "confidence", "sources"), tuple(rows))


def _shown(name: str, figure: Figure, units: System) -> tuple[str, str, str, str]:
    ends = (figure.value, figure.low, figure.high)
    if name == "Young's modulus":
        value, low, high = (number(each, "modulus", units) for each in ends)
        return value, low, high, unit_of("modulus", units)
    if name == "density" and units == "in":
        value, low, high = (f"{each / LB_IN3_KG_M3:.3f}" for each in ends)
        return value, low, high, "lb/in3"
    value, low, high = (f"{each:.10g}" for each in ends)
    return value, low, high, "kg/m3" if name == "density" else ""


def _strengths(steel: Steel, units: System) -> TextTable:
    rows = tuple(
        (
            point.condition,
            "-" if point.hardness_hrc is None else f"{point.hardness_hrc:.10g}",
            number(point.yield_mpa, "stress", units),
            number(point.tensile_mpa, "stress", units),
            point.confidence,
            ", ".join(point.sources),
        )
        for point in steel.points
    )
    unit = unit_of("stress", units)
    heads = ("", "HRC", f"yield {unit}", f"tensile {unit}", "confidence", "sources")
    return TextTable("Strengths", heads, rows)


def _temper(temper: Temper, units: System) -> Iterator[Block]:
    lines = [f"{temper.treatment}; hold: {temper.hold}"]
    if temper.as_quenched_hrc is not None:
        lines.append(f"as quenched {_stated(temper.as_quenched_hrc)}")
    lines.append(f"band, either way: {_stated(temper.spread_hrc)}")
    yield Lines("Temper", (*lines, temper.note))
    yield _temper_rows("Temper, hardness left", temper.points, units)
    if temper.beside:
        yield _temper_rows("Temper, other sources", temper.beside, units)
    if temper.fit is not None:
        yield Lines("Temper, time counted", tuple(_fit(temper.fit, units)))


def _stated(stated: Stated) -> str:
    cited = f"({stated.confidence}): {', '.join(stated.sources)}"
    return f"{hardness(stated.value)} {cited}. {stated.note}".removesuffix(". ")


def _temper_rows(title: str, rows: tuple[TemperRow, ...], units: System) -> TextTable:
    heads = (f"temper {temperature_unit(units)}", "HRC", "range", "confidence", "sources")
    return TextTable(title, heads, tuple(_temper_row(row, units) for row in rows))


def _temper_row(row: TemperRow, units: System) -> tuple[str, ...]:
    own = "-"
    if row.low_hrc is not None and row.high_hrc is not None:
        own = span(row.low_hrc, row.high_hrc)
    shown = temperature(row.temper_c, units).split()[0]
    return shown, f"{row.hardness_hrc:.10g}", own, row.confidence, ", ".join(row.sources)


def _fit(fit: Fit, units: System) -> Iterator[str]:
    c0, *rest = fit.coefficients
    terms = (f" {c:+.10g} {x}" for c, x in zip(rest, ("x", "x^2", "x^3"), strict=True))
    polynomial = f"{c0:.10g}{''.join(terms)}".replace(" +", " + ").replace(" -", " - ")
    yield f"P = T ({fit.time_constant:.10g} + log10 t) / 1000, T in kelvin, t in hours"
    yield (f"HRC = {polynomial}, x = (P - {fit.mean:.10g}) / {fit.deviation:.10g}")
    low, high = temperature(fit.coolest_c, units).split()[0], temperature(fit.hottest_c, units)
    yield (
        f"holds from {low} to {high}, {fit.shortest_s:.10g} s to {fit.longest_h:.10g} h, "
        f"down to {hardness(fit.softest_hrc)}"
    )
    yield (
        f"rms error {hardness(fit.rms_hrc)}, greatest {hardness(fit.greatest_error_hrc)}, "
        f"{fit.number_of_points} points ({fit.confidence}): {', '.join(fit.sources)}"
    )
    yield fit.note


def _brittle(steel: Steel, units: System) -> Iterator[str]:
    for each in steel.embrittlement:
        low, high = temperature(each.low_c, units).split()[0], temperature(each.high_c, units)
        yield f"{low} to {high} ({each.confidence}): {', '.join(each.sources)}. {each.note}"


def _notes(steel: Steel) -> Iterator[str]:
    for name, figure in _named(steel).items():
        yield f"{name}: {figure.note}"
    yield f"hardness of springs: {steel.hardness_note}"
    for point in steel.points:
        if point.note:
            yield f"{point.condition}: {point.note}"
    if steel.temper is not None:
        for row in (*steel.temper.points, *steel.temper.beside):
            if row.note:
                yield f"temper at {row.temper_c:.10g} C, {', '.join(row.sources)}: {row.note}"


def _source(key: str, source: Source) -> str:
    parts = (source.author, source.title, source.page, str(source.year or ""), source.kind)
    shown = ", ".join(part for part in parts if part)
    note = f". {source.note}" if source.note else ""
    return f"{key}: {shown} ({source.confidence}){note}"
