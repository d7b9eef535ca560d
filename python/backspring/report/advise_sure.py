"""How sure advice is for one knife, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from backspring.question.advise_result import Advice
from backspring.question.targets import TargetResult
from backspring.report.advise_words import joined
from backspring.report.display import Shown, text
from backspring.report.how_sure import sure_to
from backspring.report.tables import Lines
from backspring.units import System

# Standard deviations of every shown way's figures, by blade; "" where there is one.
WaysSds = Mapping[str, Sequence[Mapping[str, float | None]]]
_FIGURES: tuple[tuple[str, str, Shown], ...] = (
    ("pull", "peak_pull_n", "force"),
    ("stress", "peak_stress_mpa", "stress"),
    ("yield margin", "yield_margin", "margin"),
    ("fatigue margin", "fatigue_margin", "margin"),
)
_OF_TARGET = {
    "pull": ("peak_pull_n",),
    "yield_margin": ("yield_margin",),
    "openings": ("fatigue_margin",),
    "reading": ("reading_loaded_half_stop_mm", "reading_loaded_closed_mm"),
}
_GO_ON = "Met by less than that: go a step farther, or measure first what the log says."


def sure_lines(shown: Sequence[Advice], sds: WaysSds, units: System) -> Lines:
    """Say how good the figures of each way are, and which targets it may miss for that."""
    lines = [line for place, way in enumerate(shown) for line in _way(way, sds, place, units)]
    if any(may_miss(way, sds, place) for place, way in enumerate(shown)):
        lines.append(_GO_ON)
    return Lines("How sure for this knife", tuple(lines))


def may_miss(way: Advice, sds: WaysSds, place: int) -> list[str]:
    """Name the targets that a way meets by less than a standard deviation of this knife."""
    rows = [each[place] for each in sds.values() if place < len(each)]
    return [
        target.name.replace("_", " ")
        for target in way.targets
        if any(_is_near(target, row) for row in rows)
    ]


def _is_near(target: TargetResult, sds: Mapping[str, float | None]) -> bool:
    ends = [each for each in (target.low, target.high) if each is not None]
    if target.value is None or not ends:
        return False
    room = min(abs(target.value - end) for end in ends)
    known = [sd for name in _OF_TARGET.get(target.name, ()) if (sd := sds.get(name)) is not None]
    return any(room < sd for sd in known)


def _way(way: Advice, sds: WaysSds, place: int, units: System) -> Iterator[str]:
    for blade, of_ways in sds.items():
        figures = way.figures["blades"][blade] if blade else way.figures
        said = [
            f"{name} {text(figures[key], kind, units)} {sure_to(sd, kind, units)}"
            for name, key, kind in _FIGURES
            if (sd := of_ways[place].get(key)) is not None and figures.get(key) is not None
        ]
        whose = f"{place + 1}, {blade}" if blade else f"{place + 1}"
        yield f"{whose}: {', '.join(said) or 'not known'}"
    if missed := may_miss(way, sds, place):
        yield f"   may miss: {joined(missed)}"
