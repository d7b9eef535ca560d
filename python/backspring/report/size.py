"""Sizing as a report for people: one line that answers, the ways there, what to put in the file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from backspring.design.file_lines import changed_keys, file_lines
from backspring.question.check import check_blade
from backspring.question.size_result import Sized, Solution, Taper, profile
from backspring.report.check import CAUTION, target_row
from backspring.report.display import Shown, number, text, unit_of
from backspring.report.how_sure import figure_lines, sure_to
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.size_spread import SolutionSds, TaperSds

NAMES = {
    "spring.thickness": "thickness at the middle pin",
    "fit.preload": "preload",
    "spring.width": "width",
    "tang.pivot": "pivot",
    "spring.length": "length",
}


def size_report(
    sized: Sized, units: System | None = None, sds: Sequence[SolutionSds] = ()
) -> Report:
    """Lay out a sizing in the given units, the design's own when none are given.

    `sds` tell of each solution how sure one knife's log makes it.
    """
    units = units or sized.original.units
    return Report(headline(sized, units, sds), tuple(_blocks(sized, units, sds)))


def headline(sized: Sized, units: System, sds: Sequence[SolutionSds] = ()) -> str:
    """Answer in one line: the first solution, or that there is none and what comes nearest."""
    if not sized.found:
        return refusal(sized, units)
    first = sized.solutions[0]
    sure = sds[0].sizes_mm if sds else {}
    parts = [f"{_sizes(first, units, sure)} for {_effect(first, units)}"]
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


def taper_report(taper: Taper, units: System | None = None, sds: TaperSds | None = None) -> Report:
    """Lay out a proposed taper in the given units, the design's own when none are given.

    `sds` tell how sure one knife's log makes it.
    """
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
    line = (
        f"{taper.original.title}: tapered for {text(taper.pull_n, 'force', units)}, peak stress "
        f"{text(taper.peak_stress_mpa, 'stress', units)}, "
        f"yield margin {number(taper.yield_margin, 'margin', units)}"
    )
    blocks = (
        TextTable("Strength", heads, rows),
        _judged(taper, units),
        *(() if sds is None else (_sure_of_taper(taper, sds, units),)),
        _stations(taper, units, sds),
        Lines("In the design file", file_lines(changed_keys(taper.design, taper.original, units))),
        Lines("Caution", (CAUTION,)),
    )
    return Report(line, blocks)


def _stations(taper: Taper, units: System, sds: TaperSds | None) -> TextTable:
    unit = unit_of("length", units)
    heads = [f"station {unit}", f"thickness {unit}"]
    columns: list[Sequence[float | None]] = [*zip(*profile(taper.design), strict=True)]
    if sds is not None:
        heads.append(f"good to +- {unit}")
        columns.append(sds.thickness_mm)
    rows = zip(*columns, strict=True)
    cells = tuple(tuple(number(each, "length", units) for each in row) for row in rows)
    return TextTable("Thickness", tuple(heads), cells)


def _sure_of_taper(taper: Taper, sds: TaperSds, units: System) -> Lines:
    figures: dict[str, tuple[float | None, float | None]] = {
        "travel_peak_stress_mpa": (taper.peak_stress_mpa, sds.peak_stress_mpa),
        "yield_margin": (taper.yield_margin, sds.yield_margin),
    }
    return Lines("How sure for this knife", tuple(figure_lines(figures, units)))


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


def _sizes(
    solution: Solution, units: System, sds_mm: Mapping[str, float | None] | None = None
) -> str:
    def sure(key: str) -> str:
        """Say how sure a size is; of one from stock, or at the end of its way, nothing."""
        sd = (sds_mm or {}).get(key)
        return f" {sure_to(sd, 'length', units)}" if sd else ""

    return ", ".join(
        f"{_name(key, units)} {text(size, 'length', units)}{sure(key)}"
        for key, size in solution.sizes_mm.items()
    )


def _effect(solution: Solution, units: System) -> str:
    margin = f"yield margin {number(solution.yield_margin, 'margin', units)}"
    if solution.pull_n is None:
        return f"a {margin}"
    return f"a pull of {text(solution.pull_n, 'force', units)}, {margin}"


def _blocks(sized: Sized, units: System, sds: Sequence[SolutionSds]) -> Iterator[Block]:
    shown = sized.solutions or ((sized.nearest,) if sized.nearest else ())
    if shown:
        yield _table(sized, shown, units)
        if sds:
            yield Lines("How sure for this knife", tuple(_how_sure(sized, sds, units)))
        changes = changed_keys(shown[0].design, sized.original, units)
        title = "In the design file" if sized.found else "Nearest, in the design file"
        yield Lines(title, file_lines(changes))
    if sized.found and sized.targets:
        yield _judged(sized, units)
    yield Lines("Tried", tuple(_tried(sized, units)))
    if sized.limits:
        yield Lines("In the way", tuple(limit.text(units) for limit in sized.limits))
    yield Lines("Caution", (CAUTION,))


def _how_sure(sized: Sized, sds: Sequence[SolutionSds], units: System) -> Iterator[str]:
    """Say of each solution how sure its sizes are, and its margin when sized so."""
    for solution, sure in zip(sized.solutions, sds, strict=True):
        line = _sizes(solution, units, sure.sizes_mm)
        if sure.yield_margin:
            margin = number(solution.yield_margin, "margin", units)
            line += f", yield margin {margin} {sure_to(sure.yield_margin, 'margin', units)}"
        yield line


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
