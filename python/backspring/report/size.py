"""Sizing as a report for people: one line that answers, the ways there, what to put in the file."""

from __future__ import annotations

from collections.abc import Iterator

from backspring.design.file_lines import changed_keys, file_lines
from backspring.question.check import check_blade
from backspring.question.size_result import Sized, Solution, Taper, profile
from backspring.report.check import CAUTION, target_row
from backspring.report.display import Shown, number, text, unit_of
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

NAMES = {
    "spring.thickness": "thickness at the middle pin",
    "fit.preload": "preload",
    "spring.width": "width",
    "tang.pivot": "pivot",
    "spring.length": "length",
}


def size_report(sized: Sized, units: System | None = None) -> Report:
    """Lay out a sizing in the given units, the design's own when none are given."""
    units = units or sized.original.units
    return Report(headline(sized, units), tuple(_blocks(sized, units)))


def headline(sized: Sized, units: System) -> str:
    """Answer in one line: the first solution, or that there is none and what comes nearest."""
    if not sized.found:
        return refusal(sized, units)
    first = sized.solutions[0]
    parts = [f"{_sizes(first, units)} for {_effect(first, units)}"]
    if first.yield_margin < 1.0:
        parts.append("which yields")
    if len(sized.solutions) > 1:
        parts.append(f"{len(sized.solutions)} ways in all")
    return f"{sized.original.title}: {', '.join(parts)}"


def refusal(sized: Sized, units: System) -> str:
    """Say that nothing answers, what comes nearest and what holds it there."""
    wanted = []
    if sized.pull_n is not None:
        wanted.append(f"a pull of {text(sized.pull_n, 'force', units)}")
    if sized.yield_margin is not None:
        wanted.append(f"a yield margin of {number(sized.yield_margin, 'margin', units)}")
    answer = f"{sized.original.title}: no size gives {' with '.join(wanted)}"
    if sized.nearest is not None:
        answer += f"; nearest: {_sizes(sized.nearest, units)} for {_effect(sized.nearest, units)}"
    limits = [limit.text(units) for limit in sized.limits]
    return f"{answer}; tried: {'; '.join([*_tried(sized, units), *limits])}"


def taper_report(taper: Taper, units: System | None = None) -> Report:
    """Lay out a proposed taper in the given units, the design's own when none are given."""
    units = units or taper.original.units
    before = check_blade(taper.original)
    pulls = [stroke.peak_pull_n for stroke in before.strokes if stroke.peak_pull_n is not None]
    rows = (
        (
            "as it was",
            *_strengths(
                max(pulls, default=None),
                before.travel.peak_stress_mpa,
                before.travel.yield_margin,
                units,
            ),
        ),
        ("tapered", *_strengths(taper.pull_n, taper.peak_stress_mpa, taper.yield_margin, units)),
    )
    heads = ("", *(f"{name} {unit_of(kind, units)}".rstrip() for name, kind in _STRENGTHS))
    stations = tuple(
        (number(x, "length", units), number(thick, "length", units))
        for x, thick in profile(taper.design)
    )
    unit = unit_of("length", units)
    line = (
        f"{taper.original.title}: tapered for {text(taper.pull_n, 'force', units)}, peak stress "
        f"{text(taper.peak_stress_mpa, 'stress', units)}, "
        f"yield margin {number(taper.yield_margin, 'margin', units)}"
    )
    blocks = (
        TextTable("Strength", heads, rows),
        _judged(taper, units),
        TextTable("Thickness", (f"station {unit}", f"thickness {unit}"), stations),
        Lines("In the design file", file_lines(changed_keys(taper.design, taper.original, units))),
        Lines("Caution", (CAUTION,)),
    )
    return Report(line, blocks)


_STRENGTHS: tuple[tuple[str, Shown], ...] = (
    ("pull", "force"),
    ("peak stress", "stress"),
    ("yield margin", "margin"),
)


def _strengths(
    pull: float | None, stress: float, margin: float | None, units: System
) -> tuple[str, ...]:
    return (
        number(pull, "force", units),
        number(stress, "stress", units),
        number(margin, "margin", units),
    )


def _name(key: str, units: System) -> str:
    plain, at, station = key.partition("@")
    return f"thickness at {text(float(station), 'size', units)}" if at else spoken_key(plain)


def spoken_key(key: str) -> str:
    """Name a dimension as people do; another blade's with its name."""
    if not key.startswith("blades."):
        return NAMES[key]
    _, blade, inner = key.split(".", 2)
    return f"{blade}'s {NAMES[inner]}"


def _sizes(solution: Solution, units: System) -> str:
    return ", ".join(
        f"{_name(key, units)} {text(size, 'length', units)}"
        for key, size in solution.sizes_mm.items()
    )


def _effect(solution: Solution, units: System) -> str:
    margin = f"yield margin {number(solution.yield_margin, 'margin', units)}"
    if solution.pull_n is None:
        return f"a {margin}"
    return f"a pull of {text(solution.pull_n, 'force', units)}, {margin}"


def _blocks(sized: Sized, units: System) -> Iterator[Block]:
    shown = sized.solutions or ((sized.nearest,) if sized.nearest else ())
    if shown:
        yield _table(sized, shown, units)
        changes = changed_keys(shown[0].design, sized.original, units)
        title = "In the design file" if sized.found else "Nearest, in the design file"
        yield Lines(title, file_lines(changes))
    if sized.found and sized.targets:
        yield _judged(sized, units)
    yield Lines("Tried", tuple(_tried(sized, units)))
    if sized.limits:
        yield Lines("In the way", tuple(limit.text(units) for limit in sized.limits))
    yield Lines("Caution", (CAUTION,))


def _tried(sized: Sized, units: System) -> Iterator[str]:
    """Say how far each size could go, and what else could be varied."""
    ends = (
        f"{_name(key, units)} {number(low, 'length', units)} to {text(high, 'length', units)}"
        for key, (low, high) in sized.bounds_mm.items()
    )
    yield ", ".join(ends)
    if sized.others:
        yield f"could be varied as well: {', '.join(sized.others)}"


def _judged(result: Sized | Taper, units: System) -> TextTable:
    rows = tuple(target_row(each, units) for each in result.targets)
    return TextTable("Targets", ("", "then", "wanted", ""), rows)


def _table(sized: Sized, shown: tuple[Solution, ...], units: System) -> TextTable:
    heads = (
        *(f"{_name(key, units)} {unit_of('length', units)}" for key in sized.vary),
        *(f"{name} {unit_of(kind, units)}".rstrip() for name, kind in _STRENGTHS),
    )
    rows = tuple(
        (
            *(number(size, "length", units) for size in each.sizes_mm.values()),
            *_strengths(each.pull_n, each.check.travel.peak_stress_mpa, each.yield_margin, units),
        )
        for each in shown
    )
    return TextTable("Solutions" if sized.found else "Nearest", heads, rows)
