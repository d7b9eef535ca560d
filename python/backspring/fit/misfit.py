"""What in a log does not go together: a forgotten trip to the grinder, a wrong depth or face."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import fmean

from backspring.design.arguments import refusal
from backspring.errors import InvalidInput
from backspring.fit.log_entry import LIMITS, Entry, GroundEntry, MeasuredEntry
from backspring.report.display import number, text
from backspring.units import System

# Two readings of one thing differ by more than this many repeatabilities once in 200 times.
_SAME = 4.0
_CONTRADICTS = 3.0
_UNDO = "or take the earlier reading off with --undo"


@dataclass(frozen=True, slots=True)
class Observation:
    """One reading of the log and what the estimate says of it; `entry` counts from 1."""

    entry: int
    position: str
    state: str
    reading_mm: float
    estimate_mm: float
    sd_mm: float

    @property
    def residual(self) -> float:
        """Estimate less reading, in standard deviations of the reading."""
        return (self.estimate_mm - self.reading_mm) / self.sd_mm

    def say(self, units: System) -> str:
        """Say which reading it is."""
        read = text(self.reading_mm, "reading", units)
        return f"{_name(self.position)} {self.state} {read} (entry {self.entry})"


def repeats(entries: Iterable[Entry]) -> dict[tuple[int, str, str], list[float]]:
    """Find readings by trip to the grinder, state and position."""
    found: dict[tuple[int, str, str], list[float]] = {}
    trip = 0
    for entry in entries:
        if isinstance(entry, GroundEntry):
            trip += 1
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


def require_agreement(observations: Sequence[Observation], units: System) -> None:
    """Refuse an estimate that contradicts the last loaded reading: it is what the knife reads."""
    loaded = [each for each in observations if each.state == "loaded"]
    last = [each for each in loaded if each.entry == loaded[-1].entry]
    off = [each for each in last if abs(each.residual) > _CONTRADICTS]
    if not off:
        return
    most = max(off, key=lambda each: abs(each.residual))
    raise refusal(
        "log",
        f"{most.say(units)} cannot be: after all that is logged it should read "
        f"{text(most.estimate_mm, 'reading', units)}, {abs(most.residual):.0f} standard deviations "
        f"off; {_worst(observations, units)}; is a depth, a face or a reading not as it was? "
        "Nothing is planned from this: put it right, or take the last entry off with --undo",
    )


def _worst(observations: Sequence[Observation], units: System) -> str:
    found = max(observations, key=lambda each: abs(each.residual))
    return f"what fits worst is {found.say(units)}, {abs(found.residual):.0f} off"


def _forgotten(position: str, was_mm: float, is_mm: float, units: System) -> InvalidInput:
    went = f"{number(was_mm, 'reading', units)} to {text(is_mm, 'reading', units)}"
    return refusal(
        "",
        f"{_name(position)} went from {went} with nothing ground between: what was ground? "
        f"Give --ground FACE DEPTH with this reading, {_UNDO}",
    )


def _scatter_of(readings: Sequence[float]) -> float:
    if len(readings) < 2:
        return 0.0
    mean = fmean(readings)
    return float((sum((each - mean) ** 2 for each in readings) / (len(readings) - 1)) ** 0.5)


def _name(position: str) -> str:
    return position.replace("_", "-")
