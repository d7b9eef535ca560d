"""Pictures of a design. Needs matplotlib: `pip install backspring[plot]`."""

from backspring.picture.action import action
from backspring.picture.allowance import allowance_curves
from backspring.picture.design_map import design_map, map_of
from backspring.picture.fitting import fitting
from backspring.picture.grinding import grinding
from backspring.picture.influence import influence
from backspring.picture.key_drawing import key_drawing
from backspring.picture.load_spring import spring_loading
from backspring.picture.outline_reading import outline_picture
from backspring.picture.plot import plot
from backspring.picture.positions import positions
from backspring.picture.saving import require_suffix, save
from backspring.picture.sheet import sheet
from backspring.picture.stress import stress_along
from backspring.picture.temper import temper_curve
from backspring.picture.tolerance import tolerance
from backspring.picture.whole_back import whole_back

__all__ = [
    "action",
    "allowance_curves",
    "design_map",
    "fitting",
    "grinding",
    "influence",
    "key_drawing",
    "map_of",
    "outline_picture",
    "plot",
    "positions",
    "require_suffix",
    "save",
    "sheet",
    "spring_loading",
    "stress_along",
    "temper_curve",
    "tolerance",
    "whole_back",
]
