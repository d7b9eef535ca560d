"""What advice comes to: changes that meet every target with their price, or what excludes what."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any, Literal

from backspring.design.design import Design
from backspring.question.targets import TargetResult
from backspring.report.result import Reported
from backspring.unit_table import KINDS, Kind, System
from backspring.units import shown

# What a kind of value is in the core.
QUANTITIES = {kind: quantity for quantity, kind in KINDS.items()}

# Ways that are shown of many.
SHOWN_FIRST = 6


@dataclass(frozen=True)
class Moved:
    """One number that advice changes, in the core's units; a steel by its name.

    `side`: `to` is what is added to what was drawn, and this is the way it goes. `face`: ground to
    suit the rest.
    """

    key: str
    name: str
    kind: Kind
    was: float | str
    to: float | str
    side: str = ""
    face: bool = False


@dataclass(frozen=True)
class Advice:
    """A changed design, what was changed and what that costs.

    `changes` are keys of the design file with their new values, each with its unit. `figures` are
    those of the changed design; `falls_short` names what of the verdict had margin to spare before
    and has none now. `size`: 1 is a change as far as its limit, of two the root of the sum of
    squares; faces that are fitted count for nothing.
    """

    design: Design
    changes: dict[str, Any]
    moved: tuple[Moved, ...]
    size: float
    figures: dict[str, Any]
    targets: tuple[TargetResult, ...]
    falls_short: tuple[str, ...]
    met: bool

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "changes": self.changes,
            "figures": self.figures,
            "met": self.met,
            "targets": [each._asdict() for each in self.targets],
            "falls_short": list(self.falls_short),
            "size": self.size,
            "sha256": self.design.sha256,
        }


@dataclass(frozen=True)
class Exclusive:
    """Targets that no one or two changes within the limits meet together.

    `best` tells how near each comes while the others of them are met; none where that is not so
    anywhere.
    """

    targets: tuple[str, ...]
    best: dict[str, float | None]


@dataclass(frozen=True)
class Limit:
    """How far a change may go and in which steps, in the core's units; of steels which.

    `relative`: the limits are for what is added.
    """

    key: str
    name: str
    kind: Kind
    now: float
    low: float
    high: float
    step: float
    relative: bool = False
    choices: tuple[str, ...] = ()

    def to_dict(self, units: System) -> dict[str, Any]:
        """Write it for JSON, each value with its unit."""
        told = {"key": self.key, "name": self.name}
        if self.choices:
            return told | {"now": self.choices[0], "choices": list(self.choices[1:])}
        ends = {"low": self.low, "high": self.high}
        now = {} if self.relative else {"now": self.now}
        lead = "more_" if self.relative else ""
        quantity = QUANTITIES[self.kind]
        said = {f"{lead}{name}": shown(v, quantity, units) for name, v in (now | ends).items()}
        step = self.step * 1.8 if (self.kind, units) == ("temperature", "in") else None
        said["step"] = shown(self.step, quantity, units) if step is None else f"{step:.4g} F"
        return told | said


@dataclass(frozen=True, repr=False)
class Advised(Reported):
    """Changes that meet every target, smallest first: single ones, then two together.

    None where the design meets its targets. Where none is found, `nearest` comes nearest and
    `exclusive` says which targets stand against each other. `limits` are the changes that were
    tried, `faces` the keys of faces that are ground to suit, `units` those that values are set in.
    `complete` is False where the search of several blades was broken off for its time.
    """

    _report_by = "advise:advise_report"

    original: Design
    units: System
    targets: tuple[TargetResult, ...]
    figures: dict[str, Any]
    advice: tuple[Advice, ...]
    nearest: Advice | None
    exclusive: tuple[Exclusive, ...]
    limits: tuple[Limit, ...]
    faces: tuple[str, ...]
    works: bool
    complete: bool = True

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether the design as it stands meets its targets."""
        met = self.works and all(each.met for each in self.targets)
        return "pass" if met else "fail"

    def shown(self, everything: bool) -> tuple[Advice, ...]:
        """Return the ways that are shown: all, or the first."""
        return self.advice if everything else self.advice[:SHOWN_FIRST]

    @property
    def found(self) -> bool:
        """Whether there is an answer: nothing to change, or what to change."""
        return self.status == "pass" or bool(self.advice)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; values carry their units, or their names do."""
        return {
            "design": self.original.identity(),
            "targets": [each._asdict() for each in self.targets],
            "figures": self.figures,
            "advice": [each.to_dict() for each in self.advice],
            "nearest": None if self.nearest is None else self.nearest.to_dict(),
            "exclusive": [asdict(each) for each in self.exclusive],
            "limits": [each.to_dict(self.units) for each in self.limits],
            "faces": list(self.faces),
            "complete": self.complete,
        }
