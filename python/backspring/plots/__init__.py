"""Pictures of a design. Needs matplotlib: `pip install backspring[plot]`."""

from backspring.plots.action import action
from backspring.plots.picture import draw
from backspring.plots.positions import positions
from backspring.plots.saving import require_suffix, save
from backspring.plots.sheet import sheet
from backspring.plots.stress import stress_along
from backspring.plots.temper import temper_curve

__all__ = [
    "action",
    "draw",
    "positions",
    "require_suffix",
    "save",
    "sheet",
    "stress_along",
    "temper_curve",
]
