"""What the model leaves out of a design, sized for it, and its sum."""

from __future__ import annotations

from backspring import _core
from backspring.design.design import Design


def error_budget(design: Design) -> _core.ErrorBudget:
    """Size what is left out of the blade that questions are about.

    What the design states is not in it: nor is a clearance that is stated as nothing.
    """
    return _core.error_budget(design.core, _stated(design))


def _stated(design: Design) -> _core.BudgetStated:
    content = design.to_dict()
    spring = content["spring"]
    own = design.core.blades[0].name
    blades = {table["name"]: table for table in content.get("blades", [])}
    tang = blades.get(own, content)["tang"]
    return _core.BudgetStated(
        pin_clearance="pin_clearance" in spring,
        pivot_clearance="pivot_clearance" in tang,
        modulus_mpa=None if "youngs_modulus" in spring else _modulus_band(design),
    )


def _modulus_band(design: Design) -> _core.Ends | None:
    """Two standard deviations either way of what a bar of the steel has."""
    steel = design.steel_figures
    modulus, sd = steel["youngs_modulus_mpa"], steel["youngs_modulus_sd_mpa"]
    if not sd:
        return None
    return _core.Ends(low=modulus - 2.0 * sd, high=modulus + 2.0 * sd)
