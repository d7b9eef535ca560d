"""A knife whose unknowns are drawn from what is expected of any, and a bench that measures it."""

from __future__ import annotations

from typing import Any

import numpy as np

import backspring as bs
from backspring import _core
from backspring.fit.ask import Ask
from backspring.fit.causes import CAUSES, PLACE
from backspring.fit.goodness import PULL_SHARE
from backspring.fit.knife_model import KnifeModel
from backspring.fit.log_entry import GroundEntry
from backspring.fit.priors import priors_of

DIAL_MM = 0.004
# A maker begins this proud; what is expected is broader, but no such tang would be made.
PROUD_MM = (0.15, 0.5)
KICK_SD_MM = 0.05
WEIGHT = "2 kg at 32 mm"


class HiddenKnife:
    """One knife made from a drawing, that reads, is ground and is pulled as it is."""

    def __init__(
        self, drawn: bs.Design, rng: np.random.Generator, grounds: tuple[GroundEntry, ...] = ()
    ) -> None:
        self.drawn, self.rng = drawn, rng
        self.model = KnifeModel(drawn.core, list(grounds))
        self.causes = np.zeros(self.model.width)
        for prior in priors_of(drawn, self.model.root_scale):
            if prior.name in CAUSES:
                self.causes[PLACE[prior.name]] = self._drawn(prior)
        half, closed = -rng.uniform(*PROUD_MM, 2)
        self.causes[PLACE["half_stop"]] = half
        self.causes[PLACE["closed"]] = closed
        self.causes[PLACE["kick"]] = closed + KICK_SD_MM * rng.normal()

    def ground(self, face: str, depth_mm: float) -> None:
        """Take steel off a face, or off the whole of back or belly."""
        self.causes[self.model.place_of(GroundEntry(face, None))] += depth_mm

    def readings(self, state: str, dial_mm: float = DIAL_MM) -> dict[str, Any]:
        """Read it as a call of Knife.measure()."""
        half, closed = self.rng.normal(self.model.readings(state, self.causes), dial_mm)
        both = {"half_stop": half} if self.model.square else {}
        return {**both, "closed": closed, "state": state, "repeatability": dial_mm}

    def pulls(self) -> dict[str, Any]:
        """Pull it on a scale."""
        pulls = self.true_pulls()[:2]
        opening, closing = pulls * self.rng.normal(1.0, PULL_SHARE, 2)
        return {"pull": opening, "closing_pull": closing}

    def hung(self) -> dict[str, Any]:
        """Hang a weight from it."""
        ask = Ask("moved_mm", 32.0, 2000 * 9.80665e-3)
        (moved,) = self.rng.normal(self.model.answer(ask, self.causes), DIAL_MM)
        return {"hang": WEIGHT, "moved": moved}

    def true_readings(self) -> np.ndarray:
        """Loaded readings as they are."""
        return self.model.readings("loaded", self.causes)

    def true_pulls(self) -> np.ndarray:
        """Peak pulls, opening and closing, and the worst stress, as they are."""
        return self.model.pulls(self.causes)[[0, 1, 3]]

    def design(self) -> _core.Design:
        """The knife itself."""
        return self.model.design(self.causes)

    def _drawn(self, prior: Any) -> float:
        if prior.name == "pivot_play_mm":
            # The half of a normal spread that can be.
            return abs(self.rng.normal(0.0, 0.02))
        while True:
            value = self.rng.normal(prior.expected, prior.sd)
            if prior.least <= value <= prior.greatest:
                return float(value)
