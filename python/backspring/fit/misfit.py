"""What in a log does not go together: a forgotten trip to the grinder, a wrong depth or face."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import fmean

from backspring.design.arguments import refusal
from backspring.errors import InvalidInput
from backspring.fit.log_entry import LIMITS, Entry, GroundEntry, MeasuredEntry
from backspring.report.display import Shown, number, text
from backspring.units import System

# Two readings of one thing differ by more than this many repeatabilities once in 200 times.
_SAME = 4.0
_CONTRADICTS = 3.0
# A log that goes together is refused so often.
_BY_CHANCE = 5e-4
_UNDO = "or take the earlier reading off with --undo"
_KINDS: dict[str, tuple[str, Shown]] = {
    "pull_n": ("pull to open", "force"),
    "closing_pull_n": ("pull to close", "force"),
    "moved_mm": ("movement under a weight", "reading"),
    "thickness_mm": ("thickness", "reading"),
    "hardness_hrc": ("hardness", "hardness"),
}


@dataclass(frozen=True, slots=True)
class Observation:
    """One measurement of the log and what the estimate says of it; `entry` counts from 1.

    `what` is a position, with the state of its reading, or the kind of another measurement, whose
    name carries the unit.
    """

    entry: int
    what: str
    state: str
    value: float
    estimate: float
    sd: float

    @property
    def residual(self) -> float:
        """Estimate less measurement, in standard deviations of the measurement."""
        return (self.estimate - self.value) / self.sd

    @property
    def shown(self) -> Shown:
        """Kind of number that it is shown as."""
        return _KINDS.get(self.what, ("", "reading"))[1]

    def say(self, units: System) -> str:
        """Say which measurement it is."""
        name = _KINDS[self.what][0] if self.what in _KINDS else f"{_name(self.what)} {self.state}"
        return f"{name} {text(self.value, self.shown, units)} (entry {self.entry})"


@dataclass(frozen=True, slots=True)
class Misfit:
    """Chi-squared and its degrees of freedom, which need not be whole."""

    chi_squared: float
    freedom: float

    def is_chance(self) -> bool:
        """Say whether measurements of one knife would scatter so."""
        return _chance(self.chi_squared, self.freedom) >= _BY_CHANCE


def repeats(entries: Iterable[Entry]) -> dict[tuple[int, str, str], list[float]]:
    """Find readings by trip to the grinder, state and position."""
    found: dict[tuple[int, str, str], list[float]] = {}
    trip = 0
    for entry in entries:
        if isinstance(entry, GroundEntry):
            trip += 1
        if not isinstance(entry, MeasuredEntry):
            continue
        for position in ("half_stop", "closed"):
            value = getattr(entry, f"{position}_mm")
            if value is not None:
                found.setdefault((trip, entry.state, position), []).append(value)
    return found


def require_no_forgotten_trip(
    entries: Sequence[Entry], stood: int, scatter_mm: float, units: System
) -> None:
    """Refuse readings that differ from those that stood with nothing ground between.

    Readings that are new together are repeats of one another: how far they scatter is told later.
    Those that stood may scatter as far as a repeatability can be.
    """
    before = repeats(entries[:stood])
    after = repeats(entries)
    spread_mm = max(
        (e.repeatability_mm for e in entries if isinstance(e, MeasuredEntry)), default=0
    )
    for key, earlier in before.items():
        later = after[key][len(earlier) :]
        apart_mm = abs(fmean(later) - fmean(earlier)) if later else 0.0
        if apart_mm > _SAME * max(spread_mm, _scatter_of(earlier)):
            raise _forgotten(key[2], fmean(earlier), fmean(later), units)
    if scatter_mm > LIMITS["repeatability_mm"][1]:
        key = max(after, key=lambda each: max(after[each]) - min(after[each]))
        raise _forgotten(key[2], after[key][0], after[key][-1], units)


def require_agreement(observations: Sequence[Observation], misfit: Misfit, units: System) -> None:
    """Refuse an estimate that the measurements contradict.

    The last loaded reading is what the knife reads; all together lie no farther off than chance
    puts them.
    """
    loaded = [each for each in observations if each.state == "loaded"]
    last = [each for each in loaded if each.entry == loaded[-1].entry]
    off = [each for each in last if abs(each.residual) > _CONTRADICTS]
    if off:
        raise _contradicted(max(off, key=lambda each: abs(each.residual)), observations, units)
    if observations and not misfit.is_chance():
        raise _contradicted(worst(observations), observations, units)


def worst(observations: Sequence[Observation]) -> Observation:
    """Find the measurement that fits worst."""
    return max(observations, key=lambda each: abs(each.residual))


def _contradicted(
    off: Observation, observations: Sequence[Observation], units: System
) -> InvalidInput:
    fits = worst(observations)
    return refusal(
        "log",
        f"{off.say(units)} cannot be: after all that is logged it should be "
        f"{text(off.estimate, off.shown, units)}, {abs(off.residual):.1f} standard deviations "
        f"off; what fits worst is {fits.say(units)}, {abs(fits.residual):.1f} off; is a depth, a "
        "face or a reading not as it was? Nothing is planned from this and nothing was written: "
        "put it right, or take the last entry off with --undo",
    )


def _chance(chi_squared: float, freedom: float) -> float:
    """Chance of a larger chi-squared, after E. B. Wilson and M. M. Hilferty, 1931."""
    freedom = max(freedom, 1.0)
    spread = 2.0 / (9.0 * freedom)
    normal = (max(chi_squared, 0.0) / freedom) ** (1.0 / 3.0) - (1.0 - spread)
    return 0.5 * math.erfc(normal / math.sqrt(2.0 * spread))


def _forgotten(position: str, was_mm: float, is_mm: float, units: System) -> InvalidInput:
    went = f"{number(was_mm, 'reading', units)} to {text(is_mm, 'reading', units)}"
    return refusal(
        "",
        f"{_name(position)} went from {went} with nothing ground between: what was ground? "
        f"Give --ground FACE with this reading (the depth need not be known), {_UNDO}",
    )


def _scatter_of(readings: Sequence[float]) -> float:
    if len(readings) < 2:
        return 0.0
    mean = fmean(readings)
    return float((sum((each - mean) ** 2 for each in readings) / (len(readings) - 1)) ** 0.5)


def _name(position: str) -> str:
    return position.replace("_", "-")
