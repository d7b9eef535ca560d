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
from backspring.unit_table import THOU_MM
from backspring.units import System

# Two readings of one thing differ by more than this many repeatabilities once in 200 times.
_SAME = 4.0
_CONTRADICTS = 3.0
# Beyond so many standard deviations what is foretold is no number that a knife could show.
_NO_KNIFE = 50
# A log that goes together is refused so often.
_BY_CHANCE = 5e-4
_NEVER = 1e-6
_LEAST_OWN = 1e-9
# No dial of a bench scatters more: common practice, no source.
_WORN_DIAL_MM = 0.01
PUT_RIGHT = "put it right, or take the last entry off with --undo"
_UNDO = "or take the earlier reading off with --undo"
_KINDS: dict[str, tuple[str, Shown]] = {
    "pull_n": ("pull to open", "force"),
    "closing_pull_n": ("pull to close", "force"),
    "start_pull_n": ("pull to start it", "force"),
    "moved_mm": ("movement under a weight", "reading"),
    "thickness_mm": ("thickness", "reading"),
    "hardness_hrc": ("hardness", "hardness"),
    "tip_mm": ("height of the tip", "length"),
    "gap_mm": ("gap under the edge", "reading"),
}


@dataclass(frozen=True, slots=True)
class Observation:
    """One measurement of the log and what the estimate says of it; `entry` counts from 1.

    `what` is a position, with the state of its reading, or the kind of another measurement, whose
    name carries the unit. `leverage` is the share of the estimate that is the measurement itself.
    """

    entry: int
    what: str
    state: str
    value: float
    estimate: float
    sd: float
    leverage: float = 0.0

    @property
    def residual(self) -> float:
        """Estimate less measurement, in standard deviations of the measurement."""
        return (self.estimate - self.value) / self.sd

    @property
    def foretold(self) -> float:
        """What all else in the log, and what is expected, tells of it."""
        return self.value + (self.estimate - self.value) / self._own

    @property
    def off(self) -> float:
        """What is foretold less the measurement, in standard deviations of both together."""
        return self.residual / math.sqrt(self._own)

    @property
    def _own(self) -> float:
        return max(1.0 - self.leverage, _LEAST_OWN)

    @property
    def shown(self) -> Shown:
        """Kind of number that it is shown as."""
        return _KINDS.get(self.what, ("", "reading"))[1]

    def text(self, units: System = "mm") -> str:
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
        return self.chance >= _BY_CHANCE

    @property
    def chance(self) -> float:
        """Share of sound logs that scatter more, after E. B. Wilson and M. M. Hilferty, 1931."""
        freedom = max(self.freedom, 1.0)
        spread = 2.0 / (9.0 * freedom)
        normal = (max(self.chi_squared, 0.0) / freedom) ** (1.0 / 3.0) - (1.0 - spread)
        return 0.5 * math.erfc(normal / math.sqrt(2.0 * spread))

    def rarity(self) -> str:
        """Say how rare that is."""
        if self.chance < _NEVER:
            return f"less than once in {1.0 / _NEVER:,.0f}"
        return f"once in {float(f'{1.0 / self.chance:.2g}'):,.0f}"


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
            raise _forgotten(key[2], fmean(earlier), fmean(later), units, anew=True)
    if scatter_mm > LIMITS["repeatability_mm"][1]:
        key = max(after, key=lambda each: max(after[each]) - min(after[each]))
        raise _forgotten(key[2], after[key][0], after[key][-1], units)


def contradiction(
    fits: Observation, misfit: Misfit, units: System, mend: str = PUT_RIGHT
) -> InvalidInput:
    """Return the refusal of a log from which a measurement lies farther off than by chance."""
    return refusal(
        "log",
        f"this cannot all be one knife: what fits worst is {fits.text(units)}, all else foretells "
        f"{_foretold(fits, units)} (sound logs lie so far apart {misfit.rarity()}). "
        f"{_look(fits, mend)}{_scatters(fits, units)}. Nothing was written",
    )


def _look(fits: Observation, mend: str) -> str:
    """Say what to do at the bench, and in the log."""
    if not fits.state:
        return f"Measure it again, see that every depth, face and reading is right; {mend}"
    return (
        f"Set the dial to nothing at open, for its zero moves easily, and read {_name(fits.what)} "
        f"again; {mend}. If it reads the same, a face, a depth or an earlier reading is wrong: go "
        "back before it with --undo"
    )


def _scatters(fits: Observation, units: System) -> str:
    """Say how a dial is logged that is no better, where a bench may have one."""
    scatter = abs(fits.foretold - fits.value) / _SAME
    if not fits.state or scatter > _WORN_DIAL_MM:
        return ""
    good = text(scatter + _step_mm(units), "reading", units)
    return f'. Of a dial that comes back no better say --repeatability "{good}"'


def _foretold(fits: Observation, units: System) -> str:
    """Say it, or only how far off it is where the number itself would be of no knife."""
    if abs(fits.off) > _NO_KNIFE:
        return "nothing like it"
    return text(fits.foretold, fits.shown, units)


def off_the_last(observations: Sequence[Observation]) -> Observation | None:
    """Find what was last read with both pins in and the estimate does not give; or None.

    Readings of one thing count by their mean; the model says the same of each.
    """
    loaded = [each for each in observations if each.state == "loaded"]
    last = [each for each in loaded if each.entry == loaded[-1].entry]
    off = [each for each in last if _mean_off(each, loaded) > _CONTRADICTS]
    return worst(off) if off else None


def _mean_off(last: Observation, loaded: Sequence[Observation]) -> float:
    same = [each for each in loaded if (each.what, each.estimate) == (last.what, last.estimate)]
    return abs(fmean(each.residual for each in same)) * math.sqrt(len(same))


def worst(observations: Sequence[Observation]) -> Observation:
    """Find the measurement that fits worst; of two alike the later."""
    return max(observations, key=lambda each: (round(abs(each.off), 1), each.entry))


def _forgotten(
    position: str, was_mm: float, is_mm: float, units: System, anew: bool = False
) -> InvalidInput:
    went = f"{number(was_mm, 'reading', units)} to {text(is_mm, 'reading', units)}"
    which = "open, the one face that raises a reading," if is_mm > was_mm else "FACE"
    scatter, hints = abs(is_mm - was_mm) / _SAME, ""
    if anew and scatter <= _WORN_DIAL_MM:
        good = text(scatter + _step_mm(units), "reading", units)
        hints = f'; of a dial that scatters so say --repeatability "{good}"'
    return refusal(
        "",
        f"{_name(position)} went from {went} with nothing ground between. If something was, give "
        f"--ground {which} with this reading (the depth need not be known); if the dial's zero "
        f"moved, set it to nothing at open and read again; {_UNDO}{hints}",
    )


def _step_mm(units: System) -> float:
    """Return the last place in which readings are shown, so that what is shown is enough."""
    return 0.001 if units == "mm" else 0.1 * THOU_MM


def _scatter_of(readings: Sequence[float]) -> float:
    if len(readings) < 2:
        return 0.0
    mean = fmean(readings)
    return float((sum((each - mean) ** 2 for each in readings) / (len(readings) - 1)) ** 0.5)


def _name(position: str) -> str:
    return position.replace("_", "-")
