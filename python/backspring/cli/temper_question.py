"""What is tempered of a steel's temper on the command line, and the answer."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from backspring.cli.usage import UsageError
from backspring.cli.values import tell_bare
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.notice import Notice
from backspring.report.steel_words import temperature, time
from backspring.report.tables import Block, Lines
from backspring.steel import tempering
from backspring.steel.records import Steel
from backspring.units import Kind, System, parse


@dataclass(frozen=True, slots=True)
class TemperAnswer:
    """The answer to a question on a temper: one line, data for JSON, what to know of it."""

    headline: str
    data: dict[str, Any]
    notices: tuple[Notice, ...]
    blocks: tuple[Block, ...]


def temper_answer(steel: Steel, options: argparse.Namespace, units: System) -> TemperAnswer | None:
    """Answer what the options ask; None when they ask nothing."""
    if options.temper is not None and options.hardness is not None:
        raise UsageError("backspring steels: give --temper or --hardness, not both")
    if options.temper is None and options.hardness is None:
        for each in ("time", "after"):
            if getattr(options, each) is not None:
                raise UsageError(f"backspring steels: --{each} needs --temper or --hardness")
        return None
    time_h = None if options.time is None else _quantity(options.time, "time", "--time")
    data = _temper(steel, options, time_h)
    headline = _headline(steel, data, options.temper is not None, units)
    notices = [*tempering.temper_notices(steel, data["temper_c"], time_h)]
    if options.after is not None:
        data["after"] = _after(steel, options.after, data)
        tell_bare(options.after[0], "temperature", "after", "mm", options.units)
        headline += _left(data["after"], units)
        notices += _after_notices(data["after"])
    lines = tuple(notice.text(units) for notice in notices)
    return TemperAnswer(
        headline,
        data,
        tuple(notices),
        (*((Lines("Notices", lines),) if lines else ()), _origin(steel, data)),
    )


def _quantity(text: str, kind: Kind, option: str) -> float:
    try:
        return parse(text, kind)
    except InvalidInput as error:
        raise invalid([Fault("bad-value", option, str(error))]) from None


def _temper(steel: Steel, options: argparse.Namespace, time_h: float | None) -> dict[str, Any]:
    data: dict[str, Any] = {}
    if options.temper is not None:
        temper_c = _quantity(options.temper, "temperature", "--temper")
        tell_bare(options.temper, "temperature", "temper", "mm", options.units)
    else:
        wanted = _quantity(options.hardness, "hardness", "--hardness")
        found = tempering.temper_for(steel, wanted, time_h)
        temper_c = found.value
        data |= {"temper_low_c": found.low, "temper_high_c": found.high}
    hardness = tempering.hardness_after(steel, temper_c, time_h)
    used_h = tempering.used_time_h(tempering.data_of(steel), time_h)
    return {
        "temper_c": temper_c,
        "time_h": used_h,
        **data,
        "hardness_hrc": hardness.value,
        "hardness_low_hrc": hardness.low,
        "hardness_high_hrc": hardness.high,
        "confidence": hardness.confidence,
        "sources": list(hardness.sources),
    }


def _headline(steel: Steel, data: dict[str, Any], by_temper: bool, units: System) -> str:
    held = "" if data["time_h"] is None else f" {time(data['time_h'])}"
    temper = temperature(data["temper_c"], units)
    if by_temper:
        shown = _hardness(data)
        return f"{steel.name} tempered{held} at {temper}: {shown}"
    low, high = (temperature(data[f"temper_{end}_c"], units) for end in ("low", "high"))
    wanted = f"{data['hardness_hrc']:.3g} HRC"
    return f"{steel.name} for {wanted}: temper{held} at {temper} ({low.split()[0]} to {high})"


def _hardness(data: dict[str, Any]) -> str:
    return (
        f"{data['hardness_hrc']:.1f} HRC "
        f"({data['hardness_low_hrc']:.1f} to {data['hardness_high_hrc']:.1f})"
    )


def _after(steel: Steel, given: list[str], data: dict[str, Any]) -> dict[str, Any]:
    later_c = _quantity(given[0], "temperature", "--after")
    later_h = _quantity(given[1], "time", "--after")
    effect = tempering.after_heat(steel, data["temper_c"], data["time_h"], later_c, later_h)
    return {
        "temperature_c": later_c,
        "time_h": later_h,
        "hardness_hrc": effect.hardness_hrc.value,
        "hardness_low_hrc": effect.hardness_hrc.low,
        "hardness_high_hrc": effect.hardness_hrc.high,
        "extrapolated_in_time": effect.extrapolated_in_time,
    }


def _left(after: dict[str, Any], units: System) -> str:
    heat = f"{time(after['time_h'])} at {temperature(after['temperature_c'], units)}"
    return f"; after {heat}: {_hardness(after)}"


def _after_notices(after: dict[str, Any]) -> Iterator[Notice]:
    if after["extrapolated_in_time"]:
        yield Notice("extrapolated-in-time", {"time": after["time_h"]})


def _origin(steel: Steel, data: dict[str, Any]) -> Lines:
    temper = tempering.data_of(steel)
    return Lines(
        "From",
        (
            f"{', '.join(data['sources'])} ({data['confidence']}): {temper.treatment}",
            f"band: {temper.spread_hrc.value:.10g} HRC either way. {temper.spread_hrc.note}",
            f"backspring steels {steel.name} prints all rows, conflicts and cautions",
        ),
    )
