"""A comparison as a report for people: what changes, by what, and whether targets are lost."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.check import target_row
from backspring.report.compare_sentences import is_nothing, moves, pull_name, sentences
from backspring.report.compare_words import (
    FIGURES,
    cause_word,
    ends,
    figure_kind,
    figure_word,
    signed,
)
from backspring.report.display import number, unit_of
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.verdict import spoken
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.compare import (
        BladesComparison,
        Compared,
        Comparison,
        FigureChange,
        TargetChange,
    )

# Two tables, for one would be wider than a terminal.
_CAUSED = {
    "Which dimension causes how much": (
        "peak_pull_n",
        "peak_torque_nmm",
        "travel_peak_stress_mpa",
        "yield_margin",
    ),
    "Which causes how much of readings and snap": (
        "reading_loaded_half_stop_mm",
        "reading_loaded_closed_mm",
        "snap_energy_mj",
    ),
}
_HEADS = {
    "reading_loaded_half_stop_mm": "half-stop",
    "reading_loaded_closed_mm": "closed",
    "travel_peak_stress_mpa": "stress",
    "yield_margin": "margin",
}


def comparison_report(
    found: Comparison, units: System | None = None, everything: bool = False
) -> Report:
    """Lay out a comparison in the given units, those of the first design when none are given."""
    units = units or found.a.design.units
    blocks = (*_of_blade(found, units, everything), *_targets(found, units))
    return Report(f"{_title(found)}: {_answer(found, units)}", blocks)


def blades_comparison_report(
    found: BladesComparison, units: System | None = None, everything: bool = False
) -> Report:
    """Lay out a comparison of several blades, one after the other."""
    units = units or found.a.design.units
    blocks: list[Block] = []
    answers = []
    for name, each in found.blades.items():
        answers.append(f"{name}: {_changes(each, units)}")
        for block in _of_blade(each, units, everything):
            blocks.append(_of(name, block))
    if found.only:
        blocks.append(Lines("Only in one of them", found.only))
    blocks += _targets(found, units)
    answer = "; ".join([*answers, *_lost(found)])
    return Report(f"{_title(found)}: {answer}", tuple(blocks))


def _of(name: str, block: Block) -> Block:
    if isinstance(block, TextTable):
        return TextTable(f"{name}: {block.title}", block.heads, block.rows)
    return Lines(f"{name}: {block.heading}", block.lines)


def _title(found: Compared) -> str:
    return " -> ".join(found.names)


def _answer(found: Comparison, units: System) -> str:
    return "; ".join([_changes(found, units), *_lost(found)])


def _changes(found: Comparison, units: System) -> str:
    name = pull_name(found)
    pull = next(each for each in found.figures if each.name == name)
    if pull.change is None:
        return f"no {figure_word(name)} to compare"
    return f"{figure_word(name)} {moves(pull, units)}"


def _lost(found: Compared) -> Iterator[str]:
    lost = [each.name.replace("_", " ") for each in found.targets if each.lost]
    gained = [
        each.name.replace("_", " ")
        for each in found.targets
        if each.a and each.b and each.b.met and not each.a.met
    ]
    if lost:
        yield f"no longer met: {', '.join(lost)}"
    if gained:
        yield f"now met: {', '.join(gained)}"


def _of_blade(found: Comparison, units: System, everything: bool) -> Iterator[Block]:
    said = tuple(sentences(found, units))
    yield Lines("What changes, and by what", said or ("nothing",))
    rows = [each for each in found.figures if everything or each.name in FIGURES]
    table = _figures([each for each in rows if not each.name.startswith("verdict.")], units)
    yield TextTable("Figures", ("", "A", "B", "change", ""), table)
    for title, names in _CAUSED.items():
        yield from _causes(found, title, names, units)
    yield from _verdict(found)


def _figures(figures: list[FigureChange], units: System) -> tuple[tuple[str, ...], ...]:
    rows = []
    for each in figures:
        kind = figure_kind(each.name)
        unit = unit_of(kind, units)
        rows.append(
            (
                f"{figure_word(each.name)} {unit}".rstrip(),
                number(each.a, kind, units),
                number(each.b, kind, units),
                signed(each.change, kind, units),
                ""
                if each.share is None or is_nothing(each, units)
                else f"{100.0 * each.share:+.1f} %",
            )
        )
    return tuple(rows)


def _share(figure: FigureChange, units: System) -> str:
    if figure.share is None or is_nothing(figure, units):
        return ""
    return f"{100.0 * figure.share:+.1f} %"


def _causes(
    found: Comparison, title: str, names: tuple[str, ...], units: System
) -> Iterator[TextTable]:
    unsaid = "peak_torque_nmm" if pull_name(found) == "peak_pull_n" else "peak_pull_n"
    names = tuple(n for n in names if n != unsaid and any(n in c.changes for c in found.causes))
    # What both have of a dimension is said once.
    sides = ("A", "B") if title == next(iter(_CAUSED)) else ()
    rows = []
    for each in found.causes:
        parts = [signed(each.changes.get(n), figure_kind(n), units) for n in names]
        if any(part not in ("0", "-") for part in parts):
            rows.append((cause_word(each), *ends(each, units)[: len(sides)], *parts))
    if not rows:
        return
    changes = {each.name: each.change for each in found.figures}
    totals = (signed(changes[name], figure_kind(name), units) for name in names)
    rows.append(("all", *("" for _ in sides), *totals))
    heads = (f"{_HEADS.get(n, figure_word(n))} {unit_of(figure_kind(n), units)}" for n in names)
    yield TextTable(title, ("", *sides, *map(str.rstrip, heads)), tuple(rows))


def _verdict(found: Comparison) -> Iterator[TextTable]:
    rows = tuple(
        (
            spoken(each.name.removeprefix("verdict.").removesuffix(".margin")),
            number(each.a, "margin", "mm"),
            number(each.b, "margin", "mm"),
            signed(each.change, "margin", "mm"),
        )
        for each in found.figures
        if each.name.startswith("verdict.") and each.name.endswith(".margin")
    )
    if rows:
        yield TextTable("Margins of the verdict", ("", "A", "B", "change"), rows)


def _targets(found: Compared, units: System) -> Iterator[TextTable]:
    rows = tuple(_target(each, units) for each in found.targets)
    if rows:
        yield TextTable("Targets", ("", "A", "", "B", "", "wanted"), rows)


def _target(each: TargetChange, units: System) -> tuple[str, ...]:
    sides = [None if side is None else target_row(side, units) for side in (each.a, each.b)]
    name, wanted = next((side[0], side[2]) for side in reversed(sides) if side is not None)
    cells = [("-", "") if side is None else (side[1], side[3]) for side in sides]
    return name, *cells[0], *cells[1], wanted
