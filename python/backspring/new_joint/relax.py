"""The least change of a request that frees it, where nothing does all that is asked."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from backspring import steel as steels
from backspring.new_joint.places import (
    handle_for_blade_mm,
    inset_mm,
    least_inset_mm,
    least_rim_mm,
)
from backspring.new_joint.request import Request
from backspring.new_joint.rounding import stepped
from backspring.new_joint.samples import Samples
from backspring.new_joint.search import found_for
from backspring.question.advise_changes import STEPS
from backspring.unit_table import UNITS

# What may be asked for otherwise, in which steps, and how far it is looked.
_FARTHEST = {
    "pull_n": 0.4,
    "stock_mm": 1.7,
    "height_mm": 1.4,
    "hardness_hrc": 1.5,
    "openings": 0.05,
    "yield_margin": 0.7,
    "handle_mm": 1.25,
    "blade_mm": 0.8,
    "edge_gap_mm": 0.4,
}
_HALVINGS = 3
_LENGTHS = ("handle_mm", "blade_mm", "height_mm", "stock_mm", "edge_gap_mm")


@dataclass(frozen=True, slots=True)
class Relief:
    """What to ask for otherwise: by name what was asked and what can be had."""

    changes: Mapping[str, tuple[float, float]]

    @property
    def size(self) -> float:
        """How large a change it is: logarithms, square root of the sum of their squares."""
        return math.hypot(*(math.log(to / asked) for asked, to in self.changes.values()))


def no_room(request: Request) -> str | None:
    """Say why blade and handle leave no room for a pivot; None where they do."""
    if inset_mm(request) < least_inset_mm(request):
        return "length"
    low_open, low_end = request.bounds["open"][0], request.bounds["end_thickness"][0]
    if request.height_mm - low_open - low_end < least_rim_mm(request):
        return "height"
    return None


def reliefs(request: Request, samples: Samples) -> tuple[Relief, ...]:
    """Find changes that free a request, the least first: one number, or pull and another."""
    trials = _Trials(request, samples)
    if no_room(request) == "length":
        found = [*_for_length(trials)]
    else:
        found = [each for name in _FARTHEST if (each := _by_halves(trials, name))]
        if not found:
            others = [name for name in _FARTHEST if name != "pull_n"]
            found = [each for name in others if (each := _by_halves(trials, "pull_n", name))]
    return tuple(sorted(found, key=lambda each: each.size))


class _Trials:
    """Requests that differ from one, each searched for once."""

    def __init__(self, request: Request, samples: Samples) -> None:
        self.request, self.samples = request, samples
        self._known: dict[tuple[tuple[str, float], ...], bool] = {}

    def free(self, changes: Mapping[str, float]) -> bool:
        """Say whether a joint is found for a changed request."""
        key = tuple(sorted(changes.items()))
        if key not in self._known:
            changed = self.request.changed(**changes)
            self._known[key] = found_for(changed, self.samples, quick=True) is not None
        return self._known[key]


def _for_length(trials: _Trials) -> Iterator[Relief]:
    """Try a longer handle, then a shorter blade."""
    request = trials.request
    more = handle_for_blade_mm(request) - request.handle_mm
    for name, value in (
        ("handle_mm", request.handle_mm + more),
        ("blade_mm", max(request.blade_mm - more, 20.0)),
    ):
        asked = getattr(request, name)
        to = _rounded(request, name, value, up=value > asked)
        roomy = request.changed(**{name: to})
        if trials.free({name: to}):
            yield Relief({name: (asked, to)})
        elif both := _by_halves(_Trials(roomy, trials.samples), "pull_n"):
            yield Relief({name: (asked, to), **both.changes})


def _by_halves(trials: _Trials, *names: str) -> Relief | None:
    """Halve the way to the farthest that is looked at, as long as it frees the request."""
    request = trials.request

    def at(share: float) -> dict[str, float]:
        return {
            name: _rounded(
                request,
                name,
                getattr(request, name) * _FARTHEST[name] ** share,
                up=_FARTHEST[name] > 1.0,
            )
            for name in names
        }

    def frees(share: float) -> bool:
        return trials.free(at(share))

    if not frees(1.0):
        return None
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        low, high = (low, middle) if frees(middle) else (middle, high)
    return Relief({name: (getattr(request, name), to) for name, to in at(high).items()})


def _hardest(request: Request) -> float:
    return steels.steel(request.steel).hardness_high_hrc


def _rounded(request: Request, name: str, value: float, *, up: bool) -> float:
    """Round away from what was asked, so that it still frees."""
    if name in _LENGTHS:
        step = STEPS[request.units].length
    elif name == "pull_n":
        step = 0.1 if request.units == "mm" else 0.05 * float(UNITS["lbf"].factor)
    else:
        step = 100.0 if name == "openings" else 0.01
    if name == "hardness_hrc":
        # No harder than its steel is used at.
        step, value = 0.5, min(value, max(_hardest(request), request.hardness_hrc))
        up = False
    whole = math.ceil(value / step - 1e-9) if up else math.floor(value / step + 1e-9)
    return stepped(max(whole, 1) * step, step)
