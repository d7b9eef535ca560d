"""What the model of a knife is asked: one question tells all that shows in it at once."""

from __future__ import annotations

from dataclasses import dataclass

from backspring.fit.causes import CAUSES, STIFFNESS
from backspring.fit.log_entry import PULLS, FigureEntry, MeasuredEntry

# What does not move an answer, and need not be tried.
_BENDING = ("extra_root_share", "preload_mm", *STIFFNESS)
_LYING = {"hardness_hrc", "friction", "pivot_play_mm", "loaded_offset_mm"}
_STILL = {
    "unloaded": {*_BENDING, "friction", "hardness_hrc", "loaded_offset_mm"},
    # Bent by a given distance a spring has the same shape, whether stiff or not: within a reading
    # 0.02 mm of thickness are 0.0001 mm.
    "loaded": {"pivot_play_mm", "friction", "hardness_hrc", *STIFFNESS},
    "pulls": {"hardness_hrc", "pivot_play_mm", "loaded_offset_mm"},
    "tip_mm": _LYING,
    "gap_mm": _LYING,
    "moved_mm": {*CAUSES} - {*_BENDING} | {"preload_mm"},
    "thickness_mm": {*CAUSES} - {"thickness_mm"},
    "hardness_hrc": {*CAUSES} - {"hardness_hrc"},
}


@dataclass(frozen=True, slots=True)
class Ask:
    """One question: readings in a state, all pulls, or another measurement where it is taken.

    Pulls tell those of PULLS in turn and then the worst stress of the travel, readings half-stop
    and closed; any other tells one number.
    """

    what: str
    station_mm: float = 0.0
    weight_n: float = 0.0

    @property
    def still(self) -> set[str]:
        """Causes that do not move the answer."""
        return _STILL[self.what]


PULLED = Ask("pulls")


def ask_of(entry: MeasuredEntry | FigureEntry) -> Ask:
    """Return the question whose answer holds what an entry measured."""
    if isinstance(entry, MeasuredEntry):
        return Ask(entry.state)
    if entry.kind in PULLS:
        return PULLED
    return Ask(entry.kind, entry.station_mm or 0.0, entry.weight_n or 0.0)


def place_of(entry: FigureEntry) -> int:
    """Say where in the answer its figure stands."""
    return PULLS.index(entry.kind) if entry.kind in PULLS else 0
