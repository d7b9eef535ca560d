"""Pictures of a design. Needs matplotlib: `pip install backspring[plot]`."""

from backspring.plots.action import action
from backspring.plots.allowance import allowance_curves
from backspring.plots.design_map import design_map, map_of
from backspring.plots.fitting import fitting
from backspring.plots.grinding import grinding
from backspring.plots.influence import influence
from backspring.plots.picture import draw
from backspring.plots.positions import positions
from backspring.plots.saving import require_suffix, save
from backspring.plots.sheet import sheet
from backspring.plots.stress import stress_along
from backspring.plots.temper import temper_curve
from backspring.plots.tolerance import tolerance
from backspring.plots.two_blades import two_blades

__all__ = [
    "action",
    "allowance_curves",
    "design_map",
    "draw",
    "fitting",
    "grinding",
    "influence",
    "map_of",
    "positions",
    "require_suffix",
    "save",
    "sheet",
    "stress_along",
    "temper_curve",
    "tolerance",
    "two_blades",
]
